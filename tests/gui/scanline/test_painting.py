"""What an edit has painted again: what it changes, and no more."""

from collections.abc import Callable

from PySide6.QtCore import QEvent, QObject, QPoint
from PySide6.QtGui import QImage, QPaintEvent, QRegion
from PySide6.QtWidgets import QApplication, QWidget

from workbench.circuit.network import PartId
from workbench.gui.scanline import ScanlinePanel
from workbench.gui.settings import THEME
from workbench.gui.theme import ThemeName
from workbench.project.document import Channel
from workbench.project.edits.parts import set_value

Make = Callable[..., ScanlinePanel]


def tune(panel: ScanlinePanel, ohms: float) -> None:
    panel.bench.session.apply("R1", lambda p: set_value(p, Channel.RED, PartId("R1"), ohms))
    panel.bench.live.refresh()


class Painted(QObject):
    """Notes which parts of a widget are painted."""

    def __init__(self, widget: QWidget) -> None:
        super().__init__(widget)
        self.region = QRegion()
        widget.installEventFilter(self)

    def eventFilter(self, _widget: QObject, event: QEvent) -> bool:
        if isinstance(event, QPaintEvent):
            self.region += event.region()
        return False


def test_a_value_leaves_syncs_and_scales_as_they_are(panel: ScanlinePanel) -> None:
    tune(panel, 505.0)
    QApplication.processEvents()
    painted, places = Painted(panel.plot.viewport()), panel.plot.places

    tune(panel, 506.0)
    QApplication.processEvents()

    assert painted.region.contains(places.colour.center().toPoint())
    assert not painted.region.intersects(places.sync.toAlignedRect().adjusted(4, 4, -4, -4))
    assert not painted.region.contains(QPoint(20, round(places.colour.center().y())))


def test_what_is_painted_bit_by_bit_is_what_is_painted_at_once(panel: ScanlinePanel, qtbot) -> None:
    for ohms in (300.0, 700.0, 510.0):
        tune(panel, ohms)
        panel.plot.viewport().repaint()
    pieces = picture(panel)

    panel.bench.settings.set(THEME, ThemeName.PAPER)
    panel.bench.settings.set(THEME, ThemeName.DUSK)

    assert picture(panel) == pieces


def picture(panel: ScanlinePanel) -> QImage:
    return panel.plot.grab().toImage()
