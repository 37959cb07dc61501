"""Where everything in the plot lies, for a size of the window: plain arithmetic."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from PySide6.QtCore import QRectF

__all__ = ["Places", "arrange", "spread"]

FOLD_WIDTH = 800
"""Narrower plots fold: the readout becomes a line, the close-up goes. [design px]"""
LOW_HEIGHT = 400
"""Lower plots have a small sync lane and no close-up. [design px]"""
LOWEST_HEIGHT = 280
LOWEST_LANE = 60


@dataclass(frozen=True, slots=True)
class Places:
    """Rectangles of the plot, on whole pixels."""

    names: QRectF
    """Names of the areas; on a folded plot that is not low, the readout is one line above them.
    On a projector the blanking and the picture are named there, with leaders down to the strip."""
    strip: QRectF
    colour: QRectF
    sync: QRectF
    axis: QRectF
    margin: QRectF
    """Names at the ends of the traces."""
    folded: bool
    """Whether the plot is too narrow for cards."""
    low: bool
    """Whether the plot is too low for scales on the sync lane."""


def arrange(width: int, height: int, px: Callable[[float], int], *, leaders: bool = False) -> Places:
    """Return where everything lies in a plot of a size.

    Parameters
    ----------
    width, height : int
        Size of the plot. [px]
    px : callable
        Turns a length of the design into pixels at the size of text in force.
    leaders : bool
        Whether names stand apart from what they name and need room for leaders.
    """
    folded, low = width < px(FOLD_WIDTH), height < px(LOW_HEIGHT)
    left, right = px(56 if folded else 66), width - px((74 if leaders else 64) if folded else 92)
    wide = max(right - left, 40)
    names_top = px(8 if low else 12) + px(20 if folded and not low else 0)
    strip_top = names_top + px(20) + px(12 if leaders else 0)
    lane_top = strip_top + px(10 + 8)
    axis_height, gap = px(26), px(17)
    sync_height = px(_sync_height(folded=folded, low=low, lowest=height < px(LOWEST_HEIGHT)))
    lane_height = max(height - lane_top - gap - sync_height - axis_height, px(LOWEST_LANE))
    sync_top = lane_top + lane_height + gap
    return Places(
        names=QRectF(left, names_top, wide, px(20)),
        strip=QRectF(left, strip_top, wide, px(10)),
        colour=QRectF(left, lane_top, wide, lane_height),
        sync=QRectF(left, sync_top, wide, sync_height),
        axis=QRectF(left, sync_top + sync_height, wide, axis_height),
        margin=QRectF(right, strip_top, max(width - right, 1), sync_top + sync_height - strip_top),
        folded=folded,
        low=low,
    )


def _sync_height(*, folded: bool, low: bool, lowest: bool) -> float:
    """Return the height of the sync lane. [design px]"""
    if low:
        return 42 if lowest else 58
    return 64 if folded else 104


def spread(wanted: Sequence[float], sizes: Sequence[float], low: float, high: float) -> list[float]:
    """Return places near the wanted ones at which things of these sizes do not overlap.

    Parameters
    ----------
    wanted : sequence of float
        Where the middle of each would be best.
    sizes : sequence of float
        Extent of each, its distance to the next included.
    low, high : float
        Bounds; where all do not fit, the last ones pass ``high``.

    Returns
    -------
    list of float
        Middles, in the order given. Things keep the order of their wanted places.
    """
    order = sorted(range(len(wanted)), key=lambda i: (wanted[i], i))
    groups: list[tuple[list[int], float]] = []
    for index in order:
        members, top = [index], wanted[index] - sizes[index] / 2
        groups.append((members, max(low, top)))
        while len(groups) > 1 and _bottom(groups[-2], sizes) > groups[-1][1]:
            later, _ = groups.pop()
            earlier, _ = groups.pop()
            joined = earlier + later
            groups.append((joined, max(low, _best_top(joined, wanted, sizes))))
    places = [0.0] * len(wanted)
    limit = high
    for members, top in reversed(groups):
        total = sum(sizes[i] for i in members)
        top = max(low, min(top, limit - total))
        limit = top
        for index in members:
            places[index] = top + sizes[index] / 2
            top += sizes[index]
    return places


def _bottom(group: tuple[list[int], float], sizes: Sequence[float]) -> float:
    members, top = group
    return top + sum(sizes[i] for i in members)


def _best_top(members: list[int], wanted: Sequence[float], sizes: Sequence[float]) -> float:
    """Return the top at which a stack lies nearest to what its members want."""
    offset, total = 0.0, 0.0
    for index in members:
        total += wanted[index] - sizes[index] / 2 - offset
        offset += sizes[index]
    return total / len(members)
