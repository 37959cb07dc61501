"""Opening, saving and exporting from the window, and what is asked before something would be lost."""

from collections.abc import Callable
from datetime import datetime
from pathlib import Path

from workbench.errors import WorkbenchError
from workbench.exports import KINDS, Kind
from workbench.files.atomic import write_atomic
from workbench.files.project_file import SUFFIX, read_project, write_project
from workbench.files.recent import with_recent
from workbench.gui.bench import Bench
from workbench.gui.files.templates import new_project
from workbench.gui.messages import Messages
from workbench.gui.settings import EXPORT_FOLDER, OPEN_FOLDER, RECENT, Setting
from workbench.gui.widgets import Sign
from workbench.project.templates import Template

__all__ = ["FilesFlow"]

PROJECTS = f"Backporch projects (*{SUFFIX})"

BROKEN = "-with-faults"
"""Ends the name offered for a file while deliberate faults are on."""

SAVE, DISCARD, CANCEL = "Save", "Discard", "Cancel"
REPLACE = "Replace it"


def now() -> datetime:
    """Return the time on the wall."""
    return datetime.now().astimezone()


class FilesFlow:
    """What the file menu does; every dialog goes through ``messages``."""

    def __init__(self, bench: Bench, messages: Messages, clock: Callable[[], datetime] = now) -> None:
        self._bench = bench
        self._messages = messages
        self._clock = clock
        self._saved_at: datetime | None = None

    @property
    def recent(self) -> tuple[Path, ...]:
        """The files opened or saved last, newest first."""
        return tuple(Path(text) for text in self._bench.settings.get(RECENT))

    @property
    def kinds(self) -> tuple[Kind, ...]:
        """Everything that can be exported."""
        return tuple(KINDS.values())

    @property
    def state(self) -> str:
        """How the project stands to its file, in two or three words."""
        session = self._bench.session
        if session.path is None:
            return "not saved yet"
        if session.dirty:
            return "changes not saved"
        if self._saved_at is None:
            return "saved"
        today = self._saved_at.date() == self._clock().date()
        return f"saved {self._saved_at:%H:%M}" if today else f"saved {self._saved_at:%Y-%m-%d}"

    def start_from(self, template: Template) -> None:
        """Put a template in; the project has no file yet."""
        if self.may_leave():
            self._bench.session.replace(new_project(template, self._bench.settings), None)

    def open(self, path: Path | None = None) -> bool:
        """Open a file, asked for where none is given; return whether it is open now."""
        path = path or self._messages.open_path("Open a project", self._folder(OPEN_FOLDER), PROJECTS)
        if path is None or not self.may_leave():
            return False
        return self.load(path)

    def load(self, path: Path) -> bool:
        """Read a file into the session; where it cannot be read, say why and change nothing."""
        try:
            project = read_project(path)
        except WorkbenchError as reason:
            self._tell("The project was not opened.", reason)
            return False
        self._saved_at = datetime.fromtimestamp(path.stat().st_mtime).astimezone()
        self._bench.session.replace(project, path)
        self._remember(path)
        return True

    def save(self) -> bool:
        """Write the project to its file, or ask for one; return whether it is written."""
        path = self._bench.session.path
        return self.save_as() if path is None else self._write(path)

    def save_as(self) -> bool:
        """Ask where to write, and write."""
        session = self._bench.session
        suggested = session.path or self._folder(OPEN_FOLDER) / f"{file_stem(session.project.name)}{SUFFIX}"
        path = self._asked("Save the project", suggested, PROJECTS, SUFFIX)
        return path is not None and self._write(path)

    def export(self, kind: Kind) -> bool:
        """Ask where to write what ``kind`` makes of the result, and write it."""
        bench = self._bench
        bench.live.refresh()
        # With faults on it is the broken board that is exported: its file shall not pass for the design.
        broken = bool(bench.faults.on)
        name = f"{file_stem(bench.session.project.name)}-{kind.name.rpartition('-')[0]}"
        name = f"{name}{BROKEN if broken else ''}{kind.suffix}"
        kinds = f"{kind.description} (*{kind.suffix})"
        title = "Export the board with its deliberate faults" if broken else "Export"
        path = self._asked(title, self._folder(EXPORT_FOLDER) / name, kinds, kind.suffix)
        if path is None:
            return False
        try:
            write_atomic(path, kind.content(bench.live.result))
        except WorkbenchError as reason:
            self._tell("Nothing was exported.", reason)
            return False
        bench.settings.set(EXPORT_FOLDER, str(path.parent))
        faults = ", ".join(each.words for each in bench.faults.on)
        shown = f", of the board with a fault: {faults}" if broken else ""
        bench.notice(f"Written: {path.name}, {kind.description}{shown}.", warning=broken)
        return True

    def may_leave(self) -> bool:
        """Ask what becomes of changes that are not saved; return whether the project may go."""
        session = self._bench.session
        if not session.dirty:
            return True
        answer = self._messages.ask(
            f"Save the changes to {session.project.name}?",
            (SAVE, DISCARD, CANCEL),
            sentence="They are lost otherwise.",
            sign=Sign.WARNS,
        )
        return self.save() if answer == SAVE else answer == DISCARD

    def forget_recent(self) -> None:
        """Empty the list of recent files."""
        self._bench.settings.set(RECENT, ())

    def _asked(self, title: str, suggested: Path, kinds: str, suffix: str) -> Path | None:
        """Ask for a path; add the suffix, and ask again before that replaces another file."""
        path = self._messages.save_path(title, suggested, kinds)
        if path is None or path.suffix == suffix:
            return path
        path = path.with_name(f"{path.name}{suffix}")
        if path.exists():
            question = f"{path.name} is there already. Replace it?"
            if self._messages.ask(question, (REPLACE, CANCEL), sign=Sign.WARNS) != REPLACE:
                return None
        return path

    def _write(self, path: Path) -> bool:
        session = self._bench.session
        try:
            write_project(session.project, path)
        except WorkbenchError as reason:
            self._tell("The project was not saved.", reason)
            return False
        self._saved_at = self._clock()
        session.mark_saved(path)
        self._remember(path)
        return True

    def _remember(self, path: Path) -> None:
        settings = self._bench.settings
        settings.set(RECENT, tuple(str(recent) for recent in with_recent(self.recent, path)))
        settings.set(OPEN_FOLDER, str(path.absolute().parent))

    def _folder(self, setting: Setting[str]) -> Path:
        kept = Path(self._bench.settings.get(setting))
        return kept if kept.is_absolute() and kept.is_dir() else Path.home()

    def _tell(self, headline: str, reason: WorkbenchError) -> None:
        self._messages.tell(headline, str(reason), sign=Sign.FAILS)


def file_stem(name: str) -> str:
    """Return a project's name as a file's name.

    >>> file_stem("Tide board: 5/5/5")
    'Tide board- 5-5-5'
    """
    kept = "".join("-" if letter in '/\\:*?"<>|' or not letter.isprintable() else letter for letter in name)
    return kept.strip(" .") or "project"
