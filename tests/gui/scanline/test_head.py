"""The head of the panel: how it folds, and the number of the line."""

from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

from workbench.gui.scanline import ScanlinePanel
from workbench.gui.settings import BASE_POINTS, THEME
from workbench.gui.theme import ThemeName

Make = Callable[..., ScanlinePanel]
Geometry = dict[QWidget, tuple[int, int, int, int]]


def geometry(panel: ScanlinePanel) -> Geometry:
    """Return where everything visible in the head lies, once it is laid out."""
    QApplication.sendPostedEvents()
    panel.head.row.activate()
    widgets = panel.head.findChildren(QWidget)
    return {widget: widget.geometry().getRect() for widget in widgets if widget.isVisible()}


class TestComingBack:
    @pytest.mark.parametrize("width", [1120, 900, 740])
    def test_from_the_projector(self, make_panel: Make, width: int) -> None:
        panel = make_panel(size=(width, 822))
        before = geometry(panel)

        panel.bench.project_large(on=True)
        projected = geometry(panel)
        panel.bench.project_large(on=False)

        assert projected != before
        assert geometry(panel) == before

    def test_from_another_theme(self, panel: ScanlinePanel) -> None:
        before, settings = geometry(panel), panel.bench.settings

        settings.set(THEME, ThemeName.PAPER)
        paper = geometry(panel)
        settings.set(THEME, ThemeName.DUSK)

        assert paper == before
        assert geometry(panel) == before

    def test_to_larger_text_it_is_as_if_it_started_there(self, make_panel: Make) -> None:
        changed = make_panel()
        changed.bench.settings.set(BASE_POINTS, 13.0)
        after = list(geometry(changed).values())

        assert after == list(geometry(make_panel()).values())


class TestNumber:
    def type_in(self, panel: ScanlinePanel, text: str) -> list[str]:
        """Type a line's number and leave; return what is said."""
        said: list[str] = []
        panel.bench.noticed.connect(lambda notice: said.append(notice.text))
        panel.type_scanline()
        QTest.keyClicks(panel.head.line, text)
        assert panel.head.line.text() == text
        QTest.keyClick(panel.head.line, Qt.Key.Key_Return)
        return said

    def test_one_beyond_the_frame_is_taken_in_and_refused_in_words(self, panel: ScanlinePanel) -> None:
        start = panel.bench.session.project.scanline

        said = self.type_in(panel, "600")

        assert said == ["There is no line 600: this mode has lines 1 … 525."]
        assert panel.bench.session.project.scanline == start
        assert panel.head.line.text() == str(start)

    def test_it_is_refused_where_the_focus_leaves_too(self, panel: ScanlinePanel) -> None:
        panel.type_scanline()
        QTest.keyClicks(panel.head.line, "0")
        panel.plot.setFocus()

        assert panel.head.line.text() == str(panel.bench.session.project.scanline)

    def test_the_last_line_is_one(self, panel: ScanlinePanel) -> None:
        assert self.type_in(panel, "525") == []
        assert panel.bench.session.project.scanline == 525
