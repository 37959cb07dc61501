"""The Picture page: the picture, why the pixel that is looked at looks so, and what is set."""

from functools import partial

from PySide6.QtCore import QMimeData, QPoint, Qt
from PySide6.QtGui import QContextMenuEvent, QGuiApplication, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QFrame, QHBoxLayout, QMenu, QScrollArea, QStackedWidget, QWidget

from workbench.gui.actions import ActionSpec
from workbench.gui.bench import Bench
from workbench.gui.picture.images import Side
from workbench.gui.picture.monitor_panel import MonitorPanel
from workbench.gui.picture.scene_panel import ScenePanel
from workbench.gui.picture.screen import Screen
from workbench.gui.picture.verdict import Verdict
from workbench.gui.picture.view import PictureView
from workbench.gui.widgets import Button, ButtonKind, Words
from workbench.gui.widgets.caption import that_fits
from workbench.gui.working.chain import Chain
from workbench.gui.working.looked_at import looked_at
from workbench.pipeline.result import Result
from workbench.project.document import Channel, Project
from workbench.project.edits.picture import set_scanline

__all__ = ["PicturePage"]

_ASIDE = 258
"""Width of the column of settings. [design px]"""
_ROOM_FOR_WHY, _ROOM_TO_TEACH = 300, 575
"""What the picture leaves to the chain at least; on a projector pins and legs are to be seen. [design px]"""
_ROOM_FOR_VERDICT = 180
"""Lower pages have one line under the picture. [design px]"""
_ROOM_FOR_COLOURS = 880
_ROOM_FOR_ASIDE = 900
"""A narrower page, as on a projector, leaves the settings out. [design px]"""
_ROOM_FOR_BOTH = 1200
"""Width from which the chain has room beside the settings' column. [design px]"""
_FLAT = 26
"""Height that the settings take from the chain where they lie in a row above it. [design px]"""


class PicturePage(QWidget):
    """Shows a picture as sent and as a monitor makes it; a pixel chosen here is chosen everywhere."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.setAccessibleName("Picture")
        self.looking = Screen(bench, self)
        self._result: Result | None = None
        self._edge, self._flat = 0, False
        self._placed: tuple[str, ...] = ("",)
        self._had_image = False
        self.view = PictureView(bench, self)
        self.sides = {side: Button(bench, side.value, ButtonKind.SEGMENT) for side in Side}
        self.faults_button = Button(bench, "Faults …", ButtonKind.QUIET)
        self.verdict = Verdict(bench, self)
        self.title = Words(bench, "Why this pixel?", size=1.1, weight=600, parent=self)
        self.place = Words(bench, size=0.95, role="dim", parent=self)
        self.chain = Chain(bench, self)
        self.working = Button(bench, "Show the working", parent=self)
        self.scene = ScenePanel(bench)
        self.monitor = MonitorPanel(bench, self.looking)
        self.colours = Words(bench, size=0.95, role="dim")
        self._lay_out()
        self._connect()
        self._show_side(Side.SEEN)
        self._show_aside(0)
        self._arrange()

    # What is shown --------------------------------------------------------------------------

    def show_result(self, project: Project, result: Result) -> None:
        """Show a result's picture."""
        self._result = result
        self.looking.show(result)
        self.scene.show_project(project, result)
        counts = [project.channels[channel].n_codes for channel in Channel]
        self.colours.say(
            f"{counts[0] * counts[1] * counts[2]:,}".replace(",", "\u2009") + " combinations of codes"
        )
        self._arrange_anew(project.picture.image is not None)
        self._take_pixel()

    def _arrange_anew(self, image: bool) -> None:
        """Make room where an image brings settings or takes them away."""
        if self._lies_flat() != self._flat or image != self._had_image:
            self._had_image = image
            self._arrange()

    def action_specs(self) -> tuple[ActionSpec, ...]:
        """Return the page's rows of the command table."""
        return (
            ActionSpec(
                "picture.copy", "Copy the picture", self.copy, "Picture", tip="As it is shown, dot for dot."
            ),
            *(
                ActionSpec(
                    f"picture.{side.name.lower()}",
                    f"Picture: {side.value}",
                    partial(self._show_side, side),
                    "Picture",
                )
                for side in Side
            ),
        )

    def copy(self) -> None:
        """Copy the picture, dot for dot, with the working of its pixel as text."""
        if self.view.image is None or self._result is None:
            return
        data = QMimeData()
        data.setImageData(self.view.image)
        shown = looked_at(self._result, self.bench)
        if shown is not None:
            data.setText(shown.text)
        QGuiApplication.clipboard().setMimeData(data)
        self.bench.notice(f"Copied the picture {self.view.side.value}.")

    # Pointing -------------------------------------------------------------------------------

    def look_at(self, column: int, row: int) -> None:
        """Bring the scanline, the pins and the working to a pixel of the picture."""
        bench, number = self.bench, row + 1
        bench.view.hold(tuple(Channel), None)
        bench.apply(
            f"Show scanline {number}",
            lambda project: set_scanline(project, number),
            origin=self,
            quiet="scanline",
        )
        bench.view.look_at(bench.live.result.project.mode.h.blanking + column)
        self._take_pixel()

    def _take_pixel(self) -> None:
        """Follow the pixel that is looked at, wherever it was chosen."""
        if self._result is None or not self.isVisibleTo(self.window()):
            return
        project, view = self._result.project, self.bench.view
        number = self.bench.session.project.scanline
        column = None if view.pixel is None else view.pixel - project.mode.h.blanking
        inside = column is not None and column >= 0 and number <= project.mode.v.active
        self.view.show_pixel((column, number - 1) if inside and column is not None else None)
        shown = looked_at(self._result, self.bench)
        if shown is None:
            self._placed = ("this mode has no scanline: choose a progressive one", "no scanline")
            self.chain.show_pixel(None)
        else:
            self._placed = shown.placed
            self.chain.show_pixel(shown, shown.words)
        self._place_title()

    def _on_shot(self) -> None:
        shot = self.looking.shot
        if shot is None:
            return
        self.view.show_shot(shot)
        verdict = shot.look.verdict
        moved = shot.moved if self.bench.monitor.auto_adjust else (0, 0)
        self.verdict.show_verdict(verdict.standing, verdict.sentence, self.view.side, moved)
        self.monitor.show_monitor()

    def _show_side(self, side: Side) -> None:
        self.view.side = side
        for each, button in self.sides.items():
            button.setChecked(each is side)
        self._on_shot()

    def _show_aside(self, number: int) -> None:
        self._panels.setCurrentIndex(number)
        for index, button in enumerate(self._asides):
            button.setChecked(index == number)
        if self._lies_flat() != self._flat:
            self._arrange()

    # Layout ---------------------------------------------------------------------------------

    def _connect(self) -> None:
        for side, button in self.sides.items():
            button.clicked.connect(lambda _checked=False, side=side: self._show_side(side))
        for number, button in enumerate(self._asides):
            button.clicked.connect(lambda _checked=False, number=number: self._show_aside(number))
        self.view.picked.connect(self.look_at)
        self.view.let_go.connect(self.bench.session.release)
        self.working.clicked.connect(lambda: self.bench.actions.action("page.working").trigger())
        self.faults_button.clicked.connect(lambda: self.bench.actions.action("faults.list").trigger())
        self.looking.changed.connect(self._on_shot)
        self.bench.view.changed.connect(self._take_pixel)
        self.bench.theme_changed.connect(self._arrange)

    def _lay_out(self) -> None:
        bench = self.bench
        self._head = QWidget(self)
        row = QHBoxLayout(self._head)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(bench.px(2))
        for button in self.sides.values():
            row.addWidget(button)
        row.addStretch(1)
        row.addWidget(self.faults_button)
        self._aside = QWidget(self)
        self._aside_box = column = QBoxLayout(QBoxLayout.Direction.TopToBottom, self._aside)
        column.setContentsMargins(0, 0, 0, 0)
        self._tabs = QWidget()
        tabs = QHBoxLayout(self._tabs)
        tabs.setContentsMargins(0, 0, 0, 0)
        self._asides = [Button(bench, name, ButtonKind.SEGMENT) for name in ("Scene", "Monitor")]
        for button in self._asides:
            tabs.addWidget(button)
        tabs.addStretch(1)
        column.addWidget(self._tabs)
        self._panels, self._areas = QStackedWidget(), []
        for panel in (self.scene, self.monitor):
            area = QScrollArea()
            area.setWidgetResizable(True)
            area.setFrameShape(QFrame.Shape.NoFrame)
            area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
            area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
            area.setWidget(panel)
            area.viewport().setAutoFillBackground(False)
            panel.setAutoFillBackground(False)
            self._panels.addWidget(area)
            self._areas.append(area)
        column.addWidget(self._panels, 1)
        column.addWidget(self.colours)

    def _lies_flat(self) -> bool:
        """Return whether the settings lie in a row, on a narrow page that shows a card.

        A card has so few that the chain takes their column; on a wider page they stay where they are.
        """
        px, scene = self.bench.px, self._panels.currentWidget() is self._areas[0]
        card = self._result is not None and self._result.project.picture.image is None
        return scene and card and px(_ROOM_FOR_ASIDE) <= self.width() < px(_ROOM_FOR_BOTH)

    def _arrange(self) -> None:
        px, width, height = self.bench.px, self.width(), self.height()
        pad, top, head = px(20), px(8), px(28)
        aside = px(_ASIDE)
        roomy = width >= px(_ROOM_FOR_ASIDE)
        self._flat = flat = self._lies_flat()
        self._aside.setVisible(roomy)
        self._edge = width - aside - 2 * pad if roomy and not flat else width - 1
        foot = px(36) if height >= px(_ROOM_FOR_VERDICT) else px(20)
        high = max(px(40), height - top - head - foot - px(10))
        why = px(_ROOM_TO_TEACH if self.bench.projecting else _ROOM_FOR_WHY)
        most = max(px(200), self._edge - why - 2 * pad)
        wide = min(round(high * 4 / 3) + px(12), most)
        self.faults_button.setVisible(roomy)
        column = max(wide, self._head.sizeHint().width() + px(8))
        self._head.setGeometry(pad, top, column - px(8), head)
        self.view.setGeometry(pad, top + head + px(4), wide, high)
        self.verdict.setGeometry(pad, height - foot - px(4), column, foot)
        left = pad + column + px(24)
        room = self._edge - left - (pad if flat else px(16))
        above = top + px(36) + (px(_FLAT) if flat else 0)
        self.chain.setGeometry(left, above, room, height - above - px(8))
        hint = self.working.sizeHint()
        self.working.setVisible(self.chain.has_foot)
        self.working.setGeometry(
            left + room - hint.width(), height - hint.height() - px(14), hint.width(), hint.height()
        )
        self.chain.keep_free(hint.width() + px(12))
        self._place_title()
        if flat:
            self._aside.setGeometry(left, px(6), width - pad - left, px(32))
        else:
            self._aside.setGeometry(self._edge + pad, px(6), aside, height - top - px(4))
        directions = QBoxLayout.Direction
        self._aside_box.setDirection(directions.RightToLeft if flat else directions.TopToBottom)
        self._tabs.setFixedWidth(aside)
        self._aside_box.setSpacing(px(16) if flat else px(6))
        self.scene.set_row(row=flat)
        self.colours.setVisible(not flat or room >= px(_ROOM_FOR_COLOURS))
        self._fit_aside()
        self.update()

    def _fit_aside(self) -> None:
        """Bring all settings into sight, with their captions over them where there is room."""
        if self._flat:
            self.scene.set_low(low=True)
            return
        px, bar = self.bench.px, self._areas[0].verticalScrollBar().sizeHint().width()
        foot = self.colours.sizeHint().height() + px(6)
        height = self._aside.height() - self._tabs.sizeHint().height() - foot - px(6)
        for panel in (self.scene, self.monitor):
            panel.fit_into(px(_ASIDE) - bar, height)

    def _place_title(self) -> None:
        px = self.bench.px
        left, room = self.chain.x(), self.chain.width()
        title = self.title.sizeHint().width()
        with_title = that_fits(self._placed[:2], self.place.font(), room - title - px(20))
        self.place.say(with_title or that_fits(self._placed, self.place.font(), room) or self._placed[-1])
        hint = self.place.sizeHint().width()
        self.title.setVisible(title + hint + px(16) < room)
        top = self.chain.y() - px(32)
        self.title.setGeometry(left, top, title + px(4), px(26))
        start = left + room - hint - px(4) if self.title.isVisibleTo(self) else left
        self.place.setGeometry(start, top, hint + px(4), px(26))

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._arrange()

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        menu = QMenu(self)
        menu.addAction("Copy the picture", self.copy)
        for kind in ("picture-png", "picture-sent-png"):
            menu.addAction(self.bench.actions.action(f"file.export-{kind}"))
        menu.addSeparator()
        if self.bench.images is not None:
            menu.addAction("Load an image …", self.bench.images.choose)
            menu.addAction("Paste an image", self.bench.images.paste)
        menu.aboutToHide.connect(menu.deleteLater)
        menu.popup(event.globalPos())

    def paintEvent(self, _event: QPaintEvent) -> None:
        theme = self.bench.theme
        with QPainter(self) as painter:
            painter.fillRect(self.rect(), theme.color("panel"))
            if self._edge < self.width() - 1:
                painter.setPen(theme.color("hairline"))
                painter.drawLine(QPoint(self._edge, 0), QPoint(self._edge, self.height()))
