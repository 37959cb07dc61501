"""Findings: one rule a function, each with its limit, source, reason and remedy.

May import ``circuit``, ``timing``, ``picture`` and ``project`` (a remedy is an edit). Start reading in
:mod:`~workbench.checks.finding`, then in ``run.py``, which lists the rules in the order they are asked.
"""

from workbench.checks.finding import Finding, Remedy, Severity

__all__ = ["Finding", "Remedy", "Severity"]
