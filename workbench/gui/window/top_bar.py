"""The bar at the top: the project and its file, undo, mode, ladder, link, finder, projector."""

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import (
    QPainter,
    QPaintEvent,
    QRadialGradient,
    QResizeEvent,
)
from PySide6.QtWidgets import QHBoxLayout, QStackedLayout, QWidget

from workbench.circuit.ladders import Topology
from workbench.gui.bench import LINK_TIP, Bench
from workbench.gui.mode_title import mode_title
from workbench.gui.widgets import Button, CheckBox, Choice, Words
from workbench.gui.widgets.icon_button import IconButton
from workbench.gui.window.bar_parts import Brand, Chain, FinderField, ProjectName, Rule
from workbench.pipeline.result import Result
from workbench.project.document import Channel, Project

__all__ = ["TopBar", "ladder_title"]

HEIGHT = 52
PROJECTOR_HEIGHT = 38
WIDE, NARROW = 1500, 1120
"""From the one captions and names have room, under the other what the tips say too goes. [design px]"""

TOPOLOGY_WORDS = {
    Topology.WEIGHTED: "weighted",
    Topology.R2R: "R-2R",
    Topology.SEGMENTED: "segmented",
    Topology.CUSTOM: "custom",
}

HELP = {
    "name": "The project's name. A click opens what can be done with its file: open, save, export, "
    "start from a template.",
    "undo": "Takes back the last step, which its tip names. Nothing is lost: redo does it again.",
    "redo": "Does the step again that was undone last.",
    "mode": "The display mode: how many pixels and lines, how long the porches and sync pulses, how "
    "fast. All figures of the scanline follow from it.",
    "ladder": "The shape of the networks and the bits of red, green and blue. A click makes new "
    "ladders; what they bring is shown before they are put in.",
    "linked": "While the channels are linked, there is one drawing, and every edit is made to red, green "
    "and blue alike. Linking takes over the channel that is drawn.",
    "finder": "Finds every command, part, page and display mode by a few letters of its name.",
    "projector": "Shows the same bench at 24 pt and more, on white, for a room. Esc leaves.",
}
"""What F1 says about each control, by its attribute."""


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
        bench.view.changed.connect(self._say_link)
        self._restyle()
        self._say_link()

    def show_result(self, project: Project, result: Result) -> None:
        """Name the project, its mode and its ladder."""
        self.bench_row.name.set_name(project.name)
        self.bench_row.mode.set_value(mode_title(project.mode))
        self.bench_row.ladder.set_value(ladder_title(result))
        self.bench_row.linked.setChecked(project.linked)
        self.bench_row.chain.set_linked(linked=project.linked)
        self._say_link()
        self.projector_row.name.say(project.name)
        self.projector_row.mode.say(mode_title(project.mode))

    def say_saved(self, text: str) -> None:
        """Say how the project stands to its file."""
        self.bench_row.saved.say(text)
        self.bench_row.name.say_saved(text)

    def say_history(self, undo: str) -> None:
        """Name the step that undo would undo."""
        self.bench_row.say_history(undo)

    def _say_link(self) -> None:
        """Say what a click on the box would do, and whose values would win."""
        self.bench_row.linked.setToolTip(f"{self._bench.link_words}. {LINK_TIP}")

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
        self.saved = Words(bench, "", size=0.9, role="dim", width_for="changes not saved")
        self.undo = IconButton(bench, "undo", "Undo")
        self.undo_name = Words(bench, "", size=0.9, role="dim", elided=True)
        self.redo = IconButton(bench, "redo", "Redo")
        self.mode = Choice(bench, "Mode")
        self.ladder = Choice(bench, "Ladder")
        self.chain = Chain(bench)
        self.linked = CheckBox(bench, "channels linked")
        self.finder = FinderField(bench)
        self.projector = Button(bench, "Projector")
        for attribute, text in HELP.items():
            getattr(self, attribute).setWhatsThis(text)
        self._row = QHBoxLayout(self)
        self._row.addWidget(self.brand)
        self._rules = [Rule(bench), Rule(bench)]
        self._row.addWidget(self._rules[0])
        file_and_history = (self.name, self.saved, self._rules[1], self.undo, self.redo, self.undo_name)
        for widget in (*file_and_history, self.mode, self.ladder, self.chain, self.linked):
            self._row.addWidget(widget)
        self._row.addStretch(1)
        self._row.addWidget(self.finder, 20)
        self._row.addWidget(self.projector)
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def _restyle(self) -> None:
        px = self._bench.px
        self.finder.setMaximumWidth(px(380))
        # A column of its own, so that nothing after it moves when another step is named.
        self.undo_name.setFixedWidth(px(130))
        self._fold()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fold()

    def say_history(self, undo: str) -> None:
        """Name the step that undo would undo, where there is room."""
        self.undo_name.say(undo)

    def _fold(self) -> None:
        """Leave the captions away where the width is short; the names go to tool tips."""
        px = self._bench.px
        wide, narrow = self.width() >= px(WIDE), self.width() < px(NARROW)
        self._row.setContentsMargins(px(12 if narrow else 20), 0, px(12 if narrow else 20), 0)
        self._row.setSpacing(px(6 if narrow else 10))
        self.brand.set_wide(wide=wide)
        self.name.set_room(220 if wide else 130)
        self.saved.setVisible(not narrow)
        self._rules[0].setVisible(wide)
        self._rules[1].setVisible(not narrow)
        self.undo_name.setVisible(wide)
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
