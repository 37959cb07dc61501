"""What a project must hold to: every range, and every tie between its fields.

Edits keep to these by themselves; a file is checked against them when it is read.
"""

from collections.abc import Iterator, Sequence
from dataclasses import fields, is_dataclass
from typing import Any

from workbench.circuit.bands import Band
from workbench.circuit.ladders import MOST_BITS, MOST_THERMOMETER
from workbench.circuit.network import Cable, Capacitor, Driver, Load, Network, Resistor
from workbench.errors import EditError, FileError, TimingError
from workbench.picture.fit import check_size
from workbench.picture.images import image_pixels
from workbench.picture.scene import MOST_TRANSFER, REPEATS, Image
from workbench.project.document import Channel, MonitorRange, Project, SyncLine
from workbench.project.limits import (
    AMPS,
    CABLE_LOSS,
    CABLE_METRES,
    CABLE_OHMS,
    FARADS,
    INPUT_FARADS,
    MONITORS,
    MOST_PARTS,
    OHMS,
    PIN_OHMS,
    PIXEL_DIVIDER,
    RATE_HZ,
    RISE_S,
    SERIES_OHMS,
    SKEW_S,
    SUPPLY_VOLTS,
    TOLERANCE,
    UNIT,
    VELOCITY,
    WATTS,
    Range,
    check_name,
)
from workbench.timing.clock.chip import MOST_FRACTION_BITS
from workbench.timing.custom import checked

__all__ = ["Flaw", "first_flaw"]

Flaw = tuple[str, str]
"""Where in the project, as ``channels.red.resistors[3].ohms``, and a clause that says what is wrong."""

_ANY_TEXT = {(Image, "path")}
"""Texts that are no names: the place of a file is as long as it is, with any signs."""
_RANGES: dict[tuple[type, str], Range] = {
    (Resistor, "ohms"): OHMS,
    (Resistor, "tolerance"): TOLERANCE,
    (Resistor, "rating_watts"): WATTS,
    (Capacitor, "farads"): FARADS,
    (Driver, "supply_volts"): SUPPLY_VOLTS,
    (Driver, "high_ohms"): PIN_OHMS,
    (Driver, "low_ohms"): PIN_OHMS,
    (Driver, "rise_s"): RISE_S,
    (Driver, "pin_limit_amps"): AMPS,
    (Driver, "total_limit_amps"): AMPS,
    (Load, "ohms"): OHMS,
    (Load, "monitors"): MONITORS,
    (Load, "farads"): INPUT_FARADS,
    (Cable, "metres"): CABLE_METRES,
    (Cable, "ohms"): CABLE_OHMS,
    (Cable, "velocity"): VELOCITY,
    (Cable, "loss_db_per_m"): CABLE_LOSS,
    (Cable, "loss_at_hz"): RATE_HZ,
    (SyncLine, "series_ohms"): SERIES_OHMS,
    (SyncLine, "input_ohms"): OHMS,
    (Band, "half_width"): TOLERANCE,
    (MonitorRange, "h_min_hz"): RATE_HZ,
    (MonitorRange, "h_max_hz"): RATE_HZ,
    (MonitorRange, "v_min_hz"): RATE_HZ,
    (MonitorRange, "v_max_hz"): RATE_HZ,
    (MonitorRange, "max_pixel_clock_hz"): RATE_HZ,
    (Project, "pixel_divider"): PIXEL_DIVIDER,
}
"""The range of every number that stands alone; those tied to others are checked below."""


def first_flaw(project: Project) -> Flaw | None:
    """Return the first thing that is not as it must be, in the order of the document."""
    return next(_flaws(project), None)


def _flaws(project: Project) -> Iterator[Flaw]:
    yield from _walk(project, "")
    yield from _mode_flaws(project)
    for channel in Channel:
        yield from _network_flaws(project.channels[channel], f"channels.{channel.value}")
    yield from _wiring_flaws(project)
    yield from _skew_flaws(project)
    yield from _picture_flaws(project)
    if project.linked and len({project.channels[channel] for channel in Channel}) > 1:
        yield "linked", "says that all channels are alike, but they differ: write false"
    if not 1 <= project.scanline <= project.mode.v.total:
        yield "scanline", f"is {project.scanline}, but the mode has scanlines 1 to {project.mode.v.total}"
    if project.pixel_divider is not None:
        yield from _divider_flaws(project.pixel_divider)
    if (monitor := project.monitor) is not None:
        for low, high in (("h_min_hz", "h_max_hz"), ("v_min_hz", "v_max_hz")):
            if getattr(monitor, low) > getattr(monitor, high):
                yield f"monitor.{low}", f"is above {high}: exchange the two"


def _walk(value: Any, place: str) -> Iterator[Flaw]:
    """Check each number against its range and each text as a name."""
    if isinstance(value, tuple):
        for index, item in enumerate(value):
            yield from _walk(item, f"{place}[{index}]")
    elif is_dataclass(value):
        for field in fields(value):
            inner = getattr(value, field.name)
            where = f"{place}.{field.name}".lstrip(".")
            if (type(value), field.name) in _ANY_TEXT:
                continue
            limits = _RANGES.get((type(value), field.name))
            if limits is not None and inner is not None and inner not in limits:
                yield where, limits.refusal(inner)
            yield from _walk(inner, where)
    elif isinstance(value, str):
        try:
            check_name(value, "the text")
        except EditError as error:
            yield place, str(error).removeprefix("the text ")


def _mode_flaws(project: Project) -> Iterator[Flaw]:
    try:
        checked(project.mode)
    except TimingError as error:
        yield "mode", f"is not possible: {error}"
    if project.mode.interlaced:
        yield (
            "mode.interlaced",
            "is true, but interlaced modes are not simulated here: choose a progressive one",
        )


def _divider_flaws(divider: float) -> Iterator[Flaw]:
    parts = 1 << MOST_FRACTION_BITS
    if divider % 1.0 == 0.0:
        yield "pixel_divider", f"is {divider:g}, a whole number, which leaves pixels even: write null"
    elif divider * parts % 1.0:
        yield "pixel_divider", f"is {divider}, which is no whole number of 1/{parts}: correct it"


def _network_flaws(network: Network, place: str) -> Iterator[Flaw]:
    if network.thermometer:
        yield from _thermometer_flaws(network, place)
    elif network.bits > MOST_BITS:
        yield f"{place}.pins", f"has {network.bits} pins; a channel has at most {MOST_BITS}"
    if len(network.resistors) + len(network.capacitors) > MOST_PARTS:
        yield f"{place}.resistors", f"and capacitors are more than the {MOST_PARTS} parts a channel may have"
    yield from _doubles(network.pins, f"{place}.pins")
    names: list[str] = []
    for kind in ("resistors", "capacitors"):
        for index, part in enumerate(getattr(network, kind)):
            where = f"{place}.{kind}[{index}]"
            if part.id in names:
                yield (
                    f"{where}.id",
                    f"is {part.id}, as another part of this channel is: give it another",
                )
            if part.a == part.b:
                yield where, f"has both ends on the node {part.a}: its ends must differ"
            names.append(part.id)


def _thermometer_flaws(network: Network, place: str) -> Iterator[Flaw]:
    if not 2 <= network.thermometer <= MOST_THERMOMETER:
        yield (
            f"{place}.thermometer",
            f"is {network.thermometer}, not 2 to {MOST_THERMOMETER}, or 0 for none",
        )
        return
    least = network.n_thermometer_pins
    most = least + MOST_BITS - network.thermometer
    if not least <= network.n_pins <= most:
        yield (
            f"{place}.pins",
            f"has {network.n_pins} pins, but {network.thermometer} thermometer bits take {least} to {most}",
        )


def _wiring_flaws(project: Project) -> Iterator[Flaw]:
    wiring = project.wiring
    names: list[str] = []
    for channel in Channel:
        count, given = project.channels[channel].n_pins, len(wiring[channel])
        if given != count:
            yield (
                f"wiring.{channel.value}",
                f"names {_pins(given)} and the channel has {count}: name each once",
            )
        names += wiring[channel]
    yield from _doubles((*names, wiring.h, wiring.v), "wiring")


def _pins(count: int) -> str:
    return "1 pin" if count == 1 else f"{count} pins"


def _skew_flaws(project: Project) -> Iterator[Flaw]:
    for channel in Channel:
        skews_s, count = project.skews[channel], project.channels[channel].n_pins
        if len(skews_s) > count:
            yield f"skews.{channel.value}", f"has {len(skews_s)} values, but the channel has {_pins(count)}"
        for index, skew_s in enumerate(skews_s):
            if skew_s not in SKEW_S:
                yield f"skews.{channel.value}[{index}]", SKEW_S.refusal(skew_s)


def _picture_flaws(project: Project) -> Iterator[Flaw]:
    picture = project.picture
    for index, (channel, code) in enumerate(zip(Channel, picture.blanking, strict=True)):
        highest = project.channels[channel].n_codes - 1
        if not 0 <= code <= highest:
            yield f"picture.blanking[{index}]", f"is {code}, but {channel.value} has codes 0 to {highest}"
    for name in ("repeat_pixels", "repeat_lines"):
        if (count := getattr(picture, name)) not in REPEATS:
            yield f"picture.{name}", f"is {count}, but a pixel or line is sent 1, 2 or 4 times"
    if picture.image is not None:
        yield from _image_flaws(picture.image)
    if len(picture.transfer) == 1 or len(picture.transfer) > MOST_TRANSFER:
        yield "picture.transfer", f"has {len(picture.transfer)} values: give it 2 to {MOST_TRANSFER}, or none"
    for index, part in enumerate(picture.transfer):
        if part not in UNIT:
            yield f"picture.transfer[{index}]", UNIT.refusal(part)
    for index, part in enumerate(picture.colour):
        if part not in UNIT:
            yield f"picture.colour[{index}]", UNIT.refusal(part)


def _image_flaws(image: Image) -> Iterator[Flaw]:
    try:
        check_size(image.width, image.height, image.name)
        if image.content:
            image_pixels(image)
    except FileError as error:
        yield "picture.image", f"does not fit: {error}"
    if not image.content and not image.path:
        yield "picture.image", "has neither content nor path: load the image again"


def _doubles(names: Sequence[str], place: str) -> Iterator[Flaw]:
    for index, name in enumerate(names):
        if name in names[:index]:
            yield place, f"has {name} twice: give each pin a name of its own"
