from dataclasses import replace

import pytest
from PySide6.QtCore import Qt

from tests.exports.boards import board
from workbench.checks import Severity
from workbench.circuit.ladders import weighted
from workbench.circuit.network import Driver
from workbench.gui.findings import FindingsStrip
from workbench.gui.findings.sentence import fitting_lines, shortened
from workbench.gui.findings.why import WhyCard
from workbench.project.document import Channel, Channels
from workbench.project.edits.drive import set_supply

HARD = weighted(5, [470.0, 1e3, 2e3, 4e3, 8e3])


@pytest.fixture
def strip(qtbot, make_bench):
    """Return a maker of a strip that follows its bench's project."""

    def make(project=None):
        bench = make_bench(project or board())
        strip = FindingsStrip(bench)
        qtbot.addWidget(strip)
        bench.live.result_changed.connect(lambda result: strip.show_result(result.project, result))
        strip.show_result(bench.session.project, bench.live.result)
        strip.resize(1500, 120)
        strip.show()
        return strip

    return make


def apart(blue=HARD):
    project = board()
    return replace(project, channels=replace(project.channels, blue=blue))


def test_findings_are_counted_in_words(strip):
    counts = strip().counts

    assert [counts[severity].text() for severity in Severity] == ["no failures", "1 warning", "3 notes"]
    assert [counts[severity].isEnabled() for severity in Severity] == [False, True, True]


def test_the_gravest_finding_is_told_with_reason_and_source(strip):
    shown = strip()

    assert shown.headline.text().startswith("Three values of this ladder are not made in E24")
    assert "white is 0.738 V" in shown.why.text()
    assert shown.source.text() == "IEC 60063, E24 series · red, green and blue"
    assert shown.remedy.text() == "Use E24 values for R1, R4, R5"


def test_one_click_mends_and_one_undo_takes_it_back(qtbot, strip):
    shown = strip()
    session, before = shown.bench.session, shown.bench.session.project

    qtbot.mouseClick(shown.remedy, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: shown.counts[Severity.WARN].text() == "no warnings")

    assert [r.ohms for r in session.project.channels.blue.resistors] == [510.0, 1e3, 2e3, 3.9e3, 8.2e3]
    assert session.undo_label == "Use E24 values for R1, R4, R5"
    session.undo()
    assert session.project == before


def test_next_and_before_go_round(qtbot, strip):
    shown = strip()
    first = shown.headline.text()

    seen = [first]
    for _ in range(4):
        qtbot.mouseClick(shown.next, Qt.MouseButton.LeftButton)
        seen.append(shown.headline.text())

    assert len(set(seen)) == 4
    assert seen[-1] == first
    qtbot.mouseClick(shown.back, Qt.MouseButton.LeftButton)
    assert shown.headline.text() == seen[3]
    assert shown.position.text() == "4 of 4"


def test_a_count_goes_to_its_next_finding(qtbot, strip):
    shown = strip()

    qtbot.mouseClick(shown.counts[Severity.INFO], Qt.MouseButton.LeftButton)

    assert shown.finding.severity is Severity.INFO
    assert not shown.remedy.isVisible()


def test_the_finding_on_show_stays_through_an_edit(qtbot, strip):
    shown = strip()
    shown.step(2)
    rule = shown.finding.id

    shown.bench.session.apply("Supply", lambda project: set_supply(project, 3.2))
    qtbot.waitUntil(lambda: shown.bench.live.result.project.driver.supply_volts == 3.2)

    assert shown.finding.id == rule


def test_something_graver_that_comes_up_is_shown(qtbot, strip):
    shown = strip()
    shown.step(2)

    shown.bench.session.apply("Supply", lambda project: set_supply(project, 5.0))

    qtbot.waitUntil(lambda: shown.finding.severity is Severity.FAIL)
    assert shown.finding.id == "full-scale"


def test_the_sentence_chooses_its_part_in_its_channel(qtbot, strip):
    shown = strip(apart())
    place = next(i for i, f in enumerate(shown.bench.live.result.findings) if f.id == "dnl")
    shown.step(place)

    qtbot.mouseClick(shown.headline, Qt.MouseButton.LeftButton)

    assert shown.bench.view.channel is Channel.BLUE
    assert shown.bench.view.chosen == "R1"


def test_folded_it_is_one_line_with_the_same_remedy(strip):
    shown = strip()

    shown.resize(1500, 44)
    shown.set_folded(folded=True)

    assert shown.headline.isVisible()
    assert shown.remedy.isVisible()
    assert not shown.why.isVisible()
    assert shown.headline.geometry().right() < shown.remedy.geometry().left()


@pytest.mark.parametrize("width", [700, 1000, 1500])
@pytest.mark.parametrize(("height", "folded"), [(120, False), (44, True)], ids=["open", "folded"])
def test_nothing_overlaps_at_any_width(strip, width, height, folded):
    shown = strip(apart())
    shown.resize(width, height)
    shown.set_folded(folded=folded)

    boxes = [child.geometry() for child in shown.children() if getattr(child, "isVisible", bool)()]

    assert all(shown.rect().contains(box) for box in boxes)
    for place, box in enumerate(boxes):
        assert not any(box.intersects(other) for other in boxes[place + 1 :])


def test_linked_channels_are_said_to_be_linked(strip):
    shown = strip(replace(board(), linked=True))

    assert shown.source.text().endswith("red, green and blue (linked)")


def test_a_limit_from_memory_says_so(strip):
    slow = weighted(3, [510.0, 1e3, 2e3], node_farads=1e-9)
    project = board()
    names = ("P0", "P1", "P2")
    wiring = replace(project.wiring, red=names, green=names, blue=names)
    shown = strip(replace(project, channels=Channels(slow, slow, slow), wiring=wiring))

    assert shown.finding.id == "rise-time"
    assert "from memory" in shown.source.text()


def test_its_commands_stand_in_the_table(strip):
    shown = strip(board(driver=Driver(5.0)))
    specs = {spec.id: spec for spec in shown.action_specs()}

    specs["findings.next"].callback()
    specs["findings.before"].callback()
    assert shown.finding.id == "full-scale"
    assert specs["findings.mend"].enabled()
    specs["findings.mend"].callback()
    assert shown.bench.session.can_undo


def test_a_sentence_is_shortened_to_a_sentence():
    text = "Three values of this ladder are not made in E24: R1 500 Ω, R4 4 kΩ, R5 8 kΩ."

    assert fitting_lines(text, 500, 1, len_px) == ["Three values of this ladder are not made in E24."]
    assert fitting_lines(text, 900, 1, len_px) == [text]


def test_a_sentence_takes_the_lines_it_is_given():
    text = "Three values of this ladder are not made in E24: R1 500 Ω, R4 4 kΩ, R5 8 kΩ."

    lines = fitting_lines(text, 500, 2, len_px)

    assert " ".join(lines) == text
    assert all(len_px(line) <= 500 for line in lines)
    assert not lines[0][-1].isdigit()


@pytest.mark.parametrize("width", [1114, 1520])
def test_a_projector_shows_the_whole_sentence_and_no_button(strip, width):
    shown = strip()
    shown.bench.project_large(on=True)
    shown.set_folded(folded=True)
    shown.resize(width, 100)

    assert not shown.remedy.isVisible()
    lines = shown.headline.shown_lines()
    assert len(lines) <= 2
    assert " ".join(lines) in shortened(shown.headline.text())
    assert all(width_of(shown.headline, line) <= shown.headline.width() for line in lines)


@pytest.mark.parametrize("width", [800, 1000, 1500])
def test_no_headline_ends_in_dots(strip, width):
    shown = strip(apart())
    shown.resize(width, 44)
    shown.set_folded(folded=True)

    for _ in shown.bench.live.result.findings:
        (line,) = shown.headline.shown_lines()
        assert width_of(shown.headline, line) <= shown.headline.width()
        shown.step(1)


def len_px(text: str) -> float:
    """Measure as if every letter were 10 px wide."""
    return 10.0 * len(text)


def width_of(sentence, text: str) -> float:
    return sentence.metrics.horizontalAdvance(text) - 2


@pytest.fixture
def folded(strip):
    shown = strip()
    shown.resize(1500, 44)
    shown.set_folded(folded=True)
    return shown


def why_cards(shown):
    return [card for card in shown.findChildren(WhyCard) if card.isVisible()]


@pytest.mark.parametrize("ask", ["button", "sentence", "key"])
def test_folded_it_tells_the_finding_whole_when_asked(qtbot, folded, ask):
    finding = folded.finding
    if ask == "key":
        {spec.id: spec for spec in folded.action_specs()}["findings.why"].callback()
    else:
        clicked = folded.ask if ask == "button" else folded.headline
        qtbot.mouseClick(clicked, Qt.MouseButton.LeftButton)

    (card,) = why_cards(folded)
    assert card.headline.text() == finding.headline
    assert card.why.text() == finding.why
    assert card.advice.text() == finding.remedy_text
    assert card.source.text() == folded.source.text()


def test_the_card_mends_and_closes(qtbot, folded):
    qtbot.mouseClick(folded.ask, Qt.MouseButton.LeftButton)
    (card,) = why_cards(folded)

    qtbot.mouseClick(card.remedy, Qt.MouseButton.LeftButton)

    assert not why_cards(folded)
    assert folded.bench.session.undo_label == "Use E24 values for R1, R4, R5"


def test_the_tip_of_a_sentence_tells_why_in_lines_that_fit(folded):
    tip = folded.headline.toolTip()

    assert " ".join(folded.finding.why.split()) in " ".join(tip.split())
    assert "IEC 60063" in tip
    assert max(map(len, tip.splitlines())) <= 84


def test_unfolded_the_reason_is_there_and_not_asked_for(strip):
    shown = strip()

    assert shown.why.isVisible()
    assert not shown.ask.isVisible()


def test_the_card_is_no_wider_than_its_window(strip):
    shown = strip()
    shown.resize(400, 44)
    shown.set_folded(folded=True)
    shown.explain()

    (card,) = why_cards(shown)
    assert card.headline.width() <= 400
