"""A drawing as large as its room allows: at its usual size, or smaller down to what can still be read."""

from collections.abc import Callable
from math import floor

from workbench.circuit.network import Network
from workbench.drawing.board import Board
from workbench.drawing.draw import draw
from workbench.drawing.elements import Drawing
from workbench.drawing.sheet import Sheet

__all__ = ["draw_fitted", "fits"]

STEP = 0.02
"""Sizes are tried in steps, so that most edits leave the size as it is. [1]"""


def draw_fitted(
    network: Network, board: Board, sheet_at: Callable[[float], Sheet], least: float
) -> tuple[Drawing, float]:
    """Return the largest drawing that fits its room, and its size.

    Parameters
    ----------
    network, board
        What is drawn.
    sheet_at : callable
        Returns the room for a size; 1 is the usual one.
    least : float
        Size under which it is not drawn even if it does not fit, ``0 < least <= 1``. [1]
    """
    zoom, sheet = 1.0, sheet_at(1.0)
    drawing = draw(network, board, sheet)
    while not fits(drawing, sheet) and zoom > least:
        # What does not fit is as narrow and as low as it gets, and both go with the size.
        share = min(sheet.width / drawing.width, sheet.height / drawing.height)
        zoom = max(least, min(zoom - STEP, floor(zoom * share / STEP) * STEP))
        sheet = sheet_at(zoom)
        drawing = draw(network, board, sheet)
    return drawing, zoom


def fits(drawing: Drawing, sheet: Sheet) -> bool:
    """Return whether a drawing needs no more than its room."""
    return drawing.width <= sheet.width and drawing.height <= sheet.height
