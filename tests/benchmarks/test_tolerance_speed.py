"""Boards a second, statistics included, against a batched numpy.linalg.solve."""

import numpy as np
import pytest

from workbench.circuit.bands import Band, Tolerances
from workbench.circuit.codes import bits_by_code
from workbench.circuit.ladders import r2r, weighted
from workbench.circuit.network import GROUND, Driver, Load
from workbench.circuit.tolerance.monte_carlo import find_tolerance

pytestmark = pytest.mark.benchmark

NETWORKS = {"weighted": weighted(5, [540.0 * 2**i for i in range(5)]), "R-2R": r2r(5, 267.5)}
BATCH = 4096
BOARDS = 1_000_000


def batched_solve(network, random):
    """Return the figures of some boards: one nodal matrix a board, one right side a bit, then all codes."""
    pins = list(network.pins)
    free = [
        n for n in dict.fromkeys(n for r in network.resistors for n in (r.a, r.b)) if n not in {*pins, GROUND}
    ]
    nominal = np.array([r.ohms for r in network.resistors])
    siemens = 1 / (nominal * random.uniform(0.95, 1.05, (BATCH, len(nominal))))
    matrix = np.zeros((BATCH, len(free), len(free)))
    drive = np.zeros((BATCH, len(free), len(pins)))
    matrix[:, free.index(network.output), free.index(network.output)] = 1 / 75
    for i, resistor in enumerate(network.resistors):
        for node, other in ((resistor.a, resistor.b), (resistor.b, resistor.a)):
            if node in free:
                matrix[:, free.index(node), free.index(node)] += siemens[:, i]
                if other in free:
                    matrix[:, free.index(node), free.index(other)] -= siemens[:, i]
                elif other in pins:
                    drive[:, free.index(node), pins.index(other)] += 3.3 * siemens[:, i]
    weights = np.linalg.solve(matrix, drive)[:, free.index(network.output)]
    volts = weights @ bits_by_code(len(pins)).T
    steps = np.diff(volts, axis=1) / (volts[:, -1:] / 31)
    inl = volts / (volts[:, -1:] / 31) - np.arange(32)
    shares = [
        np.percentile(column, (1, 50, 99))
        for column in (volts[:, -1], abs(inl).max(1), abs(steps - 1).max(1))
    ]
    return volts, shares, (steps.min(axis=1) >= 0).mean(), volts[:, -1].mean(), volts[:, -1].std()


@pytest.mark.parametrize("shape", NETWORKS)
def test_boards_a_second(figures, shape):
    network = NETWORKS[shape]
    volts, _, monotonic, mean, _ = batched_solve(network, np.random.default_rng(1))
    tolerances = Tolerances(Band(0.05))
    found = find_tolerance(network, Driver(), Load(), tolerances, boards=BATCH)
    assert found.full_scale_volts.mean == pytest.approx(mean, abs=5 * volts[:, -1].std() / 45)
    assert found.monotonic_yield == pytest.approx(monotonic, abs=0.02)

    random = np.random.default_rng(1)
    plain = figures.median_s(lambda: batched_solve(network, random), repeats=15) / BATCH
    ours = figures.median_s(
        lambda: find_tolerance(network, Driver(), Load(), tolerances, boards=BOARDS), repeats=9, warm=1
    )

    what = f"boards of a 5-bit {shape} ladder, with statistics, against a batched solve"
    figures.add("Tolerance", what, plain / (ours / BOARDS), at_least=20)
    figures.add("Tolerance", f"boards of that {shape} ladder", BOARDS / ours / 1e6, "million/s", at_least=5)
