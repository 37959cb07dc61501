"""The boards one would get of a project, channel by channel; drawn in rounds that grow."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from workbench.circuit.bands import Tolerances
from workbench.circuit.network import Driver, Load, Network
from workbench.circuit.tolerance.monte_carlo import Tolerance, find_tolerance
from workbench.errors import NetworkError
from workbench.progress import SILENT, Progress
from workbench.project.document import Channel, Project
from workbench.project.edits.tolerances import check_tolerances

__all__ = ["BoardPlan", "BoardRun", "board_plan", "draw_boards"]

_FIRST_ROUND, _GROWTH = 16_384, 16
"""Boards of the first round, and how much larger each next one is. [1]"""


@dataclass(frozen=True, slots=True)
class BoardPlan:
    """All that the boards of a project depend on; equal plans draw equal boards."""

    networks: tuple[Network, ...]
    """Red, green, blue."""
    driver: Driver
    load: Load
    tolerances: Tolerances
    boards: int
    seed: int


@dataclass(frozen=True, slots=True, eq=False)
class BoardRun:
    """What was drawn; each channel has boards, or a sentence that says why it has none."""

    plan: BoardPlan
    boards: int
    """Boards drawn of each channel, all that were asked for or those so far. [1]"""
    tolerances: Mapping[Channel, Tolerance]
    """Equal networks share theirs."""
    problems: Mapping[Channel, str]

    @property
    def whole(self) -> bool:
        """Whether all boards that were asked for are there."""
        return self.boards == self.plan.boards


def board_plan(project: Project, *, boards: int, seed: int) -> BoardPlan:
    """Return what the boards of a project depend on.

    Raises
    ------
    EditError
        If a tolerance is out of the range that a project takes.
    """
    check_tolerances(project.tolerances)
    networks = tuple(project.channels[channel] for channel in Channel)
    return BoardPlan(networks, project.driver, project.load, project.tolerances, boards, seed)


def draw_boards(
    plan: BoardPlan, *, progress: Progress = SILENT, so_far: Callable[[BoardRun], object] | None = None
) -> BoardRun:
    """Draw the boards of every channel.

    Parameters
    ----------
    plan : BoardPlan
        What to draw.
    progress : Progress
        Is told the boards done, of all channels and rounds.
    so_far : callable, optional
        Is given each round that is not the last: few boards at once, then more, so that who
        stops the work has something.

    Raises
    ------
    Cancelled
        If ``progress`` says so.
    """
    networks = tuple(dict.fromkeys(plan.networks))
    rounds = (plan.boards,) if so_far is None else _rounds(plan.boards)
    watched = _Part(progress, total=sum(rounds) * len(networks))
    for boards in rounds:
        drawn = {network: _draw(plan, network, boards, watched) for network in networks}
        by_channel = {c: drawn[n] for c, n in zip(Channel, plan.networks, strict=True)}
        run = BoardRun(
            plan,
            boards,
            {c: found for c, found in by_channel.items() if isinstance(found, Tolerance)},
            {c: found for c, found in by_channel.items() if isinstance(found, str)},
        )
        if so_far is not None and boards < plan.boards:
            so_far(run)
    return run


def _rounds(boards: int) -> tuple[int, ...]:
    rounds = [min(_FIRST_ROUND, boards)]
    while rounds[-1] < boards:
        rounds.append(min(rounds[-1] * _GROWTH, boards))
    return tuple(rounds)


def _draw(plan: BoardPlan, network: Network, boards: int, progress: "_Part") -> Tolerance | str:
    try:
        return find_tolerance(
            network, plan.driver, plan.load, plan.tolerances, boards=boards, seed=plan.seed, progress=progress
        )
    except NetworkError as reason:
        return str(reason)
    finally:
        progress.finished(boards)


class _Part(Progress):
    """Tells of one piece of the work as a part of all of it."""

    def __init__(self, whole: Progress, *, total: int) -> None:
        self._whole, self._total, self._before = whole, total, 0

    def step(self, done: int, _total: int) -> None:
        self._whole.step(self._before + done, self._total)

    def finished(self, count: int) -> None:
        """Count a piece as done."""
        self._before += count
