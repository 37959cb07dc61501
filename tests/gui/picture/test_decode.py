"""Image files: what is read is right, what is not is said in one sentence."""

import numpy as np
import pytest
from PIL import Image

from tests.gui.picture.pictures import announced, packed, slope
from workbench.errors import FileError
from workbench.gui.picture.decode import decode, decode_file, file_filter

SLOPE = np.array(slope())


@pytest.mark.parametrize("kind", ["PNG", "BMP", "PPM"])
def test_whole_files_come_out_as_they_are(kind: str) -> None:
    decoded = decode(packed(slope(), kind), "slope")

    np.testing.assert_array_equal(decoded.rgb, SLOPE)
    assert decoded.remarks == ()


def test_a_photograph_is_near() -> None:
    decoded = decode(packed(slope(), "JPEG", quality=95), "slope.jpg")

    assert np.abs(decoded.rgb.astype(int) - SLOPE).mean() < 4


def test_a_photograph_held_on_its_side_is_turned() -> None:
    exif = Image.Exif()
    exif[0x0112] = 6  # turned a quarter to the right, as EXIF 2.3 numbers it

    decoded = decode(packed(slope(), "JPEG", quality=95, exif=exif), "turned.jpg")

    assert decoded.rgb.shape == (40, 30, 3)
    assert np.abs(decoded.rgb.astype(int) - np.rot90(SLOPE, -1)).mean() < 4
    assert decoded.remarks == ("It was turned as the camera held it.",)


def test_transparent_parts_stand_on_black_and_that_is_said() -> None:
    rgba = np.dstack([SLOPE, np.full(SLOPE.shape[:2], 128, np.uint8)])

    decoded = decode(packed(Image.fromarray(rgba), "PNG"), "glass.png")

    assert np.abs(decoded.rgb.astype(int) - SLOPE * 128.0 / 255.0).max() <= 1
    assert "on black" in decoded.remarks[0]


def test_palettes_are_looked_up() -> None:
    few = slope().quantize(16)

    decoded = decode(packed(few, "PNG"), "few.png")

    np.testing.assert_array_equal(decoded.rgb, np.array(few.convert("RGB")))


def test_sixteen_bits_are_brought_to_eight_and_that_is_said() -> None:
    deep = Image.fromarray((np.arange(1200).reshape(30, 40) * 50).astype(np.uint16))

    decoded = decode(packed(deep, "PNG"), "deep.png")

    assert decoded.rgb[29, 39].tolist() == [233, 233, 233]  # 59950 of 65535
    assert "16 bits" in decoded.remarks[0]


def test_printing_inks_become_red_green_and_blue_and_that_is_said() -> None:
    inks = Image.new("CMYK", (16, 16), (0, 255, 255, 0))

    decoded = decode(packed(inks, "JPEG", quality=95), "inks.jpg")

    red, green, blue = decoded.rgb[8, 8].tolist()
    assert red > 150 > 90 > max(green, blue)
    assert any("CMYK" in remark for remark in decoded.remarks)


def test_of_what_moves_the_first_frame_is_shown_and_that_is_said() -> None:
    frames = [Image.new("RGB", (8, 8), colour) for colour in ((255, 0, 0), (0, 0, 255))]
    data = packed(frames[0], "GIF", save_all=True, append_images=frames[1:], duration=100)

    decoded = decode(data, "moves.gif")

    assert decoded.rgb[4, 4].tolist() == [255, 0, 0]
    assert "first frame" in decoded.remarks[0]


def test_a_png_that_moves_is_told_from_one_that_does_not() -> None:
    frames = [Image.new("RGB", (8, 8), colour) for colour in ((255, 0, 0), (0, 0, 255))]

    moving = decode(packed(frames[0], "PNG", save_all=True, append_images=frames[1:]), "moves.png")

    assert moving.rgb[4, 4].tolist() == [255, 0, 0]
    assert moving.remarks == ("It moves; its first frame is shown.",)
    assert decode(packed(frames[0], "PNG"), "stands.png").remarks == ()


@pytest.mark.parametrize(
    ("data", "sentence"),
    [
        (b"", "the file is empty"),
        (b"a text that is named like a picture\n" * 20, "is no picture that can be read"),
        (packed(slope(), "PNG")[:-40], "is cut off"),
        (packed(slope(400, 300), "JPEG")[:-900], "is cut off"),
        (announced(50_000, 50_000), "has 50000 × 50000 pixels, more than the 64 million"),
        (announced(0, 7), "has no pixels (0 × 7)"),
        (b"P6\n# ours\n50000 50000\n255\n", "has 50000 × 50000 pixels, more than the 64 million"),
        (announced(40, 30), "is damaged"),
        (b"P6\n0 0\n255\n", "has no pixels (0 × 0)"),
    ],
    ids=["empty", "text", "cut PNG", "cut JPEG", "huge", "zero", "huge PPM", "hollow", "zero PPM"],
)
def test_what_cannot_be_read_is_refused_in_one_sentence(data: bytes, sentence: str, qtlog) -> None:
    with qtlog.disabled(), pytest.raises(FileError) as error:
        decode(data, "odd.png")

    said = str(error.value)
    assert "odd.png" in said
    assert sentence in said
    assert "\n" not in said
    assert len(said) < 200


@pytest.mark.parametrize("size", [(0, 0), (0, 7), (7, 0), (50_000, 50_000)], ids=str)
def test_no_decoder_is_asked_about_a_size_that_cannot_be(size, capfd) -> None:
    with pytest.raises(FileError):
        decode(announced(*size), "odd.png")

    assert capfd.readouterr().err == ""


def test_a_file_that_is_not_there_is_named(tmp_path) -> None:
    with pytest.raises(FileError, match=r"gone\.png: there is no such file"):
        decode_file(tmp_path / "gone.png")


def test_the_dialog_offers_what_can_be_read() -> None:
    assert all(f"*.{kind}" in file_filter() for kind in ("png", "jpg", "bmp", "ppm"))
