"""The drawing of one channel, painted with its figures; it shows and changes nothing."""

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QRect, QSize, QTimer, Signal
from PySide6.QtGui import QHelpEvent, QPainter, QPaintEvent, QShowEvent
from PySide6.QtWidgets import QToolTip, QWidget

from workbench.checks.finding import Finding
from workbench.circuit.network import Network, PartId
from workbench.drawing import Board, Drawing, Sheet, draw
from workbench.drawing.clipped import clipped
from workbench.drawing.fitted import draw_fitted
from workbench.drawing.geometry import Point, Rect
from workbench.drawing.relabel import relabelled
from workbench.exports.schematic_svg import board_of
from workbench.gui.bench import Bench
from workbench.gui.network.badges import Badge, badges
from workbench.gui.network.bands import bands
from workbench.gui.network.inks import Inks
from workbench.gui.network.notes import NodeSign, Note, node_signs, notes
from workbench.gui.network.paint import Lines, lines_of, paint
from workbench.gui.network.pins import PinKeys
from workbench.gui.network.scene import Scene, findings_by_part
from workbench.gui.network.shown import Shown, shown_figures, sync_volts, taken_volts
from workbench.gui.network.targets import Target, in_order, target_at
from workbench.gui.network.words import spoken, tip
from workbench.gui.settings import SYMBOLS, Symbols
from workbench.pipeline.result import Result
from workbench.project.document import Channel

if TYPE_CHECKING:
    from workbench.gui.drawer.own_drawer import OwnDrawer

__all__ = ["DrawingView"]

LEAST_FIT = 0.72
"""Size down to which a drawing shrinks by itself to fit: a text of 14 px is then 10 px high. [1]"""
SMALLEST_PX = 3
"""Least text of a drawing that was made smaller by hand, to be seen as a whole and not to be read. [px]"""
DRAWER_MS = 150
"""How long after the window the person's drawer is looked into. [ms]"""


class DrawingView(QWidget):
    """Draws the chosen channel of one Result for the room it is given."""

    drawn = Signal()
    """The geometry is another one."""

    def __init__(self, bench: Bench, pins: PinKeys, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench, self._pins = bench, pins
        self._result: Result = bench.live.result
        self._room = QSize(800, 700)
        self._target: Target | None = None
        self._hover: Target | None = None
        self._edited: PartId | None = None
        self._made: PartId | None = None
        self._asked_zoom: float | None = None
        self._zoom = 1.0
        self._drawn_for: tuple[Network, Board, QSize, float, bool, float | None] | None = None
        self._seen: tuple[object, Drawing, Lines] | None = None
        self._notes: tuple[object, tuple[Note, ...], tuple[NodeSign, ...], tuple[Badge, ...]]
        self._notes = (None, (), (), ())
        self._own: OwnDrawer | None = None
        self._looking = QTimer(self, singleShot=True, interval=DRAWER_MS)
        self._looking.timeout.connect(self._look_into_drawer)
        self._inks_by_zoom: dict[float, Inks] = {}
        self._inks = self._inks_at(1.0)
        bench.theme_changed.connect(self.restyle)
        bench.settings.changed.connect(self._on_setting)
        self._layout()

    @property
    def channel(self) -> Channel:
        """The drawn channel."""
        return self._bench.view.channel

    @property
    def drawing(self) -> Drawing:
        """The drawing as it is painted."""
        return self._drawing

    @property
    def shown(self) -> Shown:
        """The figures beside the parts."""
        return self._shown

    @property
    def target(self) -> Target | None:
        """What the keys are on."""
        return self._target

    def show_result(self, result: Result) -> None:
        """Show another result."""
        self._result = result
        self._layout()

    def set_room(self, room: QSize) -> None:
        """Draw for the room there is; a drawing that needs more is larger."""
        if room != self._room:
            self._room = room
            self._layout()

    @property
    def zoom(self) -> float:
        """How many times its usual size the drawing is. [1]"""
        return self._zoom

    @property
    def fitted(self) -> bool:
        """Whether the size follows the room, and nobody chose one."""
        return self._asked_zoom is None

    def set_zoom(self, zoom: float | None) -> None:
        """Draw at a size, or for none as large as the room allows."""
        if zoom != self._asked_zoom:
            self._asked_zoom = zoom
            self._layout()

    def restyle(self) -> None:
        """Take colours and sizes again."""
        self._inks_by_zoom.clear()
        self._drawn_for = None
        self._layout()

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        if self._own is None:
            self._looking.start()

    def _look_into_drawer(self) -> None:
        # Imported late: the window is there before what it needs of the drawer is read.
        from workbench.gui.drawer.own_drawer import own_drawer

        self._own = own_drawer(self._bench)
        self._own.changed.connect(self._measure)
        self._measure()

    def scene(self) -> Scene:
        """Return what is painted over the drawing now."""
        view = self._bench.view
        return replace(
            self._still,
            chosen=view.chosen,
            pointed=view.pointed,
            edited=self._edited,
            made=self._made,
            focus=self._target if self.hasFocus() else None,
            hover=self._hover,
        )

    def target_at(self, x: float, y: float) -> Target | None:
        """Return what lies at a place."""
        output = self._result.project.channels[self.channel].output
        return target_at(self._drawing, Point(x, y), output)

    def paintEvent(self, event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            painter.fillRect(event.rect(), self._bench.theme.color("panel"))
            drawing, lines = self._seen_in(event.rect())
            paint(painter, drawing, lines, self.scene(), self._inks)
            self.paint_over(painter)

    def _seen_in(self, rect: QRect) -> tuple[Drawing, Lines]:
        """Return what of the drawing lies in a rectangle, and its wires; kept for the next repaint."""
        wanted = (id(self._drawing), rect.getRect())
        if self._seen is None or self._seen[0] != wanted:
            seen = Rect(rect.x(), rect.y(), rect.width(), rect.height())
            drawing = clipped(self._drawing, seen)
            self._seen = wanted, drawing, lines_of(drawing)
        return self._seen[1], self._seen[2]

    def paint_over(self, _painter: QPainter) -> None:
        """Paint what lies over the drawing; here nothing does."""

    def event(self, event: QEvent) -> bool:
        if event.type() != QEvent.Type.ToolTip or not isinstance(event, QHelpEvent):
            return super().event(event)
        target = self.target_at(event.pos().x(), event.pos().y())
        text = tip(target, self._result, self.channel, self._shown)
        if text:
            QToolTip.showText(event.globalPos(), "\n".join((text, *self._owned(target))), self)
        else:
            QToolTip.hideText()
        return True

    def _inks_at(self, zoom: float) -> Inks:
        """Return faces and pens for a size of the drawing."""
        if zoom not in self._inks_by_zoom:
            type_ = self._bench.type
            floor = type_.floor_px if zoom == 1.0 else SMALLEST_PX
            sized = replace(type_, base_px=type_.base_px * zoom, floor_px=floor)
            self._inks_by_zoom[zoom] = Inks(self._bench.theme, sized, sized.base_px / 14.0)
        return self._inks_by_zoom[zoom]

    def _sheet_at(self, zoom: float) -> Sheet:
        """Return the room for a size; what is larger than usual is the same drawing, enlarged."""
        inks, large = self._inks_at(zoom), max(zoom, 1.0)
        zigzag = self._bench.settings.get(SYMBOLS) is Symbols.ZIGZAG
        width, height = self._room.width() * large, self._room.height() * large
        return Sheet(width, height, inks.type.base_px, inks.measure, zigzag, zoom)

    @property
    def _least_zoom(self) -> float:
        """How small a drawing may get by itself: on a projector the last row must read it. [1]"""
        return 1.0 if self._bench.projecting else LEAST_FIT

    def _layout(self) -> None:
        """Draw the network again if it is another one, then take the figures again."""
        project = self._result.project
        network, board = project.channels[self.channel], board_of(project, self.channel)
        zigzag = self._bench.settings.get(SYMBOLS) is Symbols.ZIGZAG
        wanted = (network, board, self._room, self._bench.type.base_px, zigzag, self._asked_zoom)
        if wanted != self._drawn_for:
            before, self._drawn_for = self._drawn_for, wanted
            same = None
            if before is not None and before[1:] == wanted[1:]:
                same = relabelled(self._drawing, before[0], network, self._sheet_at(self._zoom))
            self._drawing: Drawing = same or self._draw(network, board)
            self._seen = None
            self.setFixedSize(
                max(self._room.width(), round(self._drawing.width)),
                max(self._room.height(), round(self._drawing.height)),
            )
            self._targets = in_order(self._drawing, network.output)
            if self._target not in self._targets:
                self._target = None
            self.drawn.emit()
        self._measure()

    def _draw(self, network: Network, board: Board) -> Drawing:
        """Draw a network anew, at the size that was asked for or that fits."""
        zoom = self._asked_zoom
        if zoom is None:
            drawing, zoom = draw_fitted(network, board, self._sheet_at, self._least_zoom)
        else:
            drawing = draw(network, board, self._sheet_at(zoom))
        self._zoom, self._inks = zoom, self._inks_at(zoom)
        return drawing

    def _measure(self) -> None:
        project, result, channel = self._result.project, self._result, self.channel
        network, view = project.channels[channel], self._bench.view
        code, _ = self._pins.code(channel, result)
        levels = result.channels[channel].levels
        floating = self._pins.floating(channel)
        taken = taken_volts(result, channel, self._bench.monitor)
        self._shown = shown_figures(network, levels, project.driver, project.load, code, floating, taken)
        findings = findings_by_part(result.findings, channel)
        self._note(findings)
        self._still = Scene(
            channel,
            self._shown,
            sync_volts(project, result, view.pixel),
            codes={r.id: bands(r.ohms, r.tolerance) for r in network.resistors},
            findings=findings,
            notes=self._notes[1],
            node_signs=self._notes[2],
            badges=self._notes[3],
        )
        self._describe()
        self.update()

    def _note(self, findings: dict[PartId, Finding]) -> None:
        """Find places for words about findings and drawer, if they or the drawing are others."""
        project, problems = self._result.project, self._result.channels[self.channel].levels.problems
        drawer, drawing, inks = (self._own.drawer if self._own else None), self._drawing, self._inks
        wanted = (id(drawing), id(inks), id(self._result), self.channel, id(drawer))
        if self._notes[0] != wanted:
            words, signs = notes(drawing, findings, project, inks), node_signs(drawing, problems)
            owned = badges(drawing, project, self.channel, drawer, inks) if drawer else ()
            self._notes = wanted, words, signs, owned

    def _describe(self) -> None:
        told = spoken(self._target, self._result.project, self.channel, self._shown)
        words = ", ".join((told, *self._owned(self._target)))
        if words != self.accessibleDescription():
            self.setAccessibleDescription(words)

    def _owned(self, target: Target | None) -> tuple[str, ...]:
        """Return what the badge of a part says; nothing where there is none."""
        part = target.part if target is not None else None
        return tuple(badge.words for badge in self._notes[3] if badge.part == part)

    def _on_setting(self, setting: object) -> None:
        if setting is SYMBOLS:
            self._layout()
