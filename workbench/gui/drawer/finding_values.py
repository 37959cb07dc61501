"""Values being looked for, off the window's thread: the newest plan wins, stopping keeps what is there."""

from PySide6.QtCore import QObject, Qt, Signal

from workbench.gui.bench import Bench
from workbench.gui.jobs import Job
from workbench.pipeline.fits import FitPlan, FitRun, find_fits
from workbench.progress import Progress

__all__ = ["Search"]


class Search(QObject):
    """Looks for values; holds what was found last, or why nothing was."""

    changed = Signal()
    """Something else was found, or nothing, or the work has ended."""
    progress = Signal(int, int)
    """How far the present round has come."""

    _round = Signal(object)
    """A round that is done; comes from the thread that works."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench)
        self._bench = bench
        self.plan: FitPlan | None = None
        """What is looked for, or was looked for last."""
        self.run: FitRun | None = None
        """What was found for the plan; none while nothing is."""
        self.problem = ""
        """Why nothing can be found; empty otherwise."""
        self.stopped = False
        """Whether the work was stopped before it was whole."""
        self._job: Job | None = None
        self._round.connect(self._take_round, Qt.ConnectionType.QueuedConnection)

    @property
    def busy(self) -> bool:
        """Whether values are being looked for."""
        return self._job is not None

    def look(self, plan: FitPlan | None) -> None:
        """Look for values, unless they are there or being looked for; none ends the search."""
        if plan == self.plan:
            return
        if self._job is not None:
            self._job.cancel()
            self._job = None
        self.plan, self.run, self.problem, self.stopped = plan, None, "", False
        if plan is not None:
            self._job = Job(self._bench, lambda progress: self._work(plan, progress), self)
            self._job.done.connect(self._on_done)
            self._job.failed.connect(self._on_failed)
            self._job.cancelled.connect(self._on_cancelled)
            self._job.progress.connect(self._on_progress)
            self._job.start()
        self.changed.emit()

    def stop(self) -> None:
        """Stop looking; what was found with fewer parts a leg stays."""
        if self._job is not None:
            self._job.cancel()

    def holds_for(self, plan: FitPlan) -> None:
        """Let what was found stand for another plan: one of these candidates was just taken."""
        self.plan = plan

    def _work(self, plan: FitPlan, progress: Progress) -> FitRun:
        return find_fits(plan, progress=progress, so_far=self._round.emit)

    def _take_round(self, run: FitRun) -> None:
        if run.plan == self.plan and self.busy:
            self.run = run
            self.changed.emit()

    def _on_done(self, run: FitRun) -> None:
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
