"""The head of the panel folds in steps, so that nothing on it is cut."""

import pytest

from workbench.project.document import Channel


@pytest.mark.parametrize("width", [440, 500, 540, 600, 640, 700, 760, 840, 1000])
@pytest.mark.parametrize("held", [False, True])
def test_nothing_in_the_head_is_cut(make_panel, width: int, held: bool) -> None:
    panel = make_panel(width=width, height=760)

    panel._bench.view.look_at(300)
    if held:
        panel._bench.view.hold(tuple(Channel), 21)

    head = panel.head
    head.row.activate()
    shown = [head.row.itemAt(i).widget() for i in range(head.row.count())]
    shown = [widget for widget in shown if widget is not None and widget.isVisible()]
    assert len(shown) >= 4
    for widget in shown:
        assert widget.width() >= widget.sizeHint().width()


def test_it_leaves_out_the_note_then_shortens_the_words_then_leaves_out_the_title(make_panel) -> None:
    def seen(width: int) -> tuple[bool, str, list[str]]:
        panel = make_panel(width=width, height=760)
        panel._bench.view.look_at(300)
        head = panel.head
        return head.note.isVisible(), head.source.text(), [chip.text() for chip in head.chips.values()]

    names = ["red", "green", "blue"]
    assert seen(900) == (True, "red of this pixel: code", names)
    assert seen(600) == (False, "red of this pixel: code", names)
    assert seen(520) == (False, "code", names)
    assert seen(440) == (False, "code", names)


@pytest.mark.parametrize("width", [540, 600, 640])
@pytest.mark.parametrize("height", [360, 760])
def test_the_names_of_the_channels_outlast_the_title(make_panel, width: int, height: int) -> None:
    panel = make_panel(width=width, height=height)

    panel._bench.view.hold(tuple(Channel), 8)

    assert [chip.text() for chip in panel.head.chips.values()] == ["red", "green", "blue"]


@pytest.mark.parametrize("linked", [True, False], ids=["linked", "apart"])
def test_a_narrow_head_still_offers_the_three_channels(make_panel, linked: bool) -> None:
    panel = make_panel(width=400, height=400)
    if not linked:
        panel._bench.toggle_link()
        panel._bench.live.refresh()

    chips = panel.head.chips
    assert [chip.isVisible() for chip in chips.values()] == [True] * 3
    chips[Channel.BLUE].click()
    assert panel._bench.view.channel is Channel.BLUE
