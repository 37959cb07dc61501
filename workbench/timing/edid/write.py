"""Write the base block of a display of one's own."""

from dataclasses import dataclass, field

from workbench.errors import TimingError
from workbench.timing.edid.descriptor import write_descriptor
from workbench.timing.edid.ranges import write_limits
from workbench.timing.edid.read import HEADER
from workbench.timing.edid.timings import ESTABLISHED, standard_code
from workbench.timing.edid.values import AnalogInput, Limits, Product, SyncLevels
from workbench.timing.mode import Mode
from workbench.timing.search import find_mode

__all__ = ["Display", "write_edid"]

_REVISION = 3
_DESCRIPTORS = 4
_UNUSED_STANDARD = b"\x01\x01"
_DUMMY = bytes((0, 0, 0, 0x10)) + bytes(14)
_RGB_PREFERRED_FIRST = 0x0A
"""Feature byte: an RGB colour display whose first descriptor is its preferred mode."""

# Red, green, blue and white of sRGB (IEC 61966-2-1), x and y.
_CHROMATICITIES = ((0.640, 0.330), (0.300, 0.600), (0.150, 0.060), (0.3127, 0.3290))


@dataclass(frozen=True, slots=True)
class Display:
    """An analog display as its base block is to describe it."""

    product: Product
    modes: tuple[Mode, ...]
    """At least one; the first is the preferred one and is written with every count."""
    limits: Limits | None = None
    analog: AnalogInput = field(default_factory=AnalogInput)
    size_cm: tuple[int, int] | None = None
    gamma: float = 2.2


def write_edid(display: Display) -> bytes:
    """Return the 128 bytes of an EDID 1.3 base block.

    Each mode goes where it costs least: a tick in the established list, two bytes as a standard
    timing, or a descriptor of its own.

    Raises
    ------
    TimingError
        If a value does not fit its field, or there are more modes or texts than places.
    """
    if not display.modes:
        raise TimingError("A display needs at least one mode.")
    preferred, *others = display.modes
    ticked = [mode for mode in others if _tick(mode)]
    standard = [mode for mode in others if mode not in ticked and standard_code(mode)]
    standard, crowded = standard[:8], standard[8:]
    own = [mode for mode in others if mode not in ticked and mode not in standard and mode not in crowded]
    size_mm = (10 * display.size_cm[0], 10 * display.size_cm[1]) if display.size_cm else (0, 0)
    descriptors = [write_descriptor(mode, size_mm=size_mm) for mode in (preferred, *own, *crowded)]
    block = (
        HEADER
        + _product_bytes(display.product)
        + bytes((1, _REVISION))
        + _input_bytes(display)
        + _chromaticity_bytes()
        + sum(_tick(mode) for mode in ticked).to_bytes(3, "big")
        + b"".join(standard_code(mode) or b"" for mode in standard).ljust(16, _UNUSED_STANDARD[:1])
        + _descriptor_bytes([*descriptors, *_other_descriptors(display)])
        + bytes(1)
    )
    return block + bytes((-sum(block) % 256,))


def _tick(mode: Mode) -> int:
    """Return the bit of the established list that stands for a mode; 0 for a mode not listed."""
    for place, name in enumerate(ESTABLISHED):
        if find_mode(name) == mode:
            return 1 << 23 - place
    return 0


def _product_bytes(product: Product) -> bytes:
    letters = [ord(letter) - 64 for letter in product.maker]
    if len(letters) != 3 or not all(1 <= letter <= 26 for letter in letters):
        raise TimingError(f"The maker “{product.maker}” does not fit: it has three capital letters A to Z.")
    _check("product code", product.code, 0, 0xFFFF)
    _check("serial number", product.serial, 0, 0xFFFFFFFF)
    _check("week", product.week, 0, 54)
    _check("year", product.year, 1990, 1990 + 255)
    packed = letters[0] << 10 | letters[1] << 5 | letters[2]
    return (
        packed.to_bytes(2, "big")
        + product.code.to_bytes(2, "little")
        + product.serial.to_bytes(4, "little")
        + bytes((product.week, product.year - 1990))
    )


def _check(what: str, value: float, least: float, most: float) -> None:
    if not least <= value <= most:
        raise TimingError(f"The {what} of {value:g} does not fit: the block holds {least:g} … {most:g}.")


def _input_bytes(display: Display) -> bytes:
    analog = display.analog
    size = display.size_cm or (0, 0)
    for side in size:
        _check("picture side in cm", side, 0, 255)
    _check("gamma", display.gamma, 1.0, 3.54)
    flags = (analog.setup_expected, analog.separate_sync, analog.composite_sync, analog.sync_on_green)
    byte = list(SyncLevels).index(analog.levels)
    for flag in (*flags, analog.serration):
        byte = byte << 1 | flag
    return bytes((byte, *size, round(display.gamma * 100) - 100, _RGB_PREFERRED_FIRST))


def _chromaticity_bytes() -> bytes:
    """Return ten bytes: the two low bits of all eight numbers, then their eight high bits."""
    tenths = [round(1024 * part) for pair in _CHROMATICITIES for part in pair]
    low = 0
    for value in tenths:
        low = low << 2 | value & 3
    return low.to_bytes(2, "big") + bytes(value >> 2 for value in tenths)


def _other_descriptors(display: Display) -> list[bytes]:
    limits = [] if display.limits is None else [write_limits(display.limits)]
    texts = ((0xFC, display.product.name), (0xFF, display.product.serial_text), (0xFE, display.product.text))
    return limits + [_text_bytes(tag, text) for tag, text in texts if text]


def _text_bytes(tag: int, text: str) -> bytes:
    if len(text) > 13 or not all(" " <= letter <= "~" for letter in text):
        raise TimingError(
            f"The text “{text}” does not fit: a descriptor holds 13 plain letters, digits and signs."
        )
    ended = text if len(text) == 13 else (text + "\n").ljust(13)
    return bytes((0, 0, 0, tag, 0)) + ended.encode("ascii")


def _descriptor_bytes(descriptors: list[bytes]) -> bytes:
    if len(descriptors) > _DESCRIPTORS:
        raise TimingError(
            f"The block has {_DESCRIPTORS} places for modes of one's own, limits and texts; "
            f"{len(descriptors)} are needed. Leave out a mode or a text."
        )
    return b"".join(descriptors + [_DUMMY] * (_DESCRIPTORS - len(descriptors)))
