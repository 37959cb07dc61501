"""Marks ghost and settling of the edge that is looked at, on the plot itself."""

import numpy as np
from numpy.typing import NDArray

from workbench.gui.scanline.content.cursors import Cursors
from workbench.gui.scanline.content.edge_marks import EdgeMark, edge_in_sight, edge_marks
from workbench.gui.scanline.content.edges import changing_channel, edge_pixels
from workbench.gui.scanline.content.words import pixel_words
from workbench.gui.scanline.lanes.view import LanesView
from workbench.pipeline.result import Result
from workbench.project.document import Channel
from workbench.timing.mode import Mode
from workbench.waveform.scanline import Scanline

__all__ = ["Marking"]


class Marking:
    """Finds the edge nearest to the cursor, or the first large one in sight, and what to mark there."""

    def __init__(self, view: LanesView, cursors: Cursors) -> None:
        self._view, self._cursors = view, cursors

    def mark(self, result: Result, *, drawn: bool) -> None:
        """Say what follows the edge, if there is anything worth it, and draw it where it is not yet seen."""
        view, line = self._view, result.scanline
        found = None if line is None else self._found(result, line)
        if line is None or found is None:
            view.setAccessibleDescription("")
            view.edge_marks.clear()
            return
        pixel, marks = found
        view.setAccessibleDescription(_spoken(pixel, line.mode, marks))
        if not drawn:
            view.edge_marks.clear()
            return
        edge_s = (pixel if line.starts is None else float(line.starts[pixel])) * line.mode.pixel_s
        heights = view.heights_between
        view.edge_marks.mark(view.places, view.time, edge_s, marks, self._upright(line), heights)

    def _found(self, result: Result, line: Scanline) -> tuple[int, tuple[EdgeMark, ...]] | None:
        """Return the pixel at whose start the edge is, and what there is to mark."""
        chosen, pixel_s = self._view.bench.view.channel, line.mode.pixel_s
        marks = {channel: edge_marks(result.channels[channel].step, pixel_s) for channel in Channel}
        if not any(marks.values()):
            return None
        cursor = self._cursors.pixel(self._cursors.active)
        pixel = edge_in_sight(line.codes, cursor, *self._sight(pixel_s))
        if pixel is None:
            return None
        return pixel, marks[changing_channel(line.codes, pixel, chosen) or chosen]

    def _sight(self, pixel_s: float) -> tuple[float, float]:
        """Return the first and the last pixel in sight. [pixels]"""
        return self._view.time.first_s / pixel_s, self._view.time.last_s / pixel_s

    def _upright(self, line: Scanline) -> NDArray[np.float64]:
        """Return where lines stand upright: edges and cursors. [px]"""
        pixel_s, time = line.mode.pixel_s, self._view.time
        edges, (first, last) = edge_pixels(line.codes), self._sight(line.mode.pixel_s)
        standing = [time.x(edge * pixel_s) for edge in edges[(first <= edges) & (edges <= last)].tolist()]
        cursors = (cursor.stands_at for cursor in self._view.lines.values())
        return np.array([*standing, *(x for x in cursors if x is not None)])


def _spoken(pixel: int, mode: Mode, marks: tuple[EdgeMark, ...]) -> str:
    """Return the marks as words for who does not see them."""
    said = ", ".join(f"{mark.name} {mark.figures[0]}" for mark in marks)
    return f"edge at {pixel_words(pixel, mode)}: {said}" if said else ""
