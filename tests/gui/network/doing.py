"""What the tests of the drawing do with it, and what they look at."""

from PySide6.QtCore import QPoint, Qt

from workbench.project.document import Channel

LEFT = Qt.MouseButton.LeftButton


def ohms(panel, part: str, channel: Channel = Channel.RED) -> float:
    network = panel._bench.session.project.channels[channel]
    return next(r.ohms for r in network.resistors if r.id == part)


def state(panel):
    return panel._bench.view, panel._bench.session


def click(qtbot, panel, at: QPoint) -> None:
    qtbot.mouseClick(panel.canvas, LEFT, pos=at)
