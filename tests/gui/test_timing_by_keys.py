"""The timing work done without a mouse: mode, counts, chip, plan, monitor's row."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QWidget

from tests.edids import base_block
from workbench.gui.settings import EDID

NONE = Qt.KeyboardModifier.NoModifier
PAGES = ("timing", "monitor", "clock")


def press(qtbot, desk, key: Qt.Key, held: Qt.KeyboardModifier = NONE) -> None:
    qtbot.keyClick(desk.window.focusWidget() or desk.window, key, held)


def write(qtbot, desk, text: str) -> None:
    field = desk.window.focusWidget()
    field.selectAll()
    qtbot.keyClicks(field, text)
    press(qtbot, desk, Qt.Key.Key_Return)


def tab_to(qtbot, desk, name: str) -> QWidget:
    """Press Tab until the control of a name has the focus."""
    for _ in range(150):
        if desk.window.focusWidget().accessibleName() == name:
            return desk.window.focusWidget()
        press(qtbot, desk, Qt.Key.Key_Tab)
    raise AssertionError(f"Tab never reaches {name}")


def open_page(qtbot, desk, page: str) -> None:
    number = [spec_id for spec_id, _ in desk.window.pages.titles].index(page) + 1
    press(qtbot, desk, Qt.Key(Qt.Key.Key_0.value + number), Qt.KeyboardModifier.AltModifier)
    assert desk.window.pages.page == page


def test_a_mode_its_counts_and_its_clock_by_keys_alone(desk, qtbot):
    press(qtbot, desk, Qt.Key.Key_M, Qt.KeyboardModifier.ControlModifier)
    qtbot.keyClicks(desk.window.focusWidget(), "800 600 close to 40 MHz")
    press(qtbot, desk, Qt.Key.Key_Return)
    assert desk.session.project.mode.name == "800x600@60"

    open_page(qtbot, desk, "timing")
    tab_to(qtbot, desk, "Line, back porch")
    write(qtbot, desk, "2.15 us")
    assert desk.session.project.mode.h.back_porch == 86

    open_page(qtbot, desk, "clock")
    tab_to(qtbot, desk, "Reference clock")
    for text in ("12M", "16..320", "", "1..7x1..7", "133M"):
        write(qtbot, desk, text)
        press(qtbot, desk, Qt.Key.Key_Tab)
    page = desk.window.pages.stack.currentWidget()
    qtbot.waitUntil(lambda: bool(page.table.rows))
    tab_to(qtbot, desk, "Clock plans")
    # The first plans make 40 MHz exactly, which is in force: the last one does not.
    press(qtbot, desk, Qt.Key.Key_End, Qt.KeyboardModifier.ControlModifier)
    press(qtbot, desk, Qt.Key.Key_Return)
    assert desk.session.undo_label.endswith("of a clock plan")


def test_a_monitors_mode_and_limits_by_keys_alone(desk, qtbot, settings):
    settings.set(EDID, base_block().hex())
    open_page(qtbot, desk, "monitor")

    tab_to(qtbot, desk, "Modes the monitor takes")
    press(qtbot, desk, Qt.Key.Key_End, Qt.KeyboardModifier.ControlModifier)
    press(qtbot, desk, Qt.Key.Key_Return)
    assert desk.session.undo_label.startswith("Choose")

    page = desk.window.pages.stack.currentWidget()
    for _ in range(200):
        press(qtbot, desk, Qt.Key.Key_Tab)
        if desk.window.focusWidget() is page.edid.use:
            break
    press(qtbot, desk, Qt.Key.Key_Space)
    assert desk.session.project.monitor is not None


@pytest.mark.parametrize("page", PAGES)
def test_everything_on_the_page_has_a_name_and_a_size(desk, qtbot, settings, page):
    settings.set(EDID, base_block().hex())
    desk.window.pages.open(page)
    shown = desk.window.pages.stack.currentWidget()
    reached = [
        widget
        for widget in shown.findChildren(QWidget)
        if widget.focusPolicy() != Qt.FocusPolicy.NoFocus and widget.isVisible()
    ]

    assert len(reached) > 5
    for widget in reached:
        spoken = QAccessible.queryAccessibleInterface(widget).text(QAccessible.Text.Name)
        assert spoken or widget.accessibleName(), widget
        assert min(widget.width(), widget.height()) >= 20, widget


def test_undo_after_a_count_is_kept_gives_the_old_count_back(desk, qtbot):
    open_page(qtbot, desk, "timing")
    field = tab_to(qtbot, desk, "Line, back porch")
    was = desk.session.project.mode.h.back_porch
    write(qtbot, desk, str(was + 8))
    assert desk.session.project.mode.h.back_porch == was + 8
    qtbot.waitUntil(desk.bench.actions.action("edit.undo").isEnabled)

    press(qtbot, desk, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)

    assert desk.session.project.mode.h.back_porch == was
    qtbot.waitUntil(lambda: field.text() == str(was))
