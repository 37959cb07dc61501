"""The size of the drawing in its pane: as large as fits, or as a person chose."""

from functools import partial

from PySide6.QtCore import QPointF, QSize
from PySide6.QtWidgets import QScrollArea, QScrollBar

from workbench.gui.actions import ActionSpec
from workbench.gui.bench import Bench
from workbench.gui.network.canvas import Canvas

__all__ = ["ZOOM_TOOLS", "Zooming"]

STEP = 1.15
"""How much larger one step makes the drawing. [1]"""
LEAST, MOST = 0.2, 3.0
"""Sizes between which the drawing can be chosen; 1 is the usual one. [1]"""
BAR = 10.0
"""Width of a scroll bar. [design px]"""
ZOOM_TOOLS = ("network.larger", "network.smaller", "network.fit")
"""What a menu offers."""


class Zooming:
    """Gives the drawing its room, and enlarges it about a place that stays where it is."""

    def __init__(self, bench: Bench, canvas: Canvas, scroller: QScrollArea) -> None:
        self._bench, self._canvas, self._scroller = bench, canvas, scroller
        canvas.zoom_asked.connect(self.step)

    def specs(self) -> tuple[ActionSpec, ...]:
        """Return the rows of the command table."""
        make = partial(ActionSpec, group="Network", scope=self._canvas, also="zoom size")
        tip = "Ctrl and the wheel do it too, about the pointer."
        return (
            make(
                "network.larger",
                "Larger drawing",
                partial(self.step, 1),
                shortcut=("Ctrl++", "Ctrl+="),
                tip=tip,
            ),
            make("network.smaller", "Smaller drawing", partial(self.step, -1), shortcut="Ctrl+-", tip=tip),
            make(
                "network.fit",
                "Fit the drawing to its pane",
                self.fit,
                shortcut="Ctrl+0",
                enabled=lambda: not self._canvas.fitted,
                tip="As large as there is room for, and no larger than usual.",
            ),
        )

    def step(self, way: int, at: QPointF | None = None) -> None:
        """Make the drawing one step larger or smaller about a place of it, its middle if none is named."""
        zoom = min(max(self._canvas.zoom * STEP**way, LEAST), MOST)
        seen = self._canvas.visibleRegion().boundingRect()
        place = at if at is not None else QPointF(seen.center())
        size, corner = self._canvas.size(), seen.topLeft()
        self._canvas.set_zoom(zoom)
        self.give_room()
        for bar, before, after, point, start in (
            (self._across, size.width(), self._canvas.width(), place.x(), corner.x()),
            (self._along, size.height(), self._canvas.height(), place.y(), corner.y()),
        ):
            bar.setValue(round(point * after / before - (point - start)))

    def fit(self) -> None:
        """Let the size follow the room again."""
        self._canvas.set_zoom(None)
        self.give_room()

    @property
    def _across(self) -> QScrollBar:
        return self._scroller.horizontalScrollBar()

    @property
    def _along(self) -> QScrollBar:
        return self._scroller.verticalScrollBar()

    def give_room(self) -> None:
        """Let the drawing fill the pane; where it is larger, beside the scroll bars that it needs."""
        room = self._scroller.maximumViewportSize()
        self._canvas.set_room(room)
        drawing, bar = self._canvas.drawing, self._bench.px(BAR)
        high, wide = drawing.height > room.height(), drawing.width > room.width()
        if high or wide:
            self._canvas.set_room(QSize(room.width() - bar * high, room.height() - bar * wide))
        self._along.setSingleStep(round(self._canvas.drawing.pitch))
