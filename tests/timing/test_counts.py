import pytest

from workbench.errors import TimingError
from workbench.timing.counts import read_lines, read_pixels
from workbench.timing.search import find_mode

VGA = find_mode("640x480@60")


@pytest.mark.parametrize(
    ("text", "pixels"),
    [
        ("96", 96),
        (" 96 px ", 96),
        ("1 pixel", 1),
        ("3.81us", 96),
        ("3,81 µs", 96),
        ("3813 ns", 96),
        ("0s", 0),
    ],
)
def test_pixels_are_typed_as_a_count_or_a_time(text, pixels):
    assert read_pixels(VGA, text) == pixels


@pytest.mark.parametrize(("text", "lines"), [("2", 2), ("2 lines", 2), ("64µs", 2), ("1.05 ms", 33)])
def test_lines_are_typed_as_a_count_or_a_time(text, lines):
    assert read_lines(VGA, text) == lines


@pytest.mark.parametrize("text", ["", "9.5", "-5", "1e3", "px", "lots", "2 Hz", "nan", "9" * 20])
def test_what_is_neither_is_refused(text):
    with pytest.raises(TimingError, match="no whole number of pixels: type one like 48, or a time like"):
        read_pixels(VGA, text)


@pytest.mark.parametrize(
    ("text", "why"), [("-1us", "not possible"), ("1 s", "outside 0"), ("1kks", "no unit")]
)
def test_an_impossible_time_is_refused(text, why):
    with pytest.raises(TimingError, match=why):
        read_lines(VGA, text)
