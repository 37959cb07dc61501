"""The Picture page by what a person does with it."""

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtCore import QMimeData, QPoint, QRect, Qt, QUrl
from PySide6.QtGui import QGuiApplication, QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from tests.gui.gestures import drop_files
from tests.gui.picture.pictures import packed, slope
from workbench.bringup.faults import fault_named
from workbench.circuit.network import PartId
from workbench.gui.picture.images import Side, enlarged
from workbench.gui.picture.monitor_panel import with_total
from workbench.gui.picture.scene_panel import TRANSFERS
from workbench.gui.picture.verdict import wordings
from workbench.picture.light import srgb_bytes
from workbench.picture.scene import Card, Dither, Fit
from workbench.project.document import Channel, Direction, MonitorRange
from workbench.project.edits.drive import set_monitor
from workbench.project.edits.parts import set_value
from workbench.project.edits.picture import set_dither
from workbench.project.edits.timing import set_counts, set_pixel_clock
from workbench.timing.mode import Axis, Mode, Polarity
from workbench.timing.search import find_mode
from workbench.waveform.monitor import Monitor, Screen
from workbench.waveform.verdict import Standing


@pytest.fixture
def page(desk, qtbot):
    """The open page, its picture whole."""
    desk.window.pages.open("picture")
    made = desk.window.pages.stack.currentWidget()
    qtbot.waitUntil(lambda: made.looking.shot is not None and made.looking.shot.whole, timeout=10_000)
    return made


@pytest.fixture
def photo(tmp_path: Path) -> Path:
    path = tmp_path / "slope.png"
    path.write_bytes(packed(slope(320, 240), "PNG"))
    return path


def settled(page, qtbot) -> None:
    qtbot.waitUntil(
        lambda: page.looking.shot.whole and page.looking.shot.result is page.bench.live.result, timeout=10_000
    )


def load(page, qtbot, path: Path) -> None:
    page.bench.images.load(path)
    qtbot.waitUntil(lambda: page.bench.session.project.picture.image is not None, timeout=10_000)
    page.bench.live.refresh()
    settled(page, qtbot)


def dot(page, x: int, y: int) -> tuple[int, int, int]:
    return page.view.image.pixelColor(x, y).getRgb()[:3]


def test_colour_bars_are_seen_in_their_colours(page) -> None:
    assert [dot(page, x, 240) for x in (40, 120, 200, 600)] == [
        (255, 255, 255),
        (255, 255, 0),
        (0, 255, 255),
        (0, 0, 0),
    ]


def test_an_edit_shows_at_once_small_and_soon_whole(page, qtbot) -> None:
    page.bench.apply("Weak", lambda p: set_value(p, Channel.RED, PartId("R1"), 5000.0))
    page.bench.live.refresh()

    assert not page.looking.shot.whole
    assert page.looking.shot.result is page.bench.live.result
    assert page.view.image.width() < 250
    settled(page, qtbot)
    assert page.view.image.width() == 640
    assert dot(page, 40, 240)[0] < 230


def test_a_click_goes_to_scanline_cursor_pins_and_working(page, desk, qtbot) -> None:
    place = page.view.place_of((150, 222)).center().toPoint()

    QTest.mouseClick(page.view, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, place)
    desk.live.refresh()

    column, row = page.view.pixel
    assert abs(column - 150) <= 2
    assert abs(row - 222) <= 2
    assert desk.session.project.scanline == row + 1
    assert desk.bench.view.pixel == 160 + column
    assert page.chain._shown.working.column == column
    assert [c.code for c in page.chain._shown.working.channels] == [31, 31, 0]


@pytest.mark.parametrize("screen", list(Screen), ids=lambda screen: screen.value)
def test_the_working_says_what_the_picture_shows_where_the_picture_is_taken_for_black(
    page, desk, qtbot, screen
) -> None:
    desk.faults.turn(fault_named("short-back-porch"), on=True)
    page.looking.set_monitor(Monitor(screen, auto_adjust=False))
    settled(page, qtbot)
    page.look_at(100, 240)
    desk.live.refresh()
    settled(page, qtbot)

    working = page.chain._shown.working
    column, row = (int(centre) for centre in page.looking.shot.places.dot_of(100, 240))
    shown = srgb_bytes([channel.light for channel in working.channels])
    np.testing.assert_allclose(shown.astype(int), dot(page, column, row), atol=2)
    assert working.channels[0].black_volts > 0.3
    assert working.lightness < 80
    assert ("spot passes" in page.monitor.found.text()) == (screen is Screen.TUBE)


def test_arrows_walk_and_leave_nothing_to_be_saved(page, desk, qtbot) -> None:
    page.look_at(100, 100)
    page.view.setFocus()

    for _ in range(3):
        QTest.keyClick(page.view, Qt.Key.Key_Down)
    QTest.keyClick(page.view, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)

    assert page.view.pixel == (108, 103)
    assert desk.session.project.scanline == 104
    assert not desk.session.dirty
    assert not desk.session.can_undo


def test_the_plots_cursor_moves_the_picture(page, desk) -> None:
    desk.bench.view.look_at(160 + 333)

    assert page.view.pixel == (333, desk.session.project.scanline - 1)
    desk.bench.view.look_at(20)
    assert page.view.pixel is None
    assert "blanking" in page.place.text()


def test_a_held_code_lets_go_when_a_pixel_is_chosen(page, desk) -> None:
    desk.bench.view.hold(tuple(Channel), 3)

    page.look_at(10, 10)

    assert desk.bench.view.held(Channel.RED) is None


def test_the_three_sides(page, qtbot) -> None:
    page.sides[Side.SENT].click()
    assert page.verdict.text.startswith("settled levels")
    page.sides[Side.APART].click()
    assert max(dot(page, x, 240)[0] for x in (40, 120, 600)) <= 2
    page.sides[Side.SEEN].click()
    assert page.verdict.text.startswith("a model")


@pytest.mark.parametrize(("fault", "standing"), [("no-h-sync", "no signal"), ("longer-line", "shifted")])
def test_a_fault_of_the_signal_is_said_in_place_of_a_perfect_picture(page, desk, fault, standing) -> None:
    desk.faults.turn(fault_named(fault), on=True)

    assert standing in page.verdict.text
    assert len(page.verdict.text) > 40


@pytest.mark.parametrize(
    ("edit", "standing"),
    [
        (lambda p: set_pixel_clock(p, 37_000_000), "not recognised"),
        (lambda p: set_monitor(p, MonitorRange(60e3, 70e3, 50.0, 75.0)), "out of range"),
    ],
    ids=["odd rate", "out of range"],
)
def test_a_mode_that_no_monitor_knows_is_said(page, desk, edit, standing) -> None:
    desk.bench.apply("Odd", edit)
    desk.live.refresh()

    assert standing in page.verdict.text


@pytest.mark.parametrize(
    "mode",
    [
        Mode(
            "one line",
            "own",
            25_000_000,
            Axis(640, 16, 96, 48, Polarity.NEGATIVE),
            Axis(1, 1, 1, 1, Polarity.NEGATIVE),
        ),
        Mode(
            "one pixel",
            "own",
            1_000_000,
            Axis(1, 1, 1, 1, Polarity.NEGATIVE),
            Axis(1, 0, 1, 0, Polarity.NEGATIVE),
        ),
        find_mode("2560x1600@60"),
    ],
    ids=lambda mode: mode.name,
)
def test_the_smallest_and_the_largest_modes_are_shown(page, desk, qtbot, mode) -> None:
    desk.bench.apply("Mode", lambda p: replace(p, mode=mode, scanline=1))
    desk.live.refresh()
    settled(page, qtbot)
    page.sides[Side.SENT].click()

    assert (page.view.image.width(), page.view.image.height()) == (mode.h.active, mode.v.active)
    page.look_at(mode.h.active - 1, mode.v.active - 1)
    assert page.view.pixel == (mode.h.active - 1, mode.v.active - 1)


def test_without_sync_the_screen_is_dark_and_the_sent_picture_is_still_there(page, desk, qtbot) -> None:
    desk.faults.turn(fault_named("no-v-sync"), on=True)
    settled(page, qtbot)
    assert dot(page, 40, 240) == (0, 0, 0)

    page.sides[Side.SENT].click()
    assert dot(page, 40, 240) == (255, 255, 255)


def test_a_tube_rolls_where_a_panel_finds_nothing(page, desk, qtbot) -> None:
    desk.faults.turn(fault_named("no-v-sync"), on=True)

    page.looking.set_monitor(Monitor(Screen.TUBE))

    assert "rolling" in page.verdict.text


def test_porch_colour_takes_the_light_out_of_the_channel(page, desk, qtbot) -> None:
    desk.faults.turn(fault_named("porch-colour"), on=True, channel=Channel.RED)
    settled(page, qtbot)

    red, green, _ = dot(page, 40, 240)
    assert red < 200
    assert green == 255


def test_a_shifted_picture_points_to_the_right_pixel(page, qtbot) -> None:
    page.looking.set_monitor(Monitor(auto_adjust=False, assumed=find_mode("800x600@60")))
    settled(page, qtbot)

    there = page.view.place_of((300, 200))
    assert there is not None
    column, row = page.view.pixel_at(there.center())
    assert abs(column - 300) <= 1
    assert abs(row - 200) <= 1


def test_an_assumed_total_is_typed(page, qtbot) -> None:
    page.monitor.total.setText("848")
    page.monitor.total.editingFinished.emit()
    assert page.looking.monitor.assumed.h.total == 848

    page.monitor.total.setText("12")
    page.monitor.total.editingFinished.emit()
    assert page.looking.monitor.assumed.h.total == 848
    assert page.monitor.total.property("state") == "fails"

    page.monitor.total.setText("")
    page.monitor.total.editingFinished.emit()
    assert page.looking.monitor.assumed is None


def test_a_total_leaves_room_for_the_picture() -> None:
    vga = find_mode("640x480@60")

    shown = with_total(Monitor(), vga, "850").assumed

    assert (shown.h.total, shown.h.active, shown.h.back_porch) == (850, 640, 48)


# Images ---------------------------------------------------------------------------------------


def test_an_image_is_loaded_fitted_and_dithered(page, desk, qtbot, photo, messages) -> None:
    messages.open_paths.append(photo)
    desk.bench.actions.action("picture.load").trigger()
    qtbot.waitUntil(lambda: desk.session.project.picture.image is not None, timeout=10_000)
    desk.live.refresh()
    settled(page, qtbot)

    assert desk.session.project.picture.image.name == "slope.png"
    assert dot(page, 630, 4)[0] > 230
    page.scene.dither.choice.chosen.emit(list(Dither).index(Dither.NEAREST))
    page.scene.fit.choice.chosen.emit(list(Fit).index(Fit.AS_IT_IS))
    desk.live.refresh()
    picture = desk.session.project.picture
    assert (picture.dither, picture.fit) == (Dither.NEAREST, Fit.AS_IT_IS)
    page.look_at(0, 0)
    assert page.chain._shown.working.channels[0].wanted == 0
    page.scene.shown.choice.chosen.emit(list(Card).index(Card.STRIPES))
    assert desk.session.project.picture.image is None


def test_the_scanline_shows_the_images_own_row(page, desk, qtbot, photo) -> None:
    load(page, qtbot, photo)
    page.look_at(320, 200)
    desk.live.refresh()

    result = desk.live.result
    np.testing.assert_array_equal(result.scanline.codes[:, 160:], result.picture.frame()[:, 200])


def test_diffused_rows_settle_in_the_plot_too(page, desk, qtbot, photo) -> None:
    load(page, qtbot, photo)
    desk.bench.apply("Diffuse", lambda p: set_dither(p, Dither.DIFFUSED))
    desk.live.refresh()

    qtbot.waitUntil(lambda: desk.live.result.picture.settled, timeout=10_000)

    def agrees() -> bool:
        result = desk.live.result
        row = result.picture.frame()[:, result.scanline.number - 1]
        return bool((result.scanline.codes[:, 160:] == row).all())

    qtbot.waitUntil(agrees, timeout=10_000)


def test_a_dropped_image_is_shown(desk, qtbot, photo) -> None:
    assert drop_files(desk.window, str(photo))

    qtbot.waitUntil(lambda: desk.session.project.picture.image is not None, timeout=10_000)
    assert desk.window.pages.page == "picture"


def test_a_picture_is_pasted(desk, qtbot) -> None:
    image = QImage(8, 6, QImage.Format.Format_RGB32)
    image.fill(Qt.GlobalColor.red)
    QGuiApplication.clipboard().setImage(image)

    desk.bench.actions.action("picture.paste").trigger()

    qtbot.waitUntil(lambda: desk.session.project.picture.image is not None, timeout=10_000)
    kept = desk.session.project.picture.image
    assert (kept.width, kept.height, kept.name) == (8, 6, "pasted picture")


def test_a_copied_file_is_pasted(desk, qtbot, photo) -> None:
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(photo))])
    QGuiApplication.clipboard().setMimeData(data)

    desk.images.paste()

    qtbot.waitUntil(lambda: desk.session.project.picture.image is not None, timeout=10_000)
    assert desk.session.project.picture.image.name == "slope.png"


def test_an_empty_clipboard_is_said(desk) -> None:
    QGuiApplication.clipboard().setText("words")

    desk.images.paste()

    assert "no picture on the clipboard" in desk.window.notices.text


def test_what_is_no_picture_leaves_the_project_alone(desk, qtbot, tmp_path) -> None:
    text = tmp_path / "text.png"
    text.write_text("not a picture\n")
    before = desk.session.project

    desk.images.load(text)

    qtbot.waitUntil(lambda: "is no picture" in desk.window.notices.text, timeout=10_000)
    assert desk.session.project is before


def test_the_picture_is_copied_dot_for_dot(page) -> None:
    page.copy()

    data = QGuiApplication.clipboard().mimeData()
    assert data.hasImage()
    assert QGuiApplication.clipboard().image().width() == 640
    assert "lightness" in data.text()


def test_the_button_shows_the_working(page, desk) -> None:
    page.working.click()

    assert desk.window.pages.page == "working"


def test_a_press_beside_the_picture_does_nothing(page, desk) -> None:
    before = desk.session.project

    QTest.mouseClick(
        page.view, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, QPoint(page.view.width() - 1, 0)
    )

    assert desk.session.project is before


def test_closing_in_the_middle_of_a_look_leaves_nothing_running(make_desk, qtbot) -> None:
    desk = make_desk()
    desk.window.pages.open("picture")
    page = desk.window.pages.stack.currentWidget()
    page.looking._begin()

    desk.window.close()
    assert page.looking._job is None or not page.looking._job._thread.is_alive()


def test_dark_borders_deceive_a_monitor_that_adjusts_itself_and_that_is_said(
    page, desk, qtbot, tmp_path
) -> None:
    wide = tmp_path / "wide.png"
    wide.write_bytes(packed(slope(400, 100).point(lambda v: 255), "PNG"))

    page.looking.set_monitor(Monitor(auto_adjust=True))
    load(page, qtbot, wide)

    # 640 × 160 in the middle of 480 lines: 160 dark ones above.
    assert page.looking.shot.moved == (0, 160)
    assert "took bright edges for the picture's: moved by 0 px and 160 lines" in page.verdict.text
    page.looking.set_monitor(Monitor(auto_adjust=False))
    settled(page, qtbot)
    assert page.looking.shot.moved == (0, 0)


def test_a_difference_is_shown_four_times(page, desk, qtbot) -> None:
    page.sides[Side.APART].click()

    assert "difference, 4 times" in page.verdict.text
    assert enlarged(np.array([0, 3, 63, 64, 200], np.uint8)).tolist() == [0, 12, 252, 252, 252]


@pytest.mark.parametrize("width", [1280, 1920])
def test_nothing_moves_when_an_image_takes_the_place_of_a_card(page, desk, qtbot, photo, width) -> None:
    desk.window.resize(width, 800)
    moving = (page.scene.load, page.scene.paste, page.scene.shown, page.chain, page.view, page._tabs)

    def places() -> list[QRect]:
        QApplication.processEvents()
        return [widget.rect().translated(widget.mapTo(page, QPoint(0, 0))) for widget in moving]

    card = places()
    load(page, qtbot, photo)

    assert page.scene.dither.isVisible()
    assert places() == card


@pytest.mark.parametrize("width", [920, 1180])
def test_on_a_narrow_page_a_cards_settings_lie_in_a_row_and_leave_the_chain_their_column(
    page, desk, qtbot, photo, width
) -> None:
    desk.window.resize(width, 800)
    right = page.chain.geometry().right()
    assert right >= page.width() - desk.bench.px(24)
    assert page._aside.geometry().bottom() < page.place.y() + 2
    assert page.scene.load.isVisible()

    page._show_aside(1)
    assert page.chain.geometry().right() < right - 200
    page._show_aside(0)
    assert page.chain.geometry().right() == right
    load(page, qtbot, photo)

    assert page.chain.geometry().right() < right - 200
    assert page.scene.dither.isVisible()


def test_the_picture_has_the_shape_of_the_screen(page, desk, qtbot) -> None:
    desk.bench.apply("Wide", lambda p: set_counts(p, Direction.HORIZONTAL, active=1312))
    desk.live.refresh()
    settled(page, qtbot)
    page.sides[Side.SENT].click()

    frame = page.view.frame()

    assert page.view.image.width() == 1312
    assert frame.width() / frame.height() == pytest.approx(4 / 3)
    assert page.view.pixel_at(page.view.place_of((1000, 200)).center()) == (1000, 200)


@pytest.mark.parametrize("size", [(1280, 800), (1920, 1080), (1600, 1300)], ids=str)
def test_every_setting_is_in_sight(page, desk, qtbot, photo, size) -> None:
    desk.window.resize(*size)
    load(page, qtbot, photo)

    for number, last in ((0, page.scene.smooth), (1, page.monitor.found)):
        page._show_aside(number)
        qtbot.waitUntil(
            lambda area=page._areas[number]: area.verticalScrollBar().maximum() == 0, timeout=2000
        )
        area = page._areas[number].viewport()
        foot = last.mapTo(area, QPoint(0, last.height())).y()
        assert foot <= area.height()
    if size[1] > 1200:
        assert page.monitor.model.isVisible()
        assert page.monitor.kind.caption.isVisible()


@pytest.mark.parametrize("standing", list(Standing), ids=lambda standing: standing.value)
def test_the_caption_is_said_shorter_and_never_cut(page, standing) -> None:
    sentence = "Taken for 640x480@60, whose line has 800 pixels and not 1600: soft bands, 800 a line."

    for side in Side:
        for moved in ((0, 0), (12, 160)):
            words = wordings(standing, sentence, side, moved)
            assert [len(each) for each in words] == sorted(map(len, words), reverse=True)
    page.verdict.show_verdict(standing, sentence * 4, Side.SEEN, (12, 160))
    assert page.verdict.shown in wordings(standing, sentence * 4, Side.SEEN, (12, 160))[1:]
    assert page.verdict.text in page.verdict.toolTip()


def test_a_transfer_table_is_read_from_a_file(page, photo, qtbot, tmp_path):
    load(page, qtbot, photo)
    table = tmp_path / "curve.txt"
    table.write_text("0 64 255\n")
    page.bench.dialogs.open_paths = [table, None]

    choose = page.scene.transfer.choice
    choose.chosen.emit(len(TRANSFERS))

    assert page.bench.session.project.picture.transfer == pytest.approx((0.0, 64 / 255, 1.0))
    choose.chosen.emit(len(TRANSFERS))
    assert page.bench.session.project.picture.transfer == pytest.approx((0.0, 64 / 255, 1.0))


def test_a_transfer_table_of_nonsense_is_refused_and_nothing_changes(page, photo, qtbot, tmp_path):
    load(page, qtbot, photo)
    table = tmp_path / "curve.txt"
    table.write_text("black\nwhite\n")
    page.bench.dialogs.open_paths = [table]
    heard = []
    page.bench.noticed.connect(heard.append)

    page.scene.transfer.choice.chosen.emit(len(TRANSFERS))

    assert page.bench.session.project.picture.transfer == ()
    assert "line 1: “black” is no number" in heard[0].text


@pytest.mark.parametrize("height", [130, 155, 195, 300])
def test_words_under_the_picture_never_lie_over_it(desk, height) -> None:
    desk.window.pages.open("picture")
    page = desk.window.pages.stack.currentWidget()

    page.resize(960, height)

    assert page.view.geometry().bottom() < page.verdict.y()
    assert page.verdict.geometry().bottom() <= height


@pytest.mark.parametrize("height", [200, 240, 259, 280, 300, 400])
@pytest.mark.parametrize("width", [960, 1280, 1920])
def test_the_button_to_the_working_lies_over_no_row_of_the_chain(page, width, height) -> None:
    page.resize(width, height)

    assert page.working.isVisible() == page.chain.has_foot
    if page.working.isVisible():
        rows_end = page.chain.geometry().bottom() - page.bench.px(62)
        assert page.working.y() > rows_end
