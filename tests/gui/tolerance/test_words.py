from dataclasses import replace

import numpy as np
import pytest

from workbench.circuit.bands import Band, Tolerances
from workbench.circuit.ladders import weighted
from workbench.circuit.network import Driver, Load
from workbench.circuit.tolerance.monte_carlo import find_tolerance
from workbench.errors import QuantityError
from workbench.gui.tolerance.words import (
    board_words,
    monotonic_words,
    own_tolerance_words,
    read_count,
    spread_words,
    worst_words,
)
from workbench.gui.widgets import Sign

LADDER = weighted(5, [500.0, 1e3, 2e3, 4e3, 8e3])


def boards(half_width, count=20_000):
    return find_tolerance(LADDER, Driver(), Load(), Tolerances(Band(half_width)), boards=count)


@pytest.mark.parametrize(
    ("half_width", "sign", "words"),
    [
        (0.01, Sign.PASSES, "Every board within the tolerances is monotonic."),
        (0.034, Sign.PASSES, "the worst there can be has a DNL of 1.05 LSB"),
        (0.10, Sign.FAILS, "of the boards are monotonic"),
    ],
)
def test_the_share_of_monotonic_boards_is_said(half_width, sign, words):
    found_sign, sentence = monotonic_words(boards(half_width))

    assert found_sign is sign
    assert words in sentence


def test_a_share_is_never_rounded_up_to_all():
    nearly = replace(boards(0.05), boards=1_000_000, monotonic_yield=0.999999)

    assert monotonic_words(nearly)[1].startswith("99.999 % of the boards are monotonic; 1 of 1")


def test_boards_of_which_none_is_monotonic_are_said():
    none = replace(boards(0.05), monotonic_yield=0.0)

    assert monotonic_words(none)[1] == "No board is monotonic: all 20\u202f000 step back somewhere."


def test_spreads_are_said():
    white = boards(0.01).full_scale_volts

    assert spread_words(white, "V", 3) == "0.739 … 0.747 V in 98 of 100"
    assert worst_words(white, "V", 3, both=True) == "0.737 … 0.749 V at worst"


def test_boards_all_alike_are_said():
    assert spread_words(boards(0.0).full_scale_volts, "V", 3) == "0.743 V on every board"


def test_a_board_is_judged_by_white_and_steps():
    even = np.linspace(0.0, 0.7, 32)
    fallen = even.copy()
    fallen[16] = fallen[15] - 0.0031

    assert board_words(even)[0] == (Sign.PASSES, "White is 0.700 V, inside 0.665 … 0.770 V.")
    assert board_words(even * 0.9)[0] == (Sign.FAILS, "White is 0.630 V, below 0.665 V.")
    assert board_words(even * 1.2)[0] == (Sign.FAILS, "White is 0.840 V, above 0.770 V.")
    assert board_words(even)[1][0] is Sign.PASSES
    assert board_words(fallen)[1] == (
        Sign.FAILS,
        "Step 15 to 16 falls by 3.1 mV: a dark notch in every ramp.",
    )
    assert board_words(np.array([0.5]))[1] == (Sign.NOTE, "There are no steps.")


def test_own_tolerances_are_said_as_one_or_as_a_range():
    mixed = replace(LADDER, resistors=(replace(LADDER.resistors[0], tolerance=0.05), *LADDER.resistors[1:]))

    assert own_tolerance_words(LADDER) == "own, 1 %"
    assert own_tolerance_words(mixed) == "1 … 5 %"
    assert own_tolerance_words(replace(LADDER, resistors=())) == "own"


@pytest.mark.parametrize(
    ("text", "count"), [("100000", 100_000), ("100 000", 100_000), ("100k", 100_000), ("1M", 1_000_000)]
)
def test_counts_are_read_as_people_write_them(text, count):
    assert read_count(text, low=1, high=10_000_000) == count


@pytest.mark.parametrize("text", ["", "k", "-5", "1.5", "1e5", "nan", "0", "11M", "9" * 40])
def test_what_is_no_count_is_refused(text):
    with pytest.raises(QuantityError):
        read_count(text, low=1, high=10_000_000)
