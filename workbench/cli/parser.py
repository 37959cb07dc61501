"""The options of every command, and values typed on the command line."""

import argparse
from typing import NoReturn

from workbench import __version__
from workbench.cli import clock, export, fit, mode, monitor, new, report, tolerance, window
from workbench.cli.output import print_note

__all__ = ["COMMANDS", "command_line"]

_MODULES = {
    "new": new,
    "report": report,
    "mode": mode,
    "monitor": monitor,
    "clock": clock,
    "fit": fit,
    "tolerance": tolerance,
    "export": export,
    "window": window,
}

COMMANDS = frozenset(_MODULES)
"""Every first word that is a command and not a file."""

_EXAMPLES = """\
examples:
  backporch                                  the window, with a demo project
  backporch board.backporch                  the window, with this project
  backporch new --bits 5,5,5 --values 500,1k,2k,4k,8k -o board.backporch
  backporch report board.backporch --strict  every figure and finding; exit 1 when one fails
  backporch export board.backporch --as scanline-csv -o line.csv
  backporch mode 800x600@60 --descriptor
  backporch monitor desk.edid
  backporch clock 640x480@60 --reference 10M --multiply 20..100 --divide 1..8 --max-system 150M
  backporch fit board.backporch --series E24 -o fitted.backporch
  backporch tolerance board.backporch --resistors 1%

A value is typed as 4700, 4.7k or 4k7; "backporch COMMAND --help" tells the rest.
"""


class _Parser(argparse.ArgumentParser):
    """Says what is wrong in one line."""

    def error(self, message: str) -> NoReturn:
        print_note(message, of=self.prog)
        self.exit(2)


def command_line() -> argparse.ArgumentParser:
    """Return the parser of the whole command line; each command sets ``run``."""
    parser = _Parser(
        prog="backporch",
        usage="backporch [FILE] | backporch COMMAND ...",
        description="Analog RGB video from logic pins and resistors, seen as volts, time and picture.",
        epilog=_EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--version", action="version", version=f"backporch {__version__}")
    commands = parser.add_subparsers(title="commands", metavar="COMMAND", prog="backporch", required=True)
    for module in _MODULES.values():
        module.add(commands)
    return parser
