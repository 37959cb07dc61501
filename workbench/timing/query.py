"""What a chooser's search line asks for: sizes, rates, clocks, line rates and names.

Each term of the text is a function that says how far a mode is from it: 0 for a match, more for
a near one, none for a mode that does not belong.
"""

import re
from collections.abc import Callable

from workbench.timing.mode import Mode

__all__ = ["Term", "read_query"]

Term = Callable[[Mode], float | None]

# How far from a typed figure a mode may be and still be listed, as a part of the figure: wide
# enough that the nearest usual ones show up, our own choice.
_NEAR_CLOCK = 0.10
_NEAR_LINE_RATE = 0.06
_NEAR_FIELD_RATE = 0.02
_SAME_FIELD_RATE = 0.006
"""59.94, 60 and 60.3 Hz are all called 60: rates this close count as the same."""

# Common names of sizes, from memory; no standard defines them.
_SIZE_NAMES: dict[str, tuple[tuple[int, int], ...]] = {
    "vga": ((640, 480),),
    "svga": ((800, 600),),
    "xga": ((1024, 768),),
    "wxga": ((1280, 768), (1280, 800), (1360, 768), (1366, 768)),
    "sxga": ((1280, 1024),),
    "sxga+": ((1400, 1050),),
    "wsxga+": ((1680, 1050),),
    "uxga": ((1600, 1200),),
    "wuxga": ((1920, 1200),),
}
_KINDS: dict[str, Callable[[Mode], bool]] = {
    "interlaced": lambda mode: mode.interlaced,
    "i": lambda mode: mode.interlaced,
    "progressive": lambda mode: not mode.interlaced,
    "p": lambda mode: not mode.interlaced,
    "rb": lambda mode: "RB" in mode.name,
    "reduced": lambda mode: "RB" in mode.name,
    "text": lambda mode: (mode.h.active, mode.v.active) == (720, 400),
}
_FILLERS = re.compile(r"\b(about|around|at|close|mode|near|nearest|of|the|to|with)\b")


def read_query(text: str) -> tuple[Term, ...]:
    """Read the terms of a search; a text without any has none.

    >>> len(read_query("800x600 close to 40 MHz"))
    2
    """
    terms: list[Term] = []
    text, at = _FILLERS.sub(" ", text.lower()), 0
    while at < len(text):
        for pattern, make in _FORMS:
            if found := pattern.match(text, at):
                terms += [make(found)]
                at = found.end()
                break
        else:
            at += 1
    return tuple(terms)


def _matching(belongs: Callable[[Mode], bool]) -> Term:
    return lambda mode: 0.0 if belongs(mode) else None


def _near(figure_of: Callable[[Mode], float], wanted: float, near: float, *, same: float = 0.0) -> Term:
    """Measure the distance as a part of the wanted figure; below ``same`` there is none."""

    def distance(mode: Mode) -> float | None:
        off = abs(figure_of(mode) / wanted - 1) if wanted else near
        if off >= near:
            return None
        return off if off > same else 0.0

    return distance


def _number(text: str) -> float:
    return float(text.replace(",", "."))


def _id(found: re.Match[str]) -> Term:
    number = f"0x{int(found[1], 16):02x}"
    return _matching(lambda mode: mode.source.endswith(number))


def _size(found: re.Match[str]) -> Term:
    width, height = int(found[1]), found[2]
    return _matching(lambda mode: mode.h.active == width and str(mode.v.active).startswith(height))


def _field_rate(found: re.Match[str]) -> Term:
    wanted_hz = _number(found[1])
    return _near(lambda mode: mode.field_rate_hz, wanted_hz, _NEAR_FIELD_RATE, same=_SAME_FIELD_RATE)


def _clock(found: re.Match[str]) -> Term:
    return _near(lambda mode: mode.pixel_clock_hz, _number(found[1]) * 1e6, _NEAR_CLOCK)


def _line_rate(found: re.Match[str]) -> Term:
    return _near(lambda mode: mode.line_rate_hz, _number(found[1]) * 1e3, _NEAR_LINE_RATE)


def _lines_and_scan(found: re.Match[str]) -> Term:
    height, interlaced = int(found[1]), found[2] == "i"
    return _matching(lambda mode: mode.v.active == height and mode.interlaced == interlaced)


def _bare_number(found: re.Match[str]) -> Term:
    """Take a number without a unit for a width, a height or a field rate."""
    rate, number = _field_rate(found), _number(found[1])
    return lambda mode: 0.0 if number in (mode.h.active, mode.v.active) else rate(mode)


def _word(found: re.Match[str]) -> Term:
    word = found[0]
    if word in _KINDS:
        return _matching(_KINDS[word])
    if word in _SIZE_NAMES:
        return _matching(lambda mode: (mode.h.active, mode.v.active) in _SIZE_NAMES[word])
    return _matching(lambda mode: word in f"{mode.name} {mode.source}".lower())


_NUMBER = r"(\d{1,9}(?:[.,]\d{1,9})?)"
_FORMS: tuple[tuple[re.Pattern[str], Callable[[re.Match[str]], Term]], ...] = (
    (re.compile(r"0x([0-9a-f]{1,2})\b"), _id),
    (re.compile(r"(\d{1,6})\s*[x×*]\s*(\d{0,6})"), _size),
    (re.compile(r"@\s*" + _NUMBER), _field_rate),
    (re.compile(_NUMBER + r"\s*m(?:hz)?\b"), _clock),
    (re.compile(_NUMBER + r"\s*k(?:hz)?\b"), _line_rate),
    (re.compile(_NUMBER + r"\s*hz\b"), _field_rate),
    (re.compile(r"(\d{3,4})([ip])\b"), _lines_and_scan),
    (re.compile(_NUMBER), _bare_number),
    (re.compile(r"[a-z][\w+-]*"), _word),
)
"""How the terms are written, tried in this order at each place of the text."""
