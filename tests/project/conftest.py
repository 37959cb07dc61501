"""A small project to edit."""

import pytest

from workbench.circuit.ladders import weighted
from workbench.project.document import Channels, Project, Wiring
from workbench.timing.mode import Axis, Mode, Polarity

MODE = Mode(
    name="640x480@60",
    source="VESA DMT 0x04",
    pixel_clock_hz=25_175_000,
    h=Axis(640, 16, 96, 48, Polarity.NEGATIVE),
    v=Axis(480, 10, 2, 33, Polarity.NEGATIVE),
)


@pytest.fixture
def project() -> Project:
    """Three channels of three bits, unlinked."""
    network = weighted(3, (500.0, 1000.0, 2000.0), node_farads=30e-12)
    return Project(
        name="Tide board",
        mode=MODE,
        channels=Channels(network, network, network),
        wiring=Wiring(("P0", "P1", "P2"), ("P3", "P4", "P5"), ("P6", "P7", "P8"), "P9", "P10"),
    )
