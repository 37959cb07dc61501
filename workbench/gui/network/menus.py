"""The context menu of the drawing: what can be done to what was pointed at."""

from functools import partial

from PySide6.QtWidgets import QMenu

from workbench.gui.actions import Actions
from workbench.gui.network.canvas import Canvas
from workbench.gui.network.pins import PinKeys
from workbench.gui.network.shown import PinState
from workbench.gui.network.targets import Kind, Target
from workbench.gui.network.tools import LADDER_TOOLS, PART_TOOLS
from workbench.pipeline.result import Result

__all__ = ["fill_menu"]

ALWAYS = ("network.table", "network.copy-picture", "network.copy-text")
PIN_WORDS = {PinState.HIGH: "Force to 1", PinState.LOW: "Force to 0", PinState.FLOATING: "Let it float"}


def fill_menu(
    menu: QMenu, actions: Actions, target: Target | None, canvas: Canvas, pins: PinKeys, result: Result
) -> None:
    """Put into a menu what can be done to a target, and to the network as a whole."""
    actions.refresh()
    if target is not None and target.kind is Kind.PIN and target.pin is not None:
        for state, words in PIN_WORDS.items():
            force = partial(pins.force, canvas.channel, result, target.pin, state)
            menu.addAction(words).triggered.connect(lambda _on=False, force=force: force())
        menu.addAction(actions.action("network.release"))
        menu.addSeparator()
    if target is not None and target.part is not None:
        menu.addAction(actions.action("network.edit-value"))
    if target is not None and target.kind is Kind.PART:
        for name in PART_TOOLS:
            menu.addAction(actions.action(name))
    if target is not None and target.part is not None:
        menu.addSeparator()
    for name in (*LADDER_TOOLS, "network.link"):
        menu.addAction(actions.action(name))
    menu.addSeparator()
    for name in ALWAYS:
        menu.addAction(actions.action(name))
