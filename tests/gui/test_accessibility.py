"""A walk through the window: whatever can take the focus has a name, and Tab goes as one reads."""

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QWidget

from workbench.gui.window.panel_help import PAGE_HELP


def focusable(root: QWidget) -> list[QWidget]:
    """Return what can be reached by Tab or click, and is seen."""
    return [
        widget
        for widget in [root, *root.findChildren(QWidget)]
        if widget.focusPolicy() != Qt.FocusPolicy.NoFocus
        and widget.focusProxy() is None
        and widget.isVisibleTo(root)
    ]


def spoken(widget: QWidget) -> str:
    """Return what a screen reader calls a widget."""
    interface = QAccessible.queryAccessibleInterface(widget)
    name = interface.text(QAccessible.Text.Name) if interface else ""
    return name or widget.accessibleName()


def unnamed(root: QWidget) -> list[str]:
    return [f"{type(w).__name__} {w.objectName()}" for w in focusable(root) if not spoken(w).strip()]


def test_everything_on_the_bench_has_a_name(desk) -> None:
    assert unnamed(desk.window) == []


@pytest.mark.parametrize("page", ["levels", "tolerance", "timing", "parts"])
def test_everything_on_a_page_has_a_name(desk, page) -> None:
    desk.window.pages.open(page)

    assert unnamed(desk.window) == []


@pytest.mark.parametrize(
    "card", ["find", "choose_mode", "make_ladder", "preferences", "cautions", "keys", "help"]
)
def test_everything_on_a_card_has_a_name(desk, card) -> None:
    opened = getattr(desk.cards, card)()

    assert spoken(opened)
    assert unnamed(opened) == []
    opened.close()


def test_no_two_controls_of_the_bar_share_a_name(desk) -> None:
    names = [spoken(widget) for widget in focusable(desk.window.top)]

    assert len(names) == len(set(names)) > 6


def test_tab_goes_through_the_bar_from_left_to_right(desk, qtbot) -> None:
    bar = desk.window.top.bench_row
    bar.name.setFocus()
    places = []
    while (widget := desk.window.focusWidget()) is not None and bar.isAncestorOf(widget):
        places.append(widget.mapTo(desk.window, QPoint(0, 0)).x())
        qtbot.keyClick(widget, Qt.Key.Key_Tab)

    assert len(places) > 5
    assert places == sorted(places)


def test_tab_leaves_the_bar_for_the_network_before_the_scanline(desk, qtbot) -> None:
    visited: list[str] = []
    desk.window.top.bench_row.name.setFocus()
    parts = {"top": desk.window.top, "network": desk.window.network, "scanline": desk.window.scanline}
    for _ in range(120):
        widget = desk.window.focusWidget()
        here = next((n for n, p in parts.items() if p is widget or p.isAncestorOf(widget)), "below")
        if not visited or visited[-1] != here:
            visited.append(here)
        qtbot.keyClick(widget, Qt.Key.Key_Tab)

    assert visited[:4] == ["top", "network", "scanline", "below"]


def test_every_control_is_large_enough_to_hit(desk) -> None:
    small = [spoken(w) for w in focusable(desk.window) if min(w.width(), w.height()) < 20]

    assert small == []


def test_f1_explains_what_has_the_focus(desk, qtbot) -> None:
    desk.window.top.bench_row.mode.setFocus()

    qtbot.keyClick(desk.window, Qt.Key.Key_F1)

    card = desk.cards.open_card
    assert "porches" in card.text.text()
    card.close()


@pytest.mark.parametrize("part", ["network", "scanline", "findings"])
def test_every_panel_has_help_of_its_own(desk, part) -> None:
    assert getattr(desk.window, part).whatsThis()


def test_f1_explains_every_page(desk, qtbot) -> None:
    for page, title in desk.window.pages.titles:
        desk.window.pages.open(page)
        desk.window.pages.stack.currentWidget().setFocus()

        qtbot.keyClick(desk.window, Qt.Key.Key_F1)

        card = desk.cards.open_card
        assert "Left: the network" not in card.text.text(), title
        assert len(card.text.text()) > 40
        card.close()


def test_f1_explains_the_row_of_tabs(desk, qtbot) -> None:
    desk.window.pages.tabs.tabs["levels"].setFocus()

    qtbot.keyClick(desk.window, Qt.Key.Key_F1)

    card = desk.cards.open_card
    assert "unfolds a page" in card.text.text()
    card.close()


def test_the_ring_follows_a_tab_that_its_page_pushes_up(desk, qtbot) -> None:
    window, tab = desk.window, desk.window.pages.tabs.tabs["timing"]
    tab.setFocus()
    assert window.ring.isVisible()
    before = window.ring.y()

    qtbot.keyClick(tab, Qt.Key.Key_Space)
    qtbot.waitUntil(lambda: window.ring.y() < before - 100)

    around = tab.rect().translated(tab.mapTo(window, tab.rect().topLeft()))
    assert window.ring.geometry().contains(around)


@pytest.mark.parametrize(("key", "page"), [(Qt.Key.Key_4, "timing"), (Qt.Key.Key_6, "monitor")])
def test_f1_explains_the_page_that_a_key_has_just_opened(desk, qtbot, key, page) -> None:
    knobs = desk.window.scanline.ruler.knobs
    knobs[2].setFocus()

    qtbot.keyClick(desk.window, key, Qt.KeyboardModifier.AltModifier)
    qtbot.keyClick(desk.window, Qt.Key.Key_F1)
    assert desk.cards.open_card.text.text() == PAGE_HELP[page]
    desk.cards.open_card.close()

    knobs[1].setFocus()
    qtbot.keyClick(desk.window, Qt.Key.Key_F1)
    assert desk.cards.open_card.text.text().startswith("A knob of the ruler, at the edge where the sync ends")
    desk.cards.open_card.close()


def test_f1_explains_the_page_whose_tab_the_focus_went_along_to(desk, qtbot) -> None:
    desk.window.pages.open("picture")
    desk.window.pages.tabs.tabs["picture"].setFocus()

    qtbot.keyClick(desk.window, Qt.Key.Key_6, Qt.KeyboardModifier.AltModifier)
    qtbot.keyClick(desk.window, Qt.Key.Key_F1)

    assert desk.cards.open_card.text.text() == PAGE_HELP["monitor"]
    desk.cards.open_card.close()


def test_f1_explains_what_has_the_focus_once_a_part_was_chosen(desk, qtbot) -> None:
    desk.window.pages.open("monitor")
    desk.bench.view.choose(desk.session.project.channels.red.resistors[0].id)

    qtbot.keyClick(desk.window, Qt.Key.Key_F1)

    assert desk.cards.open_card.text.text() != PAGE_HELP["monitor"]
    desk.cards.open_card.close()
