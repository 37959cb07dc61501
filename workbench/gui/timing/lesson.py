"""What the parts of a line and of a frame are for: said by tips and by F1 over their names."""

from workbench.project.document import Direction
from workbench.timing.mode import Axis, Region

__all__ = ["BORDER", "POLARITY", "TOTAL", "region_words"]

_LINE = {
    Region.FRONT_PORCH: (
        "Black from the end of the picture to the sync pulse. The colour lines come to rest in it, so that "
        "the edge a monitor times the line by does not move with what the picture ended in (common "
        "practice, no source)."
    ),
    Region.SYNC: (
        "The pulse that starts a line: a monitor counts from its first edge to the picture. A tube's beam "
        "flies back from about here on (common practice, no source)."
    ),
    Region.BACK_PORCH: (
        "Black from the sync pulse to the picture. A flat monitor takes what it gets here for black, in "
        "every line anew: one receiver from 9 to 29 of its samples after the pulse (its registers; others "
        "differ). With the pulse it is where a monitor looks for the picture: too short, and the left edge "
        "is lost until the monitor is adjusted."
    ),
    Region.ACTIVE: "The pixels of the picture.",
}
_FRAME = {
    Region.FRONT_PORCH: (
        "Black lines from the end of the picture to V sync. Many modes of the VESA DMT table have only one."
    ),
    Region.SYNC: (
        "The lines on which V sync starts a frame: a monitor counts from its first edge to the picture. In "
        "modes by the CVT formula their number tells the shape of the picture: 4 for 4:3, 5 for 16:9, 6 for "
        "16:10 (VESA CVT)."
    ),
    Region.BACK_PORCH: (
        "Black lines from V sync to the picture, in which a tube's beam flies back to the top (common "
        "practice, no source). With V sync they are where a monitor looks for the first line: too few, and "
        "the top of the picture is lost until the monitor is adjusted."
    ),
    Region.ACTIVE: "The lines of the picture.",
}
_REGIONS = {Direction.HORIZONTAL: _LINE, Direction.VERTICAL: _FRAME}

TOTAL = {
    Direction.HORIZONTAL: (
        "All pixels of a line, seen and black. No pixel clock goes over the cable: a flat monitor samples "
        "the line as many times as its table says. With another total here its samples drift from the "
        "middle of the pixels to their edges and back: one soft vertical band for each pixel of difference."
    ),
    Direction.VERTICAL: (
        "All lines of a frame, seen and black. By this count and the line rate a monitor finds the mode in "
        "its table."
    ),
}
"""What the total is for."""

POLARITY = (
    "Which way the pulse goes from its level at rest: positive up, negative down, to 0 V and not below it. "
    "A pulse is as good either way; monitors tell modes of equal rates apart by the pair of H and V. With "
    "449 lines at 31.469 kHz a picture of 350 is +/\u2212 and one of 400 is \u2212/+ (a monitor manual's "
    "table of presets)."
)
"""What the polarity of a sync pulse is, and what it tells a monitor."""

BORDER = (
    "Border is what the standard calls the part of each porch next to the picture: a rim around it, black "
    "here. In the VESA DMT table 640x480 at 60 and 72 Hz has one, of 8 pixels and 8 lines; no other mode "
    "has."
)
"""What the border is."""


def region_words(direction: Direction, region: Region, axis: Axis) -> tuple[str, ...]:
    """Return what a part of the line or frame is for, a paragraph each, the border it may hold included."""
    words = _REGIONS[direction][region]
    if not axis.border or region not in (Region.FRONT_PORCH, Region.BACK_PORCH):
        return (words,)
    unit = "px" if direction is Direction.HORIZONTAL else "lines"
    return words, f"{axis.border} {unit} of it are border. {BORDER}"
