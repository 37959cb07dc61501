"""Putting an edited network back into its project: shared by all edits of parts and ladders."""

import re
from collections.abc import Callable, Set
from dataclasses import replace
from typing import TypeVar

from workbench.circuit.network import Capacitor, Network, NodeId, PartId, Resistor
from workbench.errors import EditError
from workbench.picture.scene import Picture
from workbench.project.document import Channel, Channels, Project, Skews, Wiring
from workbench.project.limits import FARADS, MOST_PARTS, OHMS

__all__ = [
    "edit_network",
    "find_capacitor",
    "find_part",
    "find_resistor",
    "free_node",
    "free_part",
    "new_node",
    "nodes_of",
    "parts_of",
    "put_networks",
    "put_part",
    "swap_capacitor",
    "swap_resistor",
]


PartT = TypeVar("PartT", Resistor, Capacitor)


def edit_network(project: Project, channel: Channel, change: Callable[[Network], Network]) -> Project:
    """Return the project with one channel's network changed, or all three where they are linked."""
    network = change(project.channels[channel])
    if network == project.channels[channel]:
        return project
    if len(parts_of(network)) > MOST_PARTS:
        raise EditError(f"a channel has at most {MOST_PARTS} parts: take one away first")
    chosen = tuple(Channel) if project.linked else (channel,)
    return put_networks(project, dict.fromkeys(chosen, network))


def put_networks(project: Project, networks: dict[Channel, Network]) -> Project:
    """Return the project with other networks; pin names and blanking codes are made to fit.

    Raises
    ------
    EditError
        If a value that came about on the way, such as a sum, is out of its range.
    """
    for network in networks.values():
        for resistor in network.resistors:
            OHMS.check(resistor.ohms, resistor.id)
        for capacitor in network.capacitors:
            FARADS.check(capacitor.farads, capacitor.id)
    channels = Channels(**{c.value: networks.get(c, project.channels[c]) for c in Channel})
    return replace(
        project,
        channels=channels,
        wiring=_fit_wiring(project.wiring, channels),
        picture=_fit_picture(project.picture, channels),
        skews=Skews(**{c.value: project.skews[c][: channels[c].n_pins] for c in Channel}),
    )


def find_resistor(network: Network, part: PartId) -> Resistor:
    """Return the resistor of that name, or raise an `EditError`."""
    return _find(network.resistors, part, "resistor")


def find_capacitor(network: Network, part: PartId) -> Capacitor:
    """Return the capacitor of that name, or raise an `EditError`."""
    return _find(network.capacitors, part, "capacitor")


def find_part(network: Network, part: PartId) -> Resistor | Capacitor:
    """Return the part of that name, or raise an `EditError`."""
    for candidate in parts_of(network):
        if candidate.id == part:
            return candidate
    raise EditError(f"there is no part {part} in this network")


def put_part(
    network: Network, part: Resistor | Capacitor, *, after: PartId | None = None, name: PartId | None = None
) -> Network:
    """Return the network with a part put in, in the place of the one of its name if there is one.

    A new part comes ``after`` another one of its kind, or last; a ``name`` renames it.
    """
    put = part if name is None else replace(part, id=name)
    if isinstance(put, Resistor):
        return replace(network, resistors=_with(network.resistors, part.id, put, after))
    return replace(network, capacitors=_with(network.capacitors, part.id, put, after))


def swap_resistor(network: Network, part: Resistor, *others: Resistor) -> Network:
    """Return the network with a resistor replaced, in its place, by others or by none."""
    return replace(network, resistors=_swapped(network.resistors, part, others))


def swap_capacitor(network: Network, part: Capacitor, *others: Capacitor) -> Network:
    """Return the network with a capacitor replaced, in its place, by others or by none."""
    return replace(network, capacitors=_swapped(network.capacitors, part, others))


def parts_of(network: Network) -> tuple[Resistor | Capacitor, ...]:
    """Return the resistors, then the capacitors."""
    parts: list[Resistor | Capacitor] = [*network.resistors, *network.capacitors]
    return tuple(parts)


def nodes_of(network: Network) -> set[NodeId]:
    """Return the nodes that pins, output and parts stand on; ground only if a part does."""
    ends = {node for part in parts_of(network) for node in (part.a, part.b)}
    return {*network.pins, network.output, *ends}


def free_part(network: Network, letter: str) -> PartId:
    """Return the first name ``R1``, ``R2`` … (or ``C1`` …) that no part has."""
    taken = {part.id for part in parts_of(network)}
    return next(name for n in range(1, len(taken) + 2) if (name := PartId(f"{letter}{n}")) not in taken)


def free_node(network: Network, stem: str) -> NodeId:
    """Return ``stem``, or else the first ``stem2``, ``stem3`` …, that no node is named."""
    taken = nodes_of(network)
    names = (NodeId(stem if n == 1 else f"{stem}{n}") for n in range(1, len(taken) + 2))
    return next(name for name in names if name not in taken)


def new_node(taken: Set[NodeId], stem: str = "n") -> NodeId:
    """Return the first name ``n1``, ``n2`` … that is not taken."""
    return next(name for n in range(1, len(taken) + 2) if (name := NodeId(f"{stem}{n}")) not in taken)


def _with(parts: tuple[PartT, ...], old: PartId, part: PartT, after: PartId | None) -> tuple[PartT, ...]:
    names = [each.id for each in parts]
    if old in names:
        return tuple(part if each.id == old else each for each in parts)
    kept = list(parts)
    kept.insert(names.index(after) + 1 if after in names else len(parts), part)
    return tuple(kept)


def _find(parts: tuple[PartT, ...], part: PartId, noun: str) -> PartT:
    for candidate in parts:
        if candidate.id == part:
            return candidate
    raise EditError(f"there is no {noun} {part} in this network")


def _swapped(parts: tuple[PartT, ...], old: PartT, new: tuple[PartT, ...]) -> tuple[PartT, ...]:
    place = parts.index(old)
    return parts[:place] + new + parts[place + 1 :]


def _fit_wiring(wiring: Wiring, channels: Channels) -> Wiring:
    """Drop the last pin names of a channel that lost bits, add free ones where it gained some."""
    if all(len(wiring[c]) == channels[c].n_pins for c in Channel):
        return wiring
    names = {c: list(wiring[c][: channels[c].n_pins]) for c in Channel}
    for channel in Channel:
        while len(names[channel]) < channels[channel].n_pins:
            taken = {wiring.h, wiring.v}.union(*names.values())
            names[channel].append(_free_pin(wiring[channel][-1] if wiring[channel] else wiring.h, taken))
    red, green, blue = (tuple(names[c]) for c in Channel)
    return Wiring(red, green, blue, wiring.h, wiring.v)


def _free_pin(like: str, taken: set[str]) -> str:
    stem = re.sub(r"\d+$", "", like)
    return next(name for n in range(len(taken) + 1) if (name := f"{stem}{n}") not in taken)


def _fit_picture(picture: Picture, channels: Channels) -> Picture:
    red, green, blue = (
        min(code, channels[c].n_codes - 1) for c, code in zip(Channel, picture.blanking, strict=True)
    )
    fitted = (red, green, blue)
    return picture if fitted == picture.blanking else replace(picture, blanking=fitted)
