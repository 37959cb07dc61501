"""What the painted controls share: size from the type, hover, focus, and the colours of a state."""

from PySide6.QtCore import QEvent, QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPainterPath, QPen
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QWidget

from workbench.gui.bench import Bench

__all__ = ["Control", "draw_chevron", "outlined"]


class Control(QAbstractButton):
    """A button that paints itself from the theme; children say how in ``paintEvent``."""

    def __init__(self, bench: Bench, text: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.setText(text)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        bench.theme_changed.connect(self.restyle)

    @property
    def pointed(self) -> bool:
        """Whether the pointer is on the control and it can be used."""
        return self.underMouse() and self.isEnabled()

    @property
    def metrics(self) -> QFontMetricsF:
        """Measures of the usual text face."""
        return QFontMetricsF(self.bench.type.sans(1.0, 500))

    def restyle(self) -> None:
        """Take colours and sizes again."""
        self.updateGeometry()
        self.update()

    def ink(self) -> QColor:
        """Return the colour of the control's words."""
        if self.isEnabled():
            return self.bench.theme.color("text")
        return self.bench.theme.color("dim", 0.6)

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() == QEvent.Type.EnabledChange:
            self.update()


def outlined(painter: QPainter, box: QRectF, radius: float, fill: QColor | None, line: QPen | None) -> None:
    """Draw a rounded box whose outline lies inside it."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    inset = line.widthF() / 2 if line else 0.0
    painter.setPen(line if line else Qt.PenStyle.NoPen)
    painter.setBrush(fill if fill else Qt.BrushStyle.NoBrush)
    painter.drawRoundedRect(box.adjusted(inset, inset, -inset, -inset), radius, radius)


def draw_chevron(painter: QPainter, centre: QPointF, size: float, pen: QPen, *, up: bool = False) -> None:
    """Draw the open angle that says more can be opened."""
    rise = -size / 2 if up else size / 2
    path = QPainterPath(QPointF(centre.x() - size, centre.y() - rise))
    path.lineTo(QPointF(centre.x(), centre.y() + rise))
    path.lineTo(QPointF(centre.x() + size, centre.y() - rise))
    pen.setCapStyle(Qt.PenCapStyle.RoundCap)
    pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(pen)
    painter.drawPath(path)
