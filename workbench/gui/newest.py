"""Slow work that follows the project: only the newest wish counts, and rounds come in between."""

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QObject, Qt, Signal

from workbench.gui.bench import Bench
from workbench.gui.jobs import Job
from workbench.progress import Progress

__all__ = ["Newest", "Work"]

Work = Callable[[Any, Progress, Callable[[object], object]], object]
"""Is given a plan, a progress, and what takes a round that is done; returns the last round."""


class Newest(QObject):
    """Works on the newest plan in a thread of its own; stopping keeps the rounds that are done.

    A round has the ``plan`` that it was made for.
    """

    changed = Signal()
    """Something else was found, or the work has ended."""
    progress = Signal(int, int)
    """How much is done, and of how much."""

    _round = Signal(object)
    """A round that is done; comes from the thread that works."""

    def __init__(self, bench: Bench, work: Work) -> None:
        super().__init__(bench)
        self._bench, self._function = bench, work
        self.plan: Any = None
        """What is worked on, or was last; none while nothing is wanted."""
        self.run: Any = None
        """The round done last; it may be that of an earlier plan while the new one is worked on."""
        self.problem = ""
        """Why the plan has no result; empty otherwise."""
        self.stopped = False
        """Whether the work on the plan was stopped."""
        self._job: Job | None = None
        self._round.connect(self._take_round, Qt.ConnectionType.QueuedConnection)

    @property
    def busy(self) -> bool:
        """Whether the plan is being worked on."""
        return self._job is not None

    def ask(self, plan: object) -> None:
        """Work on a plan, unless it is done or being worked on; none ends the work."""
        if plan == self.plan:
            return
        if self._job is not None:
            self._job.cancel()
            self._job = None
        self.plan, self.problem, self.stopped = plan, "", False
        if plan is not None:
            self._start(plan)
        self.changed.emit()

    def stop(self) -> None:
        """Stop; the rounds that are done stay."""
        if self._job is not None:
            self._job.cancel()

    def _start(self, plan: object) -> None:
        self._job = Job(self._bench, lambda progress: self._function(plan, progress, self._round.emit), self)
        self._job.done.connect(self._on_done)
        self._job.failed.connect(self._on_failed)
        self._job.cancelled.connect(self._on_cancelled)
        self._job.progress.connect(self._on_progress)
        self._job.start()

    def _take_round(self, run: Any) -> None:
        if self.busy and run.plan == self.plan:
            self.run = run
            self.changed.emit()

    def _on_done(self, run: object) -> None:
        if self._ended():
            self.run = run
            self.changed.emit()

    def _on_failed(self, reason: str) -> None:
        if self._ended():
            self.problem = reason
            self.changed.emit()

    def _on_cancelled(self) -> None:
        if self._ended():
            self.stopped = True
            self.changed.emit()

    def _on_progress(self, done: int, total: int) -> None:
        if self.sender() is self._job:
            self.progress.emit(done, total)

    def _ended(self) -> bool:
        """Let the job that sent a signal go; return whether it is the one that was waited for."""
        job = self.sender()
        awaited = job is self._job
        if awaited:
            self._job = None
        if isinstance(job, Job):
            job.deleteLater()
        return awaited
