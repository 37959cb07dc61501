"""How far a rate is off, in words."""

__all__ = ["offset_words", "ppm_figure"]

_MINUS, _THIN = "\u2212", "\u202f"
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
    shown = text.replace("-", _MINUS) if text.strip("+-0.") else "0"
    return f"{shown} {'%' if percent else 'ppm'}"


def ppm_figure(ppm: float, *, decimals: int = 0) -> str:
    """Return an offset for a column of them: its sign and thousands apart, the unit in the column's head.

    Parameters
    ----------
    ppm : float
        Parts in a million; negative where the rate is low. [ppm]
    decimals : int
        Decimals of a figure below 10 000; a larger one has none. [1]

    Examples
    --------
    >>> ppm_figure(993.05, decimals=2), ppm_figure(-0.2), ppm_figure(-168_532.1, decimals=2)
    ('+993.05', '0', '−168\u202f532')
    """
    text = f"{ppm:+,.{0 if abs(ppm) >= _IN_PERCENT else decimals}f}"
    return text.replace("-", _MINUS).replace(",", _THIN) if text.strip("+-0.") else "0"
