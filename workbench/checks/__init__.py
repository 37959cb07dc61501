"""Findings: one rule a function, each with its limit, source, reason and remedy.

May import ``circuit``, ``timing``, ``picture`` and ``project`` (a remedy is an edit). Start reading in
``finding.py``, then in ``run.py``, which lists the rules in the order they are asked; the published
limits stand in ``limits.py``.
"""

from workbench.checks.finding import Finding, Remedy, Severity
from workbench.checks.measures import Measures
from workbench.checks.run import run_checks

__all__ = ["Finding", "Measures", "Remedy", "Severity", "run_checks"]
