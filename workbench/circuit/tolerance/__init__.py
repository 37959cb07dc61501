"""What boards one would get, and which resistor matters most.

Start reading in ``monte_carlo.py``. ``elimination.py`` solves thousands of boards at once,
``boards.py`` makes figures of them, ``sensitivity.py`` asks the adjoint network.
"""

from workbench.circuit.bands import Band, Distribution, Tolerances
from workbench.circuit.tolerance.monte_carlo import MAX_BOARDS, Histogram, Spread, Tolerance, find_tolerance
from workbench.circuit.tolerance.sensitivity import Sensitivity, sensitivities

__all__ = [
    "MAX_BOARDS",
    "Band",
    "Distribution",
    "Histogram",
    "Sensitivity",
    "Spread",
    "Tolerance",
    "Tolerances",
    "find_tolerance",
    "sensitivities",
]
