"""What the pictures of the Levels page share: a column for every code, lit while it is held."""

from collections.abc import Callable

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QResizeEvent
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.levels.figures import CodeFigures

__all__ = ["CodeView", "Hold"]

Hold = Callable[[int | None], None]
"""Holds a code on the pins; none gives them back to the picture."""


class CodeView(QWidget):
    """Codes from left to right; click, drag or arrows hold one, a second click or Esc releases it."""

    def __init__(self, bench: Bench, name: str, hold: Hold, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.setAccessibleName(name)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self._hold = hold
        self.figures: CodeFigures | None = None
        self.held: int | None = None
        self._area = QRectF()
        bench.theme_changed.connect(self.restyle)

    def show_codes(self, figures: CodeFigures, description: str) -> None:
        """Show other figures."""
        self.figures = figures
        self.setAccessibleDescription(description)
        self.update()

    def show_held(self, code: int | None) -> None:
        """Light the column of the held code."""
        if code != self.held:
            self.held = code
            self.update()

    def restyle(self) -> None:
        """Take colours and sizes again."""
        self._area = self.place()
        self.updateGeometry()
        self.update()

    def place(self) -> QRectF:
        """Return where the columns lie in a view of this size; children say."""
        raise NotImplementedError

    @property
    def area(self) -> QRectF:
        """Where the columns lie."""
        return self._area

    def code_x(self, code: float) -> float:
        """Return the left edge of a code's column. [px]"""
        area = self.area
        count = self.figures.n_codes if self.figures else 1
        return area.left() + area.width() * code / count

    def column(self, code: int) -> QRectF:
        """Return the column of a code."""
        area = self.area
        return QRectF(QPointF(self.code_x(code), area.top()), QPointF(self.code_x(code + 1), area.bottom()))

    def code_at(self, x: float) -> int | None:
        """Return the code whose column a place lies in; none beside them."""
        area = self.area
        if self.figures is None or not area.left() <= x < area.right():
            return None
        return min(int((x - area.left()) / area.width() * self.figures.n_codes), self.figures.n_codes - 1)

    def light_held(self, painter: QPainter) -> None:
        """Lay light on the column of the held code."""
        if self.held is not None:
            painter.fillRect(
                self._at_least_seen(self.column(self.held)), self.bench.theme.color("accent", 0.22)
            )

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._area = self.place()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        code = self.code_at(event.position().x())
        if code is not None and event.button() == Qt.MouseButton.LeftButton:
            # Lit may be the pixel that is looked at: only a code that is held is let go.
            view = self.bench.view
            self._hold(None if code == view.held(view.channel) else code)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        code = self.code_at(event.position().x())
        if code is not None and code != self.held and event.buttons() & Qt.MouseButton.LeftButton:
            self._hold(code)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        code = self._code_for(Qt.Key(event.key()))
        if code is not None:
            self._hold(code)
        elif event.key() == Qt.Key.Key_Escape and self.held is not None:
            self._hold(None)
        else:
            super().keyPressEvent(event)

    def _code_for(self, key: Qt.Key) -> int | None:
        """Return the code a key goes to; none where it goes nowhere."""
        if self.figures is None:
            return None
        last = self.figures.n_codes - 1
        if key in (Qt.Key.Key_Home, Qt.Key.Key_End):
            return 0 if key == Qt.Key.Key_Home else last
        step = {Qt.Key.Key_Left: -1, Qt.Key.Key_Right: 1}.get(key)
        if step is None:
            return None
        return min(max((self.held if self.held is not None else -step) + step, 0), last)

    def _at_least_seen(self, column: QRectF) -> QRectF:
        """Return a column wide enough to be seen with 256 codes."""
        lacking = max(0.0, self.bench.px(4) - column.width()) / 2
        return column.adjusted(-lacking, 0, lacking, 0)
