import pytest

from workbench.checks import Severity
from workbench.circuit.ladders import r2r, weighted
from workbench.circuit.network import Driver, Load, Zeros
from workbench.circuit.series import Series, is_in
from workbench.pipeline.run import Pipeline


def test_values_outside_the_series_are_listed_with_what_would_follow(board, found):
    finding = found(board(), "series")

    assert finding.severity is Severity.WARN
    assert finding.headline == (
        "Three values of this ladder are not made in E24: R1 500 Ω, R4 4 kΩ, R5 8 kΩ."
    )
    assert finding.why == (
        "The board you can build will differ from the drawing. With 510 Ω, 3.9 kΩ and 8.2 kΩ white is "
        "0.738 V and the largest step error is 0.33 LSB, so every step still goes up."
    )
    assert finding.remedy.label == "Use E24 values for R1, R4, R5"
    assert finding.parts == ("R1", "R4", "R5")


def test_a_level_that_is_repeated_is_no_step_up(board, found):
    afloat = board(driver=Driver(zeros=Zeros.FLOATING), load=Load(ohms=None))

    assert found(afloat, "series").why.endswith("LSB, so no step goes down.")


def test_values_of_the_series_are_not_mentioned(board, found):
    assert found(board(weighted(3, [510.0, 1e3, 2e3])), "series") is None


def test_one_value_of_some_channels_is_said_of_them(board, found):
    project = board(weighted(3, [500.0, 1e3, 2e3]), blue=weighted(2, [430.0, 820.0]))

    assert found(project, "series").headline == ("One value of red and green is not made in E24: R1 500 Ω.")


@pytest.mark.parametrize("series", Series, ids=lambda s: s.name)
@pytest.mark.parametrize(
    "network",
    [
        pytest.param(weighted(5, [501.0, 1003.0, 2e3, 4e3, 8e3]), id="weighted"),
        pytest.param(r2r(4, 256.7), id="r2r"),
    ],
)
def test_the_remedy_leaves_only_values_of_the_series(board, found, network, series):
    project = board(network, series=series)

    mended = found(project, "series").remedy.edit(project)

    assert found(mended, "series") is None


def test_the_nearest_values_are_not_offered_where_they_would_turn_a_step_back(board, found):
    project = board(driver=Driver(3.3, 40.0, 55.0))

    mended = found(project, "series").remedy.edit(project)

    assert found(mended, "monotonic").severity is Severity.INFO
    assert found(mended, "dnl") is None or found(mended, "dnl").severity is Severity.INFO


def test_the_button_names_only_what_changes(board, found):
    project = board(weighted(5, [510.0, 1e3, 2e3, 4e3, 8e3]))
    finding = found(project, "series")

    mended = finding.remedy.edit(project).channels.red

    assert finding.remedy.label == "Use R4 3.9 kΩ, R5 8.2 kΩ"
    assert (
        finding.remedy_text == "Change R4 to 3.9 kΩ and R5 to 8.2 kΩ; or let two parts stand for one value."
    )
    assert [r.ohms for r in mended.resistors] == [510.0, 1e3, 2e3, 3.9e3, 8.2e3]


def test_a_strong_leg_is_named_among_the_changes(board, found):
    project = board(weighted(5, [470.0, 1e3, 2e3, 4e3, 8e3]))
    finding = found(project, "series")

    mended = finding.remedy.edit(project)

    assert finding.remedy.label == "Use E24 values for R1, R4, R5"
    assert found(mended, "series") is None
    assert found(mended, "dnl").severity is Severity.INFO


def test_nothing_is_offered_where_every_choice_would_spoil_white(board, found):
    # one leg for 0.700 V is 278.6 Ω; E3 has 220 Ω (0.839 V) and 470 Ω (0.454 V)
    finding = found(board(weighted(1, [278.6]), series=Series.E3), "series")

    assert finding.remedy is None
    assert finding.remedy_text == (
        "No values of E3 keep white and steps: take a finer series, or two parts for one value."
    )


def owned(*values):
    """Return the finding about the series for a person who owns some values."""
    pipeline = Pipeline(owns=lambda ohms: ohms in values)

    def find(project):
        return next((f for f in pipeline.run(project).findings if f.id == "series"), None)

    return find


def test_what_the_person_owns_is_not_complained_of(board):
    assert owned(500.0, 4e3, 8e3)(board()) is None


def test_the_rest_is_and_its_remedy_leaves_what_is_owned(board):
    project = board(weighted(5, [508.0, 998.0, 2e3, 4e3, 8e3]))
    find = owned(508.0, 998.0)

    finding = find(project)
    mended = finding.remedy.edit(project)

    assert finding.parts == ("R4", "R5")
    assert [r.ohms for r in mended.channels.red.resistors[:2]] == [508.0, 998.0]
    assert all(is_in(r.ohms, Series.E24) for r in mended.channels.red.resistors[2:])
    assert find(mended) is None
