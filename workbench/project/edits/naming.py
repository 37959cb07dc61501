"""Edits of names and of the series values are taken from."""

from dataclasses import replace

from workbench.circuit.series import Series
from workbench.errors import EditError
from workbench.project.document import Channel, Direction, Project, Wiring
from workbench.project.limits import check_name

__all__ = ["name_pin", "name_sync_pin", "rename", "set_series"]


def rename(project: Project, name: str) -> Project:
    """Give the project another name."""
    return replace(project, name=check_name(name.strip(), "the project's name"))


def set_series(project: Project, series: Series) -> Project:
    """Choose the series that steps and neighbours are taken from; no value changes."""
    return replace(project, series=series)


def name_pin(project: Project, channel: Channel, pin: int, name: str) -> Project:
    """Say which of the controller's pins drives a pin of the network, 0 being the most significant."""
    count = project.channels[channel].n_pins
    if not 0 <= pin < count:
        raise EditError(f"{channel.value} has {count} pins, counted from 0: there is no {pin}")
    names = [*project.wiring[channel]]
    names[pin] = _checked(name)
    red, green, blue = (tuple(names) if c is channel else project.wiring[c] for c in Channel)
    return _put(project, Wiring(red, green, blue, project.wiring.h, project.wiring.v))


def name_sync_pin(project: Project, line: Direction, name: str) -> Project:
    """Say which of the controller's pins drives a sync line."""
    checked, wiring = _checked(name), project.wiring
    h, v = (checked, wiring.v) if line is Direction.HORIZONTAL else (wiring.h, checked)
    return _put(project, replace(wiring, h=h, v=v))


def _checked(name: str) -> str:
    return check_name(name.strip(), "the pin's name")


def _put(project: Project, wiring: Wiring) -> Project:
    names = [*wiring.red, *wiring.green, *wiring.blue, wiring.h, wiring.v]
    twice = next((name for name in names if names.count(name) > 1), None)
    if twice is not None:
        raise EditError(f"{twice} drives another line already: each pin has one line")
    return replace(project, wiring=wiring)
