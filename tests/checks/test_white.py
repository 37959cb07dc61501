import pytest

from workbench.checks import Severity
from workbench.checks.white import luminance
from workbench.circuit.ladders import r2r, weighted
from workbench.circuit.network import Driver, Load
from workbench.circuit.series import Series, is_in


def test_white_inside_is_a_note_with_both_limits(board, found):
    finding = found(board(), "full-scale")

    assert finding.severity is Severity.INFO
    assert finding.headline == "White is 0.743 V, inside 0.665 … 0.770 V."
    assert (finding.low, finding.high, finding.unit) == (0.665, 0.770, "V")
    assert finding.measured == pytest.approx(0.7430993, abs=1e-7)


@pytest.mark.parametrize(
    ("supply", "words"),
    [pytest.param(5.0, "above 0.770 V", id="bright"), pytest.param(2.5, "below 0.665 V", id="dim")],
)
def test_white_outside_fails_and_names_the_side(board, found, supply, words):
    finding = found(board(driver=Driver(supply)), "full-scale")

    assert finding.severity is Severity.FAIL
    assert words in finding.headline


@pytest.mark.parametrize("series", [Series.E12, Series.E24, Series.E96], ids=lambda s: s.name)
@pytest.mark.parametrize(
    "network",
    [
        pytest.param(weighted(5, [500.0, 1e3, 2e3, 4e3, 8e3]), id="weighted"),
        pytest.param(r2r(4, 330.0), id="r2r"),
        pytest.param(weighted(3, [200.0, 400.0, 800.0], shunt_ohms=130.0), id="shunt"),
        pytest.param(weighted(3, [200.0, 400.0, 800.0], series_ohms=10.0), id="series"),
    ],
)
def test_the_remedy_brings_white_inside(board, found, network, series):
    project = board(network, driver=Driver(5.0, 30.0, 30.0), series=series)
    finding = found(project, "full-scale")
    assert finding.severity is Severity.FAIL

    mended = found(finding.remedy.edit(project), "full-scale")

    assert mended.severity is Severity.INFO


@pytest.mark.parametrize(
    ("part", "slip", "label"),
    [
        pytest.param(0, 47.0, "Use 510 Ω for R1", id="a decade low"),
        pytest.param(1, 100.0, "Use 1 kΩ for R2", id="a zero short"),
        pytest.param(4, 800.0, "Use 8.2 kΩ for R5", id="the last leg"),
        pytest.param(0, 5000.0, "Use 510 Ω for R1", id="a zero more"),
    ],
)
def test_one_slip_is_mended_in_the_part_where_it_is(board, found, part, slip, label):
    ohms = [500.0, 1e3, 2e3, 4e3, 8e3]
    ohms[part] = slip

    assert found(board(weighted(5, ohms)), "full-scale").remedy.label == label


@pytest.mark.parametrize(
    "network",
    [
        pytest.param(weighted(5, [800.0, 1.6e3, 3.2e3, 6.4e3, 12.8e3]), id="weighted"),
        pytest.param(weighted(4, [620.0, 1.24e3, 2.48e3, 4.96e3], shunt_ohms=130.0), id="shunt"),
        pytest.param(weighted(3, [500.0, 1e3, 2e3], shunt_ohms=130.0, series_ohms=10.0), id="series"),
        pytest.param(r2r(5, 410.0), id="r2r"),
        pytest.param(r2r(4, 410.0, shunt_ohms=130.0), id="r2r with shunt"),
        pytest.param(weighted(1, [400.0]), id="one leg"),
    ],
)
@pytest.mark.parametrize("driver", [Driver(), Driver(3.3, 25.0, 25.0)], ids=["ideal", "25 Ω"])
def test_values_of_e24_are_preferred(board, found, network, driver):
    project = board(network, driver=driver)
    finding = found(project, "full-scale")
    assert finding.severity is Severity.FAIL

    mended = finding.remedy.edit(project)

    before = {r.id: r.ohms for r in network.resistors}
    changed = [r.ohms for r in mended.channels.green.resistors if r.ohms != before[r.id]]
    assert changed
    assert all(is_in(ohms, Series.E24) for ohms in changed)
    assert found(mended, "full-scale").severity is Severity.INFO


def test_a_shunt_that_slipped_is_the_part_to_change(board, found):
    # 176.8 Ω in all for 0.700 V beside a shunt of 130.3 Ω, which makes the source 75 Ω
    project = board(weighted(3, [309.4, 618.8, 1237.6], shunt_ohms=13.0))
    finding = found(project, "full-scale")

    assert finding.remedy.label == "Use 130 Ω for RS"
    assert found(finding.remedy.edit(project), "full-scale").measured == pytest.approx(0.7, abs=0.002)


def test_many_changes_are_counted_on_the_button_and_listed_in_words(board, found):
    finding = found(board(driver=Driver(5.0)), "full-scale")

    assert finding.remedy.label == "Use E24 values for 5 resistors"
    assert finding.remedy_text.startswith("Change R1 to 910 Ω, R2 to 1.8 kΩ, R3 to 3.6 kΩ, R4 to ")


def test_exact_values_are_offered_where_the_series_is_too_coarse(board, found):
    finding = found(board(weighted(1, [400.0]), series=Series.E3), "full-scale")

    # 75 Ω x (3.3 - 0.7) / 0.7; the nearest of E3, 220 Ω, gives 0.839 V
    assert finding.remedy.label == "Use 278.6 Ω for R1"


def test_without_a_load_values_are_no_remedy(board, found):
    finding = found(board(load=Load(None)), "full-scale")

    assert finding.severity is Severity.FAIL
    assert finding.remedy is None
    assert "75 Ω load first" in finding.remedy_text


def test_equal_channels_share_one_finding_and_others_get_their_own(board, pipeline):
    project = board(weighted(3, [487.5, 975.0, 1950.0]), blue=weighted(2, [500.0, 1000.0]))

    found = [f for f in pipeline.run(project).findings if f.id == "full-scale"]

    assert [f.subject for f in found] == ["blue", "red and green"]
    assert found[0].headline == "White of blue is 0.606 V, below 0.665 V."


def test_channels_that_differ_too_much_fail_until_scaled(board, found):
    project = board(weighted(3, [487.5, 975.0, 1950.0]), blue=weighted(2, [500.0, 1000.0]))
    finding = found(project, "channel-mismatch")

    # (0.700 - 0.606) / mean of the three whites
    assert finding.severity is Severity.FAIL
    assert finding.measured == pytest.approx(14.04, abs=0.01)
    assert found(finding.remedy.edit(project), "channel-mismatch").severity is Severity.INFO


def test_equal_channels_are_not_compared(board, found):
    assert found(board(), "channel-mismatch") is None


def test_luminance_is_the_power_2_2_of_the_level():
    # 0.50 V: 48 % of full brightness (0.50 / 0.70 to the power 2.2)
    assert luminance(0.50) == pytest.approx(0.477, abs=0.001)
    assert luminance(0.9) == 1.0
    assert luminance(-0.1) == 0.0
