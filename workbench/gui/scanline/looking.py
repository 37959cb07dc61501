"""Cursors, pointer and keys on the plot, for a line and for a frame."""

from PySide6.QtCore import QObject, Qt, QTimer
from PySide6.QtGui import QKeyEvent

from workbench.gui.bench import Bench
from workbench.gui.scanline.cards.frame_readings import FrameReadings
from workbench.gui.scanline.cards.readings import Readings
from workbench.gui.scanline.cards.readout_line import ReadoutLine
from workbench.gui.scanline.content.cursors import Cursors, Place
from workbench.gui.scanline.edits import LineEdits
from workbench.gui.scanline.lanes.view import LanesView
from workbench.pipeline.result import Result

__all__ = ["Looking"]

QUIET_MS = 700
"""After a rest this long the next step of the wheel is another step to undo. [ms]"""
WIDE_PIXEL = 8
"""Inside a pixel this wide the mouse puts a cursor anywhere, in narrower ones in the middle. [design px]"""
COARSE = 8
"""Pixels, or lines of a frame, that a key moves with Shift. [1]"""


class Looking(QObject):
    """Moves the cursors, or on a frame the scanline, and reads what stands there."""

    def __init__(
        self, bench: Bench, plot: LanesView, line: ReadoutLine, edits: LineEdits, parent: QObject
    ) -> None:
        super().__init__(parent)
        self._view, self._plot, self._edits = bench.view, plot, edits
        self._result: Result | None = None
        self.frame = False
        """Whether the plot shows the whole frame."""
        self.cursors = Cursors(bench.session.project.mode, self)
        self.readings = Readings(bench, plot, line, self.cursors)
        self.frame_readings = FrameReadings(plot, line)
        self._quiet = QTimer(self)
        self._quiet.setSingleShot(True)
        self._quiet.setInterval(QUIET_MS)
        self._quiet.timeout.connect(edits.release)
        plot.placed.connect(self._on_placed)
        plot.carried.connect(self._on_carried)
        plot.let_go.connect(edits.release)
        plot.pointed.connect(self._on_pointed)
        self.cursors.changed.connect(self._on_cursors)
        bench.view.changed.connect(self._follow_view)

    def show_result(self, result: Result) -> None:
        """Look at another line."""
        first, self._result = self._result is None, result
        self.cursors.set_mode(result.project.mode)
        self.readings.show_result(result)
        if first:
            self._view.look_at(self.cursors.pixel(Place.HERE))

    def place(self) -> None:
        """Put cursors and cards where they belong for what is in sight."""
        if self._result is None:
            return
        if self.frame:
            self.frame_readings.place(self._result.project)
            return
        for place in Place:
            lit = place is self.cursors.active
            self._plot.stand(place, self.cursors.time_s(place), lit=lit)
        self.readings.place()

    def take_other(self) -> None:
        """Let the keys move the other cursor."""
        here = self.cursors.active is Place.HERE
        self.cursors.take(Place.THERE if here else Place.HERE)

    def press(self, event: QKeyEvent) -> bool:
        """Move the cursor, or the scanline, by an arrow key; return whether it was one."""
        step = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}.get(Qt.Key(event.key()))
        line = self._result.scanline if self._result else None
        if step is None or line is None:
            return False
        self._plot.take_keys()
        if event.modifiers() & Qt.KeyboardModifier.ShiftModifier:
            step *= COARSE
        if self.frame:
            self._edits.step_scanline(step)
            self.rest()
        elif event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.cursors.step(step / line.samples_per_pixel)
        else:
            self.cursors.step(step)
        return True

    def rest(self) -> None:
        """End merging steps of the scanline once they stop coming."""
        self._quiet.start()

    def _on_cursors(self) -> None:
        self._view.look_at(self.cursors.pixel(Place.HERE))
        self.place()

    def _follow_view(self) -> None:
        if self._view.pixel is not None:
            self.cursors.put_on_pixel(Place.HERE, self._view.pixel)

    def _on_placed(self, time_s: float, keys: Qt.KeyboardModifier) -> None:
        self._plot.setFocus(Qt.FocusReason.MouseFocusReason)
        if self.frame:
            self._edits.show_scanline(self.frame_readings.scanline_at(time_s))
            self.rest()
        else:
            there = bool(keys & Qt.KeyboardModifier.ShiftModifier)
            self._put(Place.THERE if there else Place.HERE, time_s)

    def _on_carried(self, place: Place, time_s: float) -> None:
        if self.frame:
            self._edits.show_scanline(self.frame_readings.scanline_at(time_s))
        else:
            self._put(place, time_s)

    def _put(self, place: Place, time_s: float) -> None:
        """Put a cursor where the mouse is, into the middle of a pixel where these are narrow."""
        time, pixel_s = self._plot.time, self._plot.shown.count_s
        width = (time.right - time.left) * pixel_s / (time.last_s - time.first_s)
        self.cursors.put(place, time_s, whole=width < self._plot.bench.px(WIDE_PIXEL))

    def _on_pointed(self, time_s: float | None) -> None:
        if self.frame:
            self.frame_readings.point(time_s)
        else:
            self.readings.point(time_s)
