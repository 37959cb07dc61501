"""A drawing that does not fit is drawn smaller, down to what can be read, and keeps its form."""

import pytest

from tests.drawing.networks import SHAPES, board, sheet
from workbench.circuit.ladders import weighted
from workbench.circuit.network import Network
from workbench.drawing import Sheet
from workbench.drawing.fitted import STEP, draw_fitted, fits

EIGHT = weighted(8, [500.0 * 2**i for i in range(8)])


def fitted(network: Network, width: float, height: float, least: float = 0.6):
    def sheet_at(zoom: float) -> Sheet:
        made = sheet(width, height, base=14.0 * zoom)
        return Sheet(width, height, made.base, made.measure, zoom=zoom)

    drawing, zoom = draw_fitted(network, board(network.bits), sheet_at, least)
    return drawing, zoom, sheet_at(zoom)


def test_what_fits_is_drawn_at_its_usual_size() -> None:
    drawing, zoom, room = fitted(EIGHT, 800, 760)

    assert zoom == 1.0
    assert fits(drawing, room)


@pytest.mark.parametrize("name", SHAPES)
def test_every_shape_of_a_few_parts_is_seen_whole_in_a_pane_of_600_by_560(name: str) -> None:
    drawing, zoom, room = fitted(SHAPES[name], 600, 560)

    assert fits(drawing, room)
    assert zoom > 0.7


@pytest.mark.parametrize(("width", "height"), [(800, 480), (600, 560), (460, 800)])
def test_no_size_is_smaller_than_it_has_to_be(width: float, height: float) -> None:
    network = SHAPES["three parts a leg"]
    _, zoom, room = fitted(network, width, height)

    larger, at, _ = fitted(network, width, height, least=min(1.0, zoom + STEP))

    assert 0.6 < zoom < 1.0
    assert at > zoom
    assert not fits(larger, room)


def test_it_never_gets_smaller_than_can_be_read() -> None:
    drawing, zoom, room = fitted(EIGHT, 540, 150)

    assert zoom == 0.6
    assert not fits(drawing, room)


def test_a_smaller_drawing_keeps_its_form() -> None:
    narrow = sheet(600, 400, base=14.0 * 0.7)

    assert narrow.wide, "its room holds the wide columns at this size"
    assert not Sheet(600, 400, narrow.base, narrow.measure, zoom=0.7).wide
