"""The line ruler: front porch, sync, back porch and active to scale, with edges that can be moved."""

from dataclasses import dataclass, replace

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QFont, QFontMetricsF, QMouseEvent, QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.scanline.content.areas import region_spans
from workbench.gui.scanline.content.scales import TimeScale
from workbench.gui.scanline.lanes.places import spread
from workbench.gui.scanline.ruler.knob import Knob
from workbench.gui.widgets import draw_text
from workbench.timing.mode import Axis, Region

__all__ = ["LineRuler", "RulerText", "moved_edge"]

HEIGHT, LOW = 96, 34
"""With the words under its bar, and without them. [design px]"""
BAR = 16
BAR_TOP = 8
BLANKING = (Region.FRONT_PORCH, Region.SYNC, Region.BACK_PORCH)


@dataclass(frozen=True, slots=True)
class RulerText:
    """The words of a ruler: what it counts and how a length of time is written."""

    count: str
    """Short name of a count: px, lines."""
    unit: str
    seconds: float
    """Length of the unit. [s]"""
    decimals: int
    whole: str
    """What a part is a part of: line, frame."""

    def time(self, seconds: float) -> str:
        """Return a length of time in the unit."""
        return f"{seconds / self.seconds:.{self.decimals}f}"


def moved_edge(axis: Axis, edge: int, count: int, *, keep_total: bool = False) -> Axis:
    """Return the counts after an inner edge was moved.

    Parameters
    ----------
    edge : int
        0 ends the front porch, 1 the sync, 2 the back porch. [1]
    count : int
        New length of the region the edge ends. What the front porch and sync give up or take
        comes from the next region, so that the line keeps its length; the back porch pushes the
        picture and changes the length of the line. A sync keeps at least one. [1]
    keep_total : bool
        Whether what the back porch gives up or takes comes from the picture instead.
    """
    parts = [axis.front_porch, axis.sync, axis.back_porch]
    least = (0, 1, 0)
    if edge < 2:
        both = parts[edge] + parts[edge + 1]
        count = min(max(count, least[edge]), both - least[edge + 1])
        parts[edge], parts[edge + 1] = count, both - count
    else:
        parts[edge] = max(count, least[edge])
        if keep_total:
            parts[edge] = min(parts[edge], axis.back_porch + axis.active - 1)
    front_porch, sync, back_porch = parts
    active = axis.active + axis.back_porch - back_porch if edge == 2 and keep_total else axis.active
    return replace(axis, active=active, front_porch=front_porch, sync=sync, back_porch=back_porch)


@dataclass(frozen=True, slots=True)
class _Label:
    """The words under a region of the blanking. [px]"""

    name: str
    figures: tuple[tuple[str, str], ...]
    x: float
    """Middle of the region on the bar."""
    middle: float
    width: float


class LineRuler(QWidget):
    """Draws the counts of the whole line or frame; what the plot shows of it is marked."""

    edge_moved = Signal(object, int)
    """New counts, and which edge was moved."""
    looked_at = Signal(float)
    """A place of the bar was pressed while only a part is in sight. [s]"""
    edge_left = Signal()
    """A knob was let go: the next move is another step to undo."""
    edge_dropped = Signal()
    """Escape while dragging: the counts before the drag are wanted back."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        mode = bench.session.project.mode
        self._axis, self._count_s = mode.h, mode.pixel_s
        self._text = RulerText("", "", 1.0, 0, "")
        self._time = TimeScale(0.0, mode.line_s, 0.0, 1.0)
        self.low = False
        """Whether the words under the bar are left out; the knobs say them in their tips."""
        self.setAccessibleName("line ruler")
        self.knobs = tuple(Knob(bench, region, self) for region in BLANKING)
        for edge, knob in enumerate(self.knobs):
            knob.moved.connect(lambda count, keep, edge=edge: self._on_moved(edge, count, keep_total=keep))
            knob.left.connect(self.edge_left)
            knob.dropped.connect(self.edge_dropped)
        bench.theme_changed.connect(self.restyle)
        self.restyle()

    def show_counts(self, axis: Axis, count_s: float, text: RulerText) -> None:
        """Show the counts of a line or a frame."""
        if (axis, count_s, text) == (self._axis, self._count_s, self._text):
            return
        self._axis, self._count_s, self._text = axis, count_s, text
        for knob, region, count in zip(self.knobs, BLANKING, self._counts, strict=False):
            time = f"{text.time(count * count_s)} {text.unit}"
            knob.show_count(region, count, text.count, time)
        self._place_knobs()
        self.update()

    def show_time(self, time: TimeScale) -> None:
        """Lie under the axis of the plot and mark what it shows."""
        if time != self._time:
            self._time = time
            self._place_knobs()
            self.update()

    def free_left(self) -> int:
        """Return from where on the lower rows of the labels are free. [px]"""
        *_, last = self._labels()
        return round(last.middle + last.width / 2) + self.bench.px(24)

    def set_low(self, *, low: bool) -> None:
        """Leave the height to the plot, or write counts and times under the bar."""
        if low != self.low:
            self.low = low
            self.restyle()

    def restyle(self) -> None:
        """Take colours and sizes again."""
        self.setFixedHeight(self.bench.px(LOW if self.low else HEIGHT))
        self._place_knobs()
        self.update()

    @property
    def _counts(self) -> tuple[int, int, int, int]:
        axis = self._axis
        return axis.front_porch, axis.sync, axis.back_porch, axis.active

    @property
    def _bar(self) -> QRectF:
        px = self.bench.px
        return QRectF(self._time.left, px(BAR_TOP), self._time.right - self._time.left, px(BAR))

    def _x(self, count: float) -> float:
        bar = self._bar
        return bar.left() + count * bar.width() / self._axis.total

    def _on_moved(self, edge: int, count: int, *, keep_total: bool) -> None:
        axis = moved_edge(self._axis, edge, count, keep_total=keep_total)
        if axis != self._axis:
            self.edge_moved.emit(axis, edge)

    def _place_knobs(self) -> None:
        bar = self._bar
        for knob, edge in zip(self.knobs, self._axis.edges, strict=False):
            knob.stand(self._x(edge), bar, bar.width() / self._axis.total)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._place_knobs()

    def paintEvent(self, _event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            self._draw_bar(painter)
            self._draw_sight(painter)
            if not self.low:
                self._draw_labels(painter)

    def _draw_bar(self, painter: QPainter) -> None:
        theme, bar = self.bench.theme, self._bar
        fills = {
            Region.FRONT_PORCH: theme.mixed("panel", "accent", 0.34),
            Region.SYNC: theme.mixed("panel", "h_sync", 0.55 if theme.dark else 0.45),
            Region.BACK_PORCH: theme.mixed("panel", "accent", 0.34),
            Region.ACTIVE: theme.mixed("panel", "dim", 0.16),
        }
        for region, first, after in region_spans(self._axis):
            left, right = self._x(first), self._x(after)
            painter.fillRect(QRectF(left, bar.top(), right - left, bar.height()), fills[region])
        painter.setPen(QPen(theme.color("text"), 1))
        over = self.bench.px(3)
        for x in (bar.left() + 0.5, bar.right() - 0.5):
            painter.drawLine(QLineF(x, bar.top() - over, x, bar.bottom() + over))

    def _draw_sight(self, painter: QPainter) -> None:
        """Draw a frame around what the plot shows of the whole."""
        time, bar = self._time, self._bar
        if self._whole_in_sight:
            return
        left, right = self._x(time.first_s / self._count_s), self._x(time.last_s / self._count_s)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(self.bench.theme.color("text"), 1.4))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        over = self.bench.px(3)
        painter.drawRoundedRect(
            QRectF(left, bar.top() - over, max(right - left, 3), bar.height() + 2 * over), 3, 3
        )

    @property
    def _whole_in_sight(self) -> bool:
        whole_s = self._axis.total * self._count_s
        return self._time.last_s - self._time.first_s > 0.999 * whole_s

    def mousePressEvent(self, event: QMouseEvent) -> None:
        self._look(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        self._look(event)

    def _look(self, event: QMouseEvent) -> None:
        """Bring the place of the bar under the pointer into the middle of the plot."""
        reach = self._bar.adjusted(0, -self.bench.px(4), 0, self.bench.px(4))
        if self._whole_in_sight:
            return
        if event.buttons() & Qt.MouseButton.LeftButton and reach.contains(event.position()):
            part = (event.position().x() - reach.left()) / reach.width()
            self.looked_at.emit(part * self._axis.total * self._count_s)

    def _labels(self) -> list["_Label"]:
        """Return where the labels of the blanking stand: under their regions, spread apart."""
        px = self.bench.px
        spans = region_spans(self._axis)[:3]
        figures = [self._figures(after - first) for _, first, after in spans]
        measure = QFontMetricsF(self._name_font).horizontalAdvance
        widths = [
            max(measure(region.value), self._figure_width(pair)) + px(18)
            for (region, _, _), pair in zip(spans, figures, strict=True)
        ]
        wanted = [self._x((first + after) / 2) for _, first, after in spans]
        middles = spread(wanted, widths, px(4), self.width() - px(4))
        return [
            _Label(region.value, pair, x, middle, width)
            for (region, _, _), pair, x, middle, width in zip(
                spans, figures, wanted, middles, widths, strict=True
            )
        ]

    @property
    def _name_font(self) -> QFont:
        return self.bench.type.sans(0.90, 500)

    def _draw_labels(self, painter: QPainter) -> None:
        px, theme, bottom = self.bench.px, self.bench.theme, self._bar.bottom()
        top, centre = bottom + px(17), Qt.AlignmentFlag.AlignHCenter
        figure_font = self.bench.type.mono(0.86, 500)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        labels = self._labels()
        for label in labels:
            painter.setPen(QPen(theme.color("outline"), 1))
            knee = QPointF(label.x, bottom + px(5))
            end = QPointF(label.middle, bottom + px(14))
            painter.drawPolyline([QPointF(label.x, bottom + px(1)), knee, end])
            line = QRectF(label.middle - label.width / 2, top, label.width, px(17))
            draw_text(painter, line, label.name, self._name_font, theme.color("text"), align=centre)
            for figure, unit in label.figures:
                line.translate(0, px(17))
                self._draw_figure(painter, line, figure, unit, figure_font)
        self._draw_active(painter, labels[-1].middle + labels[-1].width / 2, top, self._name_font)

    def _figures(self, count: int) -> tuple[tuple[str, str], tuple[str, str]]:
        return (str(count), self._text.count), (self._text.time(count * self._count_s), self._text.unit)

    def _figure_width(self, pair) -> float:
        mono = QFontMetricsF(self.bench.type.mono(0.86, 500)).horizontalAdvance
        sans = QFontMetricsF(self.bench.type.sans(0.86)).horizontalAdvance
        return max(mono(figure) + sans(unit) + self.bench.px(4) for figure, unit in pair)

    def _draw_figure(self, painter: QPainter, line: QRectF, figure: str, unit: str, font) -> None:
        """Draw a number and its unit, centred together."""
        px, theme, small = self.bench.px, self.bench.theme, self.bench.type.sans(0.86)
        left = line.center().x() - self._figure_width(((figure, unit),)) / 2
        box = QRectF(left, line.top(), line.width(), line.height())
        box.setLeft(left + draw_text(painter, box, figure, font, theme.color("text")) + px(4))
        draw_text(painter, box, unit, small, theme.color("dim"))

    def _draw_active(self, painter: QPainter, after: float, top: float, font) -> None:
        """Draw the active part's figures in one line, in the middle of its bar if there is room."""
        px, theme, type_ = self.bench.px, self.bench.theme, self.bench.type
        axis, text = self._axis, self._text
        (count, unit), (time, seconds) = self._figures(axis.active)
        part = f"{100 * axis.active / axis.total:.1f}"
        pairs = [(count, unit), (time, seconds), (part, f"% of the {text.whole}")]
        mono, small = type_.mono(0.90, 500), type_.sans(0.86)
        measure = QFontMetricsF(mono).horizontalAdvance, QFontMetricsF(small).horizontalAdvance
        name = Region.ACTIVE.value
        widths = [measure[0](figure) + px(4) + measure[1](words) + px(22) for figure, words in pairs]
        total = QFontMetricsF(font).horizontalAdvance(name) + px(24) + sum(widths)
        middle = self._x(axis.total - axis.active / 2)
        x = max(min(middle - total / 2, self.width() - px(16) - total), after + px(8))
        line = QRectF(x, top, self.width() - x, px(17))
        line.setLeft(x + draw_text(painter, line, name, font, theme.color("text")) + px(24))
        for (figure, words), width in zip(pairs, widths, strict=True):
            if line.left() + width - px(22) > self.width():
                break
            box = QRectF(line)
            box.setLeft(box.left() + draw_text(painter, box, figure, mono, theme.color("text")) + px(4))
            draw_text(painter, box, words, small, theme.color("dim"))
            line.setLeft(line.left() + width)
