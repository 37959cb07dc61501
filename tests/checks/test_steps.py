import numpy as np
import pytest

from workbench.checks import Severity
from workbench.circuit.ladders import r2r, weighted
from workbench.circuit.network import Driver, Load, Zeros

HARD = weighted(5, [470.0, 1e3, 2e3, 4e3, 8e3])
SWAPPED = weighted(3, [2e3, 1e3, 500.0])


def test_even_steps_are_a_note(board, found):
    finding = found(board(), "monotonic")

    assert finding.severity is Severity.INFO
    assert finding.headline == "All 31 steps go up, the smallest by 24.0 mV."


def test_a_repeated_level_is_no_fall_though_rounding_says_so(board, pipeline):
    project = board(weighted(3, [500.0, 1e3, 2e3]), driver=Driver(zeros=Zeros.FLOATING), load=Load(ohms=None))
    result = pipeline.run(project)
    finding = next(f for f in result.findings if f.id == "monotonic")

    assert np.diff(result.channels.red.levels.volts_by_code).min() != 0.0, "else rounding shows nothing"
    assert result.channels.red.linearity.monotonic
    assert (finding.severity, finding.measured) == (Severity.INFO, 0.0)
    assert finding.headline == "Step 1 to 2 does not move; no step goes down."


def test_a_step_of_nothing_is_not_called_one_down(board, found):
    equal = board(weighted(2, [1e3, 1e3]))

    assert found(equal, "monotonic").headline == "Step 1 to 2 does not move; no step goes down."
    assert "0.00 LSB, no step at all" in found(equal, "dnl").headline
    assert found(equal, "dnl").why == "Two neighbouring codes look nearly alike."


def test_a_small_fall_is_given_in_microvolts(board, found):
    slightly = board(weighted(2, [1e3 * (1 + 1.4e-4), 1e3]))

    assert found(slightly, "monotonic").headline == "Step 1 to 2 goes down by 30 µV: not monotonic."


def test_even_steps_raise_no_linearity(board, found):
    assert found(board(), "dnl") is None
    assert found(board(), "inl") is None


def test_a_strong_leg_is_named_with_its_step(board, found):
    finding = found(board(HARD), "dnl")

    assert finding.severity is Severity.WARN
    assert finding.headline == (
        "Step 15 to 16 is 1.96 LSB, nearly two steps in one: R1 470 Ω pulls too hard against R2 … R5."
    )
    assert finding.parts == ("R1",)
    assert finding.remedy.label == "Use 510 Ω for R1"


def test_a_leg_weakened_by_its_pin_is_named_with_the_pin(board, found):
    finding = found(board(driver=Driver(3.3, 40.0, 40.0)), "dnl")

    assert "R1 500 Ω with 40 Ω in the pin pulls too weakly against R2 … R5" in finding.headline


def test_reversed_bits_fail_three_rules(board, found):
    project = board(SWAPPED)

    assert found(project, "monotonic").headline == "Step 3 to 4 goes down by 490.1 mV: not monotonic."
    assert {found(project, rule).severity for rule in ("monotonic", "dnl", "inl")} == {Severity.FAIL}


@pytest.mark.parametrize(
    ("network", "driver"),
    [
        pytest.param(SWAPPED, Driver(), id="reversed"),
        pytest.param(weighted(4, [300.0, 1e3, 2e3, 4e3]), Driver(), id="strong"),
        pytest.param(weighted(6, [400.0, 886.0, 1774.0, 3549.0, 7100.0, 14200.0]), Driver(), id="six"),
        pytest.param(weighted(5, [500.0, 1e3, 2e3, 4e3, 8e3]), Driver(3.3, 80.0, 80.0), id="weak pins"),
        pytest.param(r2r(4, 500.0, 700.0), Driver(), id="r2r"),
        pytest.param(
            weighted(5, [500.0, 1e3, 2e3, 4e3, 8e3]), Driver(zeros=Zeros.FLOATING), id="zeros floating"
        ),
    ],
)
def test_a_remedy_removes_its_finding(board, found, network, driver):
    project = board(network, driver=driver)
    uneven = [f for rule in ("monotonic", "dnl", "inl") if (f := found(project, rule)) is not None]
    weighty = [f for f in uneven if f.severity is not Severity.INFO]
    assert weighty

    mended = [found(finding.remedy.edit(project), finding.id) for finding in weighty]

    assert all(finding is None or finding.severity is Severity.INFO for finding in mended)


def test_a_remedy_does_not_push_white_out(board, found):
    project = board(HARD)
    mended = found(project, "dnl").remedy.edit(project)

    assert found(mended, "full-scale").severity is Severity.INFO


def test_a_custom_network_has_no_one_click_remedy(board, found):
    network = weighted(3, [2e3, 1e3, 500.0])
    bridged = network.resistors[0].__class__("R9", network.pins[0], network.pins[1], 1e3)
    project = board(network.__class__(network.pins, (*network.resistors, bridged)))

    assert found(project, "monotonic").remedy is None


def test_one_bit_has_one_step(board, found):
    assert found(board(weighted(1, [280.0])), "monotonic").headline == "The one step goes up by 697.2 mV."
