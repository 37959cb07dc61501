"""Bringing a board up: what goes wrong, how it shows, how it is told apart.

May import everything but the window and the command line. ``faults`` holds deliberate faults
that can be switched on: the same records serve the picture, the waveform and the search for a
fault on a real board.
"""
