"""Why a pixel looks as it does, in this board's own numbers."""

import pytest

from tests.waveform.test_scanline import SYNC, VGA, card_line
from workbench.circuit.ladders import r2r, weighted
from workbench.circuit.network import Driver, Load, Zeros
from workbench.circuit.response import pixel_pulse
from workbench.circuit.solution import solve_levels
from workbench.picture.scene import Card, Picture
from workbench.waveform.adjustment import from_table
from workbench.waveform.kernel import pixel_kernel
from workbench.waveform.monitor import Monitor, Screen
from workbench.waveform.pixel import seen_pixel
from workbench.waveform.scanline import render_scanline
from workbench.waveform.working import channel_working, pixel_working, working_text

LADDER = weighted(5, [510.0, 1e3, 2e3, 3900.0, 8200.0])


def working(network=LADDER, code=6, driver=None, load=None):
    driver, load = driver or Driver(), load or Load()
    return channel_working(solve_levels(network, driver, load), driver, load, code)


def parallel(*ohms):
    return 1 / sum(1 / value for value in ohms)


@pytest.mark.parametrize(
    ("code", "high", "low"),
    [
        (6, (2e3, 3900.0), (510.0, 1e3, 8200.0, 75.0)),
        (16, (510.0,), (1e3, 2e3, 3900.0, 8200.0, 75.0)),
        (19, (510.0, 3900.0, 8200.0), (1e3, 2e3, 75.0)),
    ],
)
def test_legs_of_a_weighted_ladder_are_in_parallel(code, high, low):
    chain = working(code=code)

    assert chain.high_ohms == pytest.approx(parallel(*high))
    assert chain.low_ohms == pytest.approx(parallel(*low))
    assert chain.loaded_volts == pytest.approx(3.3 * chain.low_ohms / (chain.low_ohms + chain.high_ohms))


def test_on_resistances_of_high_and_low_pins_are_in_their_legs():
    chain = working(code=16, driver=Driver(high_ohms=40.0, low_ohms=20.0))

    assert chain.high_ohms == pytest.approx(550.0)
    assert chain.low_ohms == pytest.approx(parallel(1020.0, 2020.0, 3920.0, 8220.0, 75.0))


def test_a_pin_that_has_let_go_is_in_no_leg():
    chain = working(code=16, driver=Driver(zeros=Zeros.FLOATING))

    assert (chain.high_ohms, chain.low_ohms) == (pytest.approx(510.0), pytest.approx(75.0))
    assert not chain.driven_low


def test_black_has_no_way_to_the_supply_and_white_only_the_load_to_ground():
    black, white = working(code=0), working(code=31)

    assert black.high_ohms is None
    assert black.low_ohms == pytest.approx(parallel(510.0, 1e3, 2e3, 3900.0, 8200.0, 75.0))
    assert white.low_ohms == pytest.approx(75.0)


def test_without_a_load_white_hangs_on_the_supply_alone():
    white = working(code=31, load=Load(ohms=None))

    assert white.low_ohms is None
    assert white.loaded_volts == pytest.approx(3.3)


@pytest.mark.parametrize("code", [1, 5, 10, 15])
def test_any_network_is_a_divider_seen_from_its_output(code):
    chain = working(r2r(4, 256.5, 513.0), code)

    assert 3.3 * chain.low_ohms / (chain.low_ohms + chain.high_ohms) == pytest.approx(chain.loaded_volts)
    # source resistance of the ladder, and the load, at any code
    assert parallel(chain.low_ohms, chain.high_ohms) == pytest.approx(parallel(256.5, 75.0))


def scanline(card=Card.SOLID, colour=(6 / 31, 16 / 31, 19 / 31), blanking=(0, 0, 0)):
    levels = solve_levels(LADDER, Driver(), Load())
    pulse = pixel_pulse(LADDER, Driver(), Load(), None, pixel_s=VGA.pixel_s, samples=16)
    codes = card_line(VGA, Picture(card, colour, blanking), 223)
    kernels = (pixel_kernel(levels.volts_by_code, levels.states, pulse.volts),) * 3
    return render_scanline(VGA, 223, codes, codes, kernels=kernels, sync=SYNC), levels, kernels


def working_of(monitor=Monitor(), *, blanking=(0, 0, 0), wanted=None):  # noqa: B008
    line, levels, kernels = scanline(blanking=blanking)
    rows = line.codes[:, None, 160:].astype("uint8")
    seen = seen_pixel(
        VGA,
        lambda asked: rows.repeat(len(asked), axis=1),
        blanking,
        kernels,
        monitor,
        from_table(VGA, monitor),
        pixel=160 + 150,
        line=222,
    )
    return pixel_working(line, 150, (levels,) * 3, Driver(), Load(), seen, wanted=wanted)


def test_the_whole_chain_of_a_blue_pixel():
    pixel = working_of(Monitor(phase=0.75), wanted=(53, 132, 162))

    assert [channel.code for channel in pixel.channels] == [6, 16, 19]
    assert [channel.arriving_volts for channel in pixel.channels] == pytest.approx(
        [0.1454, 0.3768, 0.4495], abs=1e-4
    )
    # 0.2126 (0.1454 / 0.7) ** 2.2 + 0.7152 (0.3768 / 0.7) ** 2.2 + 0.0722 (0.4495 / 0.7) ** 2.2
    assert pixel.luminance == pytest.approx(0.217, abs=0.001)
    assert pixel.lightness == pytest.approx(53.7, abs=0.1)
    assert pixel.instants_s == pytest.approx([(160 + 150.75) * VGA.pixel_s])
    assert pixel.when == "sampled 12.344 µs after the front porch began"


@pytest.mark.parametrize("phase", [0.0, 0.25, 0.5, 0.875])
def test_the_instant_follows_the_phase(phase):
    assert working_of(Monitor(phase=phase)).instants_s == pytest.approx([(310 + phase) * VGA.pixel_s])


def test_a_tube_does_not_sample():
    pixel = working_of(Monitor(Screen.TUBE))

    assert pixel.when.startswith("the spot passes from 12.3")
    assert len(pixel.channels[0].looks_volts) == 4
    text = working_text(pixel)
    assert "sampled" not in text
    assert "at the tube while the spot passes 0.145, 0.145, 0.145, 0.145 V" in text


def test_colour_on_the_porch_is_taken_for_black():
    red = working_of(blanking=(16, 0, 0)).channels[0]

    assert red.black_volts == pytest.approx(0.3768, abs=1e-4)
    assert red.light == 0.0


def test_text_shows_every_step_with_its_numbers():
    text = working_text(working_of(wanted=(53, 132, 162)))

    for expected in (
        "the picture asks for 53 of 255",
        "code 6 of 31, pins 00110",
        "2 high, to 3.3 V: together 1.322 kΩ",
        "3 driven to 0 V, and the load: together 60.92 Ω",
        "3.3 V × 60.92 Ω / (60.92 Ω + 1.322 kΩ) = 0.145 V loaded, 0.650 V open",
        "lightness L* = 54 of 100",
    ):
        assert expected in text


def test_a_network_without_solution_has_a_working_of_zeros():
    dead = weighted(1, [500.0])
    dead = type(dead)(pins=dead.pins, resistors=())

    chain = working(dead, code=1)

    assert chain.loaded_volts == 0.0
    assert chain.high_ohms is None


@pytest.mark.parametrize("load", [Load(), Load(ohms=None)], ids=["loaded", "open"])
def test_pins_of_unlike_resistance_are_in_parallel_at_their_own(load):
    chain = working(code=16, driver=Driver(high_ohms=40, low_ohms=55), load=load)

    held = [ohms + 55 for ohms in (1e3, 2e3, 3900.0, 8200.0)] + ([75.0] if load.ohms else [])
    assert chain.high_ohms == pytest.approx(550.0)
    assert chain.low_ohms == pytest.approx(parallel(*held))


def test_pins_let_go_hold_nothing_without_a_load():
    driver = Driver(high_ohms=40, zeros=Zeros.FLOATING)
    black, some = (working(code=code, driver=driver, load=Load(ohms=None)) for code in (0, 16))

    assert (black.high_ohms, black.low_ohms) == (None, None)
    assert (some.high_ohms, some.low_ohms) == (pytest.approx(550.0), None)
