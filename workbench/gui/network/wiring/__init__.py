"""Joining parts to nodes on the drawing: with the pointer, and with the keys alone.

Start in ``connecting.py`` (the gesture); ``lead.py`` is what hangs between its two ends,
``commands.py`` says what can be done to parts, legs and nodes, ``clipboard.py`` carries them.
"""
