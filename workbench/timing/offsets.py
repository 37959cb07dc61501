"""How far a rate is off, in words."""

__all__ = ["offset_words"]

_IN_PERCENT = 10_000.0
"""From here on, 1 %, an offset is told in percent. Our own. [ppm]"""


def offset_words(ppm: float, *, decimals: int = 0) -> str:
    """Return an offset with its sign, in ppm or, where it is large, in percent.

    Parameters
    ----------
    ppm : float
        Parts in a million; negative where the rate is low. [ppm]
    decimals : int
        Decimals of a figure in ppm. [1]

    Examples
    --------
    >>> offset_words(993.05), offset_words(-0.2), offset_words(-587_577)
    ('+993 ppm', '0 ppm', '−58.8 %')
    """
    percent = abs(ppm) >= _IN_PERCENT
    text = f"{ppm * 1e-4:+.1f}" if percent else f"{ppm:+.{decimals}f}"
    shown = text.replace("-", "\u2212") if text.strip("+-0.") else "0"
    return f"{shown} {'%' if percent else 'ppm'}"
