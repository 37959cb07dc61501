import pytest

from workbench.errors import TimingError
from workbench.timing.search import find_mode
from workbench.timing.standards import CLASSIC, CTA, DMT, KNOWN


@pytest.mark.parametrize(
    ("text", "source"),
    [
        ("640x480@60", "VESA DMT 0x04"),
        (" 640 × 480 @ 60 Hz ", "VESA DMT 0x04"),
        ("640*480@59.94", "VESA DMT 0x04"),
        ("640x480@59,94", "VESA DMT 0x04"),
        ("640x480@73", "VESA DMT 0x05"),
        ("0x04", "VESA DMT 0x04"),
        ("DMT 0x1A", "VESA DMT 0x1a"),
        ("dmt 88", "VESA DMT 0x58"),
        ("1280x768@60", "VESA DMT 0x17"),
        ("1280x768@60RB", "VESA DMT 0x16"),
        ("1280x768@60 rb", "VESA DMT 0x16"),
        ("1600x900@60", "VESA DMT 0x53"),
        ("4096x2160@59.94", "VESA DMT 0x58"),
        ("1024x768@43i", "VESA DMT 0x0f"),
        ("1920x1080i@60", "CTA-861 VIC 5"),
        ("VIC 18", "CTA-861 VIC 17 and 18"),
        ("720x400@70", "classic"),
        ("832x624@75", "classic"),
    ],
)
def test_finds(text: str, source: str) -> None:
    assert find_mode(text).source == source


@pytest.mark.parametrize(
    ("text", "part"),
    [
        ("", "No mode is named"),
        ("0x0@0", "no picture"),
        ("640x480", "lacks a refresh rate"),
        ("99999x1@1", "larger than"),
        ("9" * 5000 + "x1@1", "larger than"),
        ("640x480@0", "0 frames"),
        ("640x480@nan", "not a display mode"),
        ("-640x480@60", "not a display mode"),
        ("x", "not a display mode"),
        ("640x480@61", "640x480@60, 640x480@72"),
        ("640x480@60RB2", "not in the standards' tables"),
        ("0x00", "0x01 to 0x58"),
        ("0x59", "0x01 to 0x58"),
        ("VIC 99", "VIC 99"),
    ],
)
def test_refuses_with_one_sentence(text: str, part: str) -> None:
    with pytest.raises(TimingError, match=part) as refusal:
        find_mode(text)

    assert "\n" not in str(refusal.value)
    assert len(str(refusal.value)) < 200


def test_refuses_an_unknown_way() -> None:
    with pytest.raises(TimingError, match="no way to a mode"):
        find_mode("640x480@60", by="guess")


def test_keeps_to_the_table_asked_for() -> None:
    assert find_mode("640x480@60", by="cta").source == "CTA-861 VIC 1"
    with pytest.raises(TimingError, match="CTA-861 table"):
        find_mode("1024x768@60", by="cta")


@pytest.mark.parametrize("mode", KNOWN, ids=lambda mode: f"{mode.source} {mode.name}")
def test_every_known_mode_is_found_by_its_name_in_its_table(mode) -> None:
    table = "dmt" if mode in DMT else "cta" if mode in CTA else None

    assert find_mode(mode.name, by=table) == mode


def test_table_sizes() -> None:
    assert (len(DMT), len(CTA), len(CLASSIC)) == (88, 14, 7)


@pytest.mark.parametrize(
    ("text", "by", "name", "clock_hz"),
    [
        ("640x480@60", "cvt", "640x480@60", 23_750_000),
        ("800x600@120", "cvt-rb", "800x600@120RB", 73_250_000),
        ("800x600@120 RB", "cvt", "800x600@120RB", 73_250_000),
        ("4096x2160@60RB2", "cvt", "4096x2160@60RB2", 556_744_000),
        ("4096x2160@59.94", "cvt-rb2", "4096x2160@59.94RB2", 556_188_000),
        ("1366x768@60", "cvt", "1360x768@60", 84_750_000),
    ],
)
def test_works_a_mode_out_by_formula(text: str, by: str, name: str, clock_hz: int) -> None:
    mode = find_mode(text, by=by)

    assert (mode.name, mode.pixel_clock_hz) == (name, clock_hz)


@pytest.mark.parametrize(
    ("text", "by", "part"),
    [
        ("1024x768@43i", "cvt", "interlaced"),
        ("640x480@60RB", "gtf", "as cvt-rb makes it, not gtf"),
        ("640x480@60RB2", "cvt-rb", "as cvt-rb2 makes it"),
        ("0x04", "cvt", "give a size"),
        ("VIC 1", "dmt", "give a size"),
        ("12x10@60", "cvt", "12x10@60 is outside what VESA CVT"),
        ("640x480@1001", "gtf", "1 … 1000"),
        ("640x480@0.5", "cvt-rb", "1 … 1000"),
        ("640x8192@1000", "cvt", "outside what VESA CVT"),
    ],
)
def test_refuses_what_a_formula_cannot_make(text: str, by: str, part: str) -> None:
    with pytest.raises(TimingError, match=part):
        find_mode(text, by=by)
