"""Figures that float over the plot or stand in one line: cursors, pointer, edge.

:mod:`readings` decides which of them there is room for, and fills them.
"""
