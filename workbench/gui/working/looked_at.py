"""Which pixel is looked at, and its working."""

from dataclasses import dataclass

from workbench.gui.bench import Bench
from workbench.pipeline.result import Result
from workbench.pipeline.screen import pixel_seen, verdict_on
from workbench.project.document import Channel
from workbench.waveform.verdict import Standing, Verdict
from workbench.waveform.working import PixelWorking, pixel_working, working_text

__all__ = ["LookedAt", "looked_at"]


@dataclass(frozen=True, slots=True)
class LookedAt:
    """A pixel of the line shown, step by step."""

    working: PixelWorking
    verdict: Verdict
    """What the monitor makes of the signal."""
    in_picture: bool
    """Whether the pixel is one of the picture, and not of blanking."""
    flat: tuple[bool, bool, bool]
    """Channels whose light is cut off at full or at black. [red, green, blue]"""

    @property
    def place(self) -> str:
        """Return where the pixel is, in words."""
        if not self.in_picture:
            return "in blanking"
        cut = "" if self.working.on_screen else ", beyond the screen's edge"
        return f"column {self.working.column}{cut}"

    @property
    def placed(self) -> tuple[str, ...]:
        """Return which pixel this is and when it is looked at, longest wording first."""
        where = f"{self.place} · scanline {self.working.scanline}"
        return f"{where} · {self.working.when}", f"{where} · {self.working.when_shortly}", where

    @property
    def seen(self) -> str:
        """Return why the light is not on the screen as it is reckoned; nothing where it is."""
        standing = self.verdict.standing
        if not standing.has_picture:
            return f"{standing.value}: the screen is dark"
        return f"{standing.value}: a guess" if standing is Standing.GUESSED else ""

    @property
    def text(self) -> str:
        """Return the working as lines of text, for copying and for paper."""
        standing = self.verdict.standing
        known = standing.has_picture and standing is not Standing.GUESSED
        said = "" if known else f"\n{standing.value}: {self.verdict.sentence}\n"
        return working_text(self.working) + said

    @property
    def words(self) -> str:
        """Return code and volts of each channel, to be read aloud."""
        return "; ".join(
            f"{name.value} code {channel.code}, {channel.loaded_volts:.3f} V"
            for name, channel in zip(Channel, self.working.channels, strict=True)
        )


def looked_at(result: Result, bench: Bench) -> LookedAt | None:
    """Return the working of the pixel under the *here* cursor; none where there is no line.

    The monitor is the one that shows the picture, so that both say the same.
    """
    line, project = result.scanline, result.project
    if line is None:
        return None
    blanking = project.mode.h.blanking
    pixel = bench.view.pixel if bench.view.pixel is not None else blanking
    pixel = min(max(pixel, 0), project.mode.h.total - 1)
    red, green, blue = (result.channels[channel].levels for channel in Channel)
    in_picture = pixel >= blanking and line.number <= project.mode.v.active
    working = pixel_working(
        line,
        pixel - blanking,
        (red, green, blue),
        project.driver,
        project.load,
        pixel_seen(result, bench.monitor, pixel, line.number - 1),
        wanted=result.picture.wanted(pixel - blanking, line.number - 1) if in_picture else None,
    )
    r, g, b = (channel.light in (0.0, 1.0) for channel in working.channels)
    return LookedAt(working, verdict_on(result, bench.monitor), in_picture, (r, g, b))
