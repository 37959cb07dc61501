"""The binding keeps its references: PySide6 6.12.0 on Python 3.11 and older lost those of None and True."""

import sys

from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QPainter, QPixmap
from PySide6.QtWidgets import QWidget

REPAINTS = 300


def test_repaints_lose_no_reference_of_none_true_and_false(qtbot) -> None:
    class Painted(QWidget):
        def paintEvent(self, _event: object) -> None:
            with QPainter(self) as painter:
                painter.setRenderHint(QPainter.RenderHint.Antialiasing, True)
                painter.fillRect(QRectF(self.rect()), QColor("white"))

    widget = Painted()
    qtbot.addWidget(widget)
    widget.resize(20, 20)
    target = QPixmap(20, 20)
    before = [sys.getrefcount(value) for value in (None, True, False)]

    for _ in range(REPAINTS):
        widget.render(target)

    after = [sys.getrefcount(value) for value in (None, True, False)]
    lost = [b - a for a, b in zip(after, before, strict=True)]
    assert max(lost) < REPAINTS / 2, f"references lost of None, True, False: {lost}"
