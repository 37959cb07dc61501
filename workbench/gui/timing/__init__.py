"""The Timing page: the counts of line and frame, the frame to scale, and what the monitor takes.

Start in ``page.py``; ``entry.py`` holds the fields that take a value or say why not.
"""

from workbench.gui.timing.page import TimingPage

__all__ = ["TimingPage"]
