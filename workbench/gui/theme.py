"""Colours by role, and the type sizes, for the three themes. No colour stands anywhere else."""

from dataclasses import dataclass, fields
from enum import Enum
from functools import cache

from PySide6.QtGui import QColor, QFont, QFontDatabase, QFontMetricsF, QPalette

from workbench.project.document import Channel

__all__ = ["DUSK", "PAPER", "PROJECTOR", "THEMES", "Theme", "ThemeName", "Type", "palette"]

LIT = 0.12
"""How much of the accent lies on a lit ground; with more, dim words on it could not be read. [1]"""


BANDS = {
    "black": "#000000",
    "brown": "#8b4513",
    "red": "#dc143c",
    "orange": "#ff8c00",
    "yellow": "#ffd700",
    "green": "#2e8b57",
    "blue": "#4169e1",
    "violet": "#ba55d3",
    "grey": "#808080",
    "white": "#ffffff",
    "gold": "#b8860b",
    "silver": "#c0c0c0",
}
"""Colours of the bands on a resistor, by name; they are the part's own, and the same in every theme."""


class ThemeName(Enum):
    """The themes a person can choose; the projector view brings its own."""

    DUSK = "dusk"
    PAPER = "paper"
    PROJECTOR = "projector"


@dataclass(frozen=True, slots=True)
class Theme:
    """Every colour of the window, by what it means."""

    name: ThemeName
    window: str
    panel: str
    plot: str
    raised: str
    text: str
    dim: str
    outline: str
    hairline: str
    accent: str
    red: str
    green: str
    blue: str
    h_sync: str
    v_sync: str
    ideal: str
    fails: str
    warns: str
    note: str
    passes: str
    light_alpha: float
    """Strength of the pool of light behind a chosen part. [1]"""
    trace_px: float
    wire_px: float

    def color(self, role: str, alpha: float = 1.0) -> QColor:
        """Return a role's colour, at ``alpha`` of 0 … 1."""
        colour = QColor(getattr(self, role))
        colour.setAlphaF(alpha)
        return colour

    def channel(self, channel: Channel, alpha: float = 1.0) -> QColor:
        """Return the colour of a channel's trace and wires."""
        return self.color(channel.value, alpha)

    def band(self, name: str) -> QColor:
        """Return the colour of a band on a resistor."""
        return QColor(BANDS[name])

    def mixed(self, role: str, other: str, part: float) -> QColor:
        """Return ``role`` with ``part`` (0 … 1) of another role laid over it, opaque."""
        under, over = QColor(getattr(self, role)), QColor(getattr(self, other))
        pairs = (
            (under.redF(), over.redF()),
            (under.greenF(), over.greenF()),
            (under.blueF(), over.blueF()),
        )
        return QColor.fromRgbF(*(a + (b - a) * part for a, b in pairs))

    def lit(self, role: str) -> QColor:
        """Return a ground as it is under the lamp: chosen rows, and what the pointer is on."""
        return self.mixed(role, "accent", LIT)

    @property
    def dark(self) -> bool:
        """Whether light words stand on a dark ground."""
        return QColor(self.window).lightnessF() < 0.5

    def pressed(self) -> QColor:
        """Return the fill of a control that is held down."""
        return self.mixed("raised", "plot", 0.9) if self.dark else self.mixed("raised", "text", 0.12)

    @property
    def roles(self) -> dict[str, str]:
        """Return every colour by its role."""
        values = {f.name: getattr(self, f.name) for f in fields(self)}
        return {role: value for role, value in values.items() if isinstance(value, str)}


DUSK = Theme(
    name=ThemeName.DUSK,
    window="#1a1f2b",
    panel="#151a24",
    plot="#10141c",
    raised="#212836",
    text="#e3e7ef",
    dim="#9aa4b5",
    outline="#727f98",
    hairline="#2a3242",
    accent="#f2a65a",
    red="#ff7a70",
    green="#5fd08a",
    blue="#7db2ff",
    h_sync="#d9d2c3",
    v_sync="#b9a6e6",
    ideal="#7f8aa0",
    fails="#ff8f86",
    warns="#ecd76a",
    note="#8fb8e8",
    passes="#7fd6a2",
    light_alpha=0.26,
    trace_px=2.1,
    wire_px=1.6,
)

PAPER = Theme(
    name=ThemeName.PAPER,
    window="#f4f2ee",
    panel="#ffffff",
    plot="#fffdf9",
    raised="#f8f6f2",
    text="#20252e",
    dim="#58616f",
    outline="#857f72",
    hairline="#e0dcd4",
    accent="#9c4f0c",
    red="#c02a2f",
    green="#19753f",
    blue="#2457c5",
    h_sync="#4a4f57",
    v_sync="#7a5ea8",
    ideal="#7f8592",
    fails="#b3261e",
    warns="#756000",
    note="#2b5fa8",
    passes="#166b39",
    light_alpha=0.16,
    trace_px=2.1,
    wire_px=1.6,
)

PROJECTOR = Theme(
    name=ThemeName.PROJECTOR,
    window="#ffffff",
    panel="#ffffff",
    plot="#ffffff",
    raised="#f6f4ef",
    text="#10141c",
    dim="#3d4553",
    outline="#5c6573",
    hairline="#cfcabf",
    accent="#96490a",
    red="#b3161d",
    green="#0d6b36",
    blue="#1544b8",
    h_sync="#2c313a",
    v_sync="#5d3f92",
    ideal="#636a78",
    fails="#a31710",
    warns="#665200",
    note="#1f4f95",
    passes="#0d6b36",
    light_alpha=0.16,
    trace_px=6.0,
    wire_px=6.0,
)

THEMES = {theme.name: theme for theme in (DUSK, PAPER, PROJECTOR)}


def palette(theme: Theme) -> QPalette:
    """Return the widget palette of a theme, disabled roles included."""
    role = QPalette.ColorRole
    colours = {
        role.Window: theme.window,
        role.WindowText: theme.text,
        role.Base: theme.plot,
        role.AlternateBase: theme.raised,
        role.Text: theme.text,
        role.Button: theme.raised,
        role.ButtonText: theme.text,
        role.BrightText: theme.accent,
        role.ToolTipBase: theme.raised,
        role.ToolTipText: theme.text,
        role.PlaceholderText: theme.dim,
        role.Highlight: theme.accent,
        role.HighlightedText: theme.panel,
        role.Accent: theme.accent,
        role.Link: theme.accent,
        role.Light: theme.raised,
        role.Midlight: theme.hairline,
        role.Mid: theme.outline,
        role.Dark: theme.outline,
        role.Shadow: theme.hairline,
    }
    made = QPalette()
    for key, value in colours.items():
        made.setColor(key, QColor(value))
    for key in (role.WindowText, role.Text, role.ButtonText):
        made.setColor(QPalette.ColorGroup.Disabled, key, theme.color("dim", 0.6))
    return made


@dataclass(frozen=True, slots=True)
class Type:
    """The two faces, sized in parts of the base height ``B`` (see the style page of the docs)."""

    sans_family: str
    mono_family: str
    base_px: float
    least: float = 0.0
    """No text is smaller than this part of ``B``. [1]"""
    floor_px: int = 8
    """Nor smaller than this. [px]"""

    @staticmethod
    def of(base_px: float, least: float = 0.0) -> "Type":
        """Return the bundled faces, or DejaVu where they are not installed in the program."""
        known = set(QFontDatabase.families())
        sans = next((f for f in ("IBM Plex Sans", "DejaVu Sans") if f in known), QFont().family())
        mono = next((f for f in ("IBM Plex Mono", "DejaVu Sans Mono") if f in known), "monospace")
        return Type(sans, mono, base_px, least)

    def sans(self, size: float = 1.0, weight: int = 400) -> QFont:
        """Return the text face at ``size × B``; it is shared, so copy it before changing it."""
        return _sans(self.sans_family, self._pixels(size), weight)

    def mono(self, size: float = 1.0, weight: int = 400) -> QFont:
        """Return the face of every number that can change; it is shared, so copy it before changing it."""
        return _mono(self.mono_family, self._pixels(size), weight)

    def caps(self) -> QFont:
        """Return the face of a panel's head: small capitals, spaced."""
        font = QFont(self.sans(0.86, 600))
        font.setCapitalization(QFont.Capitalization.AllUppercase)
        font.setLetterSpacing(QFont.SpacingType.AbsoluteSpacing, 1.3)
        return font

    def _pixels(self, size: float) -> int:
        return max(self.floor_px, round(self.base_px * max(size, self.least)))

    def width(self, text: str, font: QFont) -> float:
        """Return how wide a text is in a face. [px]"""
        return QFontMetricsF(font).horizontalAdvance(text)


@cache
def _sans(family: str, pixels: int, weight: int) -> QFont:
    """Return the text face, made once: a new one would look for its glyphs anew each time."""
    font = QFont(family)
    font.setPixelSize(pixels)
    if weight != 400:
        # A variable face: the axis alone, since setWeight would thicken it a second time.
        font.setVariableAxis(QFont.Tag("wght"), weight)
    return font


@cache
def _mono(family: str, pixels: int, weight: int) -> QFont:
    """Return the face of numbers, made once."""
    font = QFont(family)
    font.setPixelSize(pixels)
    font.setWeight(QFont.Weight(weight))
    return font
