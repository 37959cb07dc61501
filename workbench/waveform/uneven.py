"""Pixels of a fractional divider: each lasts a whole number of system clocks, some one more than others.

Such a line is a line of system clocks: each pixel's code is held for as many of them as it lasts, and
what one clock leaves at the monitor follows from what one pixel leaves. So uneven pixels come out of the
same product as even ones; its volts are then read at the instants of even samples.
"""

from dataclasses import dataclass
from fractions import Fraction

import numpy as np
from numpy.typing import NDArray

from workbench.timing.clock.pixels import edge_clocks

__all__ = ["Clocks", "clock_shapes"]

Float32Array = NDArray[np.float32]
Int64Array = NDArray[np.int64]

_MOST_CLOCKS = 16
"""Clocks a pixel that are told apart; edges of faster clocks are moved to the nearest of so many. [1]"""


@dataclass(frozen=True, slots=True)
class Clocks:
    """When pixels change, on a grid of system clocks.

    Parameters
    ----------
    divider : Fraction
        System clocks a pixel, ``1 <= divider``. [1]
    """

    divider: Fraction

    @property
    def per_pixel(self) -> Fraction:
        """Return the steps of the grid in a pixel: system clocks, or coarser than those. [1]"""
        return min(self.divider, Fraction(_MOST_CLOCKS))

    def edges(self, first: int, count: int) -> Int64Array:
        """Return the step at which each of some pixels starts, and the last one ends, shape (count + 1,). [1]

        ``first`` is the number of pixels that went before since the divider started.
        """
        clocks = edge_clocks(self.divider, np.arange(first, first + count + 1, dtype=np.int64))
        if self.divider <= _MOST_CLOCKS:
            return clocks
        steps: Int64Array = np.rint(clocks * float(_MOST_CLOCKS / self.divider)).astype(np.int64)
        return steps

    def starts(self, first: int, count: int) -> NDArray[np.float64]:
        """Return where each of some pixels starts, and the last ends, from the even start of the first.

        Shape (count + 1,), each up to a system clock early. [pixels]
        """
        clocks = edge_clocks(self.divider, np.arange(first, first + count + 1, dtype=np.int64))
        return np.asarray(clocks / float(self.divider) - first)

    def early_pixels(self, pixel: int) -> float:
        """Return by how much a pixel starts before its even place, ``0 <= early < 1``. [pixels]"""
        return max(0.0, -float(self.starts(pixel, 0)[0]))


def clock_shapes(shapes: Float32Array, per_pixel: Fraction, samples: int) -> Float32Array:
    """Return what one step of the grid leaves where one pixel leaves ``shapes``.

    Parameters
    ----------
    shapes : float32 array, shape (n_shapes, n_pixels_after, samples_per_pixel)
        Responses to one pixel. [1]
    per_pixel : Fraction
        Steps a pixel, ``1 <= per_pixel``. [1]
    samples : int
        Samples of a step wanted, ``1 <= samples``. [1]

    Returns
    -------
    float32 array, shape (n_shapes, n_steps_after, samples)
        Responses to one step of the grid. [1]

    Notes
    -----
    Pixels after each other add up to an edge, and an edge less the edge one step later is a step's
    response: exact where responses are straight between samples.
    """
    n_shapes, n_after, per_shape = shapes.shape
    edge = shapes.astype(np.float64).cumsum(axis=1).reshape(n_shapes, -1)
    n_steps = int(np.ceil(n_after * per_pixel)) + 1
    at = np.arange(n_steps * samples) * (per_shape / (samples * float(per_pixel)))
    fine = np.stack([np.interp(at, np.arange(n_after * per_shape), row) for row in edge])
    fine[:, samples:] -= fine[:, :-samples].copy()
    return fine.reshape(n_shapes, n_steps, samples).astype(np.float32)
