"""Images brought to the size of a mode: cropped, scaled, letterboxed, halved, doubled."""

import numpy as np
from numpy.typing import NDArray

from workbench.errors import FileError
from workbench.picture.scene import Fit

__all__ = ["MOST_PIXELS", "check_size", "fit_image", "over_black"]

ByteArray = NDArray[np.uint8]
FloatArray = NDArray[np.float32]

MOST_PIXELS = 64_000_000
"""Pixels of the largest image that is read: some 200 MB once decoded. Our own bound. [1]"""
_BAND = 1 << 21
"""Values scaled at once: a large image is worked through in bands. [1]"""


def check_size(width: int, height: int, what: str = "this picture") -> None:
    """Refuse an image by its size, before it is decoded.

    Raises
    ------
    FileError
        If it has no pixel, or more than is read.
    """
    if width < 1 or height < 1:
        raise FileError(f"{what} has no pixels ({width} × {height}): choose another one.")
    if width * height > MOST_PIXELS:
        raise FileError(
            f"{what} has {width} × {height} pixels, more than the {MOST_PIXELS // 1_000_000} million "
            "that are read: make it smaller first."
        )


def over_black(rgba: ByteArray) -> ByteArray:
    """Return an image with its transparent parts over black, (h, w, 4) to (h, w, 3). [1]"""
    colour, alpha = rgba[:, :, :3].astype(np.uint16), rgba[:, :, 3:].astype(np.uint16)
    return ((colour * alpha + 127) // 255).astype(np.uint8)


def fit_image(
    image: ByteArray, width: int, height: int, fit: Fit, *, smooth: bool = True, aspect: float = 1.0
) -> ByteArray:
    """Return an image at the size of the active picture.

    Parameters
    ----------
    image : uint8 array, shape (rows, columns, 3)
        At least one pixel. [1]
    width, height : int
        Active pixels and lines. [1]
    fit : Fit
        What is done where size or shape differ; what stays empty is black.
    smooth : bool
        Mean of the pixels that fall together and straight lines between those that do not;
        otherwise the nearest pixel.
    aspect : float
        Width of a pixel on the screen over its height: a whole or filled image keeps its shape there,
        its own pixels being square. [1]

    Returns
    -------
    fitted : uint8 array, shape (height, width, 3)
    """
    rows, columns, _ = image.shape
    if fit is Fit.STRETCH:
        return _scaled(image, width, height, smooth)
    across, down = _factors(fit, width / columns, height / rows, aspect)
    # Of a large image only what will be seen is scaled.
    image = _middle(image, min(columns, round(width / across) or 1), min(rows, round(height / down) or 1))
    rows, columns, _ = image.shape
    new_width, new_height = max(1, round(columns * across)), max(1, round(rows * down))
    return _middle(_scaled(image, new_width, new_height, smooth), width, height)


def _factors(fit: Fit, across: float, down: float, aspect: float) -> tuple[float, float]:
    """Return how an image is scaled across and down, from what would fill the width and the height."""
    if fit in (Fit.LETTERBOX, Fit.FILL):
        choose = min if fit is Fit.LETTERBOX else max
        scale = choose(across * aspect, down)
        return scale / aspect, scale
    scale = {Fit.AS_IT_IS: 1.0, Fit.HALVED: 0.5, Fit.DOUBLED: 2.0}[fit]
    return scale, scale


def _middle(image: ByteArray, width: int, height: int) -> ByteArray:
    """Crop or pad with black, keeping the middle in the middle."""
    rows, columns, _ = image.shape
    if (columns, rows) == (width, height):
        return image
    out = np.zeros((height, width, 3), np.uint8)
    (out_y, in_y, tall), (out_x, in_x, wide) = _overlap(rows, height), _overlap(columns, width)
    out[out_y : out_y + tall, out_x : out_x + wide] = image[in_y : in_y + tall, in_x : in_x + wide]
    return out


def _overlap(have: int, want: int) -> tuple[int, int, int]:
    """Return where the middle part starts in the new and the old, and how long it is."""
    return max(0, want - have) // 2, max(0, have - want) // 2, min(have, want)


def _scaled(image: ByteArray, width: int, height: int, smooth: bool) -> ByteArray:
    rows, columns, _ = image.shape
    if (columns, rows) == (width, height):
        return image
    if not smooth:
        y = np.arange(height) * rows // height
        nearest: ByteArray = image[y[:, None], np.arange(width) * columns // width]
        return nearest
    planes = [_resampled(_resampled(plane, height).T, width).T for plane in np.moveaxis(image, 2, 0)]
    fitted: ByteArray = np.clip(np.rint(np.stack(planes, axis=2)), 0, 255).astype(np.uint8)
    return fitted


def _resampled(plane: NDArray[np.uint8] | FloatArray, count: int) -> FloatArray:
    """Scale the rows of a plane: the mean of those that fall together, straight lines between others."""
    have, width = plane.shape
    out = np.empty((count, width), np.float32)
    band = max(1, _BAND // have)
    for left in range(0, width, band):
        columns = slice(left, left + band)
        resample = _means if count < have else _lines
        out[:, columns] = resample(plane[:, columns], count)
    return out


def _means(values: NDArray[np.uint8] | FloatArray, count: int) -> NDArray[np.float64]:
    """Return the mean of the rows, and parts of rows, that fall into each new row."""
    have = len(values)
    sums = np.zeros((have + 1, values.shape[1]))
    np.cumsum(values, axis=0, out=sums[1:])
    edges = np.linspace(0.0, have, count + 1)
    whole = np.minimum(edges.astype(np.intp), have - 1)
    part = (edges - whole)[:, None]
    below = sums[whole] * (1.0 - part) + sums[whole + 1] * part
    means: NDArray[np.float64] = np.diff(below, axis=0) * (count / have)
    return means


def _lines(values: NDArray[np.uint8] | FloatArray, count: int) -> NDArray[np.float64]:
    """Return values on straight lines between the middles of the old rows."""
    have = len(values)
    at = np.clip((np.arange(count) + 0.5) * have / count - 0.5, 0, have - 1)
    upper = at.astype(np.intp)
    lower = np.minimum(upper + 1, have - 1)
    part = (at - upper)[:, None]
    return np.asarray(values[upper] * (1.0 - part) + values[lower] * part)
