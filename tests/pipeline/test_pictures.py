"""Images through the pipeline."""

import numpy as np
import pytest

from tests.exports.boards import board
from workbench.errors import FileError
from workbench.files.project_file import MOST_BYTES, decode, encode
from workbench.picture.images import MOST_CONTENT, kept_image
from workbench.picture.scene import Card, Dither, Fit, Image, Measure, Picture
from workbench.pipeline.run import Pipeline
from workbench.pipeline.screen import look
from workbench.project.document import Channel
from workbench.project.edits.drive import set_supply
from workbench.project.edits.parts import set_value
from workbench.project.edits.picture import set_card, set_dither, set_fit, show_image
from workbench.project.validity import first_flaw

HALVES = np.zeros((48, 64, 3), np.uint8)
HALVES[:, :32] = (255, 128, 0)
IMAGE = kept_image("halves.png", HALVES)


def test_an_image_reaches_the_scanline_and_the_screen():
    result = Pipeline().run(show_image(board(scanline=100), IMAGE))

    line = result.scanline
    left, right = (line.volts[:3, (160 + column) * line.samples_per_pixel + 20] for column in (100, 500))
    assert left[0] == pytest.approx(result.channels.red.levels.volts_by_code[29], abs=0.03)
    assert right == pytest.approx([0.0, 0.0, 0.0], abs=1e-3)
    seen = look(result).seen.rgb[240, [100, 500]].astype(int)
    assert np.abs(seen - [[255, 128, 0], [0, 0, 0]]).max() < 30
    assert result.picture_problem is None


def test_an_image_follows_the_levels_of_the_board():
    pipeline = Pipeline()
    project = set_dither(show_image(board(), IMAGE), Dither.NEAREST)

    weak = pipeline.run(set_supply(project, 1.65)).picture.row(0)
    strong = pipeline.run(project).picture.row(0)

    assert weak[0, 0] == 31  # too dim to reach full scale
    assert strong[0, 0] == 29  # 0.700 of 0.743 V
    assert weak[1, 0] == 2 * strong[1, 0] or abs(weak[1, 0] - 2 * strong[1, 0]) <= 1


def test_codes_are_kept_until_something_that_matters_changes():
    pipeline = Pipeline()
    project = show_image(board(), IMAGE)

    first = pipeline.run(project).picture
    same = pipeline.run(set_value(project, Channel.RED, "R1", 500.0)).picture
    other = pipeline.run(set_value(project, Channel.RED, "R1", 510.0)).picture

    assert same is first
    assert other is not first


def test_a_missing_image_is_said_and_the_card_stands_in():
    project = show_image(board(picture=Picture(Card.STRIPES)), Image("gone.jpg", 10, 10, path="/gone.jpg"))

    result = Pipeline().run(project)

    assert "gone.jpg" in result.picture_problem
    assert result.picture.row(0)[0, :4].tolist() == [31, 0, 31, 0]
    assert result.project.picture.image.path == "/gone.jpg"


def test_pixels_may_come_from_elsewhere():
    def pixels(image):
        if image.path != "/big.jpg":
            raise FileError(f"{image.name} is missing")
        return np.full((4, 4, 3), 255, np.uint8)

    project = show_image(board(), Image("big.jpg", 4, 4, path="/big.jpg"))

    assert Pipeline(pixels).run(set_fit(project, Fit.STRETCH)).picture.row(0).min() > 20


def test_edits_of_the_picture():
    project = set_fit(show_image(board(), IMAGE), Fit.FILL, smooth=False)
    project = set_dither(project, Dither.DIFFUSED, Measure.LIGHT)

    picture = project.picture
    assert (picture.fit, picture.smooth, picture.dither, picture.measure) == (
        Fit.FILL,
        False,
        Dither.DIFFUSED,
        Measure.LIGHT,
    )
    assert set_card(project, Card.STRIPES).picture.image is None


def test_a_project_with_an_image_is_saved_and_read_back():
    project = show_image(board(), IMAGE)

    assert decode(encode(project)) == project


def test_the_largest_image_kept_fits_into_a_project_file():
    assert MOST_CONTENT * 4 / 3 < MOST_BYTES - 150_000


@pytest.mark.parametrize(
    "image",
    [
        Image("a", 7, 5, b"no zlib"),
        Image("a", 7, 5),
        Image("a", 0, 5, path="a"),
        Image("a", 10**6, 10**6, path="a"),
    ],
)
def test_a_file_with_a_damaged_image_is_refused_with_the_place(image):
    place, clause = first_flaw(show_image(board(), image))

    assert place == "picture.image"
    assert clause
