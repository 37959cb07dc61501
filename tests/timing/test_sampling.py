from dataclasses import replace

import numpy as np
import pytest

from workbench.timing.sampling import black_window, soft_bands
from workbench.timing.search import find_mode

MODE = find_mode("640x480@60")


def samples(assumed_total: int) -> tuple[np.ndarray, np.ndarray]:
    """Return where each sample falls, in pixels of the picture, and how far from a pixel's middle.

    The first one is put in the middle of the first pixel.
    """
    spacing_px = MODE.h.total / assumed_total
    place_px = 0.5 + spacing_px * np.arange(int(MODE.h.active / spacing_px))
    return place_px, np.abs(place_px % 1 - 0.5)


@pytest.mark.parametrize("assumed_total", [801, 802, 804, 796, 798, 808])
def test_bands_are_where_samples_fall_between_pixels(assumed_total: int) -> None:
    """A sampler counted out sample by sample is softest where the bands are said to be."""
    bands = soft_bands(MODE, assumed_total)
    place_px, off = samples(assumed_total)
    worst = place_px[off > 0.48]

    assert bands.per_line == abs(assumed_total - 800)
    for centre in bands.centres_px:
        assert np.min(np.abs(worst - centre)) < 1 + 0.02 * bands.spacing_px
    for pixel in worst:
        assert min(abs(pixel - centre) for centre in bands.centres_px) < 1 + 0.03 * bands.spacing_px


@pytest.mark.parametrize(
    ("assumed_total", "centres"), [(800, ()), (1600, ()), (801, (400.0,)), (802, (200.0, 600.0))]
)
def test_number_and_place(assumed_total: int, centres: tuple[float, ...]) -> None:
    assert soft_bands(MODE, assumed_total).centres_px == centres


def test_half_resolution_has_no_bands() -> None:
    half = replace(
        MODE, pixel_clock_hz=12_587_500, h=replace(MODE.h, active=320, front_porch=8, sync=48, back_porch=24)
    )

    assert soft_bands(half, 800).per_line == 0
    assert soft_bands(half, 802).per_line == 2


def test_too_few_samples_still_count_bands() -> None:
    assert soft_bands(MODE, 400).per_line == 400


def test_black_window_against_the_porch() -> None:
    short = replace(MODE, h=replace(MODE.h, back_porch=28))

    assert black_window(MODE, 800).fits
    assert not black_window(short, 780).fits
