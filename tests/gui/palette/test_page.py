"""The Palette page: every colour of the board, the greys, how far a picture is off."""

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest

from workbench.gui.palette.greys import grey_words
from workbench.gui.palette.sheet import sheet_of
from workbench.picture.images import kept_image
from workbench.picture.palette import palette
from workbench.picture.scene import Card
from workbench.project.edits.picture import show_image


def even(*bits: int) -> tuple[np.ndarray, ...]:
    return tuple(np.linspace(0.0, 0.7, 1 << n) for n in bits)


@pytest.fixture
def page(desk):
    desk.window.pages.open("palette")
    return desk.window.pages.stack.currentWidget()


@pytest.mark.parametrize("bits", [(1, 1, 1), (3, 3, 2), (5, 5, 5), (5, 6, 5), (0, 3, 1)], ids=str)
def test_a_sheet_holds_every_colour_once(bits: tuple[int, int, int]) -> None:
    sheet = sheet_of(even(*bits), 2.5)
    high, wide, _ = sheet.rgb.shape

    found = {sheet.colour_at(x, y) for y in range(high) for x in range(wide)} - {None}

    assert len(found) == 1 << sum(bits)
    assert not sheet.thinned
    colour = tuple((1 << n) - 1 for n in bits)
    assert sheet.colour_at(*sheet.place_of(colour)) == colour


def test_a_sheet_of_many_codes_is_thinned_and_keeps_the_ends() -> None:
    sheet = sheet_of(even(8, 8, 8), 2.0)

    assert sheet.thinned
    assert all(codes[0] == 0 and codes[-1] == 255 for codes in sheet.codes)
    assert sheet.rgb.size < 2_000_000


def test_a_sheet_shows_white_as_white() -> None:
    sheet = sheet_of(even(3, 3, 2), 2.0)

    x, y = sheet.place_of((7, 7, 3))
    assert sheet.rgb[y, x].tolist() == [255, 255, 255]


def test_greys_of_unequal_channels_are_tinted() -> None:
    # 2 bits of blue never meet 3 bits of red and green: 1/3 is not a seventh.
    words = grey_words(palette(even(3, 3, 2)))

    assert "2 of 8 greys are neutral (L* 0, 100)" in words
    assert grey_words(palette(even(2, 2, 2))).startswith("All 4 greys are neutral")


def test_the_page_counts_and_tells_of_one_colour(page) -> None:
    page.grid.look_at((31, 0, 31))

    assert "32\u2009768 combinations" in page.counts.text()
    assert page.one.text().split() == ["31", "0", "31"]
    assert "0.743 V, 0.000 V, 0.743 V" in page.one_more.text()


def test_the_grid_works_by_keyboard(page) -> None:
    page.grid.setFocus()
    for key in (Qt.Key.Key_Right, Qt.Key.Key_Down, Qt.Key.Key_PageDown, Qt.Key.Key_Left, Qt.Key.Key_Left):
        QTest.keyClick(page.grid, key)

    assert page.grid.colour == (0, 1, 1)


def test_a_colour_becomes_the_solid_card(page, desk) -> None:
    page.grid.look_at((31, 0, 0))

    page.send.click()
    desk.live.refresh()

    assert desk.session.project.picture.card is Card.SOLID
    assert desk.live.result.scanline.codes[:, 400].tolist() == [31, 0, 0]


def test_how_far_an_image_is_off_is_worked_out_aside(page, desk, qtbot) -> None:
    assert "nothing it could be off from" in page.error.text()
    image = kept_image("grey", np.full((6, 8, 3), 100, np.uint8))

    desk.bench.apply("Show", lambda project: show_image(project, image))

    qtbot.waitUntil(lambda: "in the mean" in page.error.text(), timeout=10_000)


def test_the_figures_are_copied(page) -> None:
    page.copy()

    assert "combinations" in QGuiApplication.clipboard().text()


@pytest.mark.parametrize(("aspect", "least"), [(1.4, 0.6), (2.0, 0.85), (3.7, 0.9)])
def test_tiles_use_the_width_there_is(aspect, least) -> None:
    sheet = sheet_of(even(5, 5, 5), aspect)
    high, wide, _ = sheet.rgb.shape

    assert min(1.0, wide / high / aspect) >= least
    assert sheet.colour_at(wide - 1, high - 1) in (None, (31, 31, 31))
    assert 0.0 < sheet.last_row <= 1.0


@pytest.mark.parametrize("colour", [(0, 0, 0), (31, 31, 31)])
def test_the_frame_at_a_corner_is_whole(page, desk, colour) -> None:
    page.grid.look_at(colour)
    accent = desk.bench.theme.color("accent").rgb()
    image = page.grid.grab().toImage()

    spots = [
        (x, y)
        for x in range(image.width())
        for y in range(image.height())
        if image.pixelColor(x, y).rgb() == accent
    ]
    left, right = min(x for x, _ in spots), max(x for x, _ in spots)
    top, foot = min(y for _, y in spots), max(y for _, y in spots)
    assert abs((right - left) - (foot - top)) <= 2
    assert left > 0
    assert top > 0
