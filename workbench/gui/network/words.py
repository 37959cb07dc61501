"""The drawing in words: for tool tips and for those who do not see it."""

from workbench.circuit.codes import pin_label
from workbench.circuit.network import NodeId
from workbench.drawing import H_SERIES, LOAD, V_SERIES
from workbench.gui.network.scene import findings_by_part
from workbench.gui.network.shown import PinState, Shown
from workbench.gui.network.targets import Kind, Target
from workbench.gui.network.values import find_value
from workbench.pipeline.result import Result
from workbench.project.document import Channel, Project
from workbench.units import format_fixed, format_percent, format_quantity

__all__ = ["part_words", "spoken", "tip"]

STATES = {PinState.HIGH: "high", PinState.LOW: "low", PinState.FLOATING: "floating"}


def spoken(target: Target | None, project: Project, channel: Channel, shown: Shown) -> str:
    """Return one sentence about a target."""
    if target is None:
        return f"{channel.value}, code {shown.code}: {_output(shown)}"
    if target.kind is Kind.PIN and target.pin is not None:
        return _pin(target.pin, project, channel, shown)
    if target.kind is Kind.NODE:
        return _node(target.node, project, channel, shown)
    if target.kind is Kind.SOCKET:
        return "connector J1: colour and its return, H sync on 13, V sync on 14"
    if target.kind is Kind.CONTROLLER:
        return _controller(project)
    if target.kind is Kind.CABLE:
        return _cable(project)
    if target.kind is Kind.NAME:
        return "name of the controller's pin: a click, or F2 on the pin, renames it"
    if target.kind in (Kind.MONITOR, Kind.SCREEN):
        if not shown.sound:
            return f"monitor, {_load(project)}: {_output(shown)}"
        grey = f"this level of {channel.value} as a grey: lightness {shown.lightness:.0f} of 100"
        return f"monitor, {_load(project)}: {_output(shown)}; {grey}"
    return part_words(target, project, channel)


def tip(target: Target | None, result: Result, channel: Channel, shown: Shown) -> str:
    """Return the tool tip of a target: its sentence, and what was found about it."""
    if target is None:
        return ""
    words = spoken(target, result.project, channel, shown)
    for problem in result.channels[channel].levels.problems:
        if not problem.parts and _node_of(target, result.project, channel) in problem.nodes:
            words = f"{words}\n{problem.sentence}"
    finding = findings_by_part(result.findings, channel).get(target.part) if target.part else None
    return f"{words}\n{finding.headline}" if finding is not None else words


def _node_of(target: Target, project: Project, channel: Channel) -> NodeId | None:
    """Return the node that a target is, or that its pin is on."""
    pins = project.channels[channel].pins
    return pins[target.pin] if target.pin is not None and target.pin < len(pins) else target.node


def part_words(target: Target, project: Project, channel: Channel) -> str:
    """Return a part's name, value, tolerance and ends."""
    part = target.part
    value = find_value(project, channel, part) if part is not None else None
    if value is None or part is None:
        return ""
    words = f"{value.name}, {value.text(value.value)}"
    if part in (H_SERIES, V_SERIES, LOAD):
        return words
    network = project.channels[channel]
    for resistor in network.resistors:
        if resistor.id == part:
            tolerance = format_percent(resistor.tolerance)
            rating = format_quantity(resistor.rating_watts, "W")
            return f"{words}, ± {tolerance}, {rating}, between {resistor.a} and {resistor.b}"
    for capacitor in network.capacitors:
        if capacitor.id == part:
            return f"{words}, between {capacitor.a} and {capacitor.b}"
    return words


def _pin(pin: int, project: Project, channel: Channel, shown: Shown) -> str:
    names = project.wiring[channel]
    name = names[pin] if pin < len(names) else "pin"
    carries = " ".join(map(str, pin_label(project.channels[channel], pin)))
    amps = shown.leg_amps[pin]
    way = "out of" if amps >= 0 else "into"
    current = format_fixed(abs(amps), "A", prefix="m")
    return f"{name}, {carries}, {STATES[shown.states[pin]]}, {current} {way} the pin"


def _node(node: NodeId | None, project: Project, channel: Channel, shown: Shown) -> str:
    if node is None or node == project.channels[channel].output:
        return f"output node: {_output(shown)}"
    return f"node {node}: {format_fixed(shown.node_volts.get(node, 0.0), 'V')} loaded"


def _output(shown: Shown) -> str:
    if not shown.sound:
        return "no level"
    loaded, open_ = format_fixed(shown.loaded_volts, "V"), format_fixed(shown.open_volts, "V")
    return f"{loaded} loaded, {open_} open"


def _controller(project: Project) -> str:
    driver = project.driver
    supply = format_quantity(driver.supply_volts, "V")
    ohms = " / ".join(format_quantity(each, "Ω") for each in (driver.high_ohms, driver.low_ohms))
    return f"{supply} microcontroller, on-resistance {ohms} driving 1 and 0; Enter opens its card"


def _cable(project: Project) -> str:
    cable = project.cable
    if cable is None:
        return "no cable"
    length, ohms = format_quantity(cable.metres, "m"), format_quantity(cable.ohms, "Ω")
    return f"cable, {length}, {ohms}; Enter opens its card"


def _load(project: Project) -> str:
    load = project.load
    if load.ohms is None:
        return "no termination"
    each = format_quantity(load.ohms, "Ω")
    return each if load.monitors == 1 else f"{load.monitors} × {each}"
