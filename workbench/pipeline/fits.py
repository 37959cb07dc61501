"""Values for a project's ladders, found with one part a leg first, then with two and three."""

from collections.abc import Callable
from dataclasses import dataclass

from workbench.circuit.fit.drawer import Drawer
from workbench.circuit.fit.fit import Fit, find_fit
from workbench.circuit.network import Driver, Load, Network
from workbench.errors import NetworkError
from workbench.progress import SILENT, Progress
from workbench.project.document import Channel, Project

__all__ = ["FitPlan", "FitRun", "find_fits", "fit_plan"]


@dataclass(frozen=True, slots=True)
class FitPlan:
    """All that a choice of values depends on."""

    networks: tuple[Network, ...]
    """Red, green, blue."""
    driver: Driver
    load: Load
    drawer: Drawer
    most_parts: int
    """Parts of one leg at most. [1]"""


@dataclass(frozen=True, slots=True, eq=False)
class FitRun:
    """What was found with at most so many parts a leg."""

    plan: FitPlan
    most_parts: int
    """As many as were asked for, or fewer while the search goes on. [1]"""
    fit: Fit

    @property
    def whole(self) -> bool:
        """Whether as many parts a leg were tried as were asked for."""
        return self.most_parts == self.plan.most_parts


def fit_plan(project: Project, drawer: Drawer, most_parts: int) -> FitPlan:
    """Return what a choice of values for a project depends on."""
    networks = tuple(project.channels[channel] for channel in Channel)
    return FitPlan(networks, project.driver, project.load, drawer, most_parts)


def find_fits(
    plan: FitPlan, *, progress: Progress = SILENT, so_far: Callable[[FitRun], object] | None = None
) -> FitRun:
    """Choose the values of a project's legs.

    Parameters
    ----------
    plan : FitPlan
        The ladders and the parts there are.
    progress : Progress
        Is told how far the search with the present number of parts a leg has come.
    so_far : callable, optional
        Is given what was found with fewer parts a leg, which is quicker, so that who stops the
        work has something.

    Raises
    ------
    NetworkError
        If a channel is no ladder, or the parts do not suffice.
    Cancelled
        If ``progress`` says so.
    """
    rounds = range(1, plan.most_parts + 1) if so_far is not None else (plan.most_parts,)
    found: FitRun | None = None
    for most_parts in rounds:
        try:
            fit = find_fit(
                plan.networks,
                plan.driver,
                plan.load,
                plan.drawer,
                most_parts=most_parts,
                names=[channel.value for channel in Channel],
                progress=progress,
            )
        except NetworkError:
            # One part a leg may not suffice where two do; the last try says why.
            if most_parts == plan.most_parts:
                raise
            continue
        found = FitRun(plan, most_parts, fit)
        if so_far is not None and not found.whole:
            so_far(found)
    assert found is not None
    return found
