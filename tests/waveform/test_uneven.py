"""Uneven pixels against a slow sum over edges, each at the system clock it falls on."""

from dataclasses import replace
from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.timing.clock.pixels import pixel_starts
from workbench.timing.search import find_mode
from workbench.waveform.eye import strip_colours
from workbench.waveform.frame import frame_slices
from workbench.waveform.kernel import Kernel
from workbench.waveform.reading import reading_at
from workbench.waveform.scanline import render_scanline
from workbench.waveform.sync import SyncDrive
from workbench.waveform.uneven import FINER

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


def kernel(divider=None, samples=SAMPLES, n_after=12, finer=None):
    finer = finer or (1 if divider is None else FINER)
    at = np.arange(n_after * samples * finer) / (samples * finer)
    shape = edge(at) - edge(at - 1.0)
    shape[-samples * finer :] += 1.0 - shape.reshape(n_after, -1).sum(axis=0)
    shapes = shape.astype(np.float32).reshape(1, n_after, -1)
    return Kernel(LEVELS, shapes, divider, finer)


def line_of(codes, number, before, divider, samples=SAMPLES):
    kernels = (kernel(divider, samples),) * 3
    return render_scanline(SMALL, number, codes, before, kernels=kernels, sync=SyncDrive(3.3, 3.3, 1e-9))


def by_edges(codes, first, divider, samples):
    """Return volts sample by sample: each change of the code one edge at floor(pixel * divider) clocks."""
    at = np.arange(len(codes) * samples) / samples
    volts = np.full(len(at), float(LEVELS[codes[0], 0]))
    for pixel in range(1, len(codes)):
        by = float(LEVELS[codes[pixel], 0] - LEVELS[codes[pixel - 1], 0])
        clock = (first + pixel) * divider.numerator // divider.denominator
        volts += by * edge(at - (float(clock / divider) - first))
    return volts


@given(divider=DIVIDERS, first=st.integers(0, 10**9), seed=st.integers(0, 999))
def test_a_run_of_pixels_is_the_sum_of_its_edges(divider, first, seed):
    codes = np.random.default_rng(seed).integers(0, 8, 40)
    uneven = kernel(divider)
    out = np.empty((30, SAMPLES), np.float32)

    uneven.volts(np.concatenate([np.full(uneven.history - 10, codes[0]), codes, codes[-1:]]), out, first + 10)

    expected = by_edges(codes, first, divider, SAMPLES)[10 * SAMPLES :]
    # Off by the chord of an edge's first h / 4, and by 1/128 of a clock: of 0.7 V at a slope of 1 / TAU.
    bound = (0.25 / (FINER * SAMPLES) + 1 / (128 * float(divider))) / TAU
    assert np.abs(out.ravel() - expected).max() < 0.7 * bound
    assert np.abs(out.ravel() - expected).mean() < 0.002


@given(parts=st.sampled_from([2, 8, 32, 64]), whole=st.integers(1, 400), seed=st.integers(0, 999))
def test_coarse_fractions_are_exact_to_the_chord(parts, whole, seed):
    divider = whole + Fraction(1 + 2 * (seed % (parts // 2)), parts)
    codes = np.random.default_rng(seed).integers(0, 8, 40)
    uneven = kernel(divider)
    out = np.empty((30, SAMPLES), np.float32)

    uneven.volts(np.concatenate([np.full(uneven.history - 10, codes[0]), codes, codes[-1:]]), out, 10)

    expected = by_edges(codes, 0, divider, SAMPLES)[10 * SAMPLES :]
    assert np.abs(out.ravel() - expected).max() < 0.7 * 0.25 / (FINER * SAMPLES) / TAU


def test_a_whole_divider_makes_even_pixels():
    codes = np.random.default_rng(1).integers(0, 8, 60)
    even, clocked = np.empty((40, SAMPLES), np.float32), np.empty((40, SAMPLES), np.float32)

    kernel().volts(codes[20 - kernel().history :], even)
    kernel(Fraction(5)).volts(np.append(codes[20 - kernel().history :], 0), clocked, 123)

    assert clocked == pytest.approx(even, abs=1e-5)


def test_a_trail_longer_than_what_is_told_apart_settles_all_the_same():
    slow = kernel(Fraction(5 * 256 + 77, 256), n_after=200)
    out = np.empty((30, SAMPLES), np.float32)

    slow.volts(np.full(slow.history + 31, 7), out, 77)

    assert out == pytest.approx(0.7, abs=1e-5)


def test_thinned_volts_are_some_of_the_volts():
    uneven = kernel(Fraction(169, 32))
    codes = np.random.default_rng(4).integers(0, 8, uneven.history + 21)
    all_, some = np.empty((20, SAMPLES), np.float32), np.empty((20, 8), np.float32)

    uneven.volts(codes, all_, 5)
    uneven.thinned(8).volts(codes, some, 5)

    assert some == pytest.approx(all_[:, :: SAMPLES // 8], abs=1e-6)


PICTURE = np.random.default_rng(3).integers(0, 8, (3, SMALL.v.active, SMALL.h.active)).astype(np.uint8)
FINE, COARSE = Fraction(5 * 256 + 77, 256), Fraction(169, 32)


def frame(divider, picture=PICTURE, **options):
    slices = frame_slices(SMALL, picture, (0, 0, 0), (kernel(divider),) * 3, **options)
    return np.concatenate([piece.volts.copy() for piece in slices], axis=1)


# Lines and blocks of a fine divider are each put on the nearest of 64 places.
@pytest.mark.parametrize(("divider", "bound"), [(COARSE, 1e-5), (FINE, 0.7 / 64 / 5.3 / TAU)], ids=str)
def test_the_frame_shows_the_lines_the_scanline_shows(divider, bound):
    lines = frame(divider, blank_lines=2)
    codes = np.zeros((SMALL.v.active + 2, 3, SMALL.h.total), int)
    codes[: SMALL.v.active, :, SMALL.h.blanking :] = np.moveaxis(PICTURE, 1, 0)

    for row in range(1, SMALL.v.active + 2):
        shown = line_of(codes[row], row + 1, codes[row - 1], divider)
        assert lines[:, row] == pytest.approx(shown.volts[:3], abs=bound)


def test_lines_that_are_not_steady_differ():
    alike = np.repeat(PICTURE[:, :1], 3, axis=1)

    assert SMALL.h.total % FINE.denominator
    assert np.abs(np.diff(frame(FINE, alike), axis=1)[:, :, 200:]).max() > 0.05
    assert np.abs(np.diff(frame(Fraction(21, 4), alike), axis=1)[:, :, 200:]).max() < 1e-6


def test_some_rows_of_a_picture_are_those_of_the_whole(monkeypatch):
    monkeypatch.setattr("workbench.waveform.frame._SLICE_PIXELS", 100)
    rows = np.array([1, 3, 5])

    some, whole = frame(FINE, PICTURE[:, rows], numbers=rows), frame(FINE)

    # From the picture on: the line before another one trails into the front porch.
    active = slice(SMALL.h.blanking * SAMPLES, -SAMPLES)
    assert some[:, :, active] == pytest.approx(whole[:, rows, active], abs=0.7 / 64 / 5.3 / TAU)


def test_sync_edges_start_on_the_clock():
    blank, pixel_s = np.zeros((3, SMALL.h.total), int), SMALL.pixel_s
    sync = SyncDrive(3.3, 3.3, rise_s=0.2 * pixel_s)

    line = render_scanline(SMALL, 3, blank, blank, kernels=(kernel(FINE),) * 3, sync=sync)

    first = 2 * SMALL.h.total
    for pixel, falls in zip(SMALL.h.edges[:2], (True, False), strict=True):
        clock = (first + pixel) * FINE.numerator // FINE.denominator
        middle = (float(clock / FINE) - first + 0.1) * SAMPLES
        around = slice(int(middle) - 2, int(middle) + 4)
        height = (3.3 - line.volts[3] if falls else line.volts[3])[around]
        at = around.start + np.interp(1.65, height, np.arange(len(height)))
        assert at == pytest.approx(middle, abs=1e-3)


def test_a_reading_names_the_uneven_pixel_it_lies_in():
    blank = np.zeros((3, SMALL.h.total), int)
    line = line_of(blank, 3, blank, FINE)
    starts = pixel_starts(FINE, 2 * SMALL.h.total, SMALL.h.total)

    for pixel in (1, 7, 30, SMALL.h.total - 1):
        for place, found in ((starts[pixel] - 1e-6, pixel - 1), (starts[pixel] + 1e-6, pixel)):
            assert reading_at(line, place * SMALL.pixel_s).pixel == found


def test_samples_lie_in_the_pixel_that_started_last():
    blank = np.zeros((3, SMALL.h.total), int)
    line, even = line_of(blank, 3, blank, FINE), line_of(blank, 3, blank, None)

    inside = line.sample_pixels[None, :] == np.arange(SMALL.h.total)[:, None]
    lengths = np.diff(pixel_starts(FINE, 2 * SMALL.h.total, SMALL.h.total)) * SAMPLES
    assert np.abs(inside.sum(axis=1) - lengths)[1:-1].max() < 1.0
    assert (even.sample_pixels == np.arange(SMALL.h.total * SAMPLES) // SAMPLES).all()


def test_the_eye_sees_each_uneven_pixel_by_its_own_samples():
    codes = np.zeros((3, SMALL.h.total), int)
    codes[:, SMALL.h.blanking :: 2] = 7

    line, even = (line_of(codes, 3, codes, divider) for divider in (Fraction(9, 4), None))

    colours, wanted = (strip_colours(shown).astype(int) for shown in (line, even))
    # Short pixels of two clocks, 0.89 px, settle a little less.
    assert np.abs(colours - wanted)[SMALL.h.blanking :].max() < 40
    assert colours[SMALL.h.blanking :: 2].min() - colours[SMALL.h.blanking + 1 :: 2].max() > 120


def test_the_ideal_steps_where_uneven_pixels_start():
    codes = np.tile([0, 7], (3, SMALL.h.total // 2))
    line = line_of(codes, 3, codes, FINE)

    places = (np.flatnonzero(np.diff(line.ideal_trace[0])) + 1) / SAMPLES
    assert places - line.starts[1:-1] == pytest.approx(0.5 / SAMPLES, abs=0.5 / SAMPLES)
