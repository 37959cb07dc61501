"""The head of the scanline panel: which line, how much of it, of which card, and its rates."""

from collections.abc import Callable

from PySide6.QtCore import QPoint, QPointF, QRectF, QSize, Signal
from PySide6.QtGui import QFontMetricsF, QPainter, QPaintEvent, QPen, QResizeEvent
from PySide6.QtWidgets import QLayout, QLayoutItem, QMenu, QSizePolicy, QSpacerItem, QWidget

from workbench.gui.bench import Bench
from workbench.gui.scanline.content.presets import Preset
from workbench.gui.scanline.content.words import uneven_words
from workbench.gui.scanline.line_field import LineField, LineMenu
from workbench.gui.widgets import Button, ButtonKind, CheckBox, Choice, Control, PanelHead, Words, draw_text
from workbench.gui.widgets.control import draw_chevron, outlined
from workbench.picture.scene import Card, Picture
from workbench.timing.mode import Mode

__all__ = ["ScanlineHead", "ViewMenu"]

GAPS = (6, 12, 12)
"""Before the line's number, before the presets, before the card. [design px]"""
PROJECTED_GAPS = 0.4
"""On a projector, where room is short, they are so much of it. [1]"""


class ScanlineHead(PanelHead):
    """Shows and changes which scanline is seen; what has no room moves into the view menu."""

    SPACING = 4

    preset_chosen = Signal(object)
    card_chosen = Signal(object)

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(bench, "Scanline", parent)
        self.bench = bench
        self.line = LineField(bench)
        self.lines = LineMenu(bench, self.line)
        self.presets = {preset: Button(bench, preset.value, ButtonKind.SEGMENT) for preset in Preset}
        self.card = Choice(bench, "Card")
        self.card.set_options([card.value for card in Card])
        self.fanned = CheckBox(bench, "fanned")
        self.ideal = CheckBox(bench, "ideal")
        self.dashed = CheckBox(bench, "dashes")
        self.view_menu = ViewMenu(bench)
        self.line_time, self.line_rate, self.frame_rate = (
            Words(bench, size=0.93, weight=500, mono=True, width_for=longest)
            for longest in ("00.000 µs", "00.000 kHz", "00.00 Hz")
        )
        self.uneven = Words(bench, size=0.93, role="dim")
        self._gaps = tuple(QSpacerItem(0, 0) for _ in GAPS)
        self._fill_row()
        self._explain()
        for preset, button in self.presets.items():
            button.clicked.connect(lambda _checked=False, preset=preset: self.preset_chosen.emit(preset))
        self.card.chosen.connect(lambda number: self.card_chosen.emit(list(Card)[number]))
        bench.theme_changed.connect(self._refit)

    def _fill_row(self) -> None:
        row = self.row
        # The row folds to the width it is given: it must not hold the panel open.
        row.setSizeConstraint(QLayout.SizeConstraint.SetNoConstraint)
        self.setMinimumWidth(0)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        row.addSpacerItem(self._gaps[0])
        row.addWidget(self.line)
        row.addWidget(self.lines)
        row.addSpacerItem(self._gaps[1])
        for button in self.presets.values():
            row.addWidget(button)
        row.addSpacerItem(self._gaps[2])
        row.addWidget(self.card)
        row.addStretch(1)
        for widget in (self.fanned, self.ideal, self.dashed, self.view_menu, self.uneven):
            row.addWidget(widget)
        for figure in (self.line_time, self.line_rate, self.frame_rate):
            row.addWidget(figure)
        self._space()

    def _space(self) -> None:
        """Take the gaps between the parts of the row at the size in force."""
        part = PROJECTED_GAPS if self.bench.projecting else 1.0
        for gap, width in zip(self._gaps, GAPS, strict=True):
            gap.changeSize(
                self.bench.px(part * width), 0, QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Minimum
            )
        for figure in (self.line_time, self.line_rate, self.frame_rate):
            figure.setContentsMargins(self.bench.px(6), 0, 0, 0)
        self.row.invalidate()

    def _explain(self) -> None:
        tips = {
            self.presets[Preset.LINE]: "The whole scanline",
            self.presets[Preset.BLANKING]: "Porches and sync, and as much of the picture after them",
            self.presets[Preset.PIXELS]: "Single pixels around the cursor here",
            self.presets[Preset.FRAME]: "Lowest and highest level of every line; a click goes to a line",
            self.card: "The picture the pins are told to show",
            self.fanned: "Draw equal levels side by side; the chosen channel lies true",
            self.ideal: "Show the even staircase to 0.700 V as a thin line",
            self.dashed: "Give each trace a dash of its own, so that colour never speaks alone",
            self.line_time: "Length of a line",
            self.line_rate: "Lines a second",
            self.frame_rate: "Frames a second",
        }
        for widget, tip in tips.items():
            widget.setToolTip(tip)

    def show_line(self, mode: Mode, scanline: int, picture: Picture, divider: float | None = None) -> None:
        """Show the line that is seen, the rates of its mode, and how uneven a divider makes its pixels."""
        self.line.blockSignals(True)
        self.line.set_lines(mode.v.total)
        self.line.setValue(scanline)
        self.line.blockSignals(False)
        self.lines.show_mode(mode)
        self.card.set_value(picture.card.value if picture.image is None else "an image")
        self.line_time.say(f"{mode.line_s * 1e6:.3f} µs")
        self.line_rate.say(f"{mode.line_rate_hz / 1e3:.3f} kHz")
        self.frame_rate.say(f"{mode.frame_rate_hz:.2f} Hz")
        self._show_uneven(*uneven_words(mode, divider))

    def _show_uneven(self, words: str, sentence: str) -> None:
        if words != self.uneven.text():
            self.uneven.say(words)
            self.uneven.setToolTip(sentence)
            self.fit(self.width())

    def show_preset(self, shown: Preset | None) -> None:
        """Mark the preset that holds; none after zooming by hand."""
        for preset, button in self.presets.items():
            button.setChecked(preset is shown)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.fit(event.size().width())

    def fit(self, width: int) -> None:
        """Hide what has no room, least needed first."""
        folds = UNEVEN_FOLDS if self.uneven.text() else FOLDS
        for hidden in PROJECTOR_FOLDS if self.bench.projecting else folds:
            self._show_all_but(hidden)
            if self._needed() <= width:
                return

    def _refit(self) -> None:
        self._space()
        self.fit(self.width())

    def _show_all_but(self, hidden: set[str]) -> None:
        self.card.set_caption_shown(shown="caption" not in hidden)
        for name in (
            "fanned",
            "ideal",
            "dashed",
            "line_rate",
            "frame_rate",
            "line_time",
            "card",
            "title",
            "lines",
        ):
            getattr(self, name).setVisible(name not in hidden)
        self.uneven.setVisible("uneven" not in hidden and bool(self.uneven.text()))
        self.view_menu.setVisible("fanned" in hidden and "view" not in hidden)

    def _needed(self) -> int:
        """Return the width that what is visible asks for. [px]"""
        items = [item for i in range(self.row.count()) if (item := self.row.itemAt(i)) is not None]
        widths = [_width(item) for item in items if not _hidden(item)]
        margins = self.row.contentsMargins()
        return sum(widths) + self.row.spacing() * (len(widths) - 1) + margins.left() + margins.right()


def _hidden(item: QLayoutItem) -> bool:
    widget = item.widget()
    return widget is not None and widget.isHidden()


def _width(item: QLayoutItem) -> int:
    """Return the width a piece of the row asks for, as it is now and not as a layout remembers it. [px]"""
    widget = item.widget()
    if widget is None:
        return item.sizeHint().width()
    return max(widget.sizeHint().width(), widget.minimumWidth())


BOXES = {"dashed", "caption", "fanned", "ideal"}
RATES = {"frame_rate", "line_rate"}
FOLDS: tuple[set[str], ...] = (
    set(),
    {"dashed"},
    {"dashed", "caption"},
    BOXES,
    BOXES | {"frame_rate"},
    BOXES | RATES,
    BOXES | RATES | {"line_time"},
    BOXES | RATES | {"card"},
    BOXES | RATES | {"card", "line_time"},
    BOXES | RATES | {"card", "line_time", "title"},
    BOXES | RATES | {"card", "line_time", "title", "lines"},
)
"""What is hidden, from a row with room for all to the shortest; the view menu offers the rest."""
UNEVEN_FOLDS: tuple[set[str], ...] = (
    *FOLDS[:7],
    BOXES | RATES | {"card", "line_time"},
    *(hidden | {"uneven"} for hidden in FOLDS[7:]),
)
"""The same where the row says how uneven pixels are: card and line's time go before that."""

PLAIN = BOXES | RATES | {"card", "line_time", "lines", "uneven"}
PROJECTOR_FOLDS: tuple[set[str], ...] = (PLAIN, PLAIN | {"view"}, PLAIN | {"view", "title"})
"""On a projector the row says which scanline it is and how much of it; a right click offers the rest."""


class ViewMenu(Control):
    """Opens what has no room in the row."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(bench, "view", parent)
        self.fill: Callable[[QMenu], object] = lambda menu: menu
        self.setToolTip("How the plot is drawn")
        self.clicked.connect(self.open)

    def open(self) -> None:
        """Open the menu under the control."""
        self.menu().popup(self.mapToGlobal(QPoint(0, self.height())))

    def menu(self) -> QMenu:
        """Return the menu, which goes when it is left."""
        menu = QMenu(self)
        self.fill(menu)
        menu.aboutToHide.connect(menu.deleteLater)
        return menu

    def sizeHint(self) -> QSize:
        words = QFontMetricsF(self.bench.type.sans()).horizontalAdvance(self.text())
        return QSize(round(words) + self.bench.px(34), self.bench.px(26))

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, px = self.bench.theme, self.bench.px
        with QPainter(self) as painter:
            if self.pointed or self.isDown():
                outlined(painter, QRectF(self.rect()), px(5), theme.mixed("panel", "accent", 0.14), None)
            box = QRectF(self.rect()).adjusted(px(8), 0, 0, 0)
            width = draw_text(painter, box, self.text(), self.bench.type.sans(), theme.color("text"))
            centre = QPointF(px(8) + width + px(12), self.height() / 2 + px(1))
            draw_chevron(painter, centre, px(4), QPen(theme.color("text"), 1.4))
