"""What stands around a network in its drawing: the controller, the connector, the monitor."""

from dataclasses import dataclass

from workbench.circuit.network import Cable, Load, PartId

__all__ = ["H_SERIES", "LOAD", "V_SERIES", "Board", "SyncRow"]

H_SERIES = PartId("RH")
"""The resistor of the H sync line; it belongs to no channel."""
V_SERIES = PartId("RV")
"""The resistor of the V sync line."""
LOAD = PartId("load")
"""The monitor's termination."""


@dataclass(frozen=True, slots=True)
class SyncRow:
    """A sync line from its pin to its contact."""

    part: PartId
    pin: str
    caption: str
    ohms: float
    """Series resistor; 0 is a plain wire. [Ω]"""
    contact: str


@dataclass(frozen=True, slots=True)
class Board:
    """Names and values around the network of one channel."""

    pins: tuple[str, ...]
    """The controller's pins, most significant bit first."""
    controller: str
    contact: str
    """Contact of the colour on the 15-pin connector."""
    return_contact: str
    sync: tuple[SyncRow, ...]
    load: Load
    cable: Cable | None
