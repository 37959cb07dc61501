"""The modes that the formulas make of what a person types, where no table has them."""

import re
from collections.abc import Iterable

from workbench.errors import TimingError
from workbench.timing.mode import Mode
from workbench.timing.request import Request, read_request
from workbench.timing.search import FORMULAS, find_mode, search

__all__ = ["worked_out"]

_FORMULA = re.compile(r"(?<![\w-])(cvt[- ]?rb2|cvt[- ]?rb|cvt|gtf)(?![\w-])", re.IGNORECASE)


def worked_out(text: str) -> tuple[Mode, ...]:
    """Return what the formulas make of a size and rate, or of every mode that a search finds.

    Parameters
    ----------
    text : str
        A size and rate (``1000x700@61``), for every formula; or a formula's name, alone or with
        anything that `search` reads (``640x480 gtf``, ``cvt 50 Hz``).

    Raises
    ------
    TimingError
        If no formula makes anything of it; says why.

    Examples
    --------
    >>> [mode.source for mode in worked_out("640x480@60 gtf")]
    ['VESA GTF']
    """
    ways = [re.sub("t[- ]?r", "t-r", name.lower()) for name in _FORMULA.findall(text)]
    rest = " ".join(_FORMULA.sub(" ", text).split())
    if not ways:
        return _made([_request(text)], FORMULAS)
    try:
        requests = [_request(rest)]
    except TimingError as reason:
        requests = _found(rest)
        if not requests:
            raise reason
    return _made(requests, ways)


def _request(text: str) -> Request:
    request = read_request(text)
    if not isinstance(request, Request):
        raise TimingError(f"“{text}” is a row of a table; a formula takes a size and a rate.")
    return request


def _found(text: str) -> list[Request]:
    """Return the sizes and rates, to the hertz, of the progressive modes that a search finds."""
    modes = (mode for mode in search(text) if not mode.interlaced)
    requests = (Request(mode.h.active, mode.v.active, round(mode.field_rate_hz)) for mode in modes)
    return list(dict.fromkeys(requests))


def _made(requests: Iterable[Request], ways: Iterable[str]) -> tuple[Mode, ...]:
    made: list[Mode] = []
    reasons: list[TimingError] = []
    for request in requests:
        for way in ways:
            try:
                made.append(find_mode(str(request), by=way))
            except TimingError as reason:
                reasons.append(reason)
    if not made:
        raise reasons[0]
    return tuple(dict.fromkeys(made))
