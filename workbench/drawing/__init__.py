"""Network to tidy drawing: rows, buses, symbols and labels as plain geometry.

May import the levels below (circuit) and units; knows no colour and no font. The window and
the SVG export paint the same drawing. Start in ``draw.py``; ``plan.py`` decides what goes
where, ``stack.py`` puts it into rows, ``layout.py`` gives it places, ``elements.py`` says what comes out.
"""

from workbench.drawing.board import H_SERIES, LOAD, V_SERIES, Board, SyncRow
from workbench.drawing.draw import draw
from workbench.drawing.elements import Drawing
from workbench.drawing.sheet import Sheet

__all__ = ["H_SERIES", "LOAD", "V_SERIES", "Board", "Drawing", "Sheet", "SyncRow", "draw"]
