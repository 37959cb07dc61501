import pytest

from workbench.errors import TimingError
from workbench.timing.search import FORMULAS
from workbench.timing.worked_out import worked_out


def test_a_size_and_rate_is_made_by_every_formula() -> None:
    assert len(worked_out("1000x700@61")) == len(FORMULAS)


@pytest.mark.parametrize(
    ("text", "name", "source"),
    [
        ("640x480@60 cvt", "640x480@60", "VESA CVT 1.1"),
        ("cvt rb 640x480@60", "640x480@60RB", "VESA CVT 1.1 reduced blanking"),
        ("CVT-RB2 640x480@59.94", "640x480@59.94RB2", "VESA CVT 1.2 reduced blanking v2"),
        ("gtf 640x480@60", "640x480@60", "VESA GTF"),
    ],
)
def test_a_formulas_name_chooses_it(text: str, name: str, source: str) -> None:
    assert [(mode.name, mode.source) for mode in worked_out(text)] == [(name, source)]


def test_a_formula_without_a_rate_takes_those_of_the_tables() -> None:
    rates = [mode.frame_rate_hz for mode in worked_out("640x480 gtf")]

    assert rates == pytest.approx([60, 73, 75, 85, 67], abs=0.01)


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("", "No mode is named"),
        ("0x0@0", "has no picture"),
        ("1x1@60", "needs at least 1"),
        ("0x10", "row of a table"),
        ("gtf zzz", "“zzz” is not a display mode"),
        ("800x600@60i", "interlaced"),
    ],
)
def test_what_cannot_be_made_says_why(text: str, reason: str) -> None:
    with pytest.raises(TimingError, match=reason):
        worked_out(text)
