"""The window: the bar, the network beside the scanline, the pages, the findings."""

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import (
    QCloseEvent,
    QDragEnterEvent,
    QDragLeaveEvent,
    QDropEvent,
    QKeyEvent,
    QResizeEvent,
)
from PySide6.QtWidgets import (
    QApplication,
    QMainWindow,
    QVBoxLayout,
    QWidget,
)

from workbench.gui.bench import Bench
from workbench.gui.faults.banner import FaultBanner
from workbench.gui.settings import WINDOW
from workbench.gui.styles import style_sheet
from workbench.gui.theme import palette
from workbench.gui.widgets.focus_ring import FocusRing
from workbench.gui.window.drop_sign import DropSign
from workbench.gui.window.foot import Foot
from workbench.gui.window.notice_bar import NoticeBar
from workbench.gui.window.pages import PageArea, PageSpec
from workbench.gui.window.panel_help import HELP, PAGE_HELP
from workbench.gui.window.projector import Projector
from workbench.gui.window.split import Split
from workbench.gui.window.top_bar import TopBar
from workbench.pipeline.result import Result
from workbench.project.session import Change

__all__ = ["MainWindow", "Panels"]

SMALLEST = (860, 480)
"""Least size of the window: a full HD screen at twice the scale, less the desktop's own bars. [px]"""


@dataclass(frozen=True, slots=True)
class Panels:
    """How the parts of the window are made; each takes the bench."""

    network: Callable[[Bench], QWidget]
    scanline: Callable[[Bench], QWidget]
    findings: Callable[[Bench], QWidget]
    white: Callable[[Bench], QWidget]
    pages: tuple[PageSpec, ...]


class MainWindow(QMainWindow):
    """Lays the panels out and hands each new result to them; it knows no resistor."""

    dropped = Signal(str)
    """Path of a file that was let fall on the window."""
    came_back = Signal()
    """The person turned to the window again: what lies outside may have changed."""
    closing = Signal(object)
    """The close event, which who listens may refuse."""

    def __init__(self, bench: Bench, panels: Panels) -> None:
        super().__init__()
        self.bench = bench
        self.setAcceptDrops(True)
        self.setMinimumSize(*SMALLEST)
        # First of all who listen: what Qt paints comes before the inks that panels set themselves.
        bench.theme_changed.connect(self.restyle)
        self.top = TopBar(bench)
        self.banner = FaultBanner(bench, bench.faults)
        self.network = panels.network(bench)
        self.scanline = panels.scanline(bench)
        self.pages = PageArea(bench, panels.pages)
        self.findings = panels.findings(bench)
        self.white = panels.white(bench)
        self.split = Split(bench)
        self.split.addWidget(self.network)
        self.split.addWidget(self.scanline)
        self.foot = Foot(bench, self.findings, self.white)
        self._column = QWidget()
        column = QVBoxLayout(self._column)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        for widget, stretch in (
            (self.top, 0),
            (self.banner, 0),
            (self.split, 1),
            (self.pages, 0),
            (self.foot, 0),
        ):
            column.addWidget(widget, stretch)
        self.setCentralWidget(self._column)
        self.drop_sign = DropSign(bench, self)
        self.drop_words: Callable[[str], str] = lambda _path: "Drop it to open it"
        """What would be done with a file that is let fall."""
        self.notices = NoticeBar(bench, self, self.pages.tabs, self.foot)
        self.ring = FocusRing(bench, self)
        self.projector = Projector(bench, self)
        bench.actions.attach(self)
        for name, (title, text) in HELP.items():
            panel = getattr(self, name)
            panel.setAccessibleName(panel.accessibleName() or title)
            panel.setWhatsThis(panel.whatsThis() or text)
            self._add_commands(panel)
        self.pages.made.connect(self._add_page)
        bench.live.result_changed.connect(self.show_result)
        self.pages.opened.connect(self._share_height)
        bench.faults.changed.connect(self._share_height)
        # After the bar and the foot took their own new heights.
        bench.theme_changed.connect(self._share_height)
        self._unsubscribe = bench.session.subscribe(self._on_change)
        self.restyle()
        self._share_height()
        self.show_result(bench.live.result)
        self.pages.restore()
        self.network.setFocus()

    def show_result(self, result: Result) -> None:
        """Show a result in every panel that can be seen."""
        for panel in (self.top, self.network, self.scanline, self.pages, self.findings, self.white):
            panel.show_result(result.project, result)  # type: ignore[attr-defined]
        self.show_state()

    def show_state(self) -> None:
        """Say how the project stands to its file and its history."""
        session = self.bench.session
        self.setWindowTitle(f"{session.project.name}[*] · Backporch")
        self.setWindowModified(session.dirty)
        self.top.say_history(session.undo_label)
        self.bench.actions.refresh()

    def _add_commands(self, panel: QWidget) -> None:
        """Put the commands that a panel brings into the table."""
        specs = getattr(panel, "action_specs", None)
        if specs is not None:
            self.bench.actions.add(specs())

    def _add_page(self, page: QWidget) -> None:
        page.setWhatsThis(page.whatsThis() or PAGE_HELP.get(page.objectName(), ""))
        self._add_commands(page)

    def restyle(self) -> None:
        """Take colours and sizes again, for what Qt paints itself."""
        theme, type_ = self.bench.theme, self.bench.type
        QApplication.setPalette(palette(theme))
        QApplication.setFont(type_.sans())
        self.setStyleSheet(style_sheet(theme, type_))

    def restore_geometry(self) -> None:
        """Stand where the window stood last time, or fill the screen."""
        if not self.restoreGeometry(self.bench.settings.get(WINDOW)):
            room = self.screen().availableGeometry()
            self.resize(round(room.width() * 0.8), round(room.height() * 0.8))
            self.setWindowState(Qt.WindowState.WindowMaximized)

    def _on_change(self, change: Change) -> None:
        if change.before is change.after:
            self.show_state()

    def _share_height(self) -> None:
        """Give bench, page and foot their heights; a projector has room for the bench or for a page."""
        projecting, page = self.bench.projecting, self.pages.page
        alone = projecting and bool(page)
        focused: QWidget | None = self.focusWidget()
        if alone and focused is not None and self.split.isAncestorOf(focused):
            self.pages.tabs.tabs[page].setFocus()
        self.split.setHidden(alone)
        self.pages.tabs.setVisible(not projecting or bool(page))
        banner = 0 if self.banner.isHidden() else self.banner.minimumHeight()
        self.pages.fit(self.height() - self.top.minimumHeight(), whole=projecting, less=banner)
        self.foot.fold(folded=bool(page) or projecting or self.height() < self.bench.px(900))

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._share_height()
        self.notices.place()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape and self.projector.on:
            self.projector.turn(on=False)
            return
        super().keyPressEvent(event)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        paths = _files_of(event)
        if paths:
            event.acceptProposedAction()
            self.drop_sign.say(self.drop_words(paths[0]) if len(paths) == 1 else "Drop one file at a time")

    def dragLeaveEvent(self, _event: QDragLeaveEvent) -> None:
        self.drop_sign.hide()

    def dropEvent(self, event: QDropEvent) -> None:
        self.drop_sign.hide()
        paths = _files_of(event)
        if len(paths) > 1:
            self.bench.notice("One project is open at a time: drop one file.", warning=True)
        elif paths:
            event.acceptProposedAction()
            self.dropped.emit(paths[0])

    def closeEvent(self, event: QCloseEvent) -> None:
        self.closing.emit(event)
        if not event.isAccepted():
            return
        if not self.projector.on:
            self.bench.settings.set(WINDOW, bytes(self.saveGeometry().data()))
        self.bench.settings.flush()
        self.bench.closing.emit()
        self._unsubscribe()
        self.bench.live.close()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() == QEvent.Type.ActivationChange and hasattr(self, "notices"):
            if self.isActiveWindow():
                self.came_back.emit()
            self.bench.actions.refresh()


def _files_of(event: QDropEvent) -> list[str]:
    """Return the paths of the files that hover or fall."""
    return [url.toLocalFile() for url in event.mimeData().urls() if url.isLocalFile()]
