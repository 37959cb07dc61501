"""Deliberate faults: each breaks what it says, and only that."""

from dataclasses import replace

import numpy as np
import pytest

from tests.exports.boards import board
from workbench.bringup.faults import FAULTS, Setup, fault_named, switched_on
from workbench.circuit.ladders import r2r, weighted
from workbench.errors import EditError
from workbench.picture.scene import Card, Picture
from workbench.pipeline.run import Pipeline
from workbench.pipeline.screen import frame_codes, look
from workbench.project.document import Channel, Channels
from workbench.waveform.verdict import Standing

PIPELINE = Pipeline()
RAMP = Picture(Card.GREY_RAMP)


def broken(*ids, channel=Channel.RED, **settings):
    setup = switched_on(Setup(board(**settings)), [(fault_named(id), channel) for id in ids])
    return setup, PIPELINE.run(setup.project, setup.slips)


def white(result, channel=Channel.RED):
    return result.channels[channel].levels.volts_by_code[-1]


def shown(result, setup):
    return look(result, setup.monitor, every=4).seen.rgb


def test_ids_are_unique_and_every_row_is_complete():
    assert len({fault.id for fault in FAULTS}) == len(FAULTS)
    for fault in FAULTS:
        texts = (fault.name, fault.monitor, fault.instrument, fault.check, fault.mend)
        assert all(text and text[0].isupper() for text in texts), fault.id
        assert all(text.endswith(".") for text in texts[1:]), fault.id
        assert not fault.source.endswith("."), fault.id


def test_a_fault_says_which_source_it_was_read_in_or_that_there_is_none():
    said = {fault.id: fault.source_words for fault in FAULTS}

    assert said["short-back-porch"] == (
        "How it shows, by a receiver's registers: it samples black for 20 px, 9 px after H sync."
    )
    assert said["bit-skew"] == "How it shows, by a published source that our notes do not name."
    assert said["no-v-sync"] == "How it shows is experience of the trade, no source."


@pytest.mark.parametrize("fault", FAULTS, ids=lambda fault: fault.id)
@pytest.mark.parametrize("channel", list(Channel), ids=lambda channel: channel.value)
@pytest.mark.parametrize(
    "network",
    [weighted(5, [500.0, 1e3, 2e3, 4e3, 8e3]), r2r(4, 256.5, 513.0), weighted(1, [278.6])],
    ids=["weighted", "R-2R", "one bit"],
)
def test_every_fault_gives_another_setup_that_runs(fault, channel, network):
    names = tuple(f"P{pin}" for pin in range(network.bits))
    design = replace(board(linked=True), channels=Channels(network, network, network))
    design = replace(design, wiring=replace(design.wiring, red=names, green=names, blue=names))
    before = Setup(design)

    after = switched_on(before, [(fault, channel)])
    result = PIPELINE.run(after.project, after.slips)

    assert after != before
    assert before == Setup(design)
    assert np.isfinite(result.scanline.volts).all()
    look(result, after.monitor, every=16)


@pytest.mark.parametrize("fault", [f for f in FAULTS if f.one_channel], ids=lambda fault: fault.id)
def test_a_fault_of_one_channel_leaves_the_others_alone(fault):
    clean = PIPELINE.run(board(picture=RAMP))

    _, result = broken(fault.id, channel=Channel.GREEN, picture=RAMP, linked=True)

    assert np.abs(result.scanline.volts[1] - clean.scanline.volts[1]).max() > 0.005
    np.testing.assert_allclose(result.scanline.volts[[0, 2]], clean.scanline.volts[[0, 2]], atol=1e-6)


@pytest.mark.parametrize(
    ("id", "volts"),
    [
        # G = 3.875 mS; 3.3 V x G / (G + load)
        ("two-loads", 3.3 * 3.875 / (3.875 + 2000 / 75)),
        ("no-load", 3.3),
        ("kilohm-ladder", 3.3 * 0.19375 / (0.19375 + 1000 / 75)),
        ("supply-low", 2.178 * 3.875 / (3.875 + 1000 / 75)),
        ("supply-high", 5.0 * 3.875 / (3.875 + 1000 / 75)),
    ],
)
def test_white_of_wrong_loads_and_supplies(id, volts):
    assert white(broken(id)[1]) == pytest.approx(volts, rel=1e-6)


def test_pin_resistance_shortens_the_step_at_half_scale():
    _, result = broken("pin-resistance")

    assert result.channels.red.linearity.dnl_lsb.argmin() == 15
    assert 0.90 < white(result) / 0.7431 < 0.96


def test_floating_zeros_make_single_bits_add_up_to_more_than_all():
    levels = broken("zeros-floating")[1].channels.red.levels

    assert sum(levels.volts_by_code[1 << bit] for bit in range(5)) > 1.1 * levels.volts_by_code[31]


def test_porch_colour_darkens_what_the_monitor_shows():
    setup, result = broken("porch-colour", picture=Picture(Card.SOLID))

    assert shown(result, setup)[50, 50].tolist()[0] < 140
    assert shown(result, setup)[50, 50].tolist()[1:] == [255, 255]


def test_reversed_bits_zigzag():
    _, result = broken("bits-reversed", picture=RAMP)

    codes = frame_codes(result)[0][0, 0, 10::20]
    assert codes[:4].tolist() == [0, 16, 8, 24]


def test_exchanged_colours_exchange_bars():
    setup, result = broken("red-blue-exchanged")

    assert shown(result, setup)[50, [30, 110]].tolist() == [[0, 255, 255], [0, 0, 255]]  # yellow, red


def test_late_colour_loses_the_first_column():
    setup, result = broken("colour-late", picture=Picture(Card.SOLID))
    setup = replace(setup, monitor=replace(setup.monitor, auto_adjust=False))

    assert not look(result, setup.monitor).seen.rgb[100, 0].any()
    assert look(result, setup.monitor).seen.rgb[100, 1].tolist() == [255, 255, 255]


def test_a_skewed_bit_glitches_at_the_major_carry_only():
    _, glitching = broken("bit-skew", picture=Picture(Card.HALF_SCALE))
    _, steady = broken("bit-skew", picture=Picture(Card.SOLID))
    active = slice(165 * 32, None)

    assert glitching.scanline.volts[0, active].min() < 0.2
    assert np.ptp(steady.scanline.volts[0, active]) < 1e-5


def test_a_long_cable_brings_a_ghost_two_and_a_half_pixels_late():
    _, result = broken("long-cable")

    step = result.channels.red.step
    # 2 x 10 m at 0.66 c, and a pixel of 39.72 ns
    assert step.first_ghost_s / 39.722e-9 == pytest.approx(2.54, abs=0.01)


def test_a_round_clock_is_6951_ppm_low():
    setup, _ = broken("round-clock")

    assert (setup.project.mode.pixel_clock_hz / 25_175_000 - 1) * 1e6 == pytest.approx(-6951.3, abs=0.1)


def test_weak_and_missing_syncs():
    weak, result = broken("weak-h-sync")
    none = look(broken("no-h-sync")[1])

    assert result.scanline.volts[3].max() == pytest.approx(2.48, abs=0.005)
    assert look(result, weak.monitor, every=8).verdict.standing is Standing.SHOWN
    assert none.verdict.standing is Standing.NO_SIGNAL
    assert none.seen is None


def test_a_longer_line_bands_and_keeps_its_rate():
    setup, result = broken("longer-line")

    assert setup.project.mode.line_rate_hz == pytest.approx(board().mode.line_rate_hz, rel=1e-6)
    assert "soft bands, 16 a line" in look(result, setup.monitor, every=8).verdict.sentence


def test_faults_add_up():
    setup, result = broken("two-loads", "stuck-high", "polarity")

    assert setup.slips.stuck_high == (16, 0, 0)
    assert setup.project.mode.h.polarity is not board().mode.h.polarity
    assert white(result) < 0.5


def test_a_fault_that_this_board_cannot_have_says_why():
    design = board()
    empty = replace(design.channels.red, resistors=())
    setup = Setup(replace(design, channels=replace(design.channels, red=empty)))

    with pytest.raises(EditError, match="Resistor of the highest bit open cannot be tried here: red has no"):
        switched_on(setup, [(fault_named("high-bit-open"), Channel.RED)])


def test_a_fractional_divider_makes_pixels_of_two_lengths():
    _, even = broken(picture=Picture(Card.STRIPES))
    _, uneven = broken("fractional-divider", picture=Picture(Card.STRIPES))

    lengths_s = np.diff(uneven.scanline.starts) * uneven.scanline.mode.pixel_s
    # One clock of 1 / (5.28125 * 25.175 MHz) = 7.52 ns, 19 % of a pixel.
    assert np.ptp(lengths_s) == pytest.approx(7.52e-9, abs=5e-12)
    assert np.ptp(lengths_s) == pytest.approx(0.19 * even.scanline.mode.pixel_s, rel=0.01)
    assert np.abs(uneven.scanline.volts[:3] - even.scanline.volts[:3]).max() > 0.6


def test_a_wrong_clock_leaves_the_divider_as_it_is():
    setup, _ = broken("half-rate", pixel_divider=5.25)

    assert setup.project.pixel_divider == 5.25
