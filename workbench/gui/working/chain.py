"""The chain of a pixel as a drawing: one row a channel, colour to volts, then what the eye gets."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets import draw_text, trace_pen
from workbench.gui.widgets.caption import draw_caption
from workbench.gui.widgets.control import outlined
from workbench.gui.working.looked_at import LookedAt
from workbench.gui.working.steps import STEPS, Step
from workbench.picture.light import FULL_SCALE_VOLTS, srgb_bytes
from workbench.project.document import Channel
from workbench.units import format_fixed
from workbench.waveform.working import ChannelWorking

__all__ = ["Chain"]

_HEAD, _FOOT, _ROW = 26, 62, 62
_TWO_LINES = 42
"""A row that is lower shows its main line only. [design px]"""
_KEY_WIDTH, _KEY_HEIGHT = 18, 26
_GAP, _LEAST_GAP = 30, 18
"""Between two steps: room for the chevron; less of it where a step would be left out. [design px]"""
_RIGHT = Qt.AlignmentFlag.AlignRight
_CENTRE = Qt.AlignmentFlag.AlignHCenter


_PINS = next(step for step in STEPS if step.head.startswith("pins"))
_FALSE_BLACK = 5e-3
"""Black this far from 0 V is worth a word. Our own. [V]"""
WEIGHTS = (
    "each voltage to the power 2.2; red weighs 0.21, green 0.72, blue 0.07",
    "to the power 2.2; red 0.21, green 0.72, blue 0.07",
    "to the power 2.2, then weighed",
)
"""How lightness is reckoned, longest wording first."""


class Chain(QWidget):
    """Draws one pixel's working; what has no room is left out, the least missed first."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self._shown: LookedAt | None = None
        self._free = 0
        self._placed: tuple[object, list[tuple[Step, float, float]]] | None = None
        self.setAccessibleName("Why this pixel")
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def _restyle(self) -> None:
        self.setMinimumSize(self._bench.px(240), self._bench.px(120))
        self.update()

    def show_pixel(self, shown: LookedAt | None, description: str = "") -> None:
        """Show another pixel."""
        self._shown = shown
        self.setAccessibleDescription(description)
        self.update()

    @property
    def has_foot(self) -> bool:
        """Whether there is the height to say what the eye gets."""
        return self.height() >= self._bench.px(_HEAD + 3 * 44 + _FOOT)

    def keep_free(self, width: int) -> None:
        """Leave the lower right corner to somebody else's button. [px]"""
        self._free = width

    def paintEvent(self, _event: QPaintEvent) -> None:
        if self._shown is None:
            return
        px = self._bench.px
        with QPainter(self) as painter:
            steps = self.fitting()
            self._paint_heads(painter, steps)
            foot = px(_FOOT) if self.has_foot else 0
            pitch = min((self.height() - px(_HEAD) - foot) / 3, px(_ROW * 1.3))
            for row, (channel, working) in enumerate(zip(Channel, self._shown.working.channels, strict=True)):
                box = QRectF(0, px(_HEAD) + row * pitch, self.width(), pitch)
                self._paint_row(painter, box, channel, working, steps)
            if foot:
                self._paint_eye(painter, QRectF(0, self.height() - foot, self.width(), foot))

    # Columns --------------------------------------------------------------------------------

    def _width(self, step: Step) -> float:
        type_, px = self._bench.type, self._bench.px
        if step is _PINS:
            assert self._shown is not None
            most = max(len(channel.pins) for channel in self._shown.working.channels)
            return max(most * px(_KEY_WIDTH + 3), type_.width(step.head, type_.sans(0.86)))
        return max(
            type_.width(step.widest, type_.mono(1.06, 500)),
            type_.width(step.widest_below, type_.sans(0.82)),
            type_.width(step.head, type_.sans(0.86)),
        )

    def _colour_width(self) -> float:
        return self._bench.px(22) + self._bench.type.width("888 of 255", self._bench.type.sans(0.82)) + 4

    def fitting(self) -> list[tuple[Step, float, float]]:
        """Return the steps that fit, each with its left edge and width."""
        assert self._shown is not None
        most = max(len(channel.pins) for channel in self._shown.working.channels)
        key = (self.width(), most, self._bench.type)
        if self._placed is None or self._placed[0] != key:
            self._placed = key, self._fit()
        return self._placed[1]

    def _fit(self) -> list[tuple[Step, float, float]]:
        steps, px = list(STEPS), self._bench.px
        colour = self._colour_width()
        widths = {step.head: self._width(step) for step in steps}

        def needed(gap: float) -> float:
            return colour + sum(widths[step.head] + gap for step in steps)

        while needed(px(_LEAST_GAP)) > self.width() and len(steps) > 2:
            steps.remove(min(steps, key=lambda step: step.missed))
        gap = px(_GAP) - max(0.0, needed(px(_GAP)) - self.width()) / len(steps)
        gap = max(gap, px(_LEAST_GAP))
        spare = max(0.0, self.width() - needed(gap)) / max(1, len(steps))
        left, placed = colour, []
        for step in steps:
            left += gap + min(spare, 2 * gap)
            placed.append((step, left, widths[step.head]))
            left += widths[step.head]
        return placed

    def _paint_heads(self, painter: QPainter, steps: list[tuple[Step, float, float]]) -> None:
        theme, type_, px = self._bench.theme, self._bench.type, self._bench.px
        face, ink = type_.sans(0.86), theme.color("dim")
        draw_text(painter, QRectF(0, 0, px(90), px(_HEAD)), "colour", face, ink)
        for step, left, width in steps:
            draw_text(painter, QRectF(left, 0, width + px(10), px(_HEAD)), step.head, face, ink)

    def _paint_row(
        self,
        painter: QPainter,
        box: QRectF,
        channel: Channel,
        working: ChannelWorking,
        steps: list[tuple[Step, float, float]],
    ) -> None:
        theme, px = self._bench.theme, self._bench.px
        middle = box.center().y()
        if channel is not Channel.RED:
            painter.setPen(theme.color("hairline"))
            painter.drawLine(QPointF(0, round(box.top())), QPointF(box.width(), round(box.top())))
        line = middle - (px(9) if box.height() >= px(_TWO_LINES) else 0)
        painter.setPen(trace_pen(self._bench, channel))
        painter.drawLine(QPointF(0, line), QPointF(px(15), line))
        asked = "test card" if working.wanted is None else f"{working.wanted} of 255"
        self._two_lines(
            painter, QRectF(px(22), box.top(), px(100), box.height()), channel.value, asked, channel
        )
        for step, left, width in steps:
            place = QRectF(left, box.top(), width + px(12), box.height())
            self._paint_chevron(painter, QPointF(left - px(13), line))
            if step is _PINS:
                self._paint_pins(painter, place, working)
                continue
            self._two_lines(painter, place, step.main(working), step.below(working))
            if step is STEPS[-1] and box.height() >= px(_TWO_LINES):
                bar = QRectF(left, middle + px(21), min(width, px(96)), px(3))
                self._paint_bar(painter, bar, channel, working.loaded_volts)

    def _two_lines(
        self, painter: QPainter, box: QRectF, main: str, below: str, channel: Channel | None = None
    ) -> None:
        theme, type_, px = self._bench.theme, self._bench.type, self._bench.px
        middle = box.center().y()
        low = box.height() < px(_TWO_LINES)
        first = QRectF(box.left(), middle - px(10 if low else 19), box.width(), px(20))
        second = QRectF(box.left(), middle + px(3), box.width(), px(16))
        face = type_.sans(1.0, 600) if channel else type_.mono(1.06, 500)
        ink = theme.channel(channel) if channel else theme.color("text")
        draw_text(painter, first, main, face, ink)
        if not low:
            draw_text(painter, second, below, type_.sans(0.82), theme.color("dim"))

    def _paint_chevron(self, painter: QPainter, centre: QPointF) -> None:
        px = self._bench.px
        pen = QPen(self._bench.theme.color("dim"), 1.4)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(pen)
        tip = QPointF(centre.x() + px(2), centre.y())
        painter.drawLine(QPointF(centre.x() - px(2), centre.y() - px(4)), tip)
        painter.drawLine(tip, QPointF(centre.x() - px(2), centre.y() + px(4)))

    def _paint_pins(self, painter: QPainter, box: QRectF, working: ChannelWorking) -> None:
        theme, type_, px = self._bench.theme, self._bench.type, self._bench.px
        idle = "0" if working.driven_low else "–"
        for place, bit in enumerate(working.pins):
            key = QRectF(
                box.left() + place * px(_KEY_WIDTH + 3),
                box.center().y() - px(_KEY_HEIGHT) / 2 - (px(4) if box.height() >= px(_TWO_LINES) else 0),
                px(_KEY_WIDTH),
                px(_KEY_HEIGHT),
            )
            fill = theme.color("text") if bit else None
            line = QPen(theme.color("outline"), 1.1)
            if not bit and not working.driven_low:
                line.setStyle(Qt.PenStyle.DashLine)
            outlined(painter, key, px(3), fill, line)
            ink = theme.color("panel" if bit else "text")
            draw_text(painter, key, "1" if bit else idle, type_.mono(0.95, 500), ink, align=_CENTRE)

    def _paint_bar(self, painter: QPainter, box: QRectF, channel: Channel, volts: float) -> None:
        theme = self._bench.theme
        part = min(max(volts / FULL_SCALE_VOLTS, 0.0), 1.0)
        painter.fillRect(box, theme.color("hairline"))
        painter.fillRect(
            QRectF(box.left(), box.top(), box.width() * part, box.height()), theme.channel(channel)
        )

    # What the eye gets ----------------------------------------------------------------------

    def _paint_eye(self, painter: QPainter, box: QRectF) -> None:
        assert self._shown is not None
        theme, type_, px = self._bench.theme, self._bench.type, self._bench.px
        painter.setPen(theme.color("hairline"))
        painter.drawLine(box.topLeft().toPoint(), box.topRight().toPoint())
        working = self._shown.working
        red, green, blue = (int(byte) for byte in srgb_bytes([c.light for c in working.channels]))
        patch = QRectF(box.left() + 1, box.top() + px(13), px(52), px(36))
        dark = not self._shown.verdict.standing.has_picture
        fill = QColor(0, 0, 0) if dark else QColor(red, green, blue)
        outlined(painter, patch, px(4), fill, QPen(theme.color("outline"), 1.1))
        left = patch.right() + px(14)
        upper, lower = box.top() + px(11), box.top() + px(31)
        small, ink = type_.sans(0.86), theme.color("dim")
        draw_text(
            painter,
            QRectF(left, upper, px(200), px(20)),
            self._shown.seen or "the eye sees all three",
            small,
            ink,
        )
        said = draw_text(
            painter,
            QRectF(left, lower, px(200), px(20)),
            f"{'otherwise' if dark else 'lightness'} L* {working.lightness:.0f}",
            type_.sans(1.0, 600),
            theme.color("text"),
        )
        beside = QRectF(left + said + px(5), lower, px(80), px(20))
        beside.setRight(min(beside.right(), box.right() - self._free))
        draw_caption(painter, beside, ("of 100",), small, ink)
        first = type_.width("lightness L* 100", type_.sans(1.0, 600)) + px(80)
        second = left + max(first, type_.width(self._shown.seen, small) + px(24))
        room = QRectF(second, upper, box.right() - second - self._free, px(20))
        draw_caption(painter, room, WEIGHTS, small, ink)
        below = room.translated(0, lower - upper)
        draw_caption(painter, below, self._arrives(), small, theme.color("text"))

    def _arrives(self) -> tuple[str, ...]:
        """Say what the way to the monitor does to the levels, and what is cut off; longest wording first."""
        assert self._shown is not None
        channels, full = self._shown.working.channels, format_fixed(FULL_SCALE_VOLTS, "V")
        worst = max(channels, key=lambda c: abs(c.shown_volts - c.loaded_volts))
        off = worst.shown_volts - worst.loaded_volts
        name = [*Channel][channels.index(worst)].value
        if any(c.shown_volts > FULL_SCALE_VOLTS + 5e-4 for c in channels):
            return (
                f"full brightness begins at {full}: what is above is cut off",
                f"above {full} is cut off",
                "cut off above full",
            )
        if max(abs(c.black_volts) for c in channels) > _FALSE_BLACK:
            dark = max(channels, key=lambda c: abs(c.black_volts))
            name, volts = [*Channel][channels.index(dark)].value, format_fixed(dark.black_volts, "V")
            return (
                f"{name} takes {volts} for black, so much stands in its window: that is taken off",
                f"{name} takes {volts} for black: that is taken off",
                f"{volts} taken for black",
            )
        if abs(off) < 1.5e-3:
            return f"nothing is cut off: full brightness begins at {full}", "nothing is cut off"
        change = f"{name} by {'+' if off > 0 else '−'}{abs(off) * 1e3:.0f} mV"
        return (
            f"cable, neighbours and the black of the porch change {change}",
            f"the way here changes {change}",
        )
