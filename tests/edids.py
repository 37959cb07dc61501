"""A base block of our own making, laid out by hand from the byte list of EDID 1.3."""

__all__ = ["base_block"]

BODY = """
# header
00 ff ff ff ff ff ff 00
# maker ROW: R = 18, O = 15, W = 23 -> 0 10010 01111 10111
49 f7
# product 0x1234, serial 42, week 7, year 2004, version 1.3
34 12  2a 00 00 00  07 0e  01 03
# analog, 0.700/0.300 V, no setup, separate and composite sync, no sync on green, serrated
0d
# 32 cm x 24 cm, gamma 2.20, RGB, preferred first
20 18 78 0a
# chromaticities, of no matter here
ee 91 a3 54 4c 99 26 0f 50 54
# 640x480@60 (bit 5), 800x600@60 (bit 0) | 1024x768@60 (bit 3) | nothing
21 08 00
# 1280x1024@60; 1600x1200@60; 6 unused
81 80  a9 40  01 01 01 01 01 01 01 01 01 01 01 01
# 1024x768@75: 78.75 MHz, 1024 + 288, 768 + 32, 16/96, 1/3, 320 x 240 mm, +/+
c3 1e  00 20 41  00 20 30  10 60 13 00  40 f0 10  00 00  1e
# range limits: 50 ... 120 Hz, 30 ... 70 kHz, 110 MHz, default GTF
00 00 00 fd 00  32 78 1e 46 0b  00 0a 20 20 20 20 20 20
# name
00 00 00 fc 00  52 69 76 65 72 73 69 64 65 20 31 37 0a
# dummy
00 00 00 10 00  00 00 00 00 00 00 00 00 00 00 00 00 00
# no extensions
00
"""


def base_block(changes: dict[int, int] | None = None, *, mend: bool = True) -> bytes:
    """Return the block with some bytes changed, and its checksum mended or left as it was."""
    digits = "".join(line for line in BODY.splitlines() if not line.startswith("#"))
    data = bytearray(bytes.fromhex(digits))
    data.append(-sum(data) % 256)
    for at, byte in (changes or {}).items():
        data[at] = byte
    if mend:
        data[127] = -sum(data[:127]) % 256
    return bytes(data)
