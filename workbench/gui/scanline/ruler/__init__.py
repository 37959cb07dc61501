"""The line ruler: the counts of a line or a frame to scale, and the knobs that move its edges."""

from workbench.gui.scanline.ruler.line_ruler import LineRuler, RulerText

__all__ = ["LineRuler", "RulerText"]
