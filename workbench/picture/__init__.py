"""What the pins are told to show: test cards, and the code of every pixel.

Pure numpy; imports nothing of the house but errors and units. Start with :mod:`scene` for
what a picture is, then :mod:`cards` for how a test card becomes codes.
"""
