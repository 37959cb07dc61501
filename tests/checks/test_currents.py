import pytest

from workbench.checks import Severity
from workbench.circuit.ladders import weighted
from workbench.circuit.network import Driver

# One leg of 500 Ω among 1 kΩ … 8 kΩ is worst alone: (3.3 - 0.3835) / 500 = 5.833 mA.
WORST_PIN = 5.833e-3


def test_without_limits_the_present_currents_are_told(board, found):
    finding = found(board(), "current-limits")

    assert finding.severity is Severity.INFO
    assert "the worst pin, R0, carries 5.83 mA, all colour pins 29.7 mA" in finding.headline
    assert finding.remedy_text.startswith("Enter both limits: in Preferences, Ctrl+,")
    assert found(board(), "pin-current") is None


def test_both_limits_entered_leave_nothing_to_ask(board, found):
    project = board(driver=Driver(pin_limit_amps=12e-3, total_limit_amps=50e-3))

    assert found(project, "current-limits") is None
    assert found(project, "pin-current").severity is Severity.INFO
    assert found(project, "total-current").severity is Severity.INFO


def test_one_missing_limit_is_asked_for(board, found):
    finding = found(board(driver=Driver(pin_limit_amps=12e-3)), "current-limits")

    assert finding.headline.startswith("No current limit for all pins is entered")
    assert finding.remedy_text.startswith("Enter the limit of all pins: in Preferences")


def test_a_pin_over_its_limit_fails_with_pin_code_and_part(board, found):
    finding = found(board(driver=Driver(pin_limit_amps=4e-3)), "pin-current")

    assert finding.severity is Severity.FAIL
    assert finding.headline == "R0 carries 5.83 mA at code 16, over your limit of 4.00 mA."
    assert finding.measured == pytest.approx(WORST_PIN, rel=1e-3)
    assert finding.parts == ("R1",)


def test_several_pins_over_their_limit_are_counted(board, found):
    finding = found(board(driver=Driver(pin_limit_amps=2e-3)), "pin-current")

    assert finding.headline.startswith("R0, and 1 more carries")
    assert finding.parts == ("R1", "R2")


def test_all_pins_over_the_chip_limit_fail(board, found):
    finding = found(board(driver=Driver(total_limit_amps=20e-3)), "total-current")

    # three channels at white: 3 x 0.7431 V / 75 Ω
    assert finding.severity is Severity.FAIL
    assert finding.measured == pytest.approx(3 * 0.7430993 / 75.0, rel=1e-6)


def test_a_hot_resistor_fails_and_gets_the_next_rating(board, found):
    # 5 V over 50 Ω and 10 Ω || 75 Ω: 85 mA, 0.361 W in the leg
    project = board(weighted(1, [50.0], shunt_ohms=10.0), driver=Driver(5.0))
    finding = found(project, "dissipation")

    assert finding.severity is Severity.FAIL
    assert finding.parts == ("R1",)
    assert finding.measured == pytest.approx(0.361, abs=0.001)
    assert finding.high == 0.25
    assert finding.remedy.label == "Fit 500 mW for R1"
    assert found(finding.remedy.edit(project), "dissipation") is None


def test_usual_ladders_stay_cool(board, found):
    assert found(board(), "dissipation") is None
