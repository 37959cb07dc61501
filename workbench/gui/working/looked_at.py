"""Which pixel is looked at, and its working."""

from dataclasses import dataclass

from workbench.gui.view_state import ViewState
from workbench.pipeline.result import Result
from workbench.project.document import Channel
from workbench.waveform.working import PixelWorking, pixel_working

__all__ = ["LookedAt", "looked_at"]


@dataclass(frozen=True, slots=True)
class LookedAt:
    """A pixel of the line shown, step by step."""

    working: PixelWorking
    in_picture: bool
    """Whether the pixel is one of the picture, and not of blanking."""
    flat: tuple[bool, bool, bool]
    """Channels whose light is cut off at full or at black. [red, green, blue]"""

    @property
    def place(self) -> str:
        """Return where the pixel is, in words."""
        return f"column {self.working.column}" if self.in_picture else "in blanking"

    @property
    def words(self) -> str:
        """Return code and volts of each channel, to be read aloud."""
        return "; ".join(
            f"{name.value} code {channel.code}, {channel.loaded_volts:.3f} V"
            for name, channel in zip(Channel, self.working.channels, strict=True)
        )


def looked_at(result: Result, view: ViewState) -> LookedAt | None:
    """Return the working of the pixel under the *here* cursor; none where there is no line."""
    line, project = result.scanline, result.project
    if line is None:
        return None
    blanking = project.mode.h.blanking
    pixel = view.pixel if view.pixel is not None else blanking
    pixel = min(max(pixel, 0), project.mode.h.total - 1)
    red, green, blue = (result.channels[channel].levels for channel in Channel)
    in_picture = pixel >= blanking and line.number <= project.mode.v.active
    working = pixel_working(
        line,
        pixel - blanking,
        (red, green, blue),
        project.driver,
        project.load,
        wanted=result.picture.wanted(pixel - blanking, line.number - 1) if in_picture else None,
    )
    r, g, b = (channel.light in (0.0, 1.0) for channel in working.channels)
    return LookedAt(working, in_picture, (r, g, b))
