"""Faults of edges: pins that lag, capacitance, cables, the instant of sampling."""

from dataclasses import replace

from workbench.bringup.faults.record import NOT_NAMED, Fault, Setup, in_project, of_channel
from workbench.circuit.network import Cable
from workbench.project.document import Channel, Project
from workbench.project.edits.drive import set_cable, set_load, set_skew, set_skews
from workbench.project.edits.ladders import set_capacitor

__all__ = ["EDGE_FAULTS"]

_LAG_S = 8e-9
"""Lag of the highest bit: about a fifth of a pixel at 25 MHz. Our own. [s]"""
_NODE_FARADS = 100e-12
_LONG_METRES = 10.0
_MISMATCHED_OHMS = 82.0
"""A monitor's input at the high end of its tolerance, 75 Ω and 10 %: an echo needs both ends off. [Ω]"""


def _high_bit_lags(project: Project, channel: Channel) -> Project:
    late = max((_LAG_S, *project.skews[channel][:1]))
    return set_skew(project, channel, 0, late)


def _channel_lags(project: Project, channel: Channel) -> Project:
    lag_s = project.mode.pixel_s / 2.0
    return set_skews(project, channel, (lag_s,) * project.channels[channel].n_pins)


def _long_cable(project: Project) -> Project:
    if project.cable is None:
        return set_cable(project, Cable(_LONG_METRES))
    return set_cable(project, replace(project.cable, metres=max(_LONG_METRES, 2.0 * project.cable.metres)))


def _bad_phase(setup: Setup, channel: Channel) -> Setup:
    return replace(setup, monitor=replace(setup.monitor, auto_adjust=False, phase=0.04))


EDGE_FAULTS = (
    Fault(
        "bit-skew",
        "Highest bit switches late",
        monitor="Thin lines at some edges of colour, worst in the middle of a ramp.",
        instrument="A spike as long as the lag where many bits change.",
        check="Toggle between the codes each side of half scale; a change of one bit is clean.",
        mend="Write all bits in one access to one register.",
        put=of_channel(_high_bit_lags),
        one_channel=True,
        source=NOT_NAMED,
    ),
    Fault(
        "channel-skew",
        "One channel half a pixel late",
        monitor="A coloured fringe on one side of every edge.",
        instrument="Edges of red, green and blue apart.",
        check="A white bar, at the connector first, then at the far end.",
        mend="Equal cables and paths for the three colours.",
        put=of_channel(_channel_lags),
        one_channel=True,
        source="a web article on the skew of video signals",
    ),
    Fault(
        "node-capacitance",
        "Capacitance of 100 pF at the output node",
        monitor="Soft; one-pixel stripes turn grey.",
        instrument="Slow edges: 2.2 R C from 10 to 90 %.",
        check="Rise time against a third of a pixel.",
        mend="Shorter wires, parts of low capacitance, a lower source resistance.",
        put=of_channel(lambda p, c: set_capacitor(p, c, _NODE_FARADS)),
        one_channel=True,
    ),
    Fault(
        "long-cable",
        "Long cable, both ends off 75 Ω",
        monitor="Ghosts to the right of edges.",
        instrument="A smaller step, two passages of the cable after the first.",
        check="The delay: twice the length over the speed on the cable, 10 ns for a metre.",
        mend="Match the source to 75 Ω, or shorten the cable.",
        put=in_project(lambda project: set_load(_long_cable(project), _MISMATCHED_OHMS)),
    ),
    Fault(
        "sampling-phase",
        "Panel samples on the edges",
        monitor="Fuzz and sparkle on fine detail only.",
        instrument="Nothing wrong.",
        check="One-pixel stripes, while the phase is turned.",
        mend="Let the monitor adjust itself on a picture with fine detail.",
        put=_bad_phase,
        source="a receiver's data sheet: a level slews first, and only what holds is good to sample",
    ),
)
