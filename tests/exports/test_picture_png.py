"""The picture as a file that other readers read."""

import io

import numpy as np
import pytest
from PIL import Image

from tests.exports.boards import board, solved
from workbench.errors import FileError, TimingError
from workbench.exports.picture_png import picture_note, picture_png, sent_png
from workbench.exports.png import png
from workbench.exports.scanline_csv import scanline_csv
from workbench.picture.scene import Card, Picture
from workbench.picture.scene import Image as ProjectImage
from workbench.pipeline.run import Pipeline
from workbench.project.document import MonitorRange
from workbench.project.edits.timing import set_pixel_clock


def read(data):
    with Image.open(io.BytesIO(data)) as image:
        image.load()
        return image.mode, np.array(image)


@pytest.mark.parametrize("size", [(1, 1), (3, 2), (640, 480)], ids=str)
def test_another_reader_reads_back_every_byte(size):
    width, height = size
    rgb = np.random.default_rng(9).integers(0, 256, (height, width, 3), dtype=np.uint8)

    mode, pixels = read(png(rgb))

    assert mode == "RGB"
    np.testing.assert_array_equal(pixels, rgb)


@pytest.mark.parametrize("export", [picture_png, sent_png])
def test_colour_bars_come_out_in_their_colours(export):
    _, pixels = read(export(solved()))

    assert pixels.shape == (480, 640, 3)
    assert pixels[240, [40, 120, 360, 600]].tolist() == [
        [255, 255, 255],
        [255, 255, 0],
        [255, 0, 255],
        [0, 0, 0],
    ]


def test_seen_and_sent_differ_where_the_porch_is_not_black():
    result = solved(picture=Picture(Card.SOLID, blanking=(16, 0, 0)))

    (_, seen), (_, sent) = read(picture_png(result)), read(sent_png(result))

    assert sent[240, 320].tolist() == [255, 255, 255]
    assert seen[240, 320, 0] < 140
    assert seen[240, 320, 1] == 255


def test_a_monitor_out_of_range_has_no_picture_and_says_why():
    result = solved(monitor=MonitorRange(40e3, 60e3, 50.0, 75.0))

    with pytest.raises(TimingError, match=r"out of range.*31\.47 kHz"):
        picture_png(result)


@pytest.mark.parametrize("export", [picture_png, sent_png, scanline_csv])
def test_a_missing_image_is_said_and_no_card_is_exported_for_it(export):
    result = solved(picture=Picture(image=ProjectImage("gone.jpg", 9, 9, path="/gone.jpg", sha256="0" * 64)))

    with pytest.raises(FileError, match=r"gone\.jpg"):
        export(result)


def test_a_note_says_what_the_monitor_makes_of_the_signal():
    odd = Pipeline().run(set_pixel_clock(board(), 37_000_000))

    assert picture_note(solved()) == ""
    assert picture_note(odd).startswith("not recognised. No known mode has this line rate")
    _, pixels = read(picture_png(odd))
    assert (np.ptp(pixels, axis=2) == 0).all()
