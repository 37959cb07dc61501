"""The network panel: the drawing of a channel, edited in place.

The geometry comes from :mod:`workbench.drawing`; here it is inked, pointed at and typed into.
Start in ``panel.py``; ``view.py`` paints, ``canvas.py`` adds pointer and keys, ``entry.py`` typing and
stepping, ``commands.py`` what can be done, ``shown.py`` the figures beside the parts.
"""
