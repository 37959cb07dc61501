"""Backporch: analog RGB video from logic pins and resistors, seen as volts, time and picture.

Start reading in ``project/document.py`` (what the user decided), then ``pipeline/run.py``
(how everything else follows from it). Qt lives in ``gui/`` and nowhere else.
"""

__version__ = "0.1.0"
