"""Images kept by reference: found, missed, changed, gone while open."""

import shutil
from pathlib import Path

import numpy as np
import pytest
from PIL import Image as Drawn

from tests.gui.picture.pictures import packed, slope
from workbench.cli.images import pixels
from workbench.errors import FileError
from workbench.files.project_file import decode, encode
from workbench.gui.picture.loading import load_file, printable
from workbench.gui.picture.references import read_referenced
from workbench.picture.scene import Image

NOISE = Drawn.fromarray(np.random.default_rng(4).integers(0, 256, (600, 800, 3), dtype=np.uint8))


@pytest.fixture
def large(tmp_path: Path) -> Path:
    """A picture that takes more room than a project file has."""
    path = tmp_path / "large.png"
    path.write_bytes(packed(NOISE, "PNG"))
    return path


def notices(desk) -> list[str]:
    said: list[str] = []
    desk.bench.noticed.connect(lambda notice: said.append(notice.text))
    return said


def shown(desk, qtbot, path: Path) -> None:
    """Load an image and wait until the engine has it."""
    desk.images.load(path)
    qtbot.waitUntil(lambda: desk.session.project.picture.image is not None, timeout=10_000)
    desk.live.refresh()
    qtbot.waitUntil(lambda: desk.live.result.picture_problem is None, timeout=10_000)


def test_small_images_are_kept_whole_and_large_ones_by_their_place(tmp_path: Path, large: Path) -> None:
    small = tmp_path / "small.png"
    small.write_bytes(packed(slope(), "PNG"))

    kept, referred = load_file(small)[0], load_file(large)[0]

    assert kept.content
    assert not kept.path
    assert (referred.content, referred.path) == (b"", str(large))
    assert len(referred.sha256 or "") == 64


def test_a_large_image_is_read_again_from_its_place(large: Path) -> None:
    image = load_file(large)[0]

    np.testing.assert_array_equal(read_referenced(image), np.array(NOISE))


def test_an_image_that_moved_is_found_beside_the_project(large: Path, tmp_path: Path) -> None:
    image = load_file(large)[0]
    folder = tmp_path / "elsewhere"
    folder.mkdir()
    shutil.move(large, folder / "large.png")

    assert read_referenced(image, folder / "board.backporch").shape == (600, 800, 3)
    with pytest.raises(FileError, match=r"large\.png is missing: .* the project still knows it"):
        read_referenced(image, tmp_path / "board.backporch")


def test_another_picture_of_the_same_name_is_not_taken(large: Path) -> None:
    image = load_file(large)[0]
    large.write_bytes(packed(slope(), "PNG"))

    with pytest.raises(FileError, match="another picture than the one this project was made with"):
        read_referenced(image)


def test_a_project_with_a_missing_image_opens_says_so_and_keeps_it(make_desk, qtbot, project, large) -> None:
    from workbench.project.edits.picture import show_image

    image = load_file(large)[0]
    large.rename(large.with_suffix(".away"))
    desk = make_desk(show_image(project, image))

    qtbot.waitUntil(lambda: "is missing" in (desk.live.result.picture_problem or ""), timeout=10_000)
    assert decode(encode(desk.session.project)).picture.image == image
    assert not desk.session.dirty

    large.with_suffix(".away").rename(large)
    desk.shelf.look_again()
    qtbot.waitUntil(lambda: desk.live.result.picture_problem is None, timeout=10_000)
    assert desk.live.result.picture.wanted(0, 60) is not None


def test_an_image_that_vanishes_while_open_stays_shown_and_is_said(desk, qtbot, large: Path) -> None:
    shown(desk, qtbot, large)
    said = notices(desk)

    large.unlink()

    qtbot.waitUntil(lambda: any("has gone from" in text for text in said), timeout=10_000)
    desk.live.run_again()
    assert desk.live.result.picture_problem is None


def test_an_image_that_went_is_missed_when_its_project_is_opened_again(
    desk, qtbot, large: Path, tmp_path: Path
) -> None:
    shown(desk, qtbot, large)
    board = tmp_path / "board.backporch"
    board.write_bytes(encode(desk.session.project))
    large.rename(large.with_suffix(".away"))

    assert desk.files.load(board)
    desk.live.refresh()

    qtbot.waitUntil(lambda: "is missing" in (desk.live.result.picture_problem or ""), timeout=10_000)


def test_names_of_files_become_one_line() -> None:
    assert printable("a\nb.png") == "a?b.png"
    assert len(printable("x" * 300)) == 80


def test_nothing_is_asked_of_the_disk_for_a_kept_image(tmp_path: Path) -> None:
    path = tmp_path / "small.png"
    path.write_bytes(packed(slope(), "PNG"))
    image = load_file(path)[0]
    path.unlink()

    np.testing.assert_array_equal(read_referenced(image), np.array(slope()))
    assert isinstance(image, Image)


def test_the_command_line_finds_the_pixels_of_both(large: Path, tmp_path: Path) -> None:
    small = tmp_path / "small.png"
    small.write_bytes(packed(slope(), "PNG"))
    project = tmp_path / "board.backporch"

    np.testing.assert_array_equal(pixels(load_file(small)[0], project), np.array(slope()))
    np.testing.assert_array_equal(pixels(load_file(large)[0], project), np.array(NOISE))
