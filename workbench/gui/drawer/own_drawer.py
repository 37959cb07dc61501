"""The person's drawer: one for all projects, kept in the data folder and shared by all panels."""

from pathlib import Path

from PySide6.QtCore import QObject, QStandardPaths, Signal

from workbench.circuit.fit.drawer import Drawer
from workbench.errors import FileError
from workbench.files.drawer import parse_rows, write_drawer
from workbench.gui.bench import Bench

__all__ = ["OwnDrawer", "own_drawer"]

_MOST_STEPS = 100
_NOTHING = Drawer(())


class OwnDrawer(QObject):
    """Holds the drawer; every change is written at once, and can be taken back."""

    changed = Signal()
    """The drawer holds something else."""

    def __init__(self, bench: Bench, path: Path) -> None:
        super().__init__(bench)
        self._bench = bench
        self._path = path
        self._before: list[Drawer] = []
        self._drawer = self._read()

    @property
    def drawer(self) -> Drawer:
        """What is in the drawer."""
        return self._drawer

    @property
    def can_take_back(self) -> bool:
        """Whether there is a change to take back."""
        return bool(self._before)

    def put(self, drawer: Drawer) -> None:
        """Let the drawer hold something else, and write it."""
        if drawer != self._drawer:
            self._before = [*self._before[-_MOST_STEPS:], self._drawer]
            self._hold(drawer)

    def take_back(self) -> None:
        """Undo the last change of the drawer; a project's undo leaves the drawer alone."""
        if self._before:
            self._hold(self._before.pop())

    def _hold(self, drawer: Drawer) -> None:
        self._drawer = drawer
        try:
            self._path.parent.mkdir(parents=True, exist_ok=True)
            write_drawer(drawer, self._path)
        except (OSError, FileError) as reason:
            self._bench.notice(f"The drawer is not kept for next time: {reason}", warning=True)
        self.changed.emit()

    def _read(self) -> Drawer:
        """Return the drawer kept last time; what cannot be read is moved aside, never written over."""
        try:
            if not self._path.exists():
                return _NOTHING
            drawer, refused = parse_rows(self._path.read_text(encoding="utf-8-sig"))
        except (OSError, UnicodeDecodeError, FileError):
            return self._moved_aside("Your drawer cannot be read")
        return self._moved_aside("Some rows of your drawer cannot be read", drawer) if refused else drawer

    def _moved_aside(self, what: str, drawer: Drawer = _NOTHING) -> Drawer:
        aside = self._path.with_name(f"{self._path.stem}-damaged{self._path.suffix}")
        try:
            self._path.replace(aside)
        except OSError as reason:
            self._bench.notice(f"{what}, and it could not be moved aside: {reason}", warning=True)
        else:
            self._bench.notice(f"{what}; it was kept as {aside.name}.", warning=True)
        return drawer


def own_drawer(bench: Bench) -> OwnDrawer:
    """Return the drawer that all panels of a bench share."""
    found = bench.findChild(OwnDrawer)
    return found if found is not None else OwnDrawer(bench, usual_path())


def usual_path() -> Path:
    """Return where the drawer lies for the person who runs the program."""
    data = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.GenericDataLocation)
    return Path(data) / "backporch" / "drawer.csv"
