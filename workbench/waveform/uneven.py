"""Pixels of a fractional divider: each lasts a whole number of system clocks, some one more than others.

The time axis stays even, and so do the samples; what moves are the edges between pixels. What a run of
pixels shows is still the drive of these pixels, and of some before, times the shapes they leave: only that
each leaves the response to an edge where it really starts, less that where it really ends. How the edges
lie in a run depends on nothing but the place of its start within a system clock. So the runs of a frame
are sorted by that place, and those of one place are one product.
"""

from fractions import Fraction

import numpy as np
from numpy.typing import NDArray

from workbench.timing.clock.pixels import edge_phases
from workbench.waveform.product import multiply

__all__ = ["FINER", "UnevenRuns"]

Float32Array = NDArray[np.float32]
IntArray = NDArray[np.integer]
Int64Array = NDArray[np.int64]

FINER = 4
"""How many times finer than volts the shapes of uneven pixels are best sampled: at 640x480@60 and with edges
of 2 ns no voltage is off by more than 8 mV then, by twice as coarse ones up to 26 mV. Measured. [1]"""
_PLACES = 64
"""Places within a system clock that are told apart; of finer dividers the nearest is taken, so that all
edges of a run are off by up to 1/128 of a clock together, and no pixel has another length. [1]"""
_NEAR = 64
"""Pixels before a run whose lengths are exact for finer dividers; what trails longer is smooth. [1]"""
_AT_ONCE = 1 << 20
"""Numbers worked on at once while shapes are made. [1]"""


class UnevenRuns:
    """What uneven pixels leave in runs of some pixels."""

    def __init__(self, shapes: Float32Array, divider: Fraction, *, samples: int, pixels: int) -> None:
        """Take the responses to one pixel of the mean length.

        Parameters
        ----------
        shapes : float32 array, shape (n_shapes, n_pixels_after, n_fine)
            Responses to one even pixel, at least as finely sampled as the volts. [1]
        divider : Fraction
            System clocks a pixel, ``1 <= divider``. [1]
        samples : int
            Even samples a pixel of the volts. [1]
        pixels : int
            Pixels of a run. [1]

        Notes
        -----
        Even pixels after each other add up to an edge, which lies anywhere then: between the samples
        given it is taken for straight.
        """
        self._finer = shapes.shape[2]
        self._edges = shapes.astype(np.float64).cumsum(axis=1).reshape(len(shapes), -1)
        self._before, self._pixels = int(shapes.shape[1]) - 1, pixels
        self._at = np.arange(pixels * samples) / samples
        self._divider = divider
        self._cuts = self._places()
        self._known: dict[int, Float32Array] = {}
        self._volts = np.empty((0, 0), np.float32)

    @property
    def reach(self) -> int:
        """Return how many pixels show in a run: those before, its own, and one that may start early. [1]"""
        return self._before + self._pixels + 1

    def multiply(self, windows: Float32Array, first_pixels: IntArray, out: Float32Array) -> None:
        """Write the volts of some runs.

        Parameters
        ----------
        windows : float32 array, shape (n_runs, n_shapes, reach)
            Drive of the pixels that show in each run, oldest first. [V]
        first_pixels : int array, shape (n_runs,)
            First pixel of each run, counted from where the divider started. [1]
        out : float32 array, shape (n_runs, pixels * samples)
            Where the voltages are written. [V]
        """
        places = self._nearest(edge_phases(self._divider, first_pixels))
        order = np.argsort(places, kind="stable")
        in_order = places[order]
        bounds = [0, *(np.flatnonzero(np.diff(in_order)) + 1).tolist(), len(order)]
        met = in_order[bounds[:-1]].tolist()
        self._learn([place for place in met if place not in self._known])
        if self._volts.shape != out.shape:
            self._volts = np.empty(out.shape, np.float32)
        rows = windows[order].reshape(len(order), -1)
        for place, start, stop in zip(met, bounds, bounds[1:], strict=False):
            multiply(rows[start:stop], self._known[place], self._volts[start:stop])
        out[order] = self._volts

    def _places(self) -> Int64Array | None:
        """Return where the places that are told apart begin; none where all are.

        From one to the next no edge passes from one clock to another.
        """
        parts = self._divider.denominator
        if parts <= _PLACES:
            return None
        even = np.arange(_PLACES) * parts // _PLACES
        passing = edge_phases(self._divider, -np.arange(-min(self._before, _NEAR), self._pixels + 2))
        return np.append(np.unique(np.concatenate([even, passing])), parts)

    def _nearest(self, phases: Int64Array) -> Int64Array:
        if self._cuts is None:
            return phases
        at = np.searchsorted(self._cuts, phases, side="right")
        middle: Int64Array = (self._cuts[at - 1] + self._cuts[at] - 1) // 2
        return middle

    def _learn(self, places: list[int]) -> None:
        """Make the shapes of runs that start at some places, a few at a time."""
        some = max(1, _AT_ONCE // (len(self._edges) * (self.reach + 1) * len(self._at)))
        for first in range(0, len(places), some):
            now = places[first : first + some]
            self._known.update(zip(now, self._shapes(np.array(now)), strict=True))

    def _shapes(self, places: Int64Array) -> Float32Array:
        """Return the shapes of runs, shape (n_places, n_shapes * reach, pixels * samples). [1]"""
        pixels = np.arange(-self._before, self._pixels + 2)
        clocks, parts = self._divider.numerator, self._divider.denominator
        starts = pixels - (places[:, None] + pixels * (clocks % parts)) % parts / clocks
        # What falls on an edge exactly must not fall before it by a rounding.
        at = (self._at - starts[:, :, None] + 1e-9) * self._finer
        grid = np.arange(self._edges.shape[1])
        edges = np.stack([np.interp(at, grid, edge, left=0.0) for edge in self._edges], axis=1)
        shapes: Float32Array = (edges[:, :, :-1] - edges[:, :, 1:]).astype(np.float32)
        return shapes.reshape(len(places), -1, len(self._at))
