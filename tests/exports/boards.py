"""A small board to export: three equal 500 Ω … 8 kΩ ladders at 640 x 480."""

from workbench.circuit.ladders import weighted
from workbench.pipeline.run import Pipeline
from workbench.project.document import Channels, Project, Wiring
from workbench.timing.search import find_mode

LADDER = weighted(5, [500.0, 1e3, 2e3, 4e3, 8e3])


def board(mode="640x480@60", **settings):
    red, green, blue = (tuple(f"{letter}{bit}" for bit in "43210") for letter in "RGB")
    return Project(
        name=settings.pop("name", "slip"),
        mode=find_mode(mode),
        channels=Channels(LADDER, LADDER, LADDER),
        wiring=Wiring(red, green, blue, "H", "V"),
        **settings,
    )


def solved(mode="640x480@60", **settings):
    return Pipeline().run(board(mode, **settings))
