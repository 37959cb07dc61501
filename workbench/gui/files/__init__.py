"""Opening, saving, templates, exports and recovery, as the window does them.

May import the file rooms of the engine and what every panel gets. Start in ``flow.py``.
"""
