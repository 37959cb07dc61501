"""Deliberate faults in the window: the switch, the list, and the banner that says they are on.

Start in ``switch.py``; the faults themselves are in :mod:`workbench.bringup.faults`.
"""
