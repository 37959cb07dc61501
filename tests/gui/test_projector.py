"""The projector view: one key in, Esc out, everything large, nothing lost."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QHeaderView

from workbench.gui.bench import PROJECTOR_PX
from workbench.gui.monitor.edid_panel import Damages
from workbench.gui.settings import WINDOW
from workbench.gui.theme import ThemeName
from workbench.gui.timing.monitor import Caution
from workbench.gui.timing.page import Refusal
from workbench.gui.widgets import Control, Words
from workbench.gui.window.projector import projected_px


def test_f11_shows_it_and_esc_leaves(desk, qtbot) -> None:
    before = (desk.bench.theme, desk.bench.type, desk.window.windowState())

    qtbot.keyClick(desk.window, Qt.Key.Key_F11)
    assert desk.bench.projecting
    assert desk.window.isFullScreen()
    assert desk.bench.theme.name is ThemeName.PROJECTOR
    assert desk.bench.type.base_px * desk.window.devicePixelRatio() == PROJECTOR_PX

    qtbot.keyClick(desk.window, Qt.Key.Key_Escape)
    assert not desk.bench.projecting
    assert (desk.bench.theme, desk.bench.type, desk.window.windowState()) == before


def test_words_of_the_frame_are_24_pt_and_more(desk) -> None:
    desk.window.projector.turn(on=True)

    words = [w for w in desk.window.top.findChildren(Words) if w.isVisible() and w.text()]

    assert len(words) >= 3
    least_px = min(word.fontInfo().pixelSize() for word in words)
    assert least_px * desk.window.devicePixelRatio() >= PROJECTOR_PX


def test_bar_says_how_to_leave(desk) -> None:
    desk.window.projector.turn(on=True)

    texts = [w.text() for w in desk.window.top.findChildren(Words) if w.isVisible()]

    assert "Esc leaves the projector" in texts
    assert not [c for c in desk.window.top.findChildren(Control) if c.isVisible()]


def test_edits_and_undo_work_there(desk, qtbot) -> None:
    from workbench.project.edits.naming import rename

    desk.window.projector.turn(on=True)
    desk.bench.apply("Rename", lambda project: rename(project, "Slipway"))
    qtbot.waitUntil(lambda: desk.window.top.projector_row.name.text() == "Slipway")

    qtbot.keyClick(desk.window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)

    assert desk.session.project.name != "Slipway"


def test_size_of_the_projector_is_not_kept_for_the_desk(desk) -> None:
    desk.window.projector.turn(on=True)

    desk.window.close()

    assert desk.bench.settings.get(WINDOW) == b""


def test_an_open_page_has_the_projector_for_itself(desk) -> None:
    window = desk.window
    window.pages.open("levels")
    at_desk = window.pages.stack.height()

    window.projector.turn(on=True)
    window.resize(1920, 1080)
    assert not window.split.isVisible()
    assert window.pages.tabs.tabs["levels"].hasFocus()
    window.pages.fold()
    assert window.split.isVisible()
    assert not window.pages.tabs.isVisible()

    window.pages.open("levels")
    window.projector.turn(on=False)
    window.resize(1920, 1080)
    assert window.split.isVisible()
    assert window.pages.stack.maximumHeight() == at_desk


def test_the_focus_goes_along_to_the_tab_of_another_page(desk) -> None:
    desk.window.pages.open("picture")
    desk.window.projector.turn(on=True)
    assert desk.window.pages.tabs.tabs["picture"].hasFocus()

    desk.window.pages.open("clock")

    assert desk.window.pages.tabs.tabs["clock"].hasFocus()


TABLES = ("tolerance", "parts", "monitor", "clock", "working")


def heads(desk) -> list[QHeaderView]:
    """Return the heads of the tables whose columns have names."""
    found = desk.window.findChildren(QHeaderView)
    return [
        head
        for head in found
        if head.orientation() is Qt.Orientation.Horizontal and head.isVisibleTo(head.parent())
    ]


@pytest.mark.parametrize("begin", [False, True], ids=["from the desk", "from the projector"])
def test_heads_of_tables_are_as_large_as_the_words_under_them(desk, begin) -> None:
    desk.window.projector.turn(on=begin)
    for page in TABLES:
        desk.window.pages.open(page)

    for projecting in (not begin, begin):
        desk.window.projector.turn(on=projecting)
        QApplication.processEvents()
        wanted = desk.bench.type.sans(0.86).pixelSize()
        # The words are painted on the viewport, in its face.
        painted = [head.viewport().font().pixelSize() for head in heads(desk)]
        assert len(painted) >= 4
        assert set(painted) == {wanted}


@pytest.mark.parametrize("sentence", [Damages, Refusal, Caution], ids=lambda kind: kind.__name__)
def test_a_sign_stands_before_its_words_at_either_size(qtbot, make_bench, sentence) -> None:
    bench = make_bench()
    shown = sentence(bench, "This is so.") if sentence is Caution else sentence(bench)
    qtbot.addWidget(shown)
    at_desk = shown.contentsRect().left()

    bench.project_large(on=True)
    assert shown.contentsRect().left() == pytest.approx(at_desk * PROJECTOR_PX / 14, abs=1)
    bench.project_large(on=False)
    assert shown.contentsRect().left() == at_desk


@pytest.mark.parametrize(
    ("height", "ratio", "base_px"),
    [(1080, 1.0, 32), (1200, 1.0, 32), (768, 1.0, 32), (540, 2.0, 16), (720, 1.5, 64 / 3), (1080, 2.0, 32)],
)
def test_text_has_as_many_dots_where_the_desktop_enlarges_everything(height, ratio, base_px) -> None:
    assert projected_px(height, ratio) == pytest.approx(base_px)
    assert projected_px(height, ratio) * ratio >= PROJECTOR_PX


def test_on_an_enlarged_desktop_nothing_in_the_bar_is_cut(desk) -> None:
    desk.bench.project_large(on=True, base_px=projected_px(540, 2.0))
    desk.window.resize(960, 540)
    desk.window.pages.open("picture")
    QApplication.processEvents()

    tabs = desk.window.pages.tabs.tabs.values()
    assert all(tab.width() >= tab.sizeHint().width() for tab in tabs)
    words = [word for word in desk.window.top.findChildren(Words) if word.isVisible()]
    assert all(word.width() >= word.sizeHint().width() for word in words)
    assert desk.bench.theme.trace_px == 3.0
