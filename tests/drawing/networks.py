"""Networks and boards to draw."""

from hypothesis import strategies as st

from workbench.circuit.network import (
    GROUND,
    OUTPUT,
    Cable,
    Capacitor,
    Load,
    Network,
    NodeId,
    PartId,
    Resistor,
)
from workbench.drawing import H_SERIES, V_SERIES, Board, Sheet, SyncRow
from workbench.drawing.faces import estimate

INNER = [NodeId(f"n{i}") for i in range(12)]


def board(bits: int, *, load: Load | None = None, cable: Cable | None = None) -> Board:
    """Return a board with its usual surroundings."""
    return Board(
        pins=tuple(f"P{i + 2}" for i in range(bits)),
        controller="3.3 V microcontroller",
        contact="1",
        return_contact="6",
        sync=(
            SyncRow(H_SERIES, "P7", "H sync", 100.0, "13"),
            SyncRow(V_SERIES, "P8", "V sync", 0.0, "14"),
        ),
        load=load or Load(),
        cable=cable,
    )


def sheet(width: float = 800, height: float = 760, *, base: float = 14.0, zigzag: bool = False) -> Sheet:
    """Return a sheet of the window's usual size."""
    return Sheet(width, height, base, estimate(base), zigzag)


@st.composite
def networks(draw: st.DrawFn, most_parts: int = 60) -> Network:
    """Return any network: pins, parts between any nodes, sensible or not."""
    bits = draw(st.integers(0, 8))
    pins = tuple(NodeId(f"bit{k}") for k in reversed(range(bits)))
    nodes = st.sampled_from([*pins, OUTPUT, GROUND, *INNER[: draw(st.integers(0, 12))]])
    ends = draw(st.lists(st.tuples(nodes, nodes), max_size=most_parts))
    ohms = st.sampled_from([0.5, 75.0, 267.857, 4.7e3, 1e6])
    kinds = draw(st.lists(st.booleans(), min_size=len(ends), max_size=len(ends)))
    resistors = tuple(
        Resistor(PartId(f"R{i}"), a, b, draw(ohms))
        for i, ((a, b), kept) in enumerate(zip(ends, kinds, strict=True))
        if kept
    )
    capacitors = tuple(
        Capacitor(PartId(f"C{i}"), a, b, 30e-12)
        for i, ((a, b), kept) in enumerate(zip(ends, kinds, strict=True))
        if not kept
    )
    return Network(pins, resistors, capacitors)
