"""Why a pixel looks as it does: the chain from its colour to its light, drawn and in words.

``chain.py`` is the drawing that the Picture page shows too; ``page.py`` is the Working page.
"""
