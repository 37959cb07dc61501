"""Whole frames: every line with its real waveform, a few lines at a time.

A frame is one long run of pixels, so it is one convolution of drives with pulse shapes. As a
block-Toeplitz product it runs at the speed of matrix multiplication: a block of neighbouring
pixels and the history before them, times the pulse shapes shifted along, is the block's volts.
It is done in slices that stay in the processor's cache and are read there, so a frame of any
size takes a few megabytes.
"""

from abc import ABC, abstractmethod
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.lib.stride_tricks import as_strided
from numpy.typing import NDArray

from workbench.timing.mode import Mode
from workbench.waveform.kernel import Kernel
from workbench.waveform.product import multiply
from workbench.waveform.uneven import UnevenRuns

__all__ = ["FrameSlice", "frame_slices"]

Float32Array = NDArray[np.float32]
ByteArray = NDArray[np.uint8]
IntArray = NDArray[np.integer]
Kernels = tuple[Kernel, Kernel, Kernel]

_BLOCK = 8
"""Pixels of a block: less wastes the multiplier's width, more multiplies zeros. Measured. [1]"""
_SLICE_PIXELS = 24_000
"""Pixels of a slice: its volts, 8 samples a pixel, are some two megabytes. Measured. [1]"""


@dataclass(frozen=True, slots=True, eq=False)
class FrameSlice:
    """Some lines of a frame; the arrays are used again for the next slice, so read them at once."""

    first: int
    """The first of these lines, counted from 0 at the first line of the picture. [1]"""
    volts: Float32Array
    """Red, green, blue at the monitor, shape (3, n_lines, h.total * samples_per_pixel). [V]"""


def frame_slices(
    mode: Mode,
    codes: ByteArray,
    blanking: tuple[int, int, int],
    kernels: Kernels,
    *,
    blank_lines: int = 0,
    numbers: IntArray | None = None,
) -> Iterator[FrameSlice]:
    """Return the volts of the lines of a picture, slice after slice.

    Parameters
    ----------
    mode : Mode
        Counts of the line.
    codes : uint8 array, shape (3, n_rows, h.active)
        Codes of the rows to render: all of a picture, or some for a preview. [1]
    blanking : tuple of 3 int
        Code of each channel outside the picture. [1]
    kernels : tuple of 3 Kernel
        Red, green and blue, all with the same ``samples_per_pixel``.
    blank_lines : int
        How many lines of nothing but blanking follow the rows. [1]
    numbers : int array, shape (n_rows + blank_lines,), optional
        Which lines these are, from 0 at the first of the picture, where they do not follow on from there;
        it matters for uneven pixels only. [1]

    Yields
    ------
    FrameSlice
        Lines in order, each from the start of its front porch; the time before the first one is
        blanking. Memory is bounded: about 24 000 pixels at once, or one line.
    """
    rows, n_lines = codes.shape[1], codes.shape[1] + blank_lines
    per_slice = min(n_lines, max(1, _SLICE_PIXELS // mode.h.total))
    numbers = np.arange(n_lines) if numbers is None else numbers
    make = _EvenChannel if kernels[0].divider is None else _UnevenChannel
    channels = [
        make(kernel, int(code), mode.h.total * per_slice)
        for kernel, code in zip(kernels, blanking, strict=True)
    ]
    samples = kernels[0].samples_per_pixel
    out = np.empty((3, channels[0].padded, samples), np.float32)
    # One for all channels: three would push each other out of the cache.
    blocks = np.empty(max(channel.windows.size for channel in channels), np.float32)
    for first in range(0, n_lines, per_slice):
        lines = numbers[first : first + per_slice]
        pixels = len(lines) * mode.h.total
        for channel, row_codes, volts in zip(channels, codes, out, strict=True):
            channel.fill(row_codes[first : min(first + len(lines), rows)], mode, lines)
            channel.multiply(blocks, volts)
        yield FrameSlice(first, out[:, :pixels].reshape(3, len(lines), -1))


class _Channel(ABC):
    """One channel of a frame: its drive with what came before."""

    def __init__(self, kernel: Kernel, blanking: int, pixels: int) -> None:
        self.padded = -(-pixels // _BLOCK) * _BLOCK
        self._history = kernel.history
        self._table = np.ascontiguousarray(kernel.drive_by_code.T)
        self._blank = self._table[:, min(blanking, self._table.shape[1] - 1)]
        n_shapes = len(self._table)
        self._drive = np.empty((n_shapes, self._history + self.padded + kernel.ahead), np.float32)
        self._drive[:] = self._blank[:, None]
        self._filled = 0
        width = self._history + _BLOCK + kernel.ahead
        shape = (self.padded // _BLOCK, n_shapes, width)
        row, column = self._drive.strides
        self.windows = as_strided(self._drive, shape, (_BLOCK * column, row, column), writeable=False)
        """Drive that reaches into each block of pixels, shape (n_blocks, n_shapes, width). [V]"""

    def fill(self, codes: ByteArray, mode: Mode, numbers: IntArray) -> None:
        """Write the drive of the next lines; those without codes are blanking."""
        history, blank_pixels = self._history, mode.h.blanking
        self._drive[:, :history] = self._drive[:, self._filled : self._filled + history].copy()
        self._filled = len(numbers) * mode.h.total
        lines = self._drive[:, history : history + self._filled].reshape(-1, len(numbers), mode.h.total)
        lines[:, :, :blank_pixels] = self._blank[:, None, None]
        lines[:, len(codes) :, blank_pixels:] = self._blank[:, None, None]
        for drive, table in zip(lines, self._table, strict=True):
            drive[: len(codes), blank_pixels:] = table.take(codes, mode="clip")

    @abstractmethod
    def multiply(self, blocks: Float32Array, out: Float32Array) -> None:
        """Write the volts of the lines filled last, shape (padded, samples_per_pixel). [V]"""


class _EvenChannel(_Channel):
    """A channel whose blocks are all alike: one product with one Toeplitz matrix."""

    def __init__(self, kernel: Kernel, blanking: int, pixels: int) -> None:
        super().__init__(kernel, blanking, pixels)
        self._toeplitz = _toeplitz(kernel)

    def multiply(self, blocks: Float32Array, out: Float32Array) -> None:
        n_blocks, n_shapes, width = self.windows.shape
        rows = blocks[: self.windows.size].reshape(n_blocks, n_shapes * width)
        np.copyto(rows.reshape(self.windows.shape), self.windows)
        multiply(rows, self._toeplitz, out.reshape(n_blocks, -1))


class _UnevenChannel(_Channel):
    """A channel of uneven pixels: its blocks differ by where in a system clock they start."""

    def __init__(self, kernel: Kernel, blanking: int, pixels: int) -> None:
        super().__init__(kernel, blanking, pixels)
        assert kernel.divider is not None
        samples = kernel.samples_per_pixel
        self._runs = UnevenRuns(kernel.shapes, kernel.divider, samples=samples, pixels=_BLOCK)
        self._starts = np.arange(0, self.padded, _BLOCK)
        self._pixels: IntArray = self._starts

    def fill(self, codes: ByteArray, mode: Mode, numbers: IntArray) -> None:
        super().fill(codes, mode, numbers)
        line, pixel = np.divmod(self._starts, mode.h.total)
        self._pixels = numbers[np.minimum(line, len(numbers) - 1)] * mode.h.total + pixel

    def multiply(self, blocks: Float32Array, out: Float32Array) -> None:
        self._runs.multiply(self.windows, self._pixels, out.reshape(len(self.windows), -1))


def _toeplitz(kernel: Kernel) -> Float32Array:
    """Return the shapes shifted along a block, shape (n_shapes * (history + block), block * samples)."""
    n_shapes, n_after, samples = kernel.shapes.shape
    matrix = np.zeros((n_shapes, kernel.history + _BLOCK, _BLOCK, samples), np.float32)
    for pixel in range(_BLOCK):
        for after in range(n_after):
            matrix[:, kernel.history + pixel - after, pixel] = kernel.shapes[:, after]
    return matrix.reshape(n_shapes * (kernel.history + _BLOCK), _BLOCK * samples)
