"""Small edits do not shuffle the drawing: what stands where it stood is counted over many networks."""

import random
from dataclasses import replace
from difflib import SequenceMatcher

import pytest

from tests.drawing.networks import board, sheet
from workbench.circuit.network import GROUND, Network, NodeId, PartId, Resistor
from workbench.drawing import draw

PINS = tuple(NodeId(f"bit{k}") for k in (2, 1, 0))
NODES = [*PINS, NodeId("out"), GROUND, *map(NodeId, "abc")]
ADDED = PartId("added")


def some_network(chance: random.Random) -> Network:
    pairs = (chance.sample(NODES, 2) for _ in range(chance.randint(4, 14)))
    return Network(PINS, tuple(Resistor(PartId(f"R{i}"), a, b, 1e3) for i, (a, b) in enumerate(pairs)))


def reading_order(network: Network) -> list[PartId]:
    symbols = draw(network, board(network.bits), sheet(1100, 1600)).symbols
    return [
        symbol.part
        for symbol in sorted(symbols, key=lambda symbol: (symbol.body.centre.y, symbol.body.left))
        if symbol.part != ADDED
    ]


def moved(network: Network, a: NodeId, b: NodeId) -> int:
    """Return how many parts change their place in reading order when one is put in."""
    before = reading_order(network)
    longer = replace(network, resistors=(*network.resistors, Resistor(ADDED, a, b, 1e3)))
    blocks = SequenceMatcher(None, before, reading_order(longer), autojunk=False).get_matching_blocks()
    return len(before) - sum(block.size for block in blocks)


@pytest.mark.parametrize(("how", "mean"), [("to ground", 0.3), ("in parallel", 0.5), ("anywhere", 1.0)])
def test_a_part_put_in_leaves_nearly_all_others_in_their_order(how: str, mean: float) -> None:
    chance = random.Random(5)
    counts = []
    for _ in range(100):
        network = some_network(chance)
        part = chance.choice(network.resistors)
        start = part.b if part.a == GROUND else part.a
        a, b = chance.sample(NODES[:5], 2)
        ends = {"to ground": (start, GROUND), "in parallel": (part.a, part.b), "anywhere": (a, b)}
        counts.append(moved(network, *ends[how]))

    assert sum(counts) / len(counts) <= mean, "parts moved per edit, of about nine"
    assert sorted(counts)[len(counts) // 2] == 0, "half of all edits move nothing"
