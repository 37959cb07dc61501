"""Words keep off the traces of a plot."""

import numpy as np
import pytest
from PySide6.QtCore import QPointF, QRectF, QSizeF

from workbench.gui.levels.room import clear_place, is_clear

AREA = QRectF(0, 0, 100, 100)
RISING = np.linspace(95.0, 5.0, 10)
"""From the lower left to the upper right."""


@pytest.mark.parametrize(
    ("box", "clear"),
    [
        (QRectF(5, 5, 30, 20), True),
        (QRectF(60, 75, 30, 20), True),
        (QRectF(40, 45, 20, 10), False),
        (QRectF(5, 60, 90, 5), False),
    ],
    ids=["above", "below", "on it", "across"],
)
def test_a_box_is_clear_above_or_below_a_trace(box, clear):
    assert is_clear(box, AREA, (RISING,), 2.0) is clear


def test_the_clear_place_nearest_to_a_point_is_found():
    size, taken = QSizeF(20, 10), QRectF(60, 60, 40, 40)

    free = clear_place(size, AREA, (RISING,), (), QPointF(80, 80), 2.0)
    beside = clear_place(size, AREA, (RISING,), (taken,), QPointF(80, 80), 2.0)

    assert free is not None
    assert free.contains(QPointF(80, 80))
    assert beside is not None
    assert not beside.intersects(taken)
    assert is_clear(beside, AREA, (RISING,), 2.0)


def test_there_may_be_no_place():
    full = np.full(10, 50.0)

    assert clear_place(QSizeF(60, 60), AREA, (full,), (), QPointF(50, 50), 2.0) is None
    assert clear_place(QSizeF(120, 10), AREA, (full,), (), QPointF(50, 50), 2.0) is None
