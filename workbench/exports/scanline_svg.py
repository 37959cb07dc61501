"""The scanline as a drawing for paper: five lanes over one time axis.

Each trace has a lane of its own, so nothing covers anything and a print in black and white
says the same as one in colour: a trace is told by its name, its lane and its dashes.
"""

import itertools
from collections.abc import Iterator
from dataclasses import dataclass
from html import escape

import numpy as np
from numpy.typing import NDArray

from workbench.exports.scanline_csv import shown_scanline
from workbench.pipeline.result import Result
from workbench.timing.frame import line_region
from workbench.timing.mode import Region
from workbench.units import format_fixed
from workbench.waveform.scanline import Scanline

__all__ = ["scanline_svg"]

# Drawing units; a page of A4 lying takes 1120 x 760 of them at 96 to the inch.
_WIDTH, _LEFT, _RIGHT, _TOP = 1120.0, 76.0, 96.0, 132.0
_SPAN = _WIDTH - _LEFT - _RIGHT
_COLOUR_LANE, _SYNC_LANE, _GAP = 110.0, 44.0, 27.0
_COLUMNS_PER_UNIT = 2

_STYLE = """
text { font-family: "IBM Plex Sans", "DejaVu Sans", sans-serif; font-size: 13px; fill: #20252e }
.figure { font-family: "IBM Plex Mono", "DejaVu Sans Mono", monospace; font-size: 12px }
.title { font-size: 18px; font-weight: 600 }
.dim { fill: #5c6573 }
.grid { stroke: #cfcabf; stroke-width: 0.8 }
.edge { stroke: #857f72; stroke-width: 1 }
.porch { fill: #f3e6d8 }
.sync { fill: #e9e9ea }
.trace { fill: none; stroke-width: 1.6; stroke-linejoin: round }
.ideal { fill: none; stroke: #5c6573; stroke-width: 0.9; stroke-dasharray: 1 3 }
.name { font-weight: 600 }
""".strip()


@dataclass(frozen=True, slots=True)
class _Lane:
    """One trace: what it is called, how it is stroked, what its axis spans."""

    name: str
    stroke: str
    dashes: str
    top: float
    height: float
    top_volts: float
    tick_volts: float

    def y(self, volts: NDArray[np.floating]) -> NDArray[np.floating]:
        """Return the height of a voltage on the page."""
        return self.top + self.height * (1.0 - volts / self.top_volts)


def scanline_svg(result: Result) -> bytes:
    """Return the project's scanline at the monitor as an SVG drawing, UTF-8.

    Raises
    ------
    TimingError
        If the mode cannot be simulated.
    """
    scanline = shown_scanline(result)
    lanes = _lanes(scanline)
    bottom = lanes[-1].top + lanes[-1].height + 10.0
    height = bottom + 92.0
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{_WIDTH:g}" height="{height:g}" '
        f'viewBox="0 0 {_WIDTH:g} {height:g}" role="img">',
        f"<title>{escape(_title(result, scanline))}</title>",
        f"<style>{_STYLE}</style>",
        f'<rect width="{_WIDTH:g}" height="{height:g}" fill="#ffffff"/>',
        *_head(result, scanline),
        *_regions(scanline, bottom),
    ]
    for index, lane in enumerate(lanes):
        ideal = scanline.ideal_volts[index] if index < 3 else None
        parts += _lane(lane, scanline.volts[index], ideal)
    parts += _time_axis(scanline, bottom)
    return "\n".join([*parts, "</svg>", ""]).encode()


def _lanes(scanline: Scanline) -> list[_Lane]:
    """Return the five lanes from top to bottom; the colours share one scale, and so do the syncs."""
    colour_volts = max(0.8, float(np.ceil(scanline.volts[:3].max() * 10.0) / 10.0))
    colour_tick = 0.2 if colour_volts <= 1.0 else 1.0
    sync_volts = max(0.1, float(scanline.volts[3:].max()))
    inks = [("red", "#c02a2f", ""), ("green", "#19753f", "7 3"), ("blue", "#2457c5", "8 2.5 1.5 2.5")]
    syncs = [("H sync", "#4a4f57", ""), ("V sync", "#7a5ea8", "7 4")]
    lanes, top = [], _TOP
    for name, stroke, dashes in inks:
        lanes.append(_Lane(name, stroke, dashes, top, _COLOUR_LANE, colour_volts, colour_tick))
        top += _COLOUR_LANE + _GAP
    for name, stroke, dashes in syncs:
        lanes.append(_Lane(name, stroke, dashes, top, _SYNC_LANE, sync_volts, sync_volts))
        top += _SYNC_LANE + _GAP
    return lanes


def _title(result: Result, scanline: Scanline) -> str:
    return f"{result.project.name}: scanline {scanline.number} of {scanline.mode.v.total}"


def _head(result: Result, scanline: Scanline) -> Iterator[str]:
    mode = scanline.mode
    part = line_region(mode, scanline.number)
    where = "the picture" if part is Region.ACTIVE else f"the vertical {part.value}"
    yield _text(_LEFT, 34, _title(result, scanline), "title")
    clock, line = (
        format_fixed(mode.pixel_clock_hz, "Hz", prefix="M"),
        format_fixed(mode.line_s, "s", prefix="µ"),
    )
    yield _text(
        _LEFT, 58, f"{mode.name} ({mode.source}), pixel clock {clock}, line {line}, part of {where}", "dim"
    )
    yield _text(
        _LEFT,
        76,
        "At the monitor, simulated, not measured. Dotted: the same codes in even steps to 0.700 V.",
        "dim",
    )


def _regions(scanline: Scanline, bottom: float) -> Iterator[str]:
    """Tint and name the parts of the line; narrow ones are named on a second row, by leaders."""
    mode = scanline.mode
    start, reach = 0, 0.0
    for region, stop in zip(Region, mode.h.edges, strict=True):
        left, right = (_LEFT + _SPAN * edge / mode.h.total for edge in (start, stop))
        tint = {Region.ACTIVE: None, Region.SYNC: "sync"}.get(region, "porch")
        if tint:
            yield (
                f'<rect class="{tint}" x="{left:.2f}" y="{_TOP - 8:g}" '
                f'width="{right - left:.2f}" height="{bottom - _TOP + 8:g}"/>'
            )
        if start:
            yield _line(left, _TOP - 8, left, bottom, "edge")
        middle = (left + right) / 2
        # A name that would run into the one before it is put a row higher.
        half = 3.6 * len(region.value)
        lift = 0.0 if middle - half > reach else 14.0
        reach = max(reach, middle + half + 6.0) if not lift else reach
        yield _text(middle, _TOP - 14 - lift, region.value, "dim", anchor="middle")
        start = stop


def _lane(lane: _Lane, volts: NDArray[np.float32], ideal: NDArray[np.float32] | None) -> Iterator[str]:
    """Draw axis, ideal and real trace of one lane."""
    for tick in np.arange(0.0, lane.top_volts + 1e-9, lane.tick_volts):
        y = float(lane.y(np.array(tick)))
        yield _line(_LEFT, y, _LEFT + _SPAN, y, "grid")
        unit = " V" if tick + lane.tick_volts > lane.top_volts + 1e-9 else ""
        yield _text(_LEFT - 8, y + 4, f"{tick:.1f}{unit}", "figure dim", anchor="end")
    if ideal is not None:
        x = _LEFT + _SPAN * np.repeat(np.arange(len(ideal) + 1), 2)[1:-1] / len(ideal)
        yield f'<path class="ideal" d="{_path(x, lane.y(np.repeat(ideal, 2)))}"/>'
    dashes = f' stroke-dasharray="{lane.dashes}"' if lane.dashes else ""
    kept = _extremes(volts)
    x = _LEFT + _SPAN * kept / len(volts)
    yield f'<path class="trace" stroke="{lane.stroke}"{dashes} d="{_path(x, lane.y(volts[kept]))}"/>'
    y = float(lane.y(np.array(volts[-1]))) + 4
    yield _text(_LEFT + _SPAN + 10, y, lane.name, "name")


def _time_axis(scanline: Scanline, bottom: float) -> Iterator[str]:
    line_us = scanline.mode.line_s * 1e6
    step = next(s for s in _tick_steps(line_us) if line_us / s <= 18)
    for tick in np.arange(0.0, line_us, step):
        x = _LEFT + _SPAN * tick / line_us
        yield _line(x, bottom, x, bottom + 6, "edge")
        yield _text(x, bottom + 22, f"{tick:g}", "figure dim", anchor="middle")
    yield _line(_LEFT, bottom, _LEFT + _SPAN, bottom, "edge")
    yield _text(_LEFT + _SPAN + 10, bottom + 22, "µs", "dim")
    start = 0
    for region, stop in zip(Region, scanline.mode.h.edges, strict=True):
        x = _LEFT + _SPAN * list(Region).index(region) / 4
        width = format_fixed((stop - start) * scanline.mode.pixel_s, "s", prefix="µ")
        yield _text(x, bottom + 54, region.value, "name")
        yield _text(x, bottom + 72, f"{stop - start} px, {width}", "figure")
        start = stop


def _tick_steps(line_us: float) -> Iterator[float]:
    decade = 10.0 ** np.floor(np.log10(line_us) - 2)
    while True:
        yield from (decade, 2 * decade, 5 * decade)
        decade *= 10


def _extremes(volts: NDArray[np.float32]) -> NDArray[np.intp]:
    """Return the samples that matter at this width: first, lowest and highest of each column."""
    columns = int(_SPAN * _COLUMNS_PER_UNIT)
    if len(volts) <= 4 * columns:
        return np.arange(len(volts))
    edges = np.linspace(0, len(volts), columns + 1).astype(np.intp)
    kept = [np.array([0, len(volts) - 1]), edges[:-1]]
    for low, high in itertools.pairwise(edges):
        part = volts[low:high]
        kept.append(np.array([low + part.argmin(), low + part.argmax()]))
    return np.unique(np.concatenate(kept))


def _path(x: NDArray[np.floating], y: NDArray[np.floating]) -> str:
    """Return path data; points in the middle of a level run are left out."""
    x, y = np.round(x, 2), np.round(y, 2)
    corner = np.ones(len(y), bool)
    corner[1:-1] = (y[1:-1] != y[:-2]) | (y[1:-1] != y[2:])
    return "M" + "L".join(f"{px:g} {py:g}" for px, py in zip(x[corner], y[corner], strict=True))


def _text(x: float, y: float, text: str, style: str, *, anchor: str = "start") -> str:
    return f'<text class="{style}" x="{x:.1f}" y="{y:.1f}" text-anchor="{anchor}">{escape(text)}</text>'


def _line(x1: float, y1: float, x2: float, y2: float, style: str) -> str:
    return f'<line class="{style}" x1="{x1:.2f}" y1="{y1:.2f}" x2="{x2:.2f}" y2="{y2:.2f}"/>'
