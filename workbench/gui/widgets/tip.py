"""Tips of several sentences, in lines that fit a screen."""

from textwrap import fill

__all__ = ["tip_text"]

_LETTERS = 84
"""Length of a line; Qt breaks no plain text by itself. [1]"""


def tip_text(*paragraphs: str) -> str:
    """Return paragraphs as a tip shows them, empty ones left out."""
    return "\n\n".join(fill(words, _LETTERS) for words in paragraphs if words)
