"""Which modes a chip can clock at all: a question for a whole list of modes."""

from collections.abc import Iterable

from workbench.timing.clock.chip import Chip
from workbench.timing.clock.settings import Grid, nearest_dividers, system_clocks
from workbench.timing.mode import Mode
from workbench.timing.seen_as import LOCK_PPM

__all__ = ["within_reach"]


def within_reach(modes: Iterable[Mode], chip: Chip, *, within_ppm: float = LOCK_PPM) -> tuple[Mode, ...]:
    """Return the modes whose pixel clock a chip makes nearly enough, with even pixels.

    Parameters
    ----------
    within_ppm : float
        Most the clock may be off, ``0 <= within_ppm``. [ppm]

    Raises
    ------
    TimingError
        If the chip has no allowed setting, or too many to try.

    Examples
    --------
    >>> from workbench.timing.clock.chip import read_chip
    >>> from workbench.timing.search import search
    >>> chip = read_chip(reference="12M", multiply="21", divide="10", max_system="133M")
    >>> [mode.name for mode in within_reach(search("640x480"), chip)]
    ['640x480@60']
    """
    clocks_hz = system_clocks(chip)
    found = []
    for mode in modes:
        _, error = nearest_dividers(clocks_hz / mode.pixel_clock_hz, Grid(1, 0))
        if error.size and error.min() <= within_ppm * 1e-6:
            found.append(mode)
    return tuple(found)
