"""Both cursors in one line, where the plot has no room for a card."""

from collections.abc import Iterator

from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QFont, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.scanline.cards.readout_card import Readout
from workbench.gui.scanline.content.words import between_words, microseconds, volts
from workbench.gui.widgets import draw_text
from workbench.project.document import Channel

__all__ = ["ReadoutLine"]

Piece = tuple[str, QFont, QColor, str, float]
"""Words, face, colour, what to keep room for, and the gap after."""


class ReadoutLine(QWidget):
    """Draws here, there and between; what has no room at the end is left out whole."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self._readout: Readout | None = None
        self._sentence = ""
        self.setFixedHeight(bench.px(20))
        self.setAccessibleName("cursors")
        bench.theme_changed.connect(self._restyle)

    def show_readout(self, readout: Readout) -> None:
        """Show what both cursors read."""
        if readout != self._readout or self._sentence:
            self._readout, self._sentence = readout, ""
            self.setAccessibleDescription(", ".join(" ".join(words) for words in self._words(readout)))
            self.update()

    def show_sentence(self, sentence: str) -> None:
        """Say one sentence instead."""
        if sentence != self._sentence:
            self._sentence = sentence
            self.setAccessibleDescription(sentence)
            self.update()

    def _restyle(self) -> None:
        self.setFixedHeight(self._bench.px(20))
        self.update()

    @staticmethod
    def _words(readout: Readout) -> list[tuple[str, ...]]:
        rows: list[tuple[str, ...]] = []
        for name, reading in (("here", readout.here), ("there", readout.there)):
            levels = (volts(value) for value in reading.volts[:3])
            rows.append((name, f"{microseconds(reading.time_s, readout.mode)} µs", *levels))
        return [*rows, ("between", *between_words(readout.here, readout.there, readout.mode))]

    def _pieces(self, words: tuple[str, ...]) -> Iterator[Piece]:
        theme, type_, px = self._bench.theme, self._bench.type, self._bench.px
        name, time, *rest = words
        mono = type_.mono(0.86, 500)
        yield name, type_.sans(0.86, 600), theme.color("text"), name, px(8)
        yield time, type_.mono(0.86), theme.color("dim"), "00.000 µs", px(8)
        if name == "between":
            yield rest[0], type_.mono(0.86), theme.color("dim"), rest[0], px(20)
            return
        for channel, value in zip(Channel, rest, strict=True):
            yield value, mono, theme.channel(channel), "0.000", px(7)
        yield "V", type_.sans(0.86), theme.color("dim"), "V", px(20)

    def _size(self, text: str, font: QFont, _ink: QColor, room: str, gap: float) -> float:
        width = self._bench.type.width
        return max(width(text, font), width(room, font)) + gap

    def paintEvent(self, _event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            x = 0.0
            if self._sentence:
                font, ink = self._bench.type.sans(0.86), self._bench.theme.color("text")
                draw_text(painter, QRectF(self.rect()), self._sentence, font, ink, elide=True)
                return
            if self._readout is None:
                return
            for words in self._words(self._readout):
                pieces = list(self._pieces(words))
                sizes = [self._size(*piece) for piece in pieces]
                if x + sum(sizes) - pieces[-1][-1] > self.width():
                    return
                for (text, font, ink, _, _), size in zip(pieces, sizes, strict=True):
                    draw_text(painter, QRectF(x, 0, size, self.height()), text, font, ink)
                    x += size
