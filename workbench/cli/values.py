"""Values typed on the command line, each with a sentence for what cannot be read."""

import argparse
import re
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TypeVar

from workbench.circuit.ladders import MOST_BITS
from workbench.errors import WorkbenchError
from workbench.units import parse_quantity

__all__ = [
    "bit_counts",
    "new_file",
    "on_resistance",
    "optional_ohms",
    "plain_text",
    "quantity",
    "readable",
    "whole_number",
    "with_negative_values",
]

T = TypeVar("T")


def readable(read: Callable[[str], T], noun: str) -> Callable[[str], T]:
    """Return a reader whose errors argparse shows with the name of the option."""

    def wrapped(text: str) -> T:
        try:
            return read(text)
        except WorkbenchError as error:
            raise argparse.ArgumentTypeError(str(error)) from error

    wrapped.__name__ = noun
    return wrapped


def new_file(text: str) -> Path:
    """Read the name of a file that a project is written to."""
    if text in ("", "-"):
        raise argparse.ArgumentTypeError(f"“{text}” is no name of a file: write one like board.backporch")
    return Path(text)


def plain_text(word: str) -> str:
    """Return a word of the command line as text that can be kept and shown.

    Bytes that are no text in this machine's encoding are read as UTF-8, or else escaped.
    """
    return word.encode("utf-8", "surrogateescape").decode("utf-8", "backslashreplace")


def quantity(unit: str, *, zero: bool = False) -> Callable[[str], float]:
    """Return a reader of one value in the unit, such as ``4k7``."""
    return readable(lambda text: parse_quantity(text, unit, zero=zero), unit)


def bit_counts(text: str) -> tuple[int, int, int]:
    """Read the bits of red, green and blue: ``3,3,2``, or ``5`` for all three. [1]"""
    words = [word.strip() for word in text.split(",")]
    counts = [int(word) for word in words if word.isascii() and word.isdigit() and len(word) <= 4]
    if len(counts) != len(words) or len(words) not in (1, 3):
        raise argparse.ArgumentTypeError("give three whole numbers with commas between, as in 5,5,5")
    if not all(1 <= count <= MOST_BITS for count in counts):
        raise argparse.ArgumentTypeError(f"a channel has 1 to {MOST_BITS} bits, not {text}")
    return counts[0], counts[len(counts) // 2], counts[-1]


def on_resistance(text: str) -> tuple[float, float]:
    """Read the on-resistance of a pin: ``40``, or ``40/55`` for high and low. [Ω]"""
    parts = text.split("/")
    if len(parts) > 2:
        raise argparse.ArgumentTypeError("give one resistance, or high/low as in 40/55")
    ohms = [quantity("Ω", zero=True)(part) for part in parts]
    return ohms[0], ohms[-1]


def whole_number(text: str) -> int:
    """Read a whole number, 0 or more. [1]"""
    if not (text.isascii() and text.isdigit() and len(text) <= 18):
        raise argparse.ArgumentTypeError(f"“{text[:40]}” is no whole number: write one like 1000")
    return int(text)


def optional_ohms(text: str) -> float | None:
    """Read a resistance, or ``none``. [Ω]"""
    return None if text.strip().lower() == "none" else quantity("Ω")(text)


def with_negative_values(words: Sequence[str]) -> list[str]:
    """Return the words of a command line with each value below 0 tied to its option.

    By itself ``-1%`` would be taken for an option, and never reach the reader that knows what is
    wrong with it.

    >>> with_negative_values(["tolerance", "a.backporch", "--resistors", "-1%"])
    ['tolerance', 'a.backporch', '--resistors=-1%']
    """
    tied: list[str] = []
    for word in words:
        if _NEGATIVE.match(word) and tied and _OPTION.fullmatch(tied[-1]):
            tied[-1] += f"={word}"
        else:
            tied.append(word)
    return tied


_OPTION = re.compile(r"--[a-z][a-z-]*")
_NEGATIVE = re.compile(r"-[.,]?\d|-(inf|nan)", re.IGNORECASE)
