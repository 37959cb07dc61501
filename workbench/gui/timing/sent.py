"""How the picture is sent: pixels and lines repeated, and the code the channels idle at in blanking."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QWidget

from workbench.errors import EditError
from workbench.gui.bench import Bench
from workbench.gui.timing.entry import Entry
from workbench.gui.widgets import Button, ButtonKind, Words
from workbench.picture.scene import REPEATS
from workbench.project.document import Channel, Project
from workbench.project.edits.picture import set_blanking_code, set_repeats

__all__ = ["SentPicture"]

_WORDS = {1: "once", 2: "twice", 4: "4 times"}


class SentPicture(QWidget):
    """Shows a project's repeats and its code in blanking, and takes others."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.setAccessibleName("How the picture is sent")
        self.pixels = self._buttons("each pixel", lambda count: {"pixels": count})
        self.lines = self._buttons("each line", lambda count: {"lines": count})
        self.columns = Words(bench, size=0.9, role="dim")
        self.codes = {channel: self._entry(channel) for channel in Channel}
        self._lay_out()
        bench.theme_changed.connect(self._restyle)
        self._restyle()

    def show_project(self, project: Project) -> None:
        """Show how a project sends its picture."""
        picture, mode = project.picture, project.mode
        for buttons, held in ((self.pixels, picture.repeat_pixels), (self.lines, picture.repeat_lines)):
            for count, button in buttons.items():
                button.setChecked(count == held)
        columns, rows = picture.size(mode.h.active, mode.v.active)
        self.columns.say(f"a picture of {columns} × {rows}")
        for entry, code in zip(self.codes.values(), picture.blanking, strict=True):
            entry.show_value(str(code))

    def _buttons(self, noun: str, named) -> dict[int, Button]:
        made = {}
        for count in REPEATS:
            button = Button(self.bench, _WORDS[count], ButtonKind.SEGMENT)
            button.setAccessibleName(f"{noun} {_WORDS[count]}")
            button.clicked.connect(
                lambda _checked=False, count=count: self._repeat(noun, count, named(count))
            )
            made[count] = button
        return made

    def _entry(self, channel: Channel) -> Entry:
        return Entry(
            self.bench,
            f"Code of {channel.value} in blanking",
            lambda text: self._set_code(channel, _code(text)),
            step=lambda steps: self._set_code(channel, self._held(channel) + steps),
        )

    def _lay_out(self) -> None:
        bench = self.bench
        self.grid = QGridLayout(self)
        self.grid.addWidget(Words(bench, "Sent", caps=True, role="dim"), 0, 0)
        for column, (words, buttons) in enumerate((("each pixel", self.pixels), ("each line", self.lines))):
            self.grid.addWidget(Words(bench, words), 0, 1 + 2 * column)
            self.grid.addWidget(_row(*buttons.values()), 0, 2 + 2 * column)
        self.grid.addWidget(Words(bench, "code in blanking"), 1, 1)
        self._codes = _row(*self.codes.values())
        self.grid.addWidget(self._codes, 1, 2)
        self.grid.addWidget(self.columns, 1, 3, 1, 2)
        self.grid.setColumnStretch(5, 1)

    def _repeat(self, noun: str, count: int, counts: dict[str, int]) -> None:
        self.bench.apply(
            f"Send {noun} {_WORDS[count]}", lambda project: set_repeats(project, **counts), origin=self
        )

    def _held(self, channel: Channel) -> int:
        return self.bench.session.project.picture.blanking[list(Channel).index(channel)]

    def _set_code(self, channel: Channel, code: int) -> None:
        self.bench.session.apply(
            f"{channel.value.capitalize()} idles at code {code}",
            lambda project: set_blanking_code(project, channel, code),
            merge=f"idle {channel.value}",
            origin=self,
        )

    def _restyle(self) -> None:
        px = self.bench.px
        self.grid.setContentsMargins(0, px(4), 0, 0)
        self.grid.setHorizontalSpacing(px(14))
        self.grid.setVerticalSpacing(px(4))
        for entry in self.codes.values():
            entry.setFixedWidth(px(58))
            entry.setFixedHeight(px(28))


def _row(*widgets: QWidget) -> QWidget:
    holder = QWidget()
    line = QHBoxLayout(holder)
    line.setContentsMargins(0, 0, 0, 0)
    line.setSpacing(4)
    for widget in widgets:
        line.addWidget(widget, 0, Qt.AlignmentFlag.AlignLeft)
    line.addStretch(1)
    return holder


def _code(text: str) -> int:
    digits = text.strip()
    if not (digits.isascii() and digits.isdigit() and len(digits) < 6):
        raise EditError(f"“{digits[:20]}” is no code: type a whole number, 0 for black.")
    return int(digits)
