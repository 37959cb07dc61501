"""Monte Carlo against a plain one of numpy, and against bounds and shares of the trade."""

import math

import numpy as np
import pytest

from workbench.circuit.bands import Band, Distribution, Tolerances
from workbench.circuit.ladders import r2r, weighted
from workbench.circuit.network import Driver, Load
from workbench.circuit.tolerance.monte_carlo import find_tolerance

BOARDS = 40_000
RUN = {"boards": BOARDS, "seed": 3}


def ideal(bits):
    top = 75 * (3.3 - 0.7) / 0.7 * (2**bits - 1) / 2 ** (bits - 1)
    return weighted(bits, [top * 2**i for i in range(bits)])


def weighted_levels(random, deviate):
    """Return the levels of boards of the 5-bit weighted ladder by its conductances."""
    nominal = np.array([r.ohms for r in ideal(5).resistors])
    siemens = 1 / (nominal * deviate(random, (BOARDS, 5)))
    shares = 3.3 * siemens / (siemens.sum(axis=1, keepdims=True) + 1 / 75)
    codes = np.arange(32)[:, None] >> np.arange(4, -1, -1) & 1
    return shares @ codes.T


def r2r_levels(random, deviate):
    """Return the levels of boards of the 5-bit R-2R ladder, folded up from its far end."""
    legs = 535.0 * deviate(random, (BOARDS, 5))
    rungs = 267.5 * deviate(random, (BOARDS, 4))
    ohms = 535.0 * deviate(random, BOARDS)
    volts = np.zeros((BOARDS, 32))
    bits = np.arange(32) & 1
    for k in range(5):
        leg = legs[:, 4 - k]
        bits = np.arange(32) >> k & 1
        volts = (volts * leg[:, None] + 3.3 * bits * ohms[:, None]) / (ohms + leg)[:, None]
        ohms = ohms * leg / (ohms + leg)
        if k < 4:
            ohms = ohms + rungs[:, 3 - k]
    return volts * 75 / (75 + ohms)[:, None]


def uniform(random, shape):
    return random.uniform(0.95, 1.05, shape)


def normal(random, shape):
    return random.normal(1.0, 0.05 / 3, shape)


CASES = {
    "weighted, uniform": (ideal(5), weighted_levels, uniform, Distribution.UNIFORM),
    "weighted, normal": (ideal(5), weighted_levels, normal, Distribution.NORMAL),
    "R-2R, uniform": (r2r(5, 267.5), r2r_levels, uniform, Distribution.UNIFORM),
    "R-2R, normal": (r2r(5, 267.5), r2r_levels, normal, Distribution.NORMAL),
}


@pytest.mark.parametrize(("ladder", "levels", "deviate", "distribution"), CASES.values(), ids=CASES)
def test_plain_monte_carlo(ladder, levels, deviate, distribution):
    volts = levels(np.random.default_rng(2), deviate)
    found = find_tolerance(ladder, Driver(), Load(), Tolerances(Band(0.05, distribution)), **RUN)

    # Five standard errors of the difference of two independent runs.
    full_scale = volts[:, -1]
    within = 5 * full_scale.std() * math.sqrt(2 / BOARDS)
    assert found.full_scale_volts.mean == pytest.approx(full_scale.mean(), abs=within)
    assert found.full_scale_volts.std == pytest.approx(full_scale.std(), abs=within)
    assert found.full_scale_volts.p01 == pytest.approx(np.percentile(full_scale, 1), abs=4 * within)
    assert found.full_scale_volts.p99 == pytest.approx(np.percentile(full_scale, 99), abs=4 * within)
    dnl = np.abs(np.diff(volts) / (full_scale / 31)[:, None] - 1).max(axis=1)
    assert found.max_dnl_lsb.mean == pytest.approx(dnl.mean(), abs=5 * dnl.std() * math.sqrt(2 / BOARDS))
    share = (np.diff(volts).min(axis=1) >= 0).mean()
    error = math.sqrt(2 * max(share * (1 - share), 1 / BOARDS) / BOARDS)
    assert found.monotonic_yield == pytest.approx(share, abs=5 * error)
    spread = volts.std(axis=0)
    np.testing.assert_allclose(found.volts_by_board.std(axis=0), spread, atol=0.5 * spread.max())


@pytest.mark.parametrize(
    ("bits", "half_width", "bad"),
    [(5, 0.05, 0.023), (6, 0.05, 0.22), (6, 0.01, 0.0), (4, 0.05, 0.0)],
    ids=["n=5 at 5 %", "n=6 at 5 %", "n=6 at 1 %", "n=4 at 5 %"],
)
def test_share_of_bad_boards(bits, half_width, bad):
    """Own arithmetic of the trade (uniform): n=5 at 5 %: 2.3 % bad, n=6 at 5 %: 22 %, n=6 at 1 %: none."""
    found = find_tolerance(ideal(bits), Driver(), Load(), Tolerances(Band(half_width)), **RUN)

    error = math.sqrt(max(bad * (1 - bad), 1 / BOARDS) / BOARDS)
    assert 1 - found.monotonic_yield == pytest.approx(bad, abs=max(0.005 if bad > 0.1 else 0.002, 5 * error))


@pytest.mark.parametrize(("bits", "bound"), [(3, 0.143), (4, 0.0667), (5, 0.0323), (6, 0.0159)])
def test_bound_of_certain_monotonicity(bits, bound):
    """Own arithmetic of the trade: t < 1 / (2**n - 1), half of it for a DNL of 0.5 LSB."""
    at, half = (
        find_tolerance(ideal(bits), Driver(), Load(), Tolerances(Band(width)), boards=10)
        for width in (bound, bound / 2)
    )

    assert at.max_dnl_lsb.worst_high == pytest.approx(1.0, abs=0.005)
    assert half.max_dnl_lsb.worst_high == pytest.approx(0.5, abs=0.005)


@pytest.mark.parametrize("half_width", [0.01, 0.05])
def test_error_of_full_scale(half_width):
    """Own arithmetic of the trade: (tR + tL) / (1 + RL / Rp), here to first order in the tolerances."""
    bands = Tolerances(Band(half_width), load=Band(half_width))
    found = find_tolerance(ideal(4), Driver(), Load(), bands, boards=10)

    expected = 2 * half_width / (1 + 75 / 278.571)
    assert 1 - found.full_scale_volts.worst_low / 0.7 == pytest.approx(expected, rel=1.1 * half_width)
