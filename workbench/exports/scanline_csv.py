"""The scanline as a table: what a scope at the monitor's input would write down."""

import numpy as np
from numpy.typing import NDArray

from workbench.errors import FileError, TimingError
from workbench.pipeline.result import Result
from workbench.timing.figures import simulable
from workbench.waveform.scanline import TRACES, Scanline

__all__ = ["scanline_csv", "shown_scanline"]

_SMALL = 1e-4
"""Below this a figure is written with an exponent. [V]"""


def scanline_csv(result: Result) -> bytes:
    """Return the project's scanline at the monitor, one row a sample, UTF-8.

    Columns ``time_s,red_v,green_v,blue_v,hsync_v,vsync_v``; time counts from the start of the front
    porch, voltages are the samples that are plotted, with every digit that tells them apart.

    Raises
    ------
    TimingError
        If the mode cannot be simulated.
    """
    scanline = shown_scanline(result)
    header = ",".join(["time_s", *(f"{trace}_v" for trace in TRACES)])
    times = [repr(time_s) for time_s in scanline.times_s.tolist()]
    columns = [_figures(row) for row in scanline.volts]
    rows = map(",".join, zip(times, *columns, strict=True))
    return "\n".join([header, *rows, ""]).encode()


def _figures(volts: NDArray[np.float32]) -> list[str]:
    """Return the shortest figures that read back as the same samples."""
    distinct, where = np.unique(volts, return_inverse=True)
    # Not through str(): how that prints a number is a setting any library may change.
    figures = [
        np.format_float_scientific(value) if 0.0 < abs(value) < _SMALL else np.format_float_positional(value)
        for value in distinct
    ]
    return [figures[index] for index in where]


def shown_scanline(result: Result) -> Scanline:
    """Return the scanline of a result, or say why it has none, or none of the project's image."""
    if result.picture_problem is not None:
        raise FileError(result.picture_problem)
    if result.scanline is None:
        mode = result.project.mode
        raise TimingError(simulable(mode) or f"{mode.name} has no scanline to export.")
    return result.scanline
