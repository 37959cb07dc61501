import pytest

from tests.drawing.networks import sheet
from workbench.drawing.sheet import Needs, fit_columns, fit_pitch

PLAIN = Needs(boxes=(0.0,), before=(0.0,), after=(0.0,), tracks=(0, 1), gap=0.0, cable=True)


@pytest.mark.parametrize("width", [560, 620, 800, 1000, 1400])
def test_room_to_spare_is_filled_to_the_last_pixel(width: float) -> None:
    columns = fit_columns(sheet(width), PLAIN)

    assert columns.width == width
    assert columns.monitor[1] == pytest.approx(width - (20 if width >= 680 else 14), abs=1)


def test_columns_shrink_before_the_drawing_grows() -> None:
    usual, short = (fit_columns(sheet(width), PLAIN) for width in (800, 720))

    assert short.width == 720
    assert short.boxes[0][1] - short.boxes[0][0] < usual.boxes[0][1] - usual.boxes[0][0]


def test_what_cannot_shrink_any_more_makes_the_drawing_wider() -> None:
    crowded = Needs((300.0, 300.0), (0.0, 0.0), (0.0, 0.0), (0, 1, 1), gap=0.0, cable=False)

    assert fit_columns(sheet(540), crowded).width > 540


def test_without_a_cable_the_bus_stays_where_it_was() -> None:
    bare = Needs(PLAIN.boxes, PLAIN.before, PLAIN.after, PLAIN.tracks, gap=0.0, cable=False)

    with_cable, without = (fit_columns(sheet(800), needs) for needs in (PLAIN, bare))

    assert with_cable.ranks == without.ranks
    assert without.socket[1] == without.monitor[0]


@pytest.mark.parametrize(("height", "pitch"), [(100, 52), (5000, 92)])
def test_the_row_pitch_stays_within_its_bounds(height: float, pitch: float) -> None:
    assert fit_pitch(sheet(800, height), gaps=6.0).row == pitch


def test_names_stand_over_the_boxes_from_72_px_on() -> None:
    assert fit_pitch(sheet(800, 5000), gaps=6.0).roomy
    assert not fit_pitch(sheet(800, 100), gaps=6.0).roomy
