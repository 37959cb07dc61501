"""The panel's rows of the command table."""

from functools import partial
from typing import TYPE_CHECKING

from workbench.gui.actions import ActionSpec
from workbench.gui.scanline.content.presets import Preset
from workbench.gui.scanline.options import FANNED, IDEAL
from workbench.gui.settings import DASHED, Setting
from workbench.picture.scene import Card

if TYPE_CHECKING:
    from workbench.gui.scanline.panel import ScanlinePanel

__all__ = ["panel_specs"]

GROUP = "Scanline"


def panel_specs(panel: "ScanlinePanel") -> tuple[ActionSpec, ...]:
    """Return everything the panel can do; the keys count while it has the focus."""
    return (*_preset_specs(panel), *_line_specs(panel), *_view_specs(panel), *_card_specs(panel))


def _preset_specs(panel: "ScanlinePanel") -> list[ActionSpec]:
    words = {
        Preset.LINE: ("Show the whole line", "L"),
        Preset.BLANKING: ("Show the blanking", "B"),
        Preset.PIXELS: ("Show single pixels", "P"),
        Preset.FRAME: ("Show the whole frame", "F"),
    }
    return [
        ActionSpec(
            f"scanline.{preset.name.lower()}",
            text,
            partial(panel.choose_preset, preset),
            GROUP,
            shortcut=key,
            checked=partial(_holds, panel, preset),
            scope=panel,
        )
        for preset, (text, key) in words.items()
    ]


def _holds(panel: "ScanlinePanel", preset: Preset) -> bool:
    return panel.preset is preset


def _line_specs(panel: "ScanlinePanel") -> list[ActionSpec]:
    edits = panel.edits
    return [
        ActionSpec(
            "scanline.number",
            "Go to a scanline",
            panel.type_scanline,
            GROUP,
            shortcut="Ctrl+G",
            tip="Puts the caret into the number of the scanline.",
        ),
        ActionSpec(
            "scanline.next", "Next scanline", lambda: edits.step_scanline(1), GROUP, "PgDown", scope=panel
        ),
        ActionSpec(
            "scanline.previous",
            "Previous scanline",
            lambda: edits.step_scanline(-1),
            GROUP,
            "PgUp",
            scope=panel,
        ),
        ActionSpec(
            "scanline.v_sync",
            "Go to the V sync lines",
            panel.show_v_sync,
            GROUP,
            shortcut="V",
            tip="Shows the first scanline on which V sync is active.",
            scope=panel,
        ),
    ]


def _view_specs(panel: "ScanlinePanel") -> list[ActionSpec]:
    def flag(spec_id: str, text: str, setting: Setting[bool], tip: str) -> ActionSpec:
        settings = panel.bench.settings
        return ActionSpec(
            spec_id,
            text,
            lambda: settings.set(setting, not settings.get(setting)),
            GROUP,
            tip=tip,
            checked=lambda: settings.get(setting),
        )

    return [
        ActionSpec("scanline.closer", "Closer", lambda: panel.zoom(0.5), GROUP, ("+", "="), scope=panel),
        ActionSpec("scanline.further", "Further", lambda: panel.zoom(2.0), GROUP, "-", scope=panel),
        ActionSpec("scanline.reset", "As it was before zooming", panel.reset, GROUP, "0", scope=panel),
        ActionSpec("scanline.whole", "All of it", panel.show_whole, GROUP, "Home", scope=panel),
        ActionSpec(
            "scanline.other_cursor",
            "Move the other cursor",
            panel.looking.take_other,
            GROUP,
            "X",
            scope=panel,
        ),
        flag("scanline.fanned", "Fan the traces", FANNED, "Draws equal levels side by side."),
        flag("scanline.ideal", "Show the ideal", IDEAL, "Shows the even staircase to 0.700 V."),
        flag("scanline.dashes", "Dash the traces", DASHED, "Gives each trace a dash of its own."),
        ActionSpec("scanline.copy", "Copy picture and text", panel.copy, GROUP, "Ctrl+C", scope=panel),
        ActionSpec("scanline.copy_picture", "Copy the scanline as a picture", panel.copy_picture, GROUP),
        ActionSpec("scanline.copy_text", "Copy the scanline as text", panel.copy_text, GROUP),
    ]


def _card_specs(panel: "ScanlinePanel") -> list[ActionSpec]:
    specs = [
        ActionSpec(
            f"scanline.card_{card.name.lower()}",
            f"Card: {card.value}",
            partial(panel.choose_card, card),
            GROUP,
            checked=partial(_shows, panel, card),
        )
        for card in Card
    ]
    return [*specs, ActionSpec("scanline.colour", "Colour of the solid card", panel.pick_colour, GROUP)]


def _shows(panel: "ScanlinePanel", card: Card) -> bool:
    return panel.bench.session.project.picture.card is card
