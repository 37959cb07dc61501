"""``backporch new ... -o FILE``: a project from a few options."""

import argparse
from collections.abc import Sequence
from dataclasses import replace
from itertools import islice
from pathlib import Path
from typing import Any

from workbench.circuit.ladders import Topology, r2r, weighted
from workbench.circuit.network import Cable, Network, Zeros
from workbench.circuit.series import Series
from workbench.circuit.sizing import sized_ladder
from workbench.cli.values import bit_counts, on_resistance, optional_ohms, quantity, readable, value_lists
from workbench.errors import NetworkError
from workbench.files.project_file import write_project
from workbench.project.document import Channel, Channels, Project, Wiring
from workbench.project.edits import drive
from workbench.project.edits.networks import put_networks
from workbench.project.edits.timing import set_mode
from workbench.project.limits import FARADS, OHMS
from workbench.timing.search import find_mode

__all__ = ["add", "new_project"]

_FIRST_PIN = 2
"""Number of the first pin in a new project's wiring; 0 and 1 often talk to a computer. [1]"""
_MODE = "640x480@60"
_LADDERS = (Topology.WEIGHTED, Topology.R2R)


def add(commands: Any) -> None:
    """Add the command."""
    parser = commands.add_parser("new", help="make a project from options")
    parser.add_argument("-o", "--output", type=Path, required=True, metavar="FILE", help="where to write it")
    parser.add_argument("--name", help="what to call it; the file's name if left out")
    parser.add_argument(
        "--mode", type=readable(find_mode, "mode"), default=_MODE, help=f"display mode ({_MODE})"
    )
    _add_ladder(parser.add_argument_group("ladder"))
    _add_surroundings(parser.add_argument_group("pins, cable and monitor"))
    parser.set_defaults(run=run)


def _add_ladder(group: Any) -> None:
    group.add_argument("--ladder", choices=[t.value for t in _LADDERS], default="weighted")
    group.add_argument("--bits", type=bit_counts, default=(5, 5, 5), help="red,green,blue (5,5,5)")
    values = group.add_mutually_exclusive_group()
    values.add_argument(
        "--values",
        type=value_lists,
        metavar="OHMS",
        help="weighted: one for each bit, most significant first; a shorter channel takes the first of them. "
        "r2r: R, or R,2R. Three lists with a slash between are red/green/blue",
    )
    values.add_argument("--series", choices=[s.name for s in Series], help="fit values from a series (E24)")
    group.add_argument("--shunt", type=quantity("Ω"), metavar="OHMS", help="from the node to ground")
    group.add_argument("--node-capacitance", type=quantity("F", zero=True), default=0.0, metavar="F")


def _add_surroundings(group: Any) -> None:
    group.add_argument("--supply", type=quantity("V"), default=3.3, metavar="V", help="of the pins (3.3)")
    group.add_argument(
        "--on-resistance",
        type=on_resistance,
        default=(0.0, 0.0),
        metavar="OHMS",
        help="40, or high/low as in 40/55",
    )
    group.add_argument("--idle", choices=[z.value for z in Zeros], default="driven", help="what a 0 does")
    group.add_argument("--rise", type=quantity("s", zero=True), default=2e-9, metavar="S", help="edge (2n)")
    group.add_argument("--cable", type=quantity("m"), metavar="M", help="length: 75 Ω, velocity 0.66")
    group.add_argument("--load", type=optional_ohms, default=75.0, metavar="OHMS", help="or none (75)")
    group.add_argument("--load-capacitance", type=quantity("F", zero=True), default=0.0, metavar="F")


def run(arguments: argparse.Namespace) -> int:
    """Write the project."""
    write_project(new_project(arguments), arguments.output)
    return 0


def new_project(arguments: argparse.Namespace) -> Project:
    """Return the project that the options describe.

    Raises
    ------
    WorkbenchError
        If a value is out of its range, or the values do not fit the bits.
    """
    one_bit = weighted(1, [1e3])
    project = Project(
        name=arguments.name or arguments.output.stem,
        mode=find_mode(_MODE),
        channels=Channels(one_bit, one_bit, one_bit),
        wiring=_wiring(arguments.bits),
        series=Series[arguments.series or "E24"],
    )
    project = set_mode(project, arguments.mode)
    project = drive.set_supply(project, arguments.supply)
    project = drive.set_on_resistance(project, *arguments.on_resistance)
    project = drive.set_zeros(project, Zeros(arguments.idle))
    project = drive.set_rise(project, arguments.rise)
    project = drive.set_load(project, arguments.load)
    project = drive.set_input_capacitance(project, arguments.load_capacitance)
    if arguments.cable is not None:
        project = drive.set_cable(project, Cable(arguments.cable))
    networks = dict(zip(Channel, _networks(arguments, project), strict=True))
    linked = len(set(networks.values())) == 1
    return replace(put_networks(project, networks), linked=linked)


def _networks(arguments: argparse.Namespace, project: Project) -> tuple[Network, ...]:
    """Return the ladders of red, green and blue."""
    shunt = None if arguments.shunt is None else OHMS.check(arguments.shunt, "the shunt")
    farads = arguments.node_capacitance and FARADS.check(arguments.node_capacitance, "the capacitance")
    shape = Topology(arguments.ladder)
    if arguments.values is None:
        return tuple(
            sized_ladder(
                shape,
                bits,
                project.driver,
                project.load,
                series=project.series,
                shunt_ohms=shunt,
                node_farads=farads,
            )
            for bits in arguments.bits
        )
    lists = arguments.values * (len(Channel) if len(arguments.values) == 1 else 1)
    for ohms in (ohms for values in lists for ohms in values):
        OHMS.check(ohms, "a value")
    make = _weighted_of if shape is Topology.WEIGHTED else _r2r_of
    most = max(arguments.bits)
    return tuple(
        make(bits, values, most if len(arguments.values) == 1 else bits, shunt_ohms=shunt, node_farads=farads)
        for bits, values in zip(arguments.bits, lists, strict=True)
    )


def _weighted_of(bits: int, ohms: Sequence[float], count: int, **around: Any) -> Network:
    """Return a weighted ladder of the first ``bits`` values of a list that should hold ``count``."""
    if len(ohms) != count:
        raise NetworkError(f"--values has {len(ohms)} values for {count} bits: give one for each bit")
    return weighted(bits, ohms[:bits], **around)


def _r2r_of(bits: int, ohms: Sequence[float], _count: int, **around: Any) -> Network:
    if len(ohms) > 2:
        raise NetworkError(f"--values has {len(ohms)} values: an R-2R ladder takes R, or R,2R")
    return r2r(bits, *ohms, **around)


def _wiring(bits: tuple[int, int, int]) -> Wiring:
    names = (f"P{number}" for number in range(_FIRST_PIN, 1000))
    red, green, blue = (tuple(islice(names, count)) for count in bits)
    return Wiring(red, green, blue, h=next(names), v=next(names))
