"""The cards that float over the bench: finder, display modes, new ladder, preferences, keys, help.

May import the engine and what every panel gets. Start in ``opener.py``.
"""
