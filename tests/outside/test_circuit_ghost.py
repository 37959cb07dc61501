"""Ghost, rise and settling against a lattice of our own: every echo one by one, through scipy's filters.

A Thevenin source with a capacitor at the near end of a line without loss, resistor and capacitor at the
far end, in samples so fine that it does not matter what lies between them. Nothing of it is shared with
the program: no transform, no poles of a network.
"""

import math
from dataclasses import dataclass

import numpy as np
import pytest
from scipy import signal

from workbench.circuit.ladders import weighted
from workbench.circuit.network import Cable, Driver, Load
from workbench.circuit.response import step_figures

LIGHT = 299_792_458.0
LINE_OHMS = 75.0


@dataclass(frozen=True)
class Way:
    """Ladder values, capacitor at its output, load, cable and ramp."""

    ohms: tuple[float, ...]
    node_farads: float
    load: Load
    metres: float
    rise_s: float

    @property
    def trip_s(self) -> float:
        return 2 * self.metres / (0.66 * LIGHT)

    @property
    def source_ohms(self) -> float:
        return 1 / sum(1 / ohms for ohms in self.ohms)

    @property
    def step(self):
        network = weighted(len(self.ohms), self.ohms, node_farads=self.node_farads)
        return step_figures(network, Driver(1.0, rise_s=self.rise_s), self.load, Cable(self.metres))


def lagged(samples, lag_s, step_s):
    """Return straight lines between samples through ``1 / (1 + s lag)``: scipy's first-order hold."""
    if lag_s == 0:
        return samples
    numerator, denominator, _ = signal.cont2discrete(([1.0], [lag_s / step_s, 1.0]), 1.0, method="foh")
    state = signal.lfilter_zi(np.ravel(numerator), denominator) * samples[0]
    return signal.lfilter(np.ravel(numerator), denominator, samples, zi=state)[0]


def lattice(way, parts=500, echoes=60):
    """Return time, the waves one by one from their own arrival on, and their sum."""
    step_s = way.trip_s / math.ceil(way.trip_s * parts / way.rise_s)
    source, load = way.source_ohms, way.load.ohms
    load_lag = way.load.farads / (1 / load + 1 / LINE_OHMS)
    source_lag = way.node_farads / (1 / source + 1 / LINE_OHMS)
    n_wave = math.ceil((way.rise_s + 40 * (load_lag + source_lag)) / step_s) + 2
    n_trip = round(way.trip_s / step_s)
    ramp = np.clip(np.arange(n_wave) * step_s / way.rise_s, 0, 1)
    sent = LINE_OHMS / (LINE_OHMS + source) * lagged(ramp, source_lag, step_s)
    waves = []
    for _ in range(echoes):
        passed = 2 * load / (load + LINE_OHMS) * lagged(sent, load_lag, step_s)
        waves.append(passed)
        back = passed - sent
        sent = 2 * source / (source + LINE_OHMS) * lagged(back, source_lag, step_s) - back
        if np.abs(sent).max() < 1e-6:
            break
    total = np.zeros(n_wave + n_trip * len(waves))
    for number, wave in enumerate(waves):
        total[number * n_trip :][:n_wave] += wave
        total[number * n_trip + n_wave :] += wave[-1]
    return step_s * np.arange(len(total)), waves, total


FOUR = (510.0, 1e3, 2e3, 3.9e3)
FIVE = (500.0, 1e3, 2e3, 4e3, 8e3)
EIGHT = tuple(500.0 * 2**bit for bit in range(8))
WAYS = {
    "10 pF behind 2 m": Way(FOUR, 0.0, Load(75.0, farads=10e-12), 2.0, 2e-9),
    "100 pF behind 10 m": Way(FOUR, 0.0, Load(75.0, farads=100e-12), 10.0, 1e-9),
    "82 ohm and 20 pF behind 10 m": Way(FOUR, 0.0, Load(82.0, farads=20e-12), 10.0, 2e-9),
    "82 ohm behind 10 m": Way(FOUR, 0.0, Load(82.0), 10.0, 2e-9),
    "capacitors at both ends of 1 m": Way(FIVE, 30e-12, Load(90.0, farads=10e-12), 1.0, 3e-9),
    "8 bits, a capacitor, 9 m": Way(EIGHT, 30e-12, Load(82.0), 9.0, 3e-9),
    "20 cm": Way(FIVE, 20e-12, Load(75.0, farads=20e-12), 0.2, 1e-9),
    "5 cm": Way(FIVE, 0.0, Load(90.0), 0.05, 2e-9),
    "slow edge": Way(FIVE, 10e-12, Load(150.0), 3.0, 20e-9),
}
every_way = pytest.mark.parametrize("way", WAYS.values(), ids=WAYS)


@every_way
def test_first_ghost(way):
    _, waves, _ = lattice(way)
    farthest = waves[1][np.argmax(np.abs(waves[1]))]

    assert way.step.first_ghost_ratio == pytest.approx(farthest / waves[0][-1], abs=5e-4)
    assert way.step.first_ghost_s == pytest.approx(way.trip_s, rel=1e-9)


SEEN = {
    "10 pF behind 2 m": -0.1025,
    "100 pF behind 10 m": -0.2069,
    "82 ohm and 20 pF behind 10 m": -0.1539,
    "82 ohm behind 10 m": 0.0251,
}


@pytest.mark.parametrize(("name", "expected"), SEEN.items(), ids=SEEN)
def test_first_ghost_as_worked_out(name, expected):
    """The lattice above, to four places; a transform of other samples comes within 0.002 of it."""
    assert WAYS[name].step.first_ghost_ratio == pytest.approx(expected, abs=2e-4)


@every_way
def test_rise(way):
    time_s, _, total = lattice(way)
    early, late = (time_s[np.argmax(total >= part * total[-1])] for part in (0.1, 0.9))

    assert way.step.rise_s == pytest.approx(late - early, rel=2e-3)


@every_way
def test_settling(way):
    time_s, _, total = lattice(way)
    half_lsb = 0.5 / (2 ** len(way.ohms) - 1)
    last = np.flatnonzero(np.abs(total / total[-1] - 1) > half_lsb)[-1]

    assert way.step.settle_s == pytest.approx(time_s[last], rel=2e-3)


@pytest.mark.filterwarnings("ignore")
def test_first_ghost_from_reflections_of_another_library():
    """The reflections from scikit-rf, the echo of a slow trapezoid from a plain inverse transform."""
    skrf = pytest.importorskip("skrf")
    way = WAYS["82 ohm and 20 pF behind 10 m"]
    n_samples, step_s = 1 << 15, 20e-12
    hz = np.fft.rfftfreq(n_samples, step_s)
    medium = skrf.media.DefinedGammaZ0(skrf.Frequency.from_f(hz[1:], unit="Hz"), z0=LINE_OHMS)
    end = medium.shunt(medium.resistor(82.0) ** medium.short()) ** medium.shunt_capacitor(20e-12)
    load = np.append((82 - 75) / (82 + 75), (end ** medium.open()).s[:, 0, 0])
    source = np.append(
        (way.source_ohms - 75) / (way.source_ohms + 75),
        (medium.resistor(way.source_ohms) ** medium.short()).s[:, 0, 0],
    )
    time_s = step_s * np.arange(n_samples)
    pulse = np.interp(time_s, [0, 2e-9, 300e-9, 302e-9], [0, 1, 1, 0])

    first, echo = np.fft.irfft(np.fft.rfft(pulse) * (1 + load) * np.stack((np.ones(len(hz)), load * source)))

    settled = first[time_s.searchsorted(250e-9)]
    rising = echo[: time_s.searchsorted(250e-9)]
    expected = rising[np.argmax(np.abs(rising))] / settled
    assert way.step.first_ghost_ratio == pytest.approx(expected, abs=1e-3)
