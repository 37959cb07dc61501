"""Deliberate faults: each a record of how it shows and a pure function that brings it about.

Start with ``record`` (what a fault is, what it is put into), then the lists: ``levels``,
``wiring``, ``edges``, ``timing``. A fault never touches the project that is being designed: it
makes another one, to be run and looked at.
"""

from workbench.bringup.faults.edges import EDGE_FAULTS
from workbench.bringup.faults.levels import LEVEL_FAULTS
from workbench.bringup.faults.record import Fault, Setup, switched_on
from workbench.bringup.faults.timing import TIMING_FAULTS
from workbench.bringup.faults.wiring import WIRING_FAULTS

__all__ = ["FAULTS", "Fault", "Setup", "fault_named", "switched_on"]

FAULTS: tuple[Fault, ...] = (*LEVEL_FAULTS, *WIRING_FAULTS, *EDGE_FAULTS, *TIMING_FAULTS)
"""Every fault that can be switched on."""


def fault_named(id: str) -> Fault:
    """Return the fault of an id; raises :class:`KeyError` where there is none."""
    return {fault.id: fault for fault in FAULTS}[id]
