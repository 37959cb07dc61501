"""The two cursors on the line."""

import pytest

from workbench.gui.scanline.content.cursors import Cursors, Place
from workbench.timing.mode import Axis, Mode, Polarity
from workbench.timing.standards import dmt_mode

MODE = dmt_mode(0x04)


@pytest.fixture
def cursors(qapp) -> Cursors:
    return Cursors(MODE)


def test_they_start_in_the_picture(cursors: Cursors) -> None:
    assert [cursors.pixel(place) - MODE.h.blanking for place in Place] == [40, 200]


def test_a_step_of_a_pixel_moves_by_its_time(cursors: Cursors) -> None:
    before = cursors.time_s(Place.HERE)

    cursors.step(1)

    assert cursors.time_s(Place.HERE) - before == pytest.approx(MODE.pixel_s)


def test_the_cursor_put_last_is_moved_by_the_keys(cursors: Cursors) -> None:
    cursors.put(Place.THERE, 10e-6)
    cursors.step(8)

    assert cursors.active is Place.THERE
    assert cursors.time_s(Place.THERE) == pytest.approx(10e-6 + 8 * MODE.pixel_s)


@pytest.mark.parametrize(("time_s", "pixel"), [(-1.0, 0), (1.0, 799)])
def test_they_stay_on_the_line(cursors: Cursors, time_s: float, pixel: int) -> None:
    cursors.put(Place.HERE, time_s)

    assert cursors.pixel(Place.HERE) == pixel


def test_they_keep_their_column_when_a_porch_grows(cursors: Cursors) -> None:
    wider = Mode("own", "custom", MODE.pixel_clock_hz, Axis(640, 16, 96, 60, Polarity.NEGATIVE), MODE.v)

    cursors.set_mode(wider)

    assert cursors.pixel(Place.HERE) - wider.h.blanking == 40


def test_putting_one_where_it_is_tells_nobody(cursors: Cursors, qtbot) -> None:
    with qtbot.assertNotEmitted(cursors.changed):
        cursors.put_on_pixel(Place.HERE, cursors.pixel(Place.HERE))
