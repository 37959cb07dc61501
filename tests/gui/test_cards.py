"""The cards: finder, display modes, new ladder, preferences."""

import pytest
from PySide6.QtCore import QCoreApplication, QEvent, Qt
from shiboken6 import isValid

from workbench.circuit.ladders import Topology
from workbench.circuit.series import Series
from workbench.circuit.wish import Shape
from workbench.gui import settings as table
from workbench.gui.cards.finder import Find, rank
from workbench.gui.cards.mode_rows import mode_rows
from workbench.gui.mode_title import mode_title
from workbench.gui.theme import ThemeName
from workbench.gui.widgets import Sign
from workbench.project.document import Channel
from workbench.project.edits.channels import unlink
from workbench.timing.search import find_mode


def titles(card) -> list[str]:
    model = card.list.model()
    return [model.index(row, 0).data() for row in range(model.rowCount())]


@pytest.mark.parametrize(
    ("name", "title"),
    [
        ("640x480@60", "640 × 480 · 60 Hz"),
        ("1280x768@60RB", "1280 × 768 · 60 Hz RB"),
        ("1024x768@43i", "1024 × 768 · 43 Hz interlaced"),
    ],
)
def test_mode_is_written_as_on_the_bench(name, title) -> None:
    assert mode_title(find_mode(name)) == title


@pytest.mark.parametrize("text", ["640x480@60", "640 480 60", "0x04", "640 × 480"])
def test_mode_is_found_by_what_one_types(text) -> None:
    assert "640 × 480 · 60 Hz" in [row.title for row in mode_rows(text)]


def test_every_mode_of_the_tables_is_listed_once() -> None:
    rows = mode_rows("")

    assert len(rows) > 88
    assert len({(row.title, row.detail) for row in rows}) == len(rows)


def test_interlaced_mode_is_listed_and_refused_with_the_reason() -> None:
    row = next(row for row in mode_rows("interlaced"))

    assert row.refused.startswith("interlaced")


def test_mode_that_no_table_holds_is_worked_out() -> None:
    sources = [row.detail for row in mode_rows("1000x700@61")]

    assert len(sources) >= 3
    assert any("CVT" in source for source in sources)


def test_mode_is_picked_by_keys(desk, qtbot) -> None:
    qtbot.keyClick(desk.window, Qt.Key.Key_M, Qt.KeyboardModifier.ControlModifier)
    card = desk.cards.open_card
    qtbot.keyClicks(card.field, "800x600@60")

    qtbot.keyClick(card.field, Qt.Key.Key_Return)

    assert desk.session.project.mode.name == "800x600@60"
    assert desk.session.undo_label.startswith("Choose 800 × 600")
    assert desk.cards.open_card is None


def test_mode_card_stands_on_the_mode_that_holds(desk) -> None:
    card = desk.cards.choose_mode()

    row = card.list.currentIndex().data()

    assert row == mode_title(desk.session.project.mode)
    card.close()


def test_refused_row_is_not_taken(desk, qtbot) -> None:
    before = desk.session.project
    card = desk.cards.choose_mode()
    card.search("1024x768@43i")
    said: list[str] = []
    desk.bench.noticed.connect(lambda notice: said.append(notice.text))

    qtbot.keyClick(card.field, Qt.Key.Key_Return)

    assert [sentence.partition(":")[0] for sentence in said] == ["interlaced"]
    assert desk.session.project is before
    assert card.isVisible()
    card.close()


@pytest.mark.parametrize(
    ("text", "nearness"),
    [
        ("undo name", 0),
        ("und", 1),
        ("name", 2),
        ("undo back", 2),
        ("nam", 3),
        ("do", 4),
        ("take", 5),
        ("xyz", None),
    ],
)
def test_finder_ranks_by_where_the_letters_stand(text, nearness) -> None:
    assert rank(text, Find("Undo name", "Takes it back", "", list)) == nearness


@pytest.mark.parametrize(
    ("text", "title"),
    [
        ("limit", "Pins and supply …"),
        ("supply", "Pins and supply …"),
        ("float", "Pins and supply …"),
        ("resistance", "Pins and supply …"),
        ("milliamperes", "Pins and supply …"),
        ("cable", "Monitor and cable …"),
        ("termination", "Monitor and cable …"),
        ("levels", "Page Levels"),
        ("picture", "Page Picture"),
        ("parts", "Page Parts"),
        ("edid", "Page Monitor"),
        ("drawer", "Page Parts"),
        ("polarity", "Page Timing"),
        ("settings", "Preferences"),
        ("e24", "Preferences"),
        ("help", "Explain what has the focus"),
        ("full screen", "Projector view"),
        ("unlink", "Let the channels part"),
        ("fix", "Mend the finding on show"),
        ("quit", "Quit"),
        ("exit", "Quit"),
    ],
)
def test_finder_knows_what_people_call_things(desk, text, title) -> None:
    card = desk.cards.find(text)

    assert titles(card)[0] == title
    card.close()


def test_finder_finds_undo_before_and_after_there_is_something_to_undo(desk, qtbot) -> None:
    card = desk.cards.find("undo")
    assert titles(card)[0] == "Undo"
    card.close()
    desk.bench.apply("Let the channels part", unlink)
    qtbot.waitUntil(desk.bench.actions.action("edit.undo").isEnabled)

    assert titles(desk.cards.find("undo"))[0] == "Undo Let the channels part"


def test_finder_finds_the_limits_in_the_preferences_too(desk) -> None:
    assert "Preferences" in titles(desk.cards.find("limit"))


def test_levels_and_enter_open_the_page(desk, qtbot) -> None:
    card = desk.cards.find("levels")

    qtbot.keyClick(card.field, Qt.Key.Key_Return)

    assert desk.window.pages.page == "levels"


def test_finder_opens_on_its_key_and_does_what_is_picked(desk, qtbot) -> None:
    qtbot.keyClick(desk.window, Qt.Key.Key_K, Qt.KeyboardModifier.ControlModifier)
    card = desk.cards.open_card
    qtbot.keyClicks(card.field, "theme paper")

    qtbot.keyClick(card.field, Qt.Key.Key_Return)

    assert desk.bench.theme.name is ThemeName.PAPER


def test_finder_finds_a_part_and_chooses_it(desk, qtbot) -> None:
    card = desk.cards.find("R3")
    assert titles(card)[0] == "R3"

    qtbot.keyClick(card.field, Qt.Key.Key_Return)

    assert desk.bench.view.chosen == "R3"


def test_finder_finds_modes_and_pages(desk) -> None:
    card = desk.cards.find("800x600@72")
    assert titles(card) == ["800 × 600 · 72 Hz"]

    card.search("page lev")
    assert titles(card) == ["Page Levels"]
    card.close()


def test_finder_says_when_it_finds_nothing(desk) -> None:
    card = desk.cards.find("qqqq")

    assert card.list.rows == 0
    assert card.empty.isVisible()
    card.close()


def test_letter_typed_on_the_finder_field_is_not_lost(desk, qtbot) -> None:
    field = desk.window.top.bench_row.finder
    field.setFocus()

    qtbot.keyClick(field, Qt.Key.Key_U)

    assert desk.cards.open_card.field.text() == "u"
    desk.cards.open_card.close()


def test_ladder_is_shown_before_it_is_taken(desk, qtbot) -> None:
    before = desk.session.project
    card = desk.cards.make_ladder()
    qtbot.mouseClick(card.shapes[Shape.R2R], Qt.MouseButton.LeftButton)
    qtbot.mouseClick(card.steppers[Channel.GREEN].fewer, Qt.MouseButton.LeftButton)
    shown = card.figures.text("white, loaded")
    assert desk.session.project is before
    assert shown.endswith(" V")

    qtbot.mouseClick(card.take, Qt.MouseButton.LeftButton)
    desk.live.refresh()

    result = desk.live.result
    assert result.channels.green.topology is Topology.R2R
    assert result.channels.green.network.bits == 4
    assert f"{result.channels.red.levels.volts_by_code[-1]:.3f} V" == shown
    assert desk.session.undo_label == "Make a new ladder"


@pytest.mark.parametrize("where", ["the card", "a shape", "the button"])
def test_enter_puts_a_ladder_in_after_its_shape_was_chosen_by_mouse(desk, qtbot, where: str) -> None:
    card = desk.cards.make_ladder()
    qtbot.mouseClick(card.shapes[Shape.R2R], Qt.MouseButton.LeftButton)
    if where != "the card":
        (card.take if where == "the button" else card.shapes[Shape.R2R]).setFocus()

    qtbot.keyClick(desk.window.focusWidget(), Qt.Key.Key_Return)
    desk.live.refresh()

    assert desk.live.result.channels.red.topology is Topology.R2R
    assert not card.isVisible()


def test_linked_channels_are_made_alike(desk, qtbot) -> None:
    card = desk.cards.make_ladder()
    qtbot.mouseClick(card.steppers[Channel.BLUE].more, Qt.MouseButton.LeftButton)

    project = card.edit(desk.session.project)

    assert [project.channels[channel].bits for channel in Channel] == [6, 6, 6]
    card.close()


def test_ladder_that_cannot_be_is_refused_in_words(desk, qtbot) -> None:
    from workbench.project.edits.drive import set_supply

    desk.bench.apply("Supply", lambda project: set_supply(project, 0.5))
    desk.live.refresh()

    card = desk.cards.make_ladder()

    assert not card.take.isEnabled()
    assert card.said.text().startswith("No resistors bring white")
    assert "higher supply" in card.said.text()
    assert card.said.sign is Sign.WARNS
    assert card.steps.levels == {}
    card.close()


def test_segmented_ladder_matched_to_the_cable(desk, qtbot) -> None:
    card = desk.cards.make_ladder()
    assert not card.thermometer.isEnabled()

    qtbot.mouseClick(card.shapes[Shape.SEGMENTED], Qt.MouseButton.LeftButton)
    qtbot.mouseClick(card.matched, Qt.MouseButton.LeftButton)
    assert card.thermometer.isEnabled()
    assert card.figures.text("source resistance").startswith("7")
    assert "3 × " in card.parts.text()
    assert "shunt" in card.parts.text()
    qtbot.mouseClick(card.take, Qt.MouseButton.LeftButton)
    desk.live.refresh()

    again = desk.cards.make_ladder()
    assert again.shapes[Shape.SEGMENTED].isChecked()
    assert again.matched.isChecked()
    again.close()
    red = desk.live.result.channels.red
    assert red.topology is Topology.SEGMENTED
    assert len(desk.session.project.wiring.red) == 6
    assert red.levels.source_ohms == pytest.approx(75.0, abs=2.0)


def test_channels_that_differ_have_figures_of_their_own(desk, qtbot) -> None:
    desk.bench.apply("Apart", unlink)
    desk.live.refresh()
    card = desk.cards.make_ladder()
    assert card.figures.text("resistors", Channel.BLUE) == ""
    assert list(card.steps.levels) == [Channel.RED]

    qtbot.mouseClick(card.steppers[Channel.BLUE].fewer, Qt.MouseButton.LeftButton)

    assert [card.figures.text("resistors", channel) for channel in Channel] == ["5", "5", "4"]
    assert [line.partition(":")[0] for line in card.parts.text().splitlines()] == ["red, green", "blue"]
    assert {channel: len(volts) for channel, volts in card.steps.levels.items()} == {
        Channel.RED: 32,
        Channel.BLUE: 16,
    }
    card.close()


def test_what_the_new_ladder_would_do_is_drawn_and_judged(desk, qtbot) -> None:
    card = desk.cards.make_ladder()
    assert card.said.sign is Sign.PASSES
    white = card.steps.levels[Channel.RED][-1]
    assert f"{white:.3f} V" == card.figures.text("white, loaded")
    plot = pixel_at(card.steps, 0.99, 0.70)
    assert plot == desk.bench.theme.color("plot")

    card.choose_source(list(Series).index(Series.E3))

    assert card.said.sign is Sign.FAILS
    assert "more than two steps in one" in card.said.text()
    card.close()


def pixel_at(widget, across: float, down: float):
    image = widget.grab().toImage()
    return image.pixelColor(int(across * (image.width() - 1)), int(down * (image.height() - 1)))


def test_steps_are_drawn_where_the_levels_are(desk) -> None:
    card = desk.cards.make_ladder()
    trace = desk.bench.theme.channel(Channel.RED)
    image = card.steps.grab().toImage()

    def height(across: float) -> int:
        column = int(across * (image.width() - 1))
        return min(y for y in range(image.height()) if image.pixelColor(column, y) == trace)

    heights = [height(part) for part in (0.25, 0.5, 0.75, 0.98)]
    assert heights == sorted(heights, reverse=True)
    assert len(set(heights)) == 4
    card.close()


def test_values_are_typed(desk, qtbot) -> None:
    card = desk.cards.make_ladder()
    qtbot.mouseClick(card.shapes[Shape.EQUAL], Qt.MouseButton.LeftButton)

    card.choose_source(len(Series))
    assert not card.take.isEnabled()
    assert card.said.text() == "Type the values: the one value: 1k."
    qtbot.keyClicks(card.values, "1k5k")
    assert "stands twice" in card.said.text()
    card.values.clear()
    qtbot.keyClicks(card.values, "2k2")

    assert card.take.isEnabled()
    assert card.parts.text() == "13 × 2.2 kΩ"
    qtbot.mouseClick(card.take, Qt.MouseButton.LeftButton)
    assert {part.ohms for part in desk.session.project.channels.red.resistors} == {2200.0}


def test_every_choice_explains_itself_in_two_lines(desk) -> None:
    card = desk.cards.make_ladder()

    for choice in (*card.shapes.values(), card.matched):
        assert choice.accessibleDescription().count(".") == 2
        assert choice.sizeHint().width() <= choice.width()
    card.close()


def test_preferences_take_effect_at_once(desk) -> None:
    card = desk.cards.preferences()

    card.theme.chosen.emit(1)
    card.symbols.chosen.emit(1)
    card.dashed.click()

    assert desk.bench.theme.name is ThemeName.PAPER
    assert desk.bench.settings.get(table.SYMBOLS) is table.Symbols.ZIGZAG
    assert desk.bench.settings.get(table.DASHED) is False
    card.close()


def test_series_is_the_projects_and_remembered(desk) -> None:
    card = desk.cards.preferences()

    card.series.chosen.emit(list(Series).index(Series.E96))

    assert desk.session.project.series is Series.E96
    assert desk.bench.settings.get(table.SERIES) is Series.E96
    card.close()


def test_limit_is_entered_with_a_caution(desk, qtbot) -> None:
    card = desk.cards.preferences()
    assert "data sheet" in card.said.text()
    card.limits.pin.field.setText("8m")

    card.limits.pin.field.editingFinished.emit()

    assert desk.session.project.driver.pin_limit_amps == 0.008
    assert desk.bench.settings.get(table.PIN_LIMIT) == 0.008
    card.close()


@pytest.mark.parametrize("text", ["8mm", "-8m", "nan", "4,700"])
def test_limit_that_cannot_be_read_is_refused_in_words(desk, text) -> None:
    before = desk.session.project
    card = desk.cards.preferences()
    card.limits.pin.field.setText(text)

    card.limits.pin.field.editingFinished.emit()

    assert card.limits.pin.field.property("state") == "fails"
    assert "data sheet" not in card.said.text()
    assert desk.session.project is before
    card.close()


@pytest.mark.parametrize(
    ("text", "echo", "amps"), [("20", "= 20 mA", 20e-3), ("4m", "= 4 mA", 4e-3), ("0.02 A", "= 20 mA", 20e-3)]
)
def test_limit_is_read_in_milliamperes_and_echoed(desk, qtbot, text, echo, amps) -> None:
    limits = desk.cards.preferences().limits

    qtbot.keyClicks(limits.pin.field, text)

    assert limits.pin.echo.text() == echo
    qtbot.keyClick(limits.pin.field, Qt.Key.Key_Return)
    assert desk.session.project.driver.pin_limit_amps == pytest.approx(amps)
    assert limits.pin.field.text() == echo.removeprefix("= ")


def test_limit_that_no_pin_has_is_asked_about_and_kept_on_a_second_enter(desk, qtbot) -> None:
    card = desk.cards.preferences()
    field = card.limits.pin.field
    qtbot.keyClicks(field, "2 A")

    qtbot.keyClick(field, Qt.Key.Key_Return)

    assert desk.session.project.driver.pin_limit_amps is None
    assert field.property("state") == "warns"
    assert card.said.text().startswith("2 A for one pin: logic pins carry milliamperes. Is that meant?")
    qtbot.keyClick(field, Qt.Key.Key_Return)
    assert desk.session.project.driver.pin_limit_amps == 2.0
    assert "data sheet" in card.said.text()
    card.close()


def test_question_that_is_left_open_keeps_the_old_limit(desk, qtbot) -> None:
    card = desk.cards.preferences()
    qtbot.keyClicks(card.limits.pin.field, "2 A")
    qtbot.keyClick(card.limits.pin.field, Qt.Key.Key_Tab)

    qtbot.keyClicks(card.limits.total.field, "50")
    qtbot.keyClick(card.limits.total.field, Qt.Key.Key_Return)

    assert desk.session.project.driver.pin_limit_amps is None
    card.close()


def test_one_card_is_open_at_a_time(desk) -> None:
    first = desk.cards.preferences()

    second = desk.cards.find()

    assert not first.isVisible()
    assert desk.cards.open_card is second
    second.close()


def test_cautions_name_tubes_rates_pins_supply_and_flashing(desk) -> None:
    from workbench.gui.cards.cautions import CAUTIONS

    assert [title for title, _ in CAUTIONS] == [
        "Tubes",
        "Scan rates",
        "Pins",
        "Supply on the connector",
        "Flashing pictures",
    ]


def test_focus_goes_back_to_where_it_was(desk, qtbot) -> None:
    row = desk.window.top.bench_row
    row.ladder.setFocus()
    card = desk.cards.make_ladder()
    assert desk.window.focusWidget() is card.take

    qtbot.keyClick(card, Qt.Key.Key_Escape)

    assert desk.window.focusWidget() is row.ladder


def test_cards_that_open_one_from_another_leave_nothing_behind(desk, qtbot) -> None:
    opened = [desk.cards.make_ladder(), desk.cards.preferences(), desk.cards.find("r"), desk.cards.cautions()]
    opened[-1].close()

    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)

    assert [isValid(card) for card in opened] == [False] * 4


def test_tab_goes_round_inside_a_card(desk, qtbot) -> None:
    card = desk.cards.make_ladder()
    for _ in range(20):
        qtbot.keyClick(desk.window.focusWidget(), Qt.Key.Key_Tab)
        assert card.isAncestorOf(desk.window.focusWidget())
    card.close()


def test_press_elsewhere_closes_the_card_and_does_nothing_else(desk, qtbot) -> None:
    linked = desk.session.project.linked
    card = desk.cards.preferences()

    qtbot.mouseClick(desk.window.top.bench_row.linked, Qt.MouseButton.LeftButton)

    assert not card.isVisible()
    assert desk.session.project.linked is linked
