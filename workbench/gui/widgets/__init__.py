"""Small controls in the house style, painted from the theme's roles.

Each takes the bench first, follows its theme and size by itself, and has an accessible name.
Start in ``control.py`` (what they share) and ``text.py`` (how text is placed).
"""

from workbench.gui.widgets.button import Button, ButtonKind
from workbench.gui.widgets.check_box import CheckBox
from workbench.gui.widgets.chip import Chip
from workbench.gui.widgets.choice import Choice
from workbench.gui.widgets.control import Control
from workbench.gui.widgets.dashes import dash_pattern, trace_pen
from workbench.gui.widgets.field import Field
from workbench.gui.widgets.panel_head import PanelHead
from workbench.gui.widgets.signs import Sign, draw_sign
from workbench.gui.widgets.tab import Tab
from workbench.gui.widgets.text import draw_text
from workbench.gui.widgets.words import Words

__all__ = [
    "Button",
    "ButtonKind",
    "CheckBox",
    "Chip",
    "Choice",
    "Control",
    "Field",
    "PanelHead",
    "Sign",
    "Tab",
    "Words",
    "dash_pattern",
    "draw_sign",
    "draw_text",
    "trace_pen",
]
