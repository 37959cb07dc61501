import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.errors import TimingError
from workbench.timing.edid.monitor import monitor_object
from workbench.timing.edid.read import read_edid
from workbench.timing.edid.values import Limits, SyncLevels
from workbench.timing.edid.words import limits_words
from workbench.timing.search import find_mode


def test_identity(block) -> None:
    product = read_edid(block()).product

    assert (product.maker, product.code, product.serial) == ("ROW", 0x1234, 42)
    assert (product.week, product.year, product.name) == (7, 2004, "Riverside 17")


def test_analog_input(block) -> None:
    edid = read_edid(block())

    assert edid.analog is not None
    assert edid.analog.levels is SyncLevels.V0700_0300
    assert (edid.analog.separate_sync, edid.analog.composite_sync, edid.analog.sync_on_green) == (
        True,
        True,
        False,
    )
    assert (edid.analog.setup_expected, edid.analog.serration) == (False, True)
    assert (edid.version, edid.size_cm, edid.gamma) == ("1.3", (32, 24), 2.2)


@pytest.mark.parametrize(
    ("bits", "white_volts", "sync_volts"),
    [(0b00, 0.700, 0.300), (0b01, 0.714, 0.286), (0b10, 1.000, 0.400), (0b11, 0.700, 0.000)],
)
def test_levels(block, bits: int, white_volts: float, sync_volts: float) -> None:
    analog = read_edid(block({20: bits << 5 | 0x08})).analog

    assert analog is not None
    assert (analog.white_volts, analog.sync_volts) == (white_volts, sync_volts)


def test_modes(block) -> None:
    edid = read_edid(block())

    assert [mode.name for mode in edid.modes] == [
        "1024x768@75",
        "640x480@60",
        "800x600@60",
        "1024x768@60",
        "1280x1024@60",
        "1600x1200@60",
    ]
    assert edid.detailed[0].source == "EDID detailed timing 1, as VESA DMT 0x12"
    assert edid.detailed[0].h == find_mode("1024x768@75").h
    assert edid.damages == ()


def test_limits(block) -> None:
    assert read_edid(block()).limits == Limits(50, 120, 30e3, 70e3, 110e6)


@pytest.mark.parametrize("byte", [0x00, 0xFF])
def test_no_highest_clock(block, byte: int) -> None:
    limits = read_edid(block({81: byte})).limits

    assert limits is not None
    assert limits.max_pixel_clock_hz is None


def test_limits_raised_by_255(block) -> None:
    limits = read_edid(block({19: 4, 76: 0b1110})).limits

    assert limits is not None
    assert (limits.v_min_hz, limits.v_max_hz) == (50, 120 + 255)
    assert (limits.h_min_hz, limits.h_max_hz) == (285e3, 325e3)


@pytest.mark.parametrize(
    ("changes", "part"),
    [
        ({77: 121}, "120 Hz as highest and 121 Hz as lowest field rate"),
        ({79: 71}, "70 kHz as highest and 71 kHz as lowest line rate"),
        ({77: 0, 78: 0}, "0 Hz as highest"),
    ],
)
def test_highest_below_lowest_is_named_and_the_other_pair_kept(block, changes, part) -> None:
    edid = read_edid(block(changes))

    kept = edid.limits.fields or edid.limits.lines
    assert kept in ((50, 120), (30e3, 70e3))
    assert edid.limits.fields is None or edid.limits.lines is None
    assert any(part in damage for damage in edid.damages)


def test_both_pairs_swapped_are_both_named(block) -> None:
    edid = read_edid(block({75 + at: byte for at, byte in enumerate((0x78, 0x32, 0x46, 0x1E), 2)}))

    fields, lines = (damage for damage in edid.damages if "range limits" in damage)
    assert "50 Hz as highest and 120 Hz as lowest field rate; both are left out." in fields
    assert "30 kHz as highest and 70 kHz as lowest line rate; both are left out." in lines
    assert (edid.limits.fields, edid.limits.lines, edid.limits.max_pixel_clock_hz) == (None, None, 110e6)
    assert limits_words(edid.limits) == "lines not said, fields not said, pixels up to 110 MHz"
    assert len(edid.modes) == len(read_edid(block()).modes)


@pytest.mark.parametrize(
    ("changes", "part"),
    [
        ({0: 0x01}, "header is 01 ff"),
        ({18: 2}, "version is 2.3"),
        ({19: 5}, "version is 1.5"),
        ({8: 0x80}, "maker's id"),
        ({20: 0x80}, "digital input"),
        ({20: 0x00}, "no kind of sync"),
        ({126: 1}, "announces 1 extension block; none follow"),
        ({93: 0xF0}, "unknown tag f0"),
        ({95: 0x07}, "no letters"),
        ({54 + 4: 0x40}, "Detailed timing 1 is ignored. The line's back porch is -80"),
        ({54: 1, 55: 0}, "Detailed timing 1 is ignored. A pixel clock of 10 kHz"),
        ({71: 0x00}, "composite sync"),
        ({38: 0x01, 39: 0xC0}, "Standard timing 1 (01 c0) is ignored"),
    ],
)
def test_damage_is_named_and_lived_with(block, changes, part) -> None:
    edid = read_edid(block(changes))

    assert edid.checksum_ok
    assert any(part in damage for damage in edid.damages), edid.damages


@given(at=st.integers(0, 127), change=st.integers(1, 255))
def test_any_changed_byte_fails_the_checksum(block, at: int, change: int) -> None:
    data = bytearray(block())
    data[at] ^= change

    edid = read_edid(bytes(data))

    assert not edid.checksum_ok
    assert any("checksum" in damage for damage in edid.damages)


@given(st.binary(min_size=119, max_size=119))
def test_any_bytes_behind_a_header_are_read(body: bytes) -> None:
    block = bytes.fromhex("00 ff ff ff ff ff ff 00") + body
    edid = read_edid(block + bytes((-sum(block) % 256,)))

    assert edid.checksum_ok
    assert monitor_object(edid)["checksum_ok"] is True


@pytest.mark.parametrize(
    ("size", "part"),
    [
        (0, "empty"),
        (100, "cut short: it has 100 bytes"),
        (127, "it has 127 bytes"),
        (10_000_000, "10000000 bytes"),
    ],
)
def test_files_that_hold_no_base_block(block, size: int, part: str) -> None:
    content = (block() * (size // 128 + 1))[:size]

    with pytest.raises(TimingError, match=part):
        read_edid(content)


def test_what_follows_the_block_is_said(block) -> None:
    assert read_edid(block() + b"x").damages == (
        "After the last whole block stands 1 more byte; it is ignored.",
    )
    assert "announces 0 extension blocks; 1 follows" in read_edid(block() + bytes(128)).damages[0]


def test_extensions_are_listed_and_skipped(block) -> None:
    extension = bytes((0x02, 3)) + bytes(125) + bytes((251,))

    edid = read_edid(block({126: 1}) + extension)

    assert [(found.tag, found.kind, found.checksum_ok) for found in edid.extensions] == [(2, "CTA-861", True)]
    assert edid.damages == ()


def test_something_else_is_no_edid() -> None:
    with pytest.raises(TimingError, match="This is no EDID: it begins with 89 50 4e 47"):
        read_edid(b"\x89PNG\r\n\x1a\n" + bytes(300))


def test_hex_text_is_read_like_the_bytes(block) -> None:
    data = block()

    assert read_edid(data.hex().encode()) == read_edid(data)
    assert read_edid(data.hex(" ", 1).encode()) == read_edid(data)


def test_digital_input_has_no_levels(block) -> None:
    figures = monitor_object(read_edid(block({20: 0x80})))

    assert (figures["input"], figures["white_v"], figures["separate_sync"]) == ("digital", None, None)


def test_interlaced_counts_of_a_field_become_a_frame(block) -> None:
    """VIC 5: 1920x1080 at 60 fields, 540 + 2 / 5 / 15 lines a field."""
    descriptor = bytes.fromhex("01 1d 80 18 71 1c 16 20 58 2c 25 00 00 00 00 00 00 9e")
    mode = read_edid(block(dict(enumerate(descriptor, 54)))).detailed[0]

    assert (mode.v.active, mode.v.front_porch, mode.v.sync, mode.v.back_porch) == (1080, 4, 10, 30)
    assert mode.field_rate_hz == pytest.approx(60.05, abs=0.01)


def test_interlaced_counts_of_a_frame_are_noticed(block) -> None:
    descriptor = bytes.fromhex("44 05 80 dd 20 e0 2a 10 2f 3f 46 00 e5 6c 11 00 00 98")
    edid = read_edid(block(dict(enumerate(descriptor, 54))))

    assert edid.detailed[0].v.active == 480
    assert "counts the lines of a frame" in edid.damages[0]


def test_borders_are_part_of_the_porches(block) -> None:
    """640x350 as a real monitor stores it: borders of 8 and 6, totals 800 and 449."""
    descriptor = bytes.fromhex("d5 09 80 a0 20 5e 63 10 10 60 52 08 19 d2 10 08 06 18")
    mode = read_edid(block(dict(enumerate(descriptor, 54)))).detailed[0]

    assert (mode.h.total, mode.v.total) == (800, 449)
    assert (mode.h.border, mode.v.border) == (8, 6)


def test_more_lists_of_modes(block) -> None:
    more_standard = bytes.fromhex("00 00 00 fa 00 31 00 01 01 01 01 01 01 01 01 01 01 0a")
    established_iii = bytes.fromhex("00 00 00 f7 00 0a 80 00 00 00 00 10 00 00 00 00 00 00")
    cvt_codes = bytes.fromhex("00 00 00 f8 00 01 57 28 29 00 00 00 00 00 00 00 00 00")
    edid = read_edid(block(dict(enumerate(more_standard + established_iii + cvt_codes, 72))))

    assert {"640x400@60", "640x350@85", "1920x1440@75"} <= {mode.name for mode in edid.modes}
    # 2 x (0x257 + 1) lines, 16:10, 60 Hz in both blankings
    assert {"1920x1200@60", "1920x1200@60RB"} <= {mode.name for mode in edid.standard}
    assert edid.limits is None
