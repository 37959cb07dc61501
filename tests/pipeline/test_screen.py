"""A monitor's look at a project."""

from dataclasses import replace

import numpy as np
import pytest

from tests.exports.boards import board, solved
from workbench.bringup.faults import Setup, fault_named, switched_on
from workbench.picture.images import kept_image
from workbench.picture.scene import Card, Dither, Picture
from workbench.pipeline.run import Pipeline
from workbench.pipeline.screen import (
    FRAME_SAMPLES,
    as_sent,
    frame_codes,
    frame_kernels,
    glance,
    line_seen,
    look,
)
from workbench.progress import Cancelled, Watched
from workbench.project.document import Channel
from workbench.project.edits.drive import set_skew, set_supply
from workbench.project.edits.picture import set_dither, show_image
from workbench.project.edits.timing import set_pixel_clock
from workbench.waveform.monitor import Monitor, Screen
from workbench.waveform.slips import Slips
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
    assert frame_codes(result)[0].shape == (3, 480, 640)


def test_a_look_may_be_stopped():
    watched = Watched(lambda done, total: None)
    watched.cancel()

    with pytest.raises(Cancelled):
        look(solved(), progress=watched)


def test_slips_show_in_the_line_and_in_the_picture_and_not_in_the_design():
    slips = Slips(stuck_high=(16, 0, 0), late_pixels=4)
    clean, slipped = solved(), Pipeline().run(board(), slips)

    assert slipped.channels.red.levels.volts_by_code[0] == 0.0
    assert [f.headline for f in slipped.findings] == [f.headline for f in clean.findings]
    porch = slipped.scanline.volts[:3, 130 * slipped.scanline.samples_per_pixel]
    assert porch == pytest.approx([0.3835, 0.0, 0.0], abs=1e-3)
    codes, blanking = frame_codes(slipped)
    assert blanking == (16, 0, 0)
    assert codes[:, 0, :5].tolist() == [[16, 16, 16, 16, 31], [0, 0, 0, 0, 31], [0, 0, 0, 0, 31]]
    assert codes[:, 0, 4:].tolist() == (frame_codes(clean)[0][:, 0, :-4] | [[16], [0], [0]]).tolist()


def test_a_skewed_board_glitches_in_the_scanline():
    toggling = board(picture=Picture(Card.HALF_SCALE))

    clean, skewed = Pipeline().run(toggling), Pipeline().run(set_skew(toggling, Channel.RED, 0, 8e-9))

    assert clean.scanline.volts[0, 6000:].min() > 0.3
    assert skewed.scanline.volts[0, 6000:].min() < 0.2
    np.testing.assert_array_equal(skewed.scanline.volts[1], clean.scanline.volts[1])


def test_a_mode_that_no_panel_knows_is_never_a_perfect_picture():
    odd = set_pixel_clock(board(picture=Picture(Card.COLOUR_BARS)), 37_000_000)
    result = Pipeline().run(odd)

    panel, tube = look(result, Monitor()), look(result, Monitor(Screen.TUBE))

    assert panel.verdict.standing is Standing.GUESSED
    shown = panel.shown()
    assert (np.ptp(shown, axis=2) == 0).all()
    assert np.ptp(shown[200:230, 20:60].astype(int)) == 70  # stripes on white too
    assert tube.verdict.standing is Standing.SHOWN
    np.testing.assert_array_equal(tube.shown(), tube.seen.rgb)


@pytest.mark.parametrize("every", [2, 5])
def test_a_glance_is_a_small_look(every):
    result = solved(picture=Picture(Card.BORDER))
    whole = look(result)

    preview = glance(result, Monitor(), every=every, adjustment=whole.seen.adjustment)

    np.testing.assert_array_equal(preview.sent, whole.sent[::every, ::every])
    np.testing.assert_array_equal(preview.seen.rgb[:, 1:], whole.seen.rgb[::every, ::every][:, 1:])
    assert preview.verdict == whole.verdict


def test_a_picture_wholly_out_of_sight_is_black():
    result = solved()
    found = look(result).seen.adjustment

    seen = glance(result, Monitor(auto_adjust=True), every=4, adjustment=replace(found, top=5000)).seen

    assert not seen.rgb.any()


def test_a_broken_board_shows_codes_that_were_made_for_the_design():
    image = kept_image("grey", np.full((4, 4, 3), 128, np.uint8))
    design = show_image(board(), image)
    broken = set_supply(design, 1.65)

    codes = Pipeline().run(broken, design=design).picture.frame()

    np.testing.assert_array_equal(codes, Pipeline().run(design).picture.frame())
    assert (codes != Pipeline().run(broken).picture.frame()).any()


def test_diffused_rows_are_right_unless_in_a_hurry():
    image = kept_image("noise", np.random.default_rng(1).integers(0, 256, (48, 64, 3), dtype=np.uint8))
    project = set_dither(show_image(board(scanline=99), image), Dither.DIFFUSED)
    patient, hurried = Pipeline(), Pipeline(hurried=True)

    right, near = patient.run(project), hurried.run(project)

    np.testing.assert_array_equal(right.scanline.codes[:, 160:], right.picture.frame()[:, 98])
    assert not near.picture.settled
    near.picture.frame()
    settled = hurried.run(project)
    np.testing.assert_array_equal(settled.scanline.codes, right.scanline.codes)


def black_of_the_picture(result, monitor=None):
    """Return what the picture takes for black in the row of the line shown. [V]"""
    seen = look(result, monitor or Monitor()).seen
    assert seen is not None
    return seen.black_volts[result.project.scanline - 1]


@pytest.mark.parametrize("fault", ["porch-colour", "short-back-porch", "node-capacitance"])
def test_black_of_the_line_is_that_of_the_picture(fault):
    setup = switched_on(Setup(board()), [(fault_named(fault), Channel.RED)])
    result = Pipeline().run(setup.project, setup.slips)

    seen = line_seen(result, setup.monitor)

    assert seen is not None
    np.testing.assert_allclose(seen.black_volts, black_of_the_picture(result, setup.monitor), atol=1e-3)


def test_black_is_found_where_a_colour_is_left_on_in_blanking():
    setup = switched_on(Setup(board()), [(fault_named("porch-colour"), Channel.RED)])

    seen = line_seen(Pipeline().run(setup.project, setup.slips), setup.monitor)

    assert seen is not None
    assert seen.black_volts == pytest.approx((0.384, 0.0, 0.0), abs=1e-3)
    assert seen.full_volts == 0.7


def test_a_line_of_no_picture_is_not_seen():
    setup = switched_on(Setup(board()), [(fault_named("no-h-sync"), Channel.RED)])

    assert line_seen(Pipeline().run(setup.project, setup.slips), setup.monitor) is None
