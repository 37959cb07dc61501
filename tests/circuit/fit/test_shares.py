import numpy as np
import pytest

from workbench.circuit.fit.shares import best_together
from workbench.circuit.fit.task import Pool


def pool(*errors):
    return Pool(np.arange(len(errors))[:, None], np.array(errors), 1.0)


def uses(*rows):
    return np.array(rows, np.int16)


def test_with_enough_parts_each_takes_its_best():
    chosen, error = best_together(
        [pool(1.0, 2.0), pool(3.0, 4.0)], [uses([1], [0]), uses([1], [0])], np.array([2])
    )

    assert chosen == (0, 0)
    assert error == 3.0


def test_the_one_part_goes_where_it_helps_most():
    # The first channel does without for 2.0, the second only for 9.0.
    chosen, error = best_together(
        [pool(1.0, 2.0), pool(1.0, 9.0)], [uses([1], [0]), uses([1], [0])], np.array([1])
    )

    assert chosen == (1, 0)
    assert error == 2.0


@pytest.mark.parametrize("seed", range(20))
def test_as_good_as_trying_all(seed):
    random = np.random.default_rng(seed)
    pools = [pool(*np.sort(random.random(7))) for _ in range(3)]
    taken = [random.integers(0, 3, (7, 4)).astype(np.int16) for _ in range(3)]
    counts = np.array([3, 3, 4, 4])
    best = min(
        (
            max(pools[0].errors[a], pools[1].errors[b], pools[2].errors[c])
            for a, b, c in np.ndindex(7, 7, 7)
            if (taken[0][a] + taken[1][b] + taken[2][c] <= counts).all()
        ),
        default=np.inf,
    )

    chosen, error = best_together(pools, taken, counts)

    assert error == best
    assert (chosen is None) == (best == np.inf)


def test_none_where_nothing_goes_together():
    assert best_together([pool(1.0), pool(1.0)], [uses([1]), uses([1])], np.array([1])) == (None, np.inf)
