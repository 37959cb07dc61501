"""Quantities: what is read, what is refused and in which words, and how values are shown."""

import math
from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.errors import QuantityError
from workbench.units import (
    format_fixed,
    format_percent,
    format_quantity,
    format_significant,
    parse_list,
    parse_quantity,
    split_values,
)

POSITIVE = st.floats(min_value=1e-16, max_value=1e16)


@pytest.mark.parametrize(
    ("text", "ohms"),
    [
        ("4k7", 4700.0),
        ("4.7k", 4700.0),
        ("4,7k", 4700.0),
        ("4,7 kΩ", 4700.0),
        ("5 k Ω", 5000.0),
        ("5 k\u00a0ohm", 5000.0),
        ("4700", 4700.0),
        ("75R", 75.0),
        ("0R5", 0.5),
        ("R47", 0.47),
        ("470R", 470.0),
        ("47K3", 47300.0),
        ("1M5", 1.5e6),
        ("1e3", 1000.0),
        ("2.5e-1", 0.25),
        ("0,743", 0.743),
        ("1234,567", 1234.567),
        (" +75 ohm ", 75.0),
        ("\u2126".join(["75", ""]), 75.0),
    ],
)
def test_resistances_are_read(text: str, ohms: float) -> None:
    assert parse_quantity(text, "Ω") == ohms


@pytest.mark.parametrize(
    ("text", "unit", "value"),
    [
        ("3V3", "V", 3.3),
        ("3.3 V", "V", 3.3),
        ("25.175M", "Hz", 25_175_000.0),
        ("25M175", "Hz", 25_175_000.0),
        ("31.46875 kHz", "Hz", 31_468.75),
        ("15p", "F", 15e-12),
        ("12pF", "F", 12e-12),
        ("39.7 ns", "s", 39.7e-9),
        ("2us", "s", 2e-6),
        ("2 \u03bcs", "s", 2e-6),
        ("2m", "m", 2.0),
        ("20mm", "m", 0.02),
        ("1m5", "m", 1.5),
        ("8m", "A", 0.008),
        ("1%", "%", 0.01),
        ("0,5 %", "%", 0.005),
        ("5", "%", 0.05),
    ],
)
def test_other_units_are_read(text: str, unit: str, value: float) -> None:
    assert parse_quantity(text, unit) == value


@pytest.mark.parametrize(
    ("text", "ohms"),
    [
        ("1k||1k", 500.0),
        ("1k || 1k || 1k", 1000.0 / 3.0),
        ("820+150", 970.0),
        ("820+1k||1k", 1320.0),
        ("(820+150)||970", 485.0),
        ("1e+3+1", 1001.0),
        ("(75)", 75.0),
    ],
)
def test_parts_in_series_and_parallel_are_worked_out(text: str, ohms: float) -> None:
    assert parse_quantity(text, "Ω") == pytest.approx(ohms, rel=1e-14)


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("4k7k", "the unit k stands twice: 4.7 kΩ is written 4k7"),
        ("4k7R", "k and R both stand for the unit: write one of them, as in 4k7"),
        ("4,700", "4,700 may mean 4.7 or 4700: write one of them"),
        ("12,500k", "12,500 may mean 12.5 or 12500: write one of them"),
        ("1,234.5", "“1,234.5” has more than one point or comma: write it without separators"),
        ("4 700", "“4 700” has a space inside the number: write it without"),
        ("0", "“0” is not possible: a resistance must be above 0, as in 4k7"),
        ("-5", "“-5” is not possible: a resistance must be above 0"),
        ("nan", "“nan” is not a number: type a value like 4k7"),
        ("-inf", "“-inf” is not a number: type a value like 4k7"),
        ("1e999", "“1e999” is too large: type a value like 4k7"),
        ("1e3k", "“1e3k” has a power of ten and a prefix: write one of them"),
        ("", "there is no value: type one like 4k7"),
        ("five", "“five” is not understood: type a value like 4k7"),
        ("4kV", "“kV” in “4kV” is no unit of a resistance: type a value like 4k7"),
        ("1|1", "“1|1” is not understood: type a value like 4k7"),
        ("1k||", "a value is missing beside || or +: write both, as in 1k||1k or 820+150"),
        ("(1k", "a bracket is open: write both, as in (820+150)||1k"),
        ("1k)2", "“1k)2” is not understood after “1k”"),
        ("1k||0", "“0” is not possible: a resistance must be above 0, as in 4k7"),
        ("9" * 81, "a value has at most 80 characters: type one like 4k7"),
    ],
)
def test_unclear_resistances_are_refused_with_a_reason(text: str, sentence: str) -> None:
    with pytest.raises(QuantityError) as error:
        parse_quantity(text, "Ω")

    assert str(error.value) == sentence


def test_zero_and_negative_pass_where_they_are_values() -> None:
    assert parse_quantity("0", "s", zero=True) == 0.0
    assert parse_quantity("\u22120.5", "V", negative=True) == -0.5
    assert math.copysign(1.0, parse_quantity("-0", "V", zero=True)) == 1.0


@given(text=st.text(max_size=12) | st.text("0123456789.,kKmMRΩe+-|() ", max_size=12))
def test_any_text_is_a_positive_number_or_a_sentence(text: str) -> None:
    with suppress(QuantityError):
        assert 0.0 < parse_quantity(text, "Ω") < math.inf


@given(value=POSITIVE, unit=st.sampled_from(["Ω", "V", "A", "F", "s", "Hz", "m"]), digits=st.integers(2, 14))
def test_what_is_shown_reads_back(value: float, unit: str, digits: int) -> None:
    shown = format_quantity(value, unit, digits)

    assert parse_quantity(shown, unit) == pytest.approx(value, rel=0.51 * 10.0 ** (1 - digits))


@given(value=POSITIVE)
def test_a_negative_value_reads_back_with_its_sign(value: float) -> None:
    assert parse_quantity(format_quantity(-value, "V", 15), "V", negative=True) == pytest.approx(-value)


@pytest.mark.parametrize(
    ("value", "unit", "shown"),
    [
        (4700.0, "Ω", "4.7 kΩ"),
        (1e-5, "s", "10 µs"),
        (25_175_000.0, "Hz", "25.18 MHz"),
        (0.0, "V", "0 V"),
        (-0.00533, "A", "\u22125.33 mA"),
        (math.inf, "Ω", "∞ Ω"),
        (math.nan, "V", "– V"),
    ],
)
def test_values_are_shown_with_their_prefix(value: float, unit: str, shown: str) -> None:
    assert format_quantity(value, unit) == shown


def test_columns_keep_their_decimals() -> None:
    assert format_fixed(0.743, "V") == "0.743 V"
    assert format_fixed(31.7776e-6, "s", prefix="µ") == "31.778 µs"
    assert format_fixed(5.5449e-3, "A", prefix="m") == "5.545 mA"
    assert format_fixed(-1e-5, "V") == "0.000 V"
    assert format_fixed(-0.25, "LSB", decimals=2) == "\u22120.25 LSB"
    assert format_significant(5.54e-3, "A") == "5.540 mA"


def test_percentages_drop_their_zeros() -> None:
    assert [format_percent(part) for part in (0.01, 0.005, 1.0, -0.06)] == [
        "1 %",
        "0.5 %",
        "100 %",
        "\u22126 %",
    ]


def test_a_comma_separates_on_the_command_line() -> None:
    assert split_values("500, 1k,2k") == ("500", "1k", "2k")
    assert parse_list("500,1k,2k", "Ω") == (500.0, 1000.0, 2000.0)
    with pytest.raises(QuantityError, match="a value is missing in “500,,2k”"):
        split_values("500,,2k")
