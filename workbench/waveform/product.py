"""The matrix product behind every waveform, kept on one thread."""

import numpy as np
from numpy.typing import NDArray

__all__ = ["multiply"]

Float32Array = NDArray[np.float32]

_ONE_THREAD = 1 << 18
"""Multiplications of one product that no matrix library we met shares among threads. [1]"""


def multiply(rows: Float32Array, matrix: Float32Array, out: Float32Array) -> None:
    """Write ``rows @ matrix``, computed on this thread alone.

    Parameters
    ----------
    rows : float32 array, shape (n_rows, depth)
    matrix : float32 array, shape (depth, width)
    out : float32 array, shape (n_rows, width)
        Contiguous. [as the product]

    Notes
    -----
    A matrix library shares a large product among threads that wait for each other by spinning. On a
    machine whose other processors are busy that costs a hundred times what it saves, just when a
    window wants to paint. As a stack of small products it stays alone, at full speed.
    """
    depth, width = matrix.shape
    part = max(1, _ONE_THREAD // matrix.size)
    whole = len(rows) // part * part
    stack = rows[:whole].reshape(-1, part, depth)
    np.matmul(stack, matrix, out=out[:whole].reshape(-1, part, width))
    np.matmul(rows[whole:], matrix, out=out[whole:])
