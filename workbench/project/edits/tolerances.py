"""Edits of what varies from board to board; a single resistor's own tolerance is an edit of the part."""

from dataclasses import replace
from enum import Enum

from workbench.circuit.bands import Band, Distribution, Tolerances
from workbench.project.document import Project
from workbench.project.limits import TOLERANCE

__all__ = ["Varied", "band_of", "check_tolerances", "set_distribution", "set_half_width"]


class Varied(Enum):
    """What varies; the value is the field's name in :class:`Tolerances`."""

    RESISTORS = "resistors"
    SUPPLY = "supply"
    LOAD = "load"
    ON_RESISTANCE = "on_resistance"

    @property
    def words(self) -> str:
        """Return what it is called in a sentence."""
        return {Varied.ON_RESISTANCE: "on-resistance"}.get(self, self.value)


def check_tolerances(tolerances: Tolerances) -> None:
    """Raise an `EditError` if one of them is out of the range that a project takes."""
    for varied in Varied:
        half_width = band_of(tolerances, varied).half_width
        if half_width is not None:
            TOLERANCE.check(half_width, f"the tolerance of the {varied.words}")


def band_of(tolerances: Tolerances, varied: Varied) -> Band:
    """Return the band of one of them."""
    band: Band = getattr(tolerances, varied.value)
    return band


def set_half_width(project: Project, varied: Varied, half_width: float | None) -> Project:
    """Change how far it strays, as a part of its value. [1]

    None lets each resistor have its own tolerance; for the others it is 0.
    """
    if half_width is None and varied is not Varied.RESISTORS:
        half_width = 0.0
    band = replace(band_of(project.tolerances, varied), half_width=half_width)
    check_tolerances(replace(project.tolerances, **{varied.value: band}))
    return _put(project, varied, band)


def set_distribution(project: Project, varied: Varied, distribution: Distribution) -> Project:
    """Change how its values lie in their band."""
    return _put(project, varied, replace(band_of(project.tolerances, varied), distribution=distribution))


def _put(project: Project, varied: Varied, band: Band) -> Project:
    return replace(project, tolerances=replace(project.tolerances, **{varied.value: band}))
