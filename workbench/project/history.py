"""History as a value: the earlier projects, each with the words for what was done next."""

from dataclasses import dataclass, replace

from workbench.project.document import Project

__all__ = ["Entry", "History"]


@dataclass(frozen=True, slots=True)
class Entry:
    """One step: the project on the far side of it, and its label."""

    label: str
    project: Project
    merge: object = None
    """Key under which later edits join this step; none once it is closed."""


@dataclass(frozen=True, slots=True)
class History:
    """Steps that can be undone and redone; the nearest is the last of each."""

    past: tuple[Entry, ...] = ()
    future: tuple[Entry, ...] = ()

    def add(self, label: str, before: Project, after: Project, merge: object = None) -> "History":
        """Return the history after an edit.

        An edit with the merge key of the open last step joins it; one that leads back to where
        the step began takes the step away.
        """
        last = self.past[-1] if self.past else None
        if last is None or merge is None or last.merge != merge:
            return History((*self.closed().past, Entry(label, before, merge)))
        if last.project == after:
            return History(self.past[:-1])
        return History((*self.past[:-1], replace(last, label=label)))

    def closed(self) -> "History":
        """Return the history with its last step closed to further merging."""
        if not self.past or self.past[-1].merge is None:
            return self
        return replace(self, past=(*self.past[:-1], replace(self.past[-1], merge=None)))

    def undone(self, current: Project) -> tuple["History", Entry]:
        """Return the history after an undo, and the step undone with the project to go back to."""
        step = self.past[-1]
        return History(self.past[:-1], (*self.future, Entry(step.label, current))), step

    def redone(self, current: Project) -> tuple["History", Entry]:
        """Return the history after a redo, and the step done again with the project to go to."""
        step = self.future[-1]
        return History((*self.past, Entry(step.label, current)), self.future[:-1]), step
