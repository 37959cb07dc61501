"""Collects measured figures and, when asked, writes them to ``docs/benchmarks.md``.

``pytest tests/benchmarks -m benchmark --write-figures`` measures and rewrites the table. A figure is a
ratio against a baseline timed in the same run; a bound that is missed is said in the table, not
raised, so that a busy machine cannot fail a build.
"""

import os
import platform
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from statistics import median
from time import perf_counter

import pytest

TABLE = Path(__file__).parents[2] / "docs" / "benchmarks.md"


@dataclass(frozen=True, slots=True)
class Figure:
    """One measured number and what was asked of it."""

    topic: str
    what: str
    value: float
    unit: str
    bound: str = ""
    met: bool | None = None

    @property
    def row(self) -> str:
        verdict = {True: "met", False: "**missed**", None: ""}[self.met]
        return f"| {self.what} | {self.value:.3g} {self.unit} | {self.bound} | {verdict} |"


@dataclass(slots=True)
class Figures:
    """The figures of one run."""

    rows: list[Figure] = field(default_factory=list)

    def add(
        self,
        topic: str,
        what: str,
        value: float,
        unit: str = "×",
        *,
        at_least: float | None = None,
        at_most: float | None = None,
    ) -> None:
        """Keep a figure; a bound is reported, never raised."""
        bound, met = "", None
        if at_least is not None:
            bound, met = f"at least {at_least:g} {unit}", value >= at_least
        if at_most is not None:
            bound, met = f"at most {at_most:g} {unit}", value <= at_most
        self.rows.append(Figure(topic, what, value, unit, bound, met))

    @staticmethod
    def seconds(work: Callable[[], object], *, repeats: int = 30, warm: int = 3) -> list[float]:
        """Return the wall time of each of ``repeats`` calls. [s]"""
        for _ in range(warm):
            work()
        spent = []
        for _ in range(repeats):
            start = perf_counter()
            work()
            spent.append(perf_counter() - start)
        return spent

    @classmethod
    def median_s(cls, work: Callable[[], object], *, repeats: int = 30, warm: int = 3) -> float:
        """Return the median wall time of a call. [s]"""
        return median(cls.seconds(work, repeats=repeats, warm=warm))

    def page(self) -> str:
        """Return the docs page: one table a topic."""
        machine = f"Python {platform.python_version()} on {platform.machine()}, {os.cpu_count()} cores"
        lines = [
            "# Measured figures",
            "",
            "Medians and ratios of one run, each against a baseline timed in the same run",
            f"({machine}). Made by `python -m pytest tests/benchmarks -m benchmark --write-figures`.",
            "A ratio says more than a time: it changes little from machine to machine.",
        ]
        for topic in dict.fromkeys(figure.topic for figure in self.rows):
            lines += ["", f"## {topic}", "", "| what | measured | asked | |", "|---|---|---|---|"]
            lines += [figure.row for figure in self.rows if figure.topic == topic]
        return "\n".join(lines) + "\n"


_RUN = Figures()


@pytest.fixture(scope="session")
def figures() -> Figures:
    """Return the collector of this run."""
    return _RUN


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--write-figures", action="store_true", help="rewrite docs/benchmarks.md")


@pytest.hookimpl(trylast=True)
def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter, config: pytest.Config) -> None:
    for figure in _RUN.rows:
        terminalreporter.write_line(f"{figure.topic}: {figure.row}")
    if _RUN.rows and config.getoption("--write-figures", default=False):
        TABLE.write_text(_RUN.page(), encoding="utf-8")
