"""Uneven pixels against a slow sum over edges, each at the system clock it falls on."""

from dataclasses import replace
from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.timing.search import find_mode
from workbench.waveform.frame import frame_slices
from workbench.waveform.kernel import Kernel
from workbench.waveform.scanline import render_scanline
from workbench.waveform.sync import SyncDrive
from workbench.waveform.uneven import Clocks

SAMPLES = 32
TAU = 0.15
"""Time constant of the edges. [pixels]"""
LEVELS = np.linspace(0.0, 0.7, 8, dtype=np.float32)[:, None]
SMALL = replace(
    find_mode("640x480@60"),
    h=replace(find_mode("640x480@60").h, active=40, front_porch=3, sync=4, back_porch=5),
    v=replace(find_mode("640x480@60").v, active=6, front_porch=1, sync=2, back_porch=2),
)
DIVIDERS = st.integers(4 * 64, 12 * 256).map(lambda parts: Fraction(parts, 256))


def edge(pixels):
    """Return the response to an edge at 0. [1]"""
    return np.where(pixels < 0.0, 0.0, 1.0 - np.exp(-np.maximum(pixels, 0.0) / TAU))


def kernel(divider=None, samples=SAMPLES, n_after=12):
    at = np.arange(n_after * samples) / samples
    shape = edge(at) - edge(at - 1.0)
    shape[-samples:] += 1.0 - shape.reshape(n_after, samples).sum(axis=0)
    clocks = None if divider is None else Clocks(divider)
    return Kernel(LEVELS, shape.astype(np.float32).reshape(1, n_after, samples), clocks)


def by_edges(codes, first, divider, samples):
    """Return volts sample by sample: each change of the code one edge at floor(pixel * divider) clocks."""
    at = np.arange(len(codes) * samples) / samples
    volts = np.full(len(at), float(LEVELS[codes[0], 0]))
    for pixel in range(1, len(codes)):
        by = float(LEVELS[codes[pixel], 0] - LEVELS[codes[pixel - 1], 0])
        clock = (first + pixel) * divider.numerator // divider.denominator
        volts += by * edge(at - (float(clock / divider) - first))
    return volts


@given(divider=DIVIDERS, first=st.integers(0, 10**6), seed=st.integers(0, 999))
def test_a_run_of_pixels_is_the_sum_of_its_edges(divider, first, seed):
    codes = np.random.default_rng(seed).integers(0, 8, 40)
    uneven = kernel(divider)
    out = np.empty((30, SAMPLES), np.float32)

    uneven.volts(np.concatenate([np.full(uneven.history - 10, codes[0]), codes, codes[-1:]]), out, first + 10)

    expected = by_edges(codes, first, divider, SAMPLES)[10 * SAMPLES :]
    # Edges are straight between samples: at most h²/8 of the curvature, and only where they begin h/tau.
    assert np.abs(out.ravel() - expected).max() < 0.7 * (1 / SAMPLES) / TAU
    assert np.abs(out.ravel() - expected).mean() < 0.004


@pytest.mark.parametrize("divider", [Fraction(5), Fraction(8)])
def test_a_whole_divider_makes_even_pixels(divider):
    codes = np.random.default_rng(1).integers(0, 8, 60)
    even, clocked = np.empty((40, SAMPLES), np.float32), np.empty((40, SAMPLES), np.float32)

    kernel().volts(codes[20 - kernel().history :], even)
    kernel(divider).volts(np.append(codes[20 - kernel(divider).history :], 0), clocked, 123)

    assert clocked == pytest.approx(even, abs=0.02)
    assert np.abs(clocked - even).mean() < 0.001


def test_fast_clocks_are_told_apart_to_the_half_of_a_sample():
    divider = Fraction(100 * 256 + 77, 256)
    codes = np.tile([0, 7], 20)
    out = np.empty((30, SAMPLES), np.float32)
    fast = kernel(divider)

    fast.volts(np.concatenate([np.zeros(fast.history - 10, int), codes, [0]]), out, 10)

    expected = by_edges(codes, 0, divider, SAMPLES)[10 * SAMPLES :]
    assert np.abs(out.ravel() - expected).mean() < 0.01


def test_the_frame_shows_the_lines_the_scanline_shows():
    divider = Fraction(5 * 256 + 77, 256)
    random = np.random.default_rng(3)
    picture = random.integers(0, 8, (3, SMALL.v.active, SMALL.h.active)).astype(np.uint8)
    kernels = (kernel(divider),) * 3
    slices = frame_slices(SMALL, picture, (0, 0, 0), kernels, blank_lines=2)
    lines = np.concatenate([piece.volts.copy() for piece in slices], axis=1)
    codes = np.zeros((SMALL.v.active + 2, 3, SMALL.h.total), int)
    codes[: SMALL.v.active, :, SMALL.h.blanking :] = np.moveaxis(picture, 1, 0)

    for row in range(1, SMALL.v.active + 2):
        shown = render_scanline(
            SMALL, row + 1, codes[row], codes[row - 1], kernels=kernels, sync=SyncDrive(3.3, 3.3, 1e-9)
        )
        assert lines[:, row] == pytest.approx(shown.volts[:3], abs=1e-5)


def test_sync_edges_fall_on_the_clock():
    divider = Fraction(5 * 256 + 77, 256)
    kernels = (kernel(divider),) * 3
    blank = np.zeros((3, SMALL.h.total), int)

    line = render_scanline(SMALL, 3, blank, blank, kernels=kernels, sync=SyncDrive(3.3, 3.3, 0.0))

    first = 2 * SMALL.h.total
    changes = np.flatnonzero(np.diff(line.volts[3])) + 1
    expected = [
        (float((first + pixel) * divider.numerator // divider.denominator / divider) - first) * SAMPLES
        for pixel in SMALL.h.edges[:2]
    ]
    assert changes == pytest.approx(expected, abs=1.0)
    assert changes[0] != SMALL.h.edges[0] * SAMPLES
