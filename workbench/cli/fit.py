"""``backporch fit FILE``: the best values from a series or from the resistors a person owns."""

import argparse
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from workbench.circuit.fit.drawer import Drawer, Leg, listed_words
from workbench.circuit.fit.fit import Aim, Candidate, Fit, best_at, find_fit
from workbench.circuit.series import Series
from workbench.cli.output import print_json, print_note, print_text
from workbench.cli.values import new_file
from workbench.files.drawer import read_drawer
from workbench.files.project_file import read_project, write_project
from workbench.project.document import Channel
from workbench.project.edits.fits import take_fit
from workbench.units import format_fixed, format_percent, format_quantity, format_significant

__all__ = ["add", "fit_object", "fit_text"]

_AIMS = {
    "level": Aim.LEVEL,
    "steps": Aim.DNL,
    "match": Aim.MATCHING,
    "source": Aim.SOURCE,
    "current": Aim.CURRENT,
    "parts": Aim.PARTS,
}


def add(commands: Any) -> None:
    """Add the command."""
    parser = commands.add_parser("fit", help="find the best values from a series or a drawer")
    parser.add_argument("file", type=Path, metavar="FILE", help="the project")
    source = parser.add_mutually_exclusive_group(required=True)
    source.add_argument("--series", choices=[s.name for s in Series], help="as many as wanted of a series")
    source.add_argument(
        "--drawer", type=Path, metavar="FILE.csv", help="what you own: value, count, tolerance, measured"
    )
    parser.add_argument(
        "--parts-per-leg", type=int, choices=(1, 2, 3), default=1, help="at most, in series or parallel (1)"
    )
    parser.add_argument("--aim", choices=list(_AIMS), default="level", help="what the first is to be best at")
    parser.add_argument("--json", action="store_true", help="as JSON, SI units, nothing rounded")
    parser.add_argument(
        "-o", "--output", type=new_file, metavar="FILE", help="write the project with the first"
    )
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Print the candidates, best first, and write the project with the first where asked."""
    project = read_project(arguments.file)
    found = find_fit(
        [project.channels[channel] for channel in Channel],
        project.driver,
        project.load,
        _drawer(arguments),
        most_parts=arguments.parts_per_leg,
        aim=_AIMS[arguments.aim],
        names=[channel.value for channel in Channel],
    )
    if arguments.json:
        print_json(fit_object(found))
    else:
        print_text(fit_text(found))
    if arguments.output is not None:
        write_project(take_fit(project, found.candidates[0].networks), arguments.output)
    return 0


def fit_object(found: Fit) -> dict[str, object]:
    """Return a fit as plain values for JSON: SI units, nothing rounded."""
    return {
        "proved_best": found.proved_best,
        "gap_v": found.gap_volts,
        "candidates": [_candidate_object(candidate, aims) for candidate, aims in _listed(found)],
    }


def fit_text(found: Fit) -> str:
    """Return a fit for a terminal."""
    return "\n".join(_lines(found))


def _drawer(arguments: argparse.Namespace) -> Drawer:
    if arguments.series is not None:
        return Drawer.of_series(Series[arguments.series])
    drawer, refused = read_drawer(arguments.drawer)
    for sentence in refused:
        print_note(f"{arguments.drawer}: {sentence}")
    return drawer


def _listed(found: Fit) -> list[tuple[Candidate, tuple[Aim, ...]]]:
    """Return the candidates that are best at something, with what that is; others are beaten at all."""
    best = best_at(found.candidates)
    return [(candidate, best[id(candidate)]) for candidate in found.candidates if best[id(candidate)]]


def _candidate_object(candidate: Candidate, aims: tuple[Aim, ...]) -> dict[str, object]:
    legs = dict(zip(Channel, candidate.legs, strict=True))
    return {
        "best_at": [aim.value for aim in aims],
        "ohms": {channel.value: [leg.ohms for leg in legs[channel]] for channel in Channel},
        "legs": {channel.value: [leg.words for leg in legs[channel]] for channel in Channel},
        "worst_error_v": candidate.worst_error_volts,
        "full_scale_v": candidate.full_scale_volts,
        "mismatch": candidate.mismatch,
        "max_inl_lsb": candidate.max_inl_lsb,
        "max_dnl_lsb": candidate.max_dnl_lsb,
        "monotonic": candidate.monotonic,
        "source_ohms": candidate.source_ohms,
        "worst_total_current_a": candidate.worst_total_current_amps,
        "parts": candidate.n_parts,
    }


def _lines(found: Fit) -> Iterator[str]:
    if found.proved_best:
        yield "Proved: no other choice has a smaller worst level error than the one named level error."
    else:
        gap = format_fixed(found.gap_volts, "V", prefix="m", decimals=2)
        yield f"Not proved: another choice may have a worst level error smaller by up to {gap}."
    for candidate, aims in _listed(found):
        yield ""
        yield f"{', '.join(aim.value for aim in aims)}: {candidate.n_parts} resistors"
        for names, legs in _alike(candidate):
            yield f"  {names:<22}{'  '.join(listed_words(legs))}"
        yield f"  {'white':<22}{format_fixed(candidate.full_scale_volts, 'V')}"
        yield f"  {'whites differ by':<22}{format_percent(candidate.mismatch, 2)}"
        yield f"  {'worst level error':<22}{_millivolts(candidate.worst_error_volts)}"
        errors = f"{candidate.max_dnl_lsb:.2f} LSB  {candidate.max_inl_lsb:.2f} LSB"
        errors += "" if candidate.monotonic else "  a step goes down: not monotonic"
        yield f"  {'largest DNL, INL':<22}{errors}"
        yield f"  {'source resistance':<22}{format_quantity(candidate.source_ohms, 'Ω')}"
        yield f"  {'all pins at worst':<22}{format_significant(candidate.worst_total_current_amps, 'A', 3)}"


def _alike(candidate: Candidate) -> list[tuple[str, tuple[Leg, ...]]]:
    """Return the legs with the names of the channels that share them."""
    names: dict[tuple[Leg, ...], list[str]] = {}
    for channel, legs in zip(Channel, candidate.legs, strict=True):
        names.setdefault(legs, []).append(channel.value)
    return [(", ".join(words), legs) for legs, words in names.items()]


def _millivolts(volts: float) -> str:
    return format_fixed(volts, "V", prefix="m", decimals=2)
