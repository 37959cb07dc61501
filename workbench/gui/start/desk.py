"""One open window with all that belongs to it, put together from parts that can be exchanged."""

from collections.abc import Callable
from datetime import datetime
from pathlib import Path

from PySide6.QtCore import QObject, QPoint
from PySide6.QtGui import QCloseEvent
from PySide6.QtWidgets import QWidget

from workbench.files.recovery import Recovery
from workbench.gui.bench import Bench
from workbench.gui.cards.opener import Cards
from workbench.gui.commands import Openers, edit_specs, view_specs
from workbench.gui.drawer.owned_values import OwnedValues
from workbench.gui.faults.commands import FaultList, fault_specs
from workbench.gui.faults.switch import FaultSwitch
from workbench.gui.files.commands import FileMenu, file_specs
from workbench.gui.files.flow import FilesFlow, now
from workbench.gui.files.recovery import RecoveryFlow
from workbench.gui.live import LiveResult
from workbench.gui.messages import Messages
from workbench.gui.monitor.edid_file import EDID_SUFFIXES, open_edid
from workbench.gui.picture.commands import picture_specs
from workbench.gui.picture.loading import Loader, readable_suffixes
from workbench.gui.picture.settling import Settling
from workbench.gui.picture.shelf import Shelf
from workbench.gui.settings import Settings
from workbench.gui.start.panels import PANELS
from workbench.gui.window.main_window import MainWindow, Panels
from workbench.pipeline.run import Pipeline
from workbench.project.session import Change, Session

__all__ = ["Desk", "drop_words"]


class Desk(QObject):
    """Holds the session, the window and what works between them; lives as long as the window."""

    def __init__(
        self,
        session: Session,
        settings: Settings,
        recovery: Recovery,
        *,
        messages: Callable[[Bench, QWidget], Messages] = Messages,
        panels: Panels = PANELS,
        clock: Callable[[], datetime] = now,
    ) -> None:
        super().__init__()
        self.session = session
        self.shelf = Shelf(self)
        self.owned = OwnedValues(self)
        pipeline = Pipeline(self.shelf.pixels, hurried=True, owns=self.owned.owns)
        self.faults = FaultSwitch(pipeline.run, self)
        self.live = LiveResult(session, self.faults.run, self)
        self.bench = Bench(session, self.live, settings, self, faults=self.faults)
        self.images = self.bench.images = Loader(self.bench, self.shelf, self)
        self.shelf.changed.connect(self.live.run_again)
        self.shelf.forgot.connect(pipeline.forget_images)
        self.shelf.attach(self.bench)
        self.owned.changed.connect(self.live.run_again)
        self.owned.attach(self.bench)
        self.settling = Settling(self.bench, self)
        self.window = MainWindow(self.bench, panels)
        self.messages = self.bench.dialogs = messages(self.bench, self.window)
        self.files = FilesFlow(self.bench, self.messages, clock)
        self.recovery = RecoveryFlow(self.bench, self.messages, recovery)
        self.cards = Cards(self.bench, self.window, Pipeline().run)
        self.menu: FileMenu | None = None
        """The file menu while it is open."""
        self.fault_list = FaultList(self.bench, self.window)
        self._add_actions()
        self._connect_bar()
        self.window.dropped.connect(lambda path: self._open_dropped(Path(path)))
        self.window.drop_words = lambda path: drop_words(Path(path))
        self.window.closing.connect(self._on_close)
        self.window.came_back.connect(self.shelf.look_again)
        self._unsubscribe = session.subscribe(self._on_change)
        self.live.result_changed.connect(self._say_saved)
        self._say_saved()

    def open_menu(self) -> FileMenu:
        """Open the file menu under the project's name."""
        name = self.window.top.bench_row.name
        self.menu = FileMenu(self.bench.actions, self.files, self.window)
        self.menu.popup(name.mapToGlobal(QPoint(0, name.height() + 2)))
        return self.menu

    def _add_actions(self) -> None:
        openers = Openers(
            finder=self.cards.find,
            mode=self.cards.choose_mode,
            ladder=self.cards.make_ladder,
            preferences=self.cards.preferences,
            help=self.cards.help,
            cautions=self.cards.cautions,
            keys=self.cards.keys,
            projector=self.window.projector.toggle,
        )
        actions = self.bench.actions
        actions.add(file_specs(self.files, self.window.close))
        actions.add(picture_specs(self.images))
        actions.add(fault_specs(self.faults, self.fault_list.open))
        actions.add(edit_specs(self.bench, self.bench.toggle_link, openers))
        actions.add(view_specs(self.bench, self.window.pages, openers))

    def _connect_bar(self) -> None:
        row, action = self.window.top.bench_row, self.bench.actions.action
        row.undo.follow(action("edit.undo"))
        row.redo.follow(action("edit.redo"))
        row.name.clicked.connect(self.open_menu)
        row.mode.clicked.connect(self.cards.choose_mode)
        row.ladder.clicked.connect(self.cards.make_ladder)
        row.linked.clicked.connect(self.bench.toggle_link)
        row.finder.asked.connect(self.cards.find)
        row.projector.clicked.connect(self.window.projector.toggle)

    def _open_dropped(self, path: Path) -> None:
        """Open a project, show an image, or show what a monitor's EDID says."""
        if path.suffix.lower() in readable_suffixes():
            self.images.load(path)
            self.window.pages.open("picture")
        elif path.suffix.lower() in EDID_SUFFIXES:
            if open_edid(self.bench, path):
                self.window.pages.open("monitor")
        else:
            self.files.open(path)

    def _on_change(self, change: Change) -> None:
        if change.before is change.after:
            self._say_saved()

    def _say_saved(self) -> None:
        self.window.top.say_saved(self.files.state)

    def _on_close(self, event: QCloseEvent) -> None:
        if not self.files.may_leave():
            event.ignore()
            return
        self._unsubscribe()
        self.recovery.close()


def drop_words(path: Path) -> str:
    """Say what is done with a file that is let fall on the window."""
    if path.suffix.lower() in readable_suffixes():
        return f"Drop {path.name} to show this image on the line"
    if path.suffix.lower() in EDID_SUFFIXES:
        return f"Drop {path.name} to read the monitor's EDID in it"
    return f"Drop {path.name} to open it as a project"
