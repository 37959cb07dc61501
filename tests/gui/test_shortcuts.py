"""Keys: none stands twice, the usual ones do the usual, and the table can be read."""

from collections import Counter

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence

CTRL = Qt.KeyboardModifier.ControlModifier


def keys_by_scope(desk) -> list[tuple[object, str]]:
    """Return every key with the widget it is bound to; none for the whole window."""
    actions = desk.bench.actions
    return [
        (spec.scope, key.toString()) for spec in actions.specs for key in actions.action(spec.id).shortcuts()
    ]


def open_all_pages(desk) -> None:
    for page, _ in desk.window.pages.titles:
        desk.window.pages.open(page)


def test_no_key_stands_twice(desk) -> None:
    open_all_pages(desk)

    counts = Counter(keys_by_scope(desk))

    assert [key for key, count in counts.items() if count > 1] == []


def test_no_key_of_a_panel_hides_one_of_the_window(desk) -> None:
    open_all_pages(desk)
    keys = keys_by_scope(desk)
    window = {key for scope, key in keys if scope is None}

    assert [key for scope, key in keys if scope is not None and key in window] == []


def test_standard_keys_come_from_the_desktop(desk) -> None:
    wanted = {
        "file.open": QKeySequence.StandardKey.Open,
        "file.save": QKeySequence.StandardKey.Save,
        "edit.undo": QKeySequence.StandardKey.Undo,
        "help.here": QKeySequence.StandardKey.HelpContents,
    }

    for spec_id, key in wanted.items():
        assert desk.bench.actions.action(spec_id).shortcuts() == QKeySequence.keyBindings(key), spec_id


def test_every_action_says_what_it_does(desk) -> None:
    open_all_pages(desk)

    for spec in desk.bench.actions.specs:
        assert spec.text.strip() == spec.text != ""
        assert not spec.text.endswith("."), spec.text
        assert not spec.tip or spec.tip.endswith("."), spec.tip


def test_keys_reach_the_window(desk, qtbot) -> None:
    qtbot.keyClick(desk.window, Qt.Key.Key_1, Qt.KeyboardModifier.AltModifier)
    assert desk.window.pages.page == desk.window.pages.titles[0][0]

    qtbot.keyClick(desk.window, Qt.Key.Key_1, Qt.KeyboardModifier.AltModifier)
    assert desk.window.pages.page == ""


def test_keys_card_lists_the_table(desk, qtbot) -> None:
    card = desk.cards.keys()

    with_keys = [spec for spec in desk.bench.actions.specs if desk.bench.actions.keys(spec.id)]
    assert card.list.rows == len(with_keys)
    qtbot.keyClicks(card.field, "ctrl+k")
    assert card.list.rows == 1
    card.close()
