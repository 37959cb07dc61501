"""``backporch export FILE --as KIND -o PATH``: one file out of a project."""

import argparse
from functools import partial
from pathlib import Path
from typing import Any

from workbench.cli.images import pixels
from workbench.cli.output import print_bytes, print_note, print_text, same_file
from workbench.errors import FileError
from workbench.exports import KINDS
from workbench.files.atomic import write_atomic
from workbench.files.project_file import read_project
from workbench.pipeline import Pipeline

__all__ = ["add"]


def add(commands: Any) -> None:
    """Add the command."""
    parser = commands.add_parser("export", help="write a project as a table, drawing or other file")
    parser.add_argument("file", nargs="?", type=Path, metavar="FILE", help="the project")
    parser.add_argument("--list", action="store_true", help="list the kinds and end")
    parser.add_argument("--as", dest="kind", choices=list(KINDS), metavar="KIND", help="one of those listed")
    parser.add_argument(
        "-o", "--output", type=Path, metavar="PATH", help="where to write it; - for the standard output"
    )
    parser.set_defaults(run=run, parser=parser)


def run(arguments: argparse.Namespace) -> int:
    """Write the file, or list the kinds."""
    if arguments.list:
        width = max(map(len, KINDS))
        print_text("\n".join(f"{kind.name:<{width}}  {kind.description}" for kind in KINDS.values()))
        return 0
    missing = [
        words
        for words, value in (
            ("FILE", arguments.file),
            ("--as KIND", arguments.kind),
            ("-o PATH", arguments.output),
        )
        if value is None
    ]
    if missing:
        arguments.parser.error(f"{' and '.join(missing)} must be given (or --list for the kinds)")
    if same_file(arguments.file, arguments.output):
        raise FileError(f"{arguments.output}: this is the project itself; give another path to write to")
    result = Pipeline(partial(pixels, near=arguments.file)).run(read_project(arguments.file))
    content = KINDS[arguments.kind].content(result)
    if str(arguments.output) == "-":
        print_bytes(content)
    else:
        write_atomic(arguments.output, content)
    note = KINDS[arguments.kind].note(result)
    if note:
        print_note(f"note: {note}")
    return 0
