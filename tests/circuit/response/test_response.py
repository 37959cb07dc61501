import math
from dataclasses import replace

import numpy as np
import pytest

from workbench.circuit.ladders import r2r, weighted
from workbench.circuit.network import GROUND, Cable, Capacitor, Driver, Load, Network, Resistor, Zeros
from workbench.circuit.response import pixel_pulse, step_figures
from workbench.circuit.solution import solve_levels

PIXEL_S = 1 / 25.175e6
FORTY = Driver(high_ohms=40, low_ohms=40)
FIVE = weighted(5, [500.0 * 2**i for i in range(5)])
AT_OUTPUT = Capacitor("C1", "out", GROUND, 30e-12)
INSIDE = (AT_OUTPUT, Capacitor("C2", "n2", GROUND, 15e-12), Capacitor("C3", "n1", "n3", 5e-12))
ONE = Network(("bit0",), (Resistor("R1", "bit0", "out", 278.571),))

PATHS = {
    "resistors": (FIVE, Driver(), Load(), None),
    "capacitor": (replace(FIVE, capacitors=(AT_OUTPUT,)), Driver(), Load(farads=10e-12), None),
    "capacitors inside": (
        replace(r2r(5, 267.5), capacitors=INSIDE),
        Driver(high_ohms=40, low_ohms=40),
        Load(),
        None,
    ),
    "no rise time": (replace(FIVE, capacitors=(AT_OUTPUT,)), Driver(rise_s=0.0), Load(), None),
    "matched cable": (FIVE, Driver(), Load(), Cable(2.0)),
    "ghosts": (FIVE, Driver(), Load(ohms=82.0, farads=10e-12), Cable(10.0)),
    "loss": (
        replace(FIVE, capacitors=(AT_OUTPUT,)),
        Driver(),
        Load(ohms=90.0),
        Cable(10.0, loss_db_per_m=0.2),
    ),
    "no termination": (FIVE, Driver(), Load(ohms=None), Cable(3.0)),
    "two monitors": (FIVE, Driver(), Load(monitors=2), Cable(3.0)),
    "slow edge": (FIVE, Driver(rise_s=100e-9), Load(), None),
}
every_path = pytest.mark.parametrize("path", PATHS.values(), ids=PATHS)


@every_path
def test_pixels_add_up_to_the_settled_level_at_every_instant(path):
    pulse = pixel_pulse(*path, pixel_s=PIXEL_S, samples=16)

    weights = solve_levels(*path[:3]).weights_volts
    np.testing.assert_allclose(pulse.volts.sum(axis=1), np.tile(weights[:, None], 16), atol=1e-12)
    assert pulse.step_s == PIXEL_S / 16


@every_path
def test_a_pulse_ends_where_nothing_moves_any_more(path):
    volts = pixel_pulse(*path, pixel_s=PIXEL_S, samples=16).volts

    assert np.abs(volts[:, -1, -1]).max() < 2e-3 * np.abs(volts).max()


@every_path
def test_samples_do_not_depend_on_how_many_are_asked(path):
    coarse = pixel_pulse(*path, pixel_s=PIXEL_S, samples=8).volts
    fine = pixel_pulse(*path, pixel_s=PIXEL_S, samples=32).volts[:, :, ::4]

    n = min(coarse.shape[1], fine.shape[1]) - 1  # what is cut off goes into the last pixel
    np.testing.assert_allclose(coarse[:, :n], fine[:, :n], atol=2e-3 * np.abs(fine).max())


@every_path
def test_a_step_is_the_sum_of_the_pixels_so_far(path):
    step = step_figures(*path)
    volts = pixel_pulse(*path, pixel_s=PIXEL_S, samples=16).volts.sum(axis=0)

    n = min(volts.shape[0] - 1, int(step.time_s[-1] / PIXEL_S))
    held = np.cumsum(volts, axis=0)[:n].ravel()
    expected = np.interp(np.arange(n * 16) * PIXEL_S / 16, step.time_s, step.volts)
    # A pixel's pulse is cut off where a step goes on creeping.
    lossy = path[3] is not None and path[3].loss_db_per_m > 0
    np.testing.assert_allclose(held, expected, atol=(1e-2 if lossy else 2e-3) * np.abs(step.volts).max())


def test_a_pixel_without_capacitance_is_the_drivers_own_trapezoid():
    volts = pixel_pulse(FIVE, Driver(rise_s=5e-9), Load(), pixel_s=40e-9, samples=8).volts

    weight = solve_levels(FIVE, Driver(), Load()).weights_volts[0]
    np.testing.assert_allclose(
        volts[0] / weight, [[0, 1, 1, 1, 1, 1, 1, 1], [1, 0, 0, 0, 0, 0, 0, 0]], atol=1e-12
    )


def test_an_ideal_edge_through_one_lag_has_its_textbook_figures():
    network = replace(FIVE, capacitors=(AT_OUTPUT,))
    lag = 30e-12 / sum((*(1 / r.ohms for r in FIVE.resistors), 1 / 75))

    step = step_figures(network, Driver(rise_s=0.0), Load())

    assert step.rise_s == pytest.approx(lag * math.log(9), rel=1e-5)
    assert step.bandwidth_hz == pytest.approx(1 / (2 * math.pi * lag), rel=1e-5)
    assert step.settle_s == pytest.approx(lag * math.log(2 * 31), rel=1e-5)
    assert step.overshoot == 0.0
    assert step.first_ghost_ratio is step.first_ghost_s is None


def test_rise_times_add_up_by_their_squares():
    # Nearly so for a ramp and a lag: 1.6 ns and 3.83 ns.
    step = step_figures(replace(FIVE, capacitors=(AT_OUTPUT,)), Driver(rise_s=2e-9), Load())

    assert step.rise_s == pytest.approx(math.hypot(1.6e-9, 3.83e-9), rel=0.03)


def test_resistors_alone_limit_nothing():
    step = step_figures(FIVE, Driver(rise_s=2e-9), Load())

    assert step.bandwidth_hz is None
    assert step.rise_s == pytest.approx(1.6e-9)


EIGHT = weighted(8, [500.0 * 2**i for i in range(8)])
HALF_LSB = 0.5 / 255


@pytest.mark.parametrize("cable", [None, Cable(10.0), Cable(0.02)], ids=["no cable", "10 m", "2 cm"])
@pytest.mark.parametrize("rise_s", [0.0, 3e-9])
def test_a_ramp_without_an_echo_settles_half_an_lsb_before_its_end(cable, rise_s):
    step = step_figures(EIGHT, Driver(rise_s=rise_s), Load(), cable)

    assert step.settle_s == pytest.approx(rise_s * (1 - HALF_LSB), rel=1e-9, abs=0.0)
    assert step.rise_s == pytest.approx(0.8 * rise_s, rel=1e-9, abs=0.0)


@pytest.mark.parametrize("metres", [0.5, 10.0])
@pytest.mark.parametrize("rise_s", [0.0, 1e-9, 3e-9])
def test_a_step_settles_within_its_echo(metres, rise_s):
    # The first arrival is 1 - rho of the end, the first echo adds rho (1 - rho), the second hardly anything.
    source = 1 / sum(1 / r.ohms for r in EIGHT.resistors)
    rho = (82 - 75) / (82 + 75) * (source - 75) / (source + 75)
    part = (rho - HALF_LSB) / (rho * (1 - rho))

    step = step_figures(EIGHT, Driver(rise_s=rise_s), Load(ohms=82.0), Cable(metres))

    trip_s = 2 * metres / (0.66 * 299_792_458)
    assert step.settle_s == pytest.approx(trip_s + part * rise_s, rel=1e-3)


@pytest.mark.parametrize("rise_s", [0.0, 2e-9])
@pytest.mark.parametrize(
    ("load_ohms", "expected"), [(82.0, 0.02567), (90.0, 0.05234), (None, 0.57576), (37.5, -0.19192)]
)
def test_first_ghost_is_the_product_of_the_reflections(load_ohms, expected, rise_s):
    step = step_figures(ONE, Driver(rise_s=rise_s), Load(ohms=load_ohms), Cable(10.0))

    assert step.first_ghost_ratio == pytest.approx(expected, abs=1e-4)
    assert step.first_ghost_s == pytest.approx(101.1e-9, abs=0.05e-9)


def test_a_matched_end_sends_no_ghost():
    assert step_figures(ONE, Driver(), Load(), Cable(10.0)).first_ghost_ratio is None


def test_a_matched_source_sends_no_ghost_either():
    matched = Network(("bit0",), (Resistor("R1", "bit0", "out", 75.0),))

    assert step_figures(matched, Driver(), Load(ohms=None), Cable(10.0)).first_ghost_s is None


def test_loss_weakens_the_ghost_and_softens_the_edge():
    clean = step_figures(ONE, Driver(), Load(ohms=None), Cable(10.0))
    lossy = step_figures(ONE, Driver(), Load(ohms=None), Cable(10.0, loss_db_per_m=0.3))

    assert 0.5 * clean.first_ghost_ratio < lossy.first_ghost_ratio < 0.95 * clean.first_ghost_ratio


def test_a_matched_cable_without_loss_changes_nothing():
    network = replace(FIVE, capacitors=(AT_OUTPUT,))

    near = pixel_pulse(network, Driver(), Load(), None, pixel_s=PIXEL_S, samples=16).volts
    far = pixel_pulse(network, Driver(), Load(), Cable(5.0), pixel_s=PIXEL_S, samples=16).volts

    np.testing.assert_allclose(far, near[:, : far.shape[1]], atol=2e-4 * near.max())


def test_the_ghost_stands_in_the_pixel_pulse():
    # 10 m, open: the echo of a 200 ns pixel begins 101.1 ns after it and is 0.576 of it.
    volts = pixel_pulse(
        ONE, Driver(rise_s=0.5e-9), Load(ohms=None), Cable(10.0), pixel_s=200e-9, samples=400
    ).volts

    before, after = volts[0, 0, 200], volts[0, 0, 206]
    assert (after - before) / before == pytest.approx(0.576, abs=1e-3)


def test_overshoot_of_an_undershooting_echo():
    # Two monitors on a cable: the first arrival is followed by a negative echo.
    step = step_figures(ONE, Driver(), Load(monitors=2), Cable(10.0))

    assert step.overshoot == pytest.approx(0.192, abs=0.001)  # 1 / (1 / (1 + 0.192)) - 1


def test_differing_on_resistances_are_taken_by_their_mean_conductance():
    mean = 2 / (1 / 40 + 1 / 60)

    differing = step_figures(FIVE, Driver(high_ohms=40, low_ohms=60), Load(farads=20e-12))
    alike = step_figures(FIVE, Driver(high_ohms=mean, low_ohms=mean), Load(farads=20e-12))

    assert differing.rise_s == pytest.approx(alike.rise_s)


EXTREMES = {
    "no pins": (Network((), ()), Driver(), Load(), None),
    "open output": (Network(("bit0",), ()), Driver(), Load(), None),
    "open output on a cable": (Network(("bit0",), ()), Driver(), Load(), Cable(2.0)),
    "coupled by a capacitor": (
        Network(("bit0",), (), (Capacitor("C1", "bit0", "out", 1e-12),)),
        Driver(),
        Load(),
        None,
    ),
    "two capacitors in a row": (
        Network(
            ("bit0",),
            ONE.resistors,
            (Capacitor("C1", "out", "x", 2e-12), Capacitor("C2", "x", GROUND, 2e-12)),
        ),
        Driver(),
        Load(),
        None,
    ),
    "floating zeros": (FIVE, Driver(zeros=Zeros.FLOATING), Load(farads=1e-11), None),
    "a kilometre": (FIVE, Driver(), Load(ohms=82.0), Cable(1000.0, loss_db_per_m=0.1)),
    "a millimetre": (FIVE, Driver(), Load(ohms=82.0), Cable(0.001)),
    "rings for ever": (Network(("out",), ()), Driver(), Load(ohms=None), Cable(10.0)),
    "open and coupled by a capacitor": (
        Network(("bit0",), (), (Capacitor("C1", "bit0", "out", 1e-12),)),
        Driver(),
        Load(ohms=None),
        Cable(2.0),
    ),
    "a farad": (FIVE, Driver(), Load(farads=1.0), None),
    "a farad on a cable": (FIVE, Driver(), Load(farads=1.0), Cable(2.0)),
}


@pytest.mark.parametrize("path", EXTREMES.values(), ids=EXTREMES)
def test_extremes_stay_finite_and_bounded(path):
    pulse = pixel_pulse(*path, pixel_s=PIXEL_S, samples=16)
    step = step_figures(*path)

    assert np.isfinite(pulse.volts).all()
    assert pulse.volts.shape[1] <= 1025
    assert np.isfinite(step.volts).all()
    assert len(step.time_s) <= (1 << 16) + 4096
    assert all(math.isfinite(value) for value in (step.rise_s, step.settle_s, step.overshoot))


def test_capacitors_in_a_row_are_one():
    row = EXTREMES["two capacitors in a row"]
    single = Network(("bit0",), ONE.resistors, (Capacitor("C1", "out", GROUND, 1e-12),))

    assert step_figures(*row).rise_s == pytest.approx(step_figures(single, Driver(), Load()).rise_s)


def test_arrays_are_read_only():
    assert not pixel_pulse(FIVE, Driver(), Load(), pixel_s=PIXEL_S, samples=4).volts.flags.writeable
    assert not step_figures(FIVE, Driver(), Load()).volts.flags.writeable


@every_path
def test_a_late_pin_shows_the_same_pulse_later(path):
    # Four samples late: the pulse of that pin moves by four samples, the others stay.
    late = (4 * PIXEL_S / 16, *(0.0,) * (path[0].bits - 1))

    together = pixel_pulse(*path, pixel_s=PIXEL_S, samples=16).volts
    skewed = pixel_pulse(*path, pixel_s=PIXEL_S, samples=16, skews_s=late).volts

    n = 16 * (min(together.shape[1], skewed.shape[1]) - 1)
    flat, late_flat = together.reshape(len(together), -1)[:, :n], skewed.reshape(len(skewed), -1)[:, :n]
    scale = np.abs(together).max()
    np.testing.assert_allclose(late_flat[0, 4:], flat[0, :-4], atol=2e-3 * scale)
    np.testing.assert_allclose(late_flat[1:], flat[1:], atol=2e-3 * scale)
    np.testing.assert_allclose(skewed.sum(axis=1), together.sum(axis=1), atol=1e-12)


def test_a_step_of_a_source_of_kilohms_into_an_open_cable_settles_at_its_level():
    way = (Network(("bit0",), (Resistor("R1", "bit0", "out", 10e3),)), Driver(), Load(ohms=None), Cable(2.0))

    step = step_figures(*way)

    assert step.volts[-1] == pytest.approx(3.3, rel=1e-3)
