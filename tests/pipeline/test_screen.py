"""A monitor's look at a project."""

import numpy as np
import pytest

from tests.exports.boards import solved
from workbench.picture.scene import Card, Picture
from workbench.pipeline.screen import FRAME_SAMPLES, as_sent, frame_codes, frame_kernels, look
from workbench.progress import Cancelled, Watched
from workbench.waveform.monitor import Monitor, Screen
from workbench.waveform.verdict import Standing


@pytest.mark.parametrize("screen", list(Screen), ids=lambda screen: screen.value)
def test_a_usual_board_is_seen_as_sent(screen):
    result = solved(picture=Picture(Card.COLOUR_BARS))

    seen = look(result, Monitor(screen))

    assert seen.verdict.standing is Standing.SHOWN
    assert seen.seen is not None
    assert np.abs(seen.seen.rgb[:, 40::80].astype(int) - seen.sent[:, 40::80]).max() <= 1
    np.testing.assert_array_equal(seen.sent, as_sent(result))


def test_an_interlaced_mode_is_sent_and_not_seen():
    seen = look(solved("1024x768@43i"))

    assert seen.seen is None
    assert "interlaced" in seen.verdict.sentence
    assert seen.sent.shape == (768, 1024, 3)


def test_preview_is_small_and_like_the_whole():
    result = solved(picture=Picture(Card.ALL_CODES))

    whole, preview = look(result), look(result, every=4)

    assert preview.seen.rgb.shape == (120, 160, 3)
    np.testing.assert_array_equal(preview.seen.rgb, whole.seen.rgb[::4, ::4])


def test_frames_and_lines_come_from_the_same_pulses():
    result = solved()

    kernels = frame_kernels(result)

    assert [kernel.samples_per_pixel for kernel in kernels] == [FRAME_SAMPLES] * 3
    np.testing.assert_allclose(kernels[0].settled_volts, result.channels.red.levels.volts_by_code, atol=1e-6)
    assert frame_codes(result.project).shape == (3, 480, 640)


def test_a_look_may_be_stopped():
    watched = Watched(lambda done, total: None)
    watched.cancel()

    with pytest.raises(Cancelled):
        look(solved(), progress=watched)
