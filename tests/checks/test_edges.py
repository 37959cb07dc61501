import pytest

from tests.checks.conftest import LADDER
from workbench.checks import Severity
from workbench.circuit.ladders import segmented, weighted
from workbench.project.document import Channel
from workbench.project.edits.drive import set_skew


def loaded(farads: float):
    return weighted(5, [500.0, 1e3, 2e3, 4e3, 8e3], node_farads=farads)


def test_a_slow_edge_warns_and_says_that_the_limit_is_from_memory(board, found):
    finding = found(board(loaded(300e-12)), "rise-time")

    # 2.2 x (258 Ω in parallel with 75 Ω) x 300 pF = 38.4 ns of a 39.7 ns pixel
    assert finding.severity is Severity.WARN
    assert finding.measured == pytest.approx(0.966, abs=0.01)
    assert finding.from_memory
    assert "from memory" in finding.source


def test_a_fast_edge_is_not_mentioned(board, found):
    assert found(board(loaded(30e-12)), "rise-time") is None


def test_a_late_high_bit_is_told_with_the_codes_between_which_it_spikes(board, found):
    finding = found(set_skew(board(), Channel.GREEN, 0, 6e-9), "glitch")

    # 6 of 39.7 ns without the 15 steps that 01111 has: 2.27 steps over a pixel
    assert finding.measured == pytest.approx(15 * 6 / 39.722, rel=0.03)
    assert finding.channels == (Channel.GREEN,)
    assert "between codes 15 and 16" in finding.headline


def test_a_spike_too_short_to_be_seen_is_not_mentioned(board, found):
    assert found(set_skew(board(), Channel.GREEN, 0, 0.5e-9), "glitch") is None
    assert found(board(), "glitch") is None


def test_a_segmented_ladder_spikes_less(board, found):
    parted = segmented(5, 3, (1141.0, 2282.0, 4564.0))
    spikes = [found(set_skew(board(network), Channel.RED, 0, 8e-9), "glitch") for network in (LADDER, parted)]

    assert spikes[1].measured < 0.25 * spikes[0].measured
