"""The plot: a colour lane over a sync lane, the strip above them, names and cursors on them.

:mod:`places` says where everything lies; :mod:`view` holds the scene.
"""
