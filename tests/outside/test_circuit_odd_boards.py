"""Odd boards against nodal analysis written out here: pins as voltage sources, one matrix a code.

Nothing of the engine but its values and its figures is used: C.-W. Ho, A. E. Ruehli, P. A. Brennan, "The
modified nodal approach to network analysis", IEEE Transactions on Circuits and Systems 22, 1975.
"""

from dataclasses import replace
from itertools import product
from typing import NamedTuple

import numpy as np
import pytest

from workbench.circuit.bands import Band, Tolerances
from workbench.circuit.codes import pin_states
from workbench.circuit.ladders import r2r, segmented, weighted
from workbench.circuit.network import GROUND, Driver, Load, Network, Zeros
from workbench.circuit.solution import solve_levels
from workbench.circuit.tolerance.monte_carlo import find_tolerance

FLOATING = Driver(high_ohms=40.0, low_ohms=55.0, zeros=Zeros.FLOATING)
UNLIKE = Driver(high_ohms=25.0, low_ohms=90.0)
OPEN = Load(ohms=None)
LEGS = weighted(3, [500.0, 1e3, 2e3])
ONE_VALUE = weighted(2, [1e3, 1e3])
BRIDGED = replace(
    LEGS, resistors=(*LEGS.resistors, replace(LEGS.resistors[0], id="R9", b=LEGS.pins[1], ohms=820.0))
)


class Board(NamedTuple):
    network: Network
    driver: Driver
    load: Load


BOARDS = {
    "floating zeros": Board(LEGS, FLOATING, Load()),
    "floating zeros, no load": Board(LEGS, FLOATING, OPEN),
    "unlike pins": Board(LEGS, UNLIKE, Load()),
    "unlike pins, no load": Board(LEGS, UNLIKE, OPEN),
    "shunt": Board(weighted(3, [170.0, 350.0, 700.0], shunt_ohms=130.0), Driver(), Load()),
    "R-2R": Board(r2r(3, 256.0), UNLIKE, Load()),
    "R-2R, floating, no load": Board(r2r(3, 256.0), FLOATING, OPEN),
    "segmented": Board(segmented(3, 2, [1.8e3, 3.6e3]), Driver(high_ohms=30.0, low_ohms=30.0), Load()),
    "equal values": Board(ONE_VALUE, Driver(5.0), Load()),
    "50 ohm load": Board(LEGS, Driver(5.0), Load(50.0, monitors=2)),
    "bridged pins": Board(BRIDGED, UNLIKE, Load()),
}
every_board = pytest.mark.parametrize("board", BOARDS.values(), ids=BOARDS)


def solved(board: Board, code, ohms, load_siemens: float):
    """Return output volts, amperes out of each pin, watts of each resistor."""
    network, driver, _ = board
    nodes = [
        *dict.fromkeys((*network.pins, network.output, *(n for r in network.resistors for n in (r.a, r.b))))
    ]
    place = {node: i for i, node in enumerate(n for n in nodes if n != GROUND)}
    held = [pin for pin, bit in enumerate(code) if bit or driver.zeros is Zeros.DRIVEN]
    size = len(place) + len(held)
    matrix, given = np.zeros((size, size)), np.zeros(size)
    ends = [(r.a, r.b, 1 / each) for r, each in zip(network.resistors, ohms, strict=True)]
    for a, b, siemens in (*ends, (network.output, GROUND, load_siemens)):
        for one, other in ((a, b), (b, a)):
            if one != GROUND:
                matrix[place[one], place[one]] += siemens
                if other != GROUND:
                    matrix[place[one], place[other]] -= siemens
    for row, pin in enumerate(held, len(place)):
        node = place[network.pins[pin]]
        matrix[node, row], matrix[row, node] = -1.0, 1.0
        matrix[row, row] = driver.high_ohms if code[pin] else driver.low_ohms
        given[row] = driver.supply_volts * code[pin]
    found = np.linalg.lstsq(matrix, given, rcond=None)[0]  # nodes that nothing holds stay at 0 V
    volts = {GROUND: 0.0} | {node: found[i] for node, i in place.items()}
    amps = np.zeros(len(code))
    amps[held] = found[len(place) :]
    return volts[network.output], amps, [(volts[a] - volts[b]) ** 2 * siemens for a, b, siemens in ends]


def nominal(network: Network):
    return np.array([resistor.ohms for resistor in network.resistors])


def figures(volts):
    """Return white, the largest INL and the largest DNL."""
    lsb = (volts[-1] - volts[0]) / (len(volts) - 1)
    inl = (volts - volts[0]) / lsb - np.arange(len(volts))
    return volts[-1], np.abs(inl).max(), np.abs(np.diff(volts) / lsb - 1).max()


@every_board
def test_volts_amperes_and_watts(board):
    levels = solve_levels(*board)

    for code, states in enumerate(pin_states(board.network)):
        volts, amps, watts = solved(board, states, nominal(board.network), board.load.siemens)
        assert levels.volts_by_code[code] == pytest.approx(volts, rel=1e-9, abs=1e-12)
        np.testing.assert_allclose(levels.pin_amps[code], amps, rtol=1e-9, atol=1e-12)
        np.testing.assert_allclose(levels.resistor_watts[code], watts, rtol=1e-9, atol=1e-12)


@every_board
def test_the_source_resistance_is_what_a_second_load_takes(board):
    levels = solve_levels(*board)

    for code, states in enumerate(pin_states(board.network)):
        opened, loaded = (solved(board, states, nominal(board.network), s)[0] for s in (0.0, 1e-3))
        if opened > 0.1:
            taken = 1e3 * (opened / loaded - 1)
            assert levels.source_ohms_by_code[code] == pytest.approx(taken, rel=1e-6)


@every_board
def test_the_worst_case_is_the_worst_corner(board):
    network, driver, load = board
    found = find_tolerance(network, driver, load, Tolerances(Band(0.05)), boards=100)

    corners = [
        figures(
            np.array([solved(board, s, nominal(network) * f, load.siemens)[0] for s in pin_states(network)])
        )
        for f in product((0.95, 1.05), repeat=len(network.resistors))
    ]
    white, inl, dnl = np.array(corners).T
    assert found.full_scale_volts.worst_low == pytest.approx(white.min(), rel=1e-6)
    assert found.full_scale_volts.worst_high == pytest.approx(white.max(), rel=1e-6)
    assert found.max_inl_lsb.worst_high == pytest.approx(inl.max(), rel=1e-6)
    assert found.max_dnl_lsb.worst_high == pytest.approx(dnl.max(), rel=1e-6)


@every_board
def test_a_sensitivity_is_the_slope_of_white(board):
    network, driver, load = board
    found = find_tolerance(network, driver, load, boards=1).sensitivity

    for each in found:
        slope = np.array([1e-5 * (resistor.id == each.part) for resistor in network.resistors])
        up, down = (
            solved(board, np.ones(network.n_pins), nominal(network) * (1 + side * slope), load.siemens)[0]
            for side in (1, -1)
        )
        assert each.volts_per_percent == pytest.approx((up - down) / 2e-3, rel=1e-5, abs=1e-8)
