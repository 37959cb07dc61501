"""The head of the panel: channels, the code on the pins, what can be changed."""

from PySide6.QtCore import QRectF, QSize, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QWidget

from workbench.checks.groups import is_sound
from workbench.gui.bench import Bench
from workbench.gui.icons import draw_icon
from workbench.gui.network.shown import Source
from workbench.gui.widgets import Button, ButtonKind, Chip, Control, PanelHead, Words, draw_text
from workbench.gui.widgets.control import outlined
from workbench.gui.widgets.dashes import trace_pen
from workbench.pipeline.result import Result
from workbench.project.document import Channel
from workbench.units import format_fixed

__all__ = ["ChannelCards", "Head"]

ROOM_FOR_TITLE = 430
"""Width from which the panel is named. [design px]"""
FOLDS = 8
"""Steps in which what has no room is left out; see :meth:`Head._fold`. [1]"""


class LinkNote(Control):
    """Says that one drawing stands for three channels."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench, "linked: one drawing for three")
        self.setToolTip(
            "Channels are linked: an edit is made to red, green and blue alike. A click parts them."
        )
        self.short = False

    def shorten(self, *, short: bool) -> None:
        """Leave out all but the first word, or show them all."""
        if short is not self.short:
            self.short = short
            self.updateGeometry()
            self.update()

    @property
    def words(self) -> str:
        """What is written: the first word where room is short."""
        return "linked" if self.short else self.text()

    def sizeHint(self) -> QSize:
        return QSize(
            round(self.bench.type.width(self.words, self.bench.type.sans())) + self.bench.px(24),
            self.bench.px(26),
        )

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, px = self.bench.theme, self.bench.px
        ink = theme.color("text" if self.pointed else "dim")
        with QPainter(self) as painter:
            side = px(16)
            draw_icon(painter, "link", QRectF(0, (self.height() - side) / 2, side, side), ink, theme)
            draw_text(
                painter,
                QRectF(px(22), 0, self.width(), self.height()),
                self.words,
                self.bench.type.sans(),
                ink,
            )


class Head(PanelHead):
    """Channel chips, the linked note, the code on the pins and who put it there."""

    released = Signal()

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(bench, "Network", parent)
        self.chips = {channel: Chip(bench, channel) for channel in Channel}
        group = QButtonGroup(self)
        self.apart = Words(bench, "channels apart", weight=500)
        self.row.addSpacing(bench.px(8))
        self.row.addWidget(self.apart)
        for channel, chip in self.chips.items():
            group.addButton(chip)
            chip.clicked.connect(lambda _on=False, c=channel: bench.view.choose_channel(c))
            chip.setAccessibleName(f"Draw {channel.value}")
            self.row.addWidget(chip)
        self.note = LinkNote(bench)
        self.row.addWidget(self.note)
        self.row.addStretch(1)
        self.source = Words(bench, role="dim")
        self.code = Words(bench, mono=True, weight=600, width_for="255")
        self.change = Button(bench, "Change ▾", ButtonKind.QUIET)
        self.change.setAccessibleName("Change the network")
        self.release = Button(bench, "Release")
        self.release.setToolTip("Gives the pins back to the picture")
        self.release.clicked.connect(self.released)
        for widget in (self.change, self.source, self.code, self.release):
            self.row.addWidget(widget)
        # What has no room is left out, so the head never keeps the panel wide.
        self.setMinimumWidth(1)
        self._shown: object = None

    def show_state(self, result: Result, channel: Channel, code: int, source: Source, *, short: bool) -> None:
        """Say which channel is drawn and what is on its pins; ``short`` is a panel without buttons below."""
        linked = result.project.linked
        self.chips[channel].setChecked(True)
        self.code.say(str(code))
        shown = (self.width(), self._bench.px(100), linked, channel, source, short)
        if shown != self._shown:
            self._shown = shown
            named = self.width() >= self._bench.px(ROOM_FOR_TITLE)
            self.apart.setVisible(not linked and named)
            self.release.setVisible(source is Source.HELD)
            self.change.setVisible(short and named)
            for step in range(FOLDS):
                self._fold(step, channel, source, linked=linked, named=named)
                self.row.invalidate()
                if self.row.totalSizeHint().width() <= self.width():
                    break

    def _fold(self, step: int, channel: Channel, source: Source, *, linked: bool, named: bool) -> None:
        """Leave out step by step what is needed least; the channels' names and the channels go last."""
        self.title.setVisible(named and step < 4)
        self.change.setText("Change ▾" if step < 5 else "▾")
        self.change.updateGeometry()
        self.note.setVisible(linked and named and step < 2)
        self.note.shorten(short=step > 0)
        words = {Source.HELD: "holding code", Source.PIXEL: f"{channel.value} of this pixel: code"}
        self.source.say(words.get(source, "white: code") if step < 3 else "code")
        for each, chip in self.chips.items():
            chip.setText(each.value if step < 6 or each is channel else each.value[:1])
            chip.updateGeometry()
            # Where the channels are apart, cards under the head show them, if it is wide enough for any.
            several = (linked or not named) and step < 7
            chip.setVisible(several or (linked and each is channel))


class ChannelCards(QWidget):
    """Three cards, one a channel, where the channels go their own ways."""

    HEIGHT = 54

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self.setMinimumWidth(1)
        self._row = QHBoxLayout(self)
        self.cards = {channel: ChannelCard(bench, channel) for channel in Channel}
        group = QButtonGroup(self)
        for channel, card in self.cards.items():
            group.addButton(card)
            card.clicked.connect(lambda _on=False, c=channel: bench.view.choose_channel(c))
            self._row.addWidget(card, 1)
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def show_state(self, result: Result, channel: Channel) -> None:
        """Show the channels of a result, one of them chosen."""
        for each, card in self.cards.items():
            bits, found = result.project.channels[each].bits, result.channels[each]
            white = format_fixed(found.linearity.full_scale_volts, "V") if is_sound(found.levels) else "–"
            card.show_channel(bits, white)
        self._restyle()
        self.cards[channel].setChecked(True)

    def _restyle(self) -> None:
        px = self._bench.px
        self.setFixedHeight(px(self.HEIGHT))
        side = px(20 if self.width() >= px(680) else 14)
        self._row.setContentsMargins(side, px(8), side, px(4))
        self._row.setSpacing(px(7))


class ChannelCard(Control):
    """Chooses a channel; shows its dashes, bits and white."""

    def __init__(self, bench: Bench, channel: Channel) -> None:
        super().__init__(bench, channel.value)
        self.channel = channel
        self._bits, self._white = "", ""
        self.setCheckable(True)
        self.setSizePolicy(self.sizePolicy().Policy.Expanding, self.sizePolicy().Policy.Fixed)

    def show_channel(self, bits: int, white: str) -> None:
        """Show how many bits there are and how high white is."""
        texts = (f"{bits} bit" if bits == 1 else f"{bits} bits", white)
        if texts != (self._bits, self._white):
            self._bits, self._white = texts
            self.setAccessibleName(f"Draw {self.channel.value}: {self._bits}, white {self._white}")
            self.update()

    def sizeHint(self) -> QSize:
        return QSize(self.bench.px(150), self.bench.px(40))

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, type_, px = self.bench.theme, self.bench.type, self.bench.px
        box = QRectF(self.rect())
        chosen = self.isChecked()
        with QPainter(self) as painter:
            fill = theme.color("raised") if chosen else None
            if self.pointed and not chosen:
                fill = theme.mixed("panel", "accent", 0.14)
            line = QPen(theme.color("outline" if chosen else "hairline"), 1.2)
            outlined(painter, box, px(6), fill, line)
            middle = box.top() + px(12.5)
            painter.setPen(trace_pen(self.bench, self.channel))
            painter.drawLine(px(10), round(box.center().y()), px(30), round(box.center().y()))
            upper = QRectF(px(40), middle - px(9), box.width() - px(50), px(18))
            lower = upper.translated(0, px(16))
            draw_text(
                painter, upper, self.text(), type_.sans(1.0, 600 if chosen else 400), theme.color("text")
            )
            draw_text(painter, lower, self._bits, type_.sans(0.86), theme.color("dim"))
            from_right = lower.right() - type_.width(self._white, type_.mono(0.95, 500))
            if chosen:
                words = QRectF(upper.right() - px(60), upper.y(), px(60), upper.height())
                width = type_.width("chosen", type_.sans(0.82))
                draw_text(
                    painter,
                    words.translated(words.width() - width, 0),
                    "chosen",
                    type_.sans(0.82),
                    theme.color("dim"),
                )
            lower.setLeft(from_right)
            draw_text(painter, lower, self._white, type_.mono(0.95, 500), theme.color("text"))
