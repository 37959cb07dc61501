"""``backporch monitor FILE``: what a monitor's EDID says, and what is wrong with it."""

import argparse
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from workbench.cli.output import print_json, print_text
from workbench.errors import FileError, TimingError
from workbench.exports.report import timing_text
from workbench.files.reading import read_bytes
from workbench.timing.edid.descriptor import DESCRIPTOR, read_descriptor
from workbench.timing.edid.monitor import monitor_object
from workbench.timing.edid.ranges import outside
from workbench.timing.edid.read import read_edid
from workbench.timing.edid.text import MOST_CONTENT, edid_bytes
from workbench.timing.edid.values import Edid
from workbench.timing.edid.words import extension_words, identity_words, input_words, limits_words
from workbench.timing.figures import timing_object
from workbench.timing.mode import Mode

__all__ = ["add", "monitor_text"]


def add(commands: Any) -> None:
    """Add the command."""
    parser = commands.add_parser("monitor", help="print what a monitor's EDID says")
    parser.add_argument(
        "file",
        type=Path,
        metavar="FILE",
        help="the EDID, or an 18-byte descriptor: binary, hex text or a C array",
    )
    parser.add_argument("--json", action="store_true", help="as JSON, SI units, nothing rounded")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Print the monitor."""
    content = read_bytes(arguments.file, MOST_CONTENT)
    try:
        data = edid_bytes(content)
        if len(data) == DESCRIPTOR:
            _print_mode(read_descriptor(data).mode, as_json=arguments.json)
            return 0
        edid = read_edid(content)
    except TimingError as error:
        raise FileError(f"{arguments.file}: {error}") from error
    if arguments.json:
        print_json(monitor_object(edid))
    else:
        print_text(monitor_text(edid))
    return 0


def _print_mode(mode: Mode, *, as_json: bool) -> None:
    """Print the one mode of a descriptor that stands by itself, as ``mode`` does."""
    if as_json:
        print_json(timing_object(mode))
    else:
        print_text(timing_text(mode))


def monitor_text(edid: Edid) -> str:
    """Return what an EDID says for a terminal."""
    return "\n".join(_lines(edid))


def _lines(edid: Edid) -> Iterator[str]:
    yield f"{identity_words(edid)}, EDID {edid.version}"
    yield f"  input      {input_words(edid)}"
    yield f"  takes      {limits_words(edid.limits)}"
    if edid.size_cm:
        yield f"  picture    {edid.size_cm[0]} × {edid.size_cm[1]} cm"
    yield f"  checksum   {'right' if edid.checksum_ok else 'wrong'}"
    for extension in edid.extensions:
        yield f"  extension  {extension_words(extension)}"
    yield ""
    count = len(edid.modes)
    yield f"{count} mode{'' if count == 1 else 's'}" if count else "No mode is listed."
    for mode in edid.modes:
        yield _mode_line(mode, edid)
    if edid.damages:
        yield ""
        yield "What is wrong or worth knowing:"
        yield from (f"  {damage}" for damage in edid.damages)


def _mode_line(mode: Mode, edid: Edid) -> str:
    clock = f"{mode.pixel_clock_hz / 1e6:8.3f} MHz"
    rates = f"{mode.line_rate_hz / 1e3:8.3f} kHz {mode.field_rate_hz:7.3f} Hz"
    excluded = edid.limits is not None and outside(mode, edid.limits)
    note = "  outside its own limits" if excluded else ""
    return f"  {mode.name:<18}{clock} {rates}  {mode.source}{note}"
