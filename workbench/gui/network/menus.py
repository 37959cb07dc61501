"""The context menu of the drawing: what can be done to what was pointed at."""

from functools import partial

from PySide6.QtWidgets import QMenu

from workbench.gui.actions import Actions
from workbench.gui.network.canvas import Canvas
from workbench.gui.network.pins import PinKeys
from workbench.gui.network.shown import PinState
from workbench.gui.network.targets import Kind, Target
from workbench.gui.network.tools import LADDER_TOOLS, PART_TOOLS
from workbench.gui.network.wiring import commands as wiring
from workbench.gui.network.zooming import ZOOM_TOOLS
from workbench.pipeline.result import Result

__all__ = ["fill_menu"]

ALWAYS = ("network.paste", "network.table", "network.copy-picture", "network.copy-text")
AROUND = ("network.drive", "network.cable")
PIN_WORDS = {PinState.HIGH: "Force to 1", PinState.LOW: "Force to 0", PinState.FLOATING: "Let it float"}
AROUND_KINDS = (Kind.CONTROLLER, Kind.SCREEN, Kind.CABLE, Kind.SOCKET, Kind.MONITOR)


def fill_menu(
    menu: QMenu, actions: Actions, target: Target | None, canvas: Canvas, pins: PinKeys, result: Result
) -> None:
    """Put into a menu what can be done to a target, and to the network as a whole."""
    actions.refresh()

    def offer(*names: str) -> None:
        for name in names:
            menu.addAction(actions.action(name))
        menu.addSeparator()

    kind = target.kind if target is not None else None
    if target is not None and target.kind is Kind.PIN and target.pin is not None:
        for state, words in PIN_WORDS.items():
            force = partial(pins.force, canvas.channel, result, target.pin, state)
            menu.addAction(words).triggered.connect(lambda _on=False, force=force: force())
        offer("network.release")
        offer(*wiring.LEG_TOOLS)
    if target is not None and target.part is not None and kind is not Kind.NAME:
        menu.addAction(actions.action("network.edit-value"))
    if kind is Kind.PART:
        offer(*PART_TOOLS)
        offer(*wiring.PART_TOOLS)
    if kind is Kind.NODE:
        offer(*wiring.NODE_TOOLS)
    if kind is Kind.NAME:
        offer("network.rename")
    if kind in AROUND_KINDS:
        offer(*AROUND)
    offer(*LADDER_TOOLS, "network.link")
    offer(*ZOOM_TOOLS)
    offer(*ALWAYS)
