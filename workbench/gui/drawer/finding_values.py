"""Values being looked for, off the window's thread."""

from collections.abc import Callable

from workbench.gui.bench import Bench
from workbench.gui.newest import Newest
from workbench.pipeline.fits import FitPlan, FitRun, find_fits
from workbench.progress import Progress

__all__ = ["Search"]


class Search(Newest):
    """Looks for values; what was found for another plan goes at once, since it could not be taken."""

    plan: FitPlan | None
    run: FitRun | None

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench, _work)

    def look(self, plan: FitPlan | None) -> None:
        """Look for values; none ends the search."""
        if plan != self.plan:
            self.run = None
        self.ask(plan)

    def holds_for(self, plan: FitPlan) -> None:
        """Let what was found stand for another plan: one of these candidates was just taken."""
        self.plan = plan


def _work(plan: FitPlan, progress: Progress, so_far: Callable[[object], object]) -> FitRun:
    return find_fits(plan, progress=progress, so_far=so_far)
