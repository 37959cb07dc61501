from dataclasses import replace

import numpy as np
import pytest

from tests.exports.boards import board
from workbench.circuit.ladders import weighted
from workbench.circuit.network import Driver, Network
from workbench.gui.levels.figures import code_figures, signed
from workbench.pipeline.run import Pipeline


def figures(network=None, **fields):
    project = board(**fields)
    if network is not None:
        project = replace(project, channels=replace(project.channels, red=network))
    return code_figures(Pipeline().run(project).channels.red)


HARD = weighted(5, [470.0, 1e3, 2e3, 4e3, 8e3])


def test_every_code_has_its_figures():
    shown = figures()

    assert shown.n_codes == 32
    assert shown.ideal_volts[-1] == 0.7
    np.testing.assert_allclose(shown.step_volts[1:], 0.7430993 / 31, rtol=1e-6)
    assert shown.code_text(22) == "10110"


def test_the_worst_step_is_found_with_its_size():
    shown = figures(HARD)

    assert shown.worst_step == 16
    assert shown.step_volts[16] == pytest.approx(48.1e-3, abs=5e-5)
    assert shown.usual_step_volts == pytest.approx(23.8e-3, abs=5e-5)
    assert shown.worst_words(shown.dnl_lsb, 16) == ("+0.96 LSB", "at 16")
    assert shown.worst_level == 15
    assert shown.worst_words(shown.inl_lsb, 15) == ("−0.48 LSB", "at 15")


def test_even_steps_are_even_everywhere():
    shown = figures()

    assert shown.worst_words(shown.dnl_lsb, shown.worst_step) == ("0.00 LSB", "everywhere")
    assert "stands out" not in shown.eye_words


def test_codes_above_full_brightness_are_said_to_look_alike():
    assert figures(HARD).clipped_words[0] == "29 to 31 look alike: above 0.700 V"
    assert figures(driver=Driver(3.0)).clipped_words == ()
    assert "15 to 16 stands out" in figures(HARD).eye_words


@pytest.mark.parametrize("network", [Network((), ()), Network(("bit0",), ())], ids=["no pins", "no parts"])
def test_a_network_without_levels_has_figures_without_meaning(network):
    project = board()
    wiring = replace(project.wiring, red=("P0",)[: network.bits])
    channels = replace(project.channels, red=network)
    shown = code_figures(Pipeline().run(replace(project, channels=channels, wiring=wiring)).channels.red)

    assert not shown.sound
    assert np.isfinite(shown.lightness).all()


@pytest.mark.parametrize(("value", "text"), [(0.957, "+0.96"), (-0.483, "−0.48"), (-0.001, "0.00")])
def test_errors_are_written_with_their_sign(value, text):
    assert signed(value) == text
