"""Images brought to the size of a mode."""

import numpy as np
import pytest

from workbench.errors import FileError
from workbench.picture.fit import check_size, fit_image, over_black
from workbench.picture.scene import Fit


def image(width, height, value=200):
    return np.full((height, width, 3), value, np.uint8)


@pytest.mark.parametrize("fit", list(Fit), ids=lambda fit: fit.value)
@pytest.mark.parametrize("size", [(1, 1), (3, 2), (64, 48), (200, 10), (10, 200)], ids=str)
@pytest.mark.parametrize("smooth", [True, False])
def test_any_image_comes_out_at_the_size_of_the_mode(fit, size, smooth):
    fitted = fit_image(image(*size), 32, 24, fit, smooth=smooth)

    assert fitted.shape == (24, 32, 3)
    assert set(np.unique(fitted)) <= {0, 200}
    assert fitted[11:13, 15:17].max() == 200


def test_letterbox_leaves_bars_above_and_below_a_wide_image():
    fitted = fit_image(image(80, 20), 40, 30, Fit.LETTERBOX)

    assert (fitted[10:20] == 200).all()
    assert not fitted[:10].any()
    assert not fitted[20:].any()


def test_fill_crops_both_sides_of_a_wide_image():
    wide = image(80, 20)
    wide[:, :20] = 0
    wide[:, -20:] = 0

    assert (fit_image(wide, 20, 10, Fit.FILL) == 200).all()


def test_as_it_is_keeps_the_middle():
    source = np.random.default_rng(0).integers(0, 256, (30, 40, 3), dtype=np.uint8)

    np.testing.assert_array_equal(fit_image(source, 20, 10, Fit.AS_IT_IS), source[10:20, 10:30])


def test_doubled_shows_each_pixel_twice_in_each_direction():
    source = np.random.default_rng(0).integers(0, 256, (12, 16, 3), dtype=np.uint8)

    doubled = fit_image(source, 32, 24, Fit.DOUBLED, smooth=False)

    np.testing.assert_array_equal(doubled, source.repeat(2, axis=0).repeat(2, axis=1))


def test_halved_is_the_mean_of_four():
    source = np.random.default_rng(0).integers(0, 256, (24, 32, 3), dtype=np.uint8)

    halved = fit_image(source, 16, 12, Fit.HALVED).astype(float)

    np.testing.assert_allclose(halved, source.reshape(12, 2, 16, 2, 3).mean(axis=(1, 3)), atol=0.51)


@pytest.mark.parametrize("count", [7, 13, 29])
def test_making_smaller_keeps_the_mean(count):
    source = np.random.default_rng(4).integers(0, 256, (30, 30, 3), dtype=np.uint8)

    smaller = fit_image(source, count, count, Fit.STRETCH)

    np.testing.assert_allclose(smaller.mean(axis=(0, 1)), source.mean(axis=(0, 1)), atol=0.5)


def test_making_larger_draws_straight_lines():
    step = np.zeros((1, 2, 3), np.uint8)
    step[0, 1] = 200

    assert fit_image(step, 8, 1, Fit.STRETCH)[0, :, 0].tolist() == [0, 0, 25, 75, 125, 175, 200, 200]


def test_transparent_parts_are_black():
    rgba = np.array([[[200, 100, 50, 255], [200, 100, 50, 0], [200, 100, 50, 128]]], np.uint8)

    assert over_black(rgba)[0].tolist() == [[200, 100, 50], [0, 0, 0], [100, 50, 25]]


@pytest.mark.parametrize(("width", "height"), [(0, 10), (10, 0)])
def test_an_image_without_pixels_is_refused(width, height):
    with pytest.raises(FileError, match="no pixels"):
        check_size(width, height)


def test_a_hostile_size_is_refused_by_its_size():
    with pytest.raises(FileError, match=r"board\.png has 50000 × 50000 pixels"):
        check_size(50_000, 50_000, "board.png")


@pytest.mark.parametrize("aspect", [0.5, 1.0, 1.25])
def test_a_whole_image_keeps_its_shape_on_the_screen(aspect):
    # 60 × 40 pixels of some aspect, an image of twice as wide as high.
    fitted = fit_image(image(100, 50), 60, 40, Fit.LETTERBOX, aspect=aspect)

    wide = fitted[20, :, 0].astype(bool).sum() * aspect
    high = fitted[:, 30, 0].astype(bool).sum()
    assert wide / high == pytest.approx(2.0, rel=0.06)
    assert (fitted[20] == 200).all() or (fitted[:, 30] == 200).all()


def test_pixel_for_pixel_knows_no_shape():
    source = np.random.default_rng(0).integers(0, 256, (30, 40, 3), dtype=np.uint8)

    np.testing.assert_array_equal(fit_image(source, 20, 10, Fit.AS_IT_IS, aspect=0.5), source[10:20, 10:30])
