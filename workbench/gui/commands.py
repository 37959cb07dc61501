"""The window's own commands; the panels bring theirs."""

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtGui import QKeySequence

from workbench.gui.actions import ActionSpec
from workbench.gui.bench import Bench
from workbench.gui.settings import THEME
from workbench.gui.theme import ThemeName
from workbench.gui.window.pages import PageArea

__all__ = ["Openers", "edit_specs", "view_specs"]

Key = QKeySequence.StandardKey


@dataclass(frozen=True, slots=True)
class Openers:
    """What opens the window's cards and dialogs."""

    finder: Callable[[], object]
    mode: Callable[[], object]
    ladder: Callable[[], object]
    preferences: Callable[[], object]
    help: Callable[[], object]
    cautions: Callable[[], object]
    keys: Callable[[], object]
    projector: Callable[[], object]


def edit_specs(bench: Bench, link: Callable[[], object], openers: Openers) -> tuple[ActionSpec, ...]:
    """Return the commands that change the project."""
    session = bench.session
    return (
        ActionSpec(
            "edit.undo",
            "Undo",
            session.undo,
            shortcut=Key.Undo,
            tip="Takes back the last step; a field that is being typed in undoes its text.",
            enabled=lambda: session.can_undo,
            label=lambda: f"Undo {session.undo_label}".strip(),
        ),
        ActionSpec(
            "edit.redo",
            "Redo",
            session.redo,
            shortcut=("Ctrl+Shift+Z", "Ctrl+Y"),
            tip="Does the step again that was undone last.",
            enabled=lambda: session.can_redo,
            label=lambda: f"Redo {session.redo_label}".strip(),
        ),
        ActionSpec(
            "edit.mode",
            "Choose the display mode",
            openers.mode,
            shortcut="Ctrl+M",
            tip="Lists every mode of the tables; type a size or a rate to find one.",
        ),
        ActionSpec(
            "edit.ladder",
            "Make a new ladder",
            openers.ladder,
            shortcut="Ctrl+L",
            tip="Shape, bits and values; what comes out is shown before it is taken.",
        ),
        ActionSpec(
            "edit.link",
            "Channels linked",
            link,
            tip="While linked, an edit of one channel's network is made to all three.",
            checked=lambda: session.project.linked,
        ),
    )


def view_specs(bench: Bench, pages: PageArea, openers: Openers) -> tuple[ActionSpec, ...]:
    """Return the commands that change what is seen."""
    return (
        ActionSpec(
            "view.find",
            "Find a command or a part",
            openers.finder,
            "View",
            shortcut="Ctrl+K",
            tip="Finds commands, parts, pages and display modes by name.",
            in_finder=False,
        ),
        ActionSpec(
            "view.projector",
            "Projector view",
            openers.projector,
            "View",
            shortcut="F11",
            tip="Shows the same bench at 24 pt and more on white; Esc leaves.",
            checked=lambda: bench.projecting,
        ),
        *(
            _page_spec(number, spec_id, title, pages)
            for number, (spec_id, title) in enumerate(pages.titles, 1)
        ),
        *(_theme_spec(bench, name) for name in ThemeName if name is not ThemeName.PROJECTOR),
        ActionSpec(
            "view.preferences",
            "Preferences",
            openers.preferences,
            "View",
            shortcut="Ctrl+,",
            tip="Theme, text size, symbols, series, and the limits of the pins.",
            also="settings options theme dash zig-zag current limit",
        ),
        ActionSpec(
            "help.here",
            "Explain what has the focus",
            openers.help,
            "Help",
            shortcut=Key.HelpContents,
            tip="A short card about the control, field or drawing that has the focus.",
        ),
        ActionSpec("help.keys", "Keys", openers.keys, "Help", tip="Lists every key."),
        ActionSpec(
            "help.cautions",
            "About Backporch, and cautions",
            openers.cautions,
            "Help",
            tip="What to mind before a real display, a real chip or an audience is connected.",
        ),
    )


def _page_spec(number: int, page: str, title: str, pages: PageArea) -> ActionSpec:
    return ActionSpec(
        f"page.{page}",
        f"Page {title}",
        lambda: pages.toggle(page),
        "Pages",
        shortcut=f"Alt+{number}",
        tip=f"Unfolds the page {title}, or folds it.",
        checked=lambda: pages.page == page,
    )


def _theme_spec(bench: Bench, name: ThemeName) -> ActionSpec:
    words = {ThemeName.DUSK: "dusk (dark)", ThemeName.PAPER: "paper (light)"}
    return ActionSpec(
        f"view.theme-{name.value}",
        f"Theme {words[name]}",
        lambda: bench.settings.set(THEME, name),
        "View",
        checked=lambda: bench.settings.get(THEME) is name,
    )
