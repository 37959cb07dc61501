"""What is held and let go lies in the view state, for every panel alike."""

import pytest

from workbench.circuit.floating import levels_at
from workbench.gui.network.shown import PinState
from workbench.gui.view_state import ViewState
from workbench.project.document import Channel

RED, GREEN = Channel.RED, Channel.GREEN


def test_a_held_code_brings_its_floating_pins_and_release_forgets_both(qtbot) -> None:
    view, heard = ViewState(), []
    view.changed.connect(lambda: heard.append(1))

    view.hold((RED,), 22, frozenset({0}))
    assert (view.held(RED), view.floating(RED), view.floating(GREEN)) == (22, {0}, set())
    view.hold((RED,), 22, frozenset({0}))
    view.hold((RED,), None)

    assert (view.held(RED), view.floating(RED)) == (None, set())
    assert len(heard) == 2, "the same again is no change"


def test_a_code_held_from_elsewhere_floats_nothing() -> None:
    view = ViewState()
    view.hold((RED,), 22, frozenset({0}))

    view.hold((RED,), 22)

    assert view.floating(RED) == set()


def test_the_plot_and_the_network_agree_about_a_floating_pin(desk) -> None:
    window, result = desk.window, desk.bench.live.result
    network = window.network

    network.pins.force(RED, result, 0, PinState.FLOATING)

    red, project = result.channels.red, result.project
    code = desk.bench.view.held(RED)
    at = levels_at(red.network, red.levels, project.driver, project.load, code, {0})
    held = window.scanline.plot.held
    assert [level.volts for level in held] == [at.volts]
    assert network.canvas.shown.loaded_volts == at.volts
    assert at.volts != pytest.approx(float(red.levels.volts_by_code[code]), abs=1e-3)
