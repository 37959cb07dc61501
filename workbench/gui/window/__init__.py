"""The frame around the panels: bar, pages, notices, projector view.

May import everything below it; panels are handed in. Start in ``main_window.py``.
"""
