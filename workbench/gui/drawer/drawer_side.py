"""The side of the Parts page where the drawer is: its table, what was left out, what the board lacks."""

from collections import Counter

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.circuit.fit.drawer import Drawer, OwnedPart
from workbench.errors import WorkbenchError
from workbench.files.drawer import MOST_ROWS, parse_drawer, read_drawer, write_drawer
from workbench.gui.bench import Bench
from workbench.gui.drawer.drawer_table import DrawerTable
from workbench.gui.drawer.own_drawer import own_drawer
from workbench.gui.drawer.told import Told
from workbench.gui.monitor.edid_file import start_folder
from workbench.gui.widgets import Button, ButtonKind, Sign, Words
from workbench.gui.widgets.empty_card import EmptyCard
from workbench.project.document import Channel, Project
from workbench.project.owned import missing_words

__all__ = ["DrawerSide"]

_KINDS = "Drawer as a table (*.csv *.tsv *.txt);;All files (*)"
_SUFFIX = ".csv"
QWIDGETSIZE_MAX = (1 << 24) - 1
"""Qt's own word for no greatest size; the binding does not have it. [px]"""


class DrawerSide(QWidget):
    """Shows the person's drawer; rows are typed, pasted, read from a file and written to one."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.setAccessibleName("Your drawer")
        self.own = own_drawer(bench)
        self._project = bench.session.project
        self.count = Words(bench, size=0.9, role="dim")
        self.back = Button(bench, "Take back", ButtonKind.QUIET)
        self.back.setToolTip("Undoes the last change of the drawer.")
        self.table = DrawerTable(bench, self.own.put)
        self.empty = EmptyCard(bench, "The drawer is empty.", "Type values, or paste a list of what you own.")
        self._below = QWidget()
        self.said = Told(bench)
        self.missing = Words(bench, size=0.9, role="dim")
        self.read = Button(bench, "Read CSV …")
        self.write = Button(bench, "Save CSV …")
        self.paste = Button(bench, "Paste")
        self._lay_out()
        self.back.clicked.connect(self.own.take_back)
        self.read.clicked.connect(self.ask_and_read)
        self.write.clicked.connect(self.ask_and_write)
        self.paste.clicked.connect(self.table.paste)
        self.table.told.connect(self.said.tell)
        self.table.pasted.connect(self.add_rows)
        self.own.changed.connect(self.said.clear)
        self.own.changed.connect(self._show)
        bench.theme_changed.connect(self._restyle)
        self._restyle()
        self._show()

    def show_project(self, project: Project) -> None:
        """Show what of the drawer is on a project's board."""
        self._project = project
        self._show()

    def add_rows(self, text: str) -> None:
        """Put the rows of a text into the drawer, and say which were left out."""
        if not text.strip():
            self._refuse("There is no text on the clipboard: copy rows of a table or a list of values first.")
            return
        try:
            added, refused = parse_drawer(text)
        except WorkbenchError as reason:
            self._refuse(str(reason))
            return
        parts = (*self.own.drawer.parts, *added.parts)
        if len(parts) > MOST_ROWS:
            self._refuse(f"A drawer has at most {MOST_ROWS} rows: paste fewer.")
            return
        self.own.put(Drawer(parts))
        self._tell(f"Pasted {_rows(len(added.parts))}", refused)

    def ask_and_read(self) -> None:
        """Let the person choose a table, and let the drawer hold what is in it."""
        if self.bench.dialogs is None:
            return
        path = self.bench.dialogs.open_path("Read a drawer", start_folder(self.bench), _KINDS)
        if path is None:
            return
        try:
            drawer, refused = read_drawer(path)
        except WorkbenchError as reason:
            self._refuse(str(reason))
            return
        self.own.put(drawer)
        self._tell(f"Read {_rows(len(drawer.parts))} from {path.name}", refused)

    def ask_and_write(self) -> None:
        """Let the person choose where to write the drawer as a table."""
        if self.bench.dialogs is None:
            return
        suggested = start_folder(self.bench) / f"drawer{_SUFFIX}"
        path = self.bench.dialogs.save_path("Save the drawer", suggested, _KINDS)
        if path is None:
            return
        path = path if path.suffix else path.with_name(f"{path.name}{_SUFFIX}")
        try:
            write_drawer(self.own.drawer, path)
        except WorkbenchError as reason:
            self._refuse(str(reason))
            return
        self.bench.notice(f"Written: {path.name}, {_rows(len(self.own.drawer.parts))}.")

    def _tell(self, done: str, refused: tuple[str, ...]) -> None:
        self.bench.notice(
            f"{done}; {len(refused)} left out." if refused else f"{done}.", warning=bool(refused)
        )
        self.said.tell_left_out(refused)

    def _refuse(self, reason: str) -> None:
        self.said.tell(Sign.FAILS, reason)

    def _show(self) -> None:
        drawer, project = self.own.drawer, self._project
        used = Counter(resistor.ohms for c in Channel for resistor in project.channels[c].resistors)

        def on_board(part: OwnedPart) -> int:
            return sum(count for ohms, count in used.items() if part.is_of(ohms))

        self.table.show_drawer(drawer, on_board)
        self._show_empty()
        self.count.say(_count_words(drawer))
        self.missing.say(missing_words(project, drawer) if drawer.parts else "")
        self.back.setVisible(self.own.can_take_back)
        self.write.setEnabled(bool(drawer.parts))

    def _show_empty(self) -> None:
        """Let an empty drawer keep the one row to type in, and say under it what belongs there."""
        empty = not self.own.drawer.parts
        self.empty.setVisible(empty)
        self._below.setVisible(empty)
        self.table.setMaximumHeight(self.table.one_row() if empty else QWIDGETSIZE_MAX)

    def _lay_out(self) -> None:
        self._head, self._foot = QHBoxLayout(), QHBoxLayout()
        for widget in (Words(self.bench, "Your drawer", caps=True, role="dim"), self.count):
            self._head.addWidget(widget)
        self._head.addStretch(1)
        self._head.addWidget(self.back)
        for button in (self.paste, self.read, self.write):
            self._foot.addWidget(button)
        self._foot.addStretch(1)
        self._column = QVBoxLayout(self)
        self._column.addLayout(self._head)
        self._column.addWidget(self.table, 1)
        self._column.addWidget(self.empty)
        self._column.addWidget(self._below, 1)
        self._column.addWidget(self.said)
        self._column.addWidget(self.missing)
        self._column.addLayout(self._foot)
        self.missing.setWordWrap(True)

    def _restyle(self) -> None:
        px = self.bench.px
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(px(4))
        self._head.setSpacing(px(12))
        self._foot.setSpacing(px(8))
        self.back.setMaximumHeight(px(24))
        self._show_empty()


def _count_words(drawer: Drawer) -> str:
    if not drawer.parts:
        return "empty; kept for every project"
    counted = sum(part.count or 0 for part in drawer.parts)
    many = any(part.count is None for part in drawer.parts)
    if not counted:
        return f"{_rows(len(drawer.parts))}, as many as you like"
    noun = "resistor" if counted == 1 else "resistors"
    return f"{_rows(len(drawer.parts))}, {counted} {noun}{' and more' if many else ''}"


def _rows(count: int) -> str:
    return f"{count} row" if count == 1 else f"{count} rows"
