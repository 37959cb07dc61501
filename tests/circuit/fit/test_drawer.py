from itertools import combinations_with_replacement

import numpy as np
import pytest

from workbench.circuit.fit.drawer import Arrangement, Drawer, Leg, OwnedPart, leg_options, listed_words
from workbench.circuit.series import Series
from workbench.errors import NetworkError


def drawer(*rows):
    return Drawer(tuple(OwnedPart(*row) if isinstance(row, tuple) else OwnedPart(row) for row in rows))


def test_a_series_runs_from_ten_ohm_to_a_megohm():
    ohms = [part.ohms for part in Drawer.of_series(Series.E12).parts]

    assert len(ohms) == 5 * 12 + 1
    assert (ohms[0], ohms[1], ohms[-1]) == (10.0, 12.0, 1e6)
    assert 4700.0 in ohms


def test_two_parts_in_every_arrangement():
    options = leg_options(drawer(100.0, 300.0), 2)

    np.testing.assert_allclose(options.ohms, [50, 75, 100, 150, 200, 300, 400, 600])
    assert options.leg(1).arrangement is Arrangement.PARALLEL
    assert [part.ohms for part in options.leg(6).parts] == [100.0, 300.0]


def test_three_parts_in_every_arrangement():
    a, b, c = 100.0, 230.0, 470.0
    expected = {
        a + b + c,
        1 / (1 / a + 1 / b + 1 / c),
        *(x + 1 / (1 / y + 1 / z) for x, y, z in ((a, b, c), (b, a, c), (c, a, b))),
        *(1 / (1 / x + 1 / (y + z)) for x, y, z in ((a, b, c), (b, a, c), (c, a, b))),
    }
    options = leg_options(drawer((a, 1), (b, 1), (c, 1)), 3)

    three = np.sort(options.ohms[options.n_parts == 3])
    np.testing.assert_allclose(three, sorted(expected))


@pytest.mark.parametrize("most_parts", [1, 2, 3])
def test_the_stated_resistance_is_that_of_the_arrangement(most_parts):
    options = leg_options(drawer(100.0, 220.0, 470.0, 1000.0), most_parts)

    for index in range(len(options.ohms)):
        leg = options.leg(index)
        values = [part.ohms for part in leg.parts]
        assert leg.ohms == pytest.approx(OHMS[leg.arrangement](*values))


OHMS = {
    Arrangement.SINGLE: lambda a: a,
    Arrangement.SERIES: lambda a, b: a + b,
    Arrangement.PARALLEL: lambda a, b: 1 / (1 / a + 1 / b),
    Arrangement.SERIES_OF_THREE: lambda a, b, c: a + b + c,
    Arrangement.PARALLEL_OF_THREE: lambda a, b, c: 1 / (1 / a + 1 / b + 1 / c),
    Arrangement.SERIES_WITH_PAIR: lambda a, b, c: a + 1 / (1 / b + 1 / c),
    Arrangement.PARALLEL_WITH_PAIR: lambda a, b, c: 1 / (1 / a + 1 / (b + c)),
}


def test_no_leg_takes_more_parts_than_there_are():
    options = leg_options(drawer((100.0, 1), (300.0, 2)), 3)
    counts, uses = options.counted()

    np.testing.assert_array_equal(counts, [1, 2])
    assert (uses <= counts).all()
    assert 50.0 not in options.ohms
    assert 150.0 in options.ohms


def test_of_legs_alike_the_one_with_the_fewest_parts_is_kept():
    options = leg_options(drawer(500.0, 1000.0), 2)

    (index,) = np.flatnonzero(options.ohms == 500.0)
    assert options.leg(int(index)).arrangement is Arrangement.SINGLE
    assert len(np.unique(options.ohms)) == len(options.ohms)


def test_counted_parts_keep_all_their_legs():
    options = leg_options(drawer((500.0, 5), (1000.0, 5)), 2)

    assert np.count_nonzero(np.isclose(options.ohms, 500.0)) == 2


def test_every_pair_is_there():
    values = [part.ohms for part in Drawer.of_series(Series.E6).parts]
    options = leg_options(Drawer.of_series(Series.E6), 2)

    for a, b in combinations_with_replacement(values, 2):
        for ohms in (a + b, a * b / (a + b)):
            assert np.abs(options.ohms / ohms - 1).min() < 1e-9


@pytest.mark.parametrize(
    ("parts", "most", "words"), [((), 1, "empty"), ((1e3,), 0, "1 to 3"), ((1e3,), 4, "1 to 3")]
)
def test_bad_input_is_refused(parts, most, words):
    with pytest.raises(NetworkError, match=words):
        leg_options(drawer(*parts), most)


def test_a_drawer_counts_its_parts_of_a_value():
    drawer = Drawer((OwnedPart(1e3, 12), OwnedPart(998.0, 3, nominal_ohms=1e3), OwnedPart(470.0)))

    assert drawer.count_of(1e3) == 15
    assert drawer.count_of(998.0) == 3
    assert drawer.count_of(470.0) is None
    assert drawer.count_of(999.0) == 0


@pytest.mark.parametrize(("series", "most"), [(Series.E48, 3), (Series.E192, 3)])
def test_too_many_legs_to_compare_are_refused_before_any_is_made(series, most):
    with pytest.raises(NetworkError, match="too many legs of up to 3 parts to compare: choose two parts"):
        leg_options(Drawer.of_series(series), most)


def test_parts_are_taken_out_of_a_drawer_as_far_as_there_are_any():
    drawer = Drawer((OwnedPart(130.0, 2), OwnedPart(468.0, 1, nominal_ohms=470.0), OwnedPart(1e3)))

    left = drawer.without([130.0, 470.0, 470.0, 1e3, 33.0])

    assert left == Drawer((OwnedPart(130.0, 1), OwnedPart(1e3)))


def test_three_legs_alike_in_a_row_are_counted():
    one = Leg(1e3, Arrangement.SINGLE, (OwnedPart(1e3),))
    pair = Leg(500.0, Arrangement.PARALLEL, (OwnedPart(1e3), OwnedPart(1e3)))

    assert listed_words([one] * 3 + [pair] * 3) == ["3 × 1 kΩ", "3 × (1 kΩ || 1 kΩ)"]
    assert listed_words([one, one, pair, one]) == ["1 kΩ", "1 kΩ", "1 kΩ || 1 kΩ", "1 kΩ"]
