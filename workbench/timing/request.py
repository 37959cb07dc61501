"""How a mode is written: ``640x480@60``, ``1280×768 @ 60 Hz RB``, ``0x04``, ``VIC 16``."""

import re
from dataclasses import dataclass

from workbench.errors import TimingError
from workbench.timing.custom import MAX_TOTAL

__all__ = ["Request", "StandardId", "Suffix", "read_request"]

Suffix = str
"""``""`` for none, ``"RB"``, ``"RB2"`` or ``"i"``, as mode names end."""

_SIZE_AND_RATE = re.compile(
    r"(?P<width>\d+)\s*[x×*]\s*(?P<height>\d+)\s*(?P<scan>[ip])?"
    r"(?:\s*@\s*(?P<rate>\d+(?:[.,]\d+)?)\s*(?:hz)?\s*(?P<suffix>i|p|rb|rb1|rbv1|rb2|rbv2)?)?",
    re.IGNORECASE,
)
_DMT_ID = re.compile(r"(?:dmt\s*)?0x(?P<hex>[0-9a-f]{1,2})|dmt\s*(?P<decimal>\d{1,3})", re.IGNORECASE)
_VIC = re.compile(r"(?:cta(?:-861)?\s*)?vic\s*(?P<vic>\d{1,3})", re.IGNORECASE)
_SUFFIXES = {"": "", "p": "", "i": "i", "rb": "RB", "rb1": "RB", "rbv1": "RB", "rb2": "RB2", "rbv2": "RB2"}

HOW = "write width x height @ refresh, as in 640x480@60, or a DMT id, as in 0x04"


@dataclass(frozen=True, slots=True)
class Request:
    """A size and a rate asked for."""

    width: int
    height: int
    rate_hz: float
    suffix: Suffix = ""

    def __str__(self) -> str:
        return f"{self.width}x{self.height}@{self.rate_hz:.10g}{self.suffix}"


@dataclass(frozen=True, slots=True)
class StandardId:
    """A row of a standard's table asked for by its number."""

    standard: str
    number: int


def read_request(text: str) -> Request | StandardId:
    """Read what mode a text asks for.

    Raises
    ------
    TimingError
        If the text is empty, lacks a rate, or is no mode at all.

    Examples
    --------
    >>> read_request(" 640 × 480 @ 59,94 Hz ")
    Request(width=640, height=480, rate_hz=59.94, suffix='')
    >>> read_request("0x0f")
    StandardId(standard='dmt', number=15)
    """
    text = text.strip()
    if not text:
        raise TimingError(f"No mode is named; {HOW}.")
    if found := _DMT_ID.fullmatch(text):
        digits = found["hex"]
        return StandardId("dmt", int(digits, 16) if digits else int(found["decimal"]))
    if found := _VIC.fullmatch(text):
        return StandardId("cta", int(found["vic"]))
    if found := _SIZE_AND_RATE.fullmatch(text):
        return _size_and_rate(text, found)
    raise TimingError(f"“{_shown(text)}” is not a display mode; {HOW}.")


def _size_and_rate(text: str, found: re.Match[str]) -> Request:
    width, height = _count(found["width"]), _count(found["height"])
    if width == 0 or height == 0:
        raise TimingError(f"“{_shown(text)}” has no picture: width and height start at 1.")
    if max(width, height) > MAX_TOTAL:
        raise TimingError(f"“{_shown(text)}” is larger than the {MAX_TOTAL} pixels or lines taken here.")
    if found["rate"] is None:
        raise TimingError(f"“{_shown(text)}” lacks a refresh rate; write it after @, as in {text}@60.")
    rate_hz = float(found["rate"].replace(",", "."))
    if rate_hz == 0.0:
        raise TimingError(f"“{_shown(text)}” asks for 0 frames a second; write a rate, as in @60.")
    suffix = _SUFFIXES[(found["suffix"] or found["scan"] or "").lower()]
    return Request(width, height, rate_hz, suffix)


def _count(digits: str) -> int:
    """Read a count of at most six digits; longer ones are as impossible as 999999."""
    return int(digits) if len(digits) <= 6 else 999_999


def _shown(text: str) -> str:
    return text if len(text) <= 40 else text[:39] + "…"
