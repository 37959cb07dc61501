"""The painted parts of the bar: mark and name, project, chain of linked channels, finder field."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFontMetricsF, QKeyEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.icons import draw_icon
from workbench.gui.widgets import Control, draw_text
from workbench.gui.widgets.control import draw_chevron, outlined

__all__ = ["Brand", "Chain", "FinderField", "ProjectName", "Rule"]


class Brand(QWidget):
    """The mark and, where there is room, the name."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self._wide = True
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def set_wide(self, *, wide: bool) -> None:
        """Show or hide the name beside the mark."""
        self._wide = wide
        self._restyle()

    def _restyle(self) -> None:
        words = QFontMetricsF(self._bench.type.sans(1.14, 600)).horizontalAdvance("Backporch")
        self.setFixedSize(
            self._bench.px(36) + (round(words) + self._bench.px(14) if self._wide else 0), self._bench.px(30)
        )
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, px = self._bench.theme, self._bench.px
        mark = QRectF(0, (self.height() - px(24)) / 2, px(34), px(24))
        with QPainter(self) as painter:
            draw_icon(painter, "logo", mark, theme.color("text"), theme)
            if self._wide:
                words = QRectF(self.rect()).adjusted(px(48), 0, 0, 0)
                draw_text(painter, words, "Backporch", self._bench.type.sans(1.14, 600), theme.color("text"))


class Rule(QWidget):
    """A short hairline between two groups."""

    def __init__(self, bench: Bench) -> None:
        super().__init__()
        self._bench = bench
        self.setFixedWidth(bench.px(9))

    def paintEvent(self, _event: QPaintEvent) -> None:
        middle, half = self.width() // 2, self._bench.px(12)
        with QPainter(self) as painter:
            painter.setPen(self._bench.theme.color("hairline"))
            painter.drawLine(middle, self.height() // 2 - half, middle, self.height() // 2 + half)


class ProjectName(Control):
    """The project's name; a click opens what can be done with its file."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(bench, "", parent)
        self._room, self._saved = 220, ""

    def set_name(self, name: str) -> None:
        """Show the name."""
        if name != self.text():
            self.setText(name)
            self.setAccessibleName(f"Project {name}: file menu")
            self._tell()
            self.updateGeometry()

    def say_saved(self, text: str) -> None:
        """Say in the tip how the project stands to its file: a narrow bar has no room for it."""
        self._saved = text
        self._tell()

    def _tell(self) -> None:
        self.setToolTip(f"{self.text()}, {self._saved}: open, save, export, preferences")

    def set_room(self, design_px: int) -> None:
        """Shorten a name that is wider than this."""
        if design_px != self._room:
            self._room = design_px
            self.updateGeometry()

    def sizeHint(self) -> QSize:
        words = QFontMetricsF(self.bench.type.sans(1.0, 600)).horizontalAdvance(self.text())
        room = min(words, self.bench.px(self._room))
        return QSize(round(room) + self.bench.px(8 + 22) + 1, self.bench.px(30))

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, px = self.bench.theme, self.bench.px
        box = QRectF(self.rect())
        with QPainter(self) as painter:
            if self.pointed or self.isDown():
                outlined(painter, box, px(5), theme.lit("window"), None)
            words = box.adjusted(px(6), 0, -px(20), 0)
            draw_text(
                painter, words, self.text(), self.bench.type.sans(1.0, 600), theme.color("text"), elide=True
            )
            centre = QPointF(box.right() - px(10), box.center().y())
            draw_chevron(painter, centre, px(3.5), QPen(theme.color("dim"), 1.4))


class Chain(QWidget):
    """The sign of linked channels: two links joined, or apart."""

    def __init__(self, bench: Bench) -> None:
        super().__init__()
        self._bench = bench
        self._linked = True
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def set_linked(self, *, linked: bool) -> None:
        """Show the links joined or apart."""
        self._linked = linked
        self.update()

    def _restyle(self) -> None:
        self.setFixedSize(self._bench.px(20), self._bench.px(20))

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme = self._bench.theme
        with QPainter(self) as painter:
            name = "link" if self._linked else "apart"
            draw_icon(
                painter, name, QRectF(self.rect()), theme.color("text" if self._linked else "dim"), theme
            )


class FinderField(Control):
    """Looks like a field; a click, a letter or Ctrl+K opens the finder over it."""

    asked = Signal(str)
    """The letters that were typed on it."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench, "Find a command or a part")
        policy = self.sizePolicy()
        policy.setHorizontalPolicy(policy.Policy.Expanding)
        self.setSizePolicy(policy)
        self.keys = "Ctrl K"
        self.clicked.connect(lambda: self.asked.emit(""))

    def sizeHint(self) -> QSize:
        return QSize(self.bench.px(300), self.bench.px(30))

    def minimumSizeHint(self) -> QSize:
        return QSize(self.bench.px(116), self.bench.px(30))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        text = event.text()
        if text and text.isprintable() and text != " ":
            self.asked.emit(text)
            return
        super().keyPressEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, type_, px = self.bench.theme, self.bench.type, self.bench.px
        box = QRectF(self.rect())
        small = type_.sans(0.82)
        width = type_.width(self.keys, small) + px(12)
        key = QRectF(box.right() - px(7) - width, px(6), width, box.height() - px(12))
        with QPainter(self) as painter:
            fill = theme.mixed("plot", "accent", 0.08) if self.pointed else theme.color("plot")
            outlined(painter, box, px(5), fill, QPen(theme.color("outline"), 1.1))
            words = box.adjusted(px(11), 0, -width - px(14), 0)
            draw_text(painter, words, self.text(), type_.sans(), theme.color("dim"), elide=True)
            outlined(painter, key, px(3), None, QPen(theme.color("outline"), 1.0))
            centre = Qt.AlignmentFlag.AlignHCenter
            draw_text(painter, key, self.keys, small, theme.color("dim"), align=centre)
