"""How H and V sync share the lower lane: each drawn as a part of its own high level."""

import numpy as np
from numpy.typing import NDArray

__all__ = ["H_OFFSET", "SYNC_RANGE", "in_sync_lane"]

H_OFFSET = 1.86
SYNC_RANGE = (-0.43, 3.29)
"""V sync lies at 0 … 1 of the lane, H sync above it."""


def in_sync_lane(sync_volts: NDArray[np.float32], high_volts: tuple[float, float]) -> NDArray[np.float32]:
    """Return H and V sync in the units of the lane, shape (2, n_samples).

    Parameters
    ----------
    sync_volts : float32 array, shape (2, n_samples)
        H and V sync. [V]
    high_volts : tuple of 2 float
        Their levels when high; a line that is held at 0 V has none. [V]
    """
    scales = np.array([1.0 / high if high > 0 else 0.0 for high in high_volts], np.float32)
    placed = sync_volts * scales[:, None]
    placed[0] += np.float32(H_OFFSET)
    return placed
