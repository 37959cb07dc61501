"""``backporch new ... -o FILE``: a project from a few options."""

import argparse
from typing import Any

from workbench.circuit.ladders import MOST_THERMOMETER
from workbench.circuit.network import Cable, Driver, Load, Zeros
from workbench.circuit.series import Series
from workbench.circuit.wish import LadderWish, Shape, read_values, wishes_for
from workbench.cli.values import (
    bit_counts,
    new_file,
    on_resistance,
    optional_ohms,
    plain_text,
    quantity,
    readable,
)
from workbench.files.project_file import write_project
from workbench.project.document import Project
from workbench.project.templates import Wishes, make_project
from workbench.timing.search import find_mode

__all__ = ["add", "new_project"]

_MODE = "640x480@60"


def add(commands: Any) -> None:
    """Add the command."""
    parser = commands.add_parser("new", help="make a project from options")
    parser.add_argument(
        "-o", "--output", type=new_file, required=True, metavar="FILE", help="where to write it"
    )
    parser.add_argument("--name", type=plain_text, help="what to call it; the file's name if left out")
    parser.add_argument(
        "--mode", type=readable(find_mode, "mode"), default=_MODE, help=f"display mode ({_MODE})"
    )
    _add_ladder(parser.add_argument_group("ladder"))
    _add_surroundings(parser.add_argument_group("pins, cable and monitor"))
    parser.set_defaults(run=run)


def _add_ladder(group: Any) -> None:
    group.add_argument("--ladder", choices=[s.value for s in Shape], default="weighted")
    group.add_argument("--bits", type=bit_counts, default=(5, 5, 5), help="red,green,blue (5,5,5)")
    values = group.add_mutually_exclusive_group()
    values.add_argument(
        "--values",
        type=readable(read_values, "values"),
        metavar="OHMS",
        help="weighted: one for each bit, most significant first; a shorter channel takes the first of them. "
        "r2r: R, or R,2R. segmented: one of the equal legs first, then the others. equal: the one value. "
        "Three lists with a slash between are red/green/blue",
    )
    values.add_argument("--series", choices=[s.name for s in Series], help="fit values from a series (E24)")
    group.add_argument(
        "--thermometer",
        type=int,
        choices=range(2, MOST_THERMOMETER + 1),
        default=2,
        help="bits that a segmented ladder shows by equal legs (2)",
    )
    shunt = group.add_mutually_exclusive_group()
    shunt.add_argument("--shunt", type=quantity("Ω"), metavar="OHMS", help="from the node to ground")
    shunt.add_argument("--matched", action="store_true", help="with a shunt that makes the source 75 Ω")
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
    high_ohms, low_ohms = arguments.on_resistance
    return make_project(
        arguments.mode,
        _wishes(arguments),
        name=arguments.name or plain_text(arguments.output.stem),
        driver=Driver(
            supply_volts=arguments.supply,
            high_ohms=high_ohms,
            low_ohms=low_ohms,
            zeros=Zeros(arguments.idle),
            rise_s=arguments.rise,
        ),
        load=Load(ohms=arguments.load, farads=arguments.load_capacitance),
        cable=None if arguments.cable is None else Cable(arguments.cable),
    )


def _wishes(arguments: argparse.Namespace) -> Wishes:
    """Return what the ladders of red, green and blue are to be like."""
    wish = LadderWish(
        Shape(arguments.ladder),
        thermometer=arguments.thermometer,
        series=Series[arguments.series or "E24"],
        matched=arguments.matched,
        shunt_ohms=arguments.shunt,
        node_farads=arguments.node_capacitance,
    )
    return wishes_for(wish, arguments.bits, arguments.values)
