"""The whole frame, line by line: how low and how high each colour goes, and both syncs.

A frame has some half a million pixels; what its picture needs is two levels a line. So the codes
of the card are counted once, a few rows at a time, and the levels of an edited resistor are read
off those counts.
"""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from workbench.gui.scanline.content.shown import MILLISECONDS, Shown
from workbench.picture.source import PictureCodes
from workbench.pipeline.screen import LineSeen
from workbench.timing.mode import Mode, Polarity
from workbench.waveform.eye import GAMMA, light_from_volts, srgb_from_volts
from workbench.waveform.scanline import FULL_SCALE_VOLTS

__all__ = ["SAMPLES_PER_LINE", "CodeCounts", "line_extremes", "shown_frame"]

Float32Array = NDArray[np.float32]
FloatArray = NDArray[np.float64]
IntArray = NDArray[np.int32]
Bits = tuple[int, int, int]

SAMPLES_PER_LINE = 32
"""Fine enough that an H sync pulse of a twentieth of a line is seen. [1]"""


class CodeCounts:
    """How often each code stands in each row of the picture; filled a few rows at a time."""

    def __init__(self, picture: PictureCodes) -> None:
        shown = picture.picture
        # Codes of an image follow the levels too; those of a card follow from what it is.
        image = (id(picture), picture.settled) if shown.image is not None else None
        self.key = (picture.width, picture.height, picture.bits, shown, image)
        self._picture, self._height = picture, picture.height
        self.blanking = shown.blanking
        """Code of each channel outside the picture. [1]"""
        self.counts = tuple(np.zeros((self._height, 1 << n), np.int32) for n in picture.bits)
        self.rows_done = 0

    @property
    def complete(self) -> bool:
        """Return whether every row is counted."""
        return self.rows_done == self._height

    def count_more(self, rows: int) -> None:
        """Count the next rows."""
        stop = min(self.rows_done + rows, self._height)
        for row in range(self.rows_done, stop):
            codes = self._picture.row(row)
            for counts, line in zip(self.counts, codes, strict=True):
                counts[row] = np.bincount(line, minlength=counts.shape[1])
        self.rows_done = stop


def line_extremes(counts: IntArray, volts_by_code: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Return the lowest and highest level of every row, shape (n_rows,) each. [V]

    Parameters
    ----------
    counts : int array, shape (n_rows, n_codes)
        How often each code stands in each row. [1]
    volts_by_code : float array, shape (n_codes,)
        Level of every code. The codes need not rise in order. [V]
    """
    used = counts > 0
    lowest = np.where(used, volts_by_code, np.inf).min(axis=1)
    highest = np.where(used, volts_by_code, -np.inf).max(axis=1)
    empty = ~used.any(axis=1)
    lowest[empty] = highest[empty] = 0.0
    return lowest, highest


def shown_frame(
    mode: Mode,
    counts: CodeCounts,
    levels: Sequence[FloatArray],
    sync_high_volts: tuple[float, float],
    seen: LineSeen | None = None,
) -> Shown:
    """Return the traces of a whole frame, from the start of the vertical front porch.

    Parameters
    ----------
    mode : Mode
        Counts, clock and polarities.
    counts : CodeCounts
        Rows not yet counted are drawn at 0 V.
    levels : 3 float arrays, shape (n_codes,)
        Level of every code of red, green, blue. [V]
    sync_high_volts : tuple of 2 float
        Level of a high H and V sync line. [V]
    seen : LineSeen, optional
        What the monitor takes for black and white; the strip is as sent if left out.
    """
    blanking = counts.blanking
    black, full = ((0.0,) * 3, FULL_SCALE_VOLTS) if seen is None else (seen.black_volts, seen.full_volts)
    low, high, light = [], [], []
    for rows, volts, idle, taken in zip(counts.counts, levels, blanking, black, strict=True):
        lowest, highest = line_extremes(rows, volts)
        rest = volts[min(idle, len(volts) - 1)]
        low.append(_from_porch(mode, np.minimum(lowest, rest), rest))
        high.append(_from_porch(mode, np.maximum(highest, rest), rest))
        lit = light_from_volts((volts - taken) * FULL_SCALE_VOLTS / full)
        light.append(_from_porch(mode, rows @ lit / mode.h.active, 0.0))
    return Shown(
        axis=mode.v,
        count_s=mode.line_s,
        unit=MILLISECONDS,
        step_s=mode.line_s / SAMPLES_PER_LINE,
        colour_volts=_spread(high),
        lowest_volts=_spread(low),
        ideal_volts=None,
        sync_volts=_syncs(mode, sync_high_volts),
        sync_high_volts=sync_high_volts,
        strip=np.ascontiguousarray(_paint(np.array(light)).T),
        unseen=mode.v.blanking,
        dark=seen is None,
    )


def _from_porch(mode: Mode, by_row: FloatArray, blanking: float) -> FloatArray:
    """Return a value a line, from the vertical front porch on, shape (v.total,)."""
    return np.concatenate((np.full(mode.v.blanking, blanking), by_row))


def _spread(lines: list[FloatArray]) -> Float32Array:
    return np.repeat(np.array(lines, np.float32), SAMPLES_PER_LINE, axis=1)


def _syncs(mode: Mode, high_volts: tuple[float, float]) -> Float32Array:
    """Return H and V sync over the frame; V sync changes with the leading edge of H sync."""
    total = mode.v.total * SAMPLES_PER_LINE
    within = (np.arange(total) % SAMPLES_PER_LINE + 0.5) / SAMPLES_PER_LINE * mode.h.total
    leading, trailing, _, _ = mode.h.edges
    h = (within >= leading) & (within < max(trailing, leading + mode.h.total / SAMPLES_PER_LINE))
    first, after, _, _ = mode.v.edges
    shift = round(leading / mode.h.total * SAMPLES_PER_LINE)
    place = np.arange(total) - shift
    v = (place >= first * SAMPLES_PER_LINE) & (place < after * SAMPLES_PER_LINE)
    rows = []
    for on, axis, high in zip((h, v), (mode.h, mode.v), high_volts, strict=True):
        raised = on if axis.polarity is Polarity.POSITIVE else ~on
        rows.append(raised * high)
    return np.array(rows, np.float32)


def _paint(light: FloatArray) -> NDArray[np.uint8]:
    """Return sRGB bytes of the mean light of each line, same shape."""
    return srgb_from_volts(np.clip(light, 0.0, 1.0) ** (1 / GAMMA) * FULL_SCALE_VOLTS)
