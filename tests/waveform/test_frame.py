"""Whole frames: the block product gives what single lines give, in bounded memory."""

import tracemalloc
from dataclasses import replace

import numpy as np
import pytest

from tests.waveform.pulses import rc_pulse
from tests.waveform.test_scanline import BITS, LEVELS, STATES, SYNC, VGA, WEIGHTS, card_line, kernels
from workbench.circuit.codes import bits_by_code
from workbench.picture.cards import card_codes
from workbench.picture.scene import Card, Picture
from workbench.waveform.frame import frame_slices
from workbench.waveform.kernel import pixel_kernel
from workbench.waveform.scanline import render_scanline

SMALL = replace(
    VGA,
    h=replace(VGA.h, active=37, front_porch=3, sync=5, back_porch=6),
    v=replace(VGA.v, active=70, front_porch=2, sync=2, back_porch=4),
)


def frame(mode, picture, kernels, **options):
    codes = card_codes(picture, mode.h.active, mode.v.active, BITS)
    slices = frame_slices(mode, codes, picture.blanking, kernels, **options)
    return np.concatenate([lines.volts.copy() for lines in slices], axis=1)


@pytest.mark.parametrize("slow", [False, True], ids=["short pulses", "pulses longer than a line"])
def test_every_line_is_the_scanline_of_the_bench(slow):
    shapes = [2e-9, 3e-9, 5e-9, 6e-9, 8e-9] if not slow else 400e-9
    pulse = rc_pulse(WEIGHTS, tau_s=shapes, samples=8, n_after=8 if not slow else 90, pixel_s=VGA.pixel_s)
    three = (pixel_kernel(LEVELS, STATES, pulse),) * 3
    picture = Picture(Card.ALL_CODES, blanking=(0, 3, 1))

    volts = frame(SMALL, picture, three, blank_lines=SMALL.v.blanking)

    assert volts.shape == (3, SMALL.v.total, SMALL.h.total * 8)
    for number in (3, 4, 40, 70, 71, 78):
        codes, before = (card_line(SMALL, picture, n) for n in (number, number - 1))
        line = render_scanline(SMALL, number, codes, before, kernels=three, sync=SYNC)
        # A trail of 90 pixels reaches past the line before, which a single line takes as lasting.
        bound = 1e-6 if not slow else 0.7 * np.exp(-SMALL.h.total * VGA.pixel_s / 400e-9)
        np.testing.assert_allclose(volts[:, number - 1], line.volts[:3], atol=bound)


def test_slices_join_without_a_seam(monkeypatch):
    picture = Picture(Card.GREY_RAMP)
    whole = frame(SMALL, picture, kernels(samples=8))

    monkeypatch.setattr("workbench.waveform.frame._SLICE_PIXELS", 100)
    in_pieces = frame(SMALL, picture, kernels(samples=8))

    np.testing.assert_array_equal(in_pieces, whole)


def test_slices_say_where_they_are():
    codes = card_codes(Picture(), VGA.h.active, VGA.v.active, BITS)

    firsts = [lines.first for lines in frame_slices(VGA, codes, (0, 0, 0), kernels(samples=8))]

    assert firsts == list(range(0, 480, 30))


def test_channels_may_have_different_bits_and_shapes():
    one_bit = pixel_kernel(
        bits_by_code(1)[:, 0] * 0.7, bits_by_code(1), rc_pulse([0.7], tau_s=9e-9, samples=8, n_after=12)
    )
    red, green, _ = kernels(samples=8)
    codes = np.ones((3, 4, SMALL.h.active), np.uint8)

    (lines,) = frame_slices(SMALL, codes, (0, 0, 0), (red, green, one_bit))

    assert lines.volts[:, 3, -1] == pytest.approx([LEVELS[1], LEVELS[1], 0.7], abs=1e-4)


def test_a_frame_of_two_million_pixels_takes_a_few_megabytes():
    full_hd = replace(VGA, h=replace(VGA.h, active=1920), v=replace(VGA.v, active=1080))
    codes = np.zeros((3, 1080, 1920), np.uint8)
    tracemalloc.start()

    for _ in frame_slices(full_hd, codes, (0, 0, 0), kernels(samples=8, n_after=20)):
        pass
    _, peak = tracemalloc.get_traced_memory()
    tracemalloc.stop()

    assert peak < 12e6


@pytest.mark.parametrize("size", [(1, 1), (1, 5), (5, 1)], ids=str)
def test_tiny_frames(size):
    width, height = size
    tiny = replace(SMALL, h=replace(SMALL.h, active=width), v=replace(SMALL.v, active=height))

    volts = frame(tiny, Picture(Card.SOLID), kernels(samples=8))

    assert volts.shape[1] == height
    assert volts[0, :, -1] == pytest.approx(0.7, abs=1e-4)
