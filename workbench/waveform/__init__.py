"""Volts over time: the scanline at the monitor, whole frames, and what a monitor and the eye make of them.

Takes levels and pixel pulses from ``circuit``, counts from ``timing`` and codes from
``picture``; knows no project. Start with :mod:`scanline`. :mod:`kernel` holds the one idea
that makes it quick, :mod:`frame` does every line, :mod:`seen` shows a frame as a monitor does
(:mod:`monitor`, :mod:`sampling`, :mod:`adjustment`, :mod:`verdict`), :mod:`working` explains
one pixel, :mod:`slips` breaks what a board is told, :mod:`eye` turns volts into light.
"""

from workbench.waveform.eye import lightness, srgb_from_volts, strip_colours
from workbench.waveform.frame import FrameSlice, frame_slices
from workbench.waveform.kernel import Kernel, pixel_kernel
from workbench.waveform.monitor import Monitor, Screen
from workbench.waveform.reading import Between, Reading, between, reading_at
from workbench.waveform.scanline import Scanline, line_codes, render_scanline, samples_per_pixel
from workbench.waveform.seen import SeenPicture, seen_picture, sent_picture
from workbench.waveform.slips import NO_SLIPS, Slips
from workbench.waveform.sync import SyncDrive, sync_high_volts
from workbench.waveform.verdict import Standing, Verdict, judge
from workbench.waveform.working import PixelWorking, pixel_working, working_text

__all__ = [
    "NO_SLIPS",
    "Between",
    "FrameSlice",
    "Kernel",
    "Monitor",
    "PixelWorking",
    "Reading",
    "Scanline",
    "Screen",
    "SeenPicture",
    "Slips",
    "Standing",
    "SyncDrive",
    "Verdict",
    "between",
    "frame_slices",
    "judge",
    "lightness",
    "line_codes",
    "pixel_kernel",
    "pixel_working",
    "reading_at",
    "render_scanline",
    "samples_per_pixel",
    "seen_picture",
    "sent_picture",
    "srgb_from_volts",
    "strip_colours",
    "sync_high_volts",
    "working_text",
]
