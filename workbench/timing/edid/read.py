"""Read a base block, and say everything that is wrong with it."""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from workbench.errors import TimingError
from workbench.timing.edid.descriptor import DESCRIPTOR, read_descriptor
from workbench.timing.edid.ranges import read_limits
from workbench.timing.edid.text import edid_bytes
from workbench.timing.edid.timings import ESTABLISHED, ESTABLISHED_III, cvt_codes, established, standard_mode
from workbench.timing.edid.values import AnalogInput, Edid, Extension, Limits, Product, SyncLevels
from workbench.timing.mode import Mode
from workbench.timing.standards import KNOWN

__all__ = ["BLOCK", "HEADER", "read_edid"]

BLOCK = 128
"""Length of a block. [byte]"""
HEADER = bytes.fromhex("00 ff ff ff ff ff ff 00")
_LEAST_HEADER = 6
"""Bytes of the header that must be right before the rest is believed, as drm_edid.c has it."""

_SLOWEST_FIELD_HZ = 40.0
"""Fields that come slower are no interlaced mode, but a frame's lines taken for a field's. Our own."""

_NAME, _TEXT, _SERIAL, _LIMITS, _MORE_STANDARD, _CVT, _ESTABLISHED_III = (
    0xFC,
    0xFE,
    0xFF,
    0xFD,
    0xFA,
    0xF8,
    0xF7,
)
_KNOWN_TAGS = frozenset(range(0x11)) | set(range(0xF7, 0x100))
_EXTENSIONS = {
    0x02: "CTA-861",
    0x10: "video timing",
    0x40: "display information",
    0x50: "localised strings",
    0x60: "digital packet link",
    0x70: "display identification",
    0xF0: "map of blocks",
    0xFF: "the maker's own",
}
"""Tags of extension blocks; all but 02 from memory."""

Descriptor = tuple[int, int | None, bytes]
"""Its number from 1, its tag (none for a detailed timing), its 18 bytes."""


def read_edid(content: bytes) -> Edid:
    """Read the base block of an EDID file.

    Parameters
    ----------
    content : bytes
        The file: binary, or hex text.

    Returns
    -------
    edid : Edid
        What the block says; ``damages`` names all that is wrong but can be lived with.

    Raises
    ------
    TimingError
        If there is no whole base block, or what is there is no EDID.
    """
    data = edid_bytes(content)
    if len(data) == DESCRIPTOR:
        raise TimingError(
            f"The file holds {DESCRIPTOR} bytes, the detailed timing of one mode and no monitor; an EDID's "
            f"base block has {BLOCK}."
        )
    if len(data) < BLOCK:
        raise TimingError(f"The EDID is cut short: it has {len(data)} bytes, a base block has {BLOCK}.")
    if sum(ours == theirs for ours, theirs in zip(HEADER, data, strict=False)) < _LEAST_HEADER:
        raise TimingError(f"This is no EDID: it begins with {data[:8].hex(' ')}, not with {HEADER.hex(' ')}.")
    block = data[:BLOCK]
    damages: list[str] = []
    checksum_ok = _check_frame(block, damages)
    descriptors = [
        _descriptor(number, block[at : at + 18]) for number, at in enumerate(range(54, 126, 18), 1)
    ]
    limits = _limits(descriptors, block[19], damages)
    return Edid(
        version=f"{block[18]}.{block[19]}",
        product=_product(block, descriptors, damages),
        analog=_analog_input(block[20], damages),
        size_cm=(block[21], block[22]) if block[21] and block[22] else None,
        gamma=None if block[23] == 0xFF else (block[23] + 100) / 100,
        detailed=tuple(_detailed(descriptors, limits, damages)),
        standard=tuple(_standard(block, descriptors, limits, damages)),
        established=_established(block, descriptors),
        limits=limits,
        extensions=tuple(_extensions(block[126], data[BLOCK:], damages)),
        checksum_ok=checksum_ok,
        damages=tuple(damages),
    )


def _check_frame(block: bytes, damages: list[str]) -> bool:
    if block[:8] != HEADER:
        damages.append(f"The header is {block[:8].hex(' ')} where {HEADER.hex(' ')} should stand.")
    if block[18] != 1 or block[19] > 4:
        damages.append(f"The version is {block[18]}.{block[19]}; it is read as 1.4, the newest known here.")
    wanted = -sum(block[:-1]) % 256
    if block[-1] != wanted:
        damages.append(
            f"The checksum, byte 127, is {block[-1]:02x} where {wanted:02x} should stand: "
            "at least one byte of the block has changed."
        )
    return block[-1] == wanted


def _descriptor(number: int, data: bytes) -> Descriptor:
    return number, None if data[0] or data[1] else data[3], data


def _tagged(descriptors: Iterable[Descriptor], tag: int) -> Iterator[tuple[int, bytes]]:
    return ((number, data) for number, its_tag, data in descriptors if its_tag == tag)


def _product(block: bytes, descriptors: list[Descriptor], damages: list[str]) -> Product:
    packed = int.from_bytes(block[8:10], "big")
    letters = [packed >> shift & 0x1F for shift in (10, 5, 0)]
    if packed >> 15 or not all(1 <= letter <= 26 for letter in letters):
        damages.append(
            f"The maker's id, bytes 8 and 9, is {block[8:10].hex(' ')}, which is not three letters."
        )
    for number, tag, _ in descriptors:
        if tag is not None and tag not in _KNOWN_TAGS:
            damages.append(f"Descriptor {number} has the unknown tag {tag:02x}; it is skipped.")
    return Product(
        maker="".join(chr(64 + letter) if 1 <= letter <= 26 else "?" for letter in letters),
        code=int.from_bytes(block[10:12], "little"),
        serial=int.from_bytes(block[12:16], "little"),
        week=block[16],
        year=1990 + block[17],
        name=_text(descriptors, _NAME, damages),
        serial_text=_text(descriptors, _SERIAL, damages),
        text=_text(descriptors, _TEXT, damages),
    )


def _text(descriptors: list[Descriptor], tag: int, damages: list[str]) -> str:
    """Return the text of the descriptors of a tag, each ended by a line feed or full at 13 bytes."""
    pieces = []
    for number, data in _tagged(descriptors, tag):
        raw = data[5:18].partition(b"\n")[0]
        if any(not 0x20 <= byte < 0x7F for byte in raw):
            damages.append(
                f"The text of descriptor {number} has bytes that are no letters; they are shown as ?."
            )
        pieces.append("".join(chr(byte) if 0x20 <= byte < 0x7F else "?" for byte in raw).rstrip())
    return " ".join(pieces)


def _analog_input(byte: int, damages: list[str]) -> AnalogInput | None:
    if byte & 0x80:
        damages.append(
            "The block is that of a digital input; read the one behind the analog connector, whose limits "
            "may differ."
        )
        return None
    if not byte & 0x0E:
        damages.append("The analog input says it takes no kind of sync (byte 20); separate sync is likely.")
    return AnalogInput(
        levels=list(SyncLevels)[byte >> 5 & 3],
        setup_expected=bool(byte & 0x10),
        separate_sync=bool(byte & 0x08),
        composite_sync=bool(byte & 0x04),
        sync_on_green=bool(byte & 0x02),
        serration=bool(byte & 0x01),
    )


def _limits(descriptors: list[Descriptor], revision: int, damages: list[str]) -> Limits | None:
    for number, data in _tagged(descriptors, _LIMITS):
        limits, wrong = read_limits(data, revision=revision)
        damages += (f"Descriptor {number}: {sentence}" for sentence in wrong)
        if limits.fields or limits.lines or limits.max_pixel_clock_hz:
            return limits
    return None


def _detailed(descriptors: list[Descriptor], limits: Limits | None, damages: list[str]) -> Iterator[Mode]:
    for number, tag, data in descriptors:
        if tag is None:
            try:
                yield _detailed_timing(number, data, limits, damages)
            except TimingError as error:
                damages.append(f"Detailed timing {number} is ignored. {error}")


def _detailed_timing(number: int, data: bytes, limits: Limits | None, damages: list[str]) -> Mode:
    timing = read_descriptor(data)
    slowest_hz, _ = (limits and limits.fields) or (_SLOWEST_FIELD_HZ, 0.0)
    if timing.mode.interlaced and timing.mode.field_rate_hz < slowest_hz:
        timing = read_descriptor(data, by_field=False)
        damages.append(
            f"Detailed timing {number} is interlaced and counts the lines of a frame where those of a field "
            "should stand, as its field rate shows."
        )
    if not timing.separate_sync:
        damages.append(
            f"Detailed timing {number} is given for composite sync; its polarities are not said and stand "
            "as negative."
        )
    return _named_as_known(timing.mode, f"EDID detailed timing {number}")


def _named_as_known(mode: Mode, source: str) -> Mode:
    """Take the name of the table's mode with the same counts, and keep the monitor's own clock."""
    for known in KNOWN:
        same_counts = (known.h.edges, known.v.edges) == (mode.h.edges, mode.v.edges)
        if same_counts and abs(known.pixel_clock_hz - mode.pixel_clock_hz) <= 10_000:
            return replace(mode, name=known.name, source=f"{source}, as {known.source}")
    return replace(mode, source=source)


def _standard(
    block: bytes, descriptors: list[Descriptor], limits: Limits | None, damages: list[str]
) -> Iterator[Mode]:
    codes = block[38:54] + b"".join(data[5:17] for _, data in _tagged(descriptors, _MORE_STANDARD))
    for number, at in enumerate(range(0, len(codes), 2), 1):
        try:
            mode = standard_mode(codes[at : at + 2], revision=block[19], limits=limits)
        except TimingError as error:
            damages.append(f"Standard timing {number} ({codes[at : at + 2].hex(' ')}) is ignored. {error}")
            continue
        if mode is not None:
            yield mode
    for number, data in _tagged(descriptors, _CVT):
        try:
            yield from cvt_codes(data[6:18])
        except TimingError as error:
            damages.append(f"Descriptor {number}, CVT codes, is ignored. {error}")


def _established(block: bytes, descriptors: list[Descriptor]) -> tuple[Mode, ...]:
    modes = established(block[35:38], ESTABLISHED)
    for _, data in _tagged(descriptors, _ESTABLISHED_III):
        modes += established(data[6:12], ESTABLISHED_III)
    return modes


def _extensions(announced: int, rest: bytes, damages: list[str]) -> Iterator[Extension]:
    found, left = divmod(len(rest), BLOCK)
    if announced != found:
        blocks = f"{announced} extension block{'' if announced == 1 else 's'}"
        follow = "1 follows" if found == 1 else f"{found or 'none'} follow{'' if found else 's'}"
        damages.append(f"The block announces {blocks}; {follow}.")
    if left:
        more = "stands 1 more byte; it is" if left == 1 else f"stand {left} more bytes; they are"
        damages.append(f"After the last whole block {more} ignored.")
    for at in range(0, found * BLOCK, BLOCK):
        tag = rest[at]
        kind = _EXTENSIONS.get(tag, "unknown")
        yield Extension(tag, kind, checksum_ok=sum(rest[at : at + BLOCK]) % 256 == 0)
