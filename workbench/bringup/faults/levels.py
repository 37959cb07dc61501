"""Faults of the levels: supply, load, resistors, pins, the colour in blanking."""

from dataclasses import replace

from workbench.bringup.faults.record import Fault, first_leg, in_project, of_channel
from workbench.circuit.network import Network, Zeros
from workbench.errors import EditError
from workbench.project.document import Channel, Project
from workbench.project.edits.drive import set_load, set_monitors, set_on_resistance, set_supply, set_zeros
from workbench.project.edits.networks import edit_network
from workbench.project.edits.parts import remove_part, set_value
from workbench.project.edits.picture import set_blanking_code

__all__ = ["LEVEL_FAULTS"]

_LOADLESS_FACTOR = 20.0
"""How much higher the resistors of a ladder lie that was designed without the load. Our own. [1]"""
_UNEQUAL = 1.15
"""How much higher one channel's resistors lie. Our own. [1]"""


def _porch_colour(project: Project, channel: Channel) -> Project:
    return set_blanking_code(project, channel, project.channels[channel].n_codes // 2)


def _scaled(factor: float, project: Project, channel: Channel) -> Project:
    def change(network: Network) -> Network:
        parts = (replace(part, ohms=part.ohms * factor) for part in network.resistors)
        return replace(network, resistors=tuple(parts))

    return edit_network(project, channel, change)


def _kilohm_ladder(project: Project) -> Project:
    for channel in Channel:
        project = _scaled(_LOADLESS_FACTOR, project, channel)
        if project.linked:
            break
    return project


def _low_bit_wrong(project: Project, channel: Channel) -> Project:
    network = project.channels[channel]
    legs = [part for part in network.resistors if network.pins and network.pins[-1] in (part.a, part.b)]
    if not legs:
        raise EditError(f"{channel.value} has no resistor at its lowest pin")
    return set_value(project, channel, legs[0].id, legs[0].ohms / 10.0)


LEVEL_FAULTS = (
    Fault(
        "porch-colour",
        "Colour left on in blanking",
        monitor="Dark, and contrast follows the content: black is taken from the back porch.",
        instrument="The colour line is not at 0 V between H sync and the picture.",
        check="Mean of the colour line 0.36 to 1.15 µs after H sync: 0 V, give or take 20 mV.",
        mend="Let colour through only while the picture is active; end each line black.",
        put=of_channel(_porch_colour),
        one_channel=True,
        source="a receiver's data sheet: it takes black on the back porch",
    ),
    Fault(
        "kilohm-ladder",
        "Ladder designed without the load",
        monitor="A few per cent of the brightness.",
        instrument="Loaded levels of some tens of millivolts, open levels as designed.",
        check="Loaded over open: some hundredths instead of about a fifth.",
        mend="Design for the load: some hundred ohms for the highest bit.",
        put=in_project(_kilohm_ladder),
        source="builders' questions and answers on the web",
    ),
    Fault(
        "supply-low",
        "Values for 5 V on 3.3 V pins",
        monitor="Dim, steps even.",
        instrument="White about a third low.",
        check="Measure a high pin.",
        mend="Compute the values for the supply that is there.",
        put=in_project(lambda project: set_supply(project, project.driver.supply_volts * 3.3 / 5.0)),
    ),
    Fault(
        "supply-high",
        "Values for 3.3 V on 5 V pins",
        monitor="Too bright, light tones clipped.",
        instrument="White half as high again.",
        check="Measure a high pin; look at the pin currents too.",
        mend="Compute the values for the supply that is there.",
        put=in_project(lambda project: set_supply(project, project.driver.supply_volts * 5.0 / 3.3)),
    ),
    Fault(
        "pin-resistance",
        "Pin resistance left out",
        monitor="Slightly dim; a short step in the middle of a ramp.",
        instrument="White 5 to 10 % low, step below average at half scale.",
        check="Supply less pin voltage, over pin current, is the resistance of the pin.",
        mend="Take it off each resistor, or use stronger pins.",
        put=in_project(lambda project: set_on_resistance(project, project.driver.high_ohms + 40.0)),
    ),
    Fault(
        "two-loads",
        "Two terminations on the line",
        monitor="All channels nearly half as bright in volts once a second display is there.",
        instrument="White 0.39 V where it was 0.70 V.",
        check="Resistance from core to return with the power off: 37 Ω.",
        mend="One termination, at the end of the line.",
        put=in_project(lambda project: set_monitors(project, project.load.monitors * 2)),
    ),
    Fault(
        "no-load",
        "No termination",
        monitor="Far too bright; with a cable, several ghosts.",
        instrument="White near the open level.",
        check="Resistance from core to return with the power off: open.",
        mend="Terminate the line with 75 Ω.",
        put=in_project(lambda project: set_load(project, None)),
    ),
    Fault(
        "zeros-floating",
        "Zeros not driven",
        monitor="Middle tones too bright, black and white right.",
        instrument="Single bits add up to more than all bits together.",
        check="Add up the levels of the single bits and compare with white.",
        mend="Make the pins push-pull: a 0 has to be driven low.",
        put=in_project(lambda project: set_zeros(project, Zeros.FLOATING)),
    ),
    Fault(
        "high-bit-open",
        "Resistor of the highest bit open",
        monitor="Light half of the tones missing; the ramp starts over in the middle.",
        instrument="The highest bit alone gives 0 V.",
        check="Levels of the single bits.",
        mend="Replace the part, or its joint.",
        put=of_channel(lambda p, c: remove_part(p, c, first_leg(p, c).id)),
        one_channel=True,
    ),
    Fault(
        "low-bit-tenth",
        "Resistor of the lowest bit a tenth of its value",
        monitor="Grey ramps jump up and down at every step.",
        instrument="The lowest bit alone gives more than the highest.",
        check="Levels of the single bits, and loaded over open.",
        mend="Replace the part: a multiplier band was misread.",
        put=of_channel(_low_bit_wrong),
        one_channel=True,
    ),
    Fault(
        "unequal-channel",
        "One channel's resistors higher",
        monitor="White and greys tinted.",
        instrument="Full scale of the channels differs by more than 6 %.",
        check="White of all three channels.",
        mend="The same values in all channels, or trim.",
        put=of_channel(lambda p, c: _scaled(_UNEQUAL, p, c)),
        one_channel=True,
        source="a graphics-controller data sheet, DAC DC table: 6 %",
    ),
)
