"""The bar at the top: the project and its file, undo, mode, ladder, link, finder, projector."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QFontMetricsF,
    QPainter,
    QPaintEvent,
    QPen,
    QRadialGradient,
    QResizeEvent,
)
from PySide6.QtWidgets import QHBoxLayout, QStackedLayout, QWidget

from workbench.circuit.ladders import Topology
from workbench.gui.bench import Bench
from workbench.gui.cards.modes import mode_title
from workbench.gui.icons import draw_icon
from workbench.gui.widgets import Button, CheckBox, Choice, Control, Words, draw_text
from workbench.gui.widgets.control import draw_chevron, outlined
from workbench.gui.widgets.icon_button import IconButton
from workbench.pipeline.result import Result
from workbench.project.document import Channel, Project

__all__ = ["TopBar", "ladder_title"]

HEIGHT = 52
PROJECTOR_HEIGHT = 38
WIDE = 1500
"""Width from which captions and names have room. [design px]"""

TOPOLOGY_WORDS = {
    Topology.WEIGHTED: "weighted",
    Topology.R2R: "R-2R",
    Topology.SEGMENTED: "segmented",
    Topology.CUSTOM: "of its own",
}


def ladder_title(result: Result) -> str:
    """Return the ladder as the bar names it: ``weighted 5·5·5``."""
    shapes = [result.channels[channel].topology for channel in Channel]
    words = TOPOLOGY_WORDS[shapes[0]] if len(set(shapes)) == 1 else "mixed"
    return f"{words} {'·'.join(str(result.channels[channel].network.bits) for channel in Channel)}"


class TopBar(QWidget):
    """Shows what the project is called, what mode and ladder it has; everything in it is a command."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self.bench_row = BenchRow(bench, self)
        self.projector_row = ProjectorRow(bench, self)
        self._rows = QStackedLayout(self)
        self._rows.setContentsMargins(0, 0, 0, 1)
        self._rows.addWidget(self.bench_row)
        self._rows.addWidget(self.projector_row)
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def show_result(self, project: Project, result: Result) -> None:
        """Name the project, its mode and its ladder."""
        self.bench_row.name.set_name(project.name)
        self.bench_row.mode.set_value(mode_title(project.mode))
        self.bench_row.ladder.set_value(ladder_title(result))
        self.bench_row.linked.setChecked(project.linked)
        self.bench_row.chain.set_linked(linked=project.linked)
        self.projector_row.name.say(project.name)
        self.projector_row.mode.say(mode_title(project.mode))

    def say_saved(self, text: str) -> None:
        """Say how the project stands to its file."""
        self.bench_row.saved.say(text)

    def say_history(self, undo: str) -> None:
        """Name the step that undo would undo."""
        self.bench_row.say_history(undo)

    def _restyle(self) -> None:
        self._rows.setCurrentWidget(self.projector_row if self._bench.projecting else self.bench_row)
        self.setFixedHeight(self._bench.px(PROJECTOR_HEIGHT if self._bench.projecting else HEIGHT))

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme, px = self._bench.theme, self._bench.px
        lamp = QPointF(px(41), self.height() / 2 - px(6))
        light = QRadialGradient(lamp, px(46))
        light.setColorAt(0.0, theme.color("accent", theme.light_alpha * 1.25))
        light.setColorAt(0.45, theme.color("accent", theme.light_alpha * 0.4))
        light.setColorAt(1.0, theme.color("accent", 0.0))
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), theme.color("window"))
            painter.fillRect(QRectF(0, 0, px(100), self.height()), light)
            painter.setPen(theme.color("hairline"))
            painter.drawLine(0, self.height() - 1, self.width(), self.height() - 1)


class BenchRow(QWidget):
    """The bar as it is at the desk."""

    def __init__(self, bench: Bench, parent: QWidget) -> None:
        super().__init__(parent)
        self._bench = bench
        self.brand = Brand(bench)
        self.name = ProjectName(bench)
        self.saved = Words(bench, "", size=0.9, role="dim")
        self.undo = IconButton(bench, "undo", "Undo")
        self.undo_name = Words(bench, "", size=0.9, role="dim")
        self.redo = IconButton(bench, "redo", "Redo")
        self.mode = Choice(bench, "Mode")
        self.ladder = Choice(bench, "Ladder")
        self.chain = Chain(bench)
        self.linked = CheckBox(bench, "channels linked")
        self.finder = FinderField(bench)
        self.projector = Button(bench, "Projector")
        self._row = QHBoxLayout(self)
        self._row.addWidget(self.brand)
        self._rules = [Rule(bench), Rule(bench)]
        self._row.addWidget(self._rules[0])
        file_and_history = (self.name, self.saved, self._rules[1], self.undo, self.undo_name, self.redo)
        for widget in (*file_and_history, self.mode, self.ladder, self.chain, self.linked):
            self._row.addWidget(widget)
        self._row.addStretch(1)
        self._row.addWidget(self.finder, 20)
        self._row.addWidget(self.projector)
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def _restyle(self) -> None:
        px = self._bench.px
        self._row.setContentsMargins(px(20), 0, px(20), 0)
        self._row.setSpacing(px(10))
        self.finder.setMaximumWidth(px(380))
        self._fold()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fold()

    def say_history(self, undo: str) -> None:
        """Name the step that undo would undo, where there is room."""
        self.undo_name.say(undo)
        self._fold()

    def _fold(self) -> None:
        """Leave the captions away where the width is short; the names go to tool tips."""
        wide = self.width() >= self._bench.px(WIDE)
        self.brand.set_wide(wide=wide)
        self._rules[0].setVisible(wide)
        self.undo_name.setVisible(wide and bool(self.undo_name.text()))
        self.mode.set_caption_shown(shown=wide)
        self.ladder.set_caption_shown(shown=wide)
        self.chain.setVisible(wide)
        self.linked.setText("channels linked" if wide else "linked")
        self.linked.updateGeometry()


class ProjectorRow(QWidget):
    """The bar as a class sees it: the name, the mode, and how to leave."""

    def __init__(self, bench: Bench, parent: QWidget) -> None:
        super().__init__(parent)
        self._bench = bench
        self.brand = Brand(bench)
        self.name = Words(bench, "", weight=600)
        self.mode = Words(bench, "", role="dim")
        self._row = QHBoxLayout(self)
        self._row.addWidget(self.brand)
        self._row.addWidget(self.name)
        self._row.addWidget(self.mode)
        self._row.addStretch(1)
        self._row.addWidget(Words(bench, "Esc leaves the projector", role="dim"))
        self.brand.set_wide(wide=False)
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def _restyle(self) -> None:
        px = self._bench.px
        self._row.setContentsMargins(px(12), 0, px(14), 0)
        self._row.setSpacing(px(18))


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
        self.setToolTip("Open, save, export, preferences")

    def set_name(self, name: str) -> None:
        """Show the name."""
        if name != self.text():
            self.setText(name)
            self.setAccessibleName(f"Project {name}: file menu")
            self.updateGeometry()

    def sizeHint(self) -> QSize:
        words = QFontMetricsF(self.bench.type.sans(1.0, 600)).horizontalAdvance(self.text())
        room = min(words, self.bench.px(220))
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
        return QSize(self.bench.px(160), self.bench.px(30))

    def keyPressEvent(self, event: object) -> None:
        text = event.text()  # type: ignore[attr-defined]
        if text and text.isprintable() and text != " ":
            self.asked.emit(text)
            return
        super().keyPressEvent(event)  # type: ignore[arg-type]

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
