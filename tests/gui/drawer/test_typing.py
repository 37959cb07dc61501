"""Typing into the drawer without looking up: by clicks and by keys, the focus where the next key belongs."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QLineEdit

from workbench.circuit.fit.drawer import Drawer, OwnedPart
from workbench.gui.drawer.drawer_side import DrawerSide
from workbench.gui.drawer.told import LeftOutCard
from workbench.gui.widgets import Sign

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints", extend=True)

Key = Qt.Key
VALUE, COUNT, TOLERANCE, MEASURED = range(4)


@pytest.fixture
def side(qtbot, make_bench):
    """Return the drawer's side, alone in its window and with nothing in it."""
    made = DrawerSide(make_bench())
    qtbot.addWidget(made)
    made.resize(520, 420)
    made.show()
    made.activateWindow()
    qtbot.waitUntil(made.isActiveWindow)
    return made


def press(qtbot, side: DrawerSide, *keys: str | Qt.Key) -> None:
    """Press keys where the focus is, which must be the table or a field in it."""
    single = [each for key in keys for each in (key if isinstance(key, str) else [key])]
    for key in single:
        target = QApplication.focusWidget()
        assert target is side.table or side.table.isAncestorOf(target), f"the focus went to {target}"
        qtbot.keyClick(target, key)
        QApplication.processEvents()


def click_new(qtbot, side: DrawerSide) -> None:
    table = side.table
    place = table.cell_at(table.rows.rowCount() - 1, VALUE)
    qtbot.mouseClick(table.viewport(), Qt.MouseButton.LeftButton, pos=place)


def at(side: DrawerSide) -> tuple[int, int]:
    here = side.table.currentIndex()
    return here.row(), here.column()


def open_field(side: DrawerSide) -> QLineEdit | None:
    fields = [field for field in side.table.viewport().findChildren(QLineEdit) if field.isVisible()]
    return fields[0] if fields else None


def parts(side: DrawerSide) -> list[float]:
    return [part.ohms for part in side.own.drawer.parts]


def test_values_are_typed_one_below_the_other_after_one_click(qtbot, side):
    click_new(qtbot, side)

    press(qtbot, side, "4k7", Key.Key_Return, "1k", Key.Key_Return, "470", Key.Key_Return)

    assert parts(side) == [4700.0, 1000.0, 470.0]
    assert at(side) == (3, VALUE)
    assert side.table.hasFocus()


def test_values_are_typed_by_keys_alone(qtbot, side):
    side.table.setFocus(Qt.FocusReason.TabFocusReason)

    press(qtbot, side, "4k7", Key.Key_Enter, Key.Key_Return, "1k", Key.Key_Return)

    assert parts(side) == [4700.0, 1000.0]


def test_tab_goes_from_value_to_measured_and_to_the_next_value(qtbot, side):
    side.table.setFocus()

    press(qtbot, side, "4k7", Key.Key_Tab)
    assert at(side) == (0, COUNT)
    press(qtbot, side, "12", Key.Key_Tab, "5", Key.Key_Tab, "4k68", Key.Key_Tab)
    assert at(side) == (1, VALUE)
    press(qtbot, side, "470", Key.Key_Return)

    assert side.own.drawer == Drawer((OwnedPart(4680.0, 12, 0.05, 4700.0), OwnedPart(470.0)))


def test_tab_steps_over_what_needs_no_typing_and_back(qtbot, side):
    side.own.put(Drawer((OwnedPart(1e3),)))
    side.table.setFocus()
    side.table.setCurrentIndex(side.table.rows.index(0, VALUE))

    press(qtbot, side, Key.Key_Tab, Key.Key_Tab, Key.Key_Backtab)

    assert at(side) == (0, COUNT)


def test_tab_leaves_the_table_from_its_last_row(qtbot, side):
    side.table.setFocus()

    qtbot.keyClick(side.table, Key.Key_Tab)

    assert not side.table.hasFocus()


def test_what_is_no_value_stays_in_its_field_until_it_is_one(qtbot, side):
    click_new(qtbot, side)

    press(qtbot, side, "banana", Key.Key_Return)
    assert open_field(side).text() == "banana"
    assert open_field(side).property("state") == "fails"
    assert "“banana” is not understood" in side.said.text
    field = open_field(side)
    field.selectAll()
    press(qtbot, side, "1k", Key.Key_Return)

    assert parts(side) == [1000.0]
    assert side.said.text == ""


def test_escape_leaves_what_was_no_value_and_its_sentence(qtbot, side):
    click_new(qtbot, side)

    press(qtbot, side, "banana", Key.Key_Tab, Key.Key_Escape)

    assert open_field(side) is None
    assert side.said.text == ""
    assert side.table.hasFocus()


def test_what_is_no_value_is_told_of_when_the_focus_goes(qtbot, side):
    click_new(qtbot, side)
    press(qtbot, side, "banana")

    side.read.setFocus()
    QApplication.processEvents()

    assert open_field(side) is None
    assert "“banana” is not understood" in side.said.text
    assert side.read.hasFocus()


def test_the_cell_that_is_typed_into_is_marked(qtbot, side):
    side.own.put(Drawer((OwnedPart(1e3),)))
    side.table.setFocus()

    def marked(column: int) -> bool:
        side.table.setCurrentIndex(side.table.rows.index(0, column))
        QApplication.processEvents()
        box = side.table.visualRect(side.table.currentIndex())
        picture = side.table.viewport().grab().toImage()
        return picture.pixelColor(box.right() - 1, box.center().y()) == side.bench.theme.color("accent")

    assert marked(VALUE)
    assert marked(MEASURED)


def test_typing_where_nothing_is_kept_says_why(qtbot, side):
    side.own.put(Drawer((OwnedPart(1e3),)))
    side.table.setFocus()

    side.table.setCurrentIndex(side.table.rows.index(1, COUNT))
    press(qtbot, side, "5")
    assert side.said.text.startswith("First the value")
    side.table.setCurrentIndex(side.table.rows.index(0, 4))
    press(qtbot, side, Key.Key_Return)

    assert side.said.text.startswith("What is on this board is counted")
    assert open_field(side) is None


def test_backspace_opens_a_cell_and_takes_no_row_out(qtbot, side):
    side.own.put(Drawer((OwnedPart(1e3, 12),)))
    side.table.setFocus()
    side.table.setCurrentIndex(side.table.rows.index(0, COUNT))

    press(qtbot, side, Key.Key_Backspace, Key.Key_Backspace, Key.Key_Return)

    assert side.own.drawer == Drawer((OwnedPart(1e3),))


def test_a_measured_value_far_from_what_is_printed_is_kept_with_a_question(qtbot, side):
    side.table.setFocus()

    press(qtbot, side, "2k2", Key.Key_Tab, Key.Key_Tab, Key.Key_Tab, "9999", Key.Key_Return)

    assert side.own.drawer == Drawer((OwnedPart(9999.0, nominal_ohms=2200.0),))
    assert side.said.text == "9.999 kΩ measured where 2.2 kΩ is printed: is that meant?"
    assert side.said.said.sign is Sign.WARNS
    assert side.table.rows.rows[0].sign is Sign.WARNS


@pytest.mark.parametrize(
    ("counts", "words"),
    [
        ((None,), "1 row, as many as you like"),
        ((1,), "1 row, 1 resistor"),
        ((12, None), "2 rows, 12 resistors and more"),
    ],
)
def test_what_there_is_is_counted_in_words(side, counts, words):
    side.own.put(Drawer(tuple(OwnedPart(1e3 * (n + 1), count) for n, count in enumerate(counts))))

    assert side.count.text() == words


def test_rows_left_out_are_all_listed_and_go_when_hidden_or_out_of_date(qtbot, side):
    side.add_rows("1k\nbanana\n2k,many\n-3\n4k,0\n")

    assert parts(side) == [1000.0, 2000.0]
    assert side.said.text == "3 rows are left out."
    qtbot.mouseClick(side.said.which, Qt.MouseButton.LeftButton)
    card = side.findChild(LeftOutCard)
    rows = card.list.text().splitlines()
    assert [row.split(" is left out: ")[0] for row in rows] == ["Row 2", "Row 4", "Row 5"]
    card.close()

    qtbot.mouseClick(side.said.hide_it, Qt.MouseButton.LeftButton)
    assert not side.said.isVisible()

    side.add_rows("3k\nbig\n")
    assert side.said.text.startswith("Row 2 is left out: “big”")
    side.own.take_back()
    assert not side.said.isVisible()
