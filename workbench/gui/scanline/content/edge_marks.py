"""What there is to mark at an edge: its first ghost, and where it has settled."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from workbench.circuit.response import Step
from workbench.gui.scanline.content.edges import nearest_edge
from workbench.gui.scanline.content.words import nanoseconds, signed

__all__ = ["EdgeMark", "edge_in_sight", "edge_marks"]

LEAST_GHOST = 0.01
"""A ghost smaller than this part of its edge is none to be marked. [1]"""
LARGE = 0.5
"""An edge is large from this part of the largest in sight on. [1]"""


@dataclass(frozen=True, slots=True)
class EdgeMark:
    """A moment after an edge, with its name and its figures."""

    name: str
    size: str
    """How large a ghost is, or how near the edge has come to its end."""
    figures: tuple[str, ...]
    """With the size, then shorter ones down to nothing."""
    after_s: float
    """Since the start of the edge. [s]"""
    settled: bool
    """Whether it ends what the edge does; else something new comes there."""


def edge_marks(step: Step, pixel_s: float) -> tuple[EdgeMark, ...]:
    """Return what is worth a mark: a ghost of 1 % or more, settling that takes longer than a pixel."""
    marks = []
    ratio, delay_s = step.first_ghost_ratio, step.first_ghost_s
    if ratio is not None and delay_s is not None and abs(ratio) >= LEAST_GHOST:
        marks.append(_mark("ghost", signed(f"{100 * ratio:.1f} %"), delay_s, pixel_s, settled=False))
    if step.settle_s > pixel_s:
        marks.append(_mark("settled", "½ LSB", step.settle_s, pixel_s, settled=True))
    return tuple(marks)


def _mark(name: str, size: str, after_s: float, pixel_s: float, *, settled: bool) -> EdgeMark:
    pixels = f"{after_s / pixel_s:.1f} px"
    times = f"{nanoseconds(after_s)} · {pixels}"
    return EdgeMark(name, size, (f"{size} · {times}", times, pixels, ""), after_s, settled)


def edge_in_sight(codes: NDArray[np.intp], pixel: int, first: float, last: float) -> int | None:
    """Return the pixel whose edge is marked: that nearest to a cursor, else the first large one in sight.

    Parameters
    ----------
    codes : int array, shape (3, n_pixels)
        Codes of the line. [1]
    pixel : int
        Under the cursor. [1]
    first, last : float
        What is in sight, from the start of the front porch. [pixels]
    """
    nearest = nearest_edge(codes, pixel)
    if nearest is None or first <= nearest <= last:
        return nearest
    changes = np.abs(np.diff(codes)).max(axis=0)
    edges = np.arange(1, len(changes) + 1)
    changes = np.where((first <= edges) & (edges <= last), changes, 0)
    if not changes.any():
        return None
    return int(edges[np.argmax(changes >= LARGE * changes.max())])
