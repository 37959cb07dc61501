"""The commands of deliberate faults, and the list they open."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from workbench.gui.actions import ActionSpec
from workbench.gui.bench import Bench
from workbench.gui.faults.card import FaultsCard
from workbench.gui.faults.switch import FaultSwitch

if TYPE_CHECKING:
    from workbench.gui.window.main_window import MainWindow

__all__ = ["FaultList", "fault_specs"]


class FaultList(QObject):
    """Opens the list of faults, one at a time, and runs the engine again when a fault is switched."""

    def __init__(self, bench: Bench, window: "MainWindow") -> None:
        super().__init__(window)
        self._bench, self._window = bench, window
        self.card: FaultsCard | None = None
        """The list while it is open."""
        bench.faults.changed.connect(bench.live.run_again)

    def open(self) -> FaultsCard:
        """Open the list beside the bench, or show the one that is open.

        It leaves the height free in which the banner comes once a fault is on.
        """
        if self.card is None:
            self.card = FaultsCard(self._bench, self._bench.faults, self._window)
            self.card.closed.connect(self._forget)
            top = self._window.top.height() + self._window.banner.minimumHeight()
            self.card.open_between(top, self._window.height() - self._window.foot.height())
        return self.card

    def _forget(self) -> None:
        if self.card is not None:
            self.card.deleteLater()
            self.card = None


def fault_specs(faults: FaultSwitch, open_list: Callable[[], object]) -> tuple[ActionSpec, ...]:
    """Return the commands that break the board on purpose, and mend it."""
    return (
        ActionSpec(
            "faults.list",
            "Deliberate faults …",
            open_list,
            "Faults",
            "Ctrl+Shift+F",
            "Breaks the board on purpose, to see what picture and plot make of it; never saved.",
        ),
        ActionSpec(
            "faults.end",
            "End all deliberate faults",
            faults.end_all,
            "Faults",
            tip="Shows the board as it is designed again.",
            enabled=lambda: bool(faults.on),
        ),
    )
