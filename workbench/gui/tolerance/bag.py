"""Single boards, picked from the bag one after the other: what each is like, in words."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from workbench.circuit.tolerance.monte_carlo import Tolerance
from workbench.gui.bench import Bench
from workbench.gui.tolerance.words import board_words
from workbench.gui.widgets import Button, ButtonKind, Words
from workbench.gui.widgets.said import Said

__all__ = ["Bag"]


class Bag(QWidget):
    """Flicks through the boards drawn first; ``picked`` tells which one is looked at."""

    picked = Signal(object)
    """Number of the board from 0; none for the design itself."""

    def __init__(self, bench: Bench, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.bench = bench
        self.setAccessibleName("Boards from the bag")
        self.board: int | None = None
        self._boards: Tolerance | None = None
        self.before = Button(bench, "‹")
        self.before.setAccessibleName("Board before")
        self.after = Button(bench, "›")
        self.after.setAccessibleName("Next board")
        self.back = Button(bench, "Put back", ButtonKind.QUIET)
        self.number = Words(bench, weight=500, width_for="board 64 of 64")
        self.said = (Said(bench), Said(bench))
        self.before.clicked.connect(lambda: self.flick(-1))
        self.after.clicked.connect(lambda: self.flick(1))
        self.back.clicked.connect(lambda: self.pick(None))
        self._lay_out()
        bench.theme_changed.connect(self._restyle)
        self._restyle()
        self._show()

    def show_boards(self, boards: Tolerance | None) -> None:
        """Show other boards; the one looked at keeps its number if there is one."""
        self._boards = boards
        if boards is None or (self.board is not None and self.board >= len(boards.volts_by_board)):
            self.board = None
        self._show()

    def flick(self, steps: int) -> None:
        """Pick the next board, or the one before; the bag has no end."""
        if self._boards is not None:
            count = len(self._boards.volts_by_board)
            start = (0 if steps > 0 else -1) - steps if self.board is None else self.board
            self.pick((start + steps) % count)

    def pick(self, board: int | None) -> None:
        """Look at a board, or at none."""
        if board != self.board:
            self.board = board
            self._show()
            self.picked.emit(board)

    def _lay_out(self) -> None:
        self._row = QHBoxLayout()
        self._row.addWidget(Words(self.bench, "From the bag", caps=True, role="dim"))
        self._row.addStretch(1)
        for widget in (self.back, self.before, self.number, self.after):
            self._row.addWidget(widget)
        self._column = QVBoxLayout(self)
        self._column.addLayout(self._row)
        for said in self.said:
            self._column.addWidget(said)

    def _show(self) -> None:
        there = self._boards is not None
        self.before.setEnabled(there)
        self.after.setEnabled(there)
        self.back.setVisible(self.board is not None)
        if self._boards is None or self.board is None:
            count = "" if self._boards is None else f"{len(self._boards.volts_by_board)} boards"
            self.number.say(count)
            self.said[0].tell(None, "Pick a board to see what its values make of it." if there else "")
            self.said[1].tell(None, "")
            return
        volts = self._boards.volts_by_board
        self.number.say(f"board {self.board + 1} of {len(volts)}")
        for said, (sign, sentence) in zip(self.said, board_words(volts[self.board]), strict=True):
            said.tell(sign, sentence)

    def _restyle(self) -> None:
        px = self.bench.px
        self._row.setSpacing(px(6))
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(px(2))
