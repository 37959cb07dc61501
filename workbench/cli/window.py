"""``backporch [FILE]``: the window."""

import argparse
from pathlib import Path
from typing import Any

__all__ = ["add"]


def add(commands: Any) -> None:
    """Add the command; it is what runs when no command is named."""
    parser = commands.add_parser("window", help="open the window; the word may be left out")
    parser.add_argument("file", nargs="?", type=Path, metavar="FILE", help="the project to open")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Open the window and return its exit code."""
    from workbench.gui.app import run_window

    return run_window(arguments.file)
