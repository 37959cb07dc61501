"""Values that are asked about."""

import pytest

from workbench.project.plausible import implausible


@pytest.mark.parametrize(
    ("old", "new", "unit"),
    [(500.0, 510.0, "Ω"), (8e3, 500.0, "Ω"), (1e6, 1.1e6, "Ω"), (30e-12, 12e-12, "F"), (3.3, 5.0, "V")],
)
def test_ordinary_values_pass(old: float, new: float, unit: str) -> None:
    assert implausible(old, new, unit) is None


@pytest.mark.parametrize(
    ("old", "new", "unit", "question"),
    [
        (500.0, 1e6, "Ω", "1 MΩ where 500 Ω stood: is that meant?"),
        (500.0, 0.5, "Ω", "500 mΩ where 500 Ω stood: is that meant?"),
        (30e-12, 30e-9, "F", "30 nF where 30 pF stood: is that meant?"),
    ],
)
def test_slips_are_asked_about(old: float, new: float, unit: str, question: str) -> None:
    assert implausible(old, new, unit) == question
