"""Sentences on the channels' whites and on the source resistance, on boards that differ."""

from dataclasses import replace

import pytest

from tests.exports.boards import board
from workbench.circuit.ladders import weighted
from workbench.circuit.network import Cable, Driver, Network, Zeros
from workbench.exports.report import report_text
from workbench.gui.levels.matching import matching_words, source_words
from workbench.gui.widgets import Sign
from workbench.pipeline.run import Pipeline
from workbench.project.document import Channel


def solved(blue=None, **settings):
    project = board(**settings)
    if blue is not None:
        project = replace(project, channels=replace(project.channels, blue=blue))
    return Pipeline().run(project)


def legs(factor):
    return weighted(5, [factor * ohms for ohms in (500.0, 1e3, 2e3, 4e3, 8e3)])


def test_equal_channels_are_alike():
    assert matching_words(solved()) == (Sign.PASSES, "The whites are alike: 0.743 V.")


@pytest.mark.parametrize(
    ("factor", "sign", "words"),
    [(1.05, Sign.PASSES, "differ by 3.8 %, within 6 %"), (1.2, Sign.FAILS, "differ by 14 %, over 6 %")],
)
def test_a_difference_is_judged_by_the_published_limit(factor, sign, words):
    found_sign, sentence = matching_words(solved(legs(factor)))

    assert found_sign is sign
    assert words in sentence
    assert "red 0.743, green 0.743, blue 0." in sentence


def test_a_channel_without_white_cannot_be_compared():
    result = solved(Network(board().channels.blue.pins, ()))

    assert matching_words(result) == (Sign.WARNS, "No white from blue: the channels cannot be compared.")
    assert source_words(result, Channel.BLUE)[0] is Sign.NOTE


def test_the_source_resistance_says_what_comes_back_of_an_echo():
    """258.06 Ω on 75 Ω: (258.06 - 75) / (258.06 + 75) = 55 %."""
    sign, sentence = source_words(solved(), Channel.RED)

    assert sign is Sign.NOTE
    assert sentence == "Source resistance 258.1 Ω: 55 % of an echo comes back, on 75 Ω of cable."


def test_a_matched_source_passes():
    project = board()
    matched = weighted(5, [500.0, 1e3, 2e3, 4e3, 8e3], shunt_ohms=105.7)
    result = Pipeline().run(replace(project, channels=replace(project.channels, red=matched)))

    assert source_words(result, Channel.RED) == (
        Sign.PASSES,
        "Source resistance 74.99 Ω: matched to 75 Ω.",
    )


def test_another_cable_counts():
    result = solved(cable=Cable(2.0, ohms=50.0))

    assert "on 50 Ω of cable" in source_words(result, Channel.RED)[1]


def test_matched_is_what_matches_the_cable_that_is_there():
    project = board(cable=Cable(2.0, ohms=50.0))
    of_75 = weighted(5, [500.0, 1e3, 2e3, 4e3, 8e3], shunt_ohms=105.7)
    result = Pipeline().run(replace(project, channels=replace(project.channels, red=of_75)))

    assert source_words(result, Channel.RED) == (
        Sign.NOTE,
        "Source resistance 74.99 Ω: 20 % of an echo comes back, on 50 Ω of cable.",
    )


@pytest.mark.parametrize(
    ("driver", "source"),
    [
        (Driver(high_ohms=40, low_ohms=55), "272.1 Ω at white, 277.2 Ω at black"),
        (Driver(high_ohms=40, zeros=Zeros.FLOATING), "272.1 Ω at white, at black nothing holds it"),
    ],
    ids=["unlike", "floating"],
)
def test_a_source_that_changes_is_judged_at_white(driver, source):
    """(272.1 - 75) / (272.1 + 75) = 57 %; the report says the same resistances."""
    result = solved(driver=driver)

    assert source_words(result, Channel.RED) == (
        Sign.NOTE,
        f"Source resistance {source}: at white 57 % of an echo comes back, on 75 Ω of cable.",
    )
    assert source in report_text(result)


def test_a_source_that_is_matched_at_white_alone_is_not_matched():
    project = board(driver=Driver(zeros=Zeros.FLOATING))
    matched = weighted(5, [500.0, 1e3, 2e3, 4e3, 8e3], shunt_ohms=105.7)
    result = Pipeline().run(replace(project, channels=replace(project.channels, red=matched)))

    sign, sentence = source_words(result, Channel.RED)

    assert sign is Sign.NOTE
    assert sentence.startswith("Source resistance 74.99 Ω at white, 105.7 Ω at black: at white 0 % of")
