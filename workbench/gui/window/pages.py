"""The pages under the bench: a row of tabs, and the one page that is unfolded."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Protocol

from PySide6.QtCore import QPointF, QRect, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QApplication, QHBoxLayout, QStackedWidget, QVBoxLayout, QWidget

from workbench.gui.bench import Bench
from workbench.gui.settings import PAGE, PAGE_HEIGHT
from workbench.gui.widgets import Control, Tab, Words
from workbench.gui.widgets.control import draw_chevron
from workbench.pipeline.result import Result
from workbench.project.document import Project

__all__ = ["PageArea", "PageSpec", "Panel"]

FOLD_BELOW = 0.12
"""Part of the height under which a dragged page folds. [1]"""


class Panel(Protocol):
    """What shows a result."""

    def show_result(self, project: Project, result: Result) -> None: ...


@dataclass(frozen=True, slots=True)
class PageSpec:
    """A page: its name in settings, the word on its tab, and how it is made."""

    id: str
    title: str
    make: Callable[[Bench], QWidget]


class PageArea(QWidget):
    """Tabs over a page; a page is made when it is first opened and shown results only while open."""

    opened = Signal(str)
    """Id of the page that opened; empty when the pages folded."""

    made = Signal(object)
    """A page that was just made."""

    def __init__(self, bench: Bench, specs: tuple[PageSpec, ...], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self._specs = {spec.id: spec for spec in specs}
        self._made: dict[str, QWidget] = {}
        self._shown: Result | None = None
        self._room, self._whole, self._less = 0, False, 0
        self._asked_from: QWidget | None = None
        """What had the focus when the page opened, while nothing else was looked at since."""
        bench.view.changed.connect(self._look_away)
        self.tabs = TabRow(bench, specs, self)
        self.stack = QStackedWidget(self)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.tabs)
        column.addWidget(self.stack)
        self.stack.hide()
        # A page folds or scrolls to the width it is given: it must not hold the window open.
        self.stack.setMinimumWidth(1)
        self.tabs.asked.connect(self.toggle)
        self.tabs.dragged.connect(self._drag)

    @property
    def page(self) -> str:
        """Id of the open page; empty while folded."""
        page = self.stack.currentWidget()
        return "" if page is None or self.stack.isHidden() else page.objectName()

    @property
    def titles(self) -> tuple[tuple[str, str], ...]:
        """Id and word of every page, in the order of the tabs."""
        return tuple((spec.id, spec.title) for spec in self._specs.values())

    @property
    def looked_at(self) -> QWidget | None:
        """The page that was opened just now, while the focus stays where it was and nothing else is done."""
        focused = QApplication.focusWidget()
        return self._made.get(self.page) if focused is not None and focused is self._asked_from else None

    def fit(self, room: int, *, whole: bool = False, less: int = 0) -> None:
        """Take the height that the bench and the page share, or that the page has for itself.

        The page gives up what ``less`` says, so that the bench keeps its height. [px]
        """
        self._room, self._whole, self._less = room, whole, less
        share = round(room * self._bench.settings.get(PAGE_HEIGHT)) - less
        self.stack.setMinimumHeight(0 if whole else share)
        self.stack.setMaximumHeight(room - less if whole else share)

    def restore(self) -> None:
        """Open the page that was open last time."""
        page = self._bench.settings.get(PAGE)
        if page in self._specs:
            self.open(page)

    def toggle(self, page: str) -> None:
        """Open a page, or fold it if it is open."""
        if page == self.page or not page:
            self.fold()
        else:
            self.open(page)

    def open(self, page: str) -> None:
        """Unfold a page."""
        if page not in self._made:
            made = self._specs[page].make(self._bench)
            made.setObjectName(page)
            self._made[page] = made
            self.stack.addWidget(made)
            self.made.emit(made)
        self.stack.setCurrentWidget(self._made[page])
        self.stack.show()
        self._changed()
        self._asked_from = QApplication.focusWidget()
        result = self._bench.live.result
        self.show_result(result.project, result)

    def fold(self) -> None:
        """Fold the pages away."""
        self.stack.hide()
        self._changed()

    def _look_away(self) -> None:
        self._asked_from = None

    def show_result(self, project: Project, result: Result) -> None:
        """Hand the result to the open page."""
        page = self._made.get(self.page)
        if page is not None:
            page.show_result(project, result)  # type: ignore[attr-defined]

    def _changed(self) -> None:
        self._bench.settings.set(PAGE, self.page)
        self.tabs.mark(self.page)
        self.opened.emit(self.page)

    def _drag(self, up_px: int) -> None:
        """Follow the pointer that drags the row of tabs; the page's height is what it leaves."""
        if self._whole:
            return
        share = up_px / max(1, self._room)
        if share < FOLD_BELOW:
            if self.page:
                self.fold()
            return
        self._bench.settings.set(PAGE_HEIGHT, min(0.7, max(0.2, share)))
        self.fit(self._room, less=self._less)
        if not self.page:
            self.open(self._bench.settings.get(PAGE) or next(iter(self._specs)))


class TabRow(QWidget):
    """The row of tabs; dragging it changes the page's height."""

    asked = Signal(str)
    dragged = Signal(int)

    def __init__(self, bench: Bench, specs: tuple[PageSpec, ...], parent: QWidget) -> None:
        super().__init__(parent)
        self._bench, self._area = bench, parent
        self.setCursor(Qt.CursorShape.SplitVCursor)
        self.row = QHBoxLayout(self)
        self.tabs: dict[str, Tab] = {}
        for spec in specs:
            tab = Tab(bench, spec.title, self)
            tab.setCursor(Qt.CursorShape.ArrowCursor)
            tab.clicked.connect(lambda _checked=False, page=spec.id: self.asked.emit(page))
            self.tabs[spec.id] = tab
            self.row.addWidget(tab)
        self.row.addStretch(1)
        self.hint = Words(bench, "", size=0.9, role="dim")
        self.row.addWidget(self.hint)
        self.fold = FoldButton(bench, self)
        self.fold.clicked.connect(self._on_fold)
        self.row.addWidget(self.fold)
        bench.theme_changed.connect(self._restyle)
        self._restyle()
        self.mark("")

    def mark(self, page: str) -> None:
        """Light the tab of the open page; the focus does not stay behind on another one."""
        for name, tab in self.tabs.items():
            tab.setChecked(name == page)
        if page and any(tab.hasFocus() for tab in self.tabs.values()):
            self.tabs[page].setFocus()
        self.hint.say("drag down to fold" if page else "pages are folded: click one, or drag this edge up")
        self.fold.set_open(open_=bool(page))

    def free_room(self) -> QRect:
        """Return the part of the row that neither tabs nor the chevron need. [px]"""
        last = list(self.tabs.values())[-1].geometry()
        left = last.right() + self._bench.px(12)
        return QRect(left, 0, max(0, self.fold.x() - self._bench.px(6) - left), self.height())

    def _on_fold(self) -> None:
        checked = next((name for name, tab in self.tabs.items() if tab.isChecked()), "")
        self.asked.emit(checked or next(iter(self.tabs), ""))

    def _restyle(self) -> None:
        px = self._bench.px
        self.setFixedHeight(px(38))
        self.row.setContentsMargins(px(20), 1, px(14), 0)
        self.row.setSpacing(0)

    def resizeEvent(self, _event: object) -> None:
        needed = sum(tab.sizeHint().width() for tab in self.tabs.values())
        self.hint.setVisible(self.width() - needed > self._bench.px(520))

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if event.buttons() & Qt.MouseButton.LeftButton:
            foot = self._area.mapToGlobal(self._area.rect().bottomLeft()).y()
            self.dragged.emit(foot - round(event.globalPosition().y()) - self.height() // 2)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        step = {Qt.Key.Key_Right: 1, Qt.Key.Key_Left: -1}.get(Qt.Key(event.key()))
        focused = self.focusWidget()
        if step is None or not isinstance(focused, Tab):
            super().keyPressEvent(event)
            return
        tabs = list(self.tabs.values())
        tabs[(tabs.index(focused) + step) % len(tabs)].setFocus(Qt.FocusReason.TabFocusReason)

    def paintEvent(self, _event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            painter.setPen(self._bench.theme.color("hairline"))
            painter.drawLine(0, 0, self.width(), 0)


class FoldButton(Control):
    """The chevron at the end of the tabs."""

    def __init__(self, bench: Bench, parent: QWidget) -> None:
        super().__init__(bench, "Open a page", parent)
        self._open = False
        self.setCursor(Qt.CursorShape.ArrowCursor)

    def sizeHint(self) -> QSize:
        return QSize(self.bench.px(28), self.bench.px(28))

    def set_open(self, *, open_: bool) -> None:
        """Point down while a page is open."""
        self._open = open_
        self.setText("Fold the page" if open_ else "Open a page")
        self.setToolTip(self.text())
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        ink = self.bench.theme.color("text" if self.pointed else "dim")
        centre = QPointF(self.width() / 2, self.height() / 2)
        with QPainter(self) as painter:
            draw_chevron(painter, centre, self.bench.px(4), QPen(ink, 1.5), up=not self._open)
