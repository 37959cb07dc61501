import pytest

from workbench.errors import TimingError
from workbench.timing.formulas.cvt import cvt, cvt_rb, cvt_rb2


@pytest.mark.parametrize(
    ("width", "height", "lines"),
    [
        (640, 480, 4),
        (1280, 720, 5),
        (1440, 900, 6),
        (1280, 1024, 7),
        (1280, 768, 7),
        (1360, 768, 5),
        (848, 480, 5),
    ],
)
def test_v_sync_codes_the_shape_as_the_standard_words_it(width: int, height: int, lines: int) -> None:
    """1360x768 and 848x480 are 16:9 by the standard's wording; some programs call them neither."""
    assert cvt(width, height, 60).v.sync == lines
    assert cvt_rb(width, height, 60).v.sync == lines


def test_a_shape_of_none_of_the_standards_ratios_has_ten_lines() -> None:
    assert cvt(1000, 300, 60).v.sync == 10


@pytest.mark.parametrize("rate_hz", [24, 47.952, 59.94, 60, 75, 144])
def test_refresh_is_the_wanted_one_but_for_the_cut_of_the_clock(rate_hz: float) -> None:
    for formula, step_hz in ((cvt, 250_000), (cvt_rb, 250_000), (cvt_rb2, 1_000)):
        mode = formula(800, 600, rate_hz)

        assert mode.pixel_clock_hz % step_hz == 0
        assert mode.frame_rate_hz == pytest.approx(rate_hz, rel=0.01)
    assert cvt_rb2(800, 600, rate_hz).frame_rate_hz <= rate_hz


def test_reduced_blanking_keeps_460_microseconds() -> None:
    for formula in (cvt_rb, cvt_rb2):
        mode = formula(1920, 1200, 60)

        assert mode.v.blanking * mode.line_s >= 460e-6
        assert (mode.v.blanking - 1) * mode.line_s < 462e-6


def test_cvt_cuts_the_width_to_cells_and_version_2_does_not() -> None:
    assert cvt(1366, 768, 60).name == "1360x768@60"
    assert cvt_rb2(1366, 768, 60).name == "1366x768@60RB2"


@pytest.mark.parametrize(
    ("width", "height", "rate_hz", "made"), [(640, 480, 1, "0.6339"), (160, 120, 60, "48.95")]
)
def test_a_rate_that_the_clock_steps_miss_is_refused(width, height, rate_hz, made) -> None:
    with pytest.raises(TimingError, match=f"clock steps make {made} Hz"):
        cvt(width, height, rate_hz)
