"""Traces: samples drawn as spans or as a stroked line, whichever is quicker and finer.

:mod:`spans` and :mod:`strokes` are plain arrays; :mod:`item` paints them inside a plot.
"""

from workbench.gui.scanline.traces.item import TraceItem, TraceStyle

__all__ = ["TraceItem", "TraceStyle"]
