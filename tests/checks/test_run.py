import math

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from workbench.checks import Severity
from workbench.checks.run import RULES
from workbench.circuit.ladders import weighted
from workbench.circuit.network import Driver, Load, Zeros


def test_heaviest_findings_come_first(board, pipeline):
    ranks = [f.severity.rank for f in pipeline.run(board(driver=Driver(5.0))).findings]

    assert ranks == sorted(ranks)
    assert ranks[0] == Severity.FAIL.rank


def test_a_good_board_has_notes_only(board, pipeline):
    project = board(weighted(3, [510.0, 1e3, 2e3]))

    assert [f.id for f in pipeline.run(project).findings] == ["full-scale", "monotonic", "current-limits"]


def test_every_rule_says_what_it_asks_for():
    assert all(rule.__doc__ for rule in RULES)
    assert len(set(RULES)) == len(RULES)


@pytest.mark.parametrize("field", ["headline", "source", "why", "subject"])
def test_every_finding_says_what_why_and_by_whose_word(board, pipeline, field):
    driver = Driver(5.0, 60.0, 40.0, Zeros.FLOATING, pin_limit_amps=1e-3, total_limit_amps=1e-3)
    findings = pipeline.run(board(driver=driver, load=Load(75.0, 2))).findings

    assert len(findings) > 6
    assert all(getattr(finding, field) for finding in findings)


@settings(deadline=None, max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    ohms=st.lists(st.floats(1.0, 1e6), min_size=1, max_size=8),
    supply=st.floats(0.5, 24.0),
    pin_ohms=st.floats(0.0, 500.0),
    zeros=st.sampled_from(Zeros),
)
def test_any_ladder_is_judged_without_a_crash_and_every_remedy_mends(
    board, pipeline, ohms, supply, pin_ohms, zeros
):
    project = board(weighted(len(ohms), ohms), driver=Driver(supply, pin_ohms, pin_ohms, zeros))

    for finding in pipeline.run(project).findings:
        assert finding.measured is None or math.isfinite(finding.measured)
        if finding.remedy is not None:
            mended = pipeline.run(finding.remedy.edit(project)).findings
            left = [f for f in mended if (f.id, f.subject) == (finding.id, finding.subject)]
            assert all(f.severity is Severity.INFO for f in left), finding.headline
