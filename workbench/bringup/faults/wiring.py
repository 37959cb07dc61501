"""Faults between the picture and the pins: wires and bits."""

from dataclasses import replace

from workbench.bringup.faults.record import Fault, Setup, in_slips, of_channel
from workbench.project.document import Channel, Project
from workbench.project.edits.networks import edit_network
from workbench.waveform.slips import Slips

__all__ = ["WIRING_FAULTS"]

_PACKED = 8
"""Pixels of a byte of one bit each, whose order is turned round. [1]"""


def _at(channel: Channel, values: tuple[int, int, int], value: int) -> tuple[int, int, int]:
    red, green, blue = (value if c is channel else old for c, old in zip(Channel, values, strict=True))
    return red, green, blue


def _high_bit(setup: Setup, channel: Channel) -> int:
    return setup.project.channels[channel].n_codes >> 1


def _stuck_high(setup: Setup, channel: Channel) -> Slips:
    return replace(setup.slips, stuck_high=_at(channel, setup.slips.stuck_high, _high_bit(setup, channel)))


def _stuck_low(setup: Setup, channel: Channel) -> Slips:
    return replace(setup.slips, stuck_low=_at(channel, setup.slips.stuck_low, _high_bit(setup, channel)))


def _reversed(setup: Setup, channel: Channel) -> Slips:
    turned = zip(Channel, setup.slips.reversed_bits, strict=True)
    red, green, blue = (not old if c is channel else old for c, old in turned)
    return replace(setup.slips, reversed_bits=(red, green, blue))


def _exchanged(setup: Setup, channel: Channel) -> Slips:
    red, green, blue = setup.slips.shown_by
    return replace(setup.slips, shown_by=(blue, green, red))


def _open_wire(project: Project, channel: Channel) -> Project:
    """Take away everything that leads to the output: nothing drives the monitor's load."""
    return edit_network(project, channel, lambda network: replace(network, resistors=()))


WIRING_FAULTS = (
    Fault(
        "stuck-high",
        "Highest bit stuck high",
        monitor="The colour is never dark, and nothing is black in blanking.",
        instrument="Above 0 V at code 0.",
        check="Level of code 0.",
        mend="Configure the pin as an output; look for a bridge to the supply.",
        put=in_slips(_stuck_high),
        one_channel=True,
    ),
    Fault(
        "stuck-low",
        "Highest bit stuck low",
        monitor="The colour stays in the dark half; ramps start over in the middle.",
        instrument="Full scale about half.",
        check="The pin of the highest bit, toggled alone.",
        mend="Configure the pin as an output; look for a bridge to ground.",
        put=in_slips(_stuck_low),
        one_channel=True,
    ),
    Fault(
        "bits-reversed",
        "Bit order reversed",
        monitor="Ramps zigzag.",
        instrument="Levels in the order 0, 4, 2, 6, 1, 5, 3, 7.",
        check="One pin at a time: the highest bit gives just over half of full scale.",
        mend="Turn the order round in the firmware's table, or rewire.",
        put=in_slips(_reversed),
        one_channel=True,
    ),
    Fault(
        "red-blue-exchanged",
        "Red and blue exchanged",
        monitor="Red and blue change places; greys are right.",
        instrument="The right levels on the wrong pin.",
        check="The primaries in turn.",
        mend="Exchange the two wires, or the two in the firmware.",
        put=in_slips(_exchanged),
    ),
    Fault(
        "open-wire",
        "A colour's wire open",
        monitor="White is cyan, magenta or yellow.",
        instrument="That channel is flat.",
        check="The primaries, then an ohm-meter along the wire and its return.",
        mend="Mend the wire or the joint.",
        put=of_channel(_open_wire),
        one_channel=True,
    ),
    Fault(
        "colour-late",
        "Colour a clock late",
        monitor="The first column is black and the last is cut off; a border is lost on the right.",
        instrument="Colour starts late against the end of H sync, and runs into the front porch.",
        check="A border one pixel wide.",
        mend="Delay the syncs by as many clocks as the colour.",
        put=in_slips(lambda setup, channel: replace(setup.slips, late_pixels=setup.slips.late_pixels + 1)),
        source="builders' questions and answers on the web",
    ),
    Fault(
        "packing-mirrored",
        "Order of packing turned round",
        monitor="Groups of 8 pixels mirrored: slanting edges become combs.",
        instrument="Levels right, order wrong.",
        check="A single pixel walked along the line.",
        mend="Shift the bits of a byte out from the other end.",
        put=in_slips(lambda setup, channel: replace(setup.slips, mirrored=_PACKED)),
    ),
)
