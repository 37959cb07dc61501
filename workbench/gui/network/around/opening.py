"""Opens the cards about what stands around the network; one is open at a time."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QPoint
from PySide6.QtWidgets import QWidget

from workbench.gui.actions import ActionSpec
from workbench.gui.bench import Bench
from workbench.gui.network.canvas import Canvas
from workbench.gui.network.targets import Kind, Target, box_of

if TYPE_CHECKING:
    from workbench.gui.network.around.form_card import FormCard

__all__ = ["CardOpening"]


class CardOpening(QObject):
    """Makes a card when its body is clicked, or its command called."""

    def __init__(self, bench: Bench, canvas: Canvas, panel: QWidget) -> None:
        super().__init__(panel)
        self._bench, self._canvas, self._panel = bench, canvas, panel
        self.card: FormCard | None = None
        """The card that is open."""
        canvas.card_asked.connect(self.open_for)

    def specs(self) -> tuple[ActionSpec, ...]:
        """Return the rows of the command table."""
        return (
            ActionSpec(
                "network.drive",
                "Pins and supply …",
                lambda: self.open_for(Target(Kind.CONTROLLER)),
                "Network",
                tip="Supply, on-resistance, zeros, rise time, and what the pins may carry.",
                also="current limit ma milliamperes float floating skew controller driver volts",
            ),
            ActionSpec(
                "network.cable",
                "Monitor and cable …",
                lambda: self.open_for(Target(Kind.SCREEN)),
                "Network",
                tip="Load, monitors, input capacitance, the cable to them, and the sync lines.",
                also="termination coax length ghost impedance threshold",
            ),
        )

    def open_for(self, target: Target) -> None:
        """Open the card about a body, beside it."""
        from workbench.gui.network.around.cable_card import CableCard
        from workbench.gui.network.around.drive_card import DriveCard

        if self.card is not None:
            self.card.close()
        window = self._panel.window()
        card = (DriveCard if target.kind is Kind.CONTROLLER else CableCard)(self._bench, window)
        card.closed.connect(card.deleteLater)
        card.closed.connect(self._forget)
        self.card = card
        card.open_at(self._corner(target, window))

    def _corner(self, target: Target, window: QWidget) -> QPoint:
        """Return where the card begins: right of the controller, or over what it hides least."""
        box, gap = box_of(self._canvas.drawing, target), self._bench.px(12)
        if box is None or not self._canvas.isVisible():
            return self._panel.mapTo(window, QPoint(gap, gap * 4))
        place = QPoint(round(box.right) + gap, round(box.top) + gap)
        return self._canvas.mapTo(window, place)

    def _forget(self) -> None:
        self.card = None
