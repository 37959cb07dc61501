"""In what order the runs of a network are drawn: each leg with all that serves it alone, pin by pin."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

from workbench.circuit.network import GROUND, Network, NodeId
from workbench.drawing.runs import Run
from workbench.drawing.spines import Spine, heads

__all__ = ["Blocks", "sort_runs"]


@dataclass(slots=True)
class Blocks:
    """Runs sorted by the pin or the node of a spine whose rows they belong to."""

    pins: list[list[Run]]
    """Those of each pin, in the order in which they are met on the way from it."""
    spine: dict[NodeId, list[Run]]
    loose: list[Run] = field(default_factory=list)
    """Those that no pin reaches."""


def sort_runs(network: Network, spines: Iterable[Spine], runs: Iterable[Run]) -> Blocks:
    """Return the runs in blocks.

    What lies between pins and the nodes that all share, the output first of all, belongs to the
    last of the pins that get there: so a leg stays together, and what joins two legs comes after both.
    """
    upright = heads(spines)
    blocks = Blocks([[] for _ in network.pins], {node: [] for node in upright})
    number = {pin: index for index, pin in reversed(list(enumerate(network.pins)))}
    shared = {network.output, GROUND, *network.pins, *upright}
    runs = list(runs)
    last = _last_pins(network, runs, shared)
    for run in runs:
        # A wire between two buses of one node belongs to that node, a run to its first pin.
        homes = [number[node] for node in run.nodes if node in number]
        homes = homes[:1] or [last[node] for node in run.nodes if node in last]
        spines_here = [node for node in run.nodes if node in upright]
        if homes:
            blocks.pins[homes[0]].append(run)
        elif spines_here:
            blocks.spine[spines_here[0]].append(run)
        else:
            blocks.loose.append(run)
    legs = zip(network.pins, blocks.pins, strict=True)
    blocks.pins = [list(_followed(pin, own, shared)) for pin, own in legs]
    return blocks


def _last_pins(network: Network, runs: list[Run], shared: set[NodeId]) -> dict[NodeId, int]:
    """Return the last pin that gets to each inner node without passing a shared one."""
    last: dict[NodeId, int] = {}
    for index, pin in enumerate(network.pins):
        edge, met = [pin], {pin}
        while edge:
            here = edge.pop()
            far = dict.fromkeys(run.other(here) for run in runs if here in run.nodes)
            fresh = [node for node in far if node not in met | shared]
            edge += fresh
            met.update(fresh)
        last.update(dict.fromkeys(met - {pin}, index))
    return last


def _followed(start: NodeId, runs: list[Run], shared: set[NodeId]) -> Iterator[Run]:
    """Yield runs as they are met from a node on, each way to its end before the next one."""
    left = dict.fromkeys(map(id, runs))

    def follow(node: NodeId) -> Iterator[Run]:
        here = [run for run in runs if node in run.nodes]
        for run in sorted(here, key=lambda run: (GROUND in run.nodes, not run.steps)):
            if id(run) in left:
                del left[id(run)]
                yield run
                if (far := run.other(node)) not in shared:
                    yield from follow(far)

    yield from follow(start)
    yield from (run for run in runs if id(run) in left)
