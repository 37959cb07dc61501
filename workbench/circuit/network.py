"""A network as a value: the parts between the nodes of one colour channel.

One channel is one network: logic pins drive some of its nodes, resistors and capacitors
connect them, and the node named by ``output`` goes to the connector. What drives the pins
(:class:`Driver`) and what hangs on the output (:class:`Load`, :class:`Cable`) are values of
their own, because all three channels share them. Nothing here knows how it is drawn.
"""

from dataclasses import dataclass
from enum import Enum
from typing import NewType

__all__ = [
    "GROUND",
    "OUTPUT",
    "Cable",
    "Capacitor",
    "Driver",
    "Load",
    "Network",
    "NodeId",
    "PartId",
    "Resistor",
    "Zeros",
]

NodeId = NewType("NodeId", str)
PartId = NewType("PartId", str)

GROUND = NodeId("gnd")
"""The reference node, 0 V; always there."""
OUTPUT = NodeId("out")
"""The usual name of the node that goes to the connector."""


class Zeros(Enum):
    """What a pin does for a 0: drive its node to ground, or let go of it."""

    DRIVEN = "driven"
    FLOATING = "floating"


@dataclass(frozen=True, slots=True)
class Resistor:
    """A resistor between two nodes."""

    id: PartId
    a: NodeId
    b: NodeId
    ohms: float
    """Nominal resistance, ``0 < ohms``. [Ω]"""
    tolerance: float = 0.01
    """Half width of the maker's band, ``0 <= tolerance < 1``. [1]"""
    rating_watts: float = 0.25
    """Power the part may turn into heat, ``0 < rating_watts``. [W]"""


@dataclass(frozen=True, slots=True)
class Capacitor:
    """A capacitor between two nodes; open for levels, seen in the response."""

    id: PartId
    a: NodeId
    b: NodeId
    farads: float
    """Capacitance, ``0 < farads``. [F]"""


@dataclass(frozen=True, slots=True)
class Network:
    """Parts between the pins and the output of one channel.

    ``pins[0]`` is the node of the most significant bit. With thermometer bits their pins come
    first, and one more of them is 1 for each step of these bits, the first pin first; the other bits
    follow, most significant first. :func:`workbench.circuit.codes.pin_states` has the table.
    """

    pins: tuple[NodeId, ...]
    resistors: tuple[Resistor, ...]
    capacitors: tuple[Capacitor, ...] = ()
    output: NodeId = OUTPUT
    thermometer: int = 0
    """How many of the highest bits are shown by ``2**thermometer - 1`` equal pins. [1]"""

    @property
    def n_pins(self) -> int:
        """Return the number of pins. [1]"""
        return len(self.pins)

    @property
    def n_thermometer_pins(self) -> int:
        """Return how many of the pins, the first ones, show the thermometer bits. [1]"""
        return (1 << self.thermometer) - 1

    @property
    def bits(self) -> int:
        """Return the number of bits of the code. [1]"""
        return self.n_pins - self.n_thermometer_pins + self.thermometer

    @property
    def n_codes(self) -> int:
        """Return the number of codes the pins can show. [1]"""
        return 1 << self.bits


@dataclass(frozen=True, slots=True)
class Driver:
    """The output stage behind every pin, as the chip's maker describes it."""

    supply_volts: float = 3.3
    high_ohms: float = 0.0
    """On-resistance of a pin that drives a 1, ``0 <= high_ohms``. [Ω]"""
    low_ohms: float = 0.0
    """On-resistance of a pin that drives a 0, ``0 <= low_ohms``. [Ω]"""
    zeros: Zeros = Zeros.DRIVEN
    rise_s: float = 2e-9
    """Length of the linear ramp of an edge, 0 to 100 %, ``0 <= rise_s``. [s]"""
    pin_limit_amps: float | None = None
    """What one pin may carry, the user's own entry; none if not entered. [A]"""
    total_limit_amps: float | None = None
    """What all pins together may carry, the user's own entry. [A]"""


@dataclass(frozen=True, slots=True)
class Load:
    """What the monitor puts on each colour line."""

    ohms: float | None = 75.0
    """Termination to ground of one monitor, ``0 < ohms``; none where nothing is fitted. [Ω]"""
    monitors: int = 1
    """How many such terminations hang on the line, ``1 <= monitors``. [1]"""
    farads: float = 0.0
    """Input capacitance of one monitor, ``0 <= farads``. [F]"""

    @property
    def siemens(self) -> float:
        """Return the conductance of all terminations together. [S]"""
        return 0.0 if self.ohms is None else self.monitors / self.ohms


@dataclass(frozen=True, slots=True)
class Cable:
    """A lossy line between the connector and the monitor."""

    metres: float
    """Length, ``0 < metres``. [m]"""
    ohms: float = 75.0
    """Characteristic impedance, ``0 < ohms``. [Ω]"""
    velocity: float = 0.66
    """Wave speed as a part of the speed of light, ``0 < velocity <= 1``. [1]"""
    loss_db_per_m: float = 0.0
    """Loss at ``loss_at_hz``, rising with the root of the frequency. [dB/m]"""
    loss_at_hz: float = 100e6
