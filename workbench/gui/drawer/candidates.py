"""Candidates as rows of a table, with the board as it is for comparison, and sentences on them."""

from collections.abc import Sequence

import numpy as np

from workbench.circuit.fit.drawer import Leg, listed_words
from workbench.circuit.fit.fit import Aim, Candidate, best_at, best_first
from workbench.circuit.sizing import FULL_SCALE_VOLTS
from workbench.gui.widgets import Sign
from workbench.gui.widgets.figure_table import Column, FigureRow
from workbench.pipeline.fits import FitRun
from workbench.pipeline.result import Result
from workbench.project.document import Channel
from workbench.units import format_fixed

__all__ = ["AIM_WORDS", "COLUMNS", "candidate_rows", "legs_words", "proof_words", "taken"]

COLUMNS = (
    Column("best at", "level, match, current, parts", mono=False, right=False),
    Column("white V", "0.0000"),
    Column("level error mV", "000.000"),
    Column("DNL", "00.00↓"),
    Column("INL", "00.00"),
    Column("match", "00.00 %"),
    Column("source Ω", "0000.0"),
    Column("current mA", "000.00"),
    Column("parts", "000"),
    Column("legs", "510 Ω · 1 kΩ · 2 kΩ · 3.9 kΩ · 8.2 kΩ", right=False, takes_rest=True),
)
AIM_WORDS = {
    Aim.LEVEL: "level error",
    Aim.DNL: "even steps",
    Aim.MATCHING: "channels alike",
    Aim.SOURCE: "source near 75 Ω",
    Aim.CURRENT: "little current",
    Aim.PARTS: "few parts",
}
"""What a person can ask for, in the order of the list."""
_SHORT = {
    Aim.LEVEL: "level",
    Aim.DNL: "steps",
    Aim.MATCHING: "match",
    Aim.SOURCE: "source",
    Aim.CURRENT: "current",
    Aim.PARTS: "parts",
}
_NOW = "as it is now"


def candidate_rows(result: Result, candidates: Sequence[Candidate], aim: Aim) -> list[FigureRow]:
    """Return the board as it is, then the candidates, those that serve the aim best first.

    A candidate that others beat at everything is left out.
    """
    best = best_at(candidates)
    rows = [_now_row(result)] if result.channels.red.levels.volts_by_code.any() else []
    for candidate in best_first((each for each in candidates if best[id(each)]), aim):
        mark = Sign.PASSES if taken(result, candidate) else None
        words = ", ".join(_SHORT[each] for each in best[id(candidate)])
        rows.append(FigureRow((words, *_figures(candidate)), candidate, mark, tip=_tip(candidate)))
    return rows


def taken(result: Result, candidate: Candidate) -> bool:
    """Return whether a candidate is what the board has."""
    return candidate.networks == tuple(result.project.channels[channel] for channel in Channel)


def _figures(candidate: Candidate) -> tuple[str, ...]:
    return (
        f"{candidate.full_scale_volts:.4f}",
        f"{1e3 * candidate.worst_error_volts:.3f}",
        _steps(candidate.max_dnl_lsb, candidate.monotonic),
        f"{candidate.max_inl_lsb:.2f}",
        f"{100.0 * candidate.mismatch:.2f} %",
        f"{candidate.source_ohms:.1f}",
        f"{1e3 * candidate.worst_total_current_amps:.2f}",
        str(candidate.n_parts),
        legs_words(candidate).replace("\n", "   "),
    )


def _tip(candidate: Candidate) -> str:
    falls = "" if candidate.monotonic else "\n↓ a step goes down: not monotonic"
    return legs_words(candidate) + falls


def _steps(max_dnl_lsb: float, monotonic: bool) -> str:
    return f"{max_dnl_lsb:.2f}" if monotonic else f"{max_dnl_lsb:.2f}↓"


def _now_row(result: Result) -> FigureRow:
    channels = [result.channels[channel] for channel in Channel]
    whites = [float(each.levels.volts_by_code[-1]) for each in channels]
    errors = [
        np.abs(v - np.linspace(0.0, FULL_SCALE_VOLTS, len(v))).max()
        for v in (each.levels.volts_by_code for each in channels)
    ]
    sources = [each.levels.source_ohms for each in channels]
    mean = sum(whites) / len(whites)
    cells = (
        _NOW,
        f"{max(whites, key=lambda volts: abs(volts - FULL_SCALE_VOLTS)):.4f}",
        f"{1e3 * max(errors):.3f}",
        _steps(
            max(each.linearity.max_dnl_lsb for each in channels),
            all(each.linearity.monotonic for each in channels),
        ),
        f"{max(each.linearity.max_inl_lsb for each in channels):.2f}",
        f"{100.0 * (max(whites) - min(whites)) / mean if mean else 0.0:.2f} %",
        f"{max(sources, key=lambda ohms: abs(ohms - 75.0)):.1f}",
        f"{1e3 * sum(float(each.levels.supply_amps.max(initial=0.0)) for each in channels):.2f}",
        str(sum(len(each.network.resistors) for each in channels)),
        "",
    )
    return FigureRow(cells, dim=True)


def proof_words(run: FitRun) -> tuple[Sign, str]:
    """Say whether the smallest level error is proved, and with how many parts a leg."""
    legs = ("one part", "up to two parts", "up to three parts")[run.most_parts - 1] + " a leg"
    if run.fit.proved_best:
        return Sign.PASSES, f"Proved: with {legs}, no other choice comes closer to the even staircase."
    gap = format_fixed(run.fit.gap_volts, "V", prefix="m", decimals=2)
    return Sign.NOTE, f"Not proved: with {legs}, another choice may come closer by up to {gap}."


def legs_words(candidate: Candidate) -> str:
    """Return the legs of every channel, alike channels once: ``all: 510 Ω · 1 kΩ · 2.2 kΩ || 22 kΩ``."""
    names: dict[tuple[Leg, ...], list[str]] = {}
    for channel, legs in zip(Channel, candidate.legs, strict=True):
        names.setdefault(legs, []).append(channel.value)
    if len(names) == 1:
        return _legs(candidate.legs[0])
    return "\n".join(f"{', '.join(words)}: {_legs(legs)}" for legs, words in names.items())


def _legs(legs: Sequence[Leg]) -> str:
    return " · ".join(listed_words(legs))
