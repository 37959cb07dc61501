"""Display modes: counts, rates, the standards' tables and formulas, EDID and clock plans.

Imports errors, units and progress only. Start with ``mode.py`` (the value), then ``search.py``
(find one by text), ``figures.py`` (what is shown of one), ``standards.py`` (the tables),
``seen_as.py`` (what a monitor makes of one) and the folders ``formulas``, ``edid`` and ``clock``.
"""
