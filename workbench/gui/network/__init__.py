"""The network panel: the drawing of a channel, edited in place.

The geometry comes from :mod:`workbench.drawing`; here it is inked, pointed at and typed into.
Start in ``panel.py``; ``canvas.py`` is the drawing, ``targets.py`` what can be pointed at,
``field.py`` the field in a box, ``shown.py`` the figures beside the parts.
"""
