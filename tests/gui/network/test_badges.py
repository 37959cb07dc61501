"""Badges say what the person's drawer holds of each resistor."""

import pytest

from workbench.circuit.fit.drawer import Drawer, OwnedPart
from workbench.circuit.network import PartId
from workbench.gui.drawer.own_drawer import own_drawer
from workbench.gui.network.badges import Badge, Owned
from workbench.gui.network.targets import Kind, Target
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

    found = panel.canvas.scene().badges

    missing = "not in the drawer"
    assert said(panel) == [missing, "12 in the drawer", "in the drawer", "1 of 3 in the drawer", missing]
    assert [badge.owned for badge in found] == [Owned.NONE, Owned.ALL, Owned.ALL, Owned.SOME, Owned.NONE]
    assert not any(badge.small for badge in found)


def test_an_empty_drawer_has_no_badges(looked) -> None:
    assert said(looked(Drawer(()), width=800, height=900)) == []


def test_low_rows_have_small_badges_on_the_corners_of_the_parts(looked) -> None:
    panel = looked(SOME, width=540, height=420)

    found = panel.canvas.scene().badges

    assert len(found) == 5
    assert all(badge.small for badge in found)
    for badge in found:
        body = panel.canvas.drawing.symbol(badge.part).body
        assert abs(badge.at.x - body.left) < 10
        assert abs(badge.at.y - body.bottom) < 10


def test_a_small_badge_shows_by_its_shape_what_there_is(looked) -> None:
    panel = looked(SOME, width=540, height=420)
    picture = panel.canvas.grab().toImage()
    green, panel_ink = (panel._bench.theme.color(role) for role in ("passes", "panel"))

    def inked(badge: Badge, part: float) -> bool:
        """Return whether the little drawer is filled at a part of its height."""
        ink = picture.pixelColor(round(badge.at.x + 3), round(badge.at.y - 5 + 10 * part))
        return abs(ink.green() - panel_ink.green()) > 0.2 * abs(green.green() - panel_ink.green())

    by_part = {badge.part: badge for badge in panel.canvas.scene().badges}
    whole, some, none = (by_part[PartId(name)] for name in ("R2", "R4", "R1"))
    assert [inked(whole, at) for at in (0.3, 0.75)] == [True, True]
    assert [inked(some, at) for at in (0.3, 0.75)] == [False, True]
    assert [inked(none, at) for at in (0.3, 0.75)] == [False, False]


def test_tip_and_spoken_words_say_what_a_badge_means(looked) -> None:
    panel = looked(SOME, width=540, height=420)

    panel.canvas.go_to(Target(Kind.PART, part=PartId("R4")))

    assert panel.canvas.accessibleDescription().endswith(", 1 of 3 in the drawer")


def test_the_badges_follow_the_drawer(looked) -> None:
    panel = looked(SOME, width=800, height=900)

    own_drawer(panel._bench).put(Drawer((OwnedPart(500.0, 3),)))

    assert said(panel)[0] == "3 in the drawer"


def test_where_something_else_stands_the_badge_has_no_words(looked, project) -> None:
    pair = split_in_series(project, Channel.RED, PartId("R4"))
    panel = looked(SOME, pair, width=800, height=900)
    small = [badge.part for badge in panel.canvas.scene().badges if badge.small]
    assert small == [PartId("R4a"), PartId("R4b")], "a bracket stands under the pair"

    panel._bench.settings.set(SYMBOLS, Symbols.ZIGZAG)
    assert all(badge.small for badge in panel.canvas.scene().badges)
