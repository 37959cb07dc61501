"""Which command was asked for, and what becomes of its errors."""

import sys
from collections.abc import Sequence
from difflib import get_close_matches
from pathlib import Path

from workbench.cli.output import print_note
from workbench.cli.parser import COMMANDS, command_line
from workbench.cli.streams import open_streams, while_someone_reads
from workbench.cli.values import with_negative_values
from workbench.errors import WorkbenchError

__all__ = ["BAD_INPUT", "main"]

BAD_INPUT = 2
"""Exit code for input that cannot be used. [1]"""
_INTERRUPTED = 130
"""Exit code after Ctrl-C: 128 and the number of the signal (POSIX shells). [1]"""


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command and return the exit code.

    0 when all went well; 1 with ``--strict`` when a finding fails; 2 for bad input, with one line
    on stderr.
    """
    words = list(sys.argv[1:] if argv is None else argv)
    open_streams()
    try:
        return _run(words)
    except WorkbenchError as error:
        return _refuse(str(error))
    except KeyboardInterrupt:
        print_note("stopped")
        return _INTERRUPTED
    except OSError as error:
        return _refuse(f"{error.filename or 'the output'}: {error.strerror or error}")


def _run(words: list[str]) -> int:
    if not words or words[0] not in (*COMMANDS, "-h", "--help", "--version"):
        # `backporch` and `backporch FILE` open the window.
        _refuse_slip(words)
        words = ["window", *words]
    try:
        arguments = command_line().parse_args(with_negative_values(words))
    except SystemExit as ended:  # help, the version or an error has been printed
        with while_someone_reads(sys.stdout):
            return int(ended.code or 0)
    run: int = arguments.run(arguments)
    return run


def _refuse_slip(words: list[str]) -> None:
    """Raise for a first word that was meant for a command: no option, and no file either."""
    if words and words[0][:1] not in ("", "-") and not Path(words[0]).suffix and not Path(words[0]).exists():
        near = get_close_matches(words[0], COMMANDS, n=1)
        hint = f"did you mean {near[0]}?" if near else "see backporch --help"
        raise WorkbenchError(f"{words[0]} is neither a command nor a file: {hint}")


def _refuse(sentence: str) -> int:
    print_note(sentence)
    return BAD_INPUT
