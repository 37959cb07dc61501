"""What a person chose about the plot, remembered from one day to the next."""

from workbench.gui.bench import Bench
from workbench.gui.scanline.lanes.styles import Look
from workbench.gui.settings import DASHED, Setting, flag

__all__ = ["FANNED", "IDEAL", "LOOK_SETTINGS", "chosen_look"]

FANNED = flag("scanline/fanned", default=True)
"""Whether equal levels are drawn side by side."""
IDEAL = flag("scanline/ideal", default=True)
"""Whether the even staircase is shown as a thin line."""
LOOK_SETTINGS: tuple[Setting[bool], ...] = (FANNED, IDEAL, DASHED)


def chosen_look(bench: Bench) -> Look:
    """Return the look the settings hold."""
    fanned, ideal, dashed = (bench.settings.get(setting) for setting in LOOK_SETTINGS)
    return Look(fanned=fanned, ideal=ideal, dashed=dashed)
