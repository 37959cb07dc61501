"""What tests of the Tolerance page do to it."""

from PySide6.QtCore import Qt


def drawn(qtbot, shown) -> None:
    """Wait for the boards of the project as it is."""
    qtbot.waitUntil(
        lambda: not shown.boards.busy and shown.boards.of(shown.bench.session.project) is not None
    )


def type_in(qtbot, entry, text: str) -> None:
    entry.setFocus()
    entry.selectAll()
    qtbot.keyClicks(entry, text)
    qtbot.keyClick(entry, Qt.Key.Key_Return)
