"""The best values for ladders, from a series or from the parts a person owns.

Start reading in ``fit.py``. ``search.py`` finds and proves the best sets of legs of one channel,
``board.py`` lets several channels share a drawer, ``rebuild.py`` puts a choice into a network.
"""

from workbench.circuit.fit.drawer import Arrangement, Drawer, Leg, OwnedPart
from workbench.circuit.fit.fit import Aim, Candidate, Fit, best_first, find_fit

__all__ = ["Aim", "Arrangement", "Candidate", "Drawer", "Fit", "Leg", "OwnedPart", "best_first", "find_fit"]
