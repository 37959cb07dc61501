"""The list of faults stands beside what it breaks."""

import itertools

import pytest
from PySide6.QtCore import QPoint, QRect
from PySide6.QtWidgets import QApplication, QWidget

from workbench.bringup.faults import fault_named

SIZES = [(960, 540), (1280, 800), (1920, 1080)]


def place_of(window, widget: QWidget) -> QRect:
    """Return where a widget lies in its window. [px]"""
    return widget.rect().translated(widget.mapTo(window, QPoint(0, 0)))


def blanking_of(window) -> QRect:
    """Return where the plot shows blanking. [px]"""
    plot, mode = window.scanline.plot, window.bench.session.project.mode
    lane, right = plot.places.colour, plot.time.x(mode.h.blanking * mode.pixel_s)
    corner = plot.mapTo(window, QPoint(0, 0))
    return QRect(round(lane.left()), round(lane.top()), round(right - lane.left()), 1).translated(corner)


@pytest.mark.parametrize("size", SIZES, ids=str)
def test_it_hides_neither_network_nor_blanking_nor_picture(desk, size) -> None:
    window = desk.window
    window.resize(*size)
    window.pages.open("picture")
    QApplication.processEvents()

    card = desk.fault_list.open()
    card.boxes["porch-colour"].click()
    QApplication.processEvents()

    over = place_of(window, card)
    assert window.rect().contains(over)
    page = window.pages.stack.currentWidget()
    evidence = {
        "network": place_of(window, window.network),
        "blanking": blanking_of(window),
        "picture": place_of(window, page.view),
        "banner": place_of(window, window.banner),
        "findings": place_of(window, window.findings),
    }
    assert [name for name, place in evidence.items() if over.intersects(place)] == []


@pytest.mark.parametrize("size", SIZES, ids=str)
def test_nothing_on_it_is_cut_or_lies_across_something_else(desk, size) -> None:
    desk.window.resize(*size)
    QApplication.processEvents()

    card = desk.fault_list.open()
    QApplication.processEvents()

    inside = card.rect()
    parts = [card.end, *card.chips.values(), card.list, card.details]
    places = [QRect(part.mapTo(card, QPoint(0, 0)), part.size()) for part in parts]
    assert all(inside.contains(place) for place in places)
    assert not any(one.intersects(other) for one, other in itertools.combinations(places, 2))
    assert card.list.height() >= 100
    widest = max(box.geometry().right() for box in card.boxes.values())
    assert widest <= card.list.viewport().width()


def test_the_box_that_the_keys_are_on_is_in_sight(desk) -> None:
    desk.window.resize(960, 540)
    card = desk.fault_list.open()
    last = list(card.boxes.values())[-1]

    last.setFocus()
    QApplication.processEvents()

    assert not last.visibleRegion().isEmpty()


def test_the_readings_leave_a_colour_in_blanking_in_sight(desk) -> None:
    panel = desk.window.scanline
    assert not panel.plot.readout_card.box.isEmpty()

    desk.faults.turn(fault_named("porch-colour"), on=True)
    assert panel.plot.readout_card.box.isEmpty()
    assert panel.readout.isVisible()

    desk.faults.end_all()
    assert not panel.plot.readout_card.box.isEmpty()
