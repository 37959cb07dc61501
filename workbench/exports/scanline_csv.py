"""The scanline as a table: what a scope at the monitor's input would write down."""

import numpy as np

from workbench.errors import TimingError
from workbench.pipeline.result import Result
from workbench.timing.figures import simulable
from workbench.waveform.scanline import TRACES, Scanline

__all__ = ["scanline_csv", "shown_scanline"]


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
    # As text of 32-bit floats: the shortest figures that read back as the same sample.
    columns = [row.tolist() for row in scanline.volts.astype(np.str_)]
    rows = map(",".join, zip(times, *columns, strict=True))
    return "\n".join([header, *rows, ""]).encode()


def shown_scanline(result: Result) -> Scanline:
    """Return the scanline of a result, or say why it has none."""
    if result.scanline is None:
        mode = result.project.mode
        raise TimingError(simulable(mode) or f"{mode.name} has no scanline to export.")
    return result.scanline
