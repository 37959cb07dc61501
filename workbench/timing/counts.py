"""Counts of pixels and lines as a person types them: 48, 48 px, 1.9 µs, 1907 ns."""

import re

from workbench.errors import QuantityError, TimingError
from workbench.timing.edges import lines_of, pixels_of
from workbench.timing.mode import Mode
from workbench.units import parse_quantity

__all__ = ["read_lines", "read_pixels"]

_COUNT = re.compile(r"(\d{1,8})\s*(?:px|pixels?|lines?)?", re.IGNORECASE)
_TIME = re.compile(r".*\d\s*[a-zµμ]*s", re.IGNORECASE)


def read_pixels(mode: Mode, text: str) -> int:
    """Return the pixels a text asks for; a time becomes the nearest whole number of them.

    Raises
    ------
    TimingError
        If the text is neither a whole number nor a time, or the time is impossible.

    Examples
    --------
    >>> from workbench.timing.search import find_mode
    >>> vga = find_mode("640x480@60")
    >>> [read_pixels(vga, text) for text in ("48", "48 px", "1.907us", "1907 ns")]
    [48, 48, 48, 48]
    """
    seconds = _seconds(text)
    return _count(text, "pixels", "48", "1.9 µs") if seconds is None else pixels_of(mode, seconds)


def read_lines(mode: Mode, text: str) -> int:
    """Return the lines a text asks for; as `read_pixels`.

    >>> from workbench.timing.search import find_mode
    >>> read_lines(find_mode("640x480@60"), "64 µs")
    2
    """
    seconds = _seconds(text)
    return _count(text, "lines", "33", "1.05 ms") if seconds is None else lines_of(mode, seconds)


def _seconds(text: str) -> float | None:
    """Return a typed time; none for a text that is none."""
    tidy = text.strip()
    if _COUNT.fullmatch(tidy) or not _TIME.fullmatch(tidy):
        return None
    try:
        return parse_quantity(tidy, "s", zero=True)
    except QuantityError as error:
        raise TimingError(f"{str(error)[0].upper()}{str(error)[1:]}.") from None


def _count(text: str, noun: str, example: str, time: str) -> int:
    found = _COUNT.fullmatch(text.strip())
    if found is None:
        raise TimingError(
            f"“{text.strip()[:40]}” is no whole number of {noun}: type one like {example}, or a time like "
            f"{time}."
        )
    return int(found[1])
