import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.timing.query import read_query
from workbench.timing.search import search
from workbench.timing.standards import KNOWN


def names(text: str) -> list[str]:
    return [mode.name for mode in search(text)]


@pytest.mark.parametrize(
    ("text", "first", "count"),
    [
        ("640x480", "640x480@60", 5),
        ("640 × 480", "640x480@60", 5),
        ("800x600 close to 40 MHz", "800x600@60", 2),
        ("~ 25 MHz", "640x480@60", 5),
        ("25.175M", "640x480@60", 5),
        ("31.5 kHz 60 Hz", "640x480@60", 3),
        ("15.7 kHz", "720x480@60i", 2),
        ("svga 75", "800x600@75", 1),
        ("1080i", "1920x1080@60i", 2),
        ("720p", "1280x720@60", 2),
        ("0x04", "640x480@60", 1),
        ("832", "832x624@75", 1),
        ("text", "720x400@85", 3),
        ("classic", "720x400@70", 7),
        ("interlaced dmt", "1024x768@43i", 1),
        ("1920 1080 i", "1920x1080@60i", 2),
        ("1920x1080@60p", "1920x1080@60", 1),
        ("1280x768 rb", "1280x768@60RB", 2),
        ("0x52", "1920x1080@60", 1),
    ],
)
def test_nearest_first(text: str, first: str, count: int) -> None:
    found = names(text)

    assert (found[0], len(found)) == (first, count)


def test_nothing_typed_lists_everything_once() -> None:
    found = search("")

    assert found[:88] == KNOWN[:88]
    assert len(found) == len(KNOWN) - 3  # VIC 1, 4 and 16 are DMT modes too


@pytest.mark.parametrize("text", ["zzz", "@0", "0 MHz", "7x7", "900 MHz", "640x480 1024x768"])
def test_what_nothing_fits_lists_nothing(text: str) -> None:
    assert names(text) == []


def test_clock_order_is_by_distance() -> None:
    distances = [abs(mode.pixel_clock_hz - 80e6) for mode in search("80 MHz")]

    assert distances == sorted(distances)
    assert len(distances) > 5


@given(st.text(max_size=60))
def test_any_text_is_read(text: str) -> None:
    read_query(text)
    search(text)
