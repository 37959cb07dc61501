"""The card that lists every display mode of the tables, and works others out by formula."""

from PySide6.QtWidgets import QWidget

from workbench.errors import TimingError
from workbench.gui.bench import Bench
from workbench.gui.widgets.choice_list import Row
from workbench.gui.widgets.search_card import SearchCard
from workbench.timing.figures import simulable
from workbench.timing.mode import Mode
from workbench.timing.request import Request, read_request
from workbench.timing.search import find_mode
from workbench.timing.standards import KNOWN

__all__ = ["ModeChooser", "mode_rows", "mode_title"]

FORMULAS = ("cvt", "cvt-rb", "cvt-rb2", "gtf")

CAUTION = "A display that is given rates outside its range may be harmed: look at its manual first."


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


def mode_rows(text: str) -> list[Row]:
    """Return the modes whose title, name or source hold every word of a text.

    The one that the text names outright comes first. A size and rate that no table holds is worked
    out by the formulas.
    """
    words = text.lower().replace("x", " ").replace("×", " ").replace("@", " ").split()
    found = [mode for mode in KNOWN if all(word in _searched(mode) for word in words)]
    named = _named(text)
    found.sort(key=lambda mode: mode is not named)
    return [_row(mode) for mode in found or _worked_out(text)]


def _named(text: str) -> Mode | None:
    """Return the mode of the tables that a text names outright."""
    try:
        return find_mode(text)
    except TimingError:
        return None


def _searched(mode: Mode) -> str:
    return f"{mode_title(mode)} {mode.source} {mode.h.active}x{mode.v.active} {mode.name}".lower()


def _worked_out(text: str) -> list[Mode]:
    """Return what the formulas make of a size and rate; nothing if the text is no such thing."""
    try:
        request = read_request(text)
    except TimingError:
        return []
    if not isinstance(request, Request):
        return []
    made = []
    for way in FORMULAS:
        try:
            made.append(find_mode(text, by=way))
        except TimingError:
            continue
    return made


def _row(mode: Mode) -> Row:
    refused = "" if simulable(mode) is None else "interlaced: its scanline cannot be simulated here"
    figures = f"{mode.pixel_clock_hz / 1e6:7.3f} MHz  {mode.line_rate_hz / 1e3:7.3f} kHz"
    return Row(mode_title(mode), mode.source, figures, mode, refused)


class ModeChooser(SearchCard):
    """Lists the modes; picking one is the project's next mode."""

    def __init__(self, bench: Bench, parent: QWidget) -> None:
        super().__init__(
            bench,
            "Find a display mode",
            mode_rows,
            parent,
            placeholder="size, rate or standard, such as 800 600 or 0x04",
            hint=CAUTION,
        )
        self.say_when_empty("No mode is called that. Write a size and a rate, as in 640x480@60.")
        self.setFixedSize(bench.px(640), bench.px(470))

    def start(self, current: Mode) -> None:
        """List every mode, standing on the one that holds."""
        rows = mode_rows("")
        at = next((n for n, row in enumerate(rows) if row.payload == current), 0)
        self.search(current=at)
