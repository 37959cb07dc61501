"""Hypothesis strategies: projects to try things on."""

from hypothesis import strategies as st

from workbench.circuit.ladders import r2r, segmented, weighted
from workbench.circuit.network import Cable, Driver, Load, Network, Zeros
from workbench.picture.scene import REPEATS, Card, Picture
from workbench.project.document import Channels, MonitorRange, Project, Skews, SyncLine, SyncLines, Wiring
from workbench.timing.mode import Axis, Mode, Polarity

__all__ = ["modes", "networks", "projects"]

OHMS = st.floats(1.0, 1e6)
NAMES = st.text(st.characters(categories=["L", "N", "P", "S"]), min_size=1, max_size=20)


def maybe(low: float, high: float) -> st.SearchStrategy[float]:
    """Draw 0, or a value between two."""
    return st.just(0.0) | st.floats(low, high)


@st.composite
def networks(draw: st.DrawFn) -> Network:
    """Draw a ladder of 1 to 8 bits with any of the optional parts."""
    bits = draw(st.integers(1, 8))
    shunt, series = draw(st.none() | OHMS), draw(st.none() | OHMS)
    farads = draw(st.sampled_from([0.0, 1e-12, 30e-12]))
    shape = draw(st.sampled_from(["weighted", "r2r", "segmented"]))
    if shape == "r2r":
        return r2r(bits, draw(OHMS), shunt_ohms=shunt, series_ohms=series, node_farads=farads)
    if shape == "segmented" and bits > 1:
        several = draw(st.integers(2, min(bits, 3)))
        ohms = draw(st.lists(OHMS, min_size=1 + bits - several, max_size=1 + bits - several))
        return segmented(bits, several, ohms, shunt_ohms=shunt, series_ohms=series, node_farads=farads)
    values = draw(st.lists(OHMS, min_size=bits, max_size=bits))
    return weighted(bits, values, shunt_ohms=shunt, series_ohms=series, node_farads=farads)


@st.composite
def axes(draw: st.DrawFn) -> Axis:
    """Draw the counts of one direction."""
    active, porch, sync, back = (draw(st.integers(low, high)) for low, high in _COUNTS)
    return Axis(active, porch, sync, back, draw(st.sampled_from(Polarity)))


_COUNTS = ((1, 2000), (0, 200), (1, 200), (0, 200))


@st.composite
def modes(draw: st.DrawFn) -> Mode:
    """Draw a progressive display mode of any counts."""
    clock = draw(st.integers(1_000_000, 300_000_000))
    return Mode(draw(NAMES), "drawn", clock, draw(axes()), draw(axes()))


@st.composite
def drivers(draw: st.DrawFn) -> Driver:
    """Draw an output stage."""
    return Driver(
        supply_volts=draw(st.floats(1.0, 12.0)),
        high_ohms=draw(maybe(1e-3, 200.0)),
        low_ohms=draw(maybe(1e-3, 200.0)),
        zeros=draw(st.sampled_from(Zeros)),
        rise_s=draw(maybe(1e-12, 1e-7)),
        pin_limit_amps=draw(st.none() | st.floats(1e-3, 1.0)),
        total_limit_amps=draw(st.none() | st.floats(1e-3, 1.0)),
    )


DIVIDERS = st.integers(257, 64 * 256).filter(lambda parts: parts % 256).map(lambda parts: parts / 256)
"""Fractional dividers of 8 bits behind the point. [1]"""


@st.composite
def projects(draw: st.DrawFn) -> Project:
    """Draw a valid project."""
    mode = draw(modes())
    linked = draw(st.booleans())
    one = draw(networks())
    red, green, blue = (one, one, one) if linked else (one, draw(networks()), draw(networks()))
    pins = [f"P{i}" for i in range(red.n_pins + green.n_pins + blue.n_pins + 2)]
    green_at, blue_at = red.n_pins, red.n_pins + green.n_pins
    codes = tuple(draw(st.integers(0, network.n_codes - 1)) for network in (red, green, blue))
    unit = st.floats(0.0, 1.0)
    skews = [tuple(draw(st.lists(maybe(1e-12, 1e-8), max_size=n.n_pins))) for n in (red, green, blue)]
    return Project(
        name=draw(NAMES),
        mode=mode,
        channels=Channels(red, green, blue),
        wiring=Wiring(
            tuple(pins[:green_at]), tuple(pins[green_at:blue_at]), tuple(pins[blue_at:-2]), pins[-2], pins[-1]
        ),
        driver=draw(drivers()),
        load=Load(draw(st.none() | OHMS), draw(st.integers(1, 4)), draw(maybe(1e-15, 1e-9))),
        cable=draw(st.none() | st.builds(Cable, st.floats(0.01, 100.0))),
        sync=SyncLines(*(SyncLine(draw(maybe(1.0, 1e4)), draw(st.none() | OHMS)) for _ in "hv")),
        linked=linked,
        picture=Picture(
            draw(st.sampled_from(Card)),
            (draw(unit), draw(unit), draw(unit)),
            codes,
            repeat_pixels=draw(st.sampled_from(REPEATS)),
            repeat_lines=draw(st.sampled_from(REPEATS)),
        ),
        scanline=draw(st.integers(1, mode.v.total)),
        skews=Skews(*skews),
        monitor=draw(st.none() | st.just(MonitorRange(30e3, 70e3, 50.0, 75.0))),
        pixel_divider=draw(st.none() | DIVIDERS),
    )
