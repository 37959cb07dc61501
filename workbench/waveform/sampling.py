"""Where on the signal a monitor looks: for black, for each column, for each row.

All positions are on the signal's own line: samples from the start of its front porch. A monitor
counts from the edges of the syncs it receives, with its own pixel: the part of a line that it
believes a pixel to be. Its clock is even, also where pixels are not: it follows the mean of many
sync edges.
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from workbench.timing.mode import Mode
from workbench.waveform.monitor import Monitor, Screen

__all__ = ["Adjustment", "Sampling", "black_samples", "column_on", "instants", "sampling_of"]

ByteArray = NDArray[np.uint8]

_TUBE_SPOTS = (np.arange(4) + 0.5) / 4.0
"""Instants of a pixel whose light a tube's spot adds up; a panel looks once. [1]"""


@dataclass(frozen=True, slots=True)
class Adjustment:
    """What a monitor was set to, by its table or by its own search."""

    total: int
    """Line total of its sampling clock. [1]"""
    left: int
    """Its pixels from the leading edge of H sync to the first column. [1]"""
    top: int
    """Lines from the leading edge of V sync to the first row. [1]"""
    phase: float
    """Instant within a pixel. [1]"""


@dataclass(frozen=True, slots=True, eq=False)
class Sampling:
    """The places a monitor looks at."""

    columns: NDArray[np.intp]
    """Samples of the line that make each column shown, shape (n_columns, n_spots). [1]"""
    black: slice
    """Samples of the line in which black is measured."""
    rows: NDArray[np.intp]
    """Row of the picture for each row shown; outside 0 … v.active - 1 is blanking, shape (n_rows,). [1]"""


def sampling_of(
    sent: Mode, monitor: Monitor, adjustment: Adjustment, samples: int, *, every: int = 1, early: float = 0.0
) -> Sampling:
    """Return where a monitor looks.

    Parameters
    ----------
    sent : Mode
        The signal's true counts.
    monitor : Monitor
        Its clamp window and the size it shows.
    adjustment : Adjustment
        Its clock and position.
    samples : int
        Samples of each true pixel. [1]
    every : int
        Show only each n-th column and row, for a preview, ``1 <= every``. [1]
    early : float
        See `instants`. [pixels]
    """
    shown = monitor.mode(sent)
    at = instants(sent, monitor, adjustment, np.arange(0, shown.h.active, every), early=early)
    # What runs past the end of the line is the next one's front porch, which is like this one's.
    columns = np.floor(at * samples + 1e-6).astype(np.intp) % (sent.h.total * samples)
    rows = np.arange(0, shown.v.active, every) + adjustment.top - sent.v.sync - sent.v.back_porch
    return Sampling(columns, black_samples(sent, monitor, adjustment, samples), rows)


def instants(
    sent: Mode, monitor: Monitor, adjustment: Adjustment, columns: NDArray[np.intp], *, early: float = 0.0
) -> NDArray[np.float64]:
    """Return when the columns of the screen look at the line, shape (n_columns, n_spots).

    They are counted from the start of the front porch, in the signal's own pixels. [1]

    Parameters
    ----------
    early : float
        How early the leading edge of H sync comes, on average, where pixels are uneven. [pixels]
    """
    spots = _TUBE_SPOTS if monitor.screen is Screen.TUBE else np.array([adjustment.phase])
    own_pixel = sent.h.total / adjustment.total
    at: NDArray[np.float64] = (columns[:, None] + adjustment.left + spots) * own_pixel
    return sent.h.edges[0] - early + at


def column_on(sent: Mode, monitor: Monitor, adjustment: Adjustment, pixel: int) -> int:
    """Return the column of the screen, shown or not, that looks at a pixel of the line.

    Parameters
    ----------
    pixel : int
        Counted from the start of the front porch. [1]

    Notes
    -----
    Of several the one that looks nearest to the pixel's middle; where the screen's clock passes over
    the pixel, the nearest there is.
    """
    own_pixel = sent.h.total / adjustment.total
    spot = 0.5 if monitor.screen is Screen.TUBE else adjustment.phase
    place = (pixel + 0.5 - sent.h.edges[0]) / own_pixel - adjustment.left - spot
    return math.ceil(place - 0.5 - 1e-9)


def black_samples(sent: Mode, monitor: Monitor, adjustment: Adjustment, samples: int) -> slice:
    """Return the samples of the line in which black is measured, of some samples a pixel."""
    own_pixel = samples * sent.h.total / adjustment.total
    # A line that ends before has nothing else to show than its last sample.
    last = sent.h.total * samples - 1
    start = min(sent.h.edges[1] * samples + round(monitor.clamp_start * own_pixel), last)
    return slice(start, start + max(1, round(monitor.clamp_pixels * own_pixel)))
