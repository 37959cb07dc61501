"""Edges at the monitor: what becomes of the drivers' ramp."""

from dataclasses import dataclass, field
from functools import lru_cache

import numpy as np

from workbench.circuit.ports import FloatArray
from workbench.circuit.response.arrival import arrival_at, arrival_instants
from workbench.circuit.response.echoes import with_echoes
from workbench.circuit.response.path import Path

__all__ = ["Edges", "edges_of"]


@dataclass(frozen=True, slots=True, eq=False)
class Edges:
    """A ramp from 0 to 1 at each pin, as it comes to the monitor."""

    time_s: FloatArray
    """Since the start of the ramp, rising but not evenly spaced, shape (n_samples,). [s]"""
    volts: FloatArray
    """Of each pin alone, shape (n_pins, n_samples). [V]"""
    even_s: FloatArray = field(default_factory=lambda: np.empty(0))
    """Even instants that resolve an edge whenever it starts, until echoes have died away; empty without
    echoes. [s]"""


@lru_cache(maxsize=8)
def edges_of(path: Path) -> Edges:
    """Return the edge of every pin: exact until the first echo comes, in even samples from there on."""
    time_s = arrival_instants(path)
    if path.line is None or not path.echoes:
        return Edges(time_s, arrival_at(path, time_s))
    even_s, summed = with_echoes(path, path.line)
    until_s = path.line.trip_s if path.line.lossy else min(path.line.trip_s, path.lags_settled_s)
    early_s = time_s[: np.searchsorted(time_s, until_s, side="right")]
    late = int(np.searchsorted(even_s, until_s))
    return Edges(
        np.concatenate((early_s, even_s[late:])),
        np.concatenate((arrival_at(path, early_s), summed[:, late:]), axis=1),
        even_s,
    )
