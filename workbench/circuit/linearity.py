"""How evenly a staircase of levels climbs."""

from dataclasses import dataclass

import numpy as np

from workbench.circuit.ports import FloatArray

__all__ = ["EVEN_LSB", "ROUNDING_LSB", "Linearity", "linearity"]

EVEN_LSB = 0.5
"""Steps this near to even are not worth a warning: half a step is the usual aim (common practice,
no source). [LSB]"""
ROUNDING_LSB = 1e-4
"""A step of less than this part of the mean step is rounding, up or down: the level repeats. [LSB]"""
_NO_RISE_VOLTS = 1e-12


@dataclass(frozen=True, slots=True, eq=False)
class Linearity:
    """End-point linearity of a staircase; read-only arrays."""

    full_scale_volts: float
    """Level of the last code. [V]"""
    offset_volts: float
    """Level of code 0. [V]"""
    lsb_volts: float
    """Mean step, ``(last - first) / (n_codes - 1)``. [V]"""
    steps_volts: FloatArray
    """Rise from each level to the next, 0 where it is only rounding, shape (n_codes - 1,). [V]"""
    inl_lsb: FloatArray
    """Distance of each level from the straight line through the end points, shape (n_codes,). [LSB]"""
    dnl_lsb: FloatArray
    """Excess of each step over the mean step, shape (n_codes - 1,). [LSB]"""

    @property
    def monotonic(self) -> bool:
        """Return whether no step falls."""
        return bool((self.steps_volts >= 0.0).all())

    @property
    def max_inl_lsb(self) -> float:
        """Return the largest INL, whatever its sign. [LSB]"""
        return float(np.abs(self.inl_lsb).max(initial=0.0))

    @property
    def max_dnl_lsb(self) -> float:
        """Return the largest DNL, whatever its sign. [LSB]"""
        return float(np.abs(self.dnl_lsb).max(initial=0.0))


def linearity(volts_by_code: FloatArray) -> Linearity:
    """Return the end-point linearity of the levels.

    Parameters
    ----------
    volts_by_code : float array, shape (n_codes,)
        Level of each code, ``1 <= n_codes``. [V]

    Notes
    -----
    A staircase without any rise from end to end has no LSB; INL and DNL are then reported as 0.
    The end-point line is the one that the ends of the staircase fix, not the best fit.

    References
    ----------
    .. [1] IEEE Std 1658, "Terminology and Test Methods of Digital-to-Analog Converter Devices":
       end-point INL, DNL. The edition was not at hand; the definitions are from memory.
    """
    volts = np.asarray(volts_by_code, dtype=np.float64)
    n_steps = len(volts) - 1
    offset, full_scale = float(volts[0]), float(volts[-1])
    lsb = (full_scale - offset) / n_steps if n_steps else 0.0
    steps = np.diff(volts)
    if abs(lsb) > _NO_RISE_VOLTS:
        inl = (volts - offset) / lsb - np.arange(len(volts))
        dnl = steps / lsb - 1.0
    else:
        inl, dnl = np.zeros(len(volts)), np.zeros(n_steps)
    steps[np.abs(steps) <= max(ROUNDING_LSB * abs(lsb), _NO_RISE_VOLTS)] = 0.0
    for array in (steps, inl, dnl):
        array.setflags(write=False)
    return Linearity(full_scale, offset, lsb, steps, inl, dnl)
