"""The network panel: head, drawing or table, what can be changed, and five figures."""

from PySide6.QtCore import QEvent, QObject, QPoint, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QFrame, QScrollArea, QStackedWidget, QVBoxLayout, QWidget

from workbench.drawing.geometry import Point
from workbench.gui.bench import Bench
from workbench.gui.network.around.opening import CardOpening
from workbench.gui.network.canvas import Canvas
from workbench.gui.network.commands import NetworkCommands
from workbench.gui.network.figures import FiguresStrip
from workbench.gui.network.head import ChannelCards, Head
from workbench.gui.network.menus import fill_menu
from workbench.gui.network.pins import PinKeys
from workbench.gui.network.table import PartsTable
from workbench.gui.network.targets import Kind, Target, box_of
from workbench.gui.network.tools import ToolRow
from workbench.gui.network.wiring.commands import WiringCommands
from workbench.gui.network.zooming import Zooming
from workbench.gui.widgets.menu import Menu
from workbench.pipeline.result import Result
from workbench.project.document import Project

__all__ = ["NetworkPanel"]

TALL = 700
"""Height from which the row of buttons and the figures have room. [design px]"""
LEAST = 280
"""The least width the panel can be given. [design px]"""
SLIM = 430
"""Width under which only head and drawing are shown. [design px]"""


class NetworkPanel(QWidget):
    """Shows the drawn channel of a Result: as a drawing, or as its table twin."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self._result: Result = bench.live.result
        self.setAccessibleName("Network")
        self.setMinimumWidth(bench.px(LEAST))
        self.pins = PinKeys(bench, self)
        self.canvas = Canvas(bench, self.pins)
        self.table = PartsTable(bench)
        self.stack = QStackedWidget()
        self.scroller = self._scroll_area()
        self.stack.addWidget(self.scroller)
        self.stack.addWidget(self.table)
        self.commands = NetworkCommands(bench, self.canvas, self.pins, self.turn_table, self.table_shown)
        self.wiring = WiringCommands(bench, self.canvas, self.commands.copy_picture)
        self.opening = CardOpening(bench, self.canvas, self)
        self.zooming = Zooming(bench, self.canvas, self.scroller)
        for source in (self.commands, self.wiring, self.zooming, self.opening):
            bench.actions.add(source.specs())
        self.head = Head(bench)
        self.cards = ChannelCards(bench)
        self.tools = ToolRow(bench, self.commands.fitted)
        self.figures = FiguresStrip(bench)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        rows: tuple[QWidget, ...] = (self.head, self.cards, self.stack, self.tools, self.figures)
        for widget in rows:
            column.addWidget(widget, 1 if widget is self.stack else 0)
        self._connect()
        self.scroller.viewport().installEventFilter(self)
        self.show_result(self._result.project, self._result)

    def _scroll_area(self) -> QScrollArea:
        scroll = QScrollArea()
        scroll.setFrameShape(QFrame.Shape.NoFrame)
        scroll.setWidget(self.canvas)
        scroll.setWidgetResizable(False)
        scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        scroll.setAccessibleName("Network drawing, scrolled by rows")
        scroll.viewport().setAutoFillBackground(False)
        self.canvas.setAutoFillBackground(False)
        return scroll

    def _connect(self) -> None:
        bench = self._bench
        bench.view.changed.connect(self._on_view)
        bench.theme_changed.connect(self._fold)
        self.head.released.connect(self.pins.release)
        self.head.note.clicked.connect(bench.actions.action("network.link").trigger)
        self.head.change.clicked.connect(self._open_change_menu)
        self.canvas.menu_asked.connect(self._open_menu)
        self.canvas.target_changed.connect(self._keep_in_sight)
        self.canvas.target_changed.connect(bench.actions.refresh)
        self.canvas.connecting.changed.connect(self._keep_lead_in_sight)

    def show_result(self, _project: Project, result: Result) -> None:
        """Show another result."""
        self._result = result
        self.canvas.show_result(result)
        self._show_state()

    def table_shown(self) -> bool:
        """Return whether the table twin is shown."""
        return self.stack.currentWidget() is self.table

    def turn_table(self) -> None:
        """Show the table, or the drawing again."""
        shown = self.table_shown()
        self.table.show_project(self._result.project)
        self.stack.setCurrentWidget(self.scroller if shown else self.table)
        self.tools.turn_table(shown=not shown)
        (self.canvas if shown else self.table).setFocus(Qt.FocusReason.OtherFocusReason)

    def _show_state(self) -> None:
        channel, result = self._bench.view.channel, self._result
        code, source = self.pins.code(channel, result)
        self.head.show_state(result, channel, code, source, short=not self._tall())
        self.cards.show_state(result, channel)
        self.cards.setVisible(not result.project.linked and not self._slim())
        self.figures.show_channel(result.channels[channel])
        if self.table_shown():
            self.table.show_project(result.project)
        self.tools.show_part(self.commands.part)

    def _on_view(self) -> None:
        self._show_state()
        self._bench.actions.refresh()

    # Room

    def _tall(self) -> bool:
        return self.height() >= self._bench.px(TALL) and not self._slim()

    def _slim(self) -> bool:
        return self.width() < self._bench.px(SLIM)

    def _fold(self) -> None:
        """Leave out what has no room."""
        tall = self._tall()
        self.tools.setVisible(tall)
        self.figures.setVisible(tall)
        self._show_state()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fold()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if watched is self.scroller.viewport() and event.type() == QEvent.Type.Resize:
            self.zooming.give_room()
        return super().eventFilter(watched, event)

    def _keep_in_sight(self) -> None:
        target = self.canvas.target
        box = box_of(self.canvas.drawing, target) if target is not None else None
        if box is not None:
            self._bring_into_sight(box.centre)

    def _keep_lead_in_sight(self) -> None:
        lead = self.canvas.connecting.lead
        if lead is not None and self.canvas.connecting.by_keys:
            self._bring_into_sight(lead.tip)

    def _bring_into_sight(self, place: Point) -> None:
        margin = round(self.canvas.drawing.pitch)
        self.scroller.ensureVisible(round(place.x), round(place.y), margin, margin)

    # Menus

    def _open_menu(self, target: Target | None, place: QPoint) -> None:
        menu = Menu(self)
        menu.setAccessibleName("What can be done here")
        fill_menu(menu, self._bench.actions, target, self.canvas, self.pins, self._result)
        menu.aboutToHide.connect(menu.deleteLater)
        menu.popup(place)

    def _open_change_menu(self) -> None:
        button = self.head.change
        chosen = self._bench.view.chosen
        target = Target(Kind.PART, part=chosen) if self.commands.part is not None else None
        self._open_menu(target, button.mapToGlobal(QPoint(0, button.height() + 2)))

    def paintEvent(self, _event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), self._bench.theme.color("panel"))
