"""The boards of the project, drawn off the window's thread and shared by all who show a band."""

from PySide6.QtCore import QObject, Qt, Signal

from workbench.gui.bench import Bench
from workbench.gui.jobs import Job
from workbench.gui.settings import BOARDS, SEED
from workbench.pipeline.boards import BoardPlan, BoardRun, board_plan, draw_boards
from workbench.progress import Progress
from workbench.project.document import Project

__all__ = ["DrawnBoards", "drawn_boards"]


class DrawnBoards(QObject):
    """Holds the boards drawn last; the newest plan wins, and stopping keeps what is there."""

    changed = Signal()
    """Other boards are there, or none are."""
    progress = Signal(int, int)
    """How many boards are done, and of how many; both 0 when nothing is being drawn."""

    _round = Signal(object)
    """A round that is done; comes from the thread that works."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench)
        self._bench = bench
        self.run: BoardRun | None = None
        """The boards drawn last, out of date or not; none before the first."""
        self._plan: BoardPlan | None = None
        self._job: Job | None = None
        self._round.connect(self._take_round, Qt.ConnectionType.QueuedConnection)

    @property
    def busy(self) -> bool:
        """Whether boards are being drawn."""
        return self._job is not None

    def draw(self, project: Project) -> None:
        """Draw a project's boards, unless they are there or being drawn."""
        boards, seed = (int(self._bench.settings.get(setting)) for setting in (BOARDS, SEED))
        plan = board_plan(project, boards=boards, seed=seed)
        if plan == self._plan:
            return
        self._plan = plan
        if self._job is not None:
            self._job.cancel()
        self._job = Job(self._bench, lambda progress: self._work(plan, progress), self)
        self._job.done.connect(self._on_done)
        self._job.failed.connect(self._on_failed)
        self._job.cancelled.connect(self._ended)
        self._job.progress.connect(self._on_progress)
        self._job.start()

    def stop(self) -> None:
        """Stop drawing; the rounds that are done stay."""
        if self._job is not None:
            self._job.cancel()

    def of(self, project: Project) -> BoardRun | None:
        """Return the boards drawn last if they are a project's; none if it is another one by now."""
        run = self.run
        if run is None or board_plan(project, boards=run.plan.boards, seed=run.plan.seed) != run.plan:
            return None
        return run

    def _work(self, plan: BoardPlan, progress: Progress) -> BoardRun:
        return draw_boards(plan, progress=progress, so_far=self._round.emit)

    def _take_round(self, run: BoardRun) -> None:
        if run.plan == self._plan and self._job is not None:
            self._show(run)

    def _on_done(self, run: BoardRun) -> None:
        if self._ended():
            self._show(run)

    def _on_failed(self, reason: str) -> None:
        if self._ended():
            self._bench.notice(reason, warning=True)

    def _on_progress(self, done: int, total: int) -> None:
        if self.sender() is self._job and done < total:
            self.progress.emit(done, total)

    def _ended(self) -> bool:
        """Let the job that sent a signal go; return whether it is the one that was waited for."""
        job = self.sender()
        awaited = job is self._job
        if awaited:
            self._job = None
            self.progress.emit(0, 0)
        if isinstance(job, Job):
            job.deleteLater()
        return awaited

    def _show(self, run: BoardRun) -> None:
        self.run = run
        self.changed.emit()


def drawn_boards(bench: Bench) -> DrawnBoards:
    """Return the boards that all panels of a bench share."""
    found = bench.findChild(DrawnBoards)
    return found if found is not None else DrawnBoards(bench)
