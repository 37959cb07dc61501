"""Dash patterns of the traces, so that colour never speaks alone."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QPen

from workbench.gui.bench import Bench
from workbench.project.document import Channel

__all__ = ["V_SYNC_DASH", "dash_pattern", "trace_pen"]

V_SYNC_DASH = (4.0, 2.2)
"""Dashes of the V sync trace, in pen widths."""

DASHES: dict[Channel, tuple[float, ...]] = {
    Channel.RED: (),
    Channel.GREEN: (4.0, 2.0),
    Channel.BLUE: (5.0, 1.6, 1.0, 1.6),
}


def dash_pattern(channel: Channel) -> tuple[float, ...]:
    """Return the dashes of a channel's trace in pen widths; empty is a solid line."""
    return DASHES[channel]


def trace_pen(bench: Bench, channel: Channel) -> QPen:
    """Return the pen that draws a short sample of a channel's trace."""
    pen = QPen(bench.theme.channel(channel), bench.theme.trace_px)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    if pattern := dash_pattern(channel):
        pen.setDashPattern(list(pattern))
    return pen
