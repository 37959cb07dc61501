"""Where words may stand in a plot of steps without lying on a trace."""

from collections.abc import Sequence

import numpy as np
from PySide6.QtCore import QPointF, QRectF, QSizeF

from workbench.gui.levels.figures import FloatArray

__all__ = ["clear_place", "is_clear"]

_PLACES = 24
"""Places tried along either side of the plot. [1]"""


def is_clear(box: QRectF, area: QRectF, traces: Sequence[FloatArray], gap: float) -> bool:
    """Return whether no trace comes nearer to a box than a gap.

    Parameters
    ----------
    box, area : QRectF
        The box, and where the columns lie side by side.
    traces : sequence of float array, shape (n_codes,)
        Heights of the steps. [px]
    gap : float
        [px]

    Notes
    -----
    A trace goes on without a break: above a box it is all above or it comes through.
    """
    for heights in traces:
        column = area.width() / len(heights)
        first = int(np.clip((box.left() - gap - area.left()) // column, 0, len(heights) - 1))
        last = int(np.clip((box.right() + gap - area.left()) // column, 0, len(heights) - 1))
        passed = heights[first : last + 1]
        if not ((passed < box.top() - gap).all() or (passed > box.bottom() + gap).all()):
            return False
    return True


def clear_place(
    size: QSizeF,
    area: QRectF,
    traces: Sequence[FloatArray],
    taken: Sequence[QRectF],
    near: QPointF,
    gap: float,
) -> QRectF | None:
    """Return the box of a size nearest to a point that is clear of traces and of boxes; none if none is."""
    room = area.adjusted(gap, gap, -gap - size.width(), -gap - size.height())
    if room.width() < 0 or room.height() < 0:
        return None
    boxes = (
        QRectF(QPointF(x, y), size)
        for x in np.linspace(room.left(), room.right(), _PLACES).tolist()
        for y in np.linspace(room.top(), room.bottom(), _PLACES).tolist()
    )
    clear = (
        box
        for box in boxes
        if not any(box.intersects(other) for other in taken) and is_clear(box, area, traces, gap)
    )

    def distance(box: QRectF) -> float:
        centre = box.center() - near
        return float(np.hypot(centre.x(), centre.y()))

    return min(clear, key=distance, default=None)
