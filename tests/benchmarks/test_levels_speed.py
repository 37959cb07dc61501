"""All figures of three 8-bit channels against one plain numpy.linalg.solve a code."""

import numpy as np
import pytest

from workbench.circuit.codes import bits_by_code
from workbench.circuit.ladders import r2r, weighted
from workbench.circuit.linearity import linearity
from workbench.circuit.network import GROUND, Driver, Load
from workbench.circuit.solution import solve_levels

pytestmark = pytest.mark.benchmark

DRIVER = Driver(high_ohms=30, low_ohms=30)
NETWORKS = {
    "weighted": weighted(8, [560.0 * 2**i for i in range(8)]),
    "R-2R": r2r(8, 273.0),
}


def nodal_matrix(network, load_siemens):
    """Return the nodal matrix with the on-resistances, written down as a textbook does."""
    nodes = list(dict.fromkeys(node for r in network.resistors for node in (r.a, r.b) if node != GROUND))
    index = {node: i for i, node in enumerate(nodes)}
    matrix = np.zeros((len(nodes), len(nodes)))
    for resistor in network.resistors:
        ends = [index[node] for node in (resistor.a, resistor.b) if node in index]
        for end in ends:
            matrix[end, end] += 1 / resistor.ohms
        if len(ends) == 2:
            matrix[ends[0], ends[1]] -= 1 / resistor.ohms
            matrix[ends[1], ends[0]] -= 1 / resistor.ohms
    pins = [index[pin] for pin in network.pins]
    matrix[pins, pins] += 1 / DRIVER.high_ohms
    matrix[index[network.output], index[network.output]] += load_siemens
    return matrix, pins, index[network.output]


def code_by_code(network):
    """Return loaded and open levels and pin currents, each code solved on its own."""
    figures = []
    for siemens in (Load().siemens, 0.0):
        matrix, pins, output = nodal_matrix(network, siemens)
        volts, amps = np.zeros(network.n_codes), np.zeros((network.n_codes, network.bits))
        for code, bits in enumerate(bits_by_code(network.bits)):
            drive = np.zeros(len(matrix))
            drive[pins] = bits * DRIVER.supply_volts / DRIVER.high_ohms
            nodes = np.linalg.solve(matrix, drive)
            volts[code] = nodes[output]
            amps[code] = (bits * DRIVER.supply_volts - nodes[pins]) / DRIVER.high_ohms
        figures.append((volts, amps, linearity(volts)))
    return figures


def all_at_once(network):
    levels = solve_levels(network, DRIVER, Load())
    return levels, linearity(levels.volts_by_code)


@pytest.mark.parametrize("shape", NETWORKS)
def test_three_channels_of_eight_bits(figures, shape):
    network = NETWORKS[shape]
    (volts, amps, _), (open_volts, _, _) = code_by_code(network)
    levels, _ = all_at_once(network)
    np.testing.assert_allclose(levels.volts_by_code, volts, rtol=1e-9, atol=1e-12)
    np.testing.assert_allclose(levels.open_by_code, open_volts, rtol=1e-9, atol=1e-12)
    np.testing.assert_allclose(levels.pin_amps, amps, rtol=1e-9, atol=1e-12)

    plain = figures.median_s(lambda: [code_by_code(network) for _ in range(3)], repeats=9)
    ours = figures.median_s(lambda: [all_at_once(network) for _ in range(3)], repeats=99)

    what = f"levels, INL, DNL and currents of three 8-bit {shape} channels, against one solve a code"
    figures.add("Circuit", what, plain / ours, at_least=20)
    figures.add("Circuit", f"the same three {shape} channels", ours * 1e3, "ms")
