"""One sentence beside the tabs that fades by itself: the inline answer to an edit refused."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, QPoint, QRectF, Qt, QTimer
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

if TYPE_CHECKING:
    from workbench.gui.window.pages import TabRow

__all__ = ["NoticeBar"]

SHOWN_MS = 7000
_HEIGHT = 38
"""As high as the row of tabs. [design px]"""


class NoticeBar(QWidget):
    """Floats beside the tabs, or over the findings; a click, or a deed that went well, sends it away."""

    def __init__(self, bench: Bench, window: QWidget, tabs: "TabRow", foot: QWidget) -> None:
        super().__init__(window)
        self._bench = bench
        self._over, self._tabs, self._foot = window, tabs, foot
        self._notice = Notice("")
        self._undo = Button(bench, "Undo", ButtonKind.REMEDY, self)
        self._undo.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._undo.clicked.connect(bench.session.undo)
        self._away = QTimer(self)
        self._away.setSingleShot(True)
        self._away.setInterval(SHOWN_MS)
        self._away.timeout.connect(self.hide)
        self.hide()
        for moving in (tabs, tabs.parentWidget() or tabs, foot):
            moving.installEventFilter(self)
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

    def eventFilter(self, _watched: QObject, event: QEvent) -> bool:
        """Go along with the tabs, as when a page opens."""
        if event.type() in (QEvent.Type.Move, QEvent.Type.Resize) and not self.isHidden():
            self.place()
        return False

    def place(self) -> None:
        """Stand in the free part of the row of tabs; where that is too short, over the findings.

        Neither page nor bench is covered.
        """
        px = self._bench.px
        words = QFontMetricsF(self._bench.type.sans(1.0, 500)).horizontalAdvance(self._notice.text)
        wanted, height = round(words) + px(64) + self._undo_width(), px(_HEIGHT)
        free = self._tabs.free_room()
        if self._tabs.isVisibleTo(self._over) and wanted <= free.width():
            room = free.translated(self._tabs.mapTo(self._over, QPoint(0, 0)))
            left = room.right() - wanted
        else:
            room = self._foot.rect().translated(self._foot.mapTo(self._over, QPoint(0, 0)))
            wanted = min(wanted, self._over.width() - px(40))
            left = (self._over.width() - wanted) // 2
        top = min(room.top() + (room.height() - height) // 2, self._over.height() - height - 1)
        self.setGeometry(left, top, wanted, height)
        button = self._undo.sizeHint()
        self._undo.setVisible(self._notice.undo)
        self._undo.resize(button)
        self._undo.move(wanted - px(8) - button.width(), (height - button.height()) // 2)

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
