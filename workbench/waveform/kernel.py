"""From the codes of a row of pixels to volts: one table and one matrix product.

A pin that is high for one pixel leaves a *pixel pulse* at the monitor: it rises, settles,
falls, and trails into the pixels after. The voltage is the sum of the pulses of all pins over
all pixels so far. The pins of a ladder share few pulse shapes (often a single one, scaled), so
the sum is taken over shapes instead of pins: each code *drives* each shape by some volts, and
a line is the drive of its pixels convolved with the shapes.
"""

from dataclasses import dataclass, replace
from fractions import Fraction

import numpy as np
from numpy.lib.stride_tricks import sliding_window_view
from numpy.typing import NDArray

from workbench.timing.clock.pixels import mean_early
from workbench.waveform.product import multiply
from workbench.waveform.uneven import UnevenRuns

__all__ = ["Kernel", "pixel_kernel"]

FloatArray = NDArray[np.float64]
Float32Array = NDArray[np.float32]
IntArray = NDArray[np.integer]

_SAME_SHAPE = 1e-6
"""Pulse shapes are one when they differ by less: a part of the largest, far under an 8-bit step. [1]"""


@dataclass(frozen=True, slots=True, eq=False)
class Kernel:
    """How one channel turns codes into volts at the monitor."""

    drive_by_code: Float32Array
    """Volts with which each code drives each shape, shape (n_codes, n_shapes). [V]"""
    shapes: Float32Array
    """Response to one pixel, shape (n_shapes, n_pixels_after, samples_per_pixel * finer). [1]"""
    divider: Fraction | None = None
    """System clocks a pixel, where a fractional divider makes pixels uneven. [1]"""
    finer: int = 1
    """How many times finer than the volts the shapes are sampled; more than 1 for uneven pixels only, whose
    edges lie anywhere. [1]"""

    @property
    def history(self) -> int:
        """Return how many pixels before a pixel still reach into it. [1]"""
        return int(self.shapes.shape[1]) - 1

    @property
    def ahead(self) -> int:
        """Return how many pixels after a pixel reach into it: an uneven one may start early. [1]"""
        return 0 if self.divider is None else 1

    def early(self, h_total: int, pixel: int) -> float:
        """Return how early a pixel of the line starts, on average over many lines; 0 where even. [pixels]"""
        return 0.0 if self.divider is None else mean_early(self.divider, h_total, pixel)

    @property
    def samples_per_pixel(self) -> int:
        """Return the number of samples of one pixel, volts and not shapes. [1]"""
        return int(self.shapes.shape[2]) // self.finer

    @property
    def settled_volts(self) -> Float32Array:
        """Return the level each code settles at, shape (n_codes,). [V]"""
        settled: Float32Array = self.drive_by_code @ self.shapes[:, :, 0].sum(axis=1)
        return settled

    def thinned(self, samples: int) -> "Kernel":
        """Return this kernel with fewer samples a pixel: those at the same instants, so nothing is lost.

        Parameters
        ----------
        samples : int
            Samples a pixel; a part of the present number without remainder. [1]
        """
        part = self.samples_per_pixel // samples
        if self.divider is not None:
            return replace(self, finer=self.finer * part)
        return replace(self, shapes=np.ascontiguousarray(self.shapes[:, :, ::part]))

    def slowed(self, rise_s: float, pixel_s: float) -> "Kernel":
        """Return this kernel behind one more pole, such as a tube's amplifier.

        Parameters
        ----------
        rise_s : float
            Rise time of the pole alone, 10 to 90 %, ``0 < rise_s``. [s]
        pixel_s : float
            Length of a pixel. [s]

        Notes
        -----
        Exact for pulses that are straight between samples.
        """
        n_shapes, n_after, samples = self.shapes.shape
        tau = rise_s / np.log(9.0) / (pixel_s / samples)
        decay = np.exp(-1.0 / tau)
        mean = tau * (1.0 - decay)
        n_more = int(np.ceil(12.0 * tau / samples)) + 1
        after = decay ** np.arange(n_more * samples)
        impulse = np.concatenate([[1.0 - mean], (mean - decay + decay * (1.0 - mean)) * after])
        length = (n_after + n_more) * samples
        shapes = [np.convolve(shape.ravel(), impulse)[:length] for shape in self.shapes]
        return replace(self, shapes=np.reshape(shapes, (n_shapes, -1, samples)).astype(np.float32))

    def volts(self, codes: IntArray, out: Float32Array, first: int = 0) -> None:
        """Write the voltage of a run of pixels.

        Parameters
        ----------
        codes : int array, shape (history + n_pixels + ahead,)
            Codes of the pixels, oldest first; the first ``history`` only trail into the others. [1]
        out : float32 array, shape (n_pixels, samples_per_pixel)
            Where the voltage at the monitor is written, even samples where pixels are uneven. [V]
        first : int
            Pixels that went before the first one written since the divider of uneven ones started. [1]
        """
        n_shapes, n_after, samples = self.shapes.shape
        # A network that cannot be solved has one code only; whatever it is told, it shows that one.
        drive = self.drive_by_code.take(codes, axis=0, mode="clip")
        if self.divider is not None:
            runs = UnevenRuns(self.shapes, self.divider, samples=self.samples_per_pixel, pixels=1)
            runs.multiply(sliding_window_view(drive, runs.reach, axis=0), first + np.arange(len(out)), out)
            return
        windows = sliding_window_view(drive, n_after, axis=0)
        newest_last = self.shapes[:, ::-1].reshape(n_shapes * n_after, samples)
        multiply(windows.reshape(len(out), n_shapes * n_after), newest_last, out)


def pixel_kernel(volts_by_code: FloatArray, states: FloatArray, pulse_volts: FloatArray) -> Kernel:
    """Return the kernel of one channel.

    Parameters
    ----------
    volts_by_code : float array, shape (n_codes,)
        Settled level of every code, loaded, exact. [V]
    states : float array, shape (n_codes, n_pins)
        What each pin is for every code, 0 or 1. [1]
    pulse_volts : float array, shape (n_pins, n_pixels_after, samples_per_pixel)
        Voltage at the monitor after each pin alone was high for one pixel. [V]

    Returns
    -------
    Kernel
        Its settled levels are ``volts_by_code``, whatever the pulses add up to.

    Notes
    -----
    The singular value decomposition of the pulses finds the shapes they share. Pulses add up
    only where the driver is linear; with unequal on-resistances, or zeros that let go of their
    pins, the levels of the codes do not. What is missing to the exact level goes with the mean
    shape of all pins: levels stay exact, and only the course of an edge is an approximation.
    """
    n_pins, n_after, samples = pulse_volts.shape
    pulses = pulse_volts.copy()
    settled = pulses.sum(axis=1)
    weights = settled.mean(axis=1)
    # A pulse is cut off somewhere: put what was cut into its last pixel, so that a code held for
    # long is flat.
    pulses[:, -1] += weights[:, None] - settled
    total = float(weights.sum())
    if abs(total) <= _SAME_SHAPE * np.abs(volts_by_code).max(initial=1e-3):
        return _staircase(volts_by_code, n_after, samples)
    left, strength, shapes = np.linalg.svd(pulses.reshape(n_pins, -1), full_matrices=False)
    kept = strength > _SAME_SHAPE * strength[0]
    drive_by_pin = (left * strength)[:, kept]
    missing = volts_by_code - states @ weights
    drive = states @ drive_by_pin + np.outer(missing, drive_by_pin.sum(axis=0) / total)
    return Kernel(drive.astype(np.float32), shapes[kept].reshape(-1, n_after, samples).astype(np.float32))


def _staircase(volts_by_code: FloatArray, n_after: int, samples: int) -> Kernel:
    """Return the kernel of levels that change at once: of a network whose pins do nothing."""
    shape = np.zeros((1, n_after, samples), np.float32)
    shape[:, 0] = 1.0
    return Kernel(volts_by_code[:, None].astype(np.float32), shape)
