"""What F1 says about the panels."""

__all__ = ["HELP", "PAGE_HELP"]

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
        "limit comes from. Where there is one line only, a click on the sentence or Alt+F8 tells the rest. A "
        "remedy is one step and can be undone.",
    ),
    "white": (
        "White, loaded and open",
        "The volts of white with the monitor's load, and without it. A meter on the bare connector shows "
        "the open ones.",
    ),
    "pages": (
        "Pages",
        "Each tab unfolds a page under the bench, and folds it again. Drag the row of tabs to change the "
        "height. Arrow keys go from tab to tab.",
    ),
}
"""Names of the panels, and what F1 says about one that brings no words of its own."""

PAGE_HELP = {
    "picture": "The scene as sent and as the monitor shows it. A click goes to a pixel and its scanline; "
    "beside it stands why that pixel has the colour it has.",
    "levels": "The volts of every code, loaded at the monitor, beside the even staircase to 0.700 V. DNL is "
    "how much a step differs from one LSB, INL how far a level lies from the straight line. A code that is "
    "held is lit everywhere.",
    "tolerance": "Many boards are drawn with parts inside their tolerances. The pictures show how far white "
    "and the steps spread, the table which part matters most.",
    "timing": "The counts of line and frame. Type a count, or a time such as 3.8 µs; arrow keys step it. "
    "With “keep” the total stays and the region behind gives way. A click into the frame goes to a scanline "
    "and a pixel.",
    "parts": "What the project needs, and what lies in your drawer.",
    "monitor": "Which mode a monitor takes this one for, what its EDID says it takes, and a mode or a block "
    "of your own to write.",
    "clock": "Enter what your chip's clock can do, from its data sheet. The settings that come closest to "
    "the pixel clock are listed, best first, with their error and jitter.",
    "palette": "Every colour the ladders can make, as the monitor shows it.",
    "working": "How the pixel at the cursor called here came about, step by step with your own values.",
}
"""What F1 says about a page that brings no words of its own, by its id."""
