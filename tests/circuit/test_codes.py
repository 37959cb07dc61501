"""Which pins are 1 for which code, in plain and in segmented networks."""

import numpy as np
from hypothesis import given

from tests.strategies import networks
from workbench.circuit.codes import first_codes, pin_label, pin_states, pin_steps, rising_pin, with_pin
from workbench.circuit.ladders import segmented, weighted
from workbench.circuit.network import Network

FOUR = segmented(4, 2, (1e3, 2e3, 4e3))


def test_thermometer_pins_rise_one_after_the_other_and_stay() -> None:
    states = pin_states(FOUR)

    assert states.shape == (16, 5)
    assert states[[3, 4, 7, 8, 12, 15]].astype(int).tolist() == [
        [0, 0, 0, 1, 1],
        [1, 0, 0, 0, 0],
        [1, 0, 0, 1, 1],
        [1, 1, 0, 0, 0],
        [1, 1, 1, 0, 0],
        [1, 1, 1, 1, 1],
    ]


@given(networks())
def test_the_steps_of_the_pins_add_up_to_the_code(network: Network) -> None:
    steps = pin_steps(network.bits, network.thermometer)

    assert (pin_states(network) @ steps).tolist() == list(range(network.n_codes))


@given(networks())
def test_every_step_up_raises_one_pin(network: Network) -> None:
    rises = np.diff(pin_states(network), axis=0) > 0

    assert (rises.sum(axis=1) == 1).all()
    assert rises.argmax(axis=1).tolist() == [rising_pin(network, code) for code in range(1, network.n_codes)]


@given(networks())
def test_a_pin_is_first_raised_by_its_first_code(network: Network) -> None:
    assert pin_states(network).argmax(axis=0).tolist() == list(first_codes(network))


@given(networks())
def test_a_forced_pin_is_as_it_is_forced_and_the_bits_below_stay(network: Network) -> None:
    states, tail = pin_states(network), network.n_thermometer_pins
    for code in {0, network.n_codes // 3, network.n_codes - 1}:
        for pin in range(network.n_pins):
            for high in (False, True):
                forced = with_pin(network, code, pin, high=high)
                others = [other for other in range(tail, network.n_pins) if other != pin]
                assert states[forced, pin] == high
                assert (states[forced, others] == states[code, others]).all()


def test_pins_are_called_by_what_they_carry() -> None:
    assert [pin_label(FOUR, pin) for pin in (0, 2, 3, 4)] == [
        ("step", 1),
        ("step", 3),
        ("bit", 1),
        ("bit", 0),
    ]
    assert pin_label(weighted(3, (1.0, 2.0, 4.0)), 0) == ("bit", 2)
