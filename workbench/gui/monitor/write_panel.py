"""The mode as bytes: its 18-byte descriptor, and a base block for a display of one's own."""

from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication, QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from workbench.errors import WorkbenchError
from workbench.files.atomic import write_atomic
from workbench.gui.bench import Bench
from workbench.gui.monitor.own_display import OwnDisplay, own_block, range_words
from workbench.gui.settings import EXPORT_FOLDER
from workbench.gui.timing.entry import Entry
from workbench.gui.widgets import Button, ButtonKind, Words
from workbench.project.document import Project
from workbench.timing.edid.descriptor import descriptor_losses, write_descriptor
from workbench.timing.edid.text import c_array, hex_text
from workbench.timing.mode import Mode

__all__ = ["WritePanel"]

_KINDS = "EDID, binary (*.bin);;EDID, hex text (*.hex)"
_AS_TEXT = (".hex", ".txt")
"""Endings of a name under which hex text is written; under any other the bytes themselves."""


_ROOM_BESIDE = 640
"""Width from which the display stands beside the mode. [px at 14 px text]"""


class WritePanel(QWidget):
    """Shows the bytes of a project's mode; copies and saves them."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.setAccessibleName("Write an EDID")
        self.own = OwnDisplay()
        self._mode: Mode | None = None
        self.hex = Words(bench, mono=True, size=0.95)
        self.losses = Words(bench, size=0.9, role="dim")
        self.copy_hex = Button(bench, "Copy hex", ButtonKind.USUAL)
        self.copy_c = Button(bench, "Copy as C", ButtonKind.USUAL)
        self.save_descriptor = Button(bench, "Save …", ButtonKind.USUAL)
        self.save_block = Button(bench, "Save its base block …", ButtonKind.USUAL)
        self.range = Words(bench, size=0.9, role="dim")
        self.refusal = Words(bench, size=0.9, role="fails")
        self.entries = {
            "maker": self._entry("Maker, three letters", "maker"),
            "name": self._entry("Name of the display", "name"),
            "width_cm": self._entry("Width of the picture in cm", "width_cm"),
            "height_cm": self._entry("Height of the picture in cm", "height_cm"),
        }
        self._lay_out()
        self.copy_hex.clicked.connect(lambda: self._copy(self._bytes().hex(" "), "hex"))
        self.copy_c.clicked.connect(
            lambda: self._copy(c_array(self._bytes(), "detailed_timing"), "a C array")
        )
        self.save_descriptor.clicked.connect(lambda: self._save(self._bytes(), "mode-descriptor.bin"))
        self.save_block.clicked.connect(self._save_block)
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def show_project(self, project: Project) -> None:
        """Show the descriptor of a project's mode, or why there is none."""
        self.range.say(range_words(project))
        if project.mode is self._mode:
            return
        self._mode = project.mode
        try:
            data = write_descriptor(project.mode)
            losses = descriptor_losses(project.mode)
        except WorkbenchError as reason:
            data, losses = b"", (str(reason),)
        self.hex.say(f"{data[:9].hex(' ')}\n{data[9:].hex(' ')}" if data else "– no descriptor –")
        self.losses.say("\n".join(losses) or "Nothing of the mode is lost in it.")
        for button in (self.copy_hex, self.copy_c, self.save_descriptor, self.save_block):
            button.setEnabled(bool(data))

    def _entry(self, name: str, field: str) -> Entry:
        entry = Entry(self.bench, name, lambda text: self._take(field, text))
        entry.show_value(str(getattr(self.own, field)))
        entry.told.connect(lambda reason: self.refusal.say(reason))
        return entry

    def _take(self, field: str, text: str) -> None:
        self.own = self.own.with_text(field, text)
        self.entries[field].show_value(str(getattr(self.own, field)))

    def _lay_out(self) -> None:
        bench = self.bench
        self._buttons, self._grid = QHBoxLayout(), QGridLayout()
        for button in (self.copy_hex, self.copy_c, self.save_descriptor):
            self._buttons.addWidget(button)
        self._buttons.addStretch(1)
        for row, (name, field) in enumerate((("maker", "maker"), ("name", "name"))):
            self._grid.addWidget(Words(bench, name), row, 0)
            self._grid.addWidget(self.entries[field], row, 1, 1, 3)
        self._grid.addWidget(Words(bench, "picture, cm"), 2, 0)
        self._grid.addWidget(self.entries["width_cm"], 2, 1)
        self._grid.addWidget(Words(bench, "×", role="dim"), 2, 2, Qt.AlignmentFlag.AlignHCenter)
        self._grid.addWidget(self.entries["height_cm"], 2, 3)
        self._body = QBoxLayout(QBoxLayout.Direction.TopToBottom, self)
        mode, display = self._halves = QVBoxLayout(), QVBoxLayout()
        self._title = Words(bench, "This mode in 18 bytes", caps=True, role="dim")
        self._second_title = Words(bench, "A display of your own", caps=True, role="dim")
        for widget in (self._title, self.hex, self.losses):
            mode.addWidget(widget)
        mode.addLayout(self._buttons)
        display.addWidget(self._second_title)
        display.addLayout(self._grid)
        display.addWidget(self.range)
        display.addWidget(self.save_block, 0, Qt.AlignmentFlag.AlignLeft)
        display.addWidget(self.refusal)
        for half in self._halves:
            half.addStretch(1)
            self._body.addLayout(half)
        for words in (self.hex, self.losses, self.range, self.refusal):
            words.setWordWrap(True)
        self._grid.setColumnStretch(4, 1)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        """Put the display beside the mode where there is the width for both."""
        px, directions = self.bench.px, QBoxLayout.Direction
        beside = self.width() >= px(_ROOM_BESIDE)
        self._body.setDirection(directions.LeftToRight if beside else directions.TopToBottom)
        self._body.setSpacing(px(36 if beside else 8))
        for half in range(2):
            self._body.setStretch(half, 1 if beside else half)
        # Beside each other, the two heads share a line.
        self._second_title.setMinimumHeight(self._title.height() if beside else 0)

    def _bytes(self) -> bytes:
        return write_descriptor(self.bench.session.project.mode)

    def _copy(self, text: str, what: str) -> None:
        QGuiApplication.clipboard().setText(text)
        self.bench.notice(f"Copied the descriptor as {what}.")

    def _save_block(self) -> None:
        try:
            block = own_block(self.own, self.bench.session.project)
        except WorkbenchError as reason:
            self.refusal.say(str(reason))
            return
        self.refusal.say("")
        self._save(block, f"{self.own.name.strip().replace('/', '-') or 'display'}.bin")

    def _save(self, data: bytes, name: str) -> None:
        if self.bench.dialogs is None:
            return
        kept = Path(self.bench.settings.get(EXPORT_FOLDER))
        folder = kept if kept.is_absolute() and kept.is_dir() else Path.home()
        path = self.bench.dialogs.save_path("Save", folder / name, _KINDS)
        if path is None:
            return
        text = path.suffix.lower() in _AS_TEXT
        try:
            write_atomic(path, f"{hex_text(data)}\n".encode("ascii") if text else data)
        except WorkbenchError as reason:
            self.bench.notice(str(reason), warning=True)
            return
        self.bench.settings.set(EXPORT_FOLDER, str(path.parent))
        self.bench.notice(f"Written: {path.name}, {len(data)} bytes{' as hex text' if text else ''}.")

    def _restyle(self) -> None:
        px = self.bench.px
        self._title.setFixedHeight(px(30))
        self._body.setContentsMargins(0, 0, px(8), 0)
        for half in self._halves:
            half.setSpacing(px(8))
        self._fit()
        self._buttons.setSpacing(px(8))
        self._grid.setHorizontalSpacing(px(8))
        self._grid.setVerticalSpacing(px(5))
        for field, entry in self.entries.items():
            entry.setFixedHeight(px(28))
            entry.setFixedWidth(px(64 if field.endswith("cm") else 156))
