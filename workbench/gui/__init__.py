"""The window: the only package that imports Qt.

May import everything below it; nothing imports it but a late import in ``cli``. Start reading in
``app.py`` (the door), ``start/desk.py`` (what belongs to one window) and ``bench.py`` (what every
panel gets).
"""
