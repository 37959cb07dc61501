"""A bound that is too high would cut the best set away, and the proof with it."""

from itertools import product

import numpy as np
import pytest

from workbench.circuit.codes import pin_steps
from workbench.circuit.fit.task import Task
from workbench.circuit.fit.windows import Windows


def task_of(bits, thermometer, ohms):
    steps = np.array(pin_steps(bits, thermometer))
    return Task(
        steps * (0.7 / (2**bits - 1)),
        3.3,
        1 / 75,
        1.0 / np.array(ohms),
        np.zeros(0, np.intp),
        np.zeros((len(ohms), 0), np.int16),
        2**thermometer - 1,
    )


SHAPES = {"weighted": (4, 0), "three rise": (3, 2), "three rise over two": (4, 2), "seven rise": (3, 3)}
OHMS = {2: [620.0, 680.0, 750.0, 820.0, 1000.0, 1500.0, 2000.0], 3: [1200.0, 1500.0, 1800.0]}


@pytest.mark.parametrize(("bits", "thermometer"), SHAPES.values(), ids=SHAPES)
@pytest.mark.parametrize("limit", [0.02, 0.08, 0.3])
def test_nothing_within_the_limit_is_cut(bits, thermometer, limit):
    ohms = OHMS[3] if thermometer == 3 else OHMS[2] if thermometer else [470, 560, 1000, 2200, 3900]
    task = task_of(bits, thermometer, ohms)
    every = np.array(
        [
            each
            for each in product(range(len(ohms)), repeat=task.n_legs)
            if list(each[: task.n_rising]) == sorted(each[: task.n_rising])
        ]
    )
    errors = task.errors(every)
    windows = Windows.of(task, limit)
    good = every[errors <= limit]

    if windows is None:
        assert not len(good)
        return
    for leg in range(task.n_legs):
        assert np.isin(good[:, leg], windows.options[leg]).all()
    for n_legs in range(1, task.n_legs + 1):
        bounds = windows.bounds(task, good[:, :n_legs])
        assert (bounds <= errors[errors <= limit] + 1e-12).all()


@pytest.mark.parametrize(("bits", "thermometer"), [(5, 0), (4, 2), (5, 3)])
def test_a_whole_set_is_bounded_by_no_more_than_its_error(bits, thermometer):
    random = np.random.default_rng(bits)
    task = task_of(bits, thermometer, np.sort(random.uniform(300, 20e3, 50)))
    sets = random.integers(0, 50, (2000, task.n_legs))
    sets[:, : task.n_rising].sort(axis=1)
    windows = Windows.of(task, 4.0)

    bounds, errors = windows.bounds(task, sets), task.errors(sets)

    assert (bounds <= errors * (1 + 1e-9)).all()
    if not thermometer:
        assert bounds == pytest.approx(errors)
