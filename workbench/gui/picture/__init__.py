"""The Picture page: what is sent, what a monitor makes of it, and why a pixel looks so.

Start in ``page.py``; ``screen.py`` follows the edits, ``view.py`` draws and points, ``decode.py``
and ``loading.py`` bring image files in, ``shelf.py`` holds the pixels of those kept by reference.
"""
