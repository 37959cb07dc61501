"""The foot of the window: findings one by one, and white with the monitor and without.

Start in ``strip.py`` (the finding shown and what mends it), then ``white.py``.
"""

from workbench.gui.findings.strip import FindingsStrip
from workbench.gui.findings.white import WhiteStatus

__all__ = ["FindingsStrip", "WhiteStatus"]
