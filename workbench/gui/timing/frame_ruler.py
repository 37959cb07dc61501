"""The line ruler's vertical twin: the frame's blanking to scale, with knobs at its edges."""

from itertools import pairwise

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.scanline.lanes.places import spread
from workbench.gui.scanline.ruler.knob import Knob
from workbench.gui.scanline.ruler.line_ruler import moved_edge
from workbench.gui.timing.tints import region_tint
from workbench.gui.widgets import draw_text
from workbench.project.document import Direction, Project
from workbench.project.edits.timing import set_axis
from workbench.timing.mode import Axis, Mode, Region
from workbench.units import format_fixed

__all__ = ["FrameRuler"]

_BLANKING = (Region.FRONT_PORCH, Region.SYNC, Region.BACK_PORCH)
_BAR = 16
_ACTIVE_PART = 0.22
"""Part of the height that stands for the picture, which is cut short. [1]"""
_LEAST_PART = 0.04
"""Part of the blanking that the shortest region takes at least, so that its knobs can be told apart. [1]"""


class FrameRuler(QWidget):
    """Shows the counts of one mode's frame; an edge that is moved makes the mode one's own."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.mode: Mode | None = None
        self.setAccessibleName("Frame ruler")
        self.knobs = tuple(Knob(bench, region, self, Qt.Orientation.Vertical) for region in _BLANKING)
        for edge, knob in enumerate(self.knobs):
            knob.moved.connect(lambda count, keep, edge=edge: self._move(edge, count, keep_total=keep))
            knob.left.connect(bench.session.release)
            knob.dropped.connect(bench.session.drop)
        bench.theme_changed.connect(self.updateGeometry)

    def show_mode(self, mode: Mode) -> None:
        """Show a mode's frame."""
        if mode == self.mode:
            return
        self.mode = mode
        for knob, region, count in zip(self.knobs, _BLANKING, _counts(mode.v), strict=True):
            knob.show_count(region, count, "lines", _time(count, mode))
        self._place()
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(self.bench.px(168), self.bench.px(240))

    def minimumSizeHint(self) -> QSize:
        return QSize(self.bench.px(168), self.bench.px(170))

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._place()

    def paintEvent(self, _event: QPaintEvent) -> None:
        if self.mode is None:
            return
        with QPainter(self) as painter:
            self._paint_bar(painter, self.mode)
            self._paint_labels(painter, self.mode)

    @property
    def bar(self) -> QRectF:
        """Where the bar lies: the picture cut short, then the blanking."""
        px = self.bench.px
        return QRectF(px(4), px(24), px(_BAR), max(1.0, self.height() - px(34)))

    def ends(self) -> tuple[float, float, float, float]:
        """Return where active, front porch, sync and back porch end along the bar. [px]"""
        assert self.mode is not None
        bar, counts = self.bar, _counts(self.mode.v)
        blanking = max(1, sum(counts))
        least = _LEAST_PART * blanking
        shown = [max(count, least) for count in counts]
        scale = bar.height() * (1 - _ACTIVE_PART) / sum(shown)
        place = bar.top() + bar.height() * _ACTIVE_PART
        found = [place]
        for count in shown:
            found.append(found[-1] + count * scale)
        return found[0], found[1], found[2], found[3]

    def _move(self, edge: int, count: int, *, keep_total: bool) -> None:
        def edit(project: Project) -> Project:
            axis = moved_edge(project.mode.v, edge, count, keep_total=keep_total)
            return set_axis(project, Direction.VERTICAL, axis)

        label = f"Move the end of the vertical {_BLANKING[edge].value}"
        self.bench.apply(label, edit, merge=("frame ruler", edge), origin=self)

    def _place(self) -> None:
        if self.mode is None:
            return
        bar = self.bar
        per_line = bar.height() * (1 - _ACTIVE_PART) / max(1, self.mode.v.blanking)
        for knob, end in zip(self.knobs, self.ends()[1:], strict=True):
            knob.stand(end, bar, max(per_line, 1.0))

    def _paint_bar(self, painter: QPainter, mode: Mode) -> None:
        theme, px, bar = self.bench.theme, self.bench.px, self.bar
        head = QRectF(0, 0, self.width(), px(18))
        draw_text(painter, head, "BLANKING TO SCALE", self.bench.type.caps(), theme.color("dim"))
        active, *ends = self.ends()
        painter.fillRect(
            QRectF(bar.left(), bar.top(), bar.width(), active - bar.top()),
            region_tint(theme, Region.ACTIVE, Direction.VERTICAL),
        )
        start = active
        for region, end in zip(_BLANKING, ends, strict=True):
            painter.fillRect(
                QRectF(bar.left(), start, bar.width(), end - start),
                region_tint(theme, region, Direction.VERTICAL),
            )
            start = end
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(theme.color("outline"), 1))
        painter.drawRect(bar)
        self._paint_break(painter, bar, (bar.top() + active) / 2)

    def _paint_break(self, painter: QPainter, bar: QRectF, y: float) -> None:
        """Cut the picture's bar, which is not to scale, by two slanted strokes."""
        theme, px = self.bench.theme, self.bench.px
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        for offset in (-px(3), px(3)):
            painter.setPen(QPen(theme.color("panel"), px(4)))
            line = (
                QPointF(bar.left() - px(3), y + px(4) + offset),
                QPointF(bar.right() + px(3), y - px(4) + offset),
            )
            painter.drawLine(*line)
        for offset in (-px(5), px(5)):
            painter.setPen(QPen(theme.color("outline"), 1))
            line = (
                QPointF(bar.left() - px(3), y + px(4) + offset),
                QPointF(bar.right() + px(3), y - px(4) + offset),
            )
            painter.drawLine(*line)

    def _paint_labels(self, painter: QPainter, mode: Mode) -> None:
        theme, type_, px, bar = self.bench.theme, self.bench.type, self.bench.px, self.bar
        bounds = (bar.top(), *self.ends())
        middles = [(first + after) / 2 for first, after in pairwise(bounds)]
        names = ("active", *(region.value for region in _BLANKING))
        figures = [f"{count} · {_time(count, mode)}" for count in (mode.v.active, *_counts(mode.v))]
        height = px(36)
        places = spread(middles, [height] * 4, px(20), self.height())
        left = bar.right() + px(24)
        for middle, place, name, figure in zip(middles, places, names, figures, strict=True):
            painter.setPen(QPen(theme.color("outline"), 1))
            painter.drawLine(QPointF(bar.right() + px(8), middle), QPointF(left - px(4), place))
            line = QRectF(left, place - px(17), self.width() - left, px(17))
            draw_text(painter, line, name, type_.sans(0.9, 500), theme.color("text"))
            line.translate(0, px(17))
            draw_text(painter, line, figure, type_.mono(0.84), theme.color("dim"), elide=True)


def _counts(axis: Axis) -> tuple[int, int, int]:
    return axis.front_porch, axis.sync, axis.back_porch


def _time(lines: int, mode: Mode) -> str:
    return format_fixed(lines * mode.line_s, "s", prefix="m")
