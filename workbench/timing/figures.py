"""What is shown of a mode: the figures of line and frame."""

from workbench.timing.mode import Axis, Mode

__all__ = ["simulable", "timing_object"]


def timing_object(mode: Mode) -> dict[str, object]:
    """Return the ``timing`` object of the report and of ``mode --json``.

    SI units, nothing rounded. ``frame_rate_hz`` counts whole frames; ``field_rate_hz`` counts V
    sync pulses and differs from it for interlaced modes only.
    """
    return {
        "name": mode.name,
        "source": mode.source,
        "pixel_clock_hz": mode.pixel_clock_hz,
        "pixel_s": mode.pixel_s,
        "h": _axis_object(mode.h),
        "v": _axis_object(mode.v),
        "interlaced": mode.interlaced,
        "line_rate_hz": mode.line_rate_hz,
        "frame_rate_hz": mode.frame_rate_hz,
        "field_rate_hz": mode.field_rate_hz,
        "line_s": mode.line_s,
        "frame_s": mode.frame_s,
    }


def _axis_object(axis: Axis) -> dict[str, object]:
    return {
        "active": axis.active,
        "front_porch": axis.front_porch,
        "sync": axis.sync,
        "back_porch": axis.back_porch,
        "total": axis.total,
        "polarity": axis.polarity.value,
        "border": axis.border,
    }


def simulable(mode: Mode) -> str | None:
    """Return why the bench cannot show a mode's scanlines; none if it can."""
    if mode.interlaced:
        return (
            f"{mode.name} is interlaced: its two fields start half a line apart, and the scanline shown "
            "here knows one field only. Its figures are listed; choose a progressive mode to simulate."
        )
    return None
