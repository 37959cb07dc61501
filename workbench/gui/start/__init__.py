"""How the program starts and how it ends badly: display, fonts, crash log, one desk put together.

May import all of the window. Start in ``program.py``; ``desk.py`` shows what belongs to a window.
"""
