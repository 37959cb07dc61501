from fractions import Fraction

import pytest

from workbench.timing.clock.chip import Chip, Span
from workbench.timing.clock.plan import Jitter, Plan
from workbench.timing.clock.words import error_words, is_hopeless, jitter_words, lock_words, settings_words

CHIP = Chip(12_000_000, Span(16, 320), (Span(1, 7), Span(1, 7)), 133_000_000, fraction_bits=8)


def plan(pixel_hz: int, jitter: Jitter = Jitter.NONE, divider: Fraction = Fraction(5)) -> Plan:
    return Plan(63, (3, 2), pixel_hz * divider, divider, 25_175_000, jitter)


@pytest.mark.parametrize(
    ("hz", "words"),
    [
        (25_175_000, "0 ppm"),
        (25_200_000, "+993.05 ppm"),
        (25_000_000, "−6951.34 ppm"),
        (20_000_000, "−20.6 %"),
    ],
)
def test_an_error_has_its_sign_and_a_unit_that_suits(hz, words):
    assert error_words(plan(hz)) == words


@pytest.mark.parametrize(
    ("hz", "words"),
    [
        (25_200_000, ""),
        (25_000_000, "up to ±1 % many monitors still lock"),
        (25_600_000, "few monitors lock"),
        (20_000_000, "another mode, if for any"),
    ],
)
def test_a_caution_stands_where_one_is_due(hz, words):
    assert words in lock_words(plan(hz))
    assert is_hopeless(plan(hz)) == (hz == 20_000_000)


def test_settings_read_as_an_equation():
    fractional = plan(25_175_000, Jitter.PIXEL, Fraction(9, 2))

    assert settings_words(CHIP, fractional) == "12 MHz × 63 / 3 / 2 = 113.2875 MHz, / (4 + 128/256)"


@pytest.mark.parametrize(
    ("jitter", "words"),
    [
        (Jitter.NONE, "even pixels"),
        (Jitter.PIXEL, "pixels uneven by 8.83 ns (22 % of a pixel)"),
        (Jitter.LINE, "lines jitter"),
    ],
)
def test_jitter_is_told_by_what_is_seen(jitter, words):
    assert words in jitter_words(plan(25_175_000, jitter, Fraction(9, 2)))
