"""A field that shows what is chosen and opens what else there is."""

from collections.abc import Callable, Sequence
from time import monotonic

from PySide6.QtCore import QPoint, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QActionGroup, QFontMetricsF, QKeyEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QApplication, QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets.control import Control, draw_chevron, outlined
from workbench.gui.widgets.menu import Menu
from workbench.gui.widgets.text import draw_text

__all__ = ["Choice", "ChoiceMenu"]

_ENDS = {Qt.Key.Key_Home: 0, Qt.Key.Key_End: -1}
"""Which choice a key goes to."""


class Choice(Control):
    """Caption, chosen value and a chevron; a click opens the list, or what the owner connects."""

    chosen = Signal(int)
    """Number of the option that was taken from the list."""

    def __init__(self, bench: Bench, caption: str, value: str = "", parent: QWidget | None = None) -> None:
        super().__init__(bench, "", parent)
        self.caption = caption
        self._value = ""
        self._options: tuple[str, ...] = ()
        self._longest = ""
        self.show_caption = True
        self.set_value(value)
        self.clicked.connect(self._open)

    @property
    def value(self) -> str:
        """The words of what is chosen."""
        return self._value

    def set_value(self, value: str) -> None:
        """Show another value; the control keeps its width unless the value needs more."""
        self.setAccessibleName(f"{self.caption}: {value}")
        if value != self._value:
            self._value = value
            self.updateGeometry()
            self.update()

    def set_options(self, options: Sequence[str]) -> None:
        """Offer a short list under the control; ``chosen`` tells which was taken."""
        self._options = tuple(options)
        self._longest = max(options, key=len, default="")
        self.updateGeometry()

    def set_caption_shown(self, *, shown: bool) -> None:
        """Show or hide the caption, where room is short."""
        if shown != self.show_caption:
            self.show_caption = shown
            self.updateGeometry()
            self.update()

    def sizeHint(self) -> QSize:
        px, measure = self.bench.px, self.metrics.horizontalAdvance
        value = max(measure(self._value), measure(self._longest))
        captions = QFontMetricsF(self.bench.type.sans())
        caption = captions.horizontalAdvance(self.caption) + px(8) if self._captioned else 0
        return QSize(round(caption + value) + px(10 + 14 + 24), px(30))

    @property
    def _captioned(self) -> bool:
        return bool(self.caption) and self.show_caption

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, type_, px = self.bench.theme, self.bench.type, self.bench.px
        fill = theme.lit("plot") if self.pointed else theme.color("plot")
        line = QPen(theme.color("outline" if self.isEnabled() else "hairline"), 1.1)
        box = QRectF(self.rect())
        with QPainter(self) as painter:
            outlined(painter, box, px(5), fill, line)
            words = box.adjusted(px(10), 0, -px(26), 0)
            if self._captioned:
                width = draw_text(painter, words, self.caption, type_.sans(), theme.color("dim"))
                words.setLeft(words.left() + width + px(8))
            draw_text(painter, words, self._value, type_.sans(1.0, 500), self.ink(), elide=True)
            centre = QPointF(box.right() - px(15), box.center().y())
            draw_chevron(painter, centre, px(4), QPen(self.ink(), 1.4))

    def _open(self) -> None:
        if self._options:
            pick_from_menu(self, self._options, self._value, self.chosen.emit)


class ChoiceMenu(Menu):
    """A list to choose from by arrows, Home and End, or by typing how a choice begins."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName("choices")
        self._typed = ""
        self._typed_at_s = 0.0

    def keyPressEvent(self, event: QKeyEvent) -> None:
        actions = self.actions()
        if event.key() in _ENDS and actions:
            self.setActiveAction(actions[_ENDS[Qt.Key(event.key())]])
        elif event.text().strip() and event.text().isprintable():
            self._search(event.text().lower())
        else:
            super().keyPressEvent(event)

    def _search(self, letter: str) -> None:
        """Go to the next choice that begins with what was typed without a pause."""
        now_s = monotonic()
        pause_s = QApplication.keyboardInputInterval() / 1e3
        self._typed = letter if now_s - self._typed_at_s > pause_s else self._typed + letter
        self._typed_at_s = now_s
        actions, held = self.actions(), self.activeAction()
        at = actions.index(held) if held in actions else -1
        if len(self._typed) == 1:  # the same letter again goes on to the next one
            at += 1
        around = (*actions[max(at, 0) :], *actions[: max(at, 0)])
        found = next((each for each in around if each.text().lower().startswith(self._typed)), None)
        if found is not None:
            self.setActiveAction(found)


def pick_from_menu(under: QWidget, options: Sequence[str], value: str, take: Callable[[int], object]) -> None:
    """Open a list under a control; the one that holds now is ticked."""
    menu = ChoiceMenu(under)
    group = QActionGroup(menu)
    for number, option in enumerate(options):
        action = menu.addAction(option)
        action.setCheckable(True)
        action.setChecked(option == value)
        action.setActionGroup(group)
        action.triggered.connect(lambda _checked=False, number=number: take(number))
    menu.aboutToHide.connect(menu.deleteLater)
    menu.setMinimumWidth(under.width())
    menu.popup(under.mapToGlobal(QPoint(0, under.height() + 2)))
    held = group.checkedAction()
    if held is not None:  # the arrows go on from the choice that holds
        menu.setActiveAction(held)
