"""The Tolerance page: what varies, the boards one would get, the resistor that matters, single boards.

Start in ``page.py``. ``drawing_boards.py`` draws them in a thread of its own and is shared by all
panels that show a band.
"""
