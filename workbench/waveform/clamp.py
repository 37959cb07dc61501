"""The clamp on the back porch: what a monitor takes for black, line after line.

It charges the coupling capacitor once a line, towards what it finds in its window, by the share its
time constant allows. It starts at the level of blanking, as after a vertical blanking.
"""

import math

import numpy as np
from numpy.typing import NDArray

from workbench.timing.mode import Mode
from workbench.waveform.kernel import Kernel
from workbench.waveform.monitor import Monitor
from workbench.waveform.sampling import Adjustment

__all__ = ["Clamp", "blanking_volts", "clamp_share", "lines_remembered"]

Float32Array = NDArray[np.float32]

_FORGOTTEN = 1e-4
"""A line is forgotten once no more than this part of it is left: less than 0.1 mV of 0.7 V. [1]"""


class Clamp:
    """The charge of the coupling capacitors, from line to line."""

    def __init__(self, start_volts: Float32Array, share: float) -> None:
        self._volts = start_volts
        self._share = share

    def follow(self, found_volts: Float32Array) -> Float32Array:
        """Return what is taken for black in each line, shape (n_lines, 3) in and out. [V]"""
        black = np.empty_like(found_volts)
        for line, found in enumerate(found_volts):
            self._volts = self._volts + self._share * (found - self._volts)
            black[line] = self._volts
        return black


def blanking_volts(kernels: tuple[Kernel, Kernel, Kernel], blanking: tuple[int, int, int]) -> Float32Array:
    """Return the settled level of blanking, shape (3,). [V]"""
    volts = [k.settled_volts.take(code, mode="clip") for k, code in zip(kernels, blanking, strict=True)]
    return np.array(volts, np.float32)


def clamp_share(sent: Mode, monitor: Monitor, adjustment: Adjustment, every: int = 1) -> float:
    """Return the share of its error that the clamp mends from one row shown to the next. [1]"""
    window_s = monitor.clamp_pixels * sent.line_s / adjustment.total
    return 1.0 - math.exp(-every * window_s / (monitor.clamp_ohms * monitor.coupling_farads))


def lines_remembered(share: float) -> int:
    """Return how many lines back still move black, for a clamp of some share. [1]

    Examples
    --------
    >>> lines_remembered(0.5)
    14
    """
    return 1 if share >= 1.0 - _FORGOTTEN else math.ceil(math.log(_FORGOTTEN) / math.log1p(-share))
