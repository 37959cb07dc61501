"""What F1 says about the panels."""

__all__ = ["HELP"]

HELP = {
    "network": (
        "Network",
        "One colour line: pins on the left, a resistor in each leg, the node they share, then the connector "
        "and the monitor's 75 ohm. A click on a value edits it in place; up and down step along the series; "
        "0 and 1 hold a pin low or high.",
    ),
    "scanline": (
        "Scanline",
        "Volts of one line at the monitor, from the front porch's start: red, green and blue above, H and V "
        "sync below, and the line as the eye sees it on top. The wheel zooms, dragging moves, the knobs of "
        "the ruler move the edges of sync and porches.",
    ),
    "findings": (
        "Findings",
        "What the checks found, the heaviest first: what, where, how much, why it matters and where the "
        "limit comes from. A remedy is one step and can be undone.",
    ),
    "white": (
        "White, loaded and open",
        "The volts of white with the monitor's load, and without it. A meter on the bare connector shows "
        "the open ones.",
    ),
}
"""Names of the panels, and what F1 says about one that brings no words of its own."""
