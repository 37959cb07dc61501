"""The best values for ladders, from a series or from the parts a person owns.

Start reading in ``fit.py``. ``search.py`` finds and proves the best sets of legs of one channel,
``board.py`` lets several channels share a drawer, ``rebuild.py`` puts a choice into a network.
"""
