"""A board to judge: equal 500 Ω … 8 kΩ ladders at 640 x 480, and what is found on it."""

from collections.abc import Callable

import pytest

from workbench.checks import Finding
from workbench.circuit.ladders import weighted
from workbench.circuit.network import Network
from workbench.pipeline.run import Pipeline
from workbench.project.document import Channels, Project, Wiring
from workbench.timing.search import find_mode

LADDER = weighted(5, [500.0, 1e3, 2e3, 4e3, 8e3])

Board = Callable[..., Project]
Found = Callable[[Project, str], Finding | None]


@pytest.fixture
def board() -> Board:
    """Return a maker of projects: networks for red, green and blue, and any field of the project."""

    def make(red: Network = LADDER, green: Network | None = None, blue: Network | None = None, **fields):
        networks = Channels(red, green or red, blue or red)
        names = [tuple(f"{letter}{bit}" for bit in range(8)) for letter in "RGB"]
        wiring = Wiring(
            *(n[: c.bits] for n, c in zip(names, (networks.red, networks.green, networks.blue), strict=True)),
            h="H",
            v="V",
        )
        mode = fields.pop("mode", find_mode("640x480@60"))
        return Project("slip", mode, networks, wiring, **fields)

    return make


@pytest.fixture
def pipeline() -> Pipeline:
    """Return the engine."""
    return Pipeline()


@pytest.fixture
def found(pipeline: Pipeline) -> Found:
    """Return a finder of the first finding of a rule, none where the rule says nothing."""

    def find(project: Project, rule: str) -> Finding | None:
        return next((f for f in pipeline.run(project).findings if f.id == rule), None)

    return find
