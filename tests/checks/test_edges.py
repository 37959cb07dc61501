import pytest

from workbench.checks import Severity
from workbench.circuit.ladders import weighted


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
