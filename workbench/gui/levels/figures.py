"""What the Levels page shows of a channel: a row of figures for every code, and sentences on them."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from workbench.checks.groups import is_sound
from workbench.checks.limits import WHITE_VOLTS
from workbench.circuit.linearity import EVEN_LSB
from workbench.pipeline.result import ChannelResult
from workbench.units import format_fixed
from workbench.waveform.eye import lightness, srgb_from_volts

__all__ = ["NOTABLE_LSB", "SHOWN_LSB", "CodeFigures", "FloatArray", "code_figures", "signed"]

NOTABLE_LSB = 0.25
"""A step this far from even is pointed at in the picture (our own). [LSB]"""

SHOWN_LSB = 0.005
"""Errors under this show as 0.00 and are called even. [LSB]"""

FloatArray = NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class CodeFigures:
    """The levels of one channel, code by code."""

    bits: int
    volts: FloatArray
    """Loaded level, shape (n_codes,). [V]"""
    open_volts: FloatArray
    """Level with nothing connected, shape (n_codes,). [V]"""
    ideal_volts: FloatArray
    """Even staircase from 0 to 0.700 V, shape (n_codes,). [V]"""
    step_volts: FloatArray
    """Step into each code, 0 for the first, shape (n_codes,). [V]"""
    dnl_lsb: FloatArray
    """Error of the step into each code, 0 for the first, shape (n_codes,). [LSB]"""
    inl_lsb: FloatArray
    """Distance from the straight line, shape (n_codes,). [LSB]"""
    lightness: FloatArray
    """L* of a grey at this level, shape (n_codes,). [1]"""
    grey: NDArray[np.uint8]
    """That grey as sRGB, shape (n_codes,). [1]"""
    sound: bool
    """Whether the network has levels at all."""

    @property
    def n_codes(self) -> int:
        """Number of codes. [1]"""
        return len(self.volts)

    @property
    def worst_step(self) -> int:
        """The code whose step is most uneven, the first of equal ones."""
        return int(np.argmax(np.abs(self.dnl_lsb).round(9)))

    @property
    def worst_level(self) -> int:
        """The code that lies farthest from the straight line, the first of equal ones."""
        return int(np.argmax(np.abs(self.inl_lsb).round(9)))

    @property
    def usual_step_volts(self) -> float:
        """The step that most steps have. [V]"""
        return float(np.median(self.step_volts[1:])) if self.n_codes > 1 else 0.0

    def code_text(self, code: int) -> str:
        """Return a code as bits."""
        return f"{code:0{self.bits}b}" if self.bits else ""

    def worst_words(self, errors: FloatArray, code: int) -> tuple[str, str]:
        """Return the worst error and where it is, or that all is even."""
        if abs(errors[code]) < SHOWN_LSB:
            return "0.00 LSB", "everywhere"
        return signed(float(errors[code])) + " LSB", f"at {code}"

    @property
    def eye_words(self) -> str:
        """Say how even the steps look."""
        return self.eye_wordings[0]

    @property
    def eye_wordings(self) -> tuple[str, ...]:
        """Say how even the steps look, longest wording first."""
        start = "lightness L*, black 0 to white 100"
        place = self.worst_step
        if abs(self.dnl_lsb[place]) > EVEN_LSB:
            odd = f"{place - 1} to {place} stands out"
            return f"{start}; even steps would look alike; {odd}", f"lightness L*; {odd}", odd
        return f"{start}; even steps would look alike", start, "lightness L*"

    @property
    def clipped_words(self) -> tuple[str, ...]:
        """Say which codes look alike, brighter than full, longest wording first; nothing where none do."""
        above = np.flatnonzero(self.volts > WHITE_VOLTS)
        if len(above) < 2:
            return ()
        alike = f"{above[0]} to {above[-1]} look alike"
        return f"{alike}: above {format_fixed(WHITE_VOLTS, 'V')}", alike


def code_figures(channel: ChannelResult) -> CodeFigures:
    """Return the figures of a solved channel."""
    volts = channel.levels.volts_by_code
    n_codes = len(volts)
    step_volts, dnl = np.zeros(n_codes), np.zeros(n_codes)
    step_volts[1:], dnl[1:] = channel.linearity.steps_volts, channel.linearity.dnl_lsb
    return CodeFigures(
        bits=n_codes.bit_length() - 1,
        volts=volts,
        open_volts=channel.levels.open_by_code,
        ideal_volts=np.linspace(0.0, WHITE_VOLTS, n_codes) if n_codes > 1 else np.zeros(1),
        step_volts=step_volts,
        dnl_lsb=dnl,
        inl_lsb=channel.linearity.inl_lsb,
        lightness=np.asarray(lightness(volts), dtype=np.float64),
        grey=srgb_from_volts(volts),
        sound=is_sound(channel.levels),
    )


def signed(value: float) -> str:
    """Return an error with its sign, two decimals; none at zero."""
    text = f"{value:+.2f}"
    return text.replace("-", "\u2212") if text.strip("+-0.") else "0.00"
