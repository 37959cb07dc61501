"""The Palette page: every colour the board can make, the greys among them, how far a picture is off.

Start in ``page.py``; ``grid.py`` draws the colours, ``greys.py`` the greys.
"""

from workbench.gui.palette.page import PalettePage

__all__ = ["PalettePage"]
