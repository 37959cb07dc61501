"""The scanline panel: head, plot and line ruler, and what connects them to the bench."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QContextMenuEvent, QKeyEvent, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QMenu, QVBoxLayout, QWidget

from workbench.gui.actions import ActionSpec
from workbench.gui.bench import Bench
from workbench.gui.scanline.cards.readout_line import ReadoutLine
from workbench.gui.scanline.colour_picker import ColourPicker
from workbench.gui.scanline.commands import panel_specs
from workbench.gui.scanline.content.cursors import Place
from workbench.gui.scanline.content.frame_count import FrameCount
from workbench.gui.scanline.content.presets import Preset
from workbench.gui.scanline.content.words import refusal
from workbench.gui.scanline.copying import copy_both, copy_picture, copy_text, line_text
from workbench.gui.scanline.edits import LineEdits
from workbench.gui.scanline.head import ScanlineHead
from workbench.gui.scanline.lanes.view import LanesView
from workbench.gui.scanline.looking import Looking
from workbench.gui.scanline.options import LOOK_SETTINGS, chosen_look
from workbench.gui.scanline.ruler import LineRuler
from workbench.gui.scanline.showing import Showing
from workbench.gui.scanline.sight import Sight
from workbench.gui.settings import Setting
from workbench.gui.widgets import Words
from workbench.picture.scene import Card
from workbench.pipeline.result import Result
from workbench.project.document import Direction, Project
from workbench.timing.frame import v_sync_lines
from workbench.timing.mode import Axis

__all__ = ["ScanlinePanel"]

ROOMY_HEIGHT = 440
"""Lower panels leave the line ruler out on a projector. [design px]"""
LOW_HEIGHT = 260
"""Lower panels leave out the words under the ruler's bar. [design px]"""


class ScanlinePanel(QWidget):
    """Shows one scanline, or the frame, of the project as volts over time."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.edits = LineEdits(bench)
        self.head = ScanlineHead(bench, self)
        self.plot = LanesView(bench, self)
        self.ruler = LineRuler(bench, self)
        self.readout = ReadoutLine(bench, self)
        self.frame_count = FrameCount(self)
        self.showing = Showing(bench, self.plot, self.ruler, self.frame_count)
        self.sight = Sight(self.plot)
        self.looking = Looking(bench, self.plot, self.readout, self.edits, self)
        self._result: Result | None = None
        self._channel = bench.view.channel
        self._monitor = bench.view.monitor
        self.refusal = Words(bench, role="dim")
        self.refusal.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.refusal.setWordWrap(True)
        self.setAccessibleName("Scanline")
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        for widget in (self.head, self.plot, self.refusal, self.ruler):
            column.addWidget(widget, 0 if widget in (self.head, self.ruler) else 1)
        self.refusal.hide()
        self._connect()
        self._take_look()

    def _connect(self) -> None:
        head, plot = self.head, self.plot
        head.line.valueChanged.connect(self._type_scanline)
        head.preset_chosen.connect(self.choose_preset)
        head.card_chosen.connect(self.choose_card)
        head.view_menu.fill = self._fill_menu
        for box, setting in zip((head.fanned, head.ideal, head.dashed), LOOK_SETTINGS, strict=True):
            box.toggled.connect(lambda on, setting=setting: self.bench.settings.set(setting, on))
        plot.range_changed.connect(self._on_range)
        plot.reset.connect(self.reset)
        self.ruler.edge_moved.connect(self._on_edge)
        self.ruler.looked_at.connect(self.sight.centre)
        self.ruler.edge_left.connect(self.edits.release)
        self.ruler.edge_dropped.connect(self.edits.drop)
        self.frame_count.progressed.connect(self._on_counted)
        self.bench.view.changed.connect(self._on_view)
        self.bench.settings.changed.connect(self._on_setting)
        self.bench.theme_changed.connect(self._restyle)

    # What is shown --------------------------------------------------------------------------

    def action_specs(self) -> tuple[ActionSpec, ...]:
        """Return the panel's rows of the command table."""
        return panel_specs(self)

    def show_result(self, project: Project, result: Result) -> None:
        """Show a project's scanline."""
        self._result = result
        self.head.show_line(project.mode, project.scanline, project.picture, project.pixel_divider)
        simulated = result.scanline is not None
        self.plot.setVisible(simulated)
        self.refusal.setVisible(not simulated)
        if not simulated:
            self.refusal.say(refusal(project.mode))
            self.readout.hide()
            return
        self.looking.show_result(result)
        self.showing.show(project, result)
        self.sight.keep(around=self._here_pixels())
        self._on_range()

    @property
    def preset(self) -> Preset | None:
        """The stretch in sight, if it is one that a press brings."""
        return self.sight.preset

    def choose_preset(self, preset: Preset) -> None:
        """Bring a stretch of the line, or the frame, into sight."""
        frame = preset is Preset.FRAME
        self.sight.preset = preset
        if frame != self.showing.frame:
            self.showing.frame = frame
            self.looking.frame = frame
            if self._simulated is not None:
                self.showing.show(self._simulated.project, self._simulated)
        self.sight.show(preset, around=self._here_pixels())
        self._on_range()

    def _here_pixels(self) -> float:
        return float(self.looking.cursors.pixel(Place.HERE))

    @property
    def _simulated(self) -> Result | None:
        """The result, if it has a scanline."""
        return self._result if self._result is not None and self._result.scanline is not None else None

    def _on_range(self) -> None:
        """Follow what the plot has in sight."""
        if self._simulated is None:
            return
        self.ruler.show_time(self.plot.time)
        self.sight.look()
        self.head.show_preset(self.sight.preset)
        self.looking.place()
        if self.readout.isVisibleTo(self):
            self._place_line()

    def _place_line(self) -> None:
        """Put the one-line readout above the strip, or beside the ruler's labels where that is free."""
        px, places = self.bench.px, self.plot.places
        if places.folded:
            above = 0 if places.low else px(20)
            left, top = round(places.names.left()), self.plot.y() + round(places.names.top()) - above
        else:
            left, top = self.ruler.free_left(), self.ruler.geometry().bottom() - px(32)
        self.readout.setGeometry(left, top, self.width() - left - px(8), px(20))

    def _on_view(self) -> None:
        if self._simulated is None:
            return
        if self.bench.view.channel is not self._channel:
            self._channel = self.bench.view.channel
            self.plot.choose_channel()
            self.looking.place()
        if self.bench.view.monitor != self._monitor:
            self._monitor = self.bench.view.monitor
            self.showing.show(self._simulated.project, self._simulated)
        self.showing.light(self._simulated)

    # Zoom -----------------------------------------------------------------------------------

    def zoom(self, factor: float) -> None:
        """Show a stretch this many times as long, around the cursor if it is in sight."""
        if self._simulated is not None:
            cursors = self.looking.cursors
            self.sight.zoom(factor, around_s=cursors.time_s(cursors.active))

    def reset(self) -> None:
        """Show what the last preset showed."""
        self.sight.show(self.sight.last, around=self._here_pixels())

    def show_whole(self) -> None:
        """Show all of the line, or of the frame."""
        self.choose_preset(Preset.FRAME if self.showing.frame else Preset.LINE)

    # Edits ----------------------------------------------------------------------------------

    def choose_card(self, card: Card) -> None:
        """Show another test card; the solid one asks for its colour."""
        self.edits.show_card(card)
        if card is Card.SOLID:
            self.pick_colour()

    def pick_colour(self) -> None:
        """Ask for the colour of the solid card; the plot follows."""
        colour = self.bench.session.project.picture.colour
        picker = ColourPicker(colour, self.edits.colour_card, self.edits.drop, self)
        picker.accepted.connect(self.edits.release)
        picker.open()

    def type_scanline(self) -> None:
        """Put the caret into the scanline's number."""
        self.head.line.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self.head.line.selectAll()

    def show_v_sync(self) -> None:
        """Show the first scanline on which V sync is active."""
        self.edits.show_scanline(v_sync_lines(self.bench.session.project.mode).start)

    def _type_scanline(self, number: int) -> None:
        self.edits.show_scanline(number)
        self.looking.rest()

    def _on_edge(self, axis: Axis, edge: int) -> None:
        direction = Direction.VERTICAL if self.showing.frame else Direction.HORIZONTAL
        self.edits.move_edge(direction, axis, edge)

    # Copies and menus -----------------------------------------------------------------------

    def copy(self) -> None:
        """Copy the panel as a picture and as text."""
        copy_both(self, self._text())

    def copy_picture(self) -> None:
        """Copy the panel as a picture."""
        copy_picture(self)

    def copy_text(self) -> None:
        """Copy the counts and what the cursors read as text."""
        copy_text(self._text())

    def _text(self) -> str:
        return line_text(self.bench.session.project, self.looking.readings.readout())

    def _fill_menu(self, menu: QMenu) -> None:
        """Offer what the row has no room for."""
        for setting, words in zip(LOOK_SETTINGS, ("fanned", "ideal", "dashes"), strict=True):
            action = menu.addAction(words)
            action.setCheckable(True)
            action.setChecked(self.bench.settings.get(setting))
            action.toggled.connect(lambda on, setting=setting: self.bench.settings.set(setting, on))
        cards = menu.addMenu("card")
        for card in Card:
            action = cards.addAction(card.value)
            action.setCheckable(True)
            action.setChecked(self.bench.session.project.picture.card is card)
            action.triggered.connect(lambda _checked=False, card=card: self.choose_card(card))
        menu.addSeparator()
        menu.addAction("Copy as picture", self.copy_picture)
        menu.addAction("Copy as text", self.copy_text)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        menu = QMenu(self)
        self._fill_menu(menu)
        menu.aboutToHide.connect(menu.deleteLater)
        menu.popup(event.globalPos())

    # Look and events ------------------------------------------------------------------------

    def _on_setting(self, setting: Setting) -> None:
        if setting in LOOK_SETTINGS:
            self._take_look()

    def _take_look(self) -> None:
        look = chosen_look(self.bench)
        boxes = (
            (self.head.fanned, look.fanned),
            (self.head.ideal, look.ideal),
            (self.head.dashed, look.dashed),
        )
        for box, on in boxes:
            box.setChecked(on)
        self.looking.readings.look = look
        self.plot.show_look(look)
        self._on_range()

    def _restyle(self) -> None:
        self.plot.restyle()
        self._on_range()

    def _on_counted(self) -> None:
        if self.showing.frame and self._simulated is not None:
            self.showing.show(self._simulated.project, self._simulated)
            self._on_range()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        # On a projector the areas are named over the plot, which needs the height.
        room = not self.bench.projecting or self.height() >= self.bench.px(ROOMY_HEIGHT)
        self.ruler.set_low(low=self.height() < self.bench.px(LOW_HEIGHT))
        self.ruler.setVisible(room and not self.refusal.isVisibleTo(self))
        self._on_range()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if not (self.plot.hasFocus() and self.looking.press(event)):
            super().keyPressEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), self.bench.theme.color("panel"))
