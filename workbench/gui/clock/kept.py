"""The person's chip as it was typed: kept in the settings, so that every project has it."""

from dataclasses import dataclass, fields

from workbench.errors import TimingError
from workbench.gui.settings import CHIP, Settings
from workbench.timing.clock.chip import Chip, read_chip

__all__ = ["ChipText", "keep", "kept", "kept_chip"]

_MOST_DIGITS = 4


@dataclass(frozen=True, slots=True)
class ChipText:
    """What stands in the fields of the form."""

    reference: str = ""
    multiply: str = ""
    divide: str = ""
    oscillator: str = ""
    max_system: str = ""
    fraction: str = ""
    processor: str = ""
    """Clock of the processor; empty where it is the system clock."""

    @property
    def is_empty(self) -> bool:
        """Whether nothing was typed yet."""
        return not any(getattr(self, field.name) for field in fields(self))

    def chip(self) -> Chip:
        """Return the chip the texts describe.

        Raises
        ------
        TimingError
            If a text is missing or cannot be read.
        """
        for name, text in (
            ("reference", self.reference),
            ("multiply range", self.multiply),
            ("highest system clock", self.max_system),
        ):
            if not text.strip():
                raise TimingError(f"The {name} is still missing; its data sheet has it.")
        return read_chip(
            reference=self.reference,
            multiply=self.multiply,
            divide=self.divide.strip() or "1",
            vco=self.oscillator.strip() or None,
            max_system=self.max_system,
            fraction_bits=_bits(self.fraction),
        )


def _bits(text: str) -> int:
    digits = text.strip() or "0"
    if not (digits.isascii() and digits.isdigit() and len(digits) <= _MOST_DIGITS):
        raise TimingError(
            f"“{digits[:40]}” is no number of fractional bits; write 0 for none, or one like 8."
        )
    return int(digits)


def kept(settings: Settings) -> ChipText:
    """Return what was typed last time."""
    texts = settings.get(CHIP)
    return ChipText(*texts) if len(texts) == len(fields(ChipText)) else ChipText()


def keep(settings: Settings, text: ChipText) -> None:
    """Keep what is typed for next time."""
    settings.set(CHIP, tuple(getattr(text, field.name) for field in fields(ChipText)))


def kept_chip(settings: Settings) -> Chip | None:
    """Return the person's chip; none while it is not entered, or not whole."""
    try:
        return kept(settings).chip()
    except TimingError:
        return None
