"""The project: a frozen document, edits to it, and the session that holds it.

May import the engine below (circuit, timing, picture, waveform, drawing). Start reading at
``document``; ``edits`` has one function for each thing a person can do to it, ``session``
holds the project of one window with its history.
"""
