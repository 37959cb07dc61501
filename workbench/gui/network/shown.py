"""The figures beside the parts: volts and amperes for the code the pins show."""

from dataclasses import dataclass
from enum import Enum

from workbench.checks.groups import is_sound
from workbench.circuit.codes import pin_states
from workbench.circuit.floating import levels_at
from workbench.circuit.network import Driver, Load, Network, NodeId, Zeros
from workbench.circuit.solution import Levels
from workbench.picture.light import FULL_SCALE_VOLTS
from workbench.pipeline.result import Result
from workbench.pipeline.screen import line_seen
from workbench.project.document import Channel, Project
from workbench.timing.mode import Axis, Polarity
from workbench.waveform.eye import lightness, srgb_from_volts
from workbench.waveform.monitor import Monitor
from workbench.waveform.sync import sync_high_volts

__all__ = ["PinState", "Shown", "Source", "pick_code", "shown_figures", "sync_volts", "taken_volts"]


class PinState(Enum):
    """What a pin does; the value is written on its key."""

    HIGH = "1"
    LOW = "0"
    FLOATING = "–"


class Source(Enum):
    """Where the code on the pins comes from."""

    HELD = "held"
    PIXEL = "pixel"
    WHITE = "white"


@dataclass(frozen=True, slots=True, eq=False)
class Shown:
    """One channel at one code."""

    code: int
    states: tuple[PinState, ...]
    """Most significant bit first."""
    leg_amps: tuple[float, ...]
    """Current out of each pin. [A]"""
    pin_volts: tuple[float, ...]
    """At each pin. [V]"""
    node_volts: dict[NodeId, float]
    """With the monitor connected. [V]"""
    loaded_volts: float
    open_volts: float
    load_amps: float
    lightness: float
    """L* on the monitor if all three colours had this level, a grey, 0 … 100. [1]"""
    grey: int
    """The sRGB byte that shows this grey here. [1]"""
    solved: bool = True
    """Whether the network has voltages at all; without them no figure but the pins' own means anything."""
    sound: bool = True
    """Whether its output has levels; without them what is shown of it and behind it means nothing."""


def pick_code(channel: Channel, result: Result, held: int | None, pixel: int | None) -> tuple[int, Source]:
    """Return the code the pins show: the held one, that of a pixel of the line, or white."""
    network = result.project.channels[channel]
    if held is not None:
        return min(held, network.n_codes - 1), Source.HELD
    line = result.scanline
    if pixel is not None and line is not None and 0 <= pixel < line.codes.shape[1]:
        return int(line.codes[tuple(Channel).index(channel), pixel]), Source.PIXEL
    return network.n_codes - 1, Source.WHITE


def shown_figures(
    network: Network,
    levels: Levels,
    driver: Driver,
    load: Load,
    code: int,
    floating: frozenset[int] = frozenset(),
    taken: tuple[float, float] = (0.0, FULL_SCALE_VOLTS),
) -> Shown:
    """Return what a channel does at a code, with some pins let go.

    Parameters
    ----------
    network, levels, driver, load
        The channel as it was solved.
    code : int
        ``0 <= code < n_codes``. [1]
    floating : frozenset of int
        Pins, counted from the most significant bit, that drive nothing.
    taken : tuple of 2 float
        What the monitor takes for black in this channel, and what above it is white. [V]
    """
    ones = pin_states(network)[code] > 0.0
    idle = PinState.LOW if driver.zeros is Zeros.DRIVEN else PinState.FLOATING
    states = [PinState.HIGH if one else idle for one in ones]
    states = [PinState.FLOATING if pin in floating else state for pin, state in enumerate(states)]
    sound, solved = is_sound(levels), not any(problem.kind.fatal for problem in levels.problems)
    at = levels_at(network, levels, driver, load, code, floating)
    levels, row, loaded = at.levels, at.row, at.volts
    amps = dict(zip(at.pins, levels.pin_amps[row].tolist(), strict=False))
    volts = dict(zip(levels.nodes, levels.node_volts[row].tolist(), strict=True))
    on_screen = (loaded - taken[0]) * FULL_SCALE_VOLTS / taken[1]
    return Shown(
        code=code,
        states=tuple(states),
        leg_amps=tuple(amps.get(pin, 0.0) for pin in range(len(ones))),
        pin_volts=tuple(volts.get(pin, 0.0) for pin in network.pins),
        node_volts=volts,
        loaded_volts=loaded,
        open_volts=float(levels.open_by_code[row]),
        load_amps=float(levels.load_amps[row]),
        lightness=float(lightness(on_screen)),
        grey=int(srgb_from_volts(on_screen)),
        solved=solved,
        sound=sound,
    )


def taken_volts(result: Result, channel: Channel, monitor: Monitor) -> tuple[float, float]:
    """Return what the monitor takes for black in a channel, and what above it is white. [V]"""
    seen = line_seen(result, monitor)
    if seen is None:
        return 0.0, FULL_SCALE_VOLTS
    return seen.black_volts[tuple(Channel).index(channel)], seen.full_volts


def sync_volts(project: Project, result: Result, pixel: int | None) -> tuple[float, float]:
    """Return what the sync lines carry at the monitor, at a pixel of the line or at rest. [V]"""
    line = result.scanline
    if pixel is not None and line is not None and 0 <= pixel < line.codes.shape[1]:
        sample = pixel * line.samples_per_pixel + line.samples_per_pixel // 2
        return float(line.volts[3, sample]), float(line.volts[4, sample])
    sync, driver = project.sync, project.driver
    h, v = (sync_high_volts(driver, each.series_ohms, each.input_ohms) for each in (sync.h, sync.v))
    return _rest(project.mode.h, h), _rest(project.mode.v, v)


def _rest(axis: Axis, high_volts: float) -> float:
    return high_volts if axis.polarity is Polarity.NEGATIVE else 0.0
