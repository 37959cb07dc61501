"""The window: the only package that imports Qt.

May import everything below it; nothing imports it but a late import in ``cli``. Start reading in
``app.py`` (start-up), then ``bench.py`` (what every panel gets) and ``main_window.py`` (how the
panels are laid out).
"""
