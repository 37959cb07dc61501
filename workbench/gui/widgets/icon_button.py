"""A button that shows an icon; its words stand in the tool tip and for screen readers."""

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QAction, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.icons import draw_icon
from workbench.gui.widgets.control import Control, outlined

__all__ = ["IconButton"]


class IconButton(Control):
    """An icon with a name; it can follow an action."""

    def __init__(self, bench: Bench, icon: str, text: str, parent: QWidget | None = None) -> None:
        super().__init__(bench, text, parent)
        self._icon = icon
        self._action: QAction | None = None
        self.setToolTip(text)

    def follow(self, action: QAction) -> None:
        """Take words and availability from an action, and trigger it."""
        self._action = action
        action.changed.connect(self._take)
        self.clicked.connect(action.trigger)
        self._take()

    def set_icon(self, icon: str) -> None:
        """Show another icon."""
        if icon != self._icon:
            self._icon = icon
            self.update()

    def sizeHint(self) -> QSize:
        return QSize(self.bench.px(30), self.bench.px(30))

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, side = self.bench.theme, self.bench.px(20)
        box = QRectF((self.width() - side) / 2, (self.height() - side) / 2, side, side)
        with QPainter(self) as painter:
            if self.isDown() or self.pointed:
                fill = theme.pressed() if self.isDown() else theme.lit("window")
                outlined(painter, QRectF(self.rect()), self.bench.px(5), fill, None)
            ink = theme.color("text") if self.isEnabled() else theme.mixed("window", "dim", 0.55)
            draw_icon(painter, self._icon, box, ink, theme)

    def _take(self) -> None:
        assert self._action is not None
        self.setEnabled(self._action.isEnabled())
        self.setText(self._action.text())
        keys = self._action.shortcut().toString()
        self.setToolTip(f"{self._action.text()}  {keys}".strip())
