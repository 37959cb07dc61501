"""``backporch clock 640x480@60 ...``: how a chip comes closest to a mode's pixel clock."""

import argparse
from collections.abc import Iterator
from typing import Any

from workbench.cli.output import print_json, print_text
from workbench.cli.values import readable
from workbench.timing.clock.chip import Chip, read_chip
from workbench.timing.clock.plan import Plan, clock_object, plan_clock, planned_mode
from workbench.timing.clock.words import error_words, jitter_words, lock_words, settings_words
from workbench.timing.mode import Mode
from workbench.timing.search import WAYS, find_mode
from workbench.units import format_quantity

__all__ = ["add", "clock_text"]


def add(commands: Any) -> None:
    """Add the command."""
    parser = commands.add_parser("clock", help="plan a chip's clock for a display mode")
    parser.add_argument("mode", metavar="MODE", help="size and rate, a DMT id or a CTA number")
    parser.add_argument("--by", choices=WAYS, help="the mode's table or formula; all tables if left out")
    group = parser.add_argument_group(
        "chip", "system = reference x multiply / (divide x divide); pixel = system / divider"
    )
    group.add_argument("--reference", required=True, metavar="HZ", help="clock that comes in, as 10M")
    group.add_argument("--multiply", required=True, metavar="A..B", help="whole numbers")
    group.add_argument(
        "--divide", default="1", metavar="A..BxC..D", help="dividers behind the oscillator, one after another"
    )
    group.add_argument("--vco", metavar="A..B", help="range of the oscillator, as 200M..900M")
    group.add_argument("--max-system", required=True, metavar="HZ", help="highest system clock")
    group.add_argument(
        "--fraction", type=readable(_bits, "bits"), default=0, metavar="BITS", help="of the pixel divider (0)"
    )
    parser.add_argument("--json", action="store_true", help="as JSON, SI units, nothing rounded")
    parser.set_defaults(run=run)


def _bits(text: str) -> int:
    if not (text.isascii() and text.isdigit() and len(text) <= 4):
        raise argparse.ArgumentTypeError(f"“{text[:40]}” is no number of bits; write a whole number, as in 8")
    return int(text)


def run(arguments: argparse.Namespace) -> int:
    """Print the plans, best first."""
    mode = find_mode(arguments.mode, by=arguments.by)
    chip = read_chip(
        reference=arguments.reference,
        multiply=arguments.multiply,
        divide=arguments.divide,
        max_system=arguments.max_system,
        vco=arguments.vco,
        fraction_bits=arguments.fraction,
    )
    plans = plan_clock(mode, chip)
    if arguments.json:
        print_json(clock_object(chip, plans))
    else:
        print_text(clock_text(mode, chip, plans))
    return 0


def clock_text(mode: Mode, chip: Chip, plans: tuple[Plan, ...]) -> str:
    """Return the plans for a terminal."""
    return "\n".join(_lines(mode, chip, plans))


def _lines(mode: Mode, chip: Chip, plans: tuple[Plan, ...]) -> Iterator[str]:
    yield f"Pixel clock for {mode.name} ({mode.source}): {format_quantity(mode.pixel_clock_hz, 'Hz', 9)}"
    last = None
    for plan in plans:
        if plan.jitter is not last:
            yield ""
            yield f"{jitter_words(plan).partition(' by ')[0].capitalize()}:"
            last = plan.jitter
        made = planned_mode(mode, plan)
        yield (
            f"  {float(plan.pixel_hz) / 1e6:10.6f} MHz {error_words(plan):>14}"
            f"  {made.line_rate_hz / 1e3:8.4f} kHz {made.field_rate_hz:8.4f} Hz  {settings_words(chip, plan)}"
        )
        if plan.uneven_s:
            yield f"             {jitter_words(plan)}"
        if caution := lock_words(plan):
            yield f"             {caution}"
