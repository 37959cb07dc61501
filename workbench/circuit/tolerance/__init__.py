"""What boards one would get, and which resistor matters most.

Start reading in ``monte_carlo.py``. ``elimination.py`` solves thousands of boards at once,
``boards.py`` makes figures of them, ``sensitivity.py`` asks the adjoint network.
"""
