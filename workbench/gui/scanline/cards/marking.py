"""Marks ghost and settling of the edge that is looked at, on the plot itself."""

import numpy as np

from workbench.gui.scanline.content.cursors import Cursors
from workbench.gui.scanline.content.edge_marks import edge_in_sight, edge_marks
from workbench.gui.scanline.content.edges import changing_channel, edge_pixels
from workbench.gui.scanline.lanes.view import LanesView
from workbench.pipeline.result import Result
from workbench.project.document import Channel

__all__ = ["Marking"]


class Marking:
    """Finds the edge nearest to the cursor, or the first large one in sight, and what to mark there."""

    def __init__(self, view: LanesView, cursors: Cursors) -> None:
        self._view, self._cursors = view, cursors

    def mark(self, result: Result) -> None:
        """Mark what follows the edge, if there is anything worth it."""
        view, line = self._view, result.scanline
        steps = {channel: result.channels[channel].step for channel in Channel}
        if line is None or not any(edge_marks(step, line.mode.pixel_s) for step in steps.values()):
            view.edge_marks.clear()
            return
        pixel_s, time = line.mode.pixel_s, view.time
        first, last = time.first_s / pixel_s, time.last_s / pixel_s
        pixel = edge_in_sight(line.codes, self._cursors.pixel(self._cursors.active), first, last)
        if pixel is None:
            view.edge_marks.clear()
            return
        channel = changing_channel(line.codes, pixel, view.bench.view.channel)
        marks = edge_marks(steps[channel or view.bench.view.channel], pixel_s)
        edges = edge_pixels(line.codes)
        upright = [time.x(edge * pixel_s) for edge in edges[(first <= edges) & (edges <= last)].tolist()]
        upright += [x for cursor in view.lines.values() if (x := cursor.stands_at) is not None]
        edge_s = (pixel if line.starts is None else float(line.starts[pixel])) * pixel_s
        view.edge_marks.mark(view.places, time, edge_s, marks, np.array(upright), view.heights_between)
