"""How long a proved choice of values takes, and how that grows."""

import numpy as np
import pytest

from workbench.circuit.fit.drawer import Drawer, OwnedPart
from workbench.circuit.fit.fit import find_fit
from workbench.circuit.ladders import segmented, weighted
from workbench.circuit.network import Driver, Load
from workbench.circuit.series import Series

pytestmark = pytest.mark.benchmark


def ladder(bits):
    return weighted(bits, [500.0 * 2**i for i in range(bits)])


def fit(bits, drawer, *, channels=1, most_parts=1):
    return find_fit([ladder(bits)] * channels, Driver(), Load(), drawer, most_parts=most_parts)


def drawer_of(n_values, seed):
    """Return a drawer of so many E24 values, one to ten of each."""
    random = np.random.default_rng(seed)
    usual = [part.ohms for part in Drawer.of_series(Series.E24).parts if 100 <= part.ohms <= 20e3]
    values = random.choice(usual, n_values, replace=False)
    return Drawer(tuple(OwnedPart(float(ohms), int(random.integers(1, 11))) for ohms in values))


def test_eight_bits_from_a_series(figures):
    drawer = Drawer.of_series(Series.E24)
    assert fit(8, drawer).proved_best

    seconds = figures.median_s(lambda: fit(8, drawer), repeats=9)

    figures.add("Fit", "8 bits from single E24 parts, proved", seconds, "s", at_most=1.0)


@pytest.mark.parametrize("thermometer", [2, 3])
def test_eight_segmented_bits_from_a_series(figures, thermometer):
    networks = [segmented(8, thermometer, [1e3] * (9 - thermometer))]
    drawer = Drawer.of_series(Series.E24)
    assert find_fit(networks, Driver(), Load(), drawer).proved_best

    seconds = figures.median_s(lambda: find_fit(networks, Driver(), Load(), drawer), repeats=5)

    what = f"8 bits, {2**thermometer - 1} legs rising one after another, from single E24 parts, proved"
    figures.add("Fit", what, seconds, "s", at_most=1.0)


@pytest.mark.parametrize("seed", range(3))
def test_three_channels_from_a_drawer(figures, seed):
    drawer = drawer_of(40, seed)
    found = fit(5, drawer, channels=3, most_parts=2)

    seconds = figures.median_s(lambda: fit(5, drawer, channels=3, most_parts=2), repeats=3, warm=0)

    end = "proved" if found.proved_best else f"at most {found.gap_volts * 1e3:.2g} mV from the best"
    what = f"3 × 5 bits from drawer {seed + 1} of 40 values with counts, two parts a leg, {end}"
    figures.add("Fit", what, seconds, "s", at_most=5.0)


@pytest.mark.parametrize("bits", [3, 4, 5, 6, 7, 8])
@pytest.mark.parametrize("series", [Series.E12, Series.E24, Series.E96])
def test_growth_with_bits_and_values(figures, bits, series):
    drawer = Drawer.of_series(series)
    found = fit(bits, drawer)

    seconds = figures.median_s(lambda: fit(bits, drawer), repeats=5, warm=1)

    end = "proved" if found.proved_best else "not proved"
    figures.add("Fit: growth", f"{bits} bits from single {series.name} parts, {end}", seconds * 1e3, "ms")


@pytest.mark.parametrize("most_parts", [2, 3])
@pytest.mark.parametrize("bits", [3, 5, 8])
def test_growth_with_parts_a_leg(figures, bits, most_parts):
    drawer = Drawer.of_series(Series.E12)
    found = fit(bits, drawer, most_parts=most_parts)

    seconds = figures.median_s(lambda: fit(bits, drawer, most_parts=most_parts), repeats=3, warm=1)

    end = "proved" if found.proved_best else "not proved"
    what = f"{bits} bits from E12, {most_parts} parts a leg, {end}"
    figures.add("Fit: growth", what, seconds * 1e3, "ms")
