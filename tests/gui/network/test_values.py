import pytest

from workbench.circuit.network import PartId
from workbench.circuit.series import Series
from workbench.drawing import H_SERIES, LOAD, V_SERIES
from workbench.gui.network.values import Pace, Standing, Value, find_value, read_text, stepped
from workbench.project.document import Channel, Direction, Project

R1, C1 = PartId("R1"), PartId("C1")


def value_of(project: Project, part: PartId) -> Value:
    value = find_value(project, Channel.RED, part)
    assert value is not None
    return value


@pytest.mark.parametrize(
    ("text", "ohms"),
    [("470", 470.0), ("2k2", 2200.0), ("2,2k", 2200.0), ("1k||1k", 500.0), ("820+150", 970.0), ("75R", 75.0)],
)
def test_what_is_read_is_echoed_with_its_neighbours(project: Project, text: str, ohms: float) -> None:
    reading = read_text(text, value_of(project, R1), project)

    assert (reading.standing, reading.value, reading.sentence) == (Standing.READ, ohms, "")
    assert reading.below is not None
    assert reading.above is not None
    assert reading.below < ohms < reading.above


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("4k7k", "twice"),
        ("0", "above 0"),
        ("-5", "not possible"),
        ("nan", "not a number"),
        ("4,700", "may mean"),
        ("", "no value"),
    ],
)
def test_what_cannot_be_read_is_refused_with_a_sentence(project: Project, text: str, words: str) -> None:
    reading = read_text(text, value_of(project, R1), project)

    assert reading.standing is Standing.REFUSED
    assert reading.value is None
    assert words in reading.sentence


def test_a_slipped_unit_is_asked_about_and_not_refused(project: Project) -> None:
    reading = read_text("1M", value_of(project, R1), project)

    assert (reading.standing, reading.value) == (Standing.ASKED, 1e6)
    assert reading.sentence.endswith("?")


def test_a_resistance_says_whether_it_is_made(project: Project) -> None:
    value = value_of(project, R1)

    assert read_text("470", value, project).in_series is True
    assert read_text("500", value, project).in_series is False
    assert read_text("33p", value_of(project, C1), project).in_series is None


def test_each_value_of_the_drawing_is_put_where_it_belongs(project: Project) -> None:
    edited = value_of(project, R1).put(project, 470.0)
    edited = value_of(project, C1).put(edited, 12e-12)
    edited = value_of(project, H_SERIES).put(edited, 47.0)
    edited = value_of(project, V_SERIES).put(edited, 0.0)
    edited = value_of(project, LOAD).put(edited, None)

    assert edited.channels.blue.resistors[0].ohms == 470.0, "the demo's channels are linked"
    assert edited.channels.red.capacitors[0].farads == 12e-12
    assert edited.sync[Direction.HORIZONTAL].series_ohms == 47.0
    assert edited.sync[Direction.VERTICAL].series_ohms == 0.0
    assert edited.load.ohms is None


def test_a_wire_and_no_load_can_be_written_as_words(project: Project) -> None:
    assert read_text("wire", value_of(project, H_SERIES), project).value == 0.0
    assert read_text("none", value_of(project, LOAD), project) == read_text(
        "–", value_of(project, LOAD), project
    )
    assert read_text("none", value_of(project, R1), project).standing is Standing.REFUSED


def test_a_part_that_is_not_there_has_no_value(project: Project) -> None:
    assert find_value(project, Channel.RED, PartId("R99")) is None


def test_undo_is_named_by_what_changes(project: Project) -> None:
    assert value_of(project, R1).label(470.0) == "R1 500 Ω → 470 Ω"
    assert value_of(project, H_SERIES).label(0.0) == "H sync resistor 100 Ω → wire"


@pytest.mark.parametrize(("pace", "up"), [(Pace.SERIES, 510.0), (Pace.COARSE, 560.0), (Pace.FINE, 505.0)])
def test_steps_follow_the_series_half_of_it_or_one_percent(pace: Pace, up: float) -> None:
    assert stepped(500.0, Series.E24, 1, pace) == up


def test_fine_steps_up_and_down_lead_back() -> None:
    assert stepped(stepped(500.0, Series.E24, 1, Pace.FINE), Series.E24, -1, Pace.FINE) == pytest.approx(
        500.0
    )
