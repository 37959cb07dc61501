"""How a mode is called on the bench."""

from workbench.timing.mode import Mode

__all__ = ["mode_title"]


def mode_title(mode: Mode) -> str:
    """Return a mode as it is written on the bench: ``640 × 480 · 60 Hz``."""
    size = f"{mode.h.active} × {mode.v.active}"
    _, at, rate = mode.name.partition("@")
    if not at:
        return f"{size} · {mode.field_rate_hz:.4g} Hz"
    digits = rate.rstrip("RBi2") if rate.endswith("RB2") else rate.rstrip("RBi")
    suffix = rate[len(digits) :]
    words = {"": "", "i": " interlaced"}.get(suffix, f" {suffix}")
    return f"{size} · {digits} Hz{words}"
