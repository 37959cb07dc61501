"""Which counts a preset or a zoom brings into sight."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.gui.scanline.content.presets import Preset, preset_span, zoomed_span
from workbench.timing.mode import Axis, Polarity

LINE = Axis(640, 16, 96, 48, Polarity.NEGATIVE)
SHORT = Axis(5, 1, 1, 1, Polarity.NEGATIVE)


@pytest.mark.parametrize(
    ("preset", "span"),
    [
        (Preset.LINE, (0, 800)),
        (Preset.FRAME, (0, 800)),
        (Preset.BLANKING, (0, 320)),
        (Preset.PIXELS, (188, 212)),
    ],
)
def test_spans(preset: Preset, span: tuple[int, int]) -> None:
    assert preset_span(preset, LINE, 200.4) == span


@pytest.mark.parametrize(("around", "span"), [(0, (0, 24)), (799, (776, 800))])
def test_pixels_stay_within_the_line(around: float, span: tuple[int, int]) -> None:
    assert preset_span(Preset.PIXELS, LINE, around) == span


@pytest.mark.parametrize("preset", list(Preset))
def test_a_very_short_line_is_shown_whole(preset: Preset) -> None:
    first, last = preset_span(preset, SHORT, 3)

    assert 0 <= first < last <= SHORT.total


def test_a_zoom_keeps_the_place_under_the_pointer() -> None:
    first, last = zoomed_span((0.0, 800.0), 800.0, 0.5, 200.0)

    assert (first, last) == (100.0, 500.0)
    assert (200.0 - first) / (last - first) == pytest.approx(200 / 800)


@given(
    first=st.floats(0, 799),
    width=st.floats(1, 800),
    factor=st.floats(0.01, 100),
    around=st.floats(-100, 900),
)
def test_a_zoom_stays_within_the_line(first: float, width: float, factor: float, around: float) -> None:
    span = (first, min(first + width, 800.0))

    low, high = zoomed_span(span, 800.0, factor, around)

    assert 0.0 <= low < high <= 800.0 + 1e-9
    assert high - low >= 2.0 - 1e-9
