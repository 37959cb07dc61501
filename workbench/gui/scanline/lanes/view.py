"""The scene of the plot: lanes, strip, names, cursors and cards on one time axis."""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QRectF, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.scanline.cards.edge_card import EdgeCard
from workbench.gui.scanline.cards.pointer_card import PointerCard
from workbench.gui.scanline.cards.readout_card import ReadoutCard
from workbench.gui.scanline.content.cursors import Place
from workbench.gui.scanline.content.scales import TimeScale
from workbench.gui.scanline.content.shown import Shown, blank_line
from workbench.gui.scanline.lanes.area_names import AreaNames
from workbench.gui.scanline.lanes.axis import Tick
from workbench.gui.scanline.lanes.backdrop import WHITE_WINDOW_VOLTS, Backdrop, Ground
from workbench.gui.scanline.lanes.cursor_lines import PointerLine
from workbench.gui.scanline.lanes.edge_marks import EdgeMarks
from workbench.gui.scanline.lanes.end_names import (
    HeldLevel,
    TooHigh,
    colour_ends,
    named_levels,
    reaches_white,
    sync_ends,
)
from workbench.gui.scanline.lanes.lane import Lane
from workbench.gui.scanline.lanes.margin import Margin
from workbench.gui.scanline.lanes.places import Places, arrange
from workbench.gui.scanline.lanes.pointing import PointingView
from workbench.gui.scanline.lanes.strip import Strip
from workbench.gui.scanline.lanes.styles import (
    FAN,
    Look,
    drawing_order,
    drops,
    ghost_styles,
    sync_styles,
    trace_styles,
)
from workbench.gui.scanline.lanes.sync_places import SYNC_RANGE, in_sync_lane
from workbench.gui.scanline.lanes.tick_places import sync_ticks, time_ticks, volt_ticks
from workbench.gui.scanline.lanes.uneven_places import uneven_places
from workbench.project.document import Channel

__all__ = ["LanesView"]

THINNED = 256
"""Samples of each trace that are looked at to find a calm place. [1]"""
_LEAST_PIXEL = 12
"""Uneven pixels narrower than this are not told apart. [design px]"""


class LanesView(PointingView):
    """Draws what is shown, and tells where it is clicked."""

    placed = Signal(float, object)
    """A click: time on the axis, keyboard modifiers. [s]"""
    range_changed = Signal()
    """Other times are in sight, or the lanes lie elsewhere."""
    reset = Signal()
    """A double click."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(bench, parent)
        self._shown = blank_line(bench.session.project.mode)
        self._look = Look()
        self._top_volts, self._bottom_volts = 0.8, 0.0
        self._too_high: TooHigh | None = None
        self._ideal_white = False
        self._held: tuple[HeldLevel, ...] = ()
        self._sentence: tuple[str, ...] = ()
        self._moves: tuple[str, ...] = ()
        self._told: tuple[TimeScale, Places] | None = None
        for widget in (self, self.viewport()):
            widget.setAccessibleName("scanline plot")
        self.colour = Lane(bench, self._volt_ticks, None)
        self.sync = Lane(bench, self._sync_ticks, self._time_ticks)
        self.sync.box.setXLink(self.colour.box)
        self.backdrop, self.strip, self.margin = Backdrop(bench), Strip(bench), Margin(bench)
        self.area_names = AreaNames(bench)
        self.pointer_line, self.pointer_card = PointerLine(bench), PointerCard(bench)
        self.readout_card, self.edge_card = ReadoutCard(bench), EdgeCard(bench)
        self.cards = (self.readout_card, self.edge_card)
        self.edge_marks = EdgeMarks(bench)
        self._fill_scene()
        self._limit()
        self.restyle()

    def _fill_scene(self) -> None:
        items = (
            self.backdrop,
            self.colour.plot,
            self.sync.plot,
            self.strip,
            self.area_names,
            self.margin,
            self.edge_marks,
            *self.lines.values(),
            self.pointer_line,
            self.pointer_card,
            *self.cards,
        )
        for item in items:
            self.scene().addItem(item)
        for lane in (self.colour, self.sync):
            lane.box.clicked.connect(lambda x, keys: self.placed.emit(x * self._unit_s, keys))
            lane.box.reset.connect(self.reset)
        self.colour.box.sigXRangeChanged.connect(lambda *_: self.refresh())

    @property
    def shown(self) -> Shown:
        """The traces that are shown."""
        return self._shown

    @property
    def top_volts(self) -> float:
        """Top of the colour lane's scale. [V]"""
        return self._top_volts

    @property
    def held(self) -> tuple[HeldLevel, ...]:
        """The levels of held codes that are drawn."""
        return self._held

    @property
    def time(self) -> TimeScale:
        """How the times in sight lie on the screen."""
        first, last = self.colour.box.viewRange()[0]
        lane = self.places.colour
        return TimeScale(first * self._unit_s, last * self._unit_s, lane.left(), lane.right())

    @property
    def _unit_s(self) -> float:
        return self._shown.unit.seconds

    # What is shown ------------------------------------------------------------------------

    def show_traces(
        self, shown: Shown, *, top_volts: float, sentence: tuple[str, ...], too_high: TooHigh | None
    ) -> None:
        """Show other traces on the same stretch of time, if it still is within them."""
        before = self._shown
        other_span = (shown.span_s, shown.unit) != (before.span_s, before.unit)
        self._shown, self._sentence, self._top_volts = shown, sentence, top_volts
        self._too_high = too_high
        if shown is not before:
            self._ideal_white = reaches_white(shown)
            self._bottom_volts = min(0.0, float(shown.colour_volts.min()))
            self._fill_traces()
        if other_span:
            self._limit()
        self.strip.show_colours(
            shown.strip, shown.count_s, shown.unseen, dark=shown.dark, starts=shown.starts
        )
        self._set_heights()
        self.refresh()

    def show_look(self, look: Look) -> None:
        """Fan the traces or not, show the ideal or not, dash them or not."""
        if look != self._look:
            self._look = look
            self._fill_traces()
            self.refresh()

    def show_held(self, held: Sequence[HeldLevel]) -> None:
        """Draw the levels of held codes."""
        if tuple(held) != self._held:
            self._held = tuple(held)
            self.refresh()

    def show_moved(self, moved: Sequence[tuple[int, int]], words: tuple[str, ...]) -> None:
        """Light the pixels a part moves, and say so, longest wording first."""
        self.strip.show_moved(moved)
        if words != self._moves:
            self._moves = words
            self.refresh()

    def show_span(self, first_s: float, last_s: float) -> None:
        """Bring a stretch of time into sight. [s]"""
        self.colour.box.setXRange(first_s / self._unit_s, last_s / self._unit_s, padding=0)

    def choose_channel(self) -> None:
        """Let the chosen channel lie true and on top."""
        self._fill_traces()
        self.refresh()

    def stand(self, place: Place, time_s: float | None, *, lit: bool) -> None:
        """Put a cursor's line at a time, or out of sight; ``lit`` if the keys move it."""
        time = self.time
        seen = time_s is not None and time.first_s <= time_s <= time.last_s
        x = time.x(time_s) if time_s is not None and seen else None
        self.lines[place].stand(self.places, x, lit=lit and self.hasFocus())
        self.part_tags()

    def hide_cards(self) -> None:
        """Take the cards away."""
        self.readout_card.set_box(QRectF())
        self.edge_card.set_box(QRectF())

    def _limit(self) -> None:
        span, count = self._shown.span_s / self._unit_s, self._shown.count_s / self._unit_s
        least = min(2 * count, span)
        for lane in (self.colour, self.sync):
            lane.box.setLimits(xMin=0, xMax=span, minXRange=least, maxXRange=span)

    def _fill_traces(self) -> None:
        shown, chosen = self._shown, self.bench.view.channel
        order = [list(Channel).index(channel) for channel in drawing_order(chosen)]
        step = shown.step_s / self._unit_s
        self.colour.traces.set_samples(shown.colour_volts[order], step)
        self.colour.traces.set_styles(trace_styles(self.bench, chosen, self._look))
        thin = shown.lowest_volts if shown.whole_frame else shown.ideal_volts
        if thin is not None and (self._look.ideal or shown.whole_frame):
            self.colour.ghosts.set_samples(thin[order], step)
            styles = ghost_styles(self.bench, chosen, self._look, frame=shown.whole_frame)
            self.colour.ghosts.set_styles(styles)
            self.colour.ghosts.show()
        else:
            self.colour.ghosts.hide()
        self.sync.traces.set_samples(in_sync_lane(shown.sync_volts, shown.sync_high_volts), step)
        self.sync.traces.set_styles(sync_styles(self.bench, self._look, frame=shown.whole_frame))

    def _set_heights(self) -> None:
        """Leave room under 0 V for the fan, and fit the axes."""
        lane, room = self.places.colour, self.bench.px(3.5 * FAN)
        top = self._top_volts * 1.035
        under = max(room / max(lane.height() - room, 1) * top, -self._bottom_volts * 1.1)
        self.colour.box.setYRange(-under, top, padding=0)
        self.sync.box.setYRange(*SYNC_RANGE, padding=0)

    # Places -------------------------------------------------------------------------------

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        # Qt tells the first size before there is anything to lay out.
        if self.cards:
            self.lay_out()

    def lay_out(self) -> None:
        """Put everything where it belongs for the size in force."""
        self.places = arrange(self.width(), self.height(), self.bench.px, leaders=self.bench.projecting)
        self.colour.place(self.places.colour)
        self.sync.place(self.places.sync, self.places.axis.height())
        self._set_heights()
        self.refresh()

    def restyle(self) -> None:
        """Take colours and sizes again."""
        self.setBackground(self.bench.theme.color("panel"))
        self.colour.restyle()
        self.sync.restyle()
        self._fill_traces()
        for item in (
            self.backdrop,
            self.strip,
            self.area_names,
            self.margin,
            self.edge_marks,
            self.readout_card,
            self.edge_card,
        ):
            item.update()
        self.viewport().update()
        self.lay_out()

    def refresh(self) -> None:
        """Bring everything that lies over or under the traces to the stretch of time in sight."""
        time, places = self.time, self.places
        first, last = self.colour.box.viewRange()[0]
        at = [time.x(value * self._unit_s) for value, _ in self._time_ticks(first, last, places.axis.width())]
        low, high = self.colour.box.viewRange()[1]
        levels = self._volt_ticks(low, high, places.colour.height())
        top, bottom = (self.volts_y(volts) for volts in reversed(WHITE_WINDOW_VOLTS))
        self.backdrop.show_ground(
            Ground(
                places=places,
                time=time,
                axis=self._shown.axis,
                count_s=self._shown.count_s,
                time_ticks_x=tuple(round(x) for x in at),
                volt_ticks_y=tuple(round(self.volts_y(value)) for value, _ in levels),
                window_y=(round(top), round(bottom)),
                held_y=tuple(self.volts_y(held.volts) for held in self._held),
                uneven_x=uneven_places(self._shown, time, self.bench.px(_LEAST_PIXEL)),
                sentence=self._sentence,
                sentence_y=self._sync_y(0.2 if self._v_sync_high(time) else 0.8),
            )
        )
        self.strip.place(places, time)
        if self.bench.projecting:
            picture = "active picture" if self._shown.seen else "no picture"
            self.area_names.name_areas(places, time, self._shown.axis, self._shown.count_s, picture)
        else:
            self.area_names.set_box(QRectF())
        self._show_margin(time)
        if (time, places) != self._told:
            self._told = time, places
            self.range_changed.emit()

    def heights_between(self, left: float, right: float) -> NDArray[np.floating]:
        """Return the heights of the colour traces between two places, thinned. [px]"""
        shown, time = self._shown, self.time
        first, last = (int(max(time.time_s(x), 0.0) / shown.step_s) for x in (left, right))
        stride = max(1, (last - first) // THINNED)
        zero, per_volt = self.volts_y(0.0), self.volts_y(1.0) - self.volts_y(0.0)
        return zero + per_volt * shown.colour_volts[:, first : last + 1 : stride].ravel()

    def volts_y(self, volts: float) -> float:
        """Return where a level lies in the colour lane. [px]"""
        low, high = self.colour.box.viewRange()[1]
        lane = self.places.colour
        return lane.bottom() - (volts - low) * lane.height() / ((high - low) or 1.0)

    def _sync_y(self, value: float) -> float:
        low, high = SYNC_RANGE
        return self.places.sync.bottom() - (value - low) * self.places.sync.height() / (high - low)

    def _v_sync_high(self, time: TimeScale) -> bool:
        """Return whether V sync is high at the right end of what is in sight."""
        volts, high = self._shown.sync_volts[1], self._shown.sync_high_volts[1]
        return float(volts[self._sample_at(time.last_s)]) > high / 2

    def _sample_at(self, time_s: float) -> int:
        return min(max(round(time_s / self._shown.step_s), 0), self._shown.colour_volts.shape[1] - 1)

    def _show_margin(self, time: TimeScale) -> None:
        shown = self._shown
        end = self._sample_at(time.last_s)
        below = drops(self.bench.view.channel, fanned=self._look.fanned, pitch=self.bench.px(FAN))
        ideal = self._look.ideal and self._ideal_white
        self.margin.show_names(
            self.places,
            colour_ends(self.bench.theme, shown, end, self.volts_y, below),
            sync_ends(self.bench.theme, shown, end, self._sync_y),
            named_levels(self.volts_y, self._held, ideal=ideal, too_high=self._too_high),
            unit=shown.unit.symbol,
            moves=self._moves,
        )

    def _volt_ticks(self, low: float, high: float, room: float) -> list[Tick]:
        return volt_ticks(low, high, room, self.bench.px(38))

    def _sync_ticks(self, _low: float, _high: float, _room: float) -> list[Tick]:
        plain = self.places.low or self.places.folded
        return [] if plain else sync_ticks(self._shown.sync_high_volts)

    def _time_ticks(self, first: float, last: float, room: float) -> list[Tick]:
        return time_ticks(first, last, room, self.bench.px(52))
