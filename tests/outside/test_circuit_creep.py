"""Edges on a cable with loss, between resistances, against the skin effect's own formulas.

A passage answers a step with ``erfc(sqrt(k / t) / 2)`` (M. Abramowitz, I. A. Stegun, "Handbook of
Mathematical Functions", 29.3.83), a slope with its integral, and ``n`` passages as one of ``n**2 k``. So
every echo of a ramp is known, and their sum.
"""

import math
from dataclasses import dataclass

import numpy as np
import pytest
from scipy import special

from workbench.circuit.ladders import weighted
from workbench.circuit.network import Cable, Driver, Load
from workbench.circuit.response import step_figures


@dataclass(frozen=True)
class Way:
    """Bits of 500 ohm and up, load, cable and ramp."""

    bits: int
    load_ohms: float
    cable: Cable
    rise_s: float

    @property
    def ohms(self):
        return [500.0 * 2**bit for bit in range(self.bits)]

    @property
    def step(self):
        driver, load = Driver(rise_s=self.rise_s), Load(ohms=self.load_ohms)
        return step_figures(weighted(self.bits, self.ohms), driver, load, self.cable)

    def share(self, time_s):
        """Return the step, 1 at its end."""
        source = 1 / sum(1 / ohms for ohms in self.ohms)
        rho = (source - 75) / (source + 75) * (self.load_ohms - 75) / (self.load_ohms + 75)
        nepers = self.cable.metres * self.cable.loss_db_per_m * math.log(10) / 20
        k = nepers**2 / (math.pi * self.cable.loss_at_hz)
        trip_s = 2 * self.cable.metres / (0.66 * 299_792_458)
        total = np.zeros(len(time_s))
        for echo in range(20):
            after = time_s - echo * trip_s
            wave = slope(after, k * (1 + 2 * echo) ** 2) - slope(after - self.rise_s, k * (1 + 2 * echo) ** 2)
            total += (1 - rho) * rho**echo * wave / self.rise_s
        return total


def slope(time_s, k):
    """Return what a slope of 1 from time 0 on becomes on the way."""
    time = np.maximum(time_s, 1e-18)
    out = (time + k / 2) * special.erfc(np.sqrt(k / time) / 2)
    return np.where(time_s > 0, out - np.sqrt(k * time / np.pi) * np.exp(-k / (4 * time)), 0.0)


WAYS = {
    "matched, 5 bits": Way(5, 75.0, Cable(10.0, loss_db_per_m=0.08), 2e-9),
    "matched, 8 bits": Way(8, 75.0, Cable(5.0, loss_db_per_m=0.02), 3e-9),
    "82 ohm": Way(5, 82.0, Cable(10.0, loss_db_per_m=0.1), 1e-9),
    "90 ohm, 7 bits": Way(7, 90.0, Cable(15.0, loss_db_per_m=0.02), 2e-9),
    "150 ohm": Way(6, 150.0, Cable(3.0, loss_db_per_m=0.2), 5e-9),
}
every_way = pytest.mark.parametrize("way", WAYS.values(), ids=WAYS)
TIME_S = np.unique(np.concatenate((np.linspace(0, 400e-9, 100_001), np.geomspace(1e-7, 1e-3, 20_001))))


@every_way
def test_rise(way):
    share = way.share(TIME_S)
    early, late = (TIME_S[np.argmax(share >= level)] for level in (0.1, 0.9))

    assert way.step.rise_s == pytest.approx(late - early, rel=2e-3)


@every_way
def test_settling(way):
    half_lsb = 0.5 / (2**way.bits - 1)
    last = np.flatnonzero(np.abs(way.share(TIME_S) - 1) > half_lsb)[-1]

    assert way.step.settle_s == pytest.approx(TIME_S[last], rel=0.02)


@every_way
def test_the_step_itself(way):
    step = way.step

    share = step.volts / float(step.volts[-1])
    np.testing.assert_allclose(share, way.share(step.time_s), atol=1e-3)
