"""Cards stay inside the window, also where it is low and the text is large."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QScrollArea

from workbench.circuit.wish import Shape

CARDS = ("choose_mode", "make_ladder", "preferences", "cautions", "keys", "help", "find")


@pytest.mark.parametrize("name", CARDS)
@pytest.mark.parametrize(("size", "large"), [((1280, 800), False), ((1600, 900), True), ((1024, 640), False)])
def test_every_card_lies_inside_the_window(desk, name, size, large) -> None:
    desk.window.resize(*size)
    desk.bench.project_large(on=large)
    desk.window.resize(*size)

    getattr(desk.cards, name)()

    card = desk.cards.open_card
    assert desk.window.rect().contains(card.geometry())
    card.close()


def test_what_a_low_window_has_no_room_for_is_scrolled_to(desk, qtbot) -> None:
    desk.window.resize(1600, 900)
    desk.bench.project_large(on=True)
    desk.window.resize(1600, 900)

    card = desk.cards.preferences()
    (area,) = card.findChildren(QScrollArea)
    assert area.verticalScrollBar().maximum() > 0
    for _ in range(12):
        qtbot.keyClick(card, Qt.Key.Key_Tab)
        focused = QApplication.focusWidget()
        seen = focused.visibleRegion().boundingRect()
        assert seen.height() >= focused.height() - 2
    card.close()


def test_a_card_with_room_is_not_scrolled(desk) -> None:
    card = desk.cards.preferences()

    assert not card.findChildren(QScrollArea)
    card.close()


def test_a_low_window_shows_fewer_rows_at_once(desk) -> None:
    high = desk.cards.choose_mode().list.height()
    desk.cards.open_card.close()
    desk.window.resize(1600, 900)
    desk.bench.project_large(on=True)
    desk.window.resize(1600, 900)

    card = desk.cards.choose_mode()

    row = desk.bench.px(30)
    assert 3 <= card.list.height() / row < high / 30
    assert card.change.mapTo(desk.window, card.change.rect().bottomLeft()).y() < desk.window.height()
    card.close()


@pytest.mark.parametrize("width", [1280, 1600, 1920])
def test_the_new_ladder_is_not_wider_than_a_projected_window(desk, width) -> None:
    desk.window.resize(width, 900)
    desk.bench.project_large(on=True)
    desk.window.resize(width, 900)

    card = desk.cards.make_ladder()

    for area in card.findChildren(QScrollArea):
        assert area.widget().width() <= area.viewport().width()
    assert card.about.text() == card.shapes[Shape.WEIGHTED].about
    card.close()
