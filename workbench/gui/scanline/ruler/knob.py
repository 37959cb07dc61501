"""A knob on the line ruler: dragged, or moved a count at a time by the arrow keys."""

from PySide6.QtCore import QRectF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen, QWheelEvent
from PySide6.QtWidgets import QAbstractSlider, QWidget

from workbench.gui.bench import Bench
from workbench.timing.mode import Region

__all__ = ["Knob"]

SIZE = (9, 16)
REACH = 24
COARSE = 8
MOST = 1_000_000


def keeps_total(held: Qt.KeyboardModifier) -> bool:
    """Return whether the keys held down ask for the total to stay."""
    return bool(held & Qt.KeyboardModifier.ControlModifier)


class Knob(QAbstractSlider):
    """The edge at the end of a region; its value is the region's count."""

    moved = Signal(int, bool)
    """The count that is wanted, and whether Ctrl is held: the total is to stay."""
    left = Signal()
    dropped = Signal()

    def __init__(
        self,
        bench: Bench,
        region: Region,
        parent: QWidget,
        orientation: Qt.Orientation = Qt.Orientation.Horizontal,
    ) -> None:
        super().__init__(parent)
        self._bench, self._region = bench, region
        self._upright = orientation is Qt.Orientation.Vertical
        self._per_count = 1.0
        self._pressed_at: tuple[float, int] | None = None
        self.setOrientation(orientation)
        self.setInvertedControls(self._upright)
        self.setRange(0, MOST)
        self.setSingleStep(1)
        self.setPageStep(COARSE)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setCursor(Qt.CursorShape.SplitVCursor if self._upright else Qt.CursorShape.SplitHCursor)
        # What the slider does by itself only asks; the project answers with a count to show.
        self.actionTriggered.connect(self._ask)

    def show_count(self, region: Region, count: int, unit: str, time: str) -> None:
        """Show the count that holds, and say it to assistive tools."""
        self.setValue(count)
        self.setAccessibleName(f"end of the {region.value}")
        self.setAccessibleDescription(f"{region.value} {count} {unit}, {time}")
        self.setWhatsThis(
            f"A knob of the ruler, at the edge where the {region.value} ends: {count} {unit}, {time}. Drag "
            f"it, or move it by the arrow keys, with Shift {COARSE} at a time. With Ctrl the total stays and "
            "what follows gives way; Esc while dragging puts it back."
        )
        self.setToolTip(
            f"{region.value}: {count} {unit}, {time}. Drag, or arrow keys; Shift for {COARSE}, Ctrl keeps "
            "the total"
        )

    def stand(self, place: float, bar: QRectF, per_count: float) -> None:
        """Stand on an edge of the bar, so far along it; ``per_count`` pixels are one count."""
        reach, over = self._bench.px(REACH), self._bench.px(8)
        self._per_count = per_count
        if self._upright:
            width = round(bar.width()) + over
            self.setGeometry(round(bar.center().x() - width / 2), round(place - reach / 2), width, reach)
        else:
            height = round(bar.height()) + over
            self.setGeometry(round(place - reach / 2), round(bar.center().y() - height / 2), reach, height)

    def _along(self, event: QMouseEvent) -> float:
        return event.globalPosition().y() if self._upright else event.globalPosition().x()

    def _ask(self, _action: int) -> None:
        wanted, held = self.sliderPosition(), self.value()
        self.setSliderPosition(held)
        if wanted != held:
            self.moved.emit(wanted, False)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        if event.button() is Qt.MouseButton.LeftButton:
            self._pressed_at = (self._along(event), self.value())
            self.setFocus(Qt.FocusReason.MouseFocusReason)
            self.raise_()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if self._pressed_at is not None:
            start, count = self._pressed_at
            wanted = count + round((self._along(event) - start) / self._per_count)
            if wanted != self.value():
                self.moved.emit(wanted, keeps_total(event.modifiers()))

    def mouseReleaseEvent(self, _event: QMouseEvent) -> None:
        if self._pressed_at is not None:
            self._pressed_at = None
            self.left.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape and self._pressed_at is not None:
            self._pressed_at = None
            self.dropped.emit()
            return
        steps = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}
        if self._upright:
            steps = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}
        step = steps.get(Qt.Key(event.key()))
        if step is None:
            super().keyPressEvent(event)
            return
        coarse = event.modifiers() & Qt.KeyboardModifier.ShiftModifier
        self.moved.emit(self.value() + step * (COARSE if coarse else 1), keeps_total(event.modifiers()))

    def wheelEvent(self, event: QWheelEvent) -> None:
        event.ignore()

    def focusOutEvent(self, event) -> None:
        super().focusOutEvent(event)
        self.left.emit()

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, px = self._bench.theme, self._bench.px
        width, height = (px(side) for side in (SIZE[::-1] if self._upright else SIZE))
        box = QRectF((self.width() - width) / 2, (self.height() - height) / 2, width, height)
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            if self.hasFocus():
                painter.setPen(QPen(theme.color("accent"), 2))
                painter.setBrush(Qt.BrushStyle.NoBrush)
                ring = box.adjusted(-2.5, -2.5, 2.5, 2.5)
                painter.drawRoundedRect(ring, px(6), px(6))
            lit = self.underMouse() or self._pressed_at is not None
            painter.setPen(QPen(theme.color("accent" if lit else "text"), 1.6))
            painter.setBrush(theme.color("panel"))
            painter.drawRoundedRect(box.adjusted(0.8, 0.8, -0.8, -0.8), px(4), px(4))
