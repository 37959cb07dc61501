"""How alike the channels' whites are, and what the output looks like from the cable: two sentences."""

from workbench.checks.groups import is_sound, source_text
from workbench.checks.limits import CHANNEL_MISMATCH, TERMINATION
from workbench.gui.widgets import Sign
from workbench.pipeline.result import ChannelResult, Result
from workbench.project.document import Channel
from workbench.units import format_fixed, format_percent, format_quantity

__all__ = ["Sentence", "matching_words", "source_words"]

_USUAL_OHMS = 75.0
"""Characteristic impedance of video cable, where a project has none. [Ω]"""

Sentence = tuple[Sign, str]
"""What is said, and the sign before it."""


def matching_words(result: Result) -> Sentence:
    """Say each channel's white and how far they are apart, in percent of their mean."""
    whites = {
        channel: float(solved.levels.volts_by_code[-1])
        for channel in Channel
        if is_sound((solved := result.channels[channel]).levels)
    }
    if len(whites) < len(Channel):
        missing = ", ".join(channel.value for channel in Channel if channel not in whites)
        return Sign.WARNS, f"No white from {missing}: the channels cannot be compared."
    listed = ", ".join(f"{channel.value} {volts:.3f}" for channel, volts in whites.items())
    mean = sum(whites.values()) / len(whites)
    apart = (max(whites.values()) - min(whites.values())) / mean if mean > 0.0 else 0.0
    if apart == 0.0:
        return Sign.PASSES, f"The whites are alike: {format_fixed(mean, 'V')}."
    fine = CHANNEL_MISMATCH.holds(100.0 * apart)
    verdict = f"{'within' if fine else 'over'} {format_percent((CHANNEL_MISMATCH.high or 0.0) / 100.0)}"
    return (
        Sign.PASSES if fine else Sign.FAILS,
        f"The whites differ by {format_percent(apart)}, {verdict}: {listed} V.",
    )


def source_words(result: Result, channel: Channel) -> Sentence:
    """Say a channel's source resistance, and what part of a wave that comes back it sends out again.

    Notes
    -----
    A source of ``R`` on a line of ``Z`` reflects ``(R - Z) / (R + Z)`` of the volts that arrive. Where
    the resistance changes with the code, it is judged at white.
    """
    solved: ChannelResult = result.channels[channel]
    ohms = solved.levels.source_ohms
    if not is_sound(solved.levels) or not 0.0 <= ohms < float("inf"):
        return Sign.NOTE, "There is no source resistance."
    cable = result.project.cable
    line_ohms = _USUAL_OHMS if cable is None else cable.ohms
    line, text = format_quantity(line_ohms, "Ω"), source_text(solved.levels)
    at_black = float(solved.levels.source_ohms_by_code[0])
    if all(TERMINATION.holds(_USUAL_OHMS * each / line_ohms) for each in (ohms, at_black)):
        return Sign.PASSES, f"Source resistance {text}: matched to {line}."
    part = format_percent(abs(ohms - line_ohms) / (ohms + line_ohms), 0)
    when = "at white " if "at white" in text else ""
    return Sign.NOTE, f"Source resistance {text}: {when}{part} of an echo comes back, on {line} of cable."
