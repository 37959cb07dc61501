"""The 18 bytes of one mode: the detailed timing descriptor.

It holds active, blanking, front porch and sync; the back porch is what is left. The pixel clock
is kept to 10 kHz, and an interlaced mode's vertical counts are those of one field, whose extra
half line is understood.
"""

from dataclasses import dataclass

from workbench.errors import TimingError
from workbench.timing.custom import make_mode
from workbench.timing.mode import Axis, Mode, Polarity
from workbench.timing.offsets import offset_words
from workbench.units import format_quantity

__all__ = ["DESCRIPTOR", "DetailedTiming", "descriptor_losses", "read_descriptor", "write_descriptor"]

DESCRIPTOR = 18
"""Length of a descriptor. [byte]"""
_CLOCK_STEP_HZ = 10_000
_INTERLACED = 0x80
_DIGITAL_SEPARATE = 0x18
_V_POSITIVE = 0x04
_H_POSITIVE = 0x02

# Most that fits: fields of 12 bits for active and blanking, 10 and 6 bits for porch and sync.
_MOST = {
    "line": {"active": 4095, "blanking": 4095, "front_porch": 1023, "sync": 1023},
    "frame": {"active": 4095, "blanking": 4095, "front_porch": 63, "sync": 63},
}


@dataclass(frozen=True, slots=True)
class DetailedTiming:
    """A descriptor read."""

    mode: Mode
    size_mm: tuple[int, int]
    """Picture, width and height; zeros where it is not said. [mm]"""
    separate_sync: bool
    """Whether H and V sync come on lines of their own; only then are the polarities known."""


def write_descriptor(mode: Mode, *, size_mm: tuple[int, int] = (0, 0)) -> bytes:
    """Return the 18 bytes that describe a mode with separate sync.

    Parameters
    ----------
    size_mm : tuple of int
        Width and height of the picture, ``0 <= size_mm <= 4095``; 0 for unknown. [mm]

    Raises
    ------
    TimingError
        If a count, the clock or the size is larger than its field.

    Examples
    --------
    >>> from workbench.timing.search import find_mode
    >>> write_descriptor(find_mode("1024x768@60")).hex(" ")
    '64 19 00 40 41 00 26 30 18 88 36 00 00 00 00 00 00 18'
    """
    v = _field(mode)
    _check_fits(mode.h, "line")
    _check_fits(v, "frame")
    steps = _clock_steps(mode)
    if max(size_mm) > 4095 or min(size_mm) < 0:
        raise TimingError(f"A picture of {size_mm[0]}×{size_mm[1]} mm does not fit: each has 0 … 4095 mm.")
    flags = _DIGITAL_SEPARATE | (_INTERLACED if mode.interlaced else 0)
    flags |= _V_POSITIVE if mode.v.polarity is Polarity.POSITIVE else 0
    flags |= _H_POSITIVE if mode.h.polarity is Polarity.POSITIVE else 0
    return bytes(
        (
            *steps.to_bytes(2, "little"),
            *_two_of_12_bits(mode.h.active, mode.h.blanking),
            *_two_of_12_bits(v.active, v.blanking),
            mode.h.front_porch & 0xFF,
            mode.h.sync & 0xFF,
            (v.front_porch & 0xF) << 4 | v.sync & 0xF,
            mode.h.front_porch >> 8 << 6 | mode.h.sync >> 8 << 4 | v.front_porch >> 4 << 2 | v.sync >> 4,
            *_two_of_12_bits(*size_mm),
            0,  # borders: written as part of the porches, which every reader understands
            0,
            flags,
        )
    )


def descriptor_losses(mode: Mode) -> tuple[str, ...]:
    """Return what a mode loses in a descriptor that can hold it, a sentence each."""
    losses = []
    stored_hz = _clock_steps(mode) * _CLOCK_STEP_HZ
    if off_hz := stored_hz - mode.pixel_clock_hz:
        ppm = off_hz / mode.pixel_clock_hz * 1e6
        losses.append(f"The pixel clock is stored as {stored_hz / 1e6:.2f} MHz ({offset_words(ppm)}).")
    if mode.h.border or mode.v.border:
        losses.append("The border is stored as part of the porches.")
    if mode.interlaced and mode.v.total % 2:
        losses.append("The half line between the fields is not stored; interlacing implies it.")
    return tuple(losses)


def _clock_steps(mode: Mode) -> int:
    """Return the clock in steps of 10 kHz, the nearest; halves go down, as in real monitors' blocks."""
    steps = (mode.pixel_clock_hz + _CLOCK_STEP_HZ // 2 - 1) // _CLOCK_STEP_HZ
    if not 1 <= steps <= 0xFFFF:
        raise TimingError(
            f"The pixel clock of {format_quantity(mode.pixel_clock_hz, 'Hz', 6)} does not fit the "
            "descriptor, which holds 10 kHz … 655.35 MHz."
        )
    return steps


def _field(mode: Mode) -> Axis:
    """Return the vertical counts as stored: of the frame, or of one field."""
    v = mode.v
    if not mode.interlaced:
        return v
    for name in ("active", "front_porch", "sync"):
        if getattr(v, name) % 2:
            raise TimingError(
                f"The frame's {_words(name)} of {getattr(v, name)} lines is odd; an interlaced mode is "
                "stored by the field, so it must be even."
            )
    return Axis(v.active // 2, v.front_porch // 2, v.sync // 2, v.back_porch // 2, v.polarity)


def _check_fits(axis: Axis, whole: str) -> None:
    for name, most in _MOST[whole].items():
        count = getattr(axis, name)
        if count > most:
            raise TimingError(
                f"The {whole}'s {_words(name)} of {count} does not fit the descriptor, which holds at "
                f"most {most}."
            )


def _words(name: str) -> str:
    return name.replace("_", " ")


def _two_of_12_bits(first: int, second: int) -> tuple[int, int, int]:
    return first & 0xFF, second & 0xFF, first >> 8 << 4 | second >> 8


def read_descriptor(data: bytes, *, source: str = "EDID", by_field: bool = True) -> DetailedTiming:
    """Read the 18 bytes of a mode.

    Parameters
    ----------
    source : str
        Where the mode is said to come from.
    by_field : bool
        Whether an interlaced mode's vertical counts are those of a field, as they should be; some
        makers store the frame's.

    Raises
    ------
    TimingError
        If there are not 18 bytes, or they describe no possible mode.

    Notes
    -----
    Blanking and porches are taken to include the borders, as they must in the one real monitor at
    hand that stores some: only so its totals give the rates of its mode.
    """
    if len(data) != DESCRIPTOR:
        raise TimingError(f"A detailed timing has {DESCRIPTOR} bytes, not {len(data)}.")
    flags = data[17]
    separate = flags & _DIGITAL_SEPARATE == _DIGITAL_SEPARATE
    h_polarity = Polarity.POSITIVE if separate and flags & _H_POSITIVE else Polarity.NEGATIVE
    v_polarity = Polarity.POSITIVE if separate and flags & _V_POSITIVE else Polarity.NEGATIVE
    high = data[11]
    h_front, h_sync = data[8] | (high & 0xC0) << 2, data[9] | (high & 0x30) << 4
    v_front, v_sync = data[10] >> 4 | (high & 0x0C) << 2, data[10] & 0xF | (high & 0x03) << 4
    interlaced = bool(flags & _INTERLACED)
    mode = make_mode(
        _axis(_two_counts(data[2:5]), h_front, h_sync, data[15], h_polarity, fields=1),
        _axis(
            _two_counts(data[5:8]),
            v_front,
            v_sync,
            data[16],
            v_polarity,
            fields=2 if interlaced and by_field else 1,
        ),
        int.from_bytes(data[0:2], "little") * _CLOCK_STEP_HZ,
        source=source,
        interlaced=interlaced,
    )
    return DetailedTiming(mode, _two_counts(data[12:15]), separate)


def _axis(
    counts: tuple[int, int], front: int, sync: int, border: int, polarity: Polarity, *, fields: int
) -> Axis:
    active, blanking = counts
    back = blanking - front - sync
    border = border if border <= min(front, back) else 0
    return Axis(active * fields, front * fields, sync * fields, back * fields, polarity, border * fields)


def _two_counts(data: bytes) -> tuple[int, int]:
    return data[0] | (data[2] & 0xF0) << 4, data[1] | (data[2] & 0x0F) << 8
