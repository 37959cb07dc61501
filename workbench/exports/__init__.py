"""What leaves the program: one format a file, all of them functions of a result.

May import everything below the window and the command line. ``KINDS`` lists what
``backporch export`` and the window offer.
"""

from collections.abc import Callable
from dataclasses import dataclass

from workbench.exports.levels_csv import levels_csv
from workbench.exports.picture_png import picture_note, picture_png, sent_png
from workbench.exports.scanline_csv import scanline_csv
from workbench.exports.scanline_svg import scanline_svg
from workbench.exports.schematic_svg import schematic_svg
from workbench.pipeline.result import Result

__all__ = ["KINDS", "Kind"]


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of export."""

    name: str
    description: str
    suffix: str
    """Of the file's name, with the dot."""
    content: Callable[[Result], bytes]
    """Return the file's bytes; raises a :class:`~workbench.errors.WorkbenchError` where it cannot be made."""
    note: Callable[[Result], str] = lambda _result: ""
    """Return what has to be known beside the file; empty where nothing has."""


KINDS: dict[str, Kind] = {
    kind.name: kind
    for kind in (
        Kind("scanline-csv", "the scanline at the monitor, one row a sample", ".csv", scanline_csv),
        Kind("scanline-svg", "the scanline as a drawing for paper", ".svg", scanline_svg),
        Kind("schematic-svg", "the network as a drawing for paper", ".svg", schematic_svg),
        Kind("levels-csv", "volts, steps and currents of every code", ".csv", levels_csv),
        Kind("picture-png", "the picture as a monitor shows it", ".png", picture_png, picture_note),
        Kind("picture-sent-png", "the picture as sent, on a perfect display", ".png", sent_png),
    )
}
"""Every kind of export, by the name the command line knows."""
