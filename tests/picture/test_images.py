"""Images kept in a project."""

import zlib
from dataclasses import replace

import numpy as np
import pytest

from workbench.errors import FileError
from workbench.picture.images import MOST_CONTENT, image_pixels, kept_image
from workbench.picture.scene import Image

FLAG = np.random.default_rng(0).integers(0, 256, (5, 7, 3), dtype=np.uint8)


def test_a_small_image_is_kept_by_content_and_comes_back():
    image = kept_image("flag.png", FLAG)

    assert (image.name, image.width, image.height) == ("flag.png", 7, 5)
    np.testing.assert_array_equal(image_pixels(image), FLAG)


def test_equal_images_are_equal_values():
    assert kept_image("flag.png", FLAG) == kept_image("flag.png", FLAG.copy())


def test_a_large_image_is_not_kept_by_content():
    noise = np.random.default_rng(0).integers(0, 256, (500, 500, 3), dtype=np.uint8)

    assert noise.size > MOST_CONTENT
    assert kept_image("noise.png", noise) is None


def test_an_image_without_pixels_is_refused():
    with pytest.raises(FileError, match="no pixels"):
        kept_image("empty.png", np.zeros((0, 5, 3), np.uint8))


@pytest.mark.parametrize(
    ("spoilt", "says"),
    [
        (Image("a.png", 7, 5, b"no zlib"), "damaged"),
        (Image("a.png", 8, 5, zlib.compress(FLAG.tobytes())), "8 × 5 pixels"),
        (Image("a.png", 6, 5, zlib.compress(FLAG.tobytes())), "6 × 5 pixels"),
        (Image("a.png", 7, 5, zlib.compress(FLAG.tobytes())[:-20]), "a.png"),
        (Image("a.png", 7, 5, path="/home/a.png"), "only its place: /home/a.png"),
        (Image("a.png", 50_000, 50_000, b"x"), "50000 × 50000"),
        (Image("a.png", -1, 5, b"x"), "no pixels"),
    ],
)
def test_damaged_images_are_refused_with_their_name(spoilt, says):
    with pytest.raises(FileError, match=says):
        image_pixels(spoilt)


def test_content_that_unpacks_to_gigabytes_is_cut_off():
    bomb = zlib.compress(bytes(50_000_000), 9)

    with pytest.raises(FileError, match="other ones"):
        image_pixels(replace(kept_image("flag.png", FLAG), content=bomb))
