"""One run gives everything, and an edit recomputes only what it touches."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings

from tests.strategies import projects
from workbench.circuit.ladders import weighted
from workbench.circuit.network import Driver, Load
from workbench.picture.scene import Card, Picture
from workbench.pipeline import Pipeline, pin_totals
from workbench.project.document import Channel, Channels, Project, Skews, Wiring
from workbench.project.edits.drive import set_skew
from workbench.timing.search import find_mode

OHMS = (500.0, 1e3, 2e3, 4e3, 8e3)


def tide_board() -> Project:
    network = weighted(5, OHMS)
    names = [tuple(f"P{first + i}" for i in range(5)) for first in (0, 5, 10)]
    return Project(
        name="tide board",
        mode=find_mode("640x480@60"),
        channels=Channels(network, network, network),
        wiring=Wiring(names[0], names[1], names[2], "P15", "P16"),
        linked=True,
        scanline=123,
    )


def edit_red(project: Project, ohms: float) -> Project:
    red = weighted(5, (ohms, *OHMS[1:]))
    return replace(project, channels=replace(project.channels, red=red))


def test_linked_channels_share_their_results() -> None:
    channels = Pipeline().run(tide_board()).channels

    assert channels.red.levels is channels.green.levels is channels.blue.levels


def test_white_bars_reach_white() -> None:
    # 500 Ω … 8 kΩ at 3.3 V into 75 Ω: 0.743 V; common practice, no source.
    result = Pipeline().run(tide_board())

    assert result.scanline is not None
    white = result.scanline.volts[:3].max(axis=1)
    np.testing.assert_allclose(white, 0.743, atol=5e-4)


def test_a_resistor_leaves_the_timing_and_the_other_channels_alone() -> None:
    pipeline = Pipeline()
    before = pipeline.run(tide_board())

    after = pipeline.run(edit_red(tide_board(), 470.0))

    assert after.channels.green.levels is before.channels.green.levels
    assert after.channels.green.pulse is before.channels.green.pulse
    assert after.channels.red.levels is not before.channels.red.levels


def test_a_test_card_does_not_solve_the_network_again() -> None:
    pipeline = Pipeline()
    before = pipeline.run(tide_board())
    project = tide_board()

    after = pipeline.run(replace(project, picture=replace(project.picture, card=Card.GREY_RAMP)))

    assert after.channels.red.levels is before.channels.red.levels
    assert after.channels.red.pulse is before.channels.red.pulse
    assert after.scanline is not before.scanline


def test_renaming_pins_recomputes_nothing_electrical() -> None:
    pipeline = Pipeline()
    project = tide_board()
    before = pipeline.run(project)

    after = pipeline.run(replace(project, wiring=replace(project.wiring, h="P30")))

    assert after.channels.red.levels is before.channels.red.levels
    assert after.scanline is before.scanline


def test_mode_does_not_change_levels() -> None:
    pipeline = Pipeline()
    before = pipeline.run(tide_board())

    after = pipeline.run(replace(tide_board(), mode=find_mode("800x600@60")))

    assert after.channels.red.levels is before.channels.red.levels
    assert after.channels.red.step is before.channels.red.step


def test_interlaced_mode_has_levels_but_no_line() -> None:
    result = Pipeline().run(replace(tide_board(), mode=find_mode("0x0f")))

    assert result.scanline is None
    assert result.channels.red.linearity.monotonic


def test_pin_totals_add_the_channels() -> None:
    # Three channels at white: 3 × 0.743 V / 75 Ω into the loads, all of it from the supply.
    result = Pipeline().run(tide_board())

    assert result.pins.total_amps == pytest.approx(3 * 0.7430 / 75, rel=1e-3)
    assert result.pins.worst_pin == "P0"


def test_pin_totals_of_unequal_channels_name_the_worst_pin() -> None:
    project = edit_red(tide_board(), 5e3)
    channels = Pipeline().run(project).channels

    assert pin_totals(project, channels).worst_pin == "P5"


@pytest.mark.parametrize("ohms", [1e-3, 1e9])
def test_extreme_values_give_finite_results(ohms: float) -> None:
    result = Pipeline().run(edit_red(tide_board(), ohms))

    assert result.scanline is not None
    assert np.isfinite(result.scanline.volts).all()
    assert np.isfinite(result.channels.red.levels.pin_amps).all()


def test_nothing_fitted_and_a_dead_driver_still_give_a_result() -> None:
    project = replace(tide_board(), load=Load(ohms=None), driver=Driver(supply_volts=3.3, rise_s=0.0))

    result = Pipeline().run(project)

    assert result.channels.red.levels.volts_by_code[-1] == pytest.approx(3.3)
    assert all(result.channels[c].linearity.monotonic for c in Channel)


def test_a_late_pin_changes_edges_but_no_level() -> None:
    pipeline, project = Pipeline(), tide_board()
    before = pipeline.run(project)

    after = pipeline.run(set_skew(project, Channel.RED, 0, 6e-9))

    red = after.channels.red
    assert red.levels is before.channels.red.levels
    assert red.step is before.channels.red.step
    assert before.channels.red.glitch is None
    # 01111 to 10000: for 6 ns the level is near 0 V, below both.
    assert red.glitch is not None
    assert (red.glitch.before, red.glitch.after) == (15, 16)
    assert red.glitch.peak_volts == pytest.approx(-red.levels.volts_by_code[15], rel=0.01)
    np.testing.assert_allclose(red.pulse.volts.sum(axis=1), before.channels.red.pulse.volts.sum(axis=1))


@settings(max_examples=25, deadline=None)
@given(project=projects())
def test_skew_never_moves_a_level(project: Project) -> None:
    late, in_time = (Pipeline().run(p) for p in (project, replace(project, skews=Skews())))

    for channel in Channel:
        one, other = late.channels[channel], in_time.channels[channel]
        np.testing.assert_array_equal(one.levels.volts_by_code, other.levels.volts_by_code)
        np.testing.assert_allclose(
            one.pulse.volts.sum(axis=1)[:, 0], other.pulse.volts.sum(axis=1)[:, 0], rtol=1e-6, atol=1e-9
        )


def test_the_spike_is_on_the_scanline() -> None:
    project = set_skew(replace(tide_board(), picture=Picture(Card.HALF_SCALE)), Channel.RED, 0, 6e-9)

    scanline = Pipeline().run(project).scanline

    assert scanline is not None
    active = slice(project.mode.h.blanking * scanline.samples_per_pixel + 64, None)
    assert scanline.volts[0, active].min() < 0.05
    assert scanline.volts[1, active].min() > 0.3
