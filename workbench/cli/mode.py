"""``backporch mode 640x480@60``: the figures of a display mode."""

import argparse
from typing import Any

from workbench.cli.output import print_json, print_note, print_text
from workbench.exports.report import timing_text
from workbench.timing.edid.descriptor import descriptor_losses, write_descriptor
from workbench.timing.figures import simulable, timing_object
from workbench.timing.mode import Mode
from workbench.timing.search import WAYS, find_mode

__all__ = ["add"]


def add(commands: Any) -> None:
    """Add the command."""
    parser = commands.add_parser("mode", help="print the figures of a display mode")
    parser.add_argument(
        "mode",
        metavar="MODE",
        help="size and rate (640x480@60, 1280x768@60RB), a DMT id (0x04) or a CTA number (VIC 16)",
    )
    parser.add_argument("--by", choices=WAYS, help="its table or formula; all tables if left out")
    parser.add_argument(
        "--descriptor", action="store_true", help="as the 18 bytes of an EDID detailed timing, in hex"
    )
    parser.add_argument("--json", action="store_true", help="as JSON, SI units, nothing rounded")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Print the figures, or the descriptor."""
    mode = find_mode(arguments.mode, by=arguments.by)
    if arguments.json:
        print_json(timing_object(mode) | (_descriptor_object(mode) if arguments.descriptor else {}))
        return 0
    if arguments.descriptor:
        print_text(write_descriptor(mode).hex(" "))
        for loss in descriptor_losses(mode):
            print_note(f"note: {loss}")
        return 0
    print_text(timing_text(mode))
    if reason := simulable(mode):
        print_text(reason)
    return 0


def _descriptor_object(mode: Mode) -> dict[str, object]:
    return {"descriptor": write_descriptor(mode).hex(" "), "descriptor_losses": list(descriptor_losses(mode))}
