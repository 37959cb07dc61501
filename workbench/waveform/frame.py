"""Whole frames: every line with its real waveform, a few lines at a time.

A frame is one long run of pixels, so it is one convolution of drives with pulse shapes. As a
block-Toeplitz product it runs at the speed of matrix multiplication: a block of neighbouring
pixels and the history before them, times the pulse shapes shifted along, is the block's volts.
It is done in slices that stay in the processor's cache and are read there, so a frame of any
size takes a few megabytes.
"""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.lib.stride_tricks import as_strided
from numpy.typing import NDArray

from workbench.timing.mode import Mode
from workbench.waveform.kernel import Kernel, multiply

__all__ = ["FrameSlice", "frame_slices"]

Float32Array = NDArray[np.float32]
ByteArray = NDArray[np.uint8]
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
    mode: Mode, codes: ByteArray, blanking: tuple[int, int, int], kernels: Kernels, *, blank_lines: int = 0
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

    Yields
    ------
    FrameSlice
        Lines in order, each from the start of its front porch; the time before the first one is
        blanking. Memory is bounded: about 24 000 pixels at once, or one line.
    """
    rows, n_lines = codes.shape[1], codes.shape[1] + blank_lines
    per_slice = min(n_lines, max(1, _SLICE_PIXELS // mode.h.total))
    make = _Channel if kernels[0].clocks is None else _UnevenChannel
    channels = [
        make(kernel, int(code), mode.h.total * per_slice)
        for kernel, code in zip(kernels, blanking, strict=True)
    ]
    samples = kernels[0].samples_per_pixel
    out = np.empty((3, channels[0].padded, samples), np.float32)
    # One for all channels: three would push each other out of the cache.
    blocks = np.empty(max(channel.windows.size for channel in channels), np.float32)
    for first in range(0, n_lines, per_slice):
        lines = min(per_slice, n_lines - first)
        pixels = lines * mode.h.total
        for channel, row_codes, volts in zip(channels, codes, out, strict=True):
            channel.fill(row_codes[first : min(first + lines, rows)], mode.h.blanking, mode.h.total, lines)
            channel.multiply(blocks, volts)
        yield FrameSlice(first, out[:, :pixels].reshape(3, lines, -1))


class _Channel:
    """One channel of a frame: its drive with what came before, and its Toeplitz matrix."""

    def __init__(self, kernel: Kernel, blanking: int, pixels: int) -> None:
        self.padded = -(-pixels // _BLOCK) * _BLOCK
        self._history = kernel.history
        self._table = np.ascontiguousarray(kernel.drive_by_code.T)
        self._blank = self._table[:, min(blanking, self._table.shape[1] - 1)]
        self._toeplitz = _toeplitz(kernel)
        n_shapes = len(self._table)
        self._drive = np.empty((n_shapes, self._history + self.padded), np.float32)
        self._drive[:] = self._blank[:, None]
        self._filled = 0
        width = self._history + _BLOCK
        shape = (self.padded // _BLOCK, n_shapes, width)
        row, column = self._drive.strides
        self.windows = as_strided(self._drive, shape, (_BLOCK * column, row, column), writeable=False)
        """Drive that reaches into each block of pixels, shape (n_blocks, n_shapes, width). [V]"""

    def fill(self, codes: ByteArray, blank_pixels: int, line_pixels: int, n_lines: int) -> None:
        """Write the drive of the next lines; those without codes are blanking."""
        history = self._history
        self._drive[:, :history] = self._drive[:, self._filled : self._filled + history].copy()
        self._filled = n_lines * line_pixels
        lines = self._drive[:, history : history + self._filled].reshape(-1, n_lines, line_pixels)
        lines[:, :, :blank_pixels] = self._blank[:, None, None]
        lines[:, len(codes) :, blank_pixels:] = self._blank[:, None, None]
        for drive, table in zip(lines, self._table, strict=True):
            drive[: len(codes), blank_pixels:] = table.take(codes, mode="clip")

    def multiply(self, blocks: Float32Array, out: Float32Array) -> None:
        """Write the volts of the lines filled last, shape (padded, samples_per_pixel). [V]"""
        n_blocks, n_shapes, width = self.windows.shape
        rows = blocks[: self.windows.size].reshape(n_blocks, n_shapes * width)
        np.copyto(rows.reshape(self.windows.shape), self.windows)
        multiply(rows, self._toeplitz, out.reshape(n_blocks, -1))


class _UnevenChannel:
    """One channel of a frame of uneven pixels: as :class:`_Channel`, by way of the clock's steps."""

    def __init__(self, kernel: Kernel, blanking: int, pixels: int) -> None:
        self.padded = pixels
        self.windows = np.empty(0, np.float32)
        self._kernel, self._blanking = kernel, blanking
        self._codes = np.full(kernel.history + pixels, blanking, np.intp)
        self._first = self._filled = 0

    def fill(self, codes: ByteArray, blank_pixels: int, line_pixels: int, n_lines: int) -> None:
        """Keep the codes of the next lines; those without codes are blanking."""
        history = self._kernel.history
        self._first += self._filled
        self._codes[:history] = self._codes[self._filled : self._filled + history].copy()
        self._filled = n_lines * line_pixels
        lines = self._codes[history : history + self._filled].reshape(n_lines, line_pixels)
        lines[:] = self._blanking
        lines[: len(codes), blank_pixels:] = codes

    def multiply(self, _blocks: Float32Array, out: Float32Array) -> None:
        """Write the volts of the lines filled last, shape (padded, samples_per_pixel). [V]"""
        end = self._kernel.history + self._filled
        # The next line starts with blanking.
        codes = np.append(self._codes[:end], self._blanking)
        self._kernel.volts(codes, out[: self._filled], self._first)


def _toeplitz(kernel: Kernel) -> Float32Array:
    """Return the shapes shifted along a block, shape (n_shapes * (history + block), block * samples)."""
    n_shapes, n_after, samples = kernel.shapes.shape
    matrix = np.zeros((n_shapes, kernel.history + _BLOCK, _BLOCK, samples), np.float32)
    for pixel in range(_BLOCK):
        for after in range(n_after):
            matrix[:, kernel.history + pixel - after, pixel] = kernel.shapes[:, after]
    return matrix.reshape(n_shapes * (kernel.history + _BLOCK), _BLOCK * samples)
