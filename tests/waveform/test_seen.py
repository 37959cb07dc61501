"""What a monitor makes of a frame: black, gain, sampling, position."""

from dataclasses import replace
from fractions import Fraction

import numpy as np
import pytest

from tests.waveform.pulses import rc_pulse
from tests.waveform.test_scanline import BITS, LEVELS, STATES, VGA, WEIGHTS, kernels
from workbench.circuit.codes import bits_by_code
from workbench.picture.cards import card_codes
from workbench.picture.light import light_from_srgb
from workbench.picture.scene import Card, Picture
from workbench.progress import Cancelled, Watched
from workbench.waveform.kernel import pixel_kernel
from workbench.waveform.monitor import Monitor, Screen
from workbench.waveform.seen import seen_picture, sent_picture

SMALL = replace(VGA, h=replace(VGA.h, active=64), v=replace(VGA.v, active=48))
QUICK = kernels(samples=8)
BY_TABLE = Monitor(auto_adjust=False)


def seen(
    card=Card.COLOUR_BARS, monitor=BY_TABLE, *, mode=SMALL, blanking=(0, 0, 0), kernels=QUICK, **options
):
    codes = card_codes(Picture(card), mode.h.active, mode.v.active, BITS)
    return seen_picture(mode, codes, blanking, kernels, monitor, **options)


@pytest.mark.parametrize("screen", list(Screen), ids=lambda screen: screen.value)
@pytest.mark.parametrize("card", [Card.COLOUR_BARS, Card.GREY_RAMP, Card.BORDER], ids=lambda card: card.value)
def test_a_good_board_on_a_good_monitor_is_seen_as_sent(card, screen):
    codes = card_codes(Picture(card), 64, 48, BITS)
    sent = sent_picture(codes, (LEVELS,) * 3)

    shown = seen(card, Monitor(screen, auto_adjust=False))

    assert shown.rgb.shape == (48, 64, 3)
    difference = np.abs(shown.rgb.astype(int) - sent)
    # A panel reads the settled level; a tube also shows the edges, which are soft.
    assert difference.max() <= (1 if screen is Screen.PANEL else 80)
    assert np.median(difference) == 0


def test_sent_picture_shows_the_levels_of_each_channel():
    codes = np.array([[[0, 1]], [[1, 0]], [[1, 1]]], np.uint8)

    rgb = sent_picture(codes, (np.array([0.0, 0.7]), np.array([0.0, 0.35]), np.array([0.0, 1.06])))

    assert rgb.tolist() == [[[0, 128, 255], [255, 0, 255]]]


def test_colour_on_the_back_porch_sinks_the_picture():
    # Half of full scale on the porch leaves white at 0.5 ** 2.2 = 22 % luminance.
    levels = np.array([0.0, 0.35, 0.70, 0.70])
    pulse = rc_pulse([0.35, 0.35], tau_s=1e-9, samples=8, n_after=4, pixel_s=VGA.pixel_s)
    two_bits = (pixel_kernel(levels, bits_by_code(2), pulse),) * 3
    codes = np.full((3, 48, 64), 2, np.uint8)

    shown = seen_picture(SMALL, codes, (1, 0, 0), two_bits, BY_TABLE)

    light = light_from_srgb(shown.rgb[24, 32] / 255)
    assert light == pytest.approx([0.218, 1.0, 1.0], abs=0.005)
    assert shown.black_volts[24] == pytest.approx([0.35, 0.0, 0.0], abs=1e-5)


def test_a_back_porch_shorter_than_the_clamp_window_takes_the_picture_for_black():
    short = replace(SMALL, h=replace(SMALL.h, back_porch=12, front_porch=52))

    shown = seen(Card.SOLID, mode=short)

    # 3 of 20 pixels of the window are blanking, the others white: line after line black follows.
    assert shown.black_volts[0, 0] < 0.2
    assert shown.black_volts[-1, 0] == pytest.approx(0.7 * 17 / 20, abs=0.02)
    assert shown.rgb[-1, 32, 0] < 60 < shown.rgb[0, 32, 0]


def test_a_wrong_line_total_gives_as_many_bands_as_the_totals_differ():
    wrong = replace(VGA, h=replace(VGA.h, front_porch=24))  # 808 instead of 800
    slow = (pixel_kernel(LEVELS, STATES, rc_pulse(WEIGHTS, tau_s=12e-9, samples=8, n_after=10)),) * 3
    mode = replace(VGA, v=replace(VGA.v, active=4))
    monitor = Monitor(auto_adjust=False, assumed=replace(wrong, v=mode.v))

    row = seen(Card.STRIPES, monitor, mode=mode, kernels=slow).rgb[2, :, 1].astype(int)

    contrast = np.abs(np.diff(row))
    spectrum = np.abs(np.fft.rfft(contrast - contrast.mean()))
    # 8 bands a line of 808, 640 of which are shown: 6.3 in the picture.
    assert spectrum[:40].argmax() in (6, 7)


def test_a_panel_with_the_right_total_shows_stripes_without_bands():
    mode = replace(VGA, v=replace(VGA.v, active=4))

    row = seen(Card.STRIPES, mode=mode).rgb[2, :, 1]

    assert set(row[::2]) == {255}
    assert set(row[1::2]) == {0}


def test_a_panel_shows_a_shifted_picture_when_its_porches_differ():
    assumed = replace(SMALL, h=replace(SMALL.h, back_porch=40, front_porch=24))

    shown = seen(Card.BORDER, replace(BY_TABLE, assumed=assumed))

    assert not shown.rgb[24, :8].any()
    assert shown.rgb[24, 8].tolist() == [255, 255, 255]


@pytest.mark.parametrize(
    "change", [{"back_porch": 40, "front_porch": 24}, {"back_porch": 56, "front_porch": 18}]
)
def test_auto_adjustment_finds_a_white_border_again(change):
    mode = replace(VGA, v=replace(VGA.v, active=60))
    assumed = replace(mode, h=replace(mode.h, **change))

    shown = seen(Card.BORDER, Monitor(auto_adjust=True, assumed=assumed), mode=mode)

    assert shown.adjustment.total == 800
    assert (shown.rgb[:, [0, -1]] == 255).all()
    assert (shown.rgb[[0, -1]] == 255).all()


def test_auto_adjustment_takes_a_dark_edge_for_the_end_of_the_picture():
    codes = np.full((3, 48, 64), 31, np.uint8)
    codes[:, :, :12] = 0

    shown = seen_picture(SMALL, codes, (0, 0, 0), QUICK, Monitor(auto_adjust=True))

    assert (shown.rgb[24, :8] == 255).all()  # white now stands where black should
    assert not shown.rgb[24, -12:].any()


def test_auto_adjustment_keeps_its_phase_on_a_plain_colour():
    assert seen(Card.SOLID, Monitor(auto_adjust=True, phase=0.1)).adjustment.phase == 0.1


def test_auto_adjustment_moves_a_bad_phase_to_where_pixels_have_settled():
    slow = (pixel_kernel(LEVELS, STATES, rc_pulse(WEIGHTS, tau_s=8e-9, samples=8, n_after=10)),) * 3
    mode = replace(VGA, v=replace(VGA.v, active=4))

    bad = seen(Card.STRIPES, Monitor(phase=0.2, auto_adjust=False), mode=mode, kernels=slow)
    good = seen(Card.STRIPES, Monitor(auto_adjust=True, phase=0.2), mode=mode, kernels=slow)

    assert good.adjustment.phase > 0.6
    assert np.ptp(good.rgb[2, 10:50].astype(int)) > np.ptp(bad.rgb[2, 10:50].astype(int)) + 50


def test_a_slow_network_makes_stripes_grey():
    slow = (pixel_kernel(LEVELS, STATES, rc_pulse(WEIGHTS, tau_s=80e-9, samples=8, n_after=40)),) * 3

    row = seen(Card.STRIPES, kernels=slow).rgb[24, 20:60].astype(int)

    assert np.ptp(row) < 80


def test_a_tube_softens_what_its_amplifier_cannot_follow():
    quick = seen(Card.STRIPES, Monitor(Screen.TUBE, auto_adjust=False))
    slow = seen(Card.STRIPES, Monitor(Screen.TUBE, auto_adjust=False, rise_s=60e-9))

    assert np.ptp(slow.rgb[24, 20:60].astype(int)) < np.ptp(quick.rgb[24, 20:60].astype(int))


def test_a_preview_shows_each_nth_pixel_of_the_whole():
    whole, preview = seen(Card.ALL_CODES), seen(Card.ALL_CODES, every=4)

    np.testing.assert_array_equal(preview.rgb, whole.rgb[::4, ::4])


def test_a_preview_of_uneven_pixels_has_each_row_at_its_own_place_in_the_clock():
    # 224 px a line and 256 parts of a clock: each line starts elsewhere.
    uneven = (replace(kernels(samples=32)[0], divider=Fraction(1357, 256), finer=4),) * 3

    whole, preview = (seen(Card.ALL_CODES, kernels=uneven, every=every) for every in (1, 5))

    difference = np.abs(preview.rgb.astype(int) - whole.rgb[::5, ::5])
    assert difference.max() <= 2


def test_auto_adjustment_finds_the_same_instants_from_an_h_sync_that_is_early():
    uneven = (replace(kernels(samples=32, tau_s=1e-9)[0], divider=Fraction(5, 2), finer=4),) * 3
    codes = np.random.default_rng(5).integers(0, 32, (3, 48, 64), dtype=np.uint8)
    # After 16 px H sync is on the even grid, after 15 px early by half a clock, 0.2 px.
    early = replace(SMALL, h=replace(SMALL.h, front_porch=15, back_porch=SMALL.h.back_porch + 1))

    in_time, before = (
        seen_picture(mode, codes, (0, 0, 0), uneven, Monitor(auto_adjust=True)).adjustment.phase
        for mode in (SMALL, early)
    )

    assert 0.1 < in_time < 0.8
    assert before - in_time == pytest.approx(0.2)


def test_progress_is_told_and_may_stop_the_work():
    told = []
    watched = Watched(lambda done, total: (told.append((done, total)), watched.cancel()))

    with pytest.raises(Cancelled):
        seen(mode=VGA, progress=watched)

    assert told == [(30, 480)]


@pytest.mark.parametrize("size", [(1, 1), (3, 1), (1, 4)], ids=str)
@pytest.mark.parametrize(
    "monitor", [Monitor(auto_adjust=True), Monitor(Screen.TUBE), BY_TABLE], ids=["auto", "tube", "table"]
)
def test_tiny_pictures(size, monitor):
    mode = replace(SMALL, h=replace(SMALL.h, active=size[0]), v=replace(SMALL.v, active=size[1]))

    assert seen(Card.SOLID, monitor, mode=mode).rgb.min() > 220  # a tube has soft edges


def test_a_line_that_ends_before_black_is_looked_at_leaves_a_black_all_the_same():
    h = replace(SMALL.h, active=1, front_porch=0, sync=1, back_porch=0)

    shown = seen(Card.SOLID, mode=replace(SMALL, h=h))

    assert np.isfinite(shown.black_volts).all()


def test_gain_is_against_the_monitors_full_scale():
    dim = seen(Card.SOLID, replace(BY_TABLE, full_volts=1.4))

    assert light_from_srgb(dim.rgb[24, 24] / 255) == pytest.approx([0.218] * 3, abs=0.005)
