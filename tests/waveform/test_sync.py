"""The sync lines: levels through the divider, polarity, and where the edges are."""

import numpy as np
import pytest

from workbench.circuit.network import Driver
from workbench.timing.search import find_mode
from workbench.waveform.sync import SyncDrive, sync_high_volts, write_h_sync, write_v_sync

VGA = find_mode("640x480@60")
POSITIVE = find_mode("800x600@60")
DRIVE = SyncDrive(3.3, 3.3, 0.0)


def h_sync(mode, drive=DRIVE, samples=16):
    out = np.empty(mode.h.total * samples, np.float32)
    write_h_sync(mode, drive, samples, out)
    return out


def v_sync(mode, number, samples=16):
    out = np.empty(mode.h.total * samples, np.float32)
    write_v_sync(mode, number, DRIVE, samples, out)
    return out


@pytest.mark.parametrize(
    ("series_ohms", "input_ohms", "high_ohms", "volts"),
    [
        (100.0, None, 40.0, 3.3),
        (330.0, 1000.0, 0.0, 2.481203),  # 3.3 V x 1000 / 1330: the slow edge of a weak sync line
        (100.0, 1000.0, 50.0, 2.869565),
        (0.0, 2200.0, 0.0, 3.3),
    ],
)
def test_high_level_is_a_divider(series_ohms, input_ohms, high_ohms, volts):
    driver = Driver(supply_volts=3.3, high_ohms=high_ohms)

    assert sync_high_volts(driver, series_ohms, input_ohms) == pytest.approx(volts, abs=1e-6)


def test_negative_h_sync_is_low_for_96_pixels_after_16():
    levels = h_sync(VGA).reshape(800, 16)

    assert (levels[:16] == np.float32(3.3)).all()
    assert (levels[16:112] == 0.0).all()
    assert (levels[112:] == np.float32(3.3)).all()


def test_mean_of_negative_h_sync_is_what_a_multimeter_reads():
    # 3.3 V x 704 / 800
    assert h_sync(VGA).mean(dtype=float) == pytest.approx(2.904, abs=1e-6)


def test_positive_h_sync_is_high_for_128_pixels_after_40():
    levels = h_sync(POSITIVE).reshape(1056, 16)[:, 0]

    assert np.flatnonzero(levels).tolist() == list(range(40, 168))


def test_ramp_takes_its_time_and_starts_at_the_edge():
    levels = h_sync(VGA, SyncDrive(3.3, 3.3, 10 * VGA.pixel_s / 16))

    edge = levels[16 * 16 : 16 * 16 + 11]
    np.testing.assert_allclose(edge, np.linspace(3.3, 0.0, 11), atol=1e-6)
    assert levels[16 * 16 - 1] == np.float32(3.3)


def test_a_ramp_longer_than_the_pulse_never_reaches_the_level():
    levels = h_sync(VGA, SyncDrive(3.3, 3.3, 192 * VGA.pixel_s))

    assert levels.min() == pytest.approx(1.65, abs=0.01)
    assert levels[-1] == pytest.approx(3.3, abs=1e-3)


@pytest.mark.parametrize("number", [1, 480, 490, 494, 525])
def test_v_sync_rests_on_other_lines(number):
    assert (v_sync(VGA, number) == np.float32(3.3)).all()


def test_v_sync_changes_with_the_leading_edge_of_h_sync():
    before, after = v_sync(VGA, 491).reshape(800, 16), v_sync(VGA, 493).reshape(800, 16)

    assert (before[:16] == np.float32(3.3)).all()
    assert (before[16:] == 0.0).all()
    assert (v_sync(VGA, 492) == 0.0).all()
    assert (after[:16] == 0.0).all()
    assert (after[16:] == np.float32(3.3)).all()


def test_v_sync_over_the_frame_is_what_a_multimeter_reads():
    mean = np.mean([v_sync(VGA, number).mean(dtype=float) for number in range(1, 526)])

    assert mean == pytest.approx(3.3 * 523 / 525, abs=1e-5)  # 3.287 V
