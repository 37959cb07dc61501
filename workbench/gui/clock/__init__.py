"""The Clock page: what the person's chip can do, the plans that follow, and what is left for its processor.

Start in ``page.py``; ``kept.py`` holds the chip between projects, in the settings.
"""
