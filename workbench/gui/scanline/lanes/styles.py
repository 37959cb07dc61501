"""How the traces look: colours, dashes, and the fan that keeps equal levels apart."""

from dataclasses import dataclass, replace

from workbench.gui.bench import Bench
from workbench.gui.scanline.traces import TraceStyle
from workbench.gui.widgets import dash_pattern
from workbench.gui.widgets.dashes import V_SYNC_DASH
from workbench.project.document import Channel

__all__ = ["Look", "drawing_order", "drops", "ghost_styles", "sync_styles", "trace_styles"]

FAN = 4
"""How far each further trace of the fan lies below. [design px]"""


@dataclass(frozen=True, slots=True)
class Look:
    """What a person chose about the traces."""

    fanned: bool = True
    ideal: bool = True
    dashed: bool = True


def drawing_order(chosen: Channel) -> tuple[Channel, ...]:
    """Return the channels from the lowest to the one on top, which is the chosen one."""
    return (*(channel for channel in reversed(Channel) if channel is not chosen), chosen)


def drops(chosen: Channel, *, fanned: bool, pitch: float) -> dict[Channel, float]:
    """Return how far below its true place each channel is drawn, the chosen one not at all. [px]"""
    others = [channel for channel in Channel if channel is not chosen]
    fan = {channel: pitch * (i + 1) if fanned else 0.0 for i, channel in enumerate(others)}
    return {**fan, chosen: 0.0}


def trace_styles(bench: Bench, chosen: Channel, look: Look) -> tuple[TraceStyle, ...]:
    """Return the styles of the colour traces in drawing order."""
    below = drops(chosen, fanned=look.fanned, pitch=bench.px(FAN))
    return tuple(
        TraceStyle(
            bench.theme.channel(channel),
            bench.theme.trace_px,
            dash_pattern(channel) if look.dashed else (),
            drop=below[channel],
        )
        for channel in drawing_order(chosen)
    )


def ghost_styles(bench: Bench, chosen: Channel, look: Look, *, frame: bool) -> tuple[TraceStyle, ...]:
    """Return the styles of the thin traces beneath: the ideal of a line, the lowest of a frame."""
    if not frame:
        style = TraceStyle(bench.theme.color("ideal"), max(1.0, bench.theme.trace_px / 3), band=0.0)
        return (style,) * len(Channel)
    full = trace_styles(bench, chosen, look)
    return tuple(replace(style, width=style.width * 0.6, band=0.0) for style in full)


def sync_styles(bench: Bench, look: Look, *, frame: bool) -> tuple[TraceStyle, ...]:
    """Return the styles of H and V sync; the many H pulses of a frame are a faint band."""
    theme = bench.theme
    width = max(1.8, theme.trace_px * 0.85)
    return (
        TraceStyle(theme.color("h_sync", 0.35 if frame else 1.0), width),
        TraceStyle(theme.color("v_sync"), width, V_SYNC_DASH if look.dashed else ()),
    )
