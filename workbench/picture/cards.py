"""Test cards: the code of every pixel, computed at the size of the mode.

A card is a rule from column and row to three codes, so one row costs one row: the scanline
never waits for a frame. Where a picture repeats its pixels or lines, the rule is asked for the
smaller picture and its answer is sent several times. Every card works for a single pixel, a
single line, odd sizes and any number of bits, different in each channel.
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from workbench.picture.scene import Card, Picture

__all__ = ["BAR_NAMES", "Bits", "Label", "card_codes", "card_labels", "card_row", "card_rows"]

IntArray = NDArray[np.intp]
Bits = tuple[int, int, int]

BAR_NAMES = ("white", "yellow", "cyan", "green", "magenta", "red", "blue", "black")
"""The colour bars from left to right, in the order of falling luminance."""

# Red, green, blue of each bar, on or off.
_BARS = np.array([[1, 1, 0, 0, 1, 1, 0, 0], [1, 1, 1, 1, 0, 0, 0, 0], [1, 0, 1, 0, 1, 0, 1, 0]], np.intp)
_CHANNELS = ("red", "green", "blue")
# Corner blocks of the border card (top left, top right, bottom left, bottom right): four different
# colours, so that a picture shown mirrored, turned or shifted tells itself.
_CORNERS = ((1, 0, 0), (0, 1, 0), (0, 0, 1), (1, 1, 0))
_CORNER_PART = 16
"""A corner block is this part of the shorter side. [1]"""


@dataclass(frozen=True, slots=True)
class Label:
    """What an area of a row shows, for the head of the plot."""

    start: int
    """First column, counted from the start of the active picture. [1]"""
    stop: int
    """Column after the last, ``start < stop``. [1]"""
    text: str


@dataclass(frozen=True, slots=True, eq=False)
class _Raster:
    """The pixels asked for: all columns of some rows of a frame."""

    width: int
    height: int
    bits: Bits
    x: IntArray
    """Columns, shape (width,). [1]"""
    y: IntArray
    """Rows, shape (n_rows, 1). [1]"""

    @property
    def full(self) -> IntArray:
        """Return the highest code of each channel, shape (3, 1, 1). [1]"""
        return (1 << np.array(self.bits, np.intp).reshape(3, 1, 1)) - 1


def card_row(picture: Picture, width: int, height: int, bits: Bits, row: int) -> IntArray:
    """Return the codes of one row of the active picture, without building the frame.

    Parameters
    ----------
    picture : Picture
        The card, and the colour of a solid one.
    width, height : int
        Active pixels and lines of the mode, ``1 <= width``, ``1 <= height``. [1]
    bits : tuple of 3 int
        Bits of red, green and blue, each ``0 … 8``; a channel without pins shows code 0. [1]
    row : int
        Row from the top, ``0 <= row < height``. [1]

    Returns
    -------
    codes : int array, shape (3, width)
        Red, green and blue. [1]
    """
    return card_rows(picture, width, height, bits, np.array([row], np.intp))[:, 0]


def card_rows(picture: Picture, width: int, height: int, bits: Bits, rows: NDArray[np.integer]) -> IntArray:
    """Return the codes of some rows of the active picture, shape (3, n_rows, width). [1]

    Other parameters are those of :func:`card_row`.
    """
    columns, n_rows = picture.size(width, height)
    codes = _codes(picture, columns, n_rows, bits, (rows // picture.repeat_lines).astype(np.intp))
    return np.repeat(codes, picture.repeat_pixels, axis=2)[:, :, :width].astype(np.intp)


def card_codes(picture: Picture, width: int, height: int, bits: Bits) -> NDArray[np.uint8]:
    """Return the codes of the whole active picture, shape (3, height, width). [1]

    Parameters are those of :func:`card_row`. A frame is held in bytes: a code has at most 8 bits.
    """
    codes = np.empty((3, height, width), np.uint8)
    # In bands of rows: a rule computes in whole words, and a long mode has millions of pixels.
    band = max(1, 65536 // width)
    columns, n_rows = picture.size(width, height)
    across, down = picture.repeat_pixels, picture.repeat_lines
    for top in range(0, n_rows, band):
        rows = np.arange(top, min(top + band, n_rows), dtype=np.intp)
        sent = np.repeat(_codes(picture, columns, n_rows, bits, rows), across, axis=2)[..., :width]
        for copy in range(down):
            first = top * down + copy
            into = codes[:, first : (top + len(rows)) * down : down]
            into[:] = sent[:, : into.shape[1]]
    return codes


def card_labels(picture: Picture, width: int, height: int, bits: Bits, row: int) -> tuple[Label, ...]:
    """Return what the areas of one row show, from left to right.

    Parameters are those of :func:`card_row`. Areas narrower than a pixel are left out.
    """
    across = picture.repeat_pixels
    columns, rows = picture.size(width, height)
    return tuple(
        Label(label.start * across, min(label.stop * across, width), label.text)
        for label in _labels(picture, columns, rows, bits, row // picture.repeat_lines)
    )


def _labels(picture: Picture, width: int, height: int, bits: Bits, row: int) -> tuple[Label, ...]:
    if picture.card is Card.COLOUR_BARS:
        bar = np.arange(width) * len(BAR_NAMES) // width
        starts = np.searchsorted(bar, np.arange(len(BAR_NAMES) + 1))
        spans = zip(starts[:-1], starts[1:], BAR_NAMES, strict=True)
        return tuple(Label(int(start), int(stop), name) for start, stop, name in spans if start < stop)
    if picture.card is Card.CHANNEL_RAMPS:
        return (Label(0, width, f"{_CHANNELS[row * 3 // height]} ramp, code 0 … {_top(bits, row, height)}"),)
    if picture.card is Card.GREY_RAMP:
        return (Label(0, width, f"grey ramp, {1 << max(bits)} steps"),)
    return (Label(0, width, picture.card.value),)


def _top(bits: Bits, row: int, height: int) -> int:
    return (1 << bits[row * 3 // height]) - 1


def _codes(picture: Picture, width: int, height: int, bits: Bits, rows: IntArray) -> IntArray:
    """Return the codes of some rows, shape (3, n_rows, width)."""
    raster = _Raster(width, height, bits, np.arange(width, dtype=np.intp), rows[:, None])
    codes = _RULES[picture.card](raster, picture)
    return np.broadcast_to(codes, (3, len(rows), width))


def _colour_bars(raster: _Raster, picture: Picture) -> IntArray:
    bar = raster.x * len(BAR_NAMES) // raster.width
    return raster.full * _BARS[:, None, bar]


def _grey_ramp(raster: _Raster, picture: Picture) -> IntArray:
    """Step through the levels of the finest channel; the others take the nearest code."""
    steps = 1 << max(raster.bits)
    return _nearest(_ramp(raster.width, steps) / max(1, steps - 1), raster.full)


def _channel_ramps(raster: _Raster, picture: Picture) -> IntArray:
    """Show red, green and blue ramps one under the other, each through all its codes."""
    band = raster.y * 3 // raster.height
    ramps = np.stack([_ramp(raster.width, 1 << bits) for bits in raster.bits])
    return np.where(band == np.arange(3)[:, None, None], ramps[:, None], 0)


def _all_codes(raster: _Raster, picture: Picture) -> IntArray:
    """Count through every colour in reading order: red is the slowest, blue the fastest.

    A frame with more pixels than colours shows some colours on several pixels and none on no
    pixel; a smaller one leaves colours out evenly.
    """
    _, green, blue = raster.bits
    pixel = raster.y * raster.width + raster.x
    colour = (pixel << sum(raster.bits)) // (raster.width * raster.height)
    shifts = np.array([green + blue, blue, 0], np.intp)[:, None, None]
    return (colour >> shifts) & raster.full


def _checkerboard(raster: _Raster, picture: Picture) -> IntArray:
    return raster.full * (1 - (raster.x + raster.y) % 2)


def _stripes(raster: _Raster, picture: Picture) -> IntArray:
    return raster.full * (1 - raster.x % 2)


def _border(raster: _Raster, picture: Picture) -> IntArray:
    """Draw a white frame one pixel wide; inside it, a block of its own colour in each corner."""
    x, y, right, bottom = raster.x, raster.y, raster.width - 1, raster.height - 1
    block = max(1, min(raster.width, raster.height) // _CORNER_PART)
    at_left, at_right = x <= block, x >= right - block
    at_top, at_bottom = y <= block, y >= bottom - block
    on = np.zeros((3, *np.broadcast_shapes(x.shape, y.shape)), np.intp)
    sides = ((at_top, at_left), (at_top, at_right), (at_bottom, at_left), (at_bottom, at_right))
    for (vertical, horizontal), colour in zip(sides, _CORNERS, strict=True):
        on = np.where(vertical & horizontal, np.array(colour, np.intp)[:, None, None], on)
    edge = (x == 0) | (x == right) | (y == 0) | (y == bottom)
    return raster.full * np.where(edge, 1, on)


def _solid(raster: _Raster, picture: Picture) -> IntArray:
    return _nearest(np.array(picture.colour).reshape(3, 1, 1), raster.full)


def _half_scale(raster: _Raster, picture: Picture) -> IntArray:
    """Alternate between the codes each side of half scale, where every bit changes at once."""
    below = (raster.full + 1) // 2 - 1
    toggled: IntArray = np.maximum(below + raster.x % 2, 0)
    return toggled


def _ramp(width: int, steps: int) -> IntArray:
    """Return rising steps over the width: of equal width, or evenly thinned where it is short."""
    if width < steps:
        return np.rint(np.linspace(0, steps - 1, width)).astype(np.intp)
    return np.arange(width, dtype=np.intp) * steps // width


def _nearest(fraction: NDArray[np.float64], full: IntArray) -> IntArray:
    """Return the code nearest to a part of full scale; halves go up."""
    return np.floor(np.clip(fraction, 0.0, 1.0) * full + 0.5).astype(np.intp)


_RULES: dict[Card, Callable[[_Raster, Picture], IntArray]] = {
    Card.COLOUR_BARS: _colour_bars,
    Card.GREY_RAMP: _grey_ramp,
    Card.CHANNEL_RAMPS: _channel_ramps,
    Card.ALL_CODES: _all_codes,
    Card.CHECKERBOARD: _checkerboard,
    Card.STRIPES: _stripes,
    Card.BORDER: _border,
    Card.SOLID: _solid,
    Card.HALF_SCALE: _half_scale,
}
