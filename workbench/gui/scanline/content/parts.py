"""Which pin a part of the network carries on."""

from workbench.circuit.network import GROUND, Network, NodeId, PartId

__all__ = ["pin_of_part"]


def pin_of_part(network: Network, part: PartId) -> int | None:
    """Return the pin whose leg a part belongs to, counted from the first; none where it serves several.

    A leg is the part on the pin itself, and what follows it in series as far as no other pin joins.

    Parameters
    ----------
    network : Network
        The channel's network.
    part : PartId
        A resistor of it.
    """
    ends = next(({r.a, r.b} for r in network.resistors if r.id == part), None)
    if ends is None:
        return None
    own = [i for i, pin in enumerate(network.pins) if pin in ends]
    if len(own) == 1:
        return own[0]
    stops = {network.output, GROUND}
    reached: set[NodeId] = set()
    waiting = [node for node in ends if node not in stops]
    while waiting:
        node = waiting.pop()
        reached.add(node)
        for resistor in network.resistors:
            if node in (resistor.a, resistor.b):
                other = resistor.b if node == resistor.a else resistor.a
                if other not in stops and other not in reached:
                    waiting.append(other)
    pins = [i for i, pin in enumerate(network.pins) if pin in reached]
    return pins[0] if len(pins) == 1 else None
