import pytest

from workbench.errors import TimingError
from workbench.timing.clock.budget import cycle_budget, whole_line
from workbench.timing.search import find_mode

MODE = find_mode("640x480@60")


def test_parts_add_up() -> None:
    budget = cycle_budget(MODE, 125e6)

    assert budget.active + budget.blanking == pytest.approx(budget.per_line)
    assert budget.per_frame == pytest.approx(525 * budget.per_line)


@pytest.mark.parametrize("cpu_hz", [0, -1, float("nan"), float("inf")])
def test_impossible_clocks_are_refused(cpu_hz: float) -> None:
    for work in (cycle_budget, whole_line):
        with pytest.raises(TimingError, match="processor clock"):
            work(MODE, cpu_hz)


def test_a_clock_slower_than_the_lines() -> None:
    with pytest.raises(TimingError, match="slower than the lines"):
        whole_line(MODE, 1e3)
