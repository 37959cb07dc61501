"""How much each resistor moves the full scale, by the adjoint network."""

from dataclasses import dataclass

import numpy as np

from workbench.circuit.graph import wiring
from workbench.circuit.network import Driver, Load, Network, PartId
from workbench.circuit.ports import reduce_to_ports
from workbench.circuit.solution import find_problems

__all__ = ["Sensitivity", "sensitivities"]


@dataclass(frozen=True, slots=True)
class Sensitivity:
    """What one resistor does to the level of the last code."""

    part: PartId
    volts_per_percent: float
    """Rise of the loaded full scale when the resistance grows by 1 %. [V/%]"""


def sensitivities(network: Network, driver: Driver, load: Load) -> tuple[Sensitivity, ...]:
    """Return what each resistor does to the full scale, the strongest first.

    Parameters
    ----------
    network, driver, load
        The channel; every pin is 1, so it is linear whatever its zeros do.

    Returns
    -------
    tuple of Sensitivity
        One a resistor; none where the network has no voltages.

    Notes
    -----
    With node volts ``v`` and the volts ``x`` that one ampere into the output makes while the pins'
    sources are at 0 V, Tellegen's theorem gives ``dV/dR = (v_a - v_b)(x_a - x_b) / R**2`` [1]_.

    References
    ----------
    .. [1] S. W. Director, R. A. Rohrer, "The generalized adjoint network and network sensitivities",
       IEEE Transactions on Circuit Theory 16, 1969. From memory.
    """
    if any(problem.kind.fatal for problem in find_problems(network, driver, load)):
        return ()
    structure = wiring(network)
    siemens = 1.0 / np.array([resistor.ohms for resistor in network.resistors])
    ports = reduce_to_ports(structure, siemens, network.n_pins, (structure.output,)).loaded(load.siemens)
    sources = ports.behind(np.full(network.n_pins, driver.high_ohms))
    across = structure.incidence @ sources.gain.sum(axis=1) * driver.supply_volts
    adjoint = structure.incidence @ sources.impedance[:, 0]
    volts_per_percent = siemens * across * adjoint / 100.0
    order = np.argsort(-np.abs(volts_per_percent), kind="stable")
    return tuple(Sensitivity(network.resistors[i].id, float(volts_per_percent[i])) for i in order)
