from dataclasses import replace

import pytest

from workbench.checks import Severity
from workbench.project.document import Direction, MonitorRange
from workbench.project.edits.timing import set_axis
from workbench.timing.custom import make_mode
from workbench.timing.mode import Axis, Polarity
from workbench.timing.search import find_mode
from workbench.timing.standards import KNOWN

H, V = Direction.HORIZONTAL, Direction.VERTICAL
RULES = (
    "polarity",
    "refresh",
    "line-total",
    "picture-place",
    "short-blanking",
    "odd-total",
    "unknown-mode",
    "fixed-tube",
    "descriptor",
)
MULTISYNC = MonitorRange(30e3, 90e3, 50.0, 90.0)


def test_the_usual_mode_raises_nothing(board, found):
    assert [rule for rule in RULES if found(board(), rule)] == []


@pytest.mark.parametrize("mode", [m for m in KNOWN[:40] if not m.interlaced], ids=lambda mode: mode.source)
def test_modes_of_the_tables_raise_nothing_on_a_monitor_that_takes_them(board, pipeline, mode):
    project = board(mode=mode, monitor=MonitorRange(1e3, 1e6, 1.0, 200.0))
    raised = {finding.id for finding in pipeline.run(project).findings} & set(RULES)

    assert raised <= ({"short-blanking"} if "RB" in mode.name else set())


@pytest.mark.parametrize(
    ("direction", "counts", "words"),
    [
        (H, {"front_porch": 2, "back_porch": 62, "border": 0}, "H front porch is shorter"),
        (H, {"sync": 4, "back_porch": 140}, "H sync is shorter"),
        (H, {"back_porch": 10, "front_porch": 54, "border": 0}, "H back porch is shorter"),
        (
            V,
            {"sync": 1, "back_porch": 34},
            "V sync is shorter than in any mode made for tubes: V sync 1 line",
        ),
        (V, {"front_porch": 0, "back_porch": 3, "border": 0}, "V front porch and V back porch are shorter"),
    ],
)
def test_a_porch_or_sync_too_short_is_found(board, found, direction, counts, words):
    axis = replace(board().mode.h if direction is H else board().mode.v, **counts)
    finding = found(set_axis(board(), direction, axis), "short-blanking")

    assert finding.severity is Severity.WARN
    assert finding.headline.startswith(words)


def test_reduced_blanking_is_a_note(board, found):
    finding = found(board(mode=find_mode("1280x768@60RB")), "short-blanking")

    assert finding is None or finding.severity is Severity.INFO


def test_an_odd_total_is_a_note(board, found):
    axis = replace(board().mode.h, back_porch=49)

    assert found(set_axis(board(), H, axis), "odd-total").measured == 801.0


def test_an_old_tube_is_thought_of_until_the_monitor_is_entered(board, found):
    fast = find_mode("800x600@60")

    assert "37.879 kHz lines can damage an old tube" in found(board(mode=fast), "fixed-tube").headline
    assert found(board(mode=fast, monitor=MULTISYNC), "fixed-tube") is None


def test_a_mode_too_large_for_a_descriptor_says_what_does_not_fit(board, found):
    h = Axis(5000, 100, 100, 100, Polarity.POSITIVE)
    project = board(mode=make_mode(h, find_mode("800x600@60").v, 200_000_000))

    assert "active of 5000" in found(project, "descriptor").why
