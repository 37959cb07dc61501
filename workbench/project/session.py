"""The session: the one mutable holder of a project, its history and who listens.

An edit is a function from project to project. The session swaps the project, keeps the old one
for undo and tells every subscriber once.
"""

from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from pathlib import Path

from workbench.errors import EditError
from workbench.project.document import Project
from workbench.project.history import History

__all__ = ["Change", "Session"]


@dataclass(frozen=True, slots=True)
class Change:
    """What subscribers get: the project before and after, and the words for the edit.

    After saving, before and after are the same project and the revision has not moved.
    """

    revision: int
    before: Project
    after: Project
    label: str
    origin: object = None
    """Who made the edit, so that a view can tell its own from others'."""
    opened: bool = False
    """Whether it is another project that was put in, not an edit."""


class Session:
    """Holds the project of one window."""

    def __init__(self, project: Project, path: Path | None = None) -> None:
        self._project = project
        self._path = path
        self._saved: Project | None = project
        self._revision = 0
        self._history = History()
        self._gesture: tuple[str, object] | None = None
        self._looks: dict[str, Callable[[Project], Project]] = {}
        self._subscribers: list[Callable[[Change], None]] = []

    @property
    def project(self) -> Project:
        """The project as it is now."""
        return self._project

    @property
    def path(self) -> Path | None:
        """The file the project was opened from or last saved to; none for a new one."""
        return self._path

    @property
    def revision(self) -> int:
        """A number that grows with every change of the project. [1]"""
        return self._revision

    @property
    def dirty(self) -> bool:
        """Whether the project differs from what was last opened or saved."""
        return self._saved != self._project

    @property
    def can_undo(self) -> bool:
        """Whether there is a step to undo."""
        return bool(self._history.past)

    @property
    def can_redo(self) -> bool:
        """Whether there is a step to do again."""
        return bool(self._history.future)

    @property
    def undo_label(self) -> str:
        """The label of the step that undo would undo; empty if there is none."""
        return self._history.past[-1].label if self._history.past else ""

    @property
    def redo_label(self) -> str:
        """The label of the step that redo would do again; empty if there is none."""
        return self._history.future[-1].label if self._history.future else ""

    @property
    def merging(self) -> object:
        """The key of the step that later edits may still join; none if it is closed."""
        return self._history.past[-1].merge if self._history.past else None

    def apply(
        self,
        label: str,
        edit: Callable[[Project], Project],
        *,
        merge: object = None,
        origin: object = None,
        quiet: str = "",
    ) -> None:
        """Make an edit: one step in the history, one notification.

        An edit that changes nothing adds nothing and notifies nobody; one that raises leaves
        everything as it was.

        Parameters
        ----------
        label : str
            What undo will name, such as ``"Tune R3"``.
        edit : callable
            Function from the project to a new one.
        merge : object, optional
            Consecutive edits with an equal key become one step, until :meth:`release`.
        origin : object, optional
            Passed on to subscribers.
        quiet : str, optional
            Name of what is looked at, where the edit is no decision but a look, such as at another
            scanline: it is no step of the history, outlasts undo, and does not make the project
            one that has to be saved; the next save takes it along.
        """
        before = self._project
        after = edit(before)
        if after == before:
            return
        if quiet:
            self._looks[quiet] = edit
            if self._saved is not None:
                self._saved = self._with_looks(self._saved)
            self._go(after, label, origin)
            return
        if self._gesture is not None:
            label, merge = self._gesture
        self._history = self._history.add(label, before, after, merge)
        self._go(after, label, origin)

    def release(self) -> None:
        """End merging: the next edit is a step of its own. Called when a drag or a wheel stops."""
        self._history = self._history.closed()

    def drop(self) -> None:
        """Take back the step that is still merging, as Escape does in a drag."""
        past = self._history.past
        if past and past[-1].merge is not None:
            self._history = History(past[:-1])
            self._go(self._with_looks(past[-1].project), past[-1].label, None)

    @contextmanager
    def gesture(self, label: str) -> Iterator[None]:
        """Make the edits inside one step; an exception takes them all back and goes on.

        A gesture inside another one is part of it, and takes back its own edits only.
        """
        outer, project, history = self._gesture, self._project, self._history
        self._gesture = outer or (label, object())
        try:
            yield
        except BaseException:
            self._history = history
            if self._project != project:
                self._go(self._with_looks(project), label, None)
            raise
        finally:
            self._gesture = outer
            if outer is None:
                self.release()

    def undo(self) -> None:
        """Go back to the project before the last step; nothing happens if there is none."""
        if self.can_undo:
            self._history, step = self._history.undone(self._project)
            self._go(self._with_looks(step.project), f"Undo {step.label}", None)

    def redo(self) -> None:
        """Do the last undone step again; nothing happens if there is none."""
        if self.can_redo:
            self._history, step = self._history.redone(self._project)
            self._go(self._with_looks(step.project), f"Redo {step.label}", None)

    def mark_saved(self, path: Path) -> None:
        """Remember that the project now stands in ``path``; subscribers hear of it."""
        self.release()
        self._path, self._saved = path, self._project
        self._notify(Change(self._revision, self._project, self._project, "Save"))

    def replace(self, project: Project, path: Path | None, *, saved: bool = True) -> None:
        """Put another project in, with an empty history.

        ``saved`` is false for a project that stands in no file yet, such as a recovered one.
        """
        self._history, self._path, self._looks = History(), path, {}
        self._saved = project if saved else None
        self._go(project, "Open", None, opened=True)

    def subscribe(self, callback: Callable[[Change], None]) -> Callable[[], None]:
        """Call ``callback`` on every change from now on; return what ends it."""
        self._subscribers.append(callback)

        def unsubscribe() -> None:
            if callback in self._subscribers:
                self._subscribers.remove(callback)

        return unsubscribe

    def _with_looks(self, project: Project) -> Project:
        """Return another project looked at as this one is, where it can be."""
        for edit in self._looks.values():
            with suppress(EditError):
                project = edit(project)
        return project

    def _go(self, after: Project, label: str, origin: object, *, opened: bool = False) -> None:
        before, self._project = self._project, after
        self._revision += 1
        self._notify(Change(self._revision, before, after, label, origin, opened))

    def _notify(self, change: Change) -> None:
        for callback in tuple(self._subscribers):
            callback(change)
