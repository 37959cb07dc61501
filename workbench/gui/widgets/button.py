"""The house's button: usual, remedy, quiet, segment, and the one filled button."""

from enum import Enum

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets.control import Control, outlined
from workbench.gui.widgets.text import draw_text

__all__ = ["Button", "ButtonKind"]


class ButtonKind(Enum):
    """What a button says about itself."""

    USUAL = "usual"
    REMEDY = "remedy"
    """Mends a finding: outlined in the accent."""
    QUIET = "quiet"
    """Words only, until it is pointed at."""
    SEGMENT = "segment"
    """One of a row of which one is chosen; checkable."""
    FILLED = "filled"
    """Filled with the accent; the one thing to do next."""


class Button(Control):
    """A push button in the house style."""

    def __init__(
        self,
        bench: Bench,
        text: str,
        kind: ButtonKind = ButtonKind.USUAL,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(bench, text, parent)
        self.kind = kind
        self.setCheckable(kind is ButtonKind.SEGMENT)

    def sizeHint(self) -> QSize:
        pad = 9 if self.kind in (ButtonKind.SEGMENT, ButtonKind.QUIET) else 13
        width = self.metrics.horizontalAdvance(self.text()) + 2 * self.bench.px(pad)
        height = 26 if self.kind is ButtonKind.SEGMENT else 30
        return QSize(round(width) + 1, self.bench.px(height))

    def paintEvent(self, _event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            fill, line = self._fill(), self._line()
            if fill or line:
                outlined(painter, QRectF(self.rect()), self.bench.px(5), fill, line)
            font = self.bench.type.sans(1.0, 500 if self.kind is not ButtonKind.SEGMENT else 400)
            if self.kind is ButtonKind.SEGMENT and self.isChecked():
                font = self.bench.type.sans(1.0, 500)
            centre = Qt.AlignmentFlag.AlignHCenter
            draw_text(painter, QRectF(self.rect()), self.text(), font, self._words(), align=centre)

    def _words(self) -> QColor:
        theme = self.bench.theme
        if not self.isEnabled():
            return theme.color("dim", 0.6)
        if self.kind is ButtonKind.REMEDY:
            return theme.color("accent")
        if self.kind is ButtonKind.FILLED:
            return theme.color("panel")
        if self.kind is ButtonKind.SEGMENT and not (self.isChecked() or self.pointed):
            return theme.color("dim")
        return theme.color("text")

    def _fill(self) -> QColor | None:
        theme = self.bench.theme
        plain = self.kind is ButtonKind.QUIET or (self.kind is ButtonKind.SEGMENT and not self.isChecked())
        if not self.isEnabled():
            return None
        if self.kind is ButtonKind.FILLED:
            return theme.color("accent") if not self.isDown() else theme.mixed("accent", "text", 0.2)
        if self.isDown():
            return theme.pressed()
        if self.pointed:
            return theme.lit("panel" if plain else "raised")
        if plain:
            return None
        return (
            theme.mixed("raised", "accent", 0.08) if self.kind is ButtonKind.REMEDY else theme.color("raised")
        )

    def _line(self) -> QPen | None:
        theme = self.bench.theme
        if self.kind in (ButtonKind.QUIET, ButtonKind.FILLED):
            return None
        if self.kind is ButtonKind.SEGMENT and not self.isChecked():
            return None
        if not self.isEnabled():
            return QPen(theme.color("hairline"), 1.1)
        if self.kind is ButtonKind.REMEDY:
            return QPen(theme.color("accent"), 1.4)
        return QPen(theme.color("outline"), 1.1)
