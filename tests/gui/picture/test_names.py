"""Whatever can take the focus on these pages has a name, and Tab reaches it."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from tests.gui.test_accessibility import unnamed


@pytest.mark.parametrize("page", ["picture", "palette", "working"])
def test_everything_on_a_page_has_a_name(desk, page) -> None:
    desk.window.pages.open(page)

    assert unnamed(desk.window) == []


def test_everything_on_the_list_of_faults_has_a_name(desk) -> None:
    assert unnamed(desk.fault_list.open()) == []


def test_the_page_can_be_used_without_a_mouse(desk, qtbot) -> None:
    desk.window.pages.open("picture")
    page = desk.window.pages.stack.currentWidget()
    page.view.setFocus()
    reached = set()
    for _ in range(40):
        QTest.keyClick(desk.window.focusWidget(), Qt.Key.Key_Tab)
        reached.add(desk.window.focusWidget())

    for widget in (*page.sides.values(), page.working, page.scene.load, page.scene.shown.choice):
        assert widget in reached, widget
