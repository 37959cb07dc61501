"""A display of one's own: what is typed of it, and its base block."""

from dataclasses import dataclass, replace

from workbench.errors import EditError
from workbench.project.document import Project
from workbench.timing.edid.values import Limits, Product
from workbench.timing.edid.words import limits_words
from workbench.timing.edid.write import Display, write_edid

__all__ = ["OwnDisplay", "own_block", "range_words"]

_YEAR = 2025
"""Year written into the block; nobody reads it for more than a curiosity."""
_ROOM = 0.02
"""How far around the mode's rates the limits lie where no monitor's range is entered. Our own. [1]"""


@dataclass(frozen=True, slots=True)
class OwnDisplay:
    """What the block says beside modes and limits."""

    maker: str = "OWN"
    name: str = "My display"
    width_cm: int = 0
    height_cm: int = 0
    """Zeros where the size is not said, as for a projector. [cm]"""

    def with_text(self, field: str, text: str) -> "OwnDisplay":
        """Return the display with one field as typed.

        Raises
        ------
        EditError
            If the text cannot stand in the field.
        """
        typed = text.strip()
        if field == "maker":
            letters = typed.upper()
            if len(letters) != 3 or not (letters.isascii() and letters.isalpha()):
                raise EditError(f"“{typed[:20]}” is no maker's id: it has three letters A to Z")
            return replace(self, maker=letters)
        if field == "name":
            if len(typed) > 13 or not all(" " <= letter <= "~" for letter in typed):
                raise EditError("a display's name has at most 13 plain letters, digits and signs")
            return replace(self, name=typed)
        if not (typed.isascii() and typed.isdigit() and int(typed[:6]) <= 255):
            raise EditError(f"“{typed[:20]}” is no side of a picture: type whole centimetres, 0 … 255")
        count = int(typed)
        return replace(self, width_cm=count) if field == "width_cm" else replace(self, height_cm=count)


def own_block(own: OwnDisplay, project: Project) -> bytes:
    """Return the 128 bytes: the project's mode as the preferred one, the project's monitor as limits.

    Raises
    ------
    TimingError
        If a value does not fit its field.
    """
    size = (own.width_cm, own.height_cm) if own.width_cm and own.height_cm else None
    return write_edid(
        Display(
            product=Product(own.maker, name=own.name, year=_YEAR),
            modes=(project.mode,),
            limits=_limits(project),
            size_cm=size,
        )
    )


def range_words(project: Project) -> str:
    """Say which rates the block gives as the display's range, and where they come from."""
    taken = limits_words(_limits(project))
    if project.monitor is None:
        return f"Range: {taken}; {100 * _ROOM:g} % around this mode, as no monitor's range is entered."
    return f"Range: {taken}; that of the project's monitor."


def _limits(project: Project) -> Limits:
    monitor, mode = project.monitor, project.mode
    if monitor is None:
        return Limits(
            mode.field_rate_hz * (1 - _ROOM),
            mode.field_rate_hz * (1 + _ROOM),
            mode.line_rate_hz * (1 - _ROOM),
            mode.line_rate_hz * (1 + _ROOM),
            float(mode.pixel_clock_hz),
        )
    return Limits(
        monitor.v_min_hz, monitor.v_max_hz, monitor.h_min_hz, monitor.h_max_hz, monitor.max_pixel_clock_hz
    )
