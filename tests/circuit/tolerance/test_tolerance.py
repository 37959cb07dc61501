from dataclasses import replace
from itertools import product

import numpy as np
import pytest

from workbench.circuit.bands import Band, Distribution, Tolerances
from workbench.circuit.ladders import r2r, segmented, weighted
from workbench.circuit.linearity import linearity
from workbench.circuit.network import Driver, Load, Network, Zeros
from workbench.circuit.solution import solve_levels
from workbench.circuit.tolerance.boards import Design
from workbench.circuit.tolerance.monte_carlo import find_tolerance
from workbench.circuit.tolerance.sensitivity import sensitivities
from workbench.errors import NetworkError
from workbench.progress import Cancelled, Watched

IDEAL = Driver()


def ideal(bits):
    """Return legs for 0.7 V at 3.3 V into 75 ohm."""
    top = 75 * (3.3 - 0.7) / 0.7 * (2**bits - 1) / 2 ** (bits - 1)
    return weighted(bits, [top * 2**i for i in range(bits)])


def run(network, half_width, driver=IDEAL, **options):
    return find_tolerance(network, driver, Load(), Tolerances(Band(half_width)), **options)


def scaled(network, factors):
    parts = zip(network.resistors, factors, strict=True)
    return replace(network, resistors=tuple(replace(r, ohms=r.ohms * factor) for r, factor in parts))


DRIVERS = {
    "ideal": IDEAL,
    "on-resistance": Driver(high_ohms=40, low_ohms=40),
    "unequal": Driver(high_ohms=40, low_ohms=25),
    "ideal up": Driver(high_ohms=0, low_ohms=25),
    "floating": Driver(zeros=Zeros.FLOATING),
}
LADDERS = {
    "weighted": ideal(4),
    "R-2R": r2r(4, 256.5),
    "segmented": segmented(4, 2, [1.8e3, 3.6e3, 7.5e3]),
    "equal legs only": segmented(2, 2, [820.0]),
}


@pytest.mark.parametrize("driver", DRIVERS.values(), ids=DRIVERS)
@pytest.mark.parametrize("ladder", LADDERS.values(), ids=LADDERS)
def test_figures_of_a_board_are_those_of_its_own_levels(ladder, driver):
    random = np.random.default_rng(1)
    design = Design(ladder, driver, Load())
    factors = random.uniform(0.8, 1.2, (design.n_factors, 20))
    factors[-3:] = 1.0

    boards = design.figures(factors)

    for i in range(20):
        levels = solve_levels(scaled(ladder, factors[:-3, i]), driver, Load()).volts_by_code
        line = linearity(levels)
        np.testing.assert_allclose(design.levels(factors)[:, i], levels, atol=1e-12)
        assert boards.full_scale_volts[i] == pytest.approx(levels[-1])
        assert boards.max_inl_lsb[i] == pytest.approx(line.max_inl_lsb)
        assert boards.max_dnl_lsb[i] == pytest.approx(line.max_dnl_lsb)
        assert boards.monotonic[i] == line.monotonic


@pytest.mark.parametrize("driver", DRIVERS.values(), ids=DRIVERS)
@pytest.mark.parametrize("bits", [3, 8])
def test_a_level_repeated_is_monotonic_in_single_precision_too(driver, bits):
    """Floating zeros without a load show the supply for every code but 0; so nothing ever falls."""
    found = find_tolerance(ideal(bits), replace(driver, zeros=Zeros.FLOATING), Load(ohms=None), boards=500)

    assert found.monotonic_yield == 1.0
    assert found.full_scale_volts.worst_low == pytest.approx(3.3)
    assert found.max_dnl_lsb.worst_high == pytest.approx(2**bits - 2, rel=1e-5)
    assert np.isfinite(found.low_by_code).all()
    assert found.low_by_code[0] == 0.0


@pytest.mark.parametrize("distribution", Distribution)
@pytest.mark.parametrize("half_width", [0.0, 1e-7, 0.01])
@pytest.mark.parametrize("driver", DRIVERS.values(), ids=DRIVERS)
def test_the_figures_of_a_spread_stand_in_their_order(driver, half_width, distribution):
    tolerances = Tolerances(Band(half_width, distribution))
    found = find_tolerance(ideal(4), driver, Load(), tolerances, boards=500)

    for spread in (found.full_scale_volts, found.max_dnl_lsb, found.max_inl_lsb):
        assert spread.worst_low <= spread.worst_high
        assert spread.p01 <= spread.p50 <= spread.p99
        if distribution is Distribution.UNIFORM:
            assert spread.worst_low <= spread.p01
            assert spread.p99 <= spread.worst_high


def test_supply_load_and_on_resistance_vary_too():
    design = Design(ideal(3), Driver(high_ohms=40, low_ohms=40), Load())
    factors = np.ones((design.n_factors, 1))
    factors[-3:, 0] = 1.1, 0.9, 1.2

    expected = solve_levels(ideal(3), Driver(3.3 * 1.1, 48, 48), Load(ohms=75 * 0.9)).volts_by_code
    np.testing.assert_allclose(design.levels(factors)[:, 0], expected)


@pytest.mark.parametrize("bits", range(2, 7))
def test_monotonic_for_certain_below_the_bound(bits):
    # t < 1 / (2**n - 1): the heaviest leg at its largest against all others at their least.
    bound = 1 / (2**bits - 1)

    below, above = (run(ideal(bits), bound * part, boards=200) for part in (0.99, 1.01))

    assert below.max_dnl_lsb.worst_high < 1.0 < above.max_dnl_lsb.worst_high
    assert below.monotonic_yield == 1.0


@pytest.mark.parametrize("driver", [DRIVERS["ideal"], DRIVERS["unequal"]], ids=["ideal", "unequal"])
@pytest.mark.parametrize("ladder", LADDERS.values(), ids=LADDERS)
def test_worst_case_is_the_worst_of_all_corners(ladder, driver):
    corners = np.array(list(product((0.95, 1.05), repeat=len(ladder.resistors)))).T
    factors = np.vstack((corners, np.ones((3, corners.shape[1]))))
    every = Design(ladder, driver, Load()).figures(factors)

    found = run(ladder, 0.05, driver, boards=100)

    assert found.full_scale_volts.worst_low == pytest.approx(every.full_scale_volts.min())
    assert found.full_scale_volts.worst_high == pytest.approx(every.full_scale_volts.max())
    assert found.max_dnl_lsb.worst_high == pytest.approx(every.max_dnl_lsb.max())
    assert found.max_inl_lsb.worst_high == pytest.approx(every.max_inl_lsb.max())


def test_climbed_corners_are_the_worst_of_all_corners():
    # An R-2R ladder of 7 bits has 14 parts: more than are tried one by one.
    ladder = r2r(7, 271.0)
    corners = np.array(list(product((0.98, 1.02), repeat=14)), np.float64).T
    every = Design(ladder, Driver(), Load()).figures(np.vstack((corners, np.ones((3, corners.shape[1])))))

    found = run(ladder, 0.02, boards=100)

    assert found.full_scale_volts.worst_high == pytest.approx(every.full_scale_volts.max())
    assert found.max_dnl_lsb.worst_high == pytest.approx(every.max_dnl_lsb.max())
    assert found.max_inl_lsb.worst_high == pytest.approx(every.max_inl_lsb.max())


def test_no_board_is_worse_than_the_worst_case():
    found = run(r2r(5, 267.5), 0.1, boards=20_000)

    spread = found.full_scale_volts
    assert spread.worst_low < spread.p01 < spread.p50 < spread.p99 < spread.worst_high
    assert spread.worst_low <= found.volts_by_board[:, -1].min()
    assert found.max_dnl_lsb.p99 < found.max_dnl_lsb.worst_high


def test_the_same_seed_draws_the_same_boards():
    first, again, other = (run(ideal(4), 0.05, boards=5000, seed=seed) for seed in (7, 7, 8))

    assert first.full_scale_volts == again.full_scale_volts
    assert first.monotonic_yield == again.monotonic_yield
    assert first.full_scale_volts != other.full_scale_volts
    np.testing.assert_array_equal(first.volts_by_board, again.volts_by_board)


def test_no_tolerance_makes_every_board_alike():
    found = run(ideal(4), 0.0, boards=1000)

    assert found.full_scale_volts.std == pytest.approx(0.0, abs=1e-7)
    assert found.full_scale_volts.worst_low == found.full_scale_volts.worst_high == pytest.approx(0.7)
    assert found.monotonic_yield == 1.0


def test_each_resistor_may_keep_its_own_tolerance():
    parts = tuple(replace(r, tolerance=0.05 if i == 0 else 0.0) for i, r in enumerate(ideal(3).resistors))
    own = replace(ideal(3), resistors=parts)

    found = find_tolerance(own, Driver(), Load(), boards=1000)

    expected = solve_levels(scaled(own, (1.05, 1, 1)), Driver(), Load()).volts_by_code[-1]
    assert found.full_scale_volts.worst_low == pytest.approx(expected)


def test_supply_and_load_bands_widen_the_worst_case():
    # Supply alone: 0.7 V +- 5 %.
    found = find_tolerance(ideal(3), Driver(), Load(), Tolerances(Band(0.0), supply=Band(0.05)), boards=100)

    assert found.full_scale_volts.worst_low == pytest.approx(0.665)
    assert found.full_scale_volts.worst_high == pytest.approx(0.735)


def test_normal_values_crowd_at_the_middle():
    wide, crowded = (
        find_tolerance(ideal(4), Driver(), Load(), Tolerances(Band(0.05, d)), boards=50_000)
        for d in (Distribution.UNIFORM, Distribution.NORMAL)
    )

    # Standard deviations of the parts: t / sqrt(3) and t / 3.
    assert wide.full_scale_volts.std / crowded.full_scale_volts.std == pytest.approx(3**0.5, rel=0.02)


def test_one_bit():
    found = run(ideal(1), 0.05, boards=1000)

    assert found.monotonic_yield == 1.0
    assert found.max_dnl_lsb.worst_high == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize("driver", DRIVERS.values(), ids=DRIVERS)
@pytest.mark.parametrize("ladder", LADDERS.values(), ids=LADDERS)
def test_sensitivities_are_the_slopes(ladder, driver):
    found = sensitivities(ladder, driver, Load())

    for entry in found:
        at = [resistor.id for resistor in ladder.resistors].index(entry.part)
        low, high = (
            solve_levels(scaled(ladder, 1 + h * (np.arange(len(ladder.resistors)) == at)), driver, Load())
            for h in (-1e-5, 1e-5)
        )
        slope = (high.volts_by_code[-1] - low.volts_by_code[-1]) / 2e-5 / 100
        assert entry.volts_per_percent == pytest.approx(slope, rel=1e-5, abs=1e-10)
    strengths = [abs(entry.volts_per_percent) for entry in found]
    assert strengths == sorted(strengths, reverse=True)


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"boards": 0}, "number of boards"),
        ({"boards": 10**9}, "number of boards"),
        ({"seed": -1}, "seed"),
        ({"tolerances": Tolerances(Band(1.0))}, "below 100 %"),
        ({"tolerances": Tolerances(Band(-0.1))}, "below 100 %"),
        ({"tolerances": Tolerances(Band(float("nan")))}, "below 100 %"),
        ({"tolerances": Tolerances(load=Band(2.0))}, "below 100 %"),
        ({"network": Network((), ())}, "No pin"),
        ({"network": Network(("bit0",), ())}, "floats"),
        ({"driver": Driver(0.0)}, "supply is 0 V"),
    ],
    ids=str,
)
def test_bad_input_is_refused_with_a_reason(change, words):
    arguments = {"network": ideal(3), "driver": Driver(), "load": Load()} | change

    with pytest.raises(NetworkError, match=words):
        find_tolerance(**arguments)


def test_the_widest_band_stays_finite():
    found = run(ideal(4), 0.999, boards=5000)

    assert np.isfinite([found.full_scale_volts.worst_low, found.full_scale_volts.worst_high]).all()
    assert np.isfinite(found.volts_by_board).all()


def test_progress_is_told_and_may_cancel():
    seen = []
    progress = Watched(lambda done, total: seen.append((done, total)))

    run(ideal(4), 0.01, boards=100_000, progress=progress)

    assert seen[-1] == (100_000, 100_000)
    progress.cancel()
    with pytest.raises(Cancelled):
        run(ideal(4), 0.01, boards=100_000, progress=progress)


def test_a_histogram_holds_every_board_between_its_ends():
    found = run(ideal(5), 0.01, boards=5000)
    histogram = found.full_scale_volts.histogram

    assert sum(histogram.counts) == 5000
    assert histogram.counts[0] > 0 < histogram.counts[-1]
    middle = np.linspace(histogram.low, histogram.high, len(histogram.counts) + 1)
    centres = (middle[:-1] + middle[1:]) / 2
    mean = np.average(centres, weights=histogram.counts)
    assert mean == pytest.approx(found.full_scale_volts.mean, abs=centres[1] - centres[0])


def test_boards_that_are_all_alike_have_one_bin():
    exact = run(ideal(5), 0.0, boards=100)

    assert exact.full_scale_volts.histogram.counts == (100,)
    assert exact.full_scale_volts.histogram.low == exact.full_scale_volts.histogram.high


def test_the_factors_of_a_board_make_its_levels():
    tolerances = Tolerances(Band(0.05), supply=Band(0.05), load=Band(0.1))
    found = find_tolerance(ideal(5), IDEAL, Load(), tolerances, boards=200)
    factors = found.factors_by_board[7]

    levels = solve_levels(
        scaled(ideal(5), factors[:-3]), Driver(supply_volts=3.3 * factors[-3]), Load(ohms=75.0 * factors[-2])
    )

    assert found.volts_by_board[7] == pytest.approx(levels.volts_by_code, rel=1e-5, abs=1e-7)
