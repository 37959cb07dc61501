from fractions import Fraction
from itertools import product
from math import gcd

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from workbench.errors import TimingError
from workbench.progress import Cancelled
from workbench.timing.clock.chip import Chip, Span, read_chip
from workbench.timing.clock.plan import Jitter, clock_object, plan_clock, planned_mode
from workbench.timing.search import find_mode

MODE = find_mode("640x480@60")
TWO_DIVIDERS = Chip(
    12_000_000, Span(16, 320), (Span(1, 7), Span(1, 7)), 133_000_000, Span(750_000_000, 1_600_000_000)
)


def by_hand(chip: Chip) -> dict[Jitter, Fraction]:
    """Return the smallest error of each kind of jitter, from a plain loop over every setting."""
    best: dict[Jitter, Fraction] = {}
    finest = 1 << chip.fraction_bits
    oscillator = chip.oscillator_hz or Span(0, 10**11)
    for multiply in range(chip.multiply.low, chip.multiply.high + 1):
        if not oscillator.low <= chip.reference_hz * multiply <= oscillator.high:
            continue
        for ways in product(*(range(span.low, span.high + 1) for span in chip.dividers)):
            system = Fraction(chip.reference_hz * multiply)
            for way in ways:
                system /= way
            if system > chip.max_system_hz:
                continue
            for steps in {1, gcd(MODE.h.total, finest), finest}:
                below = max(int(system / MODE.pixel_clock_hz * steps), steps)
                errors = {
                    Fraction(n, steps): system * steps / n / MODE.pixel_clock_hz - 1
                    for n in (below, below + 1)
                }
                divider, error = min(errors.items(), key=lambda item: abs(item[1]))
                steady = (divider * MODE.h.total).denominator == 1
                kind = Jitter.NONE if divider.denominator == 1 else Jitter.PIXEL if steady else Jitter.LINE
                best[kind] = min(abs(error), best.get(kind, abs(error)))
    return best


@settings(max_examples=30, deadline=None)
@given(
    st.integers(1_000_000, 30_000_000),
    st.integers(1, 40),
    st.integers(0, 4),
    st.integers(1, 5),
    st.integers(0, 8),
    st.sampled_from([20_000_000, 60_000_000, 133_000_000]),
)
def test_the_best_of_each_kind_is_the_best_there_is(reference, low, more, divide, bits, max_system) -> None:
    chip = Chip(reference, Span(low, low + more), (Span(1, divide),), max_system, None, bits)
    expected = by_hand(chip)
    if not expected:
        with pytest.raises(TimingError, match="No setting keeps the system clock"):
            plan_clock(MODE, chip)
        return

    plans = plan_clock(MODE, chip)
    best = {
        kind: next(plan for plan in plans if plan.jitter is kind) for kind in {plan.jitter for plan in plans}
    }

    for kind, plan in best.items():
        assert abs(plan.pixel_hz / MODE.pixel_clock_hz - 1) == expected[kind]
    assert Jitter.NONE in best


def test_plans_are_ranked_by_jitter_then_error_then_speed() -> None:
    plans = plan_clock(MODE, Chip(12_000_000, Span(60, 130), (Span(1, 7), Span(1, 7)), 133_000_000, None, 8))
    order = list(Jitter)
    keys = [(order.index(plan.jitter), abs(plan.error_ppm), -plan.system_hz) for plan in plans]

    assert keys == sorted(keys)
    assert {plan.jitter for plan in plans} == set(Jitter)
    assert len(plans) == 30
    assert len({(plan.system_hz, plan.divider) for plan in plans}) == 30


def test_many_ways_to_one_clock_are_listed_once_from_the_fastest_oscillator() -> None:
    chip = Chip(MODE.pixel_clock_hz, Span(1, 1000), (Span(1, 1000),), 10 * MODE.pixel_clock_hz)

    plans = plan_clock(MODE, chip)

    assert [plan.divider for plan in plans] == [10, 9, 8, 7, 6, 5, 4, 3, 2, 1]
    assert all(plan.error_ppm == 0.0 for plan in plans)
    assert [plan.multiply for plan in plans] == [1000, 999, 1000, 994, 996, 1000, 1000, 999, 1000, 1000]


def test_every_plan_keeps_the_chips_limits_and_adds_up() -> None:
    for plan in plan_clock(MODE, TWO_DIVIDERS):
        first, second = plan.dividers
        assert 1 <= first <= 7
        assert 1 <= second <= 7
        assert 750_000_000 <= 12_000_000 * plan.multiply <= 1_600_000_000
        assert plan.system_hz == Fraction(12_000_000 * plan.multiply, first * second) <= 133_000_000
        assert plan.pixel_hz == plan.system_hz / plan.divider
        assert (plan.jitter, plan.uneven_s, plan.divider.denominator) == (Jitter.NONE, 0.0, 1)


def test_a_pixel_clock_a_little_faster_than_the_system_is_reached_with_divider_1() -> None:
    chip = read_chip(reference="25M", multiply="1", divide="1", max_system="25M")

    (plan,) = plan_clock(MODE, chip)

    assert plan.divider == 1
    assert plan.error_ppm == pytest.approx(-6951.3, abs=0.1)


def test_planned_mode_has_the_rates_that_result() -> None:
    mode = planned_mode(MODE, plan_clock(MODE, TWO_DIVIDERS)[0])

    assert mode.pixel_clock_hz == 25_200_000
    assert mode.frame_rate_hz == 60.0


def test_clock_object_has_the_keys_of_the_contract() -> None:
    chip = read_chip(reference="133M", multiply="1", divide="1", max_system="133M", fraction_bits=8)
    plans = clock_object(chip, plan_clock(MODE, chip))["plans"]

    assert isinstance(plans, list)
    pixel = next(plan for plan in plans if plan["jitter"] == "pixel")
    assert pixel.keys() == {
        "system_hz",
        "divider",
        "pixel_hz",
        "error_ppm",
        "jitter",
        "uneven_s",
        "settings",
    }
    assert (pixel["settings"]["whole"], pixel["settings"]["fraction"]) == (5, 72)


def test_too_many_settings_are_refused() -> None:
    chip = Chip(1_000_000, Span(1, 10_000), (Span(1, 100), Span(1, 100)), 133_000_000)

    with pytest.raises(TimingError, match="100000000 settings, more than"):
        plan_clock(MODE, chip)


def test_no_multiplier_in_the_oscillators_range() -> None:
    chip = Chip(12_000_000, Span(1, 2), (Span(1, 1),), 133_000_000, Span(750_000_000, 1_600_000_000))

    with pytest.raises(TimingError, match=r"No multiplier of 1\.\.2"):
        plan_clock(MODE, chip)


class _StopAt:
    """Cancels the work once it has come half way."""

    def __init__(self) -> None:
        self.steps: list[tuple[int, int]] = []

    def step(self, done: int, total: int) -> None:
        self.steps.append((done, total))
        if done * 2 > total:
            raise Cancelled


def test_a_search_tells_how_far_it_is_and_can_be_stopped() -> None:
    watch = _StopAt()

    with pytest.raises(Cancelled):
        plan_clock(MODE, Chip(1_000_000, Span(1, 1000), (Span(1, 1000),), 133_000_000), progress=watch)
    assert watch.steps[0] == (0, 1_000_000)
    assert 10 < len(watch.steps) < 30
