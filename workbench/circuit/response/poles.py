"""A network of resistors and capacitors as a sum of exponential lags.

Such a network has real poles only, as many as it has independent capacitors. So its answer to
any source is a direct share, which follows at once, and a share for each lag; frequency response,
step and ramp follow from these in closed form.
"""

from dataclasses import dataclass

import numpy as np

from workbench.circuit.graph import Wiring
from workbench.circuit.network import Network
from workbench.circuit.ports import FloatArray, Sources, reduce_to_ports
from workbench.circuit.response.transform import ComplexArray, Frequencies

__all__ = ["Poles", "find_poles"]

_NO_LAG = 1e-12
"""Lags shorter than this part of the longest are none. [1]"""
_ALIKE = 1e-6
"""Lags that differ by less of one of them are alike. [1]"""
_NO_RISE_S = 1e-15
"""A ramp shorter than this is a step. [s]"""


@dataclass(frozen=True, slots=True, eq=False)
class Poles:
    """How the output answers the pins, and a current led into it.

    Both are ``share[0] + sum(share[1 + k] / (1 + j omega lags[k]))``.
    """

    lags_s: FloatArray
    """Time constants, shape (n_lags,). [s]"""
    shares: FloatArray
    """Output volts for each volt of each pin's source, shape (n_pins, 1 + n_lags). [1]"""
    impedance: FloatArray
    """Output volts for each ampere into the output, shape (1 + n_lags,). [Ω]"""

    def lagging(self, omega: Frequencies) -> ComplexArray:
        """Return 1 and each lag's ``1 / (1 + j omega lag)``, shape (1 + n_lags, n_frequencies). [1]"""
        rows = np.ones((1 + len(self.lags_s), len(omega)), dtype=np.complex128)
        rows[1:] = 1.0 / (1.0 + 1j * np.outer(self.lags_s, omega))
        return rows

    def through(self, lag_s: float, gain: float) -> "Poles":
        """Return the answer behind a gain and one more lag.

        Parameters
        ----------
        lag_s : float
            Time constant, ``0 <= lag_s``. [s]
        gain : float
            At rest. [1]

        Notes
        -----
        By partial fractions. Lags that are equal are taken as a millionth apart, where the sum is
        still exact to some nine digits.
        """
        if lag_s <= _NO_LAG * float(self.lags_s.max(initial=0.0)):
            return Poles(self.lags_s, gain * self.shares, gain * self.impedance)
        apart = self.lags_s - lag_s
        apart = np.where(np.abs(apart) > _ALIKE * lag_s, apart, _ALIKE * lag_s)

        def answer(shares: FloatArray) -> FloatArray:
            kept = shares[..., 1:] * ((lag_s + apart) / apart)
            last = shares[..., :1] - (shares[..., 1:] * (lag_s / apart)).sum(axis=-1, keepdims=True)
            return gain * np.concatenate((np.zeros_like(last), kept, last), axis=-1)

        lags = np.append(lag_s + apart, lag_s)
        return Poles(lags, answer(self.shares), answer(self.impedance))

    def ramps(self, time_s: FloatArray, rise_s: float) -> FloatArray:
        """Return each row of :meth:`lagging` as its answer to a ramp from 0 to 1.

        Parameters
        ----------
        time_s : float array, shape (n_samples,)
            Time since the start of the ramp; before it all is 0. [s]
        rise_s : float
            Length of the ramp, ``0 <= rise_s``; 0 is a step. [s]

        Returns
        -------
        float array, shape (1 + n_lags, n_samples)
            1 when settled. [1]

        Notes
        -----
        The answer ``g(t) = t - lag (1 - exp(-t / lag))`` to a slope of 1 that goes on for ever, less
        the same a rise time later, over the rise time. Where a step falls on a sample the sample is 1.
        """
        lags = np.concatenate(([0.0], self.lags_s))[:, None]
        if rise_s < _NO_RISE_S:
            return np.where(time_s >= 0.0, 1.0 - _decay(time_s, lags), 0.0)

        def slope(time: FloatArray) -> FloatArray:
            after = np.maximum(time, 0.0)
            return np.asarray(after - lags * (1.0 - _decay(after, lags)))

        return (slope(time_s) - slope(time_s - rise_s)) / rise_s


def _decay(time_s: FloatArray, lags_s: FloatArray) -> FloatArray:
    """Return ``exp(-time / lag)``, 0 without a lag."""
    with np.errstate(divide="ignore", invalid="ignore", over="ignore"):
        return np.where(lags_s > 0.0, np.exp(-np.maximum(time_s, 0.0) / lags_s), 0.0)


def find_poles(network: Network, structure: Wiring, on_ohms: float) -> Poles:
    """Return the output's answer to the pins of a network with its load.

    Parameters
    ----------
    network : Network
        Pins, resistors, capacitors, and what hangs on the output, as parts of it.
    structure : Wiring
        Structure of that network, without a fatal problem.
    on_ohms : float
        On-resistance of every pin, ``0 <= on_ohms``. [Ω]

    Notes
    -----
    Taken out, the capacitors leave a resistive network with known impedances ``Z`` between their
    terminals. With ``F = B sqrt(C)`` (``B`` their incidence), the eigenvalues of ``F' Z F`` are the
    lags [1]_. Nodes that only capacitors reach carry no charge away: they are eliminated from ``F``
    by the projector on what leaves their charge at 0.

    References
    ----------
    .. [1] L. Weinberg, "Network Analysis and Synthesis", 1962: the natural frequencies of RC
       networks lie on the negative real axis. From memory; the eigenvalue form is our own.
    """
    siemens = 1.0 / np.array([resistor.ohms for resistor in network.resistors])
    charge = structure.capacitor_incidence.T * np.sqrt([part.farads for part in network.capacitors])
    reached = np.flatnonzero(structure.held & charge.any(axis=1))
    probes = (structure.output, *(int(node) for node in reached))
    ports = reduce_to_ports(structure, siemens, network.n_pins, probes)
    sources = ports.behind(np.full(network.n_pins, on_ohms))
    return _diagonalise(sources, probes, _shared_charge(charge, structure)[reached])


def _shared_charge(charge: FloatArray, structure: Wiring) -> FloatArray:
    loose = charge[~structure.held]
    if not loose.any():
        return charge
    return np.asarray(charge - charge @ np.linalg.pinv(loose) @ loose)


def _diagonalise(sources: Sources, probes: tuple[int, ...], charge: FloatArray) -> Poles:
    output, nodes = probes[0], list(probes[1:])
    from_pins = sources.gain[output]
    lags, modes = np.linalg.eigh(charge.T @ sources.impedance[nodes, 1:] @ charge)
    kept = lags > _NO_LAG * lags.max(initial=0.0)
    lags, modes = lags[kept], modes[:, kept]
    seen = sources.impedance[output, 1:] @ charge @ modes
    excited = modes.T @ charge.T @ sources.gain[nodes]
    residues = (seen[:, None] * excited / lags[:, None]).T
    own = seen**2 / lags
    return Poles(
        lags,
        np.column_stack((from_pins - residues.sum(axis=1), residues)),
        np.concatenate(([sources.impedance[output, 0] - own.sum()], own)),
    )
