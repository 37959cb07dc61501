"""The drawing in its pane: seen whole where it can be read, enlarged about a place, no needless bar."""

from time import perf_counter

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QApplication

from tests.drawing.networks import SHAPES, board, wired
from workbench.circuit.network import Network
from workbench.drawing import draw
from workbench.project.document import Channel
from workbench.project.edits.networks import put_networks

CTRL, PLAIN = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.NoModifier
HUNDRED = wired(
    5,
    *(f"R{i} bit{i % 5} n{i % 25} 1e3" for i in range(50)),
    *(f"R{50 + i} n{i % 25} {'out' if i % 2 else f'n{(i + 7) % 25}'} 2e3" for i in range(50)),
)
"""A hundred parts, every node joined to several others."""


@pytest.fixture
def drawn(make_panel, project):
    """Make a panel with a network in all three channels."""

    def make(network: Network, width: int = 600, height: int = 740):
        return make_panel(put_networks(project, dict.fromkeys(Channel, network)), width, height)

    return make


def turn(panel, at: QPointF, way: int, held=CTRL) -> QWheelEvent:
    canvas = panel.canvas
    event = QWheelEvent(
        at,
        QPointF(canvas.mapToGlobal(at.toPoint())),
        QPoint(),
        QPoint(0, 120 * way),
        Qt.MouseButton.NoButton,
        held,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(canvas, event)
    QApplication.processEvents()
    return event


def bars(panel) -> tuple[bool, bool]:
    QApplication.processEvents()
    scroller = panel.scroller
    return scroller.horizontalScrollBar().isVisible(), scroller.verticalScrollBar().isVisible()


def key(qtbot, panel, key: Qt.Key, held=CTRL) -> None:
    panel.canvas.setFocus()
    qtbot.keyClick(panel.canvas, key, held)
    QApplication.processEvents()


@pytest.mark.parametrize("name", SHAPES)
def test_a_few_parts_are_seen_whole_without_a_scroll_bar(drawn, name: str) -> None:
    panel = drawn(SHAPES[name])

    assert bars(panel) == (False, False)
    assert panel.canvas.zoom > 0.7


@pytest.mark.parametrize("width", range(560, 860, 20))
def test_no_scroll_bar_is_drawn_where_all_fits(drawn, width: int) -> None:
    panel = drawn(SHAPES["bridge"], width)

    assert bars(panel) == (False, False)


def test_ctrl_and_wheel_enlarge_about_the_pointer(drawn) -> None:
    panel = drawn(HUNDRED)
    mark = next(symbol for symbol in panel.canvas.drawing.symbols if symbol.part == "R12")
    at = QPointF(mark.body.centre.x, mark.body.centre.y)

    def on_screen() -> QPoint:
        symbol = panel.canvas.drawing.symbol(mark.part)
        place = QPoint(round(symbol.body.centre.x), round(symbol.body.centre.y))
        return panel.canvas.mapTo(panel.scroller.viewport(), place)

    before, zoom = on_screen(), panel.canvas.zoom
    turn(panel, at, 1)

    assert panel.canvas.zoom == pytest.approx(1.15 * zoom)
    assert (on_screen() - before).manhattanLength() < 40
    turn(panel, QPointF(panel.canvas.rect().center()), -1)
    assert panel.canvas.zoom == pytest.approx(zoom)


def test_the_wheel_alone_is_no_zoom_and_on_the_chosen_part_it_steps(drawn) -> None:
    panel = drawn(HUNDRED)
    zoom = panel.canvas.zoom

    assert not turn(panel, QPointF(300, 300), -1, PLAIN).isAccepted(), "it is left to the pane"
    assert panel.canvas.zoom == zoom

    panel._bench.view.choose("R12")
    box = panel.canvas.drawing.symbol("R12").body.centre
    turn(panel, QPointF(box.x, box.y), 1)
    assert panel._bench.session.project.channels.red.resistors[12].ohms == 1010.0
    assert panel.canvas.zoom == zoom


def test_keys_enlarge_make_smaller_and_fit_again(qtbot, drawn) -> None:
    panel = drawn(SHAPES["bridge"], 800)

    key(qtbot, panel, Qt.Key.Key_Equal)
    key(qtbot, panel, Qt.Key.Key_Equal)
    assert panel.canvas.zoom == pytest.approx(1.15**2)
    assert bars(panel)[0]
    for _ in range(4):
        key(qtbot, panel, Qt.Key.Key_Minus)
    assert panel.canvas.zoom == pytest.approx(1.15**-2)
    assert bars(panel) == (False, False)
    key(qtbot, panel, Qt.Key.Key_0)
    assert panel.canvas.zoom == 1.0
    assert panel.canvas.fitted


def test_a_hundred_parts_can_be_seen_at_once(qtbot, drawn) -> None:
    panel = drawn(HUNDRED)
    for _ in range(15):
        key(qtbot, panel, Qt.Key.Key_Minus)

    drawing, room = panel.canvas.drawing, panel.scroller.maximumViewportSize()

    assert panel.canvas.zoom == 0.2
    assert drawing.width <= room.width()
    assert drawing.height <= room.height()


def test_a_key_goes_on_among_a_hundred_parts_faster_than_they_are_drawn(qtbot, drawn) -> None:
    panel = drawn(HUNDRED, 800, 860)
    canvas = panel.canvas
    panel._bench.view.choose("R12")

    def taken(work) -> float:
        times = []
        for _ in range(7):
            start = perf_counter()
            work()
            times.append(perf_counter() - start)
        return sorted(times)[3]

    once = taken(lambda: draw(HUNDRED, board(5), canvas._sheet_at(1.0)))
    keys = iter([Qt.Key.Key_Right, Qt.Key.Key_Left] * 4)
    step = taken(lambda: key(qtbot, panel, next(keys), PLAIN))

    assert step < 2 * once


def test_a_projector_never_gets_less_than_its_text(drawn) -> None:
    panel = drawn(SHAPES["three parts a leg"], 900, 700)
    panel._bench.project_large(on=True)
    QApplication.processEvents()

    assert panel.canvas.zoom == 1.0


def test_a_value_is_typed_at_its_usual_size_in_a_small_drawing(drawn) -> None:
    panel = drawn(HUNDRED)
    panel.canvas.set_zoom(0.3)
    panel.canvas.edit("R3")

    assert panel.canvas.field.height() >= panel._bench.px(26)
    assert panel.canvas.field.width() >= panel._bench.px(110)
