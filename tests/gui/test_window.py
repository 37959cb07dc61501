"""The frame: themes, folding, pages, the split, and what is remembered."""

from dataclasses import replace

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QApplication, QLineEdit

from tests.gui.gestures import drag
from workbench.bringup.faults import fault_named
from workbench.gui.settings import BASE_POINTS, PAGE, PAGE_HEIGHT, SPLIT, THEME
from workbench.gui.start.panels import PANELS
from workbench.gui.theme import THEMES, ThemeName


def colour_at(window, place: QPoint) -> str:
    """Return the colour of one pixel of a window."""
    return window.grab().toImage().pixelColor(place).name()


@pytest.mark.parametrize("name", [ThemeName.DUSK, ThemeName.PAPER], ids=lambda name: name.value)
def test_theme_is_painted_at_once(desk, name) -> None:
    desk.bench.settings.set(THEME, ThemeName.PAPER)
    desk.bench.settings.set(THEME, name)

    theme = THEMES[name]
    bar = QPoint(desk.window.width() // 2, 3)
    assert colour_at(desk.window, bar) == theme.window
    assert QApplication.palette().window().color().name() == theme.window


def test_theme_comes_back_next_time(make_desk) -> None:
    first = make_desk()
    first.bench.actions.action("view.theme-paper").trigger()
    first.window.close()

    assert make_desk().bench.theme.name is ThemeName.PAPER


def test_larger_text_makes_larger_controls(desk) -> None:
    before = desk.window.top.bench_row.mode.sizeHint().height()

    desk.bench.settings.set(BASE_POINTS, 14.0)

    assert desk.window.top.bench_row.mode.sizeHint().height() > before


def test_page_unfolds_to_its_share_and_the_bench_stays(desk) -> None:
    window = desk.window
    window.pages.open("levels")
    QApplication.processEvents()

    share = window.pages.stack.height() / (window.height() - window.top.height())
    assert share == pytest.approx(window.bench.settings.get(PAGE_HEIGHT), abs=0.01)
    assert window.network.isVisible()
    assert window.scanline.isVisible()
    assert window.foot.height() == window.bench.px(window.foot.FOLDED)


def test_open_page_is_open_next_time(make_desk) -> None:
    first = make_desk()
    first.window.pages.open("timing")
    first.window.close()

    assert make_desk().window.pages.page == "timing"


def test_tab_folds_the_page_it_opened(desk, qtbot) -> None:
    tab = desk.window.pages.tabs.tabs["levels"]
    for expected in ("levels", ""):
        qtbot.mouseClick(tab, Qt.MouseButton.LeftButton)
        assert desk.window.pages.page == expected
        assert tab.isChecked() is bool(expected)


def test_dragging_the_tabs_up_opens_and_down_folds(desk) -> None:
    tabs = desk.window.pages.tabs
    free = QPoint(tabs.width() // 2, 10)

    drag(tabs, free, free - QPoint(0, 200), free - QPoint(0, 500))
    assert desk.window.pages.page
    QApplication.processEvents()
    drag(tabs, free, free + QPoint(0, 300), free + QPoint(0, 900))
    assert desk.window.pages.page == ""
    assert desk.bench.settings.get(PAGE) == ""


def test_split_is_remembered_as_a_share(desk) -> None:
    split = desk.window.split
    handle = split.handle(1)

    drag(handle, QPoint(2, 300), QPoint(152, 300), QPoint(202, 300))

    share = split.sizes()[0] / split.width()
    assert desk.bench.settings.get(SPLIT) == pytest.approx(share, abs=0.005)
    desk.window.resize(1600, 1000)
    QApplication.processEvents()
    assert split.sizes()[0] / split.width() == pytest.approx(share, abs=0.01)


def test_captions_go_first_when_the_width_is_short(desk) -> None:
    row = desk.window.top.bench_row
    assert row.mode.show_caption
    assert row.linked.text() == "channels linked"

    desk.window.resize(1280, 800)
    QApplication.processEvents()

    assert not row.mode.show_caption
    assert row.linked.text() == "linked"
    assert desk.window.width() == 1280
    assert row.projector.geometry().right() <= row.width()


@pytest.mark.parametrize("size", [(960, 540), (1280, 800), (1920, 1080)], ids=str)
def test_nothing_in_the_bar_is_cut_off(desk, size) -> None:
    desk.window.resize(*size)
    QApplication.processEvents()
    row = desk.window.top.bench_row

    short = [
        type(widget).__name__
        for widget in (row.name, row.undo, row.redo, row.mode, row.ladder, row.linked, row.projector)
        if widget.width() < widget.sizeHint().width()
    ]

    assert short == []


def test_smallest_window_still_shows_both_panels(desk) -> None:
    desk.window.resize(100, 100)
    QApplication.processEvents()

    assert desk.window.width() <= 900
    assert desk.window.height() <= 500
    assert min(desk.window.split.sizes()) > 200


HALF_HD = (960, 540)
"""A screen of 1920 × 1080 dots at twice the scale. [px]"""


def beyond(window, widget) -> bool:
    """Return whether a part of a widget lies outside its window."""
    corner = widget.mapTo(window, QPoint(0, 0))
    return not window.rect().contains(widget.rect().translated(corner))


@pytest.mark.parametrize("page", ["", *(spec.id for spec in PANELS.pages)])
def test_every_page_fits_into_half_hd(desk, page) -> None:
    window = desk.window
    if page:
        window.pages.open(page)
    window.resize(*HALF_HD)
    QApplication.processEvents()

    assert (window.width(), window.height()) == HALF_HD
    parts = (window.top, window.network, window.scanline, window.pages.tabs, window.findings, window.white)
    bar = (window.top.bench_row.projector, window.top.bench_row.finder)
    assert [type(part).__name__ for part in (*parts, *bar) if beyond(window, part)] == []
    assert window.foot.height() == window.bench.px(window.foot.FOLDED)
    assert window.pages.stack.height() >= 180 or not page


def test_what_a_narrow_bar_leaves_out_is_in_the_name_s_tip(desk) -> None:
    row = desk.window.top.bench_row
    assert row.saved.isVisible()

    desk.window.resize(*HALF_HD)
    QApplication.processEvents()

    assert not row.saved.isVisible()
    assert row.saved.text() in row.name.toolTip()


@pytest.mark.parametrize("name", ["dusk", "paper"])
def test_every_field_is_inked_for_the_theme_that_came_last(desk, name) -> None:
    desk.bench.settings.set(THEME, ThemeName.PAPER if name == "dusk" else ThemeName.DUSK)
    desk.bench.settings.set(THEME, ThemeName(name))
    text = THEMES[ThemeName(name)].text

    inks = {
        type(w).__name__: w.palette().color(w.foregroundRole()).name()
        for w in desk.window.findChildren(QLineEdit)
        if w.isVisible() and w.isEnabled()
    }

    assert inks
    assert set(inks.values()) == {text}


def test_the_bench_makes_room_for_the_banner_of_faults(desk, qtbot) -> None:
    desk.window.resize(1920, 1080)
    desk.window.pages.open("picture")
    qtbot.wait(50)
    bench, page = desk.window.split.height(), desk.window.pages.stack.height()

    desk.faults.turn(fault_named("no-v-sync"), on=True)
    shorter = bench, page - desk.window.banner.height()
    qtbot.waitUntil(
        lambda: (desk.window.split.height(), desk.window.pages.stack.height()) == shorter, timeout=2000
    )

    desk.faults.end_all()
    qtbot.waitUntil(
        lambda: (desk.window.split.height(), desk.window.pages.stack.height()) == (bench, page), timeout=2000
    )


def test_a_warning_goes_once_something_else_went_well(desk) -> None:
    desk.bench.notice("A file that is cut short.", warning=True)
    assert desk.window.notices.text

    desk.bench.apply("Rename", lambda project: replace(project, name="Pier"))
    assert desk.window.notices.text == ""

    desk.bench.notice("Written.")
    desk.bench.apply("Rename", lambda project: replace(project, name="Quay"))
    assert desk.window.notices.text == "Written."


@pytest.mark.parametrize("size", [(960, 540), (1280, 800), (1920, 1080)], ids=str)
@pytest.mark.parametrize("page", ["", "picture"], ids=["folded", "picture"])
def test_a_notice_covers_neither_page_nor_bench(desk, size, page) -> None:
    window = desk.window
    window.resize(*size)
    desk.bench.notice("slope.png, 640 × 480 pixels. Its colours were brought from 16 bits to 8.")
    if page:
        window.pages.open(page)
    QApplication.processEvents()

    over = window.notices.geometry()
    assert window.rect().contains(over)
    for part in (window.split, *((window.pages.stack,) if page else ()), *window.pages.tabs.tabs.values()):
        place = part.rect().translated(part.mapTo(window, QPoint(0, 0)))
        assert not over.intersects(place), type(part).__name__
