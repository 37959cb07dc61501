"""What the readout says at a moment of the line."""

import pytest

from tests.waveform.test_scanline import LEVELS, VGA, render
from workbench.picture.scene import Card, Picture
from workbench.timing.mode import Region
from workbench.waveform.reading import between, reading_at


def test_column_40_of_the_colour_bars_is_white():
    reading = reading_at(render(number=123), 7.944e-6)

    assert (reading.pixel, reading.column) == (199, 39)
    assert reading.region is Region.ACTIVE
    assert reading.codes == (31, 31, 31)
    assert reading.volts == pytest.approx((0.7, 0.7, 0.7, 3.3, 3.3), abs=1e-5)


@pytest.mark.parametrize(
    ("pixel", "region"),
    [(0, Region.FRONT_PORCH), (16, Region.SYNC), (112, Region.BACK_PORCH), (160, Region.ACTIVE)],
)
def test_an_edge_belongs_to_what_starts_there(pixel, region):
    reading = reading_at(render(), pixel * VGA.pixel_s)

    assert (reading.pixel, reading.region) == (pixel, region)


def test_blanking_has_no_column():
    assert reading_at(render(), 1e-6).column is None


def test_a_line_outside_the_picture_has_no_column_and_names_its_part():
    reading = reading_at(render(number=491), 20e-6)

    assert reading.region is Region.ACTIVE
    assert reading.line_region is Region.SYNC
    assert reading.column is None
    assert reading.volts[4] == 0.0


@pytest.mark.parametrize("time_s", [-1.0, 0.0])
def test_before_the_line_is_its_first_sample(time_s):
    assert reading_at(render(), time_s).time_s == 0.0


def test_after_the_line_is_its_last_sample():
    line = render()

    reading = reading_at(line, 1.0)

    assert reading.pixel == 799
    assert reading.time_s == pytest.approx(line.times_s[-1])


def test_volts_are_interpolated_between_samples():
    line = render()
    sample = 160 * 16 + 1

    halfway = reading_at(line, (sample + 0.5) * line.step_s).volts[0]

    assert halfway == pytest.approx(line.volts[0, sample : sample + 2].mean(), abs=1e-6)


def test_between_two_cursors():
    line = render(picture=Picture(Card.STRIPES))
    here, there = (reading_at(line, (160 + n) * VGA.pixel_s + 35e-9) for n in (0, 41))

    difference = between(line, here, there)

    assert difference.pixels == pytest.approx(41.0)
    assert difference.seconds == pytest.approx(41 * VGA.pixel_s)
    assert difference.codes == (-31, -31, -31)
    assert difference.volts[0] == pytest.approx(-LEVELS[31], abs=1e-5)
