"""Reads the line at the cursors and the pointer, and fills the cards there is room for."""

import numpy as np
from PySide6.QtCore import QPointF, QRectF

from workbench.gui.bench import Bench
from workbench.gui.scanline.cards.edge_card import LEAST_HEIGHT, EdgeView
from workbench.gui.scanline.cards.marking import Marking
from workbench.gui.scanline.cards.readout_card import FORMS, Readout
from workbench.gui.scanline.cards.readout_line import ReadoutLine
from workbench.gui.scanline.content.cursors import Cursors, Place
from workbench.gui.scanline.content.edge_marks import edge_marks
from workbench.gui.scanline.content.edges import close_up, nearest_edge
from workbench.gui.scanline.content.words import nanoseconds, pixel_words, pointer_words, volts
from workbench.gui.scanline.lanes.styles import FAN, Look, drawing_order, drops
from workbench.gui.scanline.lanes.view import LanesView
from workbench.pipeline.result import Result
from workbench.project.document import Channel
from workbench.timing.mode import Mode
from workbench.waveform.reading import between, reading_at

__all__ = ["Readings"]

MARGIN = 8
"""Distance of the cards from the lane's edge, and from each other. [design px]"""
SPARE = 14
"""Room the cards take beyond what they need, where there is more. [design px]"""
PINNED_LANE = 110
"""On a projector the keys show the readings beside the cursor in a lane of this height. [design px]"""
LIT_VOLTS, LIT_PART = 0.02, 0.2
"""A colour this far from 0 V, for this part of blanking, is no end of an edge but stands there. [V] [1]"""


class Readings:
    """Fills the readout, as a card or a line, the close-up, and what stands beside the pointer."""

    def __init__(self, bench: Bench, view: LanesView, line: ReadoutLine, cursors: Cursors) -> None:
        self._bench, self._view, self._line, self._cursors = bench, view, line, cursors
        self._marking = Marking(view, cursors)
        self._result: Result | None = None
        self._pointed_s: float | None = None
        self.look = Look()

    def show_result(self, result: Result) -> None:
        """Read another line."""
        self._result = result

    def readout(self) -> Readout | None:
        """Return what both cursors read."""
        result = self._result
        if result is None or result.scanline is None:
            return None
        line = result.scanline
        here, there = (reading_at(line, self._cursors.time_s(place)) for place in Place)
        most = max(result.channels[channel].network.n_codes for channel in Channel) - 1
        return Readout(line.mode, here, there, between(line, here, there), len(str(most)))

    def point(self, time_s: float | None) -> None:
        """Say what stands under the pointer."""
        self._pointed_s = time_s
        self._say()

    def _say(self) -> None:
        """Read the line beside the pointer; on a projector, where no other readout is, at the cursor that
        the keys move.
        """
        places, time, time_s = self._view.places, self._view.time, self._pointed_s
        if time_s is not None and not time.first_s <= time_s <= time.last_s:
            time_s = None
        self._view.pointer_line.stand(places, None if time_s is None else time.x(time_s))
        if time_s is None and self._pinned:
            time_s = self._cursors.time_s(self._cursors.active)
        line = self._result.scanline if self._result else None
        if time_s is None or line is None or not time.first_s <= time_s <= time.last_s:
            self._view.pointer_card.say(places, None, "", ())
            return
        reading = reading_at(line, time_s)
        values = tuple(volts(value) for value in reading.volts[:3])
        words = pointer_words(reading, line.mode)
        taken = self._view.heights_between
        self._view.pointer_card.say(places, time.x(time_s), words, values, taken)

    @property
    def _pinned(self) -> bool:
        tall = self._view.places.colour.height() >= self._bench.px(PINNED_LANE)
        return self._bench.projecting and self._view.places.low and tall and self._view.by_key

    def place(self) -> None:
        """Put readout and close-up where there is room for them, and fill them; without the close-up, mark
        on the plot what it would show.
        """
        readout = self.readout()
        if self._result is None or readout is None:
            self._view.hide_cards()
            self._view.edge_marks.clear()
            return
        self._place_cards(readout)
        self._marking.mark(self._result, drawn=self._view.edge_card.box.isEmpty())

    def _place_cards(self, readout: Readout) -> None:
        card, room = self._view.readout_card, self._card_room(readout.mode)
        sizes = ((form, card.size_for(readout, form)) for form in FORMS)
        fits = next(
            ((f, s) for f, s in sizes if s.width() <= room.width() and s.height() <= room.height()), None
        )
        as_line = fits is None and not (self._bench.projecting and self._view.places.low)
        self._line.setVisible(as_line)
        there = as_line and self._view.places.low and self._view.places.folded
        self._view.strip.show_names(shown=not there and not self._bench.projecting)
        self._line.show_readout(readout)
        self._say()
        if fits is None:
            self._view.hide_cards()
            return
        form, size = fits
        widest = size.width() + self._bench.px(SPARE)
        box = QRectF(room.left(), room.top(), min(room.width(), widest), size.height())
        card.set_box(box)
        card.show_readout(readout, form)
        gap = self._bench.px(MARGIN + 6)
        under = QRectF(box.bottomLeft() + QPointF(0, gap), QPointF(box.right(), room.bottom()))
        under.setHeight(min(under.height(), 1.6 * under.width()))
        self._place_edge(under)

    @property
    def _blanking_is_lit(self) -> bool:
        """Whether a colour stands in blanking, which cards would hide."""
        line = self._result.scanline if self._result else None
        if line is None:
            return False
        blanking = line.volts[:3, : line.mode.h.blanking * line.samples_per_pixel]
        lit = np.abs(blanking).max(axis=0) > LIT_VOLTS
        return float(lit.mean()) > LIT_PART

    def _card_room(self, mode: Mode) -> QRectF:
        """Return the part of the colour lane that is blanking, while the whole line is in sight."""
        view, places = self._view, self._view.places
        time = view.time
        whole = time.last_s - time.first_s > 0.999 * mode.line_s
        if places.folded or not whole or self._blanking_is_lit:
            return QRectF()
        margin = self._bench.px(MARGIN)
        right = time.x(mode.h.blanking * mode.pixel_s) - self._bench.px(5)
        lane = places.colour
        top, bottom = lane.top() + margin, lane.bottom() - self._bench.px(34)
        return QRectF(lane.left() + margin, top, right - lane.left() - margin, bottom - top)

    def _place_edge(self, box: QRectF) -> None:
        """Show the edge nearest to the cursor that was moved last."""
        result, channel = self._result, self._bench.view.channel
        scanline = result.scanline if result else None
        if result is None or scanline is None:
            return
        pixel = nearest_edge(scanline.codes, self._cursors.pixel(self._cursors.active))
        if pixel is None or box.height() < self._bench.px(LEAST_HEIGHT):
            self._view.edge_card.set_box(QRectF())
            return
        steps = {c: result.channels[c].step for c in Channel}
        slowest_s = max(max(step.settle_s, 2 * step.rise_s) for step in steps.values())
        around_s = min(max(2.6 * slowest_s, 0.3 * scanline.mode.pixel_s), 6 * scanline.mode.pixel_s)
        edge = close_up(scanline, pixel, channel, around_s=around_s)
        step = steps[edge.channel or channel]
        marks = edge_marks(step, scanline.mode.pixel_s)
        below = drops(channel, fanned=self.look.fanned, pitch=self._bench.px(FAN))
        order = drawing_order(channel)
        self._view.edge_card.set_box(box)
        self._view.edge_card.show_edge(
            EdgeView(
                edge=edge,
                order=order,
                drops=tuple(below[c] for c in order),
                dashed=self.look.dashed,
                top_volts=self._view.top_volts,
                title=f"edge at {pixel_words(pixel, scanline.mode)}",
                figures=(
                    ("10 to 90 %", nanoseconds(step.rise_s)),
                    ("to ½ LSB", nanoseconds(step.settle_s)),
                    *((f"{m.name} {m.size}", nanoseconds(m.after_s)) for m in marks if not m.settled),
                ),
                marks=marks,
            )
        )
