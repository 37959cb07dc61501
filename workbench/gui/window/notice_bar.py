"""One sentence at the window's foot that fades by itself: the inline answer to an edit refused."""

from PySide6.QtCore import QRectF, Qt, QTimer
from PySide6.QtGui import (
    QAccessible,
    QAccessibleAnnouncementEvent,
    QFontMetricsF,
    QPainter,
    QPaintEvent,
    QPen,
)
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench, Notice
from workbench.gui.widgets.button import Button, ButtonKind
from workbench.gui.widgets.control import outlined
from workbench.gui.widgets.signs import Sign, draw_sign
from workbench.gui.widgets.text import draw_text
from workbench.project.session import Change

__all__ = ["NoticeBar"]

SHOWN_MS = 7000


class NoticeBar(QWidget):
    """Floats over the middle of the window's foot; a click, or a deed that went well, sends it away."""

    def __init__(self, bench: Bench, window: QWidget) -> None:
        super().__init__(window)
        self._bench = bench
        self._over = window
        self._notice = Notice("")
        self._undo = Button(bench, "Undo", ButtonKind.REMEDY, self)
        self._undo.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._undo.clicked.connect(bench.session.undo)
        self._away = QTimer(self)
        self._away.setSingleShot(True)
        self._away.setInterval(SHOWN_MS)
        self._away.timeout.connect(self.hide)
        self.hide()
        bench.noticed.connect(self.show_notice)
        self._unsubscribe = bench.session.subscribe(self._on_change)
        bench.closing.connect(self._unsubscribe)

    @property
    def text(self) -> str:
        """The sentence shown; empty while there is none."""
        return "" if self.isHidden() else self._notice.text

    def show_notice(self, notice: Notice) -> None:
        """Show a sentence, and read it to who listens."""
        self._notice = notice
        self.setAccessibleName(notice.text)
        QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, notice.text))
        self.place()
        self.show()
        self.raise_()
        self._away.start()

    def _on_change(self, change: Change) -> None:
        """Take a warning away once something else was done that went well, and an offer to undo too."""
        if (self._notice.warning or self._notice.undo) and change.after is not change.before:
            self.hide()

    def place(self) -> None:
        """Stand over the middle of the window's foot."""
        px, window = self._bench.px, self._over
        words = QFontMetricsF(self._bench.type.sans(1.0, 500)).horizontalAdvance(self._notice.text)
        width = min(round(words) + px(64) + self._undo_width(), window.width() - px(40))
        self.setGeometry((window.width() - width) // 2, window.height() - px(96), width, px(42))
        button = self._undo.sizeHint()
        self._undo.setVisible(self._notice.undo)
        self._undo.resize(button)
        self._undo.move(width - px(8) - button.width(), (self.height() - button.height()) // 2)

    def _undo_width(self) -> int:
        """Return the room of the button, with what keeps it apart. [px]"""
        return self._undo.sizeHint().width() + self._bench.px(8) if self._notice.undo else 0

    def mousePressEvent(self, _event: object) -> None:
        self.hide()

    def hideEvent(self, _event: object) -> None:
        self._away.stop()

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, type_, px = self._bench.theme, self._bench.type, self._bench.px
        sign = Sign.WARNS if self._notice.warning else Sign.NOTE
        box = QRectF(self.rect())
        with QPainter(self) as painter:
            outlined(painter, box, px(7), theme.color("raised"), QPen(theme.color(sign.value), 1.4))
            side = px(18)
            place = QRectF(px(16), (box.height() - side) / 2, side, side)
            draw_sign(painter, place, sign, theme)
            words = box.adjusted(px(44), 0, -px(16) - self._undo_width(), 0)
            face = type_.sans(1.0, 500)
            draw_text(
                painter,
                words,
                self._notice.text,
                face,
                theme.color("text"),
                align=Qt.AlignmentFlag.AlignLeft,
                elide=True,
            )
