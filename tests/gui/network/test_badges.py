"""Badges say what the person's drawer holds of each resistor."""

import pytest

from workbench.circuit.fit.drawer import Drawer, OwnedPart
from workbench.circuit.network import PartId
from workbench.gui.drawer.own_drawer import own_drawer
from workbench.gui.settings import SYMBOLS, Symbols
from workbench.project.document import Channel
from workbench.project.edits.parts import split_in_series

SOME = Drawer((OwnedPart(1e3, 12), OwnedPart(2e3), OwnedPart(4e3, 1)))


def said(panel) -> list[str]:
    return [badge.words for badge in panel.canvas.scene().badges]


@pytest.fixture
def looked(qtbot, make_panel):
    """Make a panel that has looked into a drawer: ``looked(drawer, ...)``."""

    def make(drawer: Drawer, *shown, **size: int):
        panel = make_panel(*shown, **size)
        own_drawer(panel._bench).put(drawer)
        qtbot.waitUntil(lambda: panel.canvas._own is not None, timeout=2000)
        return panel

    return make


def test_each_resistor_says_how_many_there_are(looked) -> None:
    panel = looked(SOME, width=800, height=900)

    missing = "not in the drawer"
    assert said(panel) == [missing, "12 in the drawer", "in the drawer", "1 in the drawer", missing]
    assert [badge.owned for badge in panel.canvas.scene().badges] == [False, True, True, True, False]


def test_an_empty_drawer_and_low_rows_have_no_badges(looked) -> None:
    assert said(looked(Drawer(()), width=800, height=900)) == []
    assert said(looked(SOME, width=540, height=560)) == []


def test_the_badges_follow_the_drawer(looked) -> None:
    panel = looked(SOME, width=800, height=900)

    own_drawer(panel._bench).put(Drawer((OwnedPart(500.0, 3),)))

    assert said(panel)[0] == "3 in the drawer"


def test_there_is_none_where_something_else_stands(looked, project) -> None:
    pair = split_in_series(project, Channel.RED, PartId("R4"))
    panel = looked(SOME, pair, width=800, height=900)
    assert len(said(panel)) == 4, "a bracket stands under the pair"

    panel._bench.settings.set(SYMBOLS, Symbols.ZIGZAG)
    assert said(panel) == []
