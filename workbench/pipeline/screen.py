"""The picture of a project as it is sent, and as a monitor shows it.

Heavier than the rest of the pipeline, so it is asked for on its own: small for a preview that
follows every edit, full size away from the window's thread.
"""

from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from workbench.circuit.response import PixelPulse
from workbench.circuit.solution import Levels
from workbench.picture.source import PictureCodes
from workbench.pipeline.memory import Memory
from workbench.pipeline.result import Result
from workbench.pipeline.run import board_kernel, sync_drive
from workbench.progress import SILENT, Progress
from workbench.project.document import Channel
from workbench.timing.mode import Mode
from workbench.waveform.adjustment import from_table
from workbench.waveform.doubt import hatched
from workbench.waveform.kernel import Kernel
from workbench.waveform.monitor import Monitor, Screen
from workbench.waveform.pixel import PixelSeen, seen_pixel
from workbench.waveform.sampling import Adjustment, black_samples
from workbench.waveform.seen import SeenPicture, adjustment_of, seen_picture, seen_rows, sent_picture
from workbench.waveform.slips import NO_SLIPS, Slips, slipped_codes
from workbench.waveform.verdict import Standing, Verdict, judge

__all__ = [
    "FRAME_SAMPLES",
    "LineSeen",
    "Look",
    "as_sent",
    "frame_codes",
    "frame_kernels",
    "glance",
    "line_seen",
    "look",
    "pixel_seen",
    "verdict_on",
]

FRAME_SAMPLES = 8
"""Samples a pixel of a whole frame. [1]"""

ByteArray = NDArray[np.uint8]

_verdict = lru_cache(maxsize=8)(judge)


@dataclass(frozen=True, slots=True, eq=False)
class Look:
    """A monitor's look at a project's signal."""

    verdict: Verdict
    sent: ByteArray
    """The picture as sent, on a perfect display: sRGB bytes, shape (v.active, h.active, 3), less
    what a preview leaves out. [1]"""
    seen: SeenPicture | None
    """The picture on the screen; none where there is none that stands still."""
    size: tuple[int, int]
    """Columns and rows that the monitor shows, those of a preview too. [1]"""

    def shown(self, *, every: int = 1) -> ByteArray | None:
        """Return what is to be shown: a guess is hatched, so that it is not taken for more. [1]"""
        if self.seen is None or self.verdict.standing is not Standing.GUESSED:
            return None if self.seen is None else self.seen.rgb
        return hatched(self.seen.rgb, every=every)


@dataclass(frozen=True, slots=True)
class LineSeen:
    """What a monitor takes for black and for white on the line that is shown."""

    black_volts: tuple[float, float, float]
    """Red, green and blue. [V]"""
    full_volts: float
    """Voltage above black that is shown as white. [V]"""


def look(
    result: Result, monitor: Monitor | None = None, *, every: int = 1, progress: Progress = SILENT
) -> Look:
    """Return what a monitor shows of a solved project.

    Parameters
    ----------
    result : Result
        The project and what follows from it.
    monitor : Monitor, optional
        What looks; a panel set by its table if left out. Where it assumes no mode, it takes the
        signal for the row of the standards' tables that is nearest.
    every : int
        Look at each n-th column and row only, for a preview. [1]
    progress : Progress
        Told the rows done; may stop the work.
    """
    project = result.project
    verdict, monitor = _judged(result, monitor or Monitor())
    codes, blanking = frame_codes(result)
    sent = _sent(result, codes)
    if not verdict.standing.has_picture:
        return Look(verdict, sent, None, _size(project.mode, monitor))
    seen = seen_picture(
        project.mode, codes, blanking, frame_kernels(result), monitor, every=every, progress=progress
    )
    return Look(verdict, sent, seen, _size(project.mode, monitor))


def glance(result: Result, monitor: Monitor, *, every: int, adjustment: Adjustment | None = None) -> Look:
    """Return a preview of what a monitor shows, computed from no more than what is in it.

    Parameters
    ----------
    result, monitor
        As for :func:`look`.
    every : int
        Each n-th column and row is there, of the picture as sent too. [1]
    adjustment : Adjustment, optional
        How the monitor was set when it last looked at the whole picture; its table if left out.
    """
    mode = result.project.mode
    verdict, monitor = _judged(result, monitor)
    codes, blanking = _told(
        result.picture, result.slips, result.picture.rows(np.arange(0, mode.v.active, every))
    )
    sent = _sent(result, codes[:, :, ::every])
    if not verdict.standing.has_picture:
        return Look(verdict, sent, None, _size(mode, monitor))
    seen = seen_rows(
        mode,
        lambda rows: _told(result.picture, result.slips, result.picture.rows(rows))[0],
        blanking,
        frame_kernels(result),
        monitor,
        adjustment if adjustment is not None and monitor.auto_adjust else from_table(mode, monitor),
        every=every,
    )
    return Look(verdict, sent, seen, _size(mode, monitor))


def pixel_seen(result: Result, monitor: Monitor, pixel: int, line: int) -> PixelSeen:
    """Return what a monitor meets at a pixel of a line, by the model that makes its picture.

    Parameters
    ----------
    result, monitor
        As for :func:`look`; a picture that is not settled yet is looked at without adjustment.
    pixel : int
        Counted from the start of the front porch, ``0 <= pixel < h.total``. [1]
    line : int
        Counted from 0 at the first line of the picture, ``0 <= line < v.total``. [1]
    """
    mode = result.project.mode
    _, monitor = _judged(result, monitor)
    return seen_pixel(
        mode,
        lambda rows: _told(result.picture, result.slips, result.picture.rows(rows))[0],
        _told(result.picture, result.slips, result.picture.rows(np.array([0])))[1],
        frame_kernels(result),
        monitor,
        _adjustment(result, monitor),
        pixel=pixel,
        line=line,
    )


def line_seen(result: Result, monitor: Monitor) -> LineSeen | None:
    """Return what a monitor takes for black and white on the line shown; none where it shows nothing.

    Parameters
    ----------
    result, monitor
        As for :func:`look`.

    Notes
    -----
    While black is measured in blanking, every line has the same, and that of this line is read off its
    volts. Where the picture reaches into the window, the lines before are followed as for the picture.
    """
    mode, line = result.project.mode, result.scanline
    verdict, monitor = _judged(result, monitor)
    if line is None or not verdict.standing.has_picture:
        return None
    window = black_samples(mode, monitor, from_table(mode, monitor), line.samples_per_pixel)
    if window.stop <= mode.h.blanking * line.samples_per_pixel:
        black = line.volts[:3, window].mean(axis=1, dtype=np.float64)
    else:
        black = pixel_seen(result, monitor, 0, line.number - 1).black_volts
    red, green, blue = black.tolist()
    return LineSeen((red, green, blue), monitor.full_volts)


def _adjustment(result: Result, monitor: Monitor) -> Adjustment:
    """Return how a monitor is set for a result's picture."""
    mode = result.project.mode
    if not (monitor.auto_adjust and result.picture.settled):
        return from_table(mode, monitor)
    red, green, blue = ((each.levels, each.pulse) for each in (result.channels[c] for c in Channel))
    divider = result.project.pixel_divider
    return _found(mode, result.picture, result.slips, monitor, divider, red, green, blue)


def _find(
    mode: Mode,
    picture: PictureCodes,
    slips: Slips,
    monitor: Monitor,
    divider: float | None,
    *channels: tuple[Levels, PixelPulse],
) -> Adjustment:
    red, green, blue = (_kernel(*channel, divider) for channel in channels)
    codes, blanking = _told(picture, slips, picture.frame())
    return adjustment_of(mode, codes, blanking, (red, green, blue), monitor)


_found = Memory(_find, 2)


def _size(sent: Mode, monitor: Monitor) -> tuple[int, int]:
    shown = monitor.mode(sent)
    return shown.h.active, shown.v.active


def verdict_on(result: Result, monitor: Monitor) -> Verdict:
    """Return what a monitor makes of a result's signal."""
    return _judged(result, monitor)[0]


def _judged(result: Result, monitor: Monitor) -> tuple[Verdict, Monitor]:
    """Return the verdict on a signal, and the monitor with the mode it takes it for."""
    project = result.project
    verdict = _verdict(
        project.mode, sync_drive(project.driver, project.sync), monitor.screen, project.monitor
    )
    if monitor.assumed is None and monitor.screen is Screen.PANEL:
        monitor = replace(monitor, assumed=verdict.row)
    return verdict, monitor


def as_sent(result: Result) -> ByteArray:
    """Return the picture as sent, on a perfect display: sRGB bytes, shape (v.active, h.active, 3). [1]"""
    return _sent(result, frame_codes(result)[0])


def _sent(result: Result, codes: ByteArray) -> ByteArray:
    return sent_picture(codes, tuple(result.channels[c].levels.volts_by_code for c in Channel))


def frame_codes(result: Result) -> tuple[ByteArray, tuple[int, int, int]]:
    """Return what the pins show in the picture, shape (3, v.active, h.active), and in blanking. [1]"""
    return _told(result.picture, result.slips, result.picture.frame())


def _told(picture: PictureCodes, slips: Slips, codes: ByteArray) -> tuple[ByteArray, tuple[int, int, int]]:
    """Return what the pins do when they are told the codes of some rows, and in blanking. [1]"""
    blanking = picture.picture.blanking
    if slips == NO_SLIPS:
        return codes, blanking
    idle = np.array(blanking, np.uint8).reshape(3, 1, 1)
    told = np.concatenate([np.broadcast_to(idle, (3, codes.shape[1], slips.late_pixels)), codes], axis=2)
    done = slipped_codes(replace(slips, late_pixels=0), told, picture.bits, slips.late_pixels)
    r, g, b = slipped_codes(replace(slips, late_pixels=0), idle[:, :, 0], picture.bits, 1)[:, 0].tolist()
    return done[:, :, : picture.width].astype(np.uint8), (r, g, b)


def frame_kernels(result: Result) -> tuple[Kernel, Kernel, Kernel]:
    """Return the kernels of the three channels, with the samples of a whole frame."""
    red, green, blue = (
        _kernel(solved.levels, solved.pulse, result.project.pixel_divider)
        for solved in (result.channels[c] for c in Channel)
    )
    return red, green, blue


def _kernel(levels: Levels, pulse: PixelPulse, divider: float | None) -> Kernel:
    return board_kernel(levels, pulse, divider).thinned(FRAME_SAMPLES)
