"""The Working page: the numbers of the pixel that is looked at."""

import itertools
from dataclasses import replace

import pytest
from PySide6.QtCore import QMarginsF
from PySide6.QtGui import QGuiApplication, QPageLayout, QPageSize, QPdfWriter
from PySide6.QtWidgets import QApplication

from workbench.gui.working.printing import paper
from workbench.gui.working.steps import STEPS
from workbench.project.document import Channel


@pytest.fixture
def page(desk):
    desk.window.pages.open("working")
    return desk.window.pages.stack.currentWidget()


def test_the_chain_ends_at_the_volts_of_the_levels(page, desk) -> None:
    desk.bench.view.look_at(160 + 40)

    levels = desk.live.result.channels
    for channel, working in zip(Channel, page.shown.working.channels, strict=True):
        assert working.loaded_volts == levels[channel].levels.volts_by_code[working.code]
        divided = working.supply_volts * working.low_ohms / (working.low_ohms + working.high_ohms)
        assert divided == pytest.approx(working.loaded_volts, rel=1e-9)
    assert "code 31 of 31" in page.words


def test_it_follows_the_cursor_of_the_plot(page, desk) -> None:
    desk.bench.view.look_at(160 + 600)

    assert page.shown.working.column == 600
    assert page.text.toPlainText() == page.words
    assert "column 600" in page.place.text()


def test_blanking_has_a_working_too(page, desk) -> None:
    desk.bench.view.look_at(3)

    assert "in blanking" in page.place.text()
    assert [c.code for c in page.shown.working.channels] == [0, 0, 0]


def test_the_working_is_copied_as_text_and_picture(page) -> None:
    page.copy()

    data = QGuiApplication.clipboard().mimeData()
    assert data.text() == page.words
    assert data.hasImage()


def test_the_working_goes_on_paper(page, tmp_path) -> None:
    path = tmp_path / "working.pdf"
    writer = QPdfWriter(str(path))
    writer.setPageLayout(
        QPageLayout(QPageSize(QPageSize.PageSizeId.A4), QPageLayout.Orientation.Portrait, QMarginsF())
    )

    document = paper("Tide board: why this pixel", page.words)
    document.print_(writer)

    assert path.read_bytes().startswith(b"%PDF")
    assert "3.3 V ×" in document.toPlainText()


def test_a_mode_without_scanlines_is_said(page, desk) -> None:
    shown = replace(desk.live.result, scanline=None)

    page.show_result(shown.project, shown)

    assert "no scanline" in page.place.text()
    assert page.words == ""


def steps_of(chain) -> list[str]:
    """Return the heads of the steps that have room."""
    return [step.head for step, _, _ in chain.fitting()]


def test_on_a_projector_the_chain_is_whole_and_its_words_follow_below(page, desk) -> None:
    desk.bench.project_large(on=True)
    desk.window.resize(1920, 1080)
    QApplication.processEvents()

    assert steps_of(page.chain) == [step.head for step in STEPS]
    assert page.text.y() >= page.chain.geometry().bottom()
    assert page.text.height() >= 2 * page.text.fontMetrics().lineSpacing()


def test_on_a_projector_the_page_picture_shows_pins_and_legs(desk) -> None:
    desk.window.pages.open("picture")
    desk.bench.project_large(on=True)
    desk.window.resize(1920, 1080)
    QApplication.processEvents()

    picture = desk.window.pages.stack.currentWidget()
    wanted = {"code", "pins, high bit first", "high legs together", "at the monitor"}
    assert wanted <= set(steps_of(picture.chain))
    assert picture.view.width() >= 450


def test_no_step_is_written_over_the_next(page, desk) -> None:
    desk.bench.view.look_at(790)
    for width in (500, 640, 800, 1000, 1400):
        page.chain.resize(width, 300)
        placed = page.chain.fitting()
        type_ = desk.bench.type
        for (step, left, _), (_, after, _) in itertools.pairwise(placed):
            for working in page.shown.working.channels:
                assert left + type_.width(step.main(working), type_.mono(1.06, 500)) <= after
