"""The scanline panel: the voltages of one line at the monitor, live, over one time axis.

``panel.py`` puts it together; ``showing.py`` brings a result into it. ``content/`` holds plain
values, ``traces/`` draws samples, ``lanes/`` is the plot, ``cards/`` the figures on it, ``ruler/``
the counts under it.
"""

from workbench.gui.scanline.panel import ScanlinePanel

__all__ = ["ScanlinePanel"]
