"""What there is to choose from, each with its two lines."""

from PySide6.QtCore import QPointF, QRectF, QSize
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from workbench.circuit.wish import Shape
from workbench.gui.bench import Bench
from workbench.gui.widgets.check_box import tick
from workbench.gui.widgets.control import Control, outlined
from workbench.gui.widgets.text import draw_text

__all__ = ["MATCHED", "SHAPES", "TwoLines"]

SHAPES = {
    Shape.WEIGHTED: (
        "weighted",
        "One resistor a bit, each twice the one before.",
        "The fewest parts; those of the top bits must be exact.",
    ),
    Shape.R2R: (
        "R-2R",
        "Two values only, in a chain that halves bit by bit.",
        "Even steps from equal parts; two a bit, and more current.",
    ),
    Shape.SEGMENTED: (
        "segmented",
        "Equal legs for the top bits, weighted ones below.",
        "Bears twice the tolerance, spikes less; more pins.",
    ),
    Shape.EQUAL: (
        "one value",
        "Weighted, each leg made of several equal parts.",
        "Even steps from one bag of resistors; many parts.",
    ),
}
MATCHED = (
    "matched to 75 Ω",
    "A shunt swallows what a long cable sends back.",
    "No ghost; half as much current again.",
)


class TwoLines(Control):
    """A choice: its name, and two lines on what it is and what it costs; on a projector the name only."""

    def __init__(
        self, bench: Bench, words: tuple[str, str, str], *, one_of: bool, parent: QWidget | None = None
    ) -> None:
        name, *lines = words
        self.about = " ".join(lines)
        """The two lines as text."""
        self._lines = () if bench.projecting else tuple(lines)
        super().__init__(bench, name, parent)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setCheckable(True)
        self.setAutoExclusive(one_of)
        self.setAccessibleDescription(self.about)

    def sizeHint(self) -> QSize:
        type_, px = self.bench.type, self.bench.px
        widths = [type_.width(line, type_.sans(0.86)) for line in self._lines]
        widest = max(type_.width(self.text(), type_.sans(1.0, 600)), *widths, 0.0)
        return QSize(round(widest) + px(46), px(34 + 17 * len(self._lines)))

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, type_, px = self.bench.theme, self.bench.type, self.bench.px
        box, chosen = QRectF(self.rect()), self.isChecked()
        ground = theme.mixed("raised", "accent", 0.12) if chosen else None
        if self.pointed and not chosen:
            ground = theme.lit("raised")
        line = QPen(theme.color("accent"), 1.6) if chosen else QPen(theme.color("outline"), 1.1)
        with QPainter(self) as painter:
            outlined(painter, box, px(5), ground, line)
            self._paint_mark(painter, QPointF(px(17), px(17)), chosen=chosen)
            words = box.adjusted(px(32), px(6), -px(8), 0)
            words.setHeight(px(21))
            draw_text(painter, words, self.text(), type_.sans(1.0, 600), self.ink())
            for text in self._lines:
                words.translate(0, px(19))
                draw_text(painter, words, text, type_.sans(0.86), theme.color("dim"))

    def _paint_mark(self, painter: QPainter, centre: QPointF, *, chosen: bool) -> None:
        """Draw the ring of one of several, or the box of a choice of its own."""
        theme, px = self.bench.theme, self.bench.px
        line = QPen(theme.color("accent" if chosen else "outline"), 1.4)
        ring = QRectF(centre.x() - px(6), centre.y() - px(6), 2 * px(6), 2 * px(6))
        outlined(painter, ring, px(6) if self.autoExclusive() else px(2), theme.color("plot"), line)
        if not chosen:
            return
        if self.autoExclusive():
            painter.setBrush(theme.color("accent"))
            painter.drawEllipse(centre, px(2.6), px(2.6))
        else:
            painter.setPen(QPen(theme.color("accent"), px(2)))
            painter.drawPolyline(tick(ring))
