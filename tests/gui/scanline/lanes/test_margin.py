"""What stands right of the lanes."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from workbench.circuit.network import Load, PartId
from workbench.gui.scanline import ScanlinePanel
from workbench.gui.widgets import Sign
from workbench.project.document import Channel, Project
from workbench.project.edits.channels import unlink
from workbench.project.edits.parts import set_value
from workbench.project.edits.picture import set_scanline

Make = Callable[..., ScanlinePanel]
IDEAL = ["ideal"]


def level_names(panel: ScanlinePanel) -> list[str]:
    return [level.name for level in panel.plot.margin.levels]


@pytest.mark.parametrize(("number", "names"), [(1, IDEAL), (480, IDEAL), (481, []), (491, []), (525, [])])
def test_the_ideal_is_named_only_where_its_line_is(
    make_panel: Make, project: Project, number: int, names: list[str]
) -> None:
    assert level_names(make_panel(set_scanline(project, number))) == names


@pytest.mark.parametrize("height", [250, 330, 480, 822])
@pytest.mark.parametrize("width", [540, 740, 1120])
def test_names_of_the_two_lanes_stand_apart(make_panel: Make, width: int, height: int) -> None:
    panel = make_panel(size=(width, height))

    *_, blue, h_sync, v_sync = panel.plot.margin.end_middles

    assert h_sync - blue >= panel.bench.px(18 + 9)
    assert v_sync - h_sync >= panel.bench.px(18)


class TestTooHigh:
    def test_all_three_are_named_with_the_sign_of_the_finding(
        self, make_panel: Make, project: Project
    ) -> None:
        *_, level = make_panel(replace(project, load=Load(ohms=None))).plot.margin.levels

        assert (level.name, level.note, level.sign) == ("all three", "too high", Sign.FAILS)
        assert level.value == "3.300 V"

    def test_one_channel_is_named(self, make_panel: Make, project: Project) -> None:
        green = set_value(unlink(project), Channel.GREEN, PartId("R1"), 300.0)

        *_, level = make_panel(green).plot.margin.levels

        assert (level.name, level.note) == ("green", "too high")

    def test_white_inside_its_limits_is_not(self, panel: ScanlinePanel) -> None:
        assert level_names(panel) == IDEAL


class TestMoved:
    @pytest.mark.parametrize(
        ("width", "words"), [(1120, ("R1 moves these", "moved by R1")), (740, ("by R1", "moved by R1"))]
    )
    def test_the_part_is_never_alone(self, make_panel: Make, width: int, words: tuple[str, ...]) -> None:
        panel = make_panel(size=(width, 700))
        panel.bench.view.choose(PartId("R1"))

        assert panel.plot.margin.moved_words in words

    def test_a_part_with_a_longer_name_too(self, panel: ScanlinePanel) -> None:
        panel.plot.show_moved([(160, 200)], ("R3a moves these", "moved by R3a", "by R3a"))

        assert panel.plot.margin.moved_words in ("R3a moves these", "moved by R3a")
