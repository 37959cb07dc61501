import pytest

from workbench.checks import Severity
from workbench.project.document import MonitorRange
from workbench.timing.search import find_mode

MULTISYNC = MonitorRange(30e3, 70e3, 50.0, 75.0, 80e6)


def test_no_range_entered_asks_nothing(board, found):
    assert found(board(), "line-rate") is None


def test_a_mode_inside_the_range_raises_nothing(board, found):
    project = board(monitor=MULTISYNC)

    assert all(found(project, rule) is None for rule in ("line-rate", "field-rate", "pixel-clock"))


@pytest.mark.parametrize(
    ("mode", "rule", "headline"),
    [
        pytest.param(
            "720x576@50i",
            "line-rate",
            "The line rate is 15.625 kHz, outside the 30 kHz … 70 kHz your monitor takes.",
            id="line",
        ),
        pytest.param(
            "640x480@85",
            "field-rate",
            "The field rate is 85.008 Hz, outside the 50 Hz … 75 Hz your monitor takes.",
            id="field",
        ),
        pytest.param(
            "1280x1024@60",
            "pixel-clock",
            "The pixel clock is 108 MHz, over the 80 MHz your monitor takes.",
            id="clock",
        ),
    ],
)
def test_a_rate_outside_fails_with_both_ends(board, found, mode, rule, headline):
    finding = found(board(mode=find_mode(mode), monitor=MULTISYNC), rule)

    assert finding.severity is Severity.FAIL
    assert finding.headline == headline


def test_the_remedy_is_a_standard_mode_of_the_same_size_inside_the_range(board, found):
    project = board(mode=find_mode("640x480@85"), monitor=MULTISYNC)
    finding = found(project, "field-rate")

    assert finding.remedy.label == "Use 640x480@75"
    assert found(finding.remedy.edit(project), "field-rate") is None


def test_no_remedy_where_no_mode_of_the_size_fits(board, found):
    project = board(mode=find_mode("640x480@85"), monitor=MonitorRange(1e3, 2e3, 50.0, 75.0))

    assert found(project, "line-rate").remedy is None


def test_an_interlaced_mode_says_that_it_is_not_shown(board, found):
    project = board(mode=find_mode("1024x768@43i"))
    finding = found(project, "interlaced")

    assert finding.severity is Severity.WARN
    assert not finding.remedy.edit(project).mode.interlaced
    assert found(board(), "interlaced") is None
