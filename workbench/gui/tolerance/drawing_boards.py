"""The boards of the project, drawn off the window's thread and shared by all who show them."""

from collections.abc import Callable

from workbench.gui.bench import Bench
from workbench.gui.newest import Newest
from workbench.gui.settings import BOARDS, SEED
from workbench.pipeline.boards import BoardPlan, BoardRun, board_plan, draw_boards
from workbench.progress import Progress
from workbench.project.document import Project

__all__ = ["DrawnBoards", "drawn_boards"]


class DrawnBoards(Newest):
    """Holds the boards drawn last, those of an earlier project until the new ones are there."""

    run: BoardRun | None

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench, _work)

    def draw(self, project: Project) -> None:
        """Draw a project's boards, as many and by the seed that the person wants."""
        boards, seed = (int(self._bench.settings.get(setting)) for setting in (BOARDS, SEED))
        self.ask(board_plan(project, boards=boards, seed=seed))

    def of(self, project: Project) -> BoardRun | None:
        """Return the boards drawn last if they are a project's; none if it is another one by now."""
        run = self.run
        if run is None or board_plan(project, boards=run.plan.boards, seed=run.plan.seed) != run.plan:
            return None
        return run


def _work(plan: BoardPlan, progress: Progress, so_far: Callable[[object], object]) -> BoardRun:
    return draw_boards(plan, progress=progress, so_far=so_far)


def drawn_boards(bench: Bench) -> DrawnBoards:
    """Return the boards that all panels of a bench share."""
    found = bench.findChild(DrawnBoards)
    return found if found is not None else DrawnBoards(bench)
