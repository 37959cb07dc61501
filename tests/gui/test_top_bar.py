"""The bar: what stands still in it, and what linking says before and after."""

import pytest

from workbench.project.document import Channel
from workbench.project.edits.channels import unlink
from workbench.project.edits.parts import set_value


@pytest.mark.parametrize("label", ["x", "Change R1 of red, green and blue to 512.3 Ω at once", ""])
def test_controls_stay_where_they_are_whatever_undo_is_called(desk, qtbot, label) -> None:
    row = desk.window.top.bench_row
    places = [widget.x() for widget in (row.redo, row.mode, row.ladder, row.linked)]

    row.say_history(label)
    desk.window.grab()

    assert [widget.x() for widget in (row.redo, row.mode, row.ladder, row.linked)] == places
    assert row.undo_name.toolTip() == label


def test_linking_says_whose_values_win_before_and_after(desk, qtbot) -> None:
    bench, row = desk.bench, desk.window.top.bench_row
    assert row.linked.toolTip().startswith("Let the channels part.")
    bench.apply("Let the channels part", unlink)
    bench.apply("Change R1", lambda project: set_value(project, Channel.GREEN, "R1", 510.0))
    bench.view.choose_channel(Channel.GREEN)
    qtbot.waitUntil(lambda: row.linked.toolTip().startswith("Link to green's values."))
    said: list[str] = []
    bench.noticed.connect(lambda notice: said.append(notice.text))

    bench.toggle_link()

    assert desk.session.undo_label == "Link to green's values"
    assert said == ["Linked to green: red and blue took its values; undo brings theirs back."]
    assert desk.session.project.channels.red == desk.session.project.channels.green


def test_linking_what_is_alike_overwrites_nothing_and_says_nothing(desk) -> None:
    desk.bench.apply("Let the channels part", unlink)
    said: list[object] = []
    desk.bench.noticed.connect(said.append)

    desk.bench.toggle_link()

    assert desk.session.project.linked
    assert not said
