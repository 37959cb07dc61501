"""What is offered for a faulted mode: it mends, it brings nothing as bad, and it is a small change."""

from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from workbench.checks import Finding, Severity
from workbench.project.document import MonitorRange
from workbench.timing.custom import MAX_CLOCK_HZ
from workbench.timing.edges import with_counts
from workbench.timing.mode import Axis, Mode, Polarity
from workbench.timing.search import find_mode
from workbench.timing.standards import KNOWN

VGA = find_mode("640x480@60")
CHIP_HZ = 25_200_000
MODE_IDS = {
    "back-porch",
    "line-rate",
    "field-rate",
    "pixel-clock",
    "interlaced",
    "polarity",
    "refresh",
    "line-total",
    "picture-place",
    "short-blanking",
    "unknown-mode",
}


@pytest.mark.parametrize("clock_hz", [VGA.pixel_clock_hz, CHIP_HZ], ids=["table clock", "chip clock"])
def test_a_frame_of_522_lines_is_given_its_525_and_keeps_its_clock(board, found, pipeline, clock_hz):
    mode = with_counts(VGA, v=replace(VGA.v, back_porch=30), pixel_clock_hz=clock_hz)
    remedy = found(board(mode=mode), "refresh").remedy
    mended = remedy.edit(board(mode=mode))

    assert remedy.label == "Use the frame of 640x480@60"
    assert (mended.mode.v, mended.mode.pixel_clock_hz) == (VGA.v, clock_hz)
    assert not MODE_IDS & {finding.id for finding in pipeline.run(mended).findings}


def test_a_line_of_792_px_is_given_its_800_and_no_other_clock(board, pipeline):
    """A slower clock would bring the rates back and leave six soft bands."""
    project = board(mode=with_counts(VGA, h=replace(VGA.h, back_porch=40)))
    remedies = {f.id: f.remedy.label for f in pipeline.run(project).findings if f.id in MODE_IDS}

    assert remedies == dict.fromkeys(("refresh", "line-total", "picture-place"), "Use the line of 640x480@60")


@pytest.mark.parametrize(
    ("changed", "rule", "label"),
    [
        pytest.param(
            {"pixel_clock_hz": 25_000_000}, "refresh", "Use a pixel clock of 25.175 MHz", id="clock"
        ),
        pytest.param(
            {"h": replace(VGA.h, polarity=Polarity.POSITIVE)}, "polarity", "Turn H sync over", id="polarity"
        ),
        pytest.param(
            {"h": replace(VGA.h, active=657, back_porch=31)},
            "picture-place",
            "Use the line of 640x480@60",
            id="a little wide",
        ),
        pytest.param(
            {"h": Axis(512, 88, 96, 104, Polarity.NEGATIVE), "v": replace(VGA.v, front_porch=50)},
            "unknown-mode",
            "Make the frame 525 lines long",
            id="another picture",
        ),
        pytest.param(
            {"h": Axis(512, 200, 64, 24, Polarity.NEGATIVE)},
            "back-porch",
            "Move the picture into place",
            id="too far left",
        ),
        pytest.param(
            {"h": Axis(690, 40, 50, 20, Polarity.NEGATIVE)},
            "back-porch",
            "Lengthen the back porch to 29 px",
            id="front porch spares",
        ),
        pytest.param(
            {"h": Axis(320, 8, 48, 28, Polarity.NEGATIVE), "pixel_clock_hz": 12_587_500},
            "line-total",
            "Use the line of 640x480@60",
            id="half resolution",
        ),
        pytest.param(
            {"h": replace(VGA.h, back_porch=24), "v": replace(VGA.v, back_porch=44)},
            "unknown-mode",
            "Use line and frame of 640x480@60",
            id="both totals",
        ),
    ],
)
def test_the_smallest_change_that_leaves_least_is_offered(board, found, changed, rule, label):
    project = board(mode=with_counts(VGA, **changed))
    remedy = found(project, rule).remedy

    assert remedy.label == label
    assert found(remedy.edit(project), rule) is None


def test_nothing_is_offered_where_nothing_mends(board, found):
    """No mode of the tables has this size, and no total makes it one."""
    mode = with_counts(VGA, h=Axis(700, 20, 40, 40, Polarity.NEGATIVE))

    assert found(board(mode=mode), "picture-place").remedy is None


def test_a_mode_outside_the_monitors_range_is_not_offered(board, found):
    """The table's own clock would mend the rate, were it not above what the monitor takes."""
    slow = with_counts(VGA, pixel_clock_hz=25_000_000)
    taken = MonitorRange(31_000.0, 31_300.0, 59.0, 61.0)

    assert found(board(mode=slow, monitor=taken), "refresh").remedy is None
    assert found(board(mode=slow), "refresh").remedy is not None


def test_a_line_that_a_fractional_divider_makes_uneven_is_not_offered(board, found):
    """848 pixels of 5 + 1/16 clocks are 4293 whole ones and 832 are 4212; 840 are 4252 and a half."""
    row = find_mode("640x480@75")
    long = with_counts(row, h=replace(row.h, back_porch=128))
    even, uneven = board(mode=long), board(mode=long, pixel_divider=5.0625)

    assert found(even, "line-total").remedy.label == "Use the line of 640x480@75"
    assert found(uneven, "line-total").remedy.label == "Use 640x480@72"


def test_what_may_leave_the_screen_black_is_told_first(board, pipeline):
    counts = {"h": replace(VGA.h, back_porch=24), "v": replace(VGA.v, back_porch=44)}
    warned = [f.id for f in pipeline.run(board(mode=with_counts(VGA, **counts))).findings if f.id in MODE_IDS]

    assert warned == ["unknown-mode", "back-porch", "short-blanking"]


def test_a_note_offers_nothing(board, found):
    project = board(mode=with_counts(VGA, h=Axis(512, 80, 96, 112, Polarity.NEGATIVE)))
    finding = found(project, "picture-place")

    assert (finding.severity, finding.remedy) == (Severity.INFO, None)


@st.composite
def edited_modes(draw: st.DrawFn) -> Mode:
    """Draw a mode of the tables after a few edits: porches, sync, picture, polarity, clock."""
    mode = draw(st.sampled_from(KNOWN))
    for name in draw(st.sets(st.sampled_from(("h", "v")))):
        axis = getattr(mode, name)
        fields = draw(st.sets(st.sampled_from(("active", "front_porch", "sync", "back_porch"))))
        counts = {f: max(1, getattr(axis, f) + draw(st.integers(-24, 24))) for f in fields}
        sign = draw(st.sampled_from((axis.polarity, *Polarity)))
        mode = replace(mode, **{name: replace(axis, border=0, polarity=sign, **counts)})
    factor = draw(st.just(1.0) | st.floats(0.98, 1.02) | st.sampled_from((0.5, 2.0)))
    return with_counts(mode, pixel_clock_hz=min(round(mode.pixel_clock_hz * factor), MAX_CLOCK_HZ))


def outside(finding: Finding) -> float:
    """Return how far outside its limits a finding is, in its own unit."""
    if finding.measured is None:
        return 0.0
    below = 0.0 if finding.low is None else finding.low - finding.measured
    above = 0.0 if finding.high is None else finding.measured - finding.high
    return max(below, above, 0.0)


@settings(deadline=None, max_examples=250, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    mode=edited_modes(),
    divider=st.sampled_from((None, 5.125, 5.0078125)),
    monitor=st.none()
    | st.sampled_from((MonitorRange(30e3, 70e3, 50.0, 75.0), MonitorRange(31e3, 38e3, 59.0, 61.0, 45e6))),
)
def test_every_remedy_of_any_edited_mode_mends_and_brings_nothing_as_bad(
    board, pipeline, mode, divider, monitor
):
    project = board(mode=mode, monitor=monitor, pixel_divider=divider)
    before = {finding.id: finding for finding in pipeline.run(project).findings}

    for finding in before.values():
        if finding.id not in MODE_IDS or finding.remedy is None:
            continue
        mended = finding.remedy.edit(project)
        after = {each.id: each for each in pipeline.run(mended).findings}
        said = (finding.headline, finding.remedy.label)
        assert mended != project, said
        assert finding.id not in after, said
        for each in after.values():
            if each.id in before and each.id in MODE_IDS:
                assert outside(each) <= outside(before[each.id]), (*said, each.headline)
            least = before[each.id].severity.rank if each.id in before else finding.severity.rank + 1
            assert each.severity.rank >= least, (*said, each.headline)
