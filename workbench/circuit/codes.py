"""Which pins are 1 for which code.

Every part of the program that asks what a pin does for a code asks here. In a plain network each pin
carries one bit. In a segmented one the highest bits are *thermometer coded*: their pins are equal,
and a step up in these bits raises one pin and lowers none, so that the largest steps of the staircase
are made of parts that only add up.
"""

from functools import lru_cache

import numpy as np

from workbench.circuit.network import Network
from workbench.circuit.ports import FloatArray

__all__ = ["bits_by_code", "first_codes", "pin_label", "pin_states", "pin_steps", "rising_pin", "with_pin"]


@lru_cache(maxsize=16)
def bits_by_code(n_bits: int) -> FloatArray:
    """Return every code as ones and zeros, most significant bit first, shape (n_codes, n_bits). [1]

    >>> bits_by_code(2)
    array([[0., 0.],
           [0., 1.],
           [1., 0.],
           [1., 1.]])
    """
    codes = np.arange(1 << n_bits)[:, None]
    return _locked((codes >> np.arange(n_bits - 1, -1, -1) & 1).astype(np.float64))


def pin_states(network: Network) -> FloatArray:
    """Return what every pin is for every code, 0 or 1, shape (n_codes, n_pins); read-only. [1]"""
    return _pin_states(network.n_pins, network.thermometer)


def pin_steps(bits: int, thermometer: int = 0) -> tuple[int, ...]:
    """Return how many steps of the staircase each pin stands for, in the order of the pins. [1]

    >>> pin_steps(4)
    (8, 4, 2, 1)
    >>> pin_steps(4, thermometer=2)
    (4, 4, 4, 2, 1)
    """
    tail = bits - thermometer
    return (1 << tail,) * ((1 << thermometer) - 1) + tuple(1 << bit for bit in reversed(range(tail)))


def first_codes(network: Network) -> tuple[int, ...]:
    """Return the lowest code that raises each pin, in the order of the pins. [1]"""
    steps = pin_steps(network.bits, network.thermometer)
    several = network.n_thermometer_pins
    return tuple(step * (pin + 1) if pin < several else step for pin, step in enumerate(steps))


def rising_pin(network: Network, code: int) -> int:
    """Return the pin that the step up to a code raises; there is exactly one. [1]"""
    tail = network.bits - network.thermometer
    bit = (code & -code).bit_length() - 1
    if bit >= tail:
        return (code >> tail) - 1
    return network.n_thermometer_pins + tail - 1 - bit


def with_pin(network: Network, code: int, pin: int, *, high: bool) -> int:
    """Return the code nearest in meaning to another one with one pin forced.

    A thermometer pin takes those before it along when it rises, and those after it when it falls:
    no code shows anything else.
    """
    tail = network.bits - network.thermometer
    if pin < network.n_thermometer_pins:
        return (pin + high << tail) | (code & (1 << tail) - 1)
    bit = pin_steps(network.bits, network.thermometer)[pin]
    return code | bit if high else code & ~bit


def pin_label(network: Network, pin: int) -> tuple[str, int]:
    """Return what a pin carries: ``("bit", 3)``, or ``("step", 2)`` for the second thermometer pin."""
    if network.thermometer > 1 and pin < network.n_thermometer_pins:
        return "step", pin + 1
    return "bit", network.n_pins - 1 - pin


@lru_cache(maxsize=16)
def _pin_states(n_pins: int, thermometer: int) -> FloatArray:
    if thermometer == 0:
        return bits_by_code(n_pins)
    several = (1 << thermometer) - 1
    tail = bits_by_code(n_pins - several)
    risen = (np.arange(several) < np.arange(several + 1)[:, None]).astype(np.float64)
    return _locked(np.hstack((np.repeat(risen, len(tail), axis=0), np.tile(tail, (several + 1, 1)))))


def _locked(array: FloatArray) -> FloatArray:
    array.setflags(write=False)
    return array
