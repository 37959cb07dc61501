"""Which colours a board can make: how many, which greys among them, how far from a picture.

A colour is three levels, one a channel, as a display shows them. Levels of one channel that a
display cannot tell apart, because they are equal or both above full scale, count once.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from workbench.picture.colour import delta_e_2000, lab_from_light, lab_from_srgb
from workbench.picture.dither import Levels3
from workbench.picture.light import light_from_volts
from workbench.progress import SILENT, Progress

__all__ = ["NEUTRAL", "Grey", "Palette", "PictureError", "palette", "picture_error"]

FloatArray = NDArray[np.floating]

NEUTRAL = 1.0
"""Difference from a true grey below which a grey counts as neutral: about just noticeable. [ΔE 2000]"""

_SAME_LIGHT = 1e-6
_BAND_PIXELS = 1 << 16


@dataclass(frozen=True, slots=True)
class Grey:
    """The best grey of one level of green: the nearest levels of red and blue beside it."""

    codes: tuple[int, int, int]
    volts: tuple[float, float, float]
    lightness: float
    """L*, 0 … 100. [1]"""
    tint: float
    """Difference from the true grey of this lightness. [ΔE 2000]"""

    @property
    def neutral(self) -> bool:
        """Return whether the eye takes it for grey."""
        return self.tint < NEUTRAL


@dataclass(frozen=True, slots=True)
class Palette:
    """What a board can show."""

    combinations: int
    """Combinations of codes. [1]"""
    seen_levels: tuple[int, int, int]
    """Levels of red, green and blue that a display tells apart. [1]"""
    greys: tuple[Grey, ...]
    """From dark to light, one for each level of green that is told apart."""

    @property
    def colours(self) -> int:
        """Return the number of colours a display tells apart. [1]"""
        red, green, blue = self.seen_levels
        return red * green * blue

    @property
    def neutral_greys(self) -> tuple[Grey, ...]:
        """Return the greys that are neutral, black and white among them where they are."""
        return tuple(grey for grey in self.greys if grey.neutral)


@dataclass(frozen=True, slots=True)
class PictureError:
    """How far a picture as sent is from the picture that was wanted, pixel by pixel. [ΔE 2000]"""

    mean: float
    worst: float
    worst_at: tuple[int, int]
    """Column and row of the worst pixel. [1]"""


def palette(levels: Levels3) -> Palette:
    """Return what a board can show.

    Parameters
    ----------
    levels : tuple of 3 float arrays
        Level of every code of red, green and blue, loaded. [V]
    """
    light = [light_from_volts(volts) for volts in levels]
    told_apart = [_distinct(channel) for channel in light]
    red, green, blue = (len(codes) for codes in told_apart)
    greys = sorted(
        (_grey(int(code), levels, light) for code in told_apart[1]), key=lambda grey: grey.lightness
    )
    combinations = len(levels[0]) * len(levels[1]) * len(levels[2])
    return Palette(combinations, (red, green, blue), tuple(greys))


def picture_error(
    image: NDArray[np.uint8], codes: NDArray[np.uint8], levels: Levels3, *, progress: Progress = SILENT
) -> PictureError:
    """Return how far the picture that is sent is from the one that was wanted.

    Parameters
    ----------
    image : uint8 array, shape (height, width, 3)
        The picture wanted, sRGB bytes. [1]
    codes : uint8 array, shape (3, height, width)
        The picture sent. [1]
    levels : tuple of 3 float arrays
        Level of every code, loaded. [V]
    progress : Progress
        Told the rows done; may stop the work.

    Notes
    -----
    Dither makes single pixels worse so that their mean is better; this counts single pixels.
    """
    height, width, _ = image.shape
    light = [light_from_volts(volts) for volts in levels]
    total, worst, worst_at = 0.0, -1.0, (0, 0)
    band = max(1, _BAND_PIXELS // width)
    for top in range(0, height, band):
        rows = slice(top, min(top + band, height))
        made = np.stack([table[plane[rows]] for table, plane in zip(light, codes, strict=True)], axis=-1)
        error = delta_e_2000(lab_from_srgb(image[rows]), lab_from_light(made))
        total += float(error.sum())
        at = int(error.argmax())
        if error.flat[at] > worst:
            worst, worst_at = float(error.flat[at]), (at % width, top + at // width)
        progress.step(rows.stop, height)
    return PictureError(total / (height * width), worst, worst_at)


def _distinct(light: FloatArray) -> NDArray[np.intp]:
    """Return the lowest code of each level that is told apart, from dark to light."""
    order = np.argsort(light, kind="stable")
    new = np.diff(light[order], prepend=-1.0) > _SAME_LIGHT
    return order[new]


def _grey(green: int, levels: Levels3, light: list[FloatArray]) -> Grey:
    """Return the grey around a code of green."""
    wanted = light[1][green]
    red, blue = (int(np.abs(light[channel] - wanted).argmin()) for channel in (0, 2))
    lab = lab_from_light([light[0][red], wanted, light[2][blue]])
    tint = float(delta_e_2000(lab, [lab[0], 0.0, 0.0]))
    volts = float(levels[0][red]), float(levels[1][green]), float(levels[2][blue])
    return Grey((red, green, blue), volts, float(lab[0]), tint)
