"""Fits against brute force: every combination of a series, its worst error worked out in full."""

from itertools import combinations_with_replacement, product

import numpy as np
import pytest

from workbench.circuit.fit.drawer import Drawer, OwnedPart
from workbench.circuit.fit.fit import find_fit
from workbench.circuit.ladders import weighted
from workbench.circuit.network import Driver, Load
from workbench.circuit.series import Series, series_values


def values_of(series, low, high):
    every = [round(v * 10.0**d, 6) for d in range(1, 6) for v in series_values(series)]
    return [ohms for ohms in every if low <= ohms <= high]


def brute_force(values, bits, supply_volts, on_ohms, rest_siemens):
    """Return the smallest worst error over all codes of any legs, first leg by first leg. [V]"""
    codes = np.arange(1 << bits)[:, None] >> np.arange(bits - 1, -1, -1) & 1
    even = np.linspace(0.0, 0.7, 1 << bits)
    siemens = 1.0 / (np.array(values) + on_ohms)
    tails = np.array(list(product(siemens, repeat=bits - 1)))
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


def shared_brute_force(bits, values, counts, most_parts):
    """Return the smallest worst error of all channels over every way to share the parts out. [V]"""
    parts = range(len(values))
    options = [((i,), values[i]) for i in parts]
    if most_parts == 2:
        for i, j in combinations_with_replacement(parts, 2):
            a, b = values[i], values[j]
            options += [((i, j), a + b), ((i, j), a * b / (a + b))]
    even = [np.linspace(0.0, 0.7, 1 << n) for n in bits]
    codes = [np.arange(1 << n)[:, None] >> np.arange(n - 1, -1, -1) & 1 for n in bits]

    def best(channel, legs, left, bound):
        if channel == len(bits):
            return 0.0
        if len(legs) == bits[channel]:
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


# Bits of the channels, values and counts of the drawer, parts a leg.
SHARED = {
    "six legs of seven parts": ((3, 2, 1), (1000, 1200, 430, 1800, 1100, 910, 680), (1,) * 7, 1),
    "two parts a leg": ((2, 1, 1), (430, 560, 1100, 750, 1500), (1, 1, 1, 2, 1), 2),
    "a part to spare": ((2, 2), (470, 510, 1000, 2200, 910), (1,) * 5, 2),
    "none to spare": ((2, 2, 1), (510, 1000, 2000), (1, 2, 2), 2),
    "one value": ((1, 1, 1), (1000,), (3,), 2),
}


@pytest.mark.parametrize(("bits", "values", "counts", "most_parts"), SHARED.values(), ids=SHARED)
def test_every_way_to_share_a_small_drawer(bits, values, counts, most_parts):
    expected = shared_brute_force(bits, values, counts, most_parts)
    networks = [weighted(n, [500.0, 1e3, 2e3][:n]) for n in bits]
    drawer = Drawer(tuple(OwnedPart(float(r), count=n) for r, n in zip(values, counts, strict=True)))

    found = find_fit(networks, Driver(), Load(), drawer, most_parts=most_parts)

    assert found.proved_best
    assert found.candidates[0].worst_error_volts == pytest.approx(expected, rel=1e-9)
