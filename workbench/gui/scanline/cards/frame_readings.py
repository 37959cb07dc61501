"""Reads the frame under the pointer and at the scanline that is shown."""

from workbench.gui.scanline.cards.readout_line import ReadoutLine
from workbench.gui.scanline.content.cursors import Place
from workbench.gui.scanline.content.words import volts
from workbench.gui.scanline.lanes.view import LanesView
from workbench.project.document import Channel, Project

__all__ = ["FrameReadings", "frame_place", "frame_scanline"]


def frame_place(scanline: int, active: int, total: int) -> int:
    """Return where a scanline lies in the frame, from 0 at the start of the vertical front porch. [1]"""
    return (scanline - 1 - active) % total


def frame_scanline(place: int, active: int, total: int) -> int:
    """Return the scanline at a place of the frame; the inverse of :func:`frame_place`. [1]"""
    return (place + active) % total + 1


def _span(low: float, high: float) -> str:
    return volts(low) if volts(low) == volts(high) else f"{volts(low)} … {volts(high)}"


class FrameReadings:
    """Says what a line of the frame reaches, where the pointer is."""

    def __init__(self, plot: LanesView, line: ReadoutLine) -> None:
        self._plot, self._line = plot, line

    def scanline_at(self, time_s: float) -> int:
        """Return the scanline at a time of the frame. [1]"""
        axis = self._plot.shown.axis
        return frame_scanline(self._place_at(time_s), axis.active, axis.total)

    def point(self, time_s: float | None) -> None:
        """Say what stands under the pointer."""
        plot, places = self._plot, self._plot.places
        if time_s is None:
            plot.pointer_line.stand(places, None)
            plot.pointer_card.say(places, None, "", ())
            return
        x = plot.time.x(time_s)
        plot.pointer_line.stand(places, x)
        plot.pointer_card.say(places, x, self._words(self._place_at(time_s)), ())

    def place(self, project: Project) -> None:
        """Mark the scanline that is shown, and say what it reaches."""
        plot, shown = self._plot, self._plot.shown
        place = frame_place(project.scanline, shown.axis.active, shown.axis.total)
        plot.stand(Place.HERE, (place + 0.5) * shown.count_s, lit=True)
        plot.stand(Place.THERE, None, lit=False)
        plot.hide_cards()
        plot.edge_marks.clear()
        # On a projector the areas are named where the line would stand; on a low, folded plot the line
        # stands where the areas would be named.
        self._line.setVisible(not (plot.bench.projecting and plot.places.low))
        there = plot.places.low and plot.places.folded
        plot.strip.show_names(shown=not plot.bench.projecting and not there)
        self._line.show_sentence(f"here {self._words(place)} · a click goes to another line")

    def _place_at(self, time_s: float) -> int:
        shown = self._plot.shown
        return min(max(int(time_s / shown.count_s), 0), shown.axis.total - 1)

    def _words(self, place: int) -> str:
        shown = self._plot.shown
        region = shown.axis.region(place)
        number = frame_scanline(place, shown.axis.active, shown.axis.total)
        samples = shown.colour_volts.shape[1] // shown.axis.total
        at = place * samples
        levels = [
            f"{channel.value} {_span(float(low[at]), float(high[at]))}"
            for channel, low, high in zip(Channel, *shown.reached_volts, strict=True)
        ]
        return f"line {number} · {region.value} · {', '.join(levels)} V"
