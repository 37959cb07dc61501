"""Contrast of every theme, after WCAG 2.2: 4.5 for text (1.4.3), 3 for lines (1.4.11)."""

import pytest
from PySide6.QtGui import QColor

from workbench.gui.theme import THEMES, Theme, palette

GROUNDS = ("window", "panel", "plot", "raised")
TEXTS = (
    "text",
    "dim",
    "accent",
    "fails",
    "warns",
    "note",
    "passes",
    "red",
    "green",
    "blue",
    "h_sync",
    "v_sync",
)
LINES = ("outline", "ideal")
themes = pytest.mark.parametrize("theme", THEMES.values(), ids=lambda theme: theme.name.value)


def luminance(colour: QColor) -> float:
    """Return the relative luminance of WCAG 2.2. [1]"""
    linear = [
        part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4
        for part in (colour.redF(), colour.greenF(), colour.blueF())
    ]
    return sum(weight * part for weight, part in zip((0.2126, 0.7152, 0.0722), linear, strict=True))


def contrast(one: QColor, other: QColor) -> float:
    """Return the contrast ratio of WCAG 2.2. [1]"""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def test_contrast_of_black_on_white_is_21() -> None:
    assert contrast(QColor("#000000"), QColor("#ffffff")) == pytest.approx(21.0)


@themes
@pytest.mark.parametrize("role", TEXTS)
def test_words_can_be_read_on_every_ground(theme: Theme, role: str) -> None:
    for ground in GROUNDS:
        assert contrast(theme.color(role), theme.color(ground)) >= 4.5, ground


@themes
@pytest.mark.parametrize("role", LINES)
def test_lines_can_be_seen_on_every_ground(theme: Theme, role: str) -> None:
    for ground in GROUNDS:
        assert contrast(theme.color(role), theme.color(ground)) >= 3.0, ground


@themes
@pytest.mark.parametrize("role", ["text", "dim"])
def test_words_can_be_read_on_a_lit_row(theme: Theme, role: str) -> None:
    for ground in GROUNDS:
        assert contrast(theme.color(role), theme.lit(ground)) >= 4.5, ground


@themes
def test_pressed_button_can_be_read(theme: Theme) -> None:
    assert contrast(theme.color("text"), theme.pressed()) >= 4.5


@themes
def test_palette_leaves_no_role_to_the_desktop(theme: Theme) -> None:
    made = palette(theme)

    assert made.color(made.ColorRole.Window) == theme.color("window")
    assert made.color(made.ColorRole.ToolTipText) == theme.color("text")
    assert contrast(made.color(made.ColorRole.HighlightedText), made.color(made.ColorRole.Highlight)) >= 4.5


def test_mixing_goes_from_one_role_to_the_other() -> None:
    theme = next(iter(THEMES.values()))

    assert theme.mixed("panel", "accent", 0.0) == theme.color("panel")
    assert theme.mixed("panel", "accent", 1.0) == theme.color("accent")
