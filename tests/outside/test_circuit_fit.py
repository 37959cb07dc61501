"""Fits against brute force: every combination of a series, its worst error worked out in full."""

from itertools import combinations_with_replacement, product

import numpy as np
import pytest

from workbench.circuit.fit.drawer import Drawer, OwnedPart
from workbench.circuit.fit.fit import find_fit
from workbench.circuit.ladders import r2r, segmented, weighted
from workbench.circuit.network import Driver, Load
from workbench.circuit.series import Series, series_values
from workbench.circuit.solution import solve_levels


def values_of(series, low, high):
    every = [round(v * 10.0**d, 6) for d in range(1, 6) for v in series_values(series)]
    return [ohms for ohms in every if low <= ohms <= high]


def pins_of(code, bits, thermometer):
    """Return which pins are 1 for a code: those that rise one after another, then one a bit."""
    tail = bits - thermometer
    risen = [int(code >> tail > k) for k in range(2**thermometer - 1)]
    return risen + [code >> k & 1 for k in reversed(range(tail))]


def brute_force(values, bits, supply_volts, on_ohms, rest_siemens, thermometer=0):
    """Return the smallest worst error over all codes of any legs, first leg by first leg. [V]"""
    codes = np.array([pins_of(code, bits, thermometer) for code in range(1 << bits)])
    even = np.linspace(0.0, 0.7, 1 << bits)
    siemens = 1.0 / (np.array(values) + on_ohms)
    tails = np.array(list(product(siemens, repeat=codes.shape[1] - 1)))
    best = np.inf
    for first in siemens:
        legs = np.column_stack((np.full(len(tails), first), tails))
        share = supply_volts / (legs.sum(axis=1) + rest_siemens)
        worst = np.zeros(len(legs))
        for code, level in zip(codes, even, strict=True):
            np.maximum(worst, np.abs(legs @ code * share - level), out=worst)
        best = min(best, float(worst.min()))
    return best


# To keep this quick the larger cases leave some values out, for the fit as well.
CASES = {
    "2 bits, all of E24": (Series.E24, 2, 10, 1e6, Driver(), None),
    "3 bits, all of E12": (Series.E12, 3, 10, 1e6, Driver(), None),
    "3 bits, E24": (Series.E24, 3, 100, 20e3, Driver(), None),
    "3 bits, E24, 5 V": (Series.E24, 3, 100, 20e3, Driver(5.0), None),
    "3 bits, E24, pins of 40 ohm": (Series.E24, 3, 100, 20e3, Driver(3.3, 40, 40), None),
    "3 bits, E24, shunt": (Series.E24, 3, 50, 5e3, Driver(), 130.0),
    "4 bits, E12": (Series.E12, 4, 150, 20e3, Driver(), None),
    "4 bits, E12, pins of 25 ohm": (Series.E12, 4, 150, 20e3, Driver(3.3, 25, 25), None),
    "4 bits, E24": (Series.E24, 4, 330, 9.1e3, Driver(), None),
}


@pytest.mark.parametrize(("series", "bits", "low", "high", "driver", "shunt"), CASES.values(), ids=CASES)
def test_every_combination_of_single_parts(series, bits, low, high, driver, shunt):
    values = values_of(series, low, high)
    rest = 1 / 75 + (1 / shunt if shunt else 0.0)
    expected = brute_force(values, bits, driver.supply_volts, driver.high_ohms, rest)
    network = weighted(bits, [500.0 * 2**i for i in range(bits)], shunt_ohms=shunt)

    found = find_fit([network], driver, Load(), Drawer(tuple(OwnedPart(ohms) for ohms in values)))

    assert found.proved_best
    assert found.candidates[0].worst_error_volts == pytest.approx(expected, rel=1e-9)


@pytest.mark.parametrize("series", [Series.E6, Series.E12])
def test_every_combination_of_two_parts_a_leg(series):
    values = values_of(series, 220, 2.2e3)
    legs = sorted({r for a, b in product(values, repeat=2) for r in (a, a + b, a * b / (a + b))})
    expected = brute_force(legs, 3 if series is Series.E6 else 2, 3.3, 0.0, 1 / 75)
    network = weighted(3, [500.0, 1e3, 2e3]) if series is Series.E6 else weighted(2, [430.0, 820.0])

    found = find_fit(
        [network], Driver(), Load(), Drawer(tuple(OwnedPart(ohms) for ohms in values)), most_parts=2
    )

    assert found.proved_best
    assert found.candidates[0].worst_error_volts == pytest.approx(expected, rel=1e-9, abs=1e-12)


@pytest.mark.parametrize("seed", range(6))
def test_every_combination_of_a_random_drawer(seed):
    random = np.random.default_rng(seed)
    values = sorted(random.choice(values_of(Series.E96, 200, 9e3), 14, replace=False).tolist())
    expected = brute_force(values, 4, 3.3, 0.0, 1 / 75)

    found = find_fit(
        [weighted(4, [500.0, 1e3, 2e3, 4e3])], Driver(), Load(), Drawer(tuple(OwnedPart(r) for r in values))
    )

    assert found.proved_best
    assert found.candidates[0].worst_error_volts == pytest.approx(expected, rel=1e-9)


# Bits, how many of them are thermometer coded, values, pins, shunt.
SEGMENTED = {
    "3 bits, E12": (3, 2, values_of(Series.E12, 390, 8.2e3), Driver(), None),
    "3 bits, E24, pins of 40 ohm": (3, 2, values_of(Series.E24, 620, 3e3), Driver(3.3, 40, 40), None),
    "3 bits, E6, 5 V, shunt": (3, 2, values_of(Series.E6, 150, 10e3), Driver(5.0), 110.0),
    "4 bits, E12": (4, 2, values_of(Series.E12, 820, 5.6e3), Driver(), None),
    "4 bits, coarse": (4, 2, [750.0, 1000.0, 1300.0, 1600.0, 2700.0, 3300.0, 5100.0], Driver(), None),
    "all bits rise": (2, 2, values_of(Series.E24, 300, 3e3), Driver(), None),
    "seven rise": (3, 3, [1100.0, 1200.0, 1300.0, 1600.0], Driver(), None),
    "seven rise over one": (4, 3, [1000.0, 1200.0, 1500.0, 2700.0], Driver(), None),
}


@pytest.mark.parametrize(
    ("bits", "thermometer", "values", "driver", "shunt"), SEGMENTED.values(), ids=SEGMENTED
)
def test_every_combination_and_order_of_segmented_legs(bits, thermometer, values, driver, shunt):
    rest = 1 / 75 + (1 / shunt if shunt else 0.0)
    expected = brute_force(values, bits, driver.supply_volts, driver.high_ohms, rest, thermometer)
    network = segmented(bits, thermometer, [1e3] * (1 + bits - thermometer), shunt_ohms=shunt)

    found = find_fit([network], driver, Load(), Drawer(tuple(OwnedPart(ohms) for ohms in values)))

    assert found.proved_best
    assert found.candidates[0].worst_error_volts == pytest.approx(expected, rel=1e-9)


@pytest.mark.parametrize("seed", range(6))
def test_every_segmented_ladder_of_a_random_drawer(seed):
    random = np.random.default_rng(100 + seed)
    values = sorted(random.choice(values_of(Series.E96, 700, 5e3), 7, replace=False).tolist())
    expected = brute_force(values, 4, 3.3, 0.0, 1 / 75, 2)

    found = find_fit(
        [segmented(4, 2, (1e3, 2e3, 4e3))], Driver(), Load(), Drawer(tuple(OwnedPart(r) for r in values))
    )

    assert found.proved_best
    assert found.candidates[0].worst_error_volts == pytest.approx(expected, rel=1e-9)


def test_every_combination_of_two_parts_a_segmented_leg():
    values = [820.0, 1200.0, 1800.0, 2700.0]
    legs = sorted({r for a, b in product(values, repeat=2) for r in (a, a + b, a * b / (a + b))})
    expected = brute_force(legs, 3, 3.3, 0.0, 1 / 75, 2)

    found = find_fit(
        [segmented(3, 2, (1e3, 2e3))],
        Driver(),
        Load(),
        Drawer(tuple(OwnedPart(ohms) for ohms in values)),
        most_parts=2,
    )

    assert found.proved_best
    assert found.candidates[0].worst_error_volts == pytest.approx(expected, rel=1e-9)


def shared_brute_force(channels, values, counts, most_parts):
    """Return the smallest worst error of all channels over every way to share the parts out. [V]

    A channel is its bits and how many of them are thermometer coded.
    """
    parts = range(len(values))
    options = [((i,), values[i]) for i in parts]
    if most_parts == 2:
        for i, j in combinations_with_replacement(parts, 2):
            a, b = values[i], values[j]
            options += [((i, j), a + b), ((i, j), a * b / (a + b))]
    even = [np.linspace(0.0, 0.7, 1 << n) for n, _ in channels]
    codes = [np.array([pins_of(code, n, t) for code in range(1 << n)]) for n, t in channels]

    def best(channel, legs, left, bound):
        if channel == len(channels):
            return 0.0
        if len(legs) == codes[channel].shape[1]:
            siemens = 1.0 / np.array(legs)
            volts = codes[channel] @ siemens * 3.3 / (siemens.sum() + 1 / 75)
            own = float(np.abs(volts - even[channel]).max())
            return max(own, best(channel + 1, (), left, bound)) if own < bound else np.inf
        for used, ohms in options:
            rest = list(left)
            for i in used:
                rest[i] -= 1
            if min(rest) >= 0:
                bound = min(bound, best(channel, (*legs, ohms), tuple(rest), bound))
        return bound

    return best(0, (), tuple(counts), np.inf)


# Bits of the channels (and how many are thermometer coded), values and counts of the drawer, parts a leg.
SHARED = {
    "six legs of seven parts": (
        ((3, 0), (2, 0), (1, 0)),
        (1000, 1200, 430, 1800, 1100, 910, 680),
        (1,) * 7,
        1,
    ),
    "two parts a leg": (((2, 0), (1, 0), (1, 0)), (430, 560, 1100, 750, 1500), (1, 1, 1, 2, 1), 2),
    "a part to spare": (((2, 0), (2, 0)), (470, 510, 1000, 2200, 910), (1,) * 5, 2),
    "none to spare": (((2, 0), (2, 0), (1, 0)), (510, 1000, 2000), (1, 2, 2), 2),
    "one value": (((1, 0), (1, 0), (1, 0)), (1000,), (3,), 2),
    "segmented and weighted": (((2, 2), (2, 0)), (680, 750, 820, 430, 510, 910), (1,) * 6, 1),
    "weighted and segmented, two alike": (((2, 0), (3, 2)), (820, 1000, 430, 1800), (2, 2, 1, 2), 1),
    "segmented, none to spare": (((3, 2), (1, 0)), (910, 1000, 1100, 270), (2, 1, 1, 1), 1),
    "segmented and two of one bit": (((2, 2), (1, 0), (1, 0)), (680, 750, 270, 300, 560), (1, 2, 1, 1, 1), 1),
    "segmented and weighted, two parts a leg": (((2, 2), (1, 0)), (390, 330, 680, 1500), (2, 1, 2, 1), 2),
}


def ladder_of(bits, thermometer):
    if thermometer:
        return segmented(bits, thermometer, [1e3] * (1 + bits - thermometer))
    return weighted(bits, [500.0, 1e3, 2e3][:bits])


@pytest.mark.parametrize(("channels", "values", "counts", "most_parts"), SHARED.values(), ids=SHARED)
def test_every_way_to_share_a_small_drawer(channels, values, counts, most_parts):
    expected = shared_brute_force(channels, values, counts, most_parts)
    networks = [ladder_of(*channel) for channel in channels]
    drawer = Drawer(tuple(OwnedPart(float(r), count=n) for r, n in zip(values, counts, strict=True)))

    found = find_fit(networks, Driver(), Load(), drawer, most_parts=most_parts)

    assert found.proved_best
    assert found.candidates[0].worst_error_volts == pytest.approx(expected, rel=1e-9)


def test_every_way_to_share_with_an_r2r_ladder():
    """R-2R ladders take so many alike: each R and 2R in turn, and what they leave for the segmented one."""
    parts = {240.0: 3, 270.0: 2, 470.0: 4, 510.0: 3, 750.0: 1, 820.0: 2}
    expected = np.inf
    for r_ohms, two_r_ohms in product(parts, repeat=2):
        left = {r: n - (r == r_ohms) - 3 * (r == two_r_ohms) for r, n in parts.items()}
        if min(left.values()) < 0:
            continue
        chain = r2r(2, r_ohms, two_r_ohms)
        own = np.abs(solve_levels(chain, Driver(), Load()).volts_by_code - np.linspace(0, 0.7, 4)).max()
        rest = shared_brute_force([(2, 2)], list(left), list(left.values()), 1)
        expected = min(expected, max(own, rest))
    drawer = Drawer(tuple(OwnedPart(r, count=n) for r, n in parts.items()))

    found = find_fit([r2r(2, 250.0), segmented(2, 2, [1e3])], Driver(), Load(), drawer)

    assert found.proved_best
    assert found.candidates[0].worst_error_volts == pytest.approx(expected, rel=1e-9)
