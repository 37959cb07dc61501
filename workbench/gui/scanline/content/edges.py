"""The transitions of a line: where a code changes, and the samples around one."""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from workbench.project.document import Channel
from workbench.waveform.scanline import Scanline

__all__ = ["CloseUp", "changing_channel", "close_up", "edge_pixels", "nearest_edge", "smoothed"]


@dataclass(frozen=True, slots=True, eq=False)
class CloseUp:
    """The colour traces around one transition."""

    times_s: NDArray[np.float64]
    """From the transition on, shape (n_samples,). [s]"""
    volts: NDArray[np.float32]
    """Red, green, blue, shape (3, n_samples). [V]"""
    channel: Channel | None
    """A channel that changes here, the wanted one if it does; none if no code changes."""


def nearest_edge(codes: NDArray[np.intp], pixel: int) -> int | None:
    """Return the pixel nearest to another at whose start any code changes; none on a plain line.

    Parameters
    ----------
    codes : int array, shape (3, n_pixels)
        Codes of the line. [1]
    pixel : int
        Where to look from. [1]
    """
    edges = edge_pixels(codes)
    if not len(edges):
        return None
    return int(edges[np.argmin(np.abs(edges - pixel))])


def edge_pixels(codes: NDArray[np.intp]) -> NDArray[np.intp]:
    """Return the pixels at whose start any code changes. [1]"""
    return np.flatnonzero((np.diff(codes) != 0).any(axis=0)) + 1


def changing_channel(codes: NDArray[np.intp], pixel: int, wanted: Channel) -> Channel | None:
    """Return a channel whose code changes at the start of a pixel, the wanted one if it does."""
    changed = codes[:, pixel] != codes[:, pixel - 1] if pixel else np.zeros(3, np.bool_)
    changing = [channel for channel, moves in zip(Channel, changed, strict=True) if moves]
    return wanted if wanted in changing else next(iter(changing), None)


def close_up(scanline: Scanline, pixel: int, wanted: Channel, *, around_s: float) -> CloseUp:
    """Return the samples around the start of a pixel, two fifths of them before it.

    Parameters
    ----------
    scanline : Scanline
        The line.
    pixel : int
        From the start of the front porch. [1]
    wanted : Channel
        The channel whose figures are asked for first.
    around_s : float
        Length of what is shown, ``0 < around_s``. [s]
    """
    start = pixel if scanline.starts is None else float(scanline.starts[pixel])
    edge = start * scanline.samples_per_pixel
    length = max(8, round(around_s / scanline.step_s))
    first = max(0, math.floor(edge) - 2 * length // 5)
    last = min(first + length, scanline.volts.shape[1] - 1)
    times_s = (np.arange(first, last + 1) - edge) * scanline.step_s
    volts = scanline.volts[:3, first : last + 1]
    return CloseUp(times_s, volts, changing_channel(scanline.codes, pixel, wanted))


def smoothed(samples: NDArray[np.floating], parts: int) -> NDArray[np.float64]:
    """Return evenly spaced samples with ``parts - 1`` more between each two, on a curve without kinks.

    Parameters
    ----------
    samples : float array, shape (..., n_samples)
        ``2 <= n_samples``.
    parts : int
        How many times as fine, ``1 <= parts``. [1]

    Returns
    -------
    float array, shape (..., (n_samples - 1) * parts + 1)
        Through every sample; between two neighbours it stays between them, so that no overshoot
        is drawn that is not in the samples.

    Notes
    -----
    Cubic Hermite pieces whose slope at a sample is the harmonic mean of the slopes each side, and
    level where these differ in sign.

    References
    ----------
    .. [1] F. N. Fritsch and J. Butland, A method for constructing local monotone piecewise cubic
           interpolants, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304, from memory.
    """
    values = np.asarray(samples, np.float64)
    slopes = np.diff(values)
    before, after = slopes[..., :-1], slopes[..., 1:]
    product = before * after
    with np.errstate(divide="ignore", invalid="ignore"):
        inner = np.where(product > 0.0, 2.0 * product / (before + after), 0.0)
    tangents = np.concatenate((slopes[..., :1], inner, slopes[..., -1:]), axis=-1)
    t = np.arange(parts) / parts
    start, end = values[..., :-1, None], values[..., 1:, None]
    leave, arrive = tangents[..., :-1, None], tangents[..., 1:, None]
    pieces = (
        start * (1 + 2 * t) * (1 - t) ** 2
        + leave * t * (1 - t) ** 2
        + end * t**2 * (3 - 2 * t)
        + arrive * t**2 * (t - 1)
    )
    flat = pieces.reshape(*values.shape[:-1], -1)
    return np.concatenate((flat, values[..., -1:]), axis=-1)
