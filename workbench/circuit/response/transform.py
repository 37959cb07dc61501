"""The Fourier transform's grid and drive, the bounds it is kept to, and products with long rows."""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import TypeVar

import numpy as np
import numpy.typing as npt

from workbench.circuit.network import Network
from workbench.circuit.ports import FloatArray

__all__ = [
    "MOST_SAMPLES",
    "SAMPLES_PER_CHANGE",
    "ComplexArray",
    "Frequencies",
    "Grid",
    "all_skews",
    "mix",
    "quick_count",
    "read_only",
]

ComplexArray = npt.NDArray[np.complex128]
Frequencies = FloatArray | ComplexArray
"""Angular frequencies, complex where a Laplace transform is inverted. [rad/s]"""
Number = TypeVar("Number", np.float64, np.complex128)

MOST_SAMPLES = 1 << 16
"""Samples of one transform at most. [1]"""
SAMPLES_PER_CHANGE = 16
"""Samples over the shortest time in which an edge changes. [1]"""
_NO_LAG = 1e-12
"""Lags shorter than this part of a sample are as good as none. [1]"""


def quick_count(wanted: float) -> int:
    """Return a number of samples not below the wanted one that a transform does quickly. [1]

    >>> quick_count(18_000.0)
    20480
    """
    power = 1 << math.ceil(math.log2(wanted))
    return min(count for count in (power, power * 3 // 4, power * 5 // 8) if count >= wanted)


@dataclass(frozen=True, slots=True)
class Grid:
    """Instants of a transform: a number of samples, and the time from one to the next."""

    n_samples: int
    step_s: float

    @property
    def omega(self) -> FloatArray:
        """Return the angular frequencies of a real transform. [rad/s]"""
        return np.asarray(2.0 * math.pi * np.fft.rfftfreq(self.n_samples, self.step_s))

    def lagging(self, lags_s: FloatArray) -> ComplexArray:
        """Return 1 and what each lag makes of samples, shape (1 + n_lags, n_frequencies). [1]

        Parameters
        ----------
        lags_s : float array, shape (n_lags,)
            Time constants, ``0 <= lags_s``. [s]

        Notes
        -----
        Not the lag's own ``1 / (1 + j omega lag)``, which would ring where it is cut off at the highest
        frequency, but the filter of samples that is exact for what runs straight from each sample to the
        next: ``y[k] = decay y[k-1] + (1 - gain) x[k] + (gain - decay) x[k-1]`` with ``decay`` the lag's
        over one sample and ``gain`` the mean of its decay until then.
        """
        rows = np.ones((1 + len(lags_s), self.n_samples // 2 + 1), dtype=np.complex128)
        kept = np.maximum(lags_s, _NO_LAG * self.step_s)[:, None]
        decay, gain = np.exp(-self.step_s / kept), -np.expm1(-self.step_s / kept) * kept / self.step_s
        back = _sample_back(self)
        rows[1:] = (1.0 - gain + (gain - decay) * back) / (1.0 - decay * back)
        return rows

    def sampled(self, answer: Callable[[FloatArray], ComplexArray]) -> ComplexArray:
        """Return what an answer to frequencies makes of samples, shape (n_frequencies,). [1]

        Parameters
        ----------
        answer : callable
            From angular frequencies, ``0 <= omega``, to what becomes of them.

        Notes
        -----
        Samples that run straight from each to the next hold frequencies above the highest of the grid,
        as ``sinc**2`` of them; those next above it are added to what they look like in samples.
        """
        total: ComplexArray = np.zeros(self.n_samples // 2 + 1, np.complex128)
        whole = np.zeros(len(total))
        for alias in (-1, 0, 1):
            omega = self.omega + alias * 2.0 * math.pi / self.step_s
            share = np.sinc(omega * (self.step_s / (2.0 * math.pi))) ** 2
            shown = answer(np.abs(omega))
            total += share * (shown.conj() if alias < 0 else shown)
            whole += share
        return total / whole

    def ramp(self, rise_s: float) -> FloatArray:
        """Return the drivers' edge; one shorter than two samples would ring in the transform. [1]"""
        slope = self.step_s / max(rise_s, 2.0 * self.step_s)
        return np.clip(np.arange(self.n_samples) * slope, 0.0, 1.0)


@lru_cache(maxsize=8)
def _sample_back(grid: Grid) -> ComplexArray:
    """Return what being one sample late does, shape (n_frequencies,). [1]"""
    return np.asarray(np.exp(-1j * grid.step_s * grid.omega))


def mix(shares: FloatArray, rows: npt.NDArray[Number]) -> npt.NDArray[Number]:
    """Return ``shares @ rows`` for a few long rows, computed on this thread alone.

    Parameters
    ----------
    shares : float array, shape (n_rows,) or (n_mixtures, n_rows)
    rows : float or complex array, shape (n_rows, n_samples)

    Returns
    -------
    array of the rows' kind, shape (n_samples,) or (n_mixtures, n_samples)

    Notes
    -----
    A matrix library shares such products among threads that have to be woken: on a busy machine that
    takes longer than all the rest of a response.
    """
    mixed = np.zeros((*shares.shape[:-1], rows.shape[1]), rows.dtype)
    for share, row in zip(shares.T, rows, strict=True):
        mixed += share[..., None] * row
    return mixed


def all_skews(network: Network, skews_s: Sequence[float]) -> FloatArray:
    """Return the skew of every pin; those left out at the end are in time, shape (n_pins,). [s]"""
    skews = np.zeros(network.n_pins)
    skews[: len(skews_s)] = skews_s
    return skews


def read_only(array: FloatArray) -> FloatArray:
    """Return the array, locked."""
    array.setflags(write=False)
    return array
