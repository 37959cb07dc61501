"""A lane: a pyqtgraph plot with our axes, its traces, and nothing of its own besides."""

from collections.abc import Callable

import pyqtgraph as pg
from PySide6.QtCore import QRectF

from workbench.gui.bench import Bench
from workbench.gui.scanline.lanes.axis import LaneAxis, Tick
from workbench.gui.scanline.lanes.time_box import TimeBox
from workbench.gui.scanline.traces import TraceItem

__all__ = ["Lane"]

Ticks = Callable[[float, float, float], list[Tick]]


class Lane:
    """One plot of the stack; all lanes share one stretch of time."""

    def __init__(self, bench: Bench, ticks: Ticks, time_ticks: Ticks | None) -> None:
        self.box = TimeBox()
        self.axis = LaneAxis(bench, "left", ticks)
        axes = {"left": self.axis}
        self.time_axis: LaneAxis | None = None
        if time_ticks is not None:
            axes["bottom"] = self.time_axis = LaneAxis(bench, "bottom", time_ticks)
        self.plot = pg.PlotItem(viewBox=self.box, axisItems=axes, enableMenu=False)
        self.plot.hideButtons()
        self.plot.layout.setContentsMargins(0, 0, 0, 0)
        self.plot.layout.setSpacing(0)
        if time_ticks is None:
            self.plot.hideAxis("bottom")
        self.traces = TraceItem()
        self.ghosts = TraceItem()
        self.ghosts.setZValue(-1)
        self.plot.addItem(self.ghosts, ignoreBounds=True)
        self.plot.addItem(self.traces, ignoreBounds=True)

    def place(self, lane: QRectF, axis_height: float = 0.0) -> None:
        """Put the view box exactly into a rectangle; axes lie outside it."""
        self.axis.setWidth(lane.left())
        if self.time_axis is not None:
            self.time_axis.setHeight(axis_height)
        self.plot.setGeometry(0.0, lane.top(), lane.right(), lane.height() + axis_height)

    def restyle(self) -> None:
        """Take colours and sizes again."""
        self.axis.restyle()
        if self.time_axis is not None:
            self.time_axis.restyle()
