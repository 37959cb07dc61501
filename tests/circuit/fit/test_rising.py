from itertools import permutations

import numpy as np
import pytest

from workbench.circuit.fit.rising import best_order, least_worst


def worst_in_order(off, above, below):
    sums = np.concatenate(([0.0], np.cumsum(off)))
    return max((sums + above).max(), (below - sums).max())


@pytest.mark.parametrize("n_rising", [1, 2, 3, 5])
@pytest.mark.parametrize("tail", [0.0, 0.4, 3.0])
def test_as_good_as_the_best_of_all_orders(n_rising, tail):
    random = np.random.default_rng(n_rising)
    off = random.normal(size=(40, n_rising))
    above, below = tail * random.random((2, 40))

    worst = least_worst(off, above, below)

    for row, each in enumerate(off):
        tried = [worst_in_order(list(order), above[row], below[row]) for order in permutations(each)]
        assert worst[row] == pytest.approx(min(tried))
        order = best_order(each, above[row], below[row])
        assert sorted(order) == list(range(n_rising))
        assert worst_in_order(each[list(order)], above[row], below[row]) == pytest.approx(min(tried))


def test_strong_and_weak_legs_take_turns():
    off = np.array([2.0, 2.0, 2.0, -2.0, -2.0, -2.0])

    order = best_order(off, 0.0, 0.0)

    assert abs(np.cumsum(off[list(order)])).max() == 2.0


def test_legs_alike_rise_as_they_stand():
    assert best_order(np.full(3, 0.1), 0.0, 0.0) == (0, 1, 2)


def test_more_sets_than_are_worked_on_at_a_time():
    off = np.random.default_rng(2).normal(size=(1500, 3))

    worst = least_worst(off, np.zeros(1500), np.zeros(1500))

    assert worst.tolist() == [float(least_worst(row[None], np.zeros(1), np.zeros(1))[0]) for row in off]
    assert least_worst(off[:0], np.zeros(0), np.zeros(0)).shape == (0,)
