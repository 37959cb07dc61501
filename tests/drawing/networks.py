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


def wired(bits: int, *parts: str) -> Network:
    """Return a network from lines such as ``R1 bit1 n1 470`` and ``C1 out gnd 30`` (ohms, picofarads)."""
    resistors, capacitors = [], []
    for name, a, b, value in (part.split() for part in parts):
        ends = (NodeId(node) for node in (a, b))
        if name.startswith("C"):
            capacitors.append(Capacitor(PartId(name), *ends, float(value) * 1e-12))
        else:
            resistors.append(Resistor(PartId(name), *ends, float(value)))
    pins = tuple(NodeId(f"bit{k}") for k in reversed(range(bits)))
    return Network(pins, tuple(resistors), tuple(capacitors))


BRIDGE = ("R1 bit0 a 270", "R2 bit0 b 330", "R4 a out 180", "R3 b out 220", "R5 a b 470", "C1 out gnd 30")
SHAPES = {
    "bridge": wired(1, *BRIDGE),
    "two bridges": wired(
        2, *BRIDGE, "Q1 bit1 c 270", "Q2 bit1 d 330", "Q4 c out 180", "Q3 d out 220", "Q5 c d 470"
    ),
    "three parts a leg": wired(
        5,
        *("R1 bit4 out 680", "R1b bit4 v 620", "R1c v out 2000"),
        *("R2 bit3 out 4700", "R2b bit3 out 2000", "R2c bit3 out 4680"),
        *("R3 bit2 w 330", "R3b w x 330", "R3c x out 1500"),
        *("R4 bit1 y 4700", "R4b y out 468", "R4c y out 5600"),
        *("R5 bit0 z 1300", "R5b bit0 z 1300", "R5c z out 1300"),
        "C1 out gnd 30",
    ),
    "one value": wired(
        3,
        *(f"R1{letter} bit2 out 1300" for letter in "abcd"),
        "R2 bit1 out 1300",
        *("R3a bit0 w 1300", "R3b w x 1300", "R3c x y 1300", "R3d y out 1300", "RS out gnd 130"),
    ),
    "pi section": wired(
        3,
        *("R1 bit2 s 500", "R2 bit1 s 1000", "R3 bit0 s 2000", "R4 s out 100", "R5 s gnd 300"),
        *("R6 out gnd 300", "C1 s gnd 30", "C2 out gnd 30"),
    ),
    "T sections": wired(
        2, "R1 bit1 a 500", "R2 a out 500", "R3 a gnd 200", "R4 bit0 b 1e3", "R5 b out 1e3", "R6 b gnd 200"
    ),
    "two groups": wired(
        4,
        *("R1 bit3 s 500", "R2 bit2 s 1000", "R3 bit1 t 500", "R4 bit0 t 1000"),
        *("R5 s out 50", "R6 t out 400"),
    ),
    "filters": wired(
        2,
        *("R1 bit1 a 270", "R2 a b 330", "R3 b out 100", "C1 a gnd 100", "C2 b gnd 100"),
        *("R4 bit0 c 500", "C3 c out 30", "R5 c out 200", "R6 c gnd 300"),
    ),
    "beside the output": wired(
        2,
        *("R1 bit1 out 500", "R2 bit0 out 1000", "R6 out n1 2200", "R7 n1 gnd 330", "R8 n1 gnd 470"),
        *("C1 out gnd 30", "C2 bit1 gnd 100"),
    ),
}
"""Networks that are no plain ladder."""


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
