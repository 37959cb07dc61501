"""The Parts page: the resistors a person owns, and the best values that can be made of them.

Start in ``page.py``. ``own_drawer.py`` keeps the drawer for every project; ``owned_words`` of
``project/owned.py`` says what stands on a part's badge.
"""
