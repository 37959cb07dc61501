"""The banner over the window while deliberate faults are on."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QWidget

from workbench.gui.bench import Bench
from workbench.gui.faults.switch import FaultSwitch
from workbench.gui.widgets import Button, Sign, draw_sign, draw_text

__all__ = ["FaultBanner"]

HEIGHT = 40
_STRIPE = 14
"""Width of the warning stripes. [design px]"""


class FaultBanner(QWidget):
    """Says which faults are on, across the whole window; its button ends them all."""

    def __init__(self, bench: Bench, faults: FaultSwitch, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench, self._faults = bench, faults
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.end = Button(bench, "End all faults")
        self.end.clicked.connect(faults.end_all)
        self._row = QHBoxLayout(self)
        self._row.addStretch(1)
        self._row.addWidget(self.end)
        faults.changed.connect(self.show_faults)
        bench.theme_changed.connect(self._restyle)
        self._restyle()
        self.show_faults()

    @property
    def text(self) -> str:
        """What the banner says; empty while no fault is on."""
        names = [each.words for each in self._faults.on]
        if not names:
            return ""
        count = "a deliberate fault is on" if len(names) == 1 else f"{len(names)} deliberate faults are on"
        return f"{count}: {', '.join(names)}"

    def show_faults(self) -> None:
        """Stand there while a fault is on."""
        self.setAccessibleName(self.text)
        self.setVisible(bool(self._faults.on))
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(self._bench.px(400), self._bench.px(HEIGHT))

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, type_, px = self._bench.theme, self._bench.type, self._bench.px
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), theme.mixed("panel", "warns", 0.22))
            self._paint_stripes(painter)
            side = px(20)
            left = px(_STRIPE * 4)
            draw_sign(painter, QRectF(left, (self.height() - side) / 2, side, side), Sign.WARNS, theme)
            left += side + px(10)
            room = QRectF(left, 0, self.end.x() - left - px(16), self.height())
            note = "your design is untouched, and what you save is the design"
            width = type_.width(note, type_.sans(0.95))
            said = room.adjusted(0, 0, -width - px(20) if room.width() > 2 * width else 0, 0)
            words = self.text[:1].upper() + self.text[1:]
            draw_text(painter, said, words, type_.sans(1.05, 600), theme.color("text"), elide=True)
            if room.width() > 2 * width:
                right = Qt.AlignmentFlag.AlignRight
                draw_text(painter, room, note, type_.sans(0.95), theme.color("text"), align=right)

    def _paint_stripes(self, painter: QPainter) -> None:
        """Draw slanting stripes at the left end and a line under the banner."""
        theme, px = self._bench.theme, self._bench.px
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        pen = QPen(theme.color("warns"), px(_STRIPE) / 2)
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        painter.setPen(pen)
        painter.save()
        painter.setClipRect(QRectF(0, 0, px(_STRIPE) * 3, self.height()))
        for start in range(-px(_STRIPE) * 3, px(_STRIPE) * 3, px(_STRIPE)):
            painter.drawLine(start, self.height() + 4, start + self.height() + 8, -4)
        painter.restore()
        painter.fillRect(0, self.height() - px(2), self.width(), px(2), theme.color("warns"))

    def _restyle(self) -> None:
        px = self._bench.px
        self.setFixedHeight(px(HEIGHT))
        self._row.setContentsMargins(px(20), 0, px(14), 0)
        self.update()
