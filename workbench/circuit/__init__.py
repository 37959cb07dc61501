"""Networks of one colour channel: parts and nodes, levels, linearity, response, values.

May import ``errors``, ``units``, ``progress`` and numpy only. Start reading in ``network.py`` (what a
network is), then ``solution.py`` (its levels) and ``response.py`` (its edges at the far end of the cable).
"""
