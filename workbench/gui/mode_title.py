"""How a mode is called on the bench."""

from workbench.timing.mode import Mode
from workbench.units import format_quantity

__all__ = ["mode_title"]


def mode_title(mode: Mode) -> str:
    """Return a mode as it is written on the bench: ``640 × 480 · 60 Hz``."""
    size = f"{mode.h.active} × {mode.v.active}"
    _, at, rate = mode.name.partition("@")
    if not at:
        return f"{size} · {format_quantity(mode.field_rate_hz, 'Hz')}"
    digits = next((rate.removesuffix(end) for end in ("RB2", "RB", "i") if rate.endswith(end)), rate)
    suffix = rate.removeprefix(digits)
    words = {"": "", "i": " interlaced"}.get(suffix, f" {suffix}")
    return f"{size} · {digits} Hz{words}"
