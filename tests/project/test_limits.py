"""Ranges and names."""

import math

import pytest

from workbench.errors import EditError
from workbench.project.limits import MONITORS, OHMS, TOLERANCE, check_name


@pytest.mark.parametrize("ohms", [1e-3, 500.0, 1e9])
def test_values_in_range_pass(ohms: float) -> None:
    assert OHMS.check(ohms, "R1") == ohms


@pytest.mark.parametrize("ohms", [0.0, -1.0, 1e-4, 1.1e9, math.nan, math.inf])
def test_others_are_refused_with_the_range(ohms: float) -> None:
    with pytest.raises(EditError, match=r"^R1 cannot be .*Ω: a resistance lies between 1 mΩ and 1 GΩ$"):
        OHMS.check(ohms, "R1")


def test_parts_of_a_whole_are_shown_in_percent_and_counts_plainly() -> None:
    with pytest.raises(EditError, match="R1 cannot be 100 %: a tolerance lies between 0 % and 50 %"):
        TOLERANCE.check(1.0, "R1")
    with pytest.raises(EditError, match="The count cannot be 9: the number of monitors lies between 1 and 8"):
        MONITORS.check(9, "The count")


def test_a_name_is_kept_as_it_is() -> None:
    assert check_name("Tide board · 2", "the name") == "Tide board · 2"
