"""Brings a result into the plot and the ruler: the line, or the whole frame."""

from workbench.circuit.floating import levels_at
from workbench.gui.bench import Bench
from workbench.gui.scanline.content.areas import frame_areas, line_areas, moved_stretches
from workbench.gui.scanline.content.frame import shown_frame
from workbench.gui.scanline.content.frame_count import FrameCount
from workbench.gui.scanline.content.scales import volts_top
from workbench.gui.scanline.content.shown import Shown, shown_line
from workbench.gui.scanline.content.words import time_decimals, v_sync_sentence
from workbench.gui.scanline.lanes.end_names import HeldLevel, too_high_of
from workbench.gui.scanline.lanes.view import LanesView
from workbench.gui.scanline.ruler import LineRuler, RulerText
from workbench.pipeline.result import Result
from workbench.pipeline.run import sync_drive
from workbench.pipeline.screen import LineSeen, line_seen
from workbench.project.document import Channel, Project
from workbench.waveform.eye import strip_colours
from workbench.waveform.scanline import Scanline

__all__ = ["Showing"]


class Showing:
    """Fills the plot from the newest result; what did not change is not filled again."""

    def __init__(self, bench: Bench, plot: LanesView, ruler: LineRuler, frame_count: FrameCount) -> None:
        self._bench, self._plot, self._ruler = bench, plot, ruler
        self._frame_count = frame_count
        self._line: tuple[Scanline, LineSeen | None, Shown] | None = None
        self.frame = False
        """Whether the whole frame is shown."""

    def show(self, project: Project, result: Result) -> None:
        """Show the line or the frame of a result that has one."""
        if result.scanline is None:
            return
        seen = line_seen(result, self._bench.monitor)
        if self.frame:
            shown, areas = self._frame(project, result, seen), frame_areas(project)
            sentence: tuple[str, ...] = (f"H sync: {project.mode.v.total} pulses, one a line",)
        else:
            self._frame_count.stop()
            shown = self._shown_line(project, result.scanline, seen)
            areas = line_areas(project, result.picture)
            sentence = v_sync_sentence(project.mode, project.scanline)
        levels = (result.channels[channel].levels.volts_by_code for channel in Channel)
        highest = max(float(volts.max()) for volts in levels)
        reached = max(highest, float(shown.colour_volts.max()) / 1.03)
        self._plot.show_traces(
            shown, top_volts=volts_top(reached), sentence=sentence, too_high=too_high_of(result.findings)
        )
        self._plot.strip.show_areas(areas)
        self._show_counts(project)
        self.light(result)

    def light(self, result: Result) -> None:
        """Light what is chosen, pointed at or held."""
        view, project = self._bench.view, result.project
        channel = result.channels[view.channel]
        part, moved = view.pointed or view.chosen, []
        if part is not None and result.scanline is not None and not self.frame:
            codes = result.scanline.codes[list(Channel).index(view.channel)]
            moved = moved_stretches(channel.network, codes, part)
        words = (f"{part} moves these", f"moved by {part}", f"by {part}")
        self._plot.show_moved(moved, words if moved else ())
        code = view.held(view.channel)
        held = []
        if code is not None and code < len(channel.levels.volts_by_code):
            driver, load, floating = project.driver, project.load, view.floating(view.channel)
            at = levels_at(channel.network, channel.levels, driver, load, code, floating)
            held = [HeldLevel(code, at.volts)]
        self._plot.show_held(held)

    def _shown_line(self, project: Project, scanline: Scanline, seen: LineSeen | None) -> Shown:
        if self._line is None or self._line[0] is not scanline or self._line[1] != seen:
            high = sync_drive(project.driver, project.sync)
            volts = (high.h_high_volts, high.v_high_volts)
            taken = () if seen is None else (seen.black_volts, seen.full_volts)
            shown = shown_line(
                scanline,
                volts,
                strip_colours(scanline, *taken),
                seen=project.scanline <= project.mode.v.active,
                dark=seen is None,
            )
            self._line = scanline, seen, shown
        return self._line[2]

    def _frame(self, project: Project, result: Result, seen: LineSeen | None) -> Shown:
        counts = self._frame_count.ask(result.picture)
        levels = [result.channels[channel].levels.volts_by_code for channel in Channel]
        high = sync_drive(project.driver, project.sync)
        return shown_frame(project.mode, counts, levels, (high.h_high_volts, high.v_high_volts), seen)

    def _show_counts(self, project: Project) -> None:
        mode = project.mode
        if self.frame:
            self._ruler.show_counts(mode.v, mode.line_s, FRAME_TEXT)
        else:
            text = RulerText("px", "µs", 1e-6, time_decimals(mode), "line")
            self._ruler.show_counts(mode.h, mode.pixel_s, text)


FRAME_TEXT = RulerText("lines", "ms", 1e-3, 3, "frame")
