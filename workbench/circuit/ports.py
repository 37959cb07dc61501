"""A network of resistors seen from its pins: what they deliver, and what every node follows.

The network between the pins is eliminated once. Whatever drives the pins, through whatever
on-resistance, is then a problem of as many unknowns as there are pins; an ideal pin is an
on-resistance of 0 like any other and needs no case of its own.
"""

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from workbench.circuit.graph import Wiring

__all__ = ["FloatArray", "Ports", "Sources", "reduce_to_ports"]

FloatArray = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class Sources:
    """A network with ideal sources behind the on-resistances of its pins."""

    gain: FloatArray
    """Node volts for each volt of each source, shape (n_nodes, n_pins). [1]"""
    impedance: FloatArray
    """Node volts for each ampere into each probe, sources at 0 V, shape (n_nodes, n_probes). [Ω]"""


@dataclass(frozen=True, slots=True, eq=False)
class Ports:
    """A network with its pin nodes as ports."""

    transfer: FloatArray
    """Node volts for each volt at each pin node, shape (n_nodes, n_pins). [1]"""
    admittance: FloatArray
    """Amperes into each pin node for each volt at each pin node, shape (n_pins, n_pins). [S]"""
    impedance: FloatArray
    """Node volts for each ampere into each probe, pin nodes at 0 V, shape (n_nodes, n_probes). [Ω]"""
    probes: tuple[int, ...]
    """Nodes into which currents are led."""

    def loaded(self, siemens: float) -> "Ports":
        """Return these ports with a conductance from the first probe to ground.

        Notes
        -----
        The load changes the nodal matrix by one symmetric term, so the Sherman-Morrison formula
        gives the new inverse from the old.

        References
        ----------
        .. [1] J. Sherman, W. J. Morrison, "Adjustment of an inverse matrix corresponding to a
           change in one element of a given matrix", Annals of Mathematical Statistics 21, 1950.
        """
        probe = self.probes[0]
        column, row, across = self.impedance[:, 0], self.transfer[probe], self.impedance[probe]
        share = siemens / (1.0 + siemens * across[0])
        return Ports(
            self.transfer - np.outer(column, share * row),
            self.admittance + np.outer(row, share * row),
            self.impedance - np.outer(column, share * across),
            self.probes,
        )

    def behind(self, on_ohms: FloatArray) -> Sources:
        """Return what the nodes see of sources behind an on-resistance at each pin.

        Parameters
        ----------
        on_ohms : float array, shape (n_pins,)
            On-resistance of each pin, ``0 <= on_ohms``. [Ω]

        Notes
        -----
        With source volts ``e``, pin volts ``v`` and pin currents ``i = Y v``: ``v = e - R i``, so
        ``(1 + R Y) v = e``. ``Y`` is positive semidefinite, hence the matrix is regular for every
        ``R >= 0``, at ``R = 0`` too.
        """
        identity = np.eye(len(on_ohms))
        pin_volts = np.linalg.solve(identity + on_ohms[:, None] * self.admittance, identity)
        gain = self.transfer @ pin_volts
        drop = on_ohms[:, None] * self.transfer[list(self.probes)].T
        return Sources(gain, self.impedance + gain @ drop)


def reduce_to_ports(wiring: Wiring, siemens: FloatArray, n_pins: int, probes: tuple[int, ...]) -> Ports:
    """Eliminate every node but the pins.

    Parameters
    ----------
    wiring : Wiring
        Structure of the network, without a fatal problem.
    siemens : float array, shape (n_resistors,)
        Conductance of each resistor, ``0 < siemens``. [S]
    n_pins : int
        Number of pins; they are the first nodes. [1]
    probes : tuple of int
        Nodes into which currents may be led besides.

    Notes
    -----
    Nodes that no resistor ties to a pin or to ground have no voltage of their own; they are left
    at 0 V.

    Raises
    ------
    numpy.linalg.LinAlgError
        If the conductances lie so far apart that the nodal matrix is singular in floating point.
    """
    nodal = wiring.incidence.T @ (siemens[:, None] * wiring.incidence)
    inner = n_pins + np.flatnonzero(wiring.held[n_pins:])
    drive = np.zeros((len(inner), n_pins + len(probes)))
    drive[:, :n_pins] = -nodal[inner, :n_pins]
    drive[:, n_pins:] = inner[:, None] == np.array(probes)
    followed = np.zeros((len(wiring.nodes), n_pins + len(probes)))
    followed[inner] = np.linalg.solve(nodal[np.ix_(inner, inner)], drive)
    followed[:n_pins, :n_pins] = np.eye(n_pins)
    admittance = nodal[:n_pins] @ followed[:, :n_pins]
    return Ports(followed[:, :n_pins], admittance, followed[:, n_pins:], probes)
