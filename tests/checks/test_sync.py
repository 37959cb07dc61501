import pytest

from workbench.checks import Severity
from workbench.circuit.network import Driver
from workbench.project.document import SyncLine, SyncLines


def test_a_weak_sync_line_fails_with_its_level_and_is_mended(board, found):
    # 3.3 V x 1000 / (1000 + 1000)
    project = board(sync=SyncLines(h=SyncLine(1000.0, 1000.0)))
    finding = found(project, "sync-level")

    assert finding.severity is Severity.FAIL
    assert finding.subject == "H sync"
    assert finding.measured == pytest.approx(1.65)
    assert finding.remedy.label == "Use 47 Ω in the H sync line"
    assert found(finding.remedy.edit(project), "sync-level") is None


def test_a_supply_under_the_threshold_has_no_remedy_by_a_resistor(board, found):
    assert found(board(driver=Driver(1.8)), "sync-level").remedy is None


@pytest.mark.parametrize("line", [SyncLine(), SyncLine(330.0, 1000.0)], ids=["usual", "2.48 V"])
def test_a_line_over_the_threshold_is_not_mentioned(board, found, line):
    assert found(board(sync=SyncLines(h=line, v=line)), "sync-level") is None
