"""The shape of a screen, and of a pixel on it."""

__all__ = ["pixel_aspect", "screen_aspect"]

_SQUARE = (5 / 4, 4 / 3, 3 / 2, 16 / 10, 5 / 3, 16 / 9, 17 / 9, 64 / 27)
"""Shapes of screens that there are; a mode of such a shape has square pixels. Common practice, no source."""
_NEAR = 0.01
"""How far a mode's shape may be off and still be one of them: 1366 × 768 is 0.05 %, 2048 × 1080 0.4 %,
848 × 480 0.6 % off, and 720 × 400, which screens of 4:3 show, 1.2 %. Our own. [1]"""
_USUAL = 4 / 3
"""The shape of a screen that shows a mode of any other shape. Common practice, no source."""


def screen_aspect(width: int, height: int) -> float:
    """Return the width of the picture on the screen over its height. [1]

    Parameters
    ----------
    width, height : int
        Pixels and lines of the mode, each at least 1. [1]

    Notes
    -----
    A mode whose counts have the shape of a screen is taken to have square pixels. One of any other
    shape, such as 1312 × 480, fills a screen of 4:3, whatever that makes of its pixels.

    Examples
    --------
    >>> screen_aspect(1920, 1080) == 1920 / 1080, screen_aspect(1312, 480) == 4 / 3
    (True, True)
    """
    shape = width / height
    return shape if any(abs(shape / known - 1.0) <= _NEAR for known in _SQUARE) else _USUAL


def pixel_aspect(width: int, height: int) -> float:
    """Return the width of a pixel on the screen over its height: 1 where pixels are square. [1]

    Examples
    --------
    >>> pixel_aspect(640, 480), round(pixel_aspect(1280, 480), 6)
    (1.0, 0.5)
    """
    return screen_aspect(width, height) * height / width
