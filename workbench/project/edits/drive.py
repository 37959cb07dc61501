"""Edits of what surrounds the networks: the pins that drive them, the monitor, the cable."""

from collections.abc import Sequence
from dataclasses import replace

from workbench.circuit.network import Cable, Zeros
from workbench.errors import EditError
from workbench.project.document import Channel, MonitorRange, Project
from workbench.project.limits import (
    AMPS,
    CABLE_LOSS,
    CABLE_METRES,
    CABLE_OHMS,
    INPUT_FARADS,
    MONITORS,
    OHMS,
    PIN_OHMS,
    RATE_HZ,
    RISE_S,
    SKEW_S,
    SUPPLY_VOLTS,
    VELOCITY,
)

__all__ = [
    "set_cable",
    "set_input_capacitance",
    "set_limits",
    "set_load",
    "set_monitor",
    "set_monitors",
    "set_on_resistance",
    "set_rise",
    "set_skew",
    "set_skews",
    "set_supply",
    "set_zeros",
]


def set_supply(project: Project, volts: float) -> Project:
    """Change the supply of the pins. [V]"""
    return replace(
        project, driver=replace(project.driver, supply_volts=SUPPLY_VOLTS.check(volts, "the supply"))
    )


def set_on_resistance(project: Project, high_ohms: float, low_ohms: float | None = None) -> Project:
    """Change the on-resistance of a pin that drives a 1, and of one that drives a 0. [Ω]

    One value stands for both.
    """
    high = PIN_OHMS.check(high_ohms, "the on-resistance high")
    low = high if low_ohms is None else PIN_OHMS.check(low_ohms, "the on-resistance low")
    return replace(project, driver=replace(project.driver, high_ohms=high, low_ohms=low))


def set_zeros(project: Project, zeros: Zeros) -> Project:
    """Say what a pin does for a 0: drive its node to ground, or let go of it."""
    return replace(project, driver=replace(project.driver, zeros=zeros))


def set_rise(project: Project, rise_s: float) -> Project:
    """Change the length of the ramp of a pin's edge. [s]"""
    return replace(project, driver=replace(project.driver, rise_s=RISE_S.check(rise_s, "the rise time")))


def set_skew(project: Project, channel: Channel, pin: int, skew_s: float) -> Project:
    """Say how late one pin of a channel changes, 0 being the most significant. [s]"""
    count = project.channels[channel].n_pins
    if not 0 <= pin < count:
        raise EditError(f"{channel.value} has {count} pins, counted from 0: there is no {pin}")
    skews_s = [*project.skews[channel], *(0.0,) * count][:count]
    skews_s[pin] = skew_s
    return set_skews(project, channel, skews_s)


def set_skews(project: Project, channel: Channel, skews_s: Sequence[float]) -> Project:
    """Say how late each pin of a channel changes, most significant first; none for in time. [s]"""
    count = project.channels[channel].n_pins
    if len(skews_s) > count:
        raise EditError(f"{channel.value} has {count} pins: {len(skews_s)} skews are too many")
    checked = [SKEW_S.check(skew_s, f"the skew of a {channel.value} pin") for skew_s in skews_s]
    while checked and checked[-1] == 0.0:
        checked.pop()
    return replace(project, skews=replace(project.skews, **{channel.value: tuple(checked)}))


def set_limits(project: Project, pin_amps: float | None, total_amps: float | None) -> Project:
    """Enter what one pin, and all pins together, may carry; none for not known. [A]"""
    pin = None if pin_amps is None else AMPS.check(pin_amps, "the limit of one pin")
    total = None if total_amps is None else AMPS.check(total_amps, "the limit of all pins")
    return replace(project, driver=replace(project.driver, pin_limit_amps=pin, total_limit_amps=total))


def set_load(project: Project, ohms: float | None) -> Project:
    """Change the termination of one monitor; none where nothing is fitted. [Ω]"""
    checked = None if ohms is None else OHMS.check(ohms, "the load")
    return replace(project, load=replace(project.load, ohms=checked))


def set_monitors(project: Project, monitors: int) -> Project:
    """Say how many monitors hang on the line. [1]"""
    MONITORS.check(monitors, "the number of monitors")
    return replace(project, load=replace(project.load, monitors=monitors))


def set_input_capacitance(project: Project, farads: float) -> Project:
    """Change the input capacitance of one monitor. [F]"""
    checked = INPUT_FARADS.check(farads, "the input capacitance")
    return replace(project, load=replace(project.load, farads=checked))


def set_cable(project: Project, cable: Cable | None) -> Project:
    """Put a cable between connector and monitor, or none."""
    if cable is not None:
        CABLE_METRES.check(cable.metres, "the cable")
        CABLE_OHMS.check(cable.ohms, "the cable's impedance")
        VELOCITY.check(cable.velocity, "the cable's wave speed")
        CABLE_LOSS.check(cable.loss_db_per_m, "the cable's loss")
        RATE_HZ.check(cable.loss_at_hz, "the frequency of the cable's loss")
    return replace(project, cable=cable)


def set_monitor(project: Project, monitor: MonitorRange | None) -> Project:
    """Enter the rates the monitor takes, from its manual; none for not known. [Hz]"""
    if monitor is not None:
        pairs = ((monitor.h_min_hz, monitor.h_max_hz), (monitor.v_min_hz, monitor.v_max_hz))
        for low, high in pairs:
            RATE_HZ.check(low, "the monitor's lowest rate")
            RATE_HZ.check(high, "the monitor's highest rate")
            if low > high:
                raise EditError("the monitor's lowest rate is above its highest: exchange the two")
        if monitor.max_pixel_clock_hz is not None:
            RATE_HZ.check(monitor.max_pixel_clock_hz, "the monitor's highest pixel clock")
    return replace(project, monitor=monitor)
