"""Find a mode by what a person types."""

import re
from collections.abc import Callable, Iterable
from dataclasses import replace

from workbench.errors import TimingError
from workbench.timing.formulas.cvt import cvt, cvt_rb, cvt_rb2
from workbench.timing.formulas.gtf import gtf
from workbench.timing.mode import Mode
from workbench.timing.query import read_query
from workbench.timing.request import Request, StandardId, read_request
from workbench.timing.standards import CTA, DMT, KNOWN

__all__ = ["FORMULAS", "WAYS", "find_mode", "search"]

_TABLES: dict[str, tuple[Mode, ...]] = {"dmt": DMT, "cta": CTA}
_TABLE_NAMES = {"dmt": "the VESA DMT table", "cta": "the CTA-861 table", "": "the standards' tables"}
_FORMULAS: dict[str, Callable[[int, int, float], Mode]] = {
    "cvt": cvt,
    "cvt-rb": cvt_rb,
    "cvt-rb2": cvt_rb2,
    "gtf": gtf,
}

FORMULAS = tuple(_FORMULAS)
"""The formulas that ``find_mode(text, by=...)`` knows."""
WAYS = (*_TABLES, *FORMULAS)
"""What ``find_mode(text, by=...)`` knows: the tables, then the formulas."""


def find_mode(text: str, *, by: str | None = None) -> Mode:
    """Return the one mode a text names.

    Parameters
    ----------
    text : str
        Size and rate (``640x480@60``, with ``RB``, ``RB2`` or ``i`` after it where meant), a DMT
        id (``0x04``) or a CTA number (``VIC 16``).
    by : str, optional
        A table or formula of `WAYS`; left out, all tables are searched, the DMT first.

    Raises
    ------
    TimingError
        If the text names no mode, or none that is known.

    Examples
    --------
    >>> find_mode("640×480 @ 60 Hz").source
    'VESA DMT 0x04'
    >>> find_mode("1280x768@60RB").pixel_clock_hz
    68250000
    """
    if by is not None and by not in WAYS:
        raise TimingError(f"“{by}” is no way to a mode; there are {', '.join(WAYS)}.")
    request = read_request(text)
    if isinstance(request, StandardId):
        return _by_number(request, by)
    if by in _FORMULAS:
        return _by_formula(request, by)
    modes = KNOWN if by is None else _TABLES[by]
    of_size = [mode for mode in modes if (mode.h.active, mode.v.active) == (request.width, request.height)]
    matching = [mode for mode in of_size if _has_rate(mode, request.rate_hz)]
    for mode in matching:
        if _rate_and_suffix(mode)[1] == request.suffix:
            return mode
    if matching and not request.suffix:
        return matching[0]
    raise _unknown(request, of_size, _TABLE_NAMES[by or ""])


def search(text: str, modes: Iterable[Mode] = KNOWN) -> tuple[Mode, ...]:
    """Return the modes that fit a search line, nearest first.

    Parameters
    ----------
    text : str
        Any mix of a size (``800x600``), a field rate (``@60``, ``60 Hz``), a pixel clock (``close to
        25 MHz``), a line rate (``31.5 kHz``), a number, a DMT id and words of a name or source. All
        of them must fit; clocks and rates fit nearly.
    modes : iterable of Mode
        Where to look; two that would look alike on the cable are listed once.

    Examples
    --------
    >>> [mode.name for mode in search("close to 25 MHz")][:2]
    ['640x480@60', '640x400@70']
    """
    terms = read_query(text)
    found: dict[object, tuple[float, Mode]] = {}
    for mode in modes:
        distances = [term(mode) for term in terms]
        if None not in distances:
            signal = (
                mode.pixel_clock_hz,
                mode.interlaced,
                replace(mode.h, border=0),
                replace(mode.v, border=0),
            )
            found.setdefault(signal, (sum(off for off in distances if off), mode))
    return tuple(mode for _, mode in sorted(found.values(), key=lambda entry: entry[0]))


def _by_formula(request: Request, by: str) -> Mode:
    if request.suffix == "i":
        raise TimingError(f"{request} is interlaced; the formulas here make progressive modes only.")
    if request.suffix:
        by = _with_suffix(request, by)
    nominal_hz = round(request.rate_hz)
    if by == "cvt-rb2" and round(nominal_hz * 1000 / 1001, 2) == request.rate_hz:
        return cvt_rb2(request.width, request.height, nominal_hz, video=True)
    return _FORMULAS[by](request.width, request.height, request.rate_hz)


def _with_suffix(request: Request, by: str) -> str:
    """Return the formula that the RB or RB2 after a rate asks for."""
    asked = {"RB": "cvt-rb", "RB2": "cvt-rb2"}[request.suffix]
    if by not in ("cvt", asked):
        raise TimingError(f"{request} asks for reduced blanking as {asked} makes it, not {by}; write one.")
    return asked


def _by_number(wanted: StandardId, by: str | None) -> Mode:
    if by not in (None, wanted.standard):
        raise TimingError(f"A {wanted.standard.upper()} number cannot be worked out by {by}; give a size.")
    if wanted.standard == "dmt":
        if 1 <= wanted.number <= len(DMT):
            return DMT[wanted.number - 1]
        raise TimingError(f"The VESA DMT table has ids 0x01 to 0x{len(DMT):02x}, no 0x{wanted.number:02x}.")
    for mode in CTA:
        if str(wanted.number) in mode.source.replace("CTA-861 VIC ", "").split(" and "):
            return mode
    raise TimingError(f"VIC {wanted.number} is not among the formats listed here; give a size and a rate.")


def _rate_and_suffix(mode: Mode) -> tuple[float, str]:
    """Return what the name of a table's mode says after @.

    >>> _rate_and_suffix(DMT[0x57])
    (59.94, 'RB2')
    """
    found = re.fullmatch(r".*@([\d.]+)(RB2|RB|i)?", mode.name)
    assert found is not None, mode.name
    return float(found[1]), found[2] or ""


def _has_rate(mode: Mode, rate_hz: float) -> bool:
    """Compare with the rate in the name, and with the exact one to the digits a person types."""
    exact_hz = mode.field_rate_hz
    nominal_hz, _ = _rate_and_suffix(mode)
    return rate_hz in (nominal_hz, round(exact_hz)) or abs(rate_hz - exact_hz) < 0.05


def _unknown(request: Request, of_size: Iterable[Mode], table: str) -> TimingError:
    """Return what to say of a mode that no table has: what is near, or which formulas make it."""
    names = list(dict.fromkeys(mode.name for mode in of_size))
    if names:
        return TimingError(f"{request} is not in {table}; at this size there are {', '.join(names)}.")
    ways, refused = [], []
    for way in FORMULAS:
        try:
            _by_formula(request, way)
        except TimingError as reason:
            refused.append(reason)
        else:
            ways.append(way)
    if not ways:
        return refused[0]
    return TimingError(f"{request} is not in {table}; a formula can make it: by {' or '.join(ways)}.")
