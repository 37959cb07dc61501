"""The card beside an open field: what the typed value means, and what it would change."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QWidget

from workbench.drawing.elements import Align
from workbench.drawing.faces import Face
from workbench.drawing.geometry import Point
from workbench.gui.bench import Bench
from workbench.gui.network.inks import Inks
from workbench.gui.network.preview import Line, what_would_change
from workbench.gui.network.values import Reading, Standing, Value
from workbench.gui.widgets import Button, Sign, draw_sign
from workbench.gui.widgets.control import outlined
from workbench.project.document import Channel

__all__ = ["EchoCard"]

ECHO = Face(mono=True, size=1.10, weight=600)
FIGURE = Face(mono=True, size=0.95, weight=400)
FIGURE_NEW = Face(mono=True, size=0.95, weight=600)
WORDS = Face(mono=False, size=0.94, weight=400)
CAP = Face(mono=False, size=0.82, weight=500)
HINT = Face(mono=False, size=0.86, weight=400)
WORDS_NEW = Face(mono=False, size=0.94, weight=600)


class EchoCard(QWidget):
    """Says what the text in a :class:`ValueField` means and what would change; shows, never decides."""

    asked = Signal()
    """The person answered the question with Keep."""
    other_asked = Signal()
    """The person chose the other reading of a sum: one part, or two."""

    def __init__(self, bench: Bench, inks: Inks, parent: QWidget) -> None:
        super().__init__(parent)
        self._bench, self._inks = bench, inks
        self._reading: Reading | None = None
        self._lines: tuple[Line, ...] = ()
        self._value: Value | None = None
        self._keep = Button(bench, "Keep", parent=self)
        self._other = Button(bench, "One part", parent=self)
        # A click must not take the focus from the field, or the field would close first.
        for button, signal in ((self._keep, self.asked), (self._other, self.other_asked)):
            button.setFocusPolicy(Qt.FocusPolicy.NoFocus)
            button.clicked.connect(signal)
        self._arrow: float | None = None
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents, False)
        self.hide()

    def take_inks(self, inks: Inks) -> None:
        """Use other faces and colours."""
        self._inks = inks

    def tell(self, value: Value, reading: Reading, channel: Channel) -> None:
        """Show what a reading means."""
        self._value, self._reading = value, reading
        self._lines = ()
        if reading.standing is not Standing.REFUSED and reading.value != value.value:
            self._lines = what_would_change(self._bench.session.project, channel, value, reading.value)
        self._keep.setVisible(self._asks)
        self._keep.setText(f"Keep {reading.words()}" if reading.pair else "Keep")
        self._other.setVisible(reading.pair is not None)
        self._other.setText(f"Keep {reading.words(other=True)}")
        for button in (self._keep, self._other):
            button.resize(button.sizeHint())
        self.setAccessibleDescription(self.words)
        self.resize(self.sizeHint())
        self.update()

    @property
    def words(self) -> str:
        """Everything on the card, as one text."""
        reading = self._reading
        if reading is None:
            return ""
        changes = [f"{line.name} {line.before} to {line.after}" for line in self._lines]
        ways = [f"Enter keeps {reading.words()}", f"Ctrl+Enter {reading.words(other=True)}"]
        told = (reading.echo, self._standing(), *changes, *(ways if reading.pair else ()))
        return "; ".join([word for word in told if word])

    def point_at(self, y: float | None) -> None:
        """Let the card's beak point left at a height of its own, or leave it out. [px]"""
        self._arrow = y
        self.update()

    def sizeHint(self) -> QSize:
        sentence = self._sentence_lines()
        height = 44 + 22 * len(self._lines) + (40 if self._hints() else 0)
        height += 20 * len(sentence) + 8 if sentence else 0
        height -= 26 if self._reading is not None and not self._reading.echo else 0
        height += (44 if self._asks else 0) + self._other_height()
        return QSize(round(self._width()), round(height * self._inks.unit))

    @property
    def _asks(self) -> bool:
        return self._reading is not None and self._reading.standing is Standing.ASKED

    def _other_height(self) -> int:
        """Return how high the row of the other reading is. [design px]"""
        return 38 if self._reading is not None and self._reading.pair is not None else 0

    def _width(self) -> float:
        return 288 * self._inks.unit

    def _standing(self) -> str:
        reading = self._reading
        if reading is None:
            return ""
        if reading.sentence:
            return reading.sentence
        if reading.in_series is None:
            return ""
        series = self._bench.session.project.series.name
        return f"in {series}" if reading.in_series else f"not made in {series}"

    def _sentence_lines(self) -> list[str]:
        """Return the sentence of a refusal or a question, broken to the card's width."""
        if self._reading is None or not self._reading.sentence:
            return []
        room, lines = self._width() - 62 * self._inks.unit, [""]
        for word in self._reading.sentence.split():
            longer = f"{lines[-1]} {word}".strip()
            if lines[-1] and self._inks.measure(longer, WORDS) > room:
                lines.append(word)
            else:
                lines[-1] = longer
        return lines

    def _hints(self) -> tuple[tuple[str, str], ...]:
        reading, value = self._reading, self._value
        if reading is None or value is None or reading.standing is not Standing.READ:
            return ()
        if reading.pair is not None:
            return (("Enter", reading.words()),)
        hints: list[tuple[str, str]] = []
        if reading.above is not None and reading.below is not None:
            hints = [("↑", _short(value, reading.above)), ("↓", _short(value, reading.below))]
        whole = (*hints, ("Esc", "leave"), ("Enter", "keep"))
        taken = sum(self._hint_width(*hint) for hint in whole)
        return whole if taken <= self._width() - 26 * self._inks.unit else (*hints, ("Enter", "keep"))

    def paintEvent(self, _event: QPaintEvent) -> None:
        reading, inks, unit = self._reading, self._inks, self._inks.unit
        if reading is None:
            return
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            self._paint_ground(painter)
            y, left = 24 * unit, 22 * unit
            if reading.echo:
                theme, x = inks.theme, left
                if self._arrow is None and self._value is not None:
                    x += (
                        inks.text(painter, self._value.name, Point(x, y), WORDS, theme.color("dim"))
                        + 10 * unit
                    )
                x += inks.text(painter, reading.echo, Point(x, y), ECHO, theme.color("text"))
                self._paint_standing(painter, Point(x + 10 * unit, y))
                y += 26 * unit
            y = self._paint_sentence(painter, left, y)
            for line in self._lines:
                self._paint_line(painter, line, left, y)
                y += 22 * unit
            self._paint_hints(painter, left)
            foot = self.height() - 46 * unit
            if self._other.isVisible():
                self._other.move(round(left), round(foot))
                beside = left + self._other.width() + 8 * unit
                self._paint_key(painter, "Ctrl+Enter", beside, foot + self._other.height() / 2)
            if self._keep.isVisible():
                self._keep.move(round(left), round(foot - self._other_height() * unit))

    def _paint_ground(self, painter: QPainter) -> None:
        theme, unit = self._inks.theme, self._inks.unit
        beak = 8 * unit
        body = QRectF(beak, 1, self.width() - beak - 3, self.height() - 6)
        shade = theme.color("plot" if theme.dark else "outline", 0.55 if theme.dark else 0.35)
        outlined(painter, body.translated(2, 4), 7 * unit, shade, None)
        outlined(painter, body, 7 * unit, theme.color("raised"), QPen(theme.color("outline"), 1.2))
        if self._arrow is None:
            return
        y = min(max(self._arrow, 14 * unit), self.height() - 20 * unit)
        tip = [QPointF(beak + 1.2, y - 6 * unit), QPointF(1, y), QPointF(beak + 1.2, y + 6 * unit)]
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(theme.color("raised"))
        painter.drawPolygon(QPolygonF(tip))
        painter.setPen(QPen(theme.color("outline"), 1.2))
        painter.drawPolyline(QPolygonF([QPointF(tip[0].x() - 0.6, tip[0].y()), tip[1], tip[2]]))

    def _paint_standing(self, painter: QPainter, at: Point) -> None:
        reading = self._reading
        if reading is None or reading.sentence or reading.in_series is None:
            return
        theme = self._inks.theme
        role = "passes" if reading.in_series else "warns"
        self._inks.text(painter, self._standing(), at, WORDS, theme.color(role))

    def _paint_sentence(self, painter: QPainter, left: float, y: float) -> float:
        reading, inks, unit = self._reading, self._inks, self._inks.unit
        lines = self._sentence_lines()
        if reading is None or not lines:
            return y
        sign = Sign.FAILS if reading.standing is Standing.REFUSED else Sign.WARNS
        draw_sign(painter, QRectF(left, y - 8 * unit, 15 * unit, 15 * unit), sign, inks.theme)
        for line in lines:
            inks.text(painter, line, Point(left + 23 * unit, y), WORDS, inks.theme.color("text"))
            y += 20 * unit
        return y + 4 * unit

    def _paint_line(self, painter: QPainter, line: Line, left: float, y: float) -> None:
        inks, unit, theme = self._inks, self._inks.unit, self._inks.theme
        width = inks.text(painter, line.name, Point(left, y), WORDS, theme.color("text"))
        if line.warn:
            box = QRectF(left + width + 6 * unit, y - 8 * unit, 15 * unit, 15 * unit)
            draw_sign(painter, box, Sign.WARNS, theme)
        right = self.width() - 20 * unit
        ink = theme.color("warns" if line.warn else "text")
        new = inks.text(painter, line.after, Point(right, y), FIGURE_NEW, ink, Align.RIGHT)
        arrow = right - max(new, inks.measure("0.000 V", FIGURE_NEW)) - 16 * unit
        inks.text(painter, "→", Point(arrow, y), FIGURE, theme.color("dim"), Align.CENTRE)
        before = Point(arrow - 13 * unit, y)
        inks.text(painter, line.before, before, FIGURE, theme.color("dim"), Align.RIGHT)

    def _paint_hints(self, painter: QPainter, left: float) -> None:
        unit, theme = self._inks.unit, self._inks.theme
        hints = self._hints()
        if not hints:
            return
        y = self.height() - (25 + self._other_height()) * unit
        painter.setPen(QPen(theme.color("hairline"), 1.0))
        rule = round(y - 17 * unit)
        painter.drawLine(round(9 * unit), rule, self.width() - 5, rule)
        x = left
        for key, words in hints:
            self._paint_hint(painter, key, words, x, y)
            x += self._hint_width(key, words)

    def _hint_width(self, key: str, words: str) -> float:
        """Return how wide a key with its words is, with the room to the next one. [px]"""
        measure = self._inks.measure
        return measure(key, CAP) + measure(words, _hint_face(words)) + 22 * self._inks.unit

    def _paint_hint(self, painter: QPainter, key: str, words: str, x: float, y: float) -> None:
        width = self._paint_key(painter, key, x, y)
        face, at = _hint_face(words), Point(x + width + 5 * self._inks.unit, y)
        self._inks.text(painter, words, at, face, self._inks.theme.color("text" if face.mono else "dim"))

    def _paint_key(self, painter: QPainter, key: str, x: float, y: float) -> float:
        """Paint the cap of a key; return its width. [px]"""
        inks, unit, theme = self._inks, self._inks.unit, self._inks.theme
        width = inks.measure(key, CAP) + 8 * unit
        box = QRectF(x, y - 8.5 * unit, width, 17 * unit)
        outlined(painter, box, 3 * unit, None, QPen(theme.color("outline"), 1.0))
        inks.text(painter, key, Point(x + width / 2, y), CAP, theme.color("dim"), Align.CENTRE)
        return width


def _hint_face(words: str) -> Face:
    """Return the face of what a key does: of a figure, or of words."""
    return FIGURE_NEW if words[:1].isdigit() else HINT


def _short(value: Value, number: float) -> str:
    """Return a value without its unit, as short as it can be written."""
    return value.text(number).removesuffix(value.unit).strip().replace(" ", "")
