"""The modes of the standards' tables as values."""

from workbench.timing.mode import Axis, Mode, Polarity
from workbench.timing.tables.cta import CLASSIC_ROWS, CTA_ROWS
from workbench.timing.tables.dmt import ROWS as DMT_ROWS

__all__ = ["CLASSIC", "CTA", "DMT", "KNOWN", "dmt_mode"]


def _rows(text: str) -> list[list[str]]:
    return [line.split() for line in text.strip().splitlines() if not line.startswith("#")]


def _mode(source: str, cells: list[str]) -> Mode:
    """Read a table row: name, clock in kHz, the two axes, and borders where there are some."""
    name, clock_khz, *counts = cells
    h_border, v_border = (int(counts[11]), int(counts[12])) if "border" in counts else (0, 0)
    return Mode(
        name=name,
        source=source,
        pixel_clock_hz=int(clock_khz) * 1000,
        h=_axis(counts[0:5], h_border),
        v=_axis(counts[5:10], v_border),
        interlaced=name.endswith("i"),
    )


def _axis(cells: list[str], border: int) -> Axis:
    active, front_porch, sync, back_porch = map(int, cells[:4])
    return Axis(active, front_porch, sync, back_porch, Polarity(cells[4]), border)


DMT: tuple[Mode, ...] = tuple(_mode(f"VESA DMT {row[0]}", row[1:]) for row in _rows(DMT_ROWS))
"""All 88 modes of the VESA DMT table, in the order of their ids; id ``n`` is ``DMT[n - 1]``."""

CTA: tuple[Mode, ...] = tuple(
    _mode(f"CTA-861 VIC {row[0].replace(',', ' and ')}", row[1:]) for row in _rows(CTA_ROWS)
)
"""The CTA-861 formats an analog monitor may meet."""

CLASSIC: tuple[Mode, ...] = tuple(_mode("classic", row) for row in _rows(CLASSIC_ROWS))
"""Modes older than the tables that many monitors still know."""

KNOWN: tuple[Mode, ...] = DMT + CTA + CLASSIC
"""Every mode of the tables."""


def dmt_mode(number: int) -> Mode:
    """Return the mode of a DMT id, ``1 <= number <= 88``.

    >>> dmt_mode(0x04).name
    '640x480@60'
    """
    return DMT[number - 1]
