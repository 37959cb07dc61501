"""Drives for the Fourier transform, and the bounds it is kept to."""

import math
from collections.abc import Sequence

import numpy as np

from workbench.circuit.network import Network
from workbench.circuit.ports import FloatArray
from workbench.circuit.response.path import Path

__all__ = [
    "MOST_SAMPLES",
    "SAMPLES_PER_CHANGE",
    "all_skews",
    "omega_of",
    "quick_count",
    "ramp_of",
    "read_only",
]

MOST_SAMPLES = 1 << 16
"""Samples of one transform at most. [1]"""
SAMPLES_PER_CHANGE = 16
"""Samples over the shortest time in which an edge changes. [1]"""


def quick_count(wanted: float) -> int:
    """Return a number of samples not below the wanted one that a transform does quickly. [1]

    >>> quick_count(18_000.0)
    20480
    """
    power = 1 << math.ceil(math.log2(wanted))
    return min(count for count in (power, power * 3 // 4, power * 5 // 8) if count >= wanted)


def ramp_of(path: Path, n_samples: int, step_s: float) -> FloatArray:
    """Return the drivers' edge; one shorter than two samples would ring in the transform. [1]"""
    return np.clip(np.arange(n_samples) * (step_s / max(path.rise_s, 2.0 * step_s)), 0.0, 1.0)


def all_skews(network: Network, skews_s: Sequence[float]) -> FloatArray:
    """Return the skew of every pin; those left out at the end are in time, shape (n_pins,). [s]"""
    skews = np.zeros(network.n_pins)
    skews[: len(skews_s)] = skews_s
    return skews


def omega_of(n_samples: int, step_s: float) -> FloatArray:
    """Return the angular frequencies of a real transform. [rad/s]"""
    return np.asarray(2.0 * math.pi * np.fft.rfftfreq(n_samples, step_s))


def read_only(array: FloatArray) -> FloatArray:
    """Return the array, locked."""
    array.setflags(write=False)
    return array
