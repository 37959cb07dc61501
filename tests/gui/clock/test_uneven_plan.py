"""A plan with a fractional divider, taken on the Clock page, shows on the scanline."""

import pytest

from workbench.gui.clock.kept import ChipText, keep
from workbench.gui.scanline.content.presets import Preset
from workbench.timing.clock.plan import Jitter

CHIP = ChipText("12M", "16..320", "1..7x1..7", "750M..1600M", "133M", "8", "")


@pytest.fixture
def taken(desk, qtbot, settings):
    """Return what takes the first plan of a kind of jitter and gives the plan back."""
    keep(settings, CHIP)
    desk.window.pages.toggle("clock")
    page = desk.window.pages.stack.currentWidget()
    page.form.start_from(CHIP)
    desk.window.scanline.choose_preset(Preset.PIXELS)

    def take(jitter: Jitter):
        qtbot.waitUntil(lambda: bool(page.table.rows) and page._job is None)
        number = next(n for n, row in enumerate(page.table.rows) if row.payload.jitter is jitter)
        page.table.setCurrentIndex(page.table.model().index(number, 0))
        page.take.click()
        desk.bench.live.refresh()
        qtbot.waitUntil(lambda: page._job is None)
        assert page.take.text() == "This clock is in use"
        return page.table.current

    return take


def marks(desk):
    return desk.window.scanline.plot.backdrop._ground.uneven_x


@pytest.mark.parametrize("jitter", [Jitter.PIXEL, Jitter.LINE])
def test_taking_it_shows_on_the_scanline_and_a_whole_divider_clears_it(desk, taken, jitter):
    line = desk.window.scanline
    assert marks(desk) == ()

    plan = taken(jitter)

    assert desk.session.project.pixel_divider == plan.divider
    assert len(marks(desk)) > 20
    assert line.head.uneven.text().startswith("uneven pixels ±")
    assert line.plot.shown.starts is not None
    assert "uneven-pixels" in [finding.id for finding in desk.bench.live.result.findings]

    taken(Jitter.NONE)

    assert desk.session.project.pixel_divider is None
    assert marks(desk) == ()
    assert line.head.uneven.text() == ""
    assert "uneven-pixels" not in [finding.id for finding in desk.bench.live.result.findings]


def test_it_is_one_step_to_undo(desk, taken):
    before = desk.session.project

    plan = taken(Jitter.PIXEL)
    after = desk.session.project
    desk.session.undo()
    desk.bench.live.refresh()

    assert desk.session.project == before
    assert marks(desk) == ()
    desk.session.redo()
    assert desk.session.project == after
    assert after.pixel_divider == plan.divider
