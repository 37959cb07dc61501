import pytest

from workbench.checks import Severity
from workbench.circuit.ladders import weighted
from workbench.circuit.network import Driver, Load, Zeros


@pytest.mark.parametrize(
    ("load", "severity", "headline"),
    [
        pytest.param(
            Load(None),
            Severity.FAIL,
            "Nothing loads the colour lines: white rises to 3.300 V.",
            id="missing",
        ),
        pytest.param(
            Load(75.0, monitors=2),
            Severity.WARN,
            "2 × 75 Ω load every colour line as 37.5 Ω: white is 0.419 V.",
            id="doubled",
        ),
        pytest.param(Load(50.0), Severity.WARN, "The load is 50 Ω, not 75 Ω: white is 0.536 V.", id="other"),
    ],
)
def test_a_wrong_load_is_found_and_mended(board, found, load, severity, headline):
    project = board(load=load)
    finding = found(project, "load")

    assert finding.severity is severity
    assert finding.headline == headline
    assert found(finding.remedy.edit(project), "load") is None


def test_a_low_white_does_not_rise(board, found):
    shunted = board(weighted(3, [500.0, 1e3, 2e3], shunt_ohms=1.0), load=Load(None))

    assert found(shunted, "load").headline == "Nothing loads the colour lines: white is 0.012 V."


@pytest.mark.parametrize("ohms", [67.5, 75.0, 82.5])
def test_a_load_within_ten_percent_is_right(board, found, ohms):
    assert found(board(load=Load(ohms)), "load") is None


def test_floating_zeros_break_superposition_and_can_be_driven(board, found):
    project = board(weighted(3, [500.0, 1e3, 2e3]), driver=Driver(zeros=Zeros.FLOATING))
    finding = found(project, "zeros-floating")

    # Single bits 0.1193, 0.2302 and 0.4304 V against 0.6861 V together (computed by hand as
    # 3.3 x 75 / (75 + R)): 13.7 % more.
    assert finding.severity is Severity.WARN
    assert finding.measured == pytest.approx(13.66, abs=0.05)
    assert found(finding.remedy.edit(project), "zeros-floating") is None


def test_driven_zeros_are_not_mentioned(board, found):
    assert found(board(), "zeros-floating") is None
