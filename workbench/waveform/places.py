"""Which pixel of the picture a dot of the screen shows, and how far the two are apart.

A monitor that assumes another total, porch or phase than the signal's shows the picture moved,
stretched or cut. A dot of its screen still looks at one place of one line.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from workbench.timing.mode import Mode
from workbench.waveform.sampling import Adjustment

__all__ = ["Places", "difference", "places_of"]

ByteArray = NDArray[np.uint8]
IntArray = NDArray[np.intp]


@dataclass(frozen=True, slots=True, eq=False)
class Places:
    """The column and the row of the picture under each column and row of the screen."""

    columns: IntArray
    """Shape (n_columns,); outside ``0 … h.active - 1`` is blanking. [1]"""
    rows: IntArray
    """Shape (n_rows,); outside ``0 … v.active - 1`` is blanking. [1]"""

    def dot_of(self, column: int, row: int) -> tuple[int, int] | None:
        """Return the screen's column and row that show a pixel nearest; none if it is cut off."""
        x, y = _nearest(self.columns, column), _nearest(self.rows, row)
        return None if x is None or y is None else (x, y)


def places_of(sent: Mode, adjustment: Adjustment, n_columns: int, n_rows: int, *, every: int = 1) -> Places:
    """Return what the dots of a screen show.

    Parameters
    ----------
    sent : Mode
        The signal's true counts.
    adjustment : Adjustment
        Clock and position of the monitor.
    n_columns, n_rows : int
        Size of the picture on the screen. [1]
    every : int
        The screen shows each n-th column and row only, ``1 <= every``. [1]
    """
    own_pixel = sent.h.total / adjustment.total
    x = np.arange(n_columns) * every + adjustment.left + adjustment.phase
    at = np.floor(sent.h.front_porch + x * own_pixel + 1e-9).astype(np.intp) % sent.h.total
    rows = np.arange(n_rows, dtype=np.intp) * every + adjustment.top - sent.v.sync - sent.v.back_porch
    return Places(at - sent.h.blanking, rows)


def difference(sent: ByteArray, seen: ByteArray, places: Places, *, every: int = 1) -> ByteArray:
    """Return how far each dot of the screen is from the pixel it shows, sRGB bytes, shape of ``seen``. [1]

    Parameters
    ----------
    sent : uint8 array, shape (n_rows, n_columns, 3)
        The picture as sent, each ``every``-th column and row of it. [1]
    seen : uint8 array, shape (m_rows, m_columns, 3)
        The picture on the screen. [1]
    places : Places
        See :func:`places_of`.
    every : int
        See there. [1]

    Notes
    -----
    Outside the picture black was sent.
    """
    wanted = np.zeros_like(seen)
    rows, columns = places.rows // every, places.columns // every
    here_y = np.flatnonzero((places.rows >= 0) & (rows < len(sent)))
    here_x = np.flatnonzero((places.columns >= 0) & (columns < sent.shape[1]))
    wanted[np.ix_(here_y, here_x)] = sent[np.ix_(rows[here_y], columns[here_x])]
    return np.maximum(wanted, seen) - np.minimum(wanted, seen)


def _nearest(places: IntArray, place: int) -> int | None:
    if not places.size:
        return None
    at = int(np.abs(places - place).argmin())
    step = max(1, int(np.abs(np.diff(places)).min(initial=1)))
    return at if abs(int(places[at]) - place) <= step else None
