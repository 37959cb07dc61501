"""The window's own commands; the panels bring theirs."""

from collections.abc import Callable
from dataclasses import dataclass

from PySide6.QtGui import QKeySequence

from workbench.gui.actions import ActionSpec
from workbench.gui.bench import LINK_TIP, Bench
from workbench.gui.settings import THEME
from workbench.gui.theme import ThemeName
from workbench.gui.window.pages import PageArea

__all__ = ["Openers", "edit_specs", "view_specs"]

Key = QKeySequence.StandardKey

PAGE_WORDS = {
    "picture": "image screen display card dither encoding",
    "levels": "staircase inl dnl steps linearity",
    "tolerance": "monte carlo yield boards spread",
    "timing": "polarity porch sync blanking custom mode edges",
    "parts": "drawer stock list fit",
    "monitor": "edid screen range",
    "clock": "pll divider chip jitter",
    "palette": "colours",
    "working": "how formula explain steps",
}
"""Words that find a page and are not shown."""


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
            also="back step",
            enabled=lambda: session.can_undo,
            label=lambda: f"Undo {session.undo_label}".strip(),
        ),
        ActionSpec(
            "edit.redo",
            "Redo",
            session.redo,
            shortcut=("Ctrl+Shift+Z", "Ctrl+Y"),
            tip="Does the step again that was undone last.",
            also="again repeat step",
            enabled=lambda: session.can_redo,
            label=lambda: f"Redo {session.redo_label}".strip(),
        ),
        ActionSpec(
            "edit.mode",
            "Choose the display mode",
            openers.mode,
            shortcut="Ctrl+M",
            tip="Lists every mode of the tables; type a size or a rate to find one.",
            also="resolution refresh",
        ),
        ActionSpec(
            "edit.ladder",
            "Make a new ladder",
            openers.ladder,
            shortcut="Ctrl+L",
            tip="Shape, bits and values; what comes out is shown before it is taken.",
            also="weighted r-2r segmented dac resistors fit",
        ),
        ActionSpec(
            "edit.link",
            "Link the channels",
            link,
            tip=LINK_TIP,
            label=lambda: bench.link_words,
            also="channels linked unlink apart separate",
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
            also="full screen class room beamer large",
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
            also="settings options dash zig-zag font current limit milliamperes e12 e24 e48 e96 e192",
        ),
        ActionSpec(
            "help.here",
            "Explain what has the focus",
            openers.help,
            "Help",
            shortcut=Key.HelpContents,
            tip="A short card about the control, field or drawing that has the focus.",
            also="help what is",
        ),
        ActionSpec("help.keys", "Keys", openers.keys, "Help", tip="Lists every key.", also="help shortcuts"),
        ActionSpec(
            "help.cautions",
            "About Backporch, and cautions",
            openers.cautions,
            "Help",
            tip="What to mind before a real display, a real chip or an audience is connected.",
            also="help safety warning version",
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
        also=PAGE_WORDS.get(page, ""),
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
