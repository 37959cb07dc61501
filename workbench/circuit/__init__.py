"""Networks of one colour channel: parts and nodes, levels, response, tolerance, values.

May import ``errors``, ``units``, ``progress`` and numpy only. Start reading in ``network.py`` (what a
network is), then ``solution.py`` (its levels) and ``response/`` (its edges at the far end of the
cable); ``tolerance/`` draws boards of it.
"""
