"""Draws evenly sampled traces inside a pyqtgraph plot."""

from dataclasses import dataclass
from math import ceil, floor

import numpy as np
import pyqtgraph as pg
from numpy.typing import NDArray
from pyqtgraph.Qt.internals import PrimitiveArray
from PySide6.QtCore import QLineF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen

from workbench.gui.scanline.traces.spans import (
    bands,
    column_runs,
    column_spans,
    dash_gaps,
    widened,
    with_gaps,
)
from workbench.gui.scanline.traces.strokes import broken_line, corners, thinned

__all__ = ["TraceItem", "TraceStyle"]

FloatArray = NDArray[np.floating]
Float32Array = NDArray[np.float32]
BoolArray = NDArray[np.bool_]
IntArray = NDArray[np.intp]
Line = tuple[FloatArray, FloatArray]

_STROKED_POINTS = 1200
"""More points than this are drawn as spans: stroking costs some 2 µs a point. [1]"""
_THINNABLE = 8
"""So many times more corners are looked at before spans are taken. [1]"""
_LEVEL = 0.05
"""A part of a line that rises by less is level. [px]"""
_REACH = 4
"""Edges nearer than about this many columns are drawn as a band. [px]"""
_BOUNDS = 0.25
"""Step of the bounds, in the unit of the samples."""
_TALL = 3.0
"""Spans higher than this many pen widths are edges or parts of a band. [1]"""


@dataclass(frozen=True, slots=True)
class TraceStyle:
    """How one trace looks."""

    color: QColor
    width: float
    """Pen width. [px]"""
    dashes: tuple[float, ...] = ()
    """Dash, gap, dash, gap ... in pen widths; empty for a solid line. [1]"""
    band: float = 0.26
    """Strength of the band where the trace is up and down too often to be a line, ``0 … 1``. [1]"""
    drop: float = 0.0
    """How far below its true place the trace is drawn. [px]"""


@dataclass(frozen=True, slots=True)
class _Screen:
    """How the samples lie on the device: one column is one device pixel."""

    left: int
    columns: int
    start: float
    stop: float
    step_x: float
    zero_x: float
    scale_y: float
    zero_y: float
    unit: float
    """Device pixels of one pixel of the design. [1]"""


@dataclass(frozen=True, slots=True, eq=False)
class _Spans:
    """What one trace leaves on the screen as rectangles of device pixels."""

    bands: PrimitiveArray
    """Where it goes up and down many times: drawn faint, so that what lies beneath is seen."""
    line: PrimitiveArray

    def draw(self, painter: QPainter, style: TraceStyle, _unit: float) -> None:
        painter.setPen(Qt.PenStyle.NoPen)
        faint = QColor(style.color)
        faint.setAlphaF(style.color.alphaF() * style.band)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing, on=False)
        painter.setBrush(faint)
        painter.drawRects(*self.bands.drawargs())
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setBrush(style.color)
        painter.drawRects(*self.line.drawargs())


@dataclass(frozen=True, slots=True, eq=False)
class _Stroke:
    """What one trace leaves on the screen as a line: level runs as rectangles, the rest stroked."""

    levels: PrimitiveArray
    edges: PrimitiveArray

    def draw(self, painter: QPainter, style: TraceStyle, unit: float) -> None:
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(style.color)
        painter.drawRects(*self.levels.drawargs())
        pen = QPen(style.color, style.width * unit)
        # Squares at the ends close the corners, as a join would.
        pen.setCapStyle(Qt.PenCapStyle.SquareCap)
        painter.setPen(pen)
        painter.drawLines(*self.edges.drawargs())


class TraceItem(pg.GraphicsObject):
    """Draws traces in the order given, the last on top."""

    def __init__(self) -> None:
        super().__init__()
        self._samples: Float32Array = np.zeros((0, 2), np.float32)
        self._corners: list[IntArray] = []
        self._step = 1.0
        self._styles: tuple[TraceStyle, ...] = ()
        self._bounds = QRectF()
        self._screen: _Screen | None = None
        self._drawn: list[_Spans | _Stroke] = []

    def set_samples(self, samples: Float32Array, step: float) -> None:
        """Show other samples, shape (n_traces, n_samples), ``step`` apart from 0 on the time axis."""
        if step == self._step and np.array_equal(samples, self._samples):
            return
        self._samples, self._step = np.ascontiguousarray(samples), step
        self._corners = corners(self._samples) if samples.size else []
        self._screen = None
        low, high = (float(samples.min()), float(samples.max())) if samples.size else (0.0, 0.0)
        # In coarse steps: other bounds have everything under and around them painted again.
        low, high = floor(low / _BOUNDS) * _BOUNDS, ceil(high / _BOUNDS) * _BOUNDS
        bounds = QRectF(0.0, low, (samples.shape[1] - 1) * step, max(high - low, _BOUNDS))
        if bounds != self._bounds:
            self.prepareGeometryChange()
            self._bounds = bounds
        self._repaint()

    @property
    def styles(self) -> tuple[TraceStyle, ...]:
        """How the traces look, in drawing order."""
        return self._styles

    def set_styles(self, styles: tuple[TraceStyle, ...]) -> None:
        """Give every trace its look."""
        if styles != self._styles:
            self._styles = styles
            self._screen = None
            self._repaint()

    def _repaint(self) -> None:
        """Ask for the lane alone to be painted: the item's own bounds reach beyond it."""
        box = self.getViewBox()
        self.update(self.boundingRect() if box is None else box.viewRect())

    def boundingRect(self) -> QRectF:
        # Pen and drop reach a few pixels beyond the samples; the box of the plot cuts it off anyway.
        tall, wide = self._bounds.height(), self._bounds.width()
        return self._bounds.adjusted(-0.05 * wide, -tall, 0.05 * wide, tall)

    def paint(self, painter: QPainter, *_: object) -> None:
        screen = self._look(painter)
        if screen is None or not len(self._samples):
            return
        if screen != self._screen:
            self._drawn = self._lay_out(screen)
            self._screen = screen
        painter.resetTransform()
        ratio = painter.device().devicePixelRatioF()
        painter.scale(1 / ratio, 1 / ratio)
        for style, drawn in zip(self._styles, self._drawn, strict=True):
            drawn.draw(painter, style, screen.unit)

    def _look(self, painter: QPainter) -> _Screen | None:
        """Return where the samples lie on the device, and which of them are seen."""
        box = self.getViewBox()
        if box is None or self._samples.shape[1] < 2:
            return None
        world, ratio = painter.worldTransform(), painter.device().devicePixelRatioF()
        unit = ratio * world.m11() / (self.sceneTransform().m11() or 1.0)
        scale_x, zero_x = world.m11() * ratio, world.dx() * ratio
        seen_left, seen_right = box.viewRange()[0]
        left = max(seen_left, 0.0)
        right = min(seen_right, (self._samples.shape[1] - 1) * self._step)
        first, after = round(zero_x + left * scale_x), round(zero_x + right * scale_x)
        if after - first < 2 or scale_x <= 0:
            return None
        step_x = scale_x * self._step
        return _Screen(
            left=first,
            columns=after - first,
            start=(first - zero_x) / step_x,
            stop=(after - zero_x) / step_x,
            step_x=step_x,
            zero_x=zero_x,
            scale_y=world.m22() * ratio,
            zero_y=world.dy() * ratio,
            unit=unit,
        )

    def _lay_out(self, screen: _Screen) -> list[_Spans | _Stroke]:
        last = self._samples.shape[1] - 1
        start, stop = max(screen.start, 0.0), min(screen.stop, float(last))
        lines = self._lines(screen, int(start), int(np.ceil(stop)))
        if lines is None:
            return self._spans(screen, start, stop)
        return [_stroked(screen, style, *line) for style, line in zip(self._styles, lines, strict=True)]

    def _lines(self, screen: _Screen, first: int, last: int) -> list[Line] | None:
        """Return the corners of every trace on the device; none if they are too many to stroke."""
        inside = [
            np.concatenate(([first], bends[(bends > first) & (bends < last)], [last]))
            for bends in self._corners
        ]
        if sum(map(len, inside)) > _THINNABLE * _STROKED_POINTS:
            return None
        lines: list[Line] = []
        for samples, style, places in zip(self._samples, self._styles, inside, strict=True):
            y = screen.zero_y + samples[places].astype(np.float64) * screen.scale_y
            y += style.drop * screen.unit
            keep = thinned(places, y, screen.step_x)
            lines.append((screen.zero_x + places[keep] * screen.step_x, y[keep]))
        return lines if sum(len(x) for x, _ in lines) <= _STROKED_POINTS else None

    def _spans(self, screen: _Screen, start: float, stop: float) -> list[_Spans | _Stroke]:
        low, high = column_spans(self._samples, start, stop, screen.columns)
        # Volts rise upward, pixels downward.
        top, bottom = high * screen.scale_y + screen.zero_y, low * screen.scale_y + screen.zero_y
        return [_spanned(screen, *trace) for trace in zip(self._styles, top, bottom, strict=True)]


def _spanned(screen: _Screen, style: TraceStyle, top: Float32Array, bottom: Float32Array) -> _Spans:
    """Return the rectangles of one trace."""
    pen = max(style.width * screen.unit, 1.0)
    columns = max(1, round(pen))
    gaps = dash_gaps(screen.columns, screen.left - round(screen.zero_x), _in_columns(style, pen, columns))
    reach = max(2 * columns, round(_REACH * screen.unit))
    banded, rim_top, rim_bottom = bands(top, bottom, reach=reach, tall=_TALL * pen)
    shift = style.drop * screen.unit
    line_top, line_bottom = with_gaps(*_only(~banded, top, bottom), gaps, steep=1.5 * pen)
    line = _rects(screen, line_top, line_bottom, columns, pen, shift)
    band: FloatArray = np.zeros((0, 4))
    if banded.any():
        band = _rects(screen, *_only(banded, rim_top, rim_bottom), 1, 0.0, shift)
        rims = (_only(banded & ~gaps, rim, rim) for rim in (rim_top, rim_bottom))
        line = np.concatenate((line, *(_rects(screen, *rim, columns, pen, shift) for rim in rims)))
    return _Spans(_filled(PrimitiveArray(QRectF, 4), band), _filled(PrimitiveArray(QRectF, 4), line))


def _in_columns(style: TraceStyle, pen: float, columns: int) -> tuple[int, ...]:
    """Return a dash pattern in columns: the pen adds its own width to every dash."""
    return tuple(
        max(1, round(length * pen) + (1 - columns if i % 2 == 0 else columns - 1))
        for i, length in enumerate(style.dashes)
    )


def _only(kept: BoolArray, top: FloatArray, bottom: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Return the spans of some columns, the others empty."""
    return np.where(kept, top, np.inf), np.where(kept, bottom, -np.inf)


def _rects(
    screen: _Screen, top: FloatArray, bottom: FloatArray, columns: int, pen: float, shift: float
) -> FloatArray:
    """Return left, top, width, height of each run of equal spans, shape (n_runs, 4)."""
    edge = np.full(columns // 2, np.inf)
    wide_top, wide_bottom = widened(
        np.concatenate((edge, top, edge))[None], np.concatenate((-edge, bottom, -edge))[None], columns
    )
    first, after = column_runs(wide_top[0], wide_bottom[0])
    high = wide_top[0][first] - pen / 2 + shift
    low = wide_bottom[0][first] + pen / 2 + shift
    return np.column_stack((first + screen.left, high, after - first, low - high))


def _filled(primitives: PrimitiveArray, table: FloatArray) -> PrimitiveArray:
    """Return rectangles or lines with these numbers, shape (n, 4)."""
    primitives.resize(len(table))
    primitives.ndarray()[:] = table
    return primitives


def _stroked(screen: _Screen, style: TraceStyle, x: FloatArray, y: FloatArray) -> _Stroke:
    """Return the line of one trace."""
    pen = style.width * screen.unit
    pattern = tuple(length * pen for length in style.dashes)
    x, y, joined = broken_line(x, y, pattern, screen.zero_x)
    level = np.abs(np.diff(y)) < _LEVEL
    drawn = joined[:-1]
    flat, steep = np.flatnonzero(drawn & level), np.flatnonzero(drawn & ~level)
    levels = np.column_stack((x[flat], y[flat] - pen / 2, x[flat + 1] - x[flat], np.full(len(flat), pen)))
    edges = np.column_stack((x[steep], y[steep], x[steep + 1], y[steep + 1]))
    return _Stroke(_filled(PrimitiveArray(QRectF, 4), levels), _filled(PrimitiveArray(QLineF, 4), edges))
