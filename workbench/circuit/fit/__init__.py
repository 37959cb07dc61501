"""The best values for ladders, from a series or from the parts a person owns.

Start reading in ``fit.py``. ``task.py`` says how far off the legs of one channel are, ``rising.py`` in
which order those of a segmented ladder should rise; ``search.py`` finds and proves the best sets of
legs, which ``windows.py`` bounds. ``board.py`` lets several channels share a drawer, ``rebuild.py`` puts
a choice into a network.
"""
