"""Which pixel a dot of the screen shows."""

import numpy as np
import pytest

from workbench.timing.search import find_mode
from workbench.waveform.places import difference, places_of
from workbench.waveform.sampling import Adjustment

VGA = find_mode("640x480@60")
RIGHT = Adjustment(total=800, left=144, top=35, phase=0.5)


def test_a_monitor_that_knows_the_mode_shows_dot_for_pixel():
    places = places_of(VGA, RIGHT, 640, 480)

    assert places.columns.tolist() == list(range(640))
    assert places.rows.tolist() == list(range(480))
    assert places.dot_of(150, 222) == (150, 222)


def test_a_preview_names_the_pixels_it_shows():
    places = places_of(VGA, RIGHT, 160, 120, every=4)

    assert places.columns[:3].tolist() == [0, 4, 8]
    assert places.dot_of(7, 9) == (2, 2)


def test_a_shifted_picture_is_found_where_it_is():
    places = places_of(VGA, Adjustment(800, 134, 33, 0.5), 640, 480)

    assert (places.columns[0], places.rows[0]) == (-10, -2)
    assert places.dot_of(0, 0) == (10, 2)
    assert places.dot_of(639, 479) is None


def test_another_total_stretches():
    places = places_of(VGA, Adjustment(848, 153, 35, 0.5), 640, 480)

    assert places.columns[0] == 0
    assert places.columns[-1] == pytest.approx(639 * 800 / 848, abs=1)


def test_the_difference_is_taken_pixel_by_pixel():
    sent = np.random.default_rng(1).integers(0, 256, (480, 640, 3), dtype=np.uint8)
    seen = np.zeros_like(sent)
    seen[:, 10:] = sent[:, :-10]

    apart = difference(sent, seen, places_of(VGA, Adjustment(800, 134, 35, 0.5), 640, 480))

    assert not apart.any()
    assert difference(sent, seen, places_of(VGA, RIGHT, 640, 480)).mean() > 50
