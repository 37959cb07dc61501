"""Two resistors typed for one: ``820+150`` one after the other, ``1k||1k`` side by side."""

import re
from dataclasses import dataclass

from workbench.circuit.network import PartId
from workbench.circuit.series import Series, is_in
from workbench.errors import QuantityError
from workbench.project.document import Channel, Project
from workbench.project.edits.parts import set_values, split_in_parallel, split_in_series
from workbench.units import format_quantity, parse_quantity

__all__ = ["Pair", "put_pair", "read_pair"]

# A plus after an e belongs to a power of ten.
_TWO = re.compile(r"(?P<one>.+?)(?P<joint>\|\||(?<![eE])\+)(?P<other>.+)")


@dataclass(frozen=True, slots=True)
class Pair:
    """Two resistors that together stand for one value."""

    ohms: tuple[float, float]
    parallel: bool
    """Whether they lie side by side, and not one after the other."""

    @property
    def text(self) -> str:
        """Return both values as the program writes them."""
        return (" || " if self.parallel else " + ").join(format_quantity(each, "Ω") for each in self.ohms)

    @property
    def words(self) -> str:
        """Return what is put in, as ``two in series: 820 Ω + 150 Ω``."""
        return f"two {'in parallel' if self.parallel else 'in series'}: {self.text}"

    def meant(self, together_ohms: float, series: Series) -> bool:
        """Return whether two parts are the plain meaning: their sum is not made, and both of them are."""
        return not is_in(together_ohms, series) and all(is_in(each, series) for each in self.ohms)


def read_pair(text: str) -> Pair | None:
    """Return the two resistors of an expression; none if it is anything but two plain values."""
    found = _TWO.fullmatch(text.strip())
    if found is None or any(sign in found["other"] for sign in ("||", "(", ")")):
        return None
    try:
        one, other = (parse_quantity(found[each], "Ω") for each in ("one", "other"))
    except QuantityError:
        return None
    # A third value behind a plus would have been read into the second one.
    if re.search(r"(?<![eE])\+", found["other"]):
        return None
    return Pair((one, other), parallel=found["joint"] == "||")


def put_pair(channel: Channel, part: PartId, project: Project, pair: Pair) -> Project:
    """Put two resistors in the place of one.

    Raises
    ------
    EditError
        If one of the values is outside the limits of a resistance.
    """
    before = {resistor.id for resistor in project.channels[channel].resistors}
    split = split_in_parallel if pair.parallel else split_in_series
    edited = split(project, channel, part)
    new = (each.id for each in edited.channels[channel].resistors if each.id not in before)
    return set_values(edited, channel, dict(zip(new, pair.ohms, strict=True)))
