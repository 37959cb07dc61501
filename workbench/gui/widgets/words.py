"""Words on a panel, in a face and role of the house."""

from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QLabel, QWidget

from workbench.gui.bench import Bench

__all__ = ["Words"]


class Words(QLabel):
    """A label whose face and colour follow the theme; ``width_for`` keeps room for a longer text.

    One that is ``elided`` ends in … where it has no room, and is told whole in its tip.
    """

    def __init__(
        self,
        bench: Bench,
        text: str = "",
        *,
        size: float = 1.0,
        weight: int = 400,
        role: str = "text",
        mono: bool = False,
        caps: bool = False,
        width_for: str = "",
        elided: bool = False,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(text, parent)
        self._bench = bench
        self._size, self._weight, self._role = size, weight, role
        self._mono, self._caps, self._width_for = mono, caps, width_for
        self._column, self._elided = 0, elided
        self.setTextFormat(Qt.TextFormat.PlainText)
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def set_role(self, role: str) -> None:
        """Take another colour role."""
        if role != self._role:
            self._role = role
            self.update()

    def set_caps(self, *, caps: bool) -> None:
        """Write in the capitals of a head, or as the words are."""
        if caps != self._caps:
            self._caps = caps
            self._restyle()

    def say(self, text: str) -> None:
        """Show another text, if it is another one."""
        if text != self.text():
            self.setText(text)
            if self._elided:
                self.setToolTip(text)
            self._fit()

    def wrap(self, width: float) -> None:
        """Break the text into lines of a width, and be as high as they are. [px]"""
        self._column = round(width)
        self.setWordWrap(True)
        self.setFixedWidth(self._column)
        self._fit()

    def _fit(self) -> None:
        if self._column:
            margins = self.contentsMargins()
            room = QRect(0, 0, self._column - margins.left() - margins.right(), 10_000)
            flags = int(Qt.TextFlag.TextWordWrap)
            height = self.fontMetrics().boundingRect(room, flags, self.text()).height()
            self.setMinimumHeight(height + margins.top() + margins.bottom())

    def _restyle(self) -> None:
        type_ = self._bench.type
        font = type_.mono if self._mono else type_.sans
        self.setFont(type_.caps() if self._caps else font(self._size, self._weight))
        if self._width_for:
            self.setMinimumWidth(round(type_.width(self._width_for, self.font())) + 1)
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        # A palette of its own would be undone by the next style sheet; so the ink is taken here.
        wrap = Qt.TextFlag.TextWordWrap if self.wordWrap() else Qt.TextFlag.TextSingleLine
        with QPainter(self) as painter:
            painter.setFont(self.font())
            painter.setPen(self._bench.theme.color(self._role))
            text, room = self.text(), self.contentsRect()
            if self._elided:
                text = self.fontMetrics().elidedText(text, Qt.TextElideMode.ElideRight, room.width())
            painter.drawText(room, int(self.alignment()) | int(wrap), text)
