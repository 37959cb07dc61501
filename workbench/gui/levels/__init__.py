"""The Levels page: the staircase of a channel, its errors, how it looks, and a table of all codes.

Start in ``page.py``; ``figures.py`` holds what is shown, ``code_view.py`` what the pictures share.
"""

from workbench.gui.levels.page import LevelsPage

__all__ = ["LevelsPage"]
