"""Common coaxial cables, to start from.

References
----------
Typical values, from memory, no source read: a cable's maker gives the real ones.
"""

from dataclasses import dataclass, replace

from workbench.circuit.network import Cable

__all__ = ["COAX", "Coax", "coax_of"]


@dataclass(frozen=True, slots=True)
class Coax:
    """A kind of cable, without its length."""

    name: str
    ohms: float
    velocity: float
    loss_db_per_m: float
    loss_at_hz: float = 100e6

    def at(self, metres: float) -> Cable:
        """Return a piece of this cable."""
        return Cable(metres, self.ohms, self.velocity, self.loss_db_per_m, self.loss_at_hz)


COAX = (
    Coax("75 Ω, 6 mm, solid core", 75.0, 0.66, 0.11),
    Coax("75 Ω, 6 mm, foam core", 75.0, 0.82, 0.08),
    Coax("75 Ω, thin, in a monitor cable", 75.0, 0.66, 0.25),
    Coax("50 Ω, 5 mm, solid core", 50.0, 0.66, 0.16),
    Coax("75 Ω, without loss", 75.0, 0.66, 0.0),
)
"""Typical values, from memory."""


def coax_of(cable: Cable | None) -> Coax | None:
    """Return the kind of a cable, if it is one of the common ones."""
    if cable is None:
        return None
    return next((coax for coax in COAX if coax.at(1.0) == replace(cable, metres=1.0)), None)
