"""Values that are asked about."""

import pytest

from workbench.project.plausible import (
    implausible,
    implausible_cable,
    implausible_limits,
    implausible_measured,
)


@pytest.mark.parametrize(
    ("old", "new", "unit"),
    [
        (500.0, 510.0, "Ω"),
        (500.0, 3.9e3, "Ω"),
        (8e3, 1.1e3, "Ω"),
        (1e6, 1.1e6, "Ω"),
        (30e-12, 12e-12, "F"),
        (3.3, 5.0, "V"),
    ],
)
def test_ordinary_values_pass(old: float, new: float, unit: str) -> None:
    assert implausible(old, new, unit) is None


@pytest.mark.parametrize(
    ("old", "new", "unit", "question"),
    [
        (500.0, 1e6, "Ω", "1 MΩ where 500 Ω stood: is that meant?"),
        (470.0, 47.0, "Ω", "47 Ω where 470 Ω stood: is that meant?"),
        (500.0, 47.0, "Ω", "47 Ω where 500 Ω stood: is that meant?"),
        (510.0, 5.1e3, "Ω", "5.1 kΩ where 510 Ω stood: is that meant?"),
        (500.0, 0.5, "Ω", "500 mΩ where 500 Ω stood: is that meant?"),
        (30e-12, 30e-9, "F", "30 nF where 30 pF stood: is that meant?"),
    ],
)
def test_slips_are_asked_about(old: float, new: float, unit: str, question: str) -> None:
    assert implausible(old, new, unit) == question


@pytest.mark.parametrize(
    ("pin", "total"), [(None, None), (4e-3, None), (20e-3, 0.1), (1.0, 5.0), (None, 1e-3)]
)
def test_ordinary_limits_pass(pin: float | None, total: float | None) -> None:
    assert implausible_limits(pin, total) is None


@pytest.mark.parametrize(
    ("pin", "total", "start"),
    [
        pytest.param(20.0, None, "20 A for one pin", id="amperes for milliamperes"),
        pytest.param(20e-6, None, "20 µA for one pin", id="0.02 in a field of milliamperes"),
        pytest.param(8e-3, 8.0, "8 A for all pins together", id="all pins"),
    ],
)
def test_limits_no_logic_has_are_asked_about(pin: float | None, total: float | None, start: str) -> None:
    question = implausible_limits(pin, total)

    assert question is not None
    assert question.startswith(start)
    assert question.endswith("Is that meant?")


@pytest.mark.parametrize("measured", [2200.0, 2190.0, 2640.0, 1760.0])
def test_measured_values_inside_the_widest_band_pass(measured: float) -> None:
    assert implausible_measured(2200.0, measured) is None


@pytest.mark.parametrize("measured", [9999.0, 220.0, 2.2, 2650.0])
def test_measured_values_of_another_part_are_asked_about(measured: float) -> None:
    assert implausible_measured(2200.0, measured).endswith("2.2 kΩ is printed: is that meant?")


def test_a_part_that_was_not_measured_is_not_asked_about() -> None:
    assert implausible_measured(None, 9999.0) is None


@pytest.mark.parametrize("metres", [None, 0.01, 2.0, 50.0])
def test_ordinary_cables_pass(metres: float | None) -> None:
    assert implausible_cable(metres) is None


def test_a_cable_longer_than_any_is_asked_about() -> None:
    assert implausible_cable(1000.0).startswith("1 km of cable: analog pictures seldom")
