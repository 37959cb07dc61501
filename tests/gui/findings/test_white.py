from dataclasses import replace

import pytest

from tests.exports.boards import board
from workbench.circuit.ladders import weighted
from workbench.circuit.network import Driver, Load, Network
from workbench.gui.findings import WhiteStatus
from workbench.project.document import Channel


@pytest.fixture
def status(qtbot, make_bench):
    """Return a maker of a status shown for a project."""

    def make(project):
        bench = make_bench(project)
        status = WhiteStatus(bench)
        qtbot.addWidget(status)
        status.show_result(project, bench.live.result)
        status.resize(300, 120)
        status.show()
        return status

    return make


def test_loaded_and_open_stand_side_by_side(status):
    shown = status(board())

    assert shown.loaded_volts == pytest.approx(0.7431, abs=1e-4)
    assert shown.open_volts == pytest.approx(3.3)
    assert shown.accessibleDescription() == "loaded 0.743 V, open 3.30 V, inside 0.665 … 0.770 V"


@pytest.mark.parametrize(
    ("project", "verdict"),
    [
        pytest.param(board(driver=Driver(5.0)), "above", id="bright"),
        pytest.param(board(driver=Driver(2.0)), "below", id="dim"),
        pytest.param(board(load=Load(None)), "above", id="no load"),
    ],
)
def test_outside_is_said_by_side(status, project, verdict):
    assert status(project).verdict == verdict


def test_it_follows_the_drawn_channel(status):
    project = board()
    blue = weighted(5, [510.0, 1e3, 2e3, 3.9e3, 8.2e3])
    shown = status(replace(project, channels=replace(project.channels, blue=blue)))

    shown.bench.view.choose_channel(Channel.BLUE)

    assert shown.loaded_volts == pytest.approx(0.738, abs=1e-3)


def test_a_network_without_levels_shows_none(status):
    project = board()
    nothing = replace(project.channels, red=Network(project.channels.red.pins, ()))
    shown = status(replace(project, channels=nothing))

    assert shown.loaded_volts is None
    assert shown.verdict == "no level"


def test_both_sizes_paint(status):
    shown = status(board())

    tall = shown.grab().toImage()
    shown.set_folded(folded=True)
    shown.resize(shown.sizeHint())
    flat = shown.grab().toImage()

    assert not tall.isNull()
    assert flat.height() == shown.bench.px(44)
