"""The card that reads both cursors: times, pixels, volts, codes, and what lies between them."""

from dataclasses import dataclass

from PySide6.QtCore import QLineF, QRectF, QSizeF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPen

from workbench.gui.bench import Bench
from workbench.gui.scanline.content.words import (
    between_words,
    microseconds,
    position_words,
    signed,
    volts,
    volts_between,
)
from workbench.gui.scanline.lanes.overlay import Overlay, draw_card
from workbench.gui.widgets import draw_text
from workbench.project.document import Channel
from workbench.timing.mode import Mode
from workbench.waveform.reading import Between, Reading

__all__ = ["FORMS", "CardForm", "Readout", "ReadoutCard"]

PITCH = 19
"""Distance of two rows. [design px]"""
RIGHT = Qt.AlignmentFlag.AlignRight


@dataclass(frozen=True, slots=True)
class Readout:
    """What both cursors read."""

    mode: Mode
    here: Reading
    there: Reading
    between: Between
    code_digits: int
    """Digits of the largest code. [1]"""


@dataclass(frozen=True, slots=True)
class CardForm:
    """How much a card says."""

    codes: bool
    """Whether each voltage has its code beside it."""
    differences: bool
    """Whether volts and codes between the cursors are written out."""


FORMS = (CardForm(True, True), CardForm(False, True), CardForm(True, False), CardForm(False, False))
"""From the fullest card to the smallest."""


class ReadoutCard(Overlay):
    """Draws the readings as columns that keep their width whatever the values."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench, z=30)
        self._readout: Readout | None = None
        self.form = FORMS[0]

    def show_readout(self, readout: Readout, form: CardForm) -> None:
        """Show other readings."""
        if (readout, form) != (self._readout, self.form):
            self._readout, self.form = readout, form
            self.update()

    def size_for(self, readout: Readout, form: CardForm) -> QSizeF:
        """Return the size of the card. [px]"""
        px = self.bench.px
        label = QFontMetricsF(self.bench.type.sans(0.86, 600)).horizontalAdvance("green")
        columns = 2 * self.column(readout, form)
        rows = 11 if form.differences else 8
        return QSizeF(label + columns + px(9 + 8 + 8 + 9), px(rows * PITCH + 26))

    def column(self, readout: Readout, form: CardForm) -> float:
        """Return the width of the figures of one cursor. [px]"""
        digits = QFontMetricsF(self.face).horizontalAdvance("0")
        return 5 * digits + self.code_width(readout) if form.codes else 6 * digits

    def code_width(self, readout: Readout, signs: int = 0) -> float:
        """Return the width of a code, with room for a sign or not, and the gap before it. [px]"""
        digits = QFontMetricsF(self.code_face).horizontalAdvance("0")
        return self.bench.px(5) + digits * (readout.code_digits + signs)

    @property
    def face(self) -> QFont:
        """The face of the figures."""
        return self.bench.type.mono(0.86, 500)

    @property
    def code_face(self) -> QFont:
        """The face of the codes beside them."""
        return self.bench.type.mono(0.80)

    def draw(self, painter: QPainter) -> None:
        if self._readout is None:
            return
        draw_card(painter, self.bench, self.box.adjusted(0, 0, -2, -4))
        rows = _Rows(self, painter, self._readout)
        rows.heads()
        rows.times()
        rows.rule()
        rows.channels()
        rows.rule()
        rows.between()

    def boundingRect(self) -> QRectF:
        return super().boundingRect().adjusted(0, 0, 4, 6)


class _Rows:
    """Writes the rows of the card from top to bottom."""

    def __init__(self, card: ReadoutCard, painter: QPainter, readout: Readout) -> None:
        self.bench, self.painter, self.readout = card.bench, painter, readout
        px = card.bench.px
        self.card = card
        self.left, self.right = card.box.left() + px(9), card.box.right() - px(9)
        self.y = card.box.top() + px(5)
        self.coded = card.form.codes
        self.gap = px(8)
        self.column = card.column(readout, card.form)
        type_, theme = card.bench.type, card.bench.theme
        self.mono, self.small = card.face, card.code_face
        self.words, self.bold = type_.sans(0.86), type_.sans(0.86, 600)
        self.ink, self.dim = theme.color("text"), theme.color("dim")
        self.pitch = px(PITCH)
        self.code_widths = tuple(card.code_width(readout, signs) for signs in (0, 1))

    def heads(self) -> None:
        for name, right in (("here", self.right - self.column - self.gap), ("there", self.right)):
            self._put(name, right, self.bold)
        self._down()

    def times(self) -> None:
        r = self.readout
        self._row("µs", microseconds(r.here.time_s, r.mode), microseconds(r.there.time_s, r.mode))
        here, there, _ = position_words(r.here, r.there, r.mode)
        self._row("px", here, there)

    def channels(self) -> None:
        for i, channel in enumerate(Channel):
            self._label(channel.value, channel)
            for reading, right in self._columns():
                self._level(volts(reading.volts[i]), str(reading.codes[i]), right)
            self._down()

    def between(self) -> None:
        r = self.readout
        time, pixels = between_words(r.here, r.there, r.mode)
        apart = volts_between(r.here, r.there)
        self._label("between")
        self._put(time, self.right, self.mono)
        self._down()
        self._put(pixels, self.right, self.mono)
        self._down()
        for i, channel in enumerate(Channel if self.card.form.differences else ()):
            self._label(channel.value, channel)
            self._level(apart[i], signed(str(r.between.codes[i])), self.right, signs=1)
            self._down()

    def rule(self) -> None:
        px = self.bench.px
        self.painter.setRenderHint(QPainter.RenderHint.Antialiasing, on=False)
        self.painter.setPen(QPen(self.bench.theme.color("hairline"), 1))
        y = round(self.y + px(3))
        self.painter.drawLine(QLineF(self.left, y, self.right, y))
        self.y += px(7)

    def _columns(self):
        left = self.right - self.column - self.gap
        return (self.readout.here, left), (self.readout.there, self.right)

    def _row(self, label: str, here: str, there: str) -> None:
        self._label(label)
        for text, right in ((here, self.right - self.column - self.gap), (there, self.right)):
            # A count with the name of its region before it has room in the narrower face.
            self._put(text, right, self.words if " " in text else self.mono)
        self._down()

    def _level(self, value: str, code: str, right: float, *, signs: int = 0) -> None:
        if self.coded:
            self._put(code, right, self.small, self.dim)
            right -= self.code_widths[signs]
        self._put(value, right, self.mono)

    def _label(self, text: str, channel: Channel | None = None) -> None:
        ink = self.bench.theme.channel(channel) if channel else self.dim
        draw_text(self.painter, self._line(self.right), text, self.bold if channel else self.words, ink)

    def _put(self, text: str, right: float, font: QFont, ink: QColor | None = None) -> None:
        draw_text(self.painter, self._line(right), text, font, ink or self.ink, align=RIGHT)

    def _line(self, right: float) -> QRectF:
        return QRectF(self.left, self.y, right - self.left, self.pitch)

    def _down(self) -> None:
        self.y += self.pitch
