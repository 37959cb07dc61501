"""What a monitor's EDID says: who it is, what it takes, its modes, and every damage by name."""

from PySide6.QtCore import QRectF, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QVBoxLayout, QWidget

from workbench.gui.bench import Bench
from workbench.gui.mode_title import mode_title
from workbench.gui.widgets import Button, ButtonKind, Sign, Words, draw_sign
from workbench.gui.widgets.figure_table import Column, FigureRow, FigureTable
from workbench.project.document import Project
from workbench.project.edits.monitor import holds_limits, use_limits
from workbench.project.edits.timing import set_mode
from workbench.timing.edges import same_signal
from workbench.timing.edid.ranges import outside
from workbench.timing.edid.values import Edid
from workbench.timing.edid.words import extension_words, identity_words, input_words, limits_words
from workbench.timing.mode import Mode

__all__ = ["EdidPanel", "mode_rows_of"]

EMPTY = (
    "Open the EDID of your monitor, binary or hex text, or drop the file on the window: it says which modes "
    "the monitor takes and within which rates."
)
COLUMNS = (
    Column("mode", "1024 × 768 · 87 Hz interlaced", mono=False, right=False),
    Column("clock MHz", "000.000"),
    Column("line kHz", "000.000"),
    Column("field Hz", "000.00"),
    Column("source", "detailed timing 1, DMT", mono=False, right=False, takes_rest=True),
)


_LOW, _ROOM_BESIDE = 240, 240
"""On a part lower than the one, words for which the table leaves the other stand beside it.
[px at 14 px text]"""


class EdidPanel(QWidget):
    """Shows one EDID; a mode of it can be taken, and its limits."""

    open_asked = Signal()
    forget_asked = Signal()

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.edid: Edid | None = None
        self._shown: tuple[Edid | None, Mode | None] = (None, None)
        self.setAccessibleName("What the monitor says")
        self.open = Button(bench, "Open …", ButtonKind.USUAL)
        self.use = Button(bench, "Use its limits", ButtonKind.REMEDY)
        self.forget = Button(bench, "Forget", ButtonKind.QUIET)
        self.identity = Words(bench, weight=500)
        self.input = Words(bench, size=0.9, role="dim")
        self.limits = Words(bench, size=0.9, role="dim")
        self.empty = Words(bench, EMPTY, role="dim")
        self.table = FigureTable(bench, "Modes the monitor takes", COLUMNS)
        self.damages = Damages(bench)
        self._lay_out()
        self.open.clicked.connect(self.open_asked)
        self.forget.clicked.connect(self.forget_asked)
        self.use.clicked.connect(self._use_limits)
        self.table.picked.connect(self._take_mode)
        self.table.clicked.connect(lambda _index: self._take_mode(self.table.current))
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def show_edid(self, edid: Edid | None) -> None:
        """Show another EDID, or that there is none."""
        self.edid = edid
        self.empty.setVisible(edid is None)
        for widget in (self.identity, self.input, self.limits, self.table, self.forget):
            widget.setVisible(edid is not None)
        self.use.setVisible(edid is not None and edid.limits is not None and edid.limits.is_whole)
        self.damages.say_all(() if edid is None else _remarks(edid))
        if edid is not None:
            checksum = "checksum right" if edid.checksum_ok else "checksum wrong"
            size = f", {edid.size_cm[0]} × {edid.size_cm[1]} cm" if edid.size_cm else ""
            self.identity.say(f"{identity_words(edid)}{size} · EDID {edid.version}, {checksum}")
            self.input.say(f"Input: {input_words(edid)}.")
            self.limits.say(f"Takes {limits_words(edid.limits)}.")
            self._show_modes(self.bench.session.project.mode)

    def show_project(self, project: Project) -> None:
        """Light the mode in force, and say whether the limits in force are this monitor's."""
        if (self.edid, project.mode) != self._shown:
            self._show_modes(project.mode)
        if self.edid is None or self.edid.limits is None or not self.edid.limits.is_whole:
            return
        held = holds_limits(project, self.edid.limits)
        self.use.setEnabled(not held)
        self.use.setText("Its limits are in use" if held else "Use its limits")
        self.use.updateGeometry()

    def _show_modes(self, in_force: Mode) -> None:
        """List the modes; lit is the one in force, or none."""
        self._shown = self.edid, in_force
        modes = self.edid.modes if self.edid else ()
        lit = next((place for place, mode in enumerate(modes) if same_signal(mode, in_force)), -1)
        self.table.clearSelection()
        self.table.show_rows(mode_rows_of(self.edid, lit) if self.edid else (), current=lit)

    def _lay_out(self) -> None:
        self._head = QHBoxLayout()
        self._head.addWidget(Words(self.bench, "What it says of itself", caps=True, role="dim"))
        self._head.addStretch(1)
        for button in (self.forget, self.use, self.open):
            self._head.addWidget(button)
        self._column, self._words = QVBoxLayout(self), QVBoxLayout()
        self._column.addLayout(self._head)
        for words in (self.identity, self.input, self.limits, self.damages):
            words.setWordWrap(True)
            self._words.addWidget(words)
        self._words.addStretch(1)
        self.empty.setWordWrap(True)
        self._column.addWidget(self.empty, 1, Qt.AlignmentFlag.AlignTop)
        self._body = QBoxLayout(QBoxLayout.Direction.TopToBottom)
        self._body.addLayout(self._words)
        self._body.addWidget(self.table, 1)
        self._column.addLayout(self._body, 1)

    def fit(self, room: int) -> None:
        """Put the modes beside the words where the height is short and the width is not. [px]"""
        px, directions = self.bench.px, QBoxLayout.Direction
        table = self.table.wanted_width()
        beside = room < px(_LOW) and self.width() >= table + px(_ROOM_BESIDE)
        self.table.setMinimumWidth(table if beside else 0)
        self._body.setDirection(directions.LeftToRight if beside else directions.TopToBottom)
        self._body.setSpacing(px(20 if beside else 5))
        self._body.setStretch(0, 1 if beside else 0)
        self.table.setMinimumHeight(px(80 if beside else 110))

    def _use_limits(self) -> None:
        if self.edid is not None and self.edid.limits is not None:
            limits = self.edid.limits
            self.bench.apply("Use this monitor's limits", lambda project: use_limits(project, limits))

    def _take_mode(self, mode: object) -> None:
        if isinstance(mode, Mode):
            self.bench.apply(
                f"Choose {mode_title(mode)}", lambda project: set_mode(project, mode), origin=self
            )
            # One that could not be taken is not lit either.
            self._show_modes(self.bench.session.project.mode)

    def _restyle(self) -> None:
        px = self.bench.px
        self._column.setContentsMargins(0, 0, px(8), 0)
        for column in (self._column, self._words):
            column.setSpacing(px(5))
        self._head.setSpacing(px(8))


class Damages(Words):
    """What is wrong with an EDID, or worth knowing, a line each, behind one warning sign."""

    def __init__(self, bench: Bench) -> None:
        super().__init__(bench, size=0.9)
        self._own_bench = bench
        self.setWordWrap(True)
        self.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
        bench.theme_changed.connect(self._indent)
        self._indent()

    def say_all(self, sentences: tuple[str, ...]) -> None:
        """Show the sentences; nothing where there are none."""
        self.say("\n".join(sentences))
        self.setVisible(bool(sentences))

    def _indent(self) -> None:
        self.setContentsMargins(self._own_bench.px(24), 0, 0, 0)

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        side = self._own_bench.px(15)
        top = (self.fontMetrics().lineSpacing() - side) / 2
        with QPainter(self) as painter:
            draw_sign(painter, QRectF(0, top, side, side), Sign.WARNS, self._own_bench.theme)


def mode_rows_of(edid: Edid, in_force: int = -1) -> list[FigureRow]:
    """Return a row for each mode an EDID lists, the preferred one first; one of them may be in force."""
    return [_row(edid, mode, first=n == 0, in_use=n == in_force) for n, mode in enumerate(edid.modes)]


def _row(edid: Edid, mode: Mode, *, first: bool, in_use: bool) -> FigureRow:
    excluded = outside(mode, edid.limits) if edid.limits else ()
    notes = (
        ("in use", in_use),
        ("outside its own limits", bool(excluded)),
        ("preferred", first and not excluded),
    )
    note = ", ".join(words for words, said in notes if said)
    source = mode.source.replace("EDID ", "").replace("VESA ", "")
    cells = (
        mode_title(mode),
        f"{mode.pixel_clock_hz / 1e6:.3f}",
        f"{mode.line_rate_hz / 1e3:.3f}",
        f"{mode.field_rate_hz:.2f}",
        f"{note}: {source}" if note else source,
    )
    tip = " ".join(excluded) or ("Interlaced modes are not simulated." if mode.interlaced else mode.source)
    return FigureRow(cells, mode, Sign.WARNS if excluded else None, dim=mode.interlaced, tip=tip)


def _remarks(edid: Edid) -> tuple[str, ...]:
    blocks = (f"Extension block: {extension_words(extension)}." for extension in edid.extensions)
    return (*edid.damages, *blocks)
