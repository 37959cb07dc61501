"""The picture of a project as it is sent, and as a monitor shows it.

Heavier than the rest of the pipeline, so it is asked for on its own: small for a preview that
follows every edit, full size away from the window's thread.
"""

from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from workbench.pipeline.result import Result
from workbench.pipeline.run import sync_drive
from workbench.progress import SILENT, Progress
from workbench.project.document import Channel
from workbench.waveform.adjustment import from_table
from workbench.waveform.kernel import Kernel, pixel_kernel
from workbench.waveform.monitor import Monitor, Screen
from workbench.waveform.sampling import Adjustment
from workbench.waveform.seen import SeenPicture, seen_picture, seen_rows, sent_picture
from workbench.waveform.slips import NO_SLIPS, slipped_codes
from workbench.waveform.verdict import Verdict, judge

__all__ = ["FRAME_SAMPLES", "Look", "as_sent", "frame_codes", "frame_kernels", "glance", "look"]

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


def look(
    result: Result, monitor: Monitor | None = None, *, every: int = 1, progress: Progress = SILENT
) -> Look:
    """Return what a monitor shows of a solved project.

    Parameters
    ----------
    result : Result
        The project and what follows from it.
    monitor : Monitor, optional
        What looks; a panel that adjusts itself if left out. Where it assumes no mode, it takes the
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
        return Look(verdict, sent, None)
    seen = seen_picture(
        project.mode, codes, blanking, frame_kernels(result), monitor, every=every, progress=progress
    )
    return Look(verdict, sent, seen)


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
    codes, blanking = _told(result, result.picture.rows(np.arange(0, mode.v.active, every)))
    sent = _sent(result, codes[:, :, ::every])
    if not verdict.standing.has_picture:
        return Look(verdict, sent, None)
    seen = seen_rows(
        mode,
        lambda rows: _told(result, result.picture.rows(rows))[0],
        blanking,
        frame_kernels(result),
        monitor,
        adjustment if adjustment is not None and monitor.auto_adjust else from_table(mode, monitor),
        every=every,
    )
    return Look(verdict, sent, seen)


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
    return _told(result, result.picture.frame())


def _told(result: Result, codes: ByteArray) -> tuple[ByteArray, tuple[int, int, int]]:
    """Return what the pins do when they are told the codes of some rows, and in blanking. [1]"""
    project, slips, mode = result.project, result.slips, result.project.mode
    if slips == NO_SLIPS:
        return codes, project.picture.blanking
    bits = result.picture.bits
    idle = np.array(project.picture.blanking, np.uint8).reshape(3, 1, 1)
    told = np.concatenate([np.broadcast_to(idle, (3, codes.shape[1], slips.late_pixels)), codes], axis=2)
    done = slipped_codes(replace(slips, late_pixels=0), told, bits, slips.late_pixels)
    r, g, b = slipped_codes(replace(slips, late_pixels=0), idle[:, :, 0], bits, 1)[:, 0].tolist()
    return done[:, :, : mode.h.active].astype(np.uint8), (r, g, b)


def frame_kernels(result: Result) -> tuple[Kernel, Kernel, Kernel]:
    """Return the kernels of the three channels, with the samples of a whole frame."""
    red, green, blue = (
        pixel_kernel(solved.levels.volts_by_code, solved.levels.states, solved.pulse.volts)
        for solved in (result.channels[c] for c in Channel)
    )
    return red.thinned(FRAME_SAMPLES), green.thinned(FRAME_SAMPLES), blue.thinned(FRAME_SAMPLES)
