"""One scanline: codes in the right place, volts of the right code, history across lines."""

from dataclasses import replace

import numpy as np
import pytest

from tests.waveform.pulses import rc_pulse
from workbench.circuit.codes import bits_by_code
from workbench.errors import TimingError
from workbench.picture.scene import Card, Picture
from workbench.picture.source import card_source
from workbench.timing.search import find_mode
from workbench.timing.standards import DMT
from workbench.waveform.kernel import pixel_kernel
from workbench.waveform.scanline import line_codes, render_scanline, samples_per_pixel
from workbench.waveform.sync import SyncDrive

VGA = find_mode("640x480@60")
SYNC = SyncDrive(3.3, 3.3, 2e-9)
WEIGHTS = 0.7 * 2.0 ** np.arange(4, -1, -1) / 31
STATES = bits_by_code(5)
LEVELS = STATES @ WEIGHTS
BITS = (5, 5, 5)


def card_line(mode, picture, number):
    """Return the codes of a line of a 5-5-5 board."""
    return line_codes(mode, card_source(picture, mode.h.active, mode.v.active, BITS), number)


def kernels(tau_s=2e-9, samples=16, n_after=6, pixel_s=VGA.pixel_s):
    pulse = rc_pulse(WEIGHTS, tau_s=tau_s, samples=samples, n_after=n_after, pixel_s=pixel_s)
    return (pixel_kernel(LEVELS, STATES, pulse),) * 3


def render(mode=VGA, picture=None, number=1, kernels=None):
    picture = picture or Picture()
    codes, before = (card_line(mode, picture, line) for line in (number, number - 1))
    return render_scanline(mode, number, codes, before, kernels=kernels or globals()["kernels"](), sync=SYNC)


def test_codes_are_blanking_then_the_row():
    codes = line_codes(
        VGA, card_source(Picture(Card.SOLID, blanking=(1, 2, 3)), VGA.h.active, VGA.v.active, BITS), 5
    )

    assert codes.shape == (3, 800)
    assert (codes[:, :160] == [[1], [2], [3]]).all()
    assert (codes[:, 160:] == 31).all()


@pytest.mark.parametrize("number", [481, 491, 525, 0])
def test_lines_outside_the_picture_are_all_blanking(number):
    assert not line_codes(
        VGA, card_source(Picture(Card.SOLID), VGA.h.active, VGA.v.active, BITS), number
    ).any()


def test_line_480_is_the_last_of_the_picture():
    assert card_line(VGA, Picture(Card.SOLID), 480)[:, 160:].all()


@pytest.mark.parametrize("mode", [m for m in DMT if not m.interlaced][::9], ids=lambda m: m.name)
def test_every_mode_gives_a_line_of_its_total(mode):
    line = render(mode)

    assert line.volts.shape == (5, mode.h.total * 16)
    assert line.volts.dtype == np.float32
    assert line.volts.flags.c_contiguous
    assert line.codes.shape == (3, mode.h.total)
    assert line.times_s[-1] + line.step_s == pytest.approx(mode.line_s, rel=1e-9)


def test_settled_samples_are_the_levels_of_the_codes():
    line = render()

    middle = line.volts[:3].reshape(3, 800, 16)[:, 200, 15]
    np.testing.assert_allclose(middle, LEVELS[line.codes[:, 200]], atol=1e-6)


def test_ideal_is_the_even_staircase_to_700_millivolts():
    line = render(picture=Picture(Card.GREY_RAMP))

    assert line.ideal_volts.shape == (3, 800)
    np.testing.assert_allclose(line.ideal_volts, line.codes * 0.7 / 31, atol=1e-7)
    assert line.ideal_volts.max() == np.float32(0.7)


def test_the_line_before_trails_into_the_front_porch():
    slow = kernels(tau_s=60e-9, n_after=40)

    after_white = render(picture=Picture(Card.SOLID), number=2, kernels=slow)
    after_blanking = render(picture=Picture(Card.SOLID), number=1, kernels=slow)

    pixel = after_white.volts[0, 16]
    assert pixel == pytest.approx(0.7 * np.exp(-(VGA.pixel_s - 1e-9) / 60e-9), abs=1e-3)
    assert after_blanking.volts[0, :256] == pytest.approx(0.0, abs=1e-6)


def test_a_trail_longer_than_the_line_reads_the_line_before_as_lasting():
    tiny = replace(VGA, h=replace(VGA.h, active=1, front_porch=1, sync=1, back_porch=1))

    line = render(tiny, Picture(Card.SOLID), kernels=kernels(n_after=12))

    assert np.isfinite(line.volts).all()
    assert line.volts[0, -1] == pytest.approx(0.7, abs=1e-3)


def test_channels_keep_their_own_codes():
    line = render(picture=Picture(Card.SOLID, (1.0, 0.5, 0.0)))

    assert line.volts[:3, -1] == pytest.approx([0.7, LEVELS[16], 0.0], abs=1e-6)


def test_channels_may_have_different_bits():
    one_bit = pixel_kernel(
        np.array([0.0, 0.7]), bits_by_code(1), rc_pulse([0.7], tau_s=2e-9, pixel_s=VGA.pixel_s)
    )
    red, green, _ = kernels()
    codes = line_codes(VGA, card_source(Picture(Card.SOLID), 640, 480, (5, 5, 1)), 3)

    line = render_scanline(VGA, 3, codes, codes, kernels=(red, green, one_bit), sync=SYNC)

    assert line.volts[:3, -1] == pytest.approx([0.7] * 3, abs=1e-5)
    assert line.ideal_volts[:, -1] == pytest.approx([0.7] * 3)


def test_arrays_cannot_be_written():
    line = render()

    with pytest.raises(ValueError, match="read-only"):
        line.volts[0, 0] = 1.0


def test_an_interlaced_mode_is_refused_with_the_reason():
    mode = find_mode("1024x768@43i")

    with pytest.raises(TimingError, match="interlaced"):
        render(mode)


def test_never_fewer_than_16_samples_a_pixel():
    assert samples_per_pixel(VGA) == 32
    assert min(samples_per_pixel(mode) for mode in DMT) >= 16
    assert samples_per_pixel(replace(VGA, h=replace(VGA.h, active=60_000))) == 16
