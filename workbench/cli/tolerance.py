"""``backporch tolerance FILE``: what boards one would get, and which resistor matters most."""

import argparse
from collections.abc import Iterator, Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any, TypeVar

from workbench.circuit.bands import Band, Distribution, Tolerances
from workbench.circuit.tolerance.monte_carlo import Spread, Tolerance
from workbench.cli.output import print_json, print_note, print_text
from workbench.cli.values import quantity, whole_number
from workbench.errors import NetworkError
from workbench.files.project_file import read_project
from workbench.pipeline.boards import BoardRun, board_plan, draw_boards
from workbench.project.document import Channel, Project
from workbench.units import format_fixed, format_percent

__all__ = ["add", "tolerance_object", "tolerance_text"]

T = TypeVar("T")

_SHOWN = 5
"""Resistors whose influence the text lists. [1]"""


def add(commands: Any) -> None:
    """Add the command."""
    parser = commands.add_parser("tolerance", help="show the boards one would get")
    parser.add_argument("file", type=Path, metavar="FILE", help="the project")
    for name, what in (
        ("--resistors", "of all resistors, as 1%%; the project's if left out"),
        ("--supply", "of the supply (the project's)"),
        ("--load", "of the load"),
        ("--on-resistance", "of the pins' on-resistance"),
    ):
        parser.add_argument(name, type=quantity("%", zero=True), metavar="PERCENT", help=what)
    parser.add_argument(
        "--normal",
        action="store_true",
        help="bell-shaped, the band at three deviations; the project's if left out",
    )
    parser.add_argument("--boards", type=whole_number, default=100_000, metavar="N", help="how many (100000)")
    parser.add_argument("--seed", type=whole_number, default=1, metavar="N", help="of the draw (1)")
    parser.add_argument("--json", action="store_true", help="as JSON, SI units, nothing rounded")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Print the boards of every channel that has levels, and why another has none."""
    found = _boards(read_project(arguments.file), arguments)
    if not arguments.json:
        print_text(tolerance_text(found))
        return 0
    print_json(tolerance_object(found))
    for channel, reason in found.problems.items():
        print_note(f"{channel.value}: {reason}")
    return 0


def tolerance_object(found: BoardRun) -> dict[str, object]:
    """Return the boards as plain values for JSON: SI units, nothing rounded; none of a channel without."""
    drawn = found.tolerances
    return {
        "boards": found.boards,
        "seed": found.plan.seed,
        "channels": {c.value: _channel_object(drawn[c]) if c in drawn else None for c in Channel},
    }


def tolerance_text(found: BoardRun) -> str:
    """Return the boards for a terminal, equal channels once."""
    return "\n".join(_lines(found))


def _boards(project: Project, arguments: argparse.Namespace) -> BoardRun:
    """Draw the boards of each channel; what no option says is as in the project.

    Raises
    ------
    NetworkError
        If no channel has any.
    """
    project = replace(project, tolerances=_tolerances(project.tolerances, arguments))
    run = draw_boards(board_plan(project, boards=arguments.boards, seed=arguments.seed))
    if not run.tolerances:
        reasons = dict.fromkeys(run.problems.values())
        raise NetworkError(" ".join(reasons))
    return run


def _tolerances(kept: Tolerances, arguments: argparse.Namespace) -> Tolerances:
    return Tolerances(
        *(
            Band(
                band.half_width if given is None else given,
                Distribution.NORMAL if arguments.normal else band.distribution,
            )
            for band, given in (
                (kept.resistors, arguments.resistors),
                (kept.supply, arguments.supply),
                (kept.load, arguments.load),
                (kept.on_resistance, arguments.on_resistance),
            )
        )
    )


def _channel_object(found: Tolerance) -> dict[str, object]:
    return {
        "boards": found.boards,
        "seed": found.seed,
        "full_scale_v": _spread_object(found.full_scale_volts),
        "monotonic_yield": found.monotonic_yield,
        "max_dnl_lsb": _spread_object(found.max_dnl_lsb),
        "max_inl_lsb": _spread_object(found.max_inl_lsb),
        "sensitivity": [
            {"part": each.part, "volts_per_percent": each.volts_per_percent} for each in found.sensitivity
        ],
    }


def _spread_object(spread: Spread) -> dict[str, float]:
    return {
        "mean": spread.mean,
        "std": spread.std,
        "p01": spread.p01,
        "p50": spread.p50,
        "p99": spread.p99,
        "worst_low": spread.worst_low,
        "worst_high": spread.worst_high,
    }


def _lines(found: BoardRun) -> Iterator[str]:
    count = f"{found.boards:,}".replace(",", " ")
    yield f"{count} board{'' if found.boards == 1 else 's'}, seed {found.plan.seed}"
    for names, tolerance in _alike(found.tolerances):
        yield ""
        yield from _channel_lines(names, tolerance)
    for names, reason in _alike(found.problems):
        yield ""
        yield f"{names}: {reason}"


def _alike(found: Mapping[Channel, T]) -> list[tuple[str, T]]:
    """Return what was found with the names of the channels that share it."""
    names: dict[T, list[str]] = {}
    for channel, each in found.items():
        names.setdefault(each, []).append(channel.value)
    return [(", ".join(words).capitalize(), each) for each, words in names.items()]


def _channel_lines(names: str, found: Tolerance) -> Iterator[str]:
    yield f"{names:<22}{'mean':>9}{'1 %':>9}{'median':>9}{'99 %':>9}{'least':>9}{'most':>9}"
    yield f"  {'white, V':<20}{_cells(found.full_scale_volts, 4)}"
    yield f"  {'largest DNL, LSB':<20}{_cells(found.max_dnl_lsb, 3)}"
    yield f"  {'largest INL, LSB':<20}{_cells(found.max_inl_lsb, 3)}"
    yield f"  {'monotonic boards':<20}{format_percent(found.monotonic_yield, 2):>9}"
    yield "  what 1 % more of a resistor does to white:"
    for part in found.sensitivity[:_SHOWN]:
        yield f"    {part.part:<8}{format_fixed(part.volts_per_percent, 'V', prefix='m'):>12}"


def _cells(spread: Spread, digits: int) -> str:
    values = (spread.mean, spread.p01, spread.p50, spread.p99, spread.worst_low, spread.worst_high)
    return "".join(f"{value:>9.{digits}f}" for value in values).replace("-", "−")
