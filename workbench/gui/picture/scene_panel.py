"""What is shown and how it becomes codes: card or image, fit, dither, transfer."""

from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QWidget

from workbench.errors import FileError
from workbench.files.transfer_table import read_transfer
from workbench.gui.bench import Bench
from workbench.gui.picture.labelled import LabelledChoice, needed_height
from workbench.gui.picture.loading import picture_folder
from workbench.gui.widgets import Button, CheckBox, Words
from workbench.picture.scene import Card, Dither, Fit, Measure
from workbench.pipeline.result import Result
from workbench.project.document import Project
from workbench.project.edits.picture import set_card, set_dither, set_fit, set_transfer

__all__ = ["TRANSFERS", "ScenePanel"]

_CHOICE = 200
"""Width of the choice of a card in a row. [design px]"""
_STEPS = 33
_BLACK_TO_WHITE = tuple(step / (_STEPS - 1) for step in range(_STEPS))
TRANSFERS: dict[str, tuple[float, ...]] = {
    "as it is": (),
    "lighter (power 1 / 1.4)": tuple(value ** (1 / 1.4) for value in _BLACK_TO_WHITE),
    "darker (power 1.4)": tuple(value**1.4 for value in _BLACK_TO_WHITE),
    "linear data shown (power 1 / 2.2)": tuple(value ** (1 / 2.2) for value in _BLACK_TO_WHITE),
    "inverted": tuple(1.0 - value for value in _BLACK_TO_WHITE),
}
"""Curves that can be chosen by name; a project may hold any other."""

_FROM_FILE = "a table from a file …"

_TABLES = "Transfer tables (*.csv *.txt);;All files (*)"

_MEASURES = {Measure.VOLTS: "volts, as sent", Measure.LIGHT: "light, as seen"}


class ScenePanel(QWidget):
    """Shows and takes a project's picture."""

    def __init__(self, bench: Bench) -> None:
        super().__init__()
        self._bench = bench
        self.setAccessibleName("Scene")
        cards = [card.value for card in Card]
        self.shown = LabelledChoice(bench, "shown", cards)
        self.load = Button(bench, "Load image …")
        self.paste = Button(bench, "Paste")
        self.fit = LabelledChoice(bench, "fit", [fit.value for fit in Fit])
        self.dither = LabelledChoice(bench, "dither", [dither.value for dither in Dither])
        self.measure = LabelledChoice(bench, "nearest in", list(_MEASURES.values()))
        self.transfer = LabelledChoice(bench, "transfer", [*TRANSFERS, _FROM_FILE])
        self.smooth = CheckBox(bench, "scale smoothly")
        self.problem = Words(bench, size=0.9, role="warns")
        self.problem.setWordWrap(True)
        if bench.images is not None:
            self.load.clicked.connect(bench.images.choose)
            self.paste.clicked.connect(bench.images.paste)
        self._choices = (self.shown, self.fit, self.dither, self.measure, self.transfer)
        self._of_images = (self.fit, self.dither, self.measure, self.transfer, self.smooth)
        for panel, take in zip(
            self._choices,
            (self._take_card, self._take_fit, self._take_dither, self._take_measure, self._take_transfer),
            strict=True,
        ):
            panel.choice.chosen.connect(take)
        self.smooth.toggled.connect(self._take_smooth)
        self._lay_out()

    def show_project(self, project: Project, result: Result) -> None:
        """Show what a project shows."""
        picture = project.picture
        image = picture.image
        self.shown.choice.set_value(picture.card.value if image is None else image.name)
        self.fit.choice.set_value(picture.fit.value)
        self.dither.choice.set_value(picture.dither.value)
        self.measure.choice.set_value(_MEASURES[picture.measure])
        self._show_transfer(picture.transfer)
        for widget in self._of_images:
            widget.setVisible(image is not None)
        self.smooth.blockSignals(True)
        self.smooth.setChecked(picture.smooth)
        self.smooth.blockSignals(False)
        self.problem.say(result.picture_problem or "")
        self.problem.setVisible(bool(result.picture_problem))

    def _show_transfer(self, shown: tuple[float, ...]) -> None:
        named = [name for name, table in TRANSFERS.items() if table == shown]
        self.transfer.choice.set_value(named[0] if named else f"a table of {len(shown)} values")

    def fit_into(self, width: int, height: int) -> None:
        """Put captions into their fields where a column is too short to have them above."""
        self.set_low(low=False)
        self.set_low(low=needed_height(self._column, width) > height)

    def set_low(self, *, low: bool) -> None:
        """Save height."""
        for panel in self._choices:
            panel.set_low(low=low)
        self._column.setSpacing(self._bench.px(4 if low else 8))

    def set_row(self, *, row: bool) -> None:
        """Lie in one row, for a card has only itself to be chosen."""
        directions = QBoxLayout.Direction
        self._column.setDirection(directions.LeftToRight if row else directions.TopToBottom)
        self.shown.setMinimumWidth(self._bench.px(_CHOICE) if row else 0)
        # In a column an image's settings keep their room, so that nothing moves when one comes or goes.
        for widget in self._of_images:
            policy = widget.sizePolicy()
            policy.setRetainSizeWhenHidden(not row)
            widget.setSizePolicy(policy)
        # A row stands at its right end, a column at its top.
        self._column.setStretch(0, 1 if row else 0)
        self._column.setStretch(self._column.count() - 1, 0 if row else 1)

    def _lay_out(self) -> None:
        px = self._bench.px
        self._column = QBoxLayout(QBoxLayout.Direction.TopToBottom, self)
        self._column.setContentsMargins(0, 0, 0, 0)
        row = QHBoxLayout()
        row.setSpacing(px(8))
        row.addWidget(self.load)
        row.addWidget(self.paste)
        row.addStretch(1)
        self._column.addStretch(0)
        self._column.addWidget(self.shown)
        self._column.addLayout(row)
        self._column.addWidget(self.problem)
        for panel in self._choices[1:]:
            self._column.addWidget(panel)
        self._column.addWidget(self.smooth)
        self._column.addStretch(1)

    def _take_card(self, number: int) -> None:
        card = list(Card)[number]
        self._bench.apply(f"Show card {card.value}", lambda project: set_card(project, card), origin=self)

    def _take_fit(self, number: int) -> None:
        fit = list(Fit)[number]
        self._bench.apply("Fit the image", lambda project: set_fit(project, fit), origin=self)

    def _take_smooth(self, on: bool) -> None:
        self._bench.apply(
            "Scale the image", lambda project: set_fit(project, project.picture.fit, smooth=on), origin=self
        )

    def _take_dither(self, number: int) -> None:
        dither = list(Dither)[number]
        self._bench.apply("Dither", lambda project: set_dither(project, dither), origin=self)

    def _take_measure(self, number: int) -> None:
        measure = list(_MEASURES)[number]
        self._bench.apply(
            "Choose what is nearest",
            lambda project: set_dither(project, project.picture.dither, measure),
            origin=self,
        )

    def _take_transfer(self, number: int) -> None:
        table = self._read_transfer() if number == len(TRANSFERS) else list(TRANSFERS.values())[number]
        if table is None:
            self._show_transfer(self._bench.session.project.picture.transfer)
        else:
            self._bench.apply("Bend the image's values", lambda p: set_transfer(p, table), origin=self)

    def _read_transfer(self) -> tuple[float, ...] | None:
        """Return the table in a file that is asked for, if there is one."""
        bench = self._bench
        if bench.dialogs is None:
            return None
        path = bench.dialogs.open_path("Open a transfer table", picture_folder(bench), _TABLES)
        try:
            return None if path is None else read_transfer(path)
        except FileError as error:
            bench.notice(str(error), warning=True)
            return None
