"""Modes that a block names by a bit, by a size and a rate, or by a CVT code."""

from workbench.timing.edid.values import Limits
from workbench.timing.formulas.cvt import cvt, cvt_rb
from workbench.timing.formulas.gtf import gtf
from workbench.timing.mode import Mode
from workbench.timing.search import find_mode
from workbench.timing.standards import DMT

__all__ = [
    "ESTABLISHED",
    "ESTABLISHED_III",
    "cvt_codes",
    "established",
    "standard_code",
    "standard_mode",
]


def _names(table: str) -> tuple[str, ...]:
    return tuple(table.split())


ESTABLISHED = _names("""
720x400@70    720x400@88    640x480@60    640x480@67    640x480@72    640x480@75
800x600@56    800x600@60    800x600@72    800x600@75    832x624@75    1024x768@43i
1024x768@60   1024x768@70   1024x768@75   1280x1024@75  1152x870@75
""")
"""Bytes 35 to 37, from bit 7 of the first; the last seven bits are the maker's own.

1024x768@43i is called 87 Hz there, by its fields.
"""

ESTABLISHED_III = _names("""
640x350@85     640x400@85     720x400@85     640x480@85     848x480@60     800x600@85
1024x768@85    1152x864@75    1280x768@60RB  1280x768@60    1280x768@75    1280x768@85
1280x960@60    1280x960@85    1280x1024@60   1280x1024@85   1360x768@60    1440x900@60RB
1440x900@60    1440x900@75    1440x900@85    1400x1050@60RB 1400x1050@60   1400x1050@75
1400x1050@85   1680x1050@60RB 1680x1050@60   1680x1050@75   1680x1050@85   1600x1200@60
1600x1200@65   1600x1200@70   1600x1200@75   1600x1200@85   1792x1344@60   1792x1344@75
1856x1392@60   1856x1392@75   1920x1200@60RB 1920x1200@60   1920x1200@75   1920x1200@85
1920x1440@60   1920x1440@75
""")
"""Bytes 6 to 11 of the descriptor of established timings III, from bit 7 of the first."""

_UNUSED = (b"\x01\x01", b"\x00\x00")
"""An empty slot; the standard has 01 01, older monitors also leave zeros [from memory]."""
_ASPECTS = ((16, 10), (4, 3), (5, 4), (16, 9))
_SHORT_BLANKING_IDS = (0x53, 0x54)
"""The DMT's short-blanking modes that have a standard code of two bytes [from memory]."""
_NAMED = {
    mode.name.removesuffix("RB"): mode
    for number, mode in enumerate(DMT, 1)
    if not mode.name.endswith(("RB", "RB2", "i")) or number in _SHORT_BLANKING_IDS
}


def established(data: bytes, names: tuple[str, ...]) -> tuple[Mode, ...]:
    """Return the modes of a list whose bits are set, from the highest bit of the first byte."""
    bits = int.from_bytes(data, "big")
    highest = 8 * len(data) - 1
    return tuple(find_mode(name) for place, name in enumerate(names) if bits >> highest - place & 1)


def standard_mode(code: bytes, *, revision: int, limits: Limits | None = None) -> Mode | None:
    """Return the mode of a standard timing's two bytes; none for an unused slot.

    Parameters
    ----------
    code : bytes of length 2
        Width in cells, shape of the picture and rate.
    revision : int
        Of EDID version 1: before 3 the first shape is square; from 4 on CVT makes what the DMT
        does not list, GTF before.
    limits : Limits, optional
        The monitor's; a secondary GTF curve in it holds from its own line rate on.

    Raises
    ------
    TimingError
        If a formula cannot make the mode.

    Examples
    --------
    >>> standard_mode(bytes([0x81, 0x80]), revision=3).source
    'VESA DMT 0x23'
    """
    if code in _UNUSED:
        return None
    width = (code[0] + 31) * 8
    wide, high = (1, 1) if revision < 3 and code[1] >> 6 == 0 else _ASPECTS[code[1] >> 6]
    height = width * high // wide
    rate_hz = (code[1] & 0x3F) + 60
    if listed := _NAMED.get(f"{width}x{height}@{rate_hz}"):
        return listed
    if revision >= 4:
        return cvt(width, height, rate_hz)
    mode = gtf(width, height, rate_hz)
    if limits is None or limits.gtf_curve is None or mode.line_rate_hz < limits.gtf_start_hz:
        return mode
    return gtf(width, height, rate_hz, curve=limits.gtf_curve)


def standard_code(mode: Mode) -> bytes | None:
    """Return the two bytes that name a mode of the DMT; none for a mode they cannot name.

    >>> standard_code(DMT[0x22]).hex()
    '8180'
    """
    named = next((name for name, listed in _NAMED.items() if listed == mode), None)
    if named is None:
        return None
    rate = int(named.partition("@")[2]) - 60
    cells = mode.h.active // 8 - 31
    for bits, (wide, high) in enumerate(_ASPECTS):
        exact = mode.h.active % 8 == 0 and mode.h.active * high // wide == mode.v.active
        if exact and 0 <= rate < 64 and 0 < cells < 256:
            return bytes((cells, bits << 6 | rate))
    return None


def cvt_codes(data: bytes) -> tuple[Mode, ...]:
    """Return the modes of the 3-byte CVT codes in a descriptor's last 12 bytes.

    Each code has the lines halved less one, the shape, and a bit for every rate: 50, 60, 75 and
    85 Hz and 60 Hz with reduced blanking [from memory].

    Raises
    ------
    TimingError
        If the formula cannot make a mode.
    """
    modes: list[Mode] = []
    for at in range(0, len(data), 3):
        low, middle, rates = data[at : at + 3]
        if not (low or middle or rates):
            continue
        height = ((low | (middle & 0xF0) << 4) + 1) * 2
        wide, high = ((4, 3), (16, 9), (16, 10), (15, 9))[middle >> 2 & 3]
        width = height * wide // high // 8 * 8
        modes += [
            cvt(width, height, rate) for bit, rate in ((4, 50), (3, 60), (2, 75), (1, 85)) if rates >> bit & 1
        ]
        modes += [cvt_rb(width, height, 60)] if rates & 1 else []
    return tuple(modes)
