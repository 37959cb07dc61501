"""Every figure and finding of a project: as the report's JSON object, and as text to read."""

from collections.abc import Iterator
from textwrap import wrap

from workbench.checks.finding import Finding, Severity
from workbench.checks.groups import is_sound, join_words, source_text
from workbench.circuit.network import Network
from workbench.circuit.response import Glitch
from workbench.pipeline.result import ChannelResult, Result
from workbench.project.document import Channel, Project
from workbench.timing.figures import timing_object
from workbench.timing.mode import Axis, Mode
from workbench.units import format_fixed, format_quantity, format_significant

__all__ = ["REPORT_VERSION", "finding_object", "report_object", "report_text", "timing_text"]

REPORT_VERSION = 1
"""Version of the report's JSON; it rises when a key changes its meaning or goes. [1]"""

_WORDS = {Severity.FAIL: "fails", Severity.WARN: "warns", Severity.INFO: "note"}
_FIGURES = (
    *("white", "one step", "largest DNL, INL", "monotonic", "source resistance"),
    *("pins at white", "edge, 10 to 90 %", "bandwidth, -3 dB", "settles to half LSB"),
)
"""Figures of a channel, which all mean nothing where its network has no levels."""
NOTHING = "–"
_NAME_WIDTH = 22
_INDENT = " " * 9
_WIDTH = 100


def report_object(result: Result) -> dict[str, object]:
    """Return the report as plain values for JSON: SI units, nothing rounded, lists for arrays.

    What means nothing, since a network has no levels, is ``None``.
    """
    return {
        "format": "backporch-report",
        "version": REPORT_VERSION,
        "timing": timing_object(result.project.mode),
        "channels": {channel.value: _channel_object(result.channels[channel]) for channel in Channel},
        "pins": {
            "total_current_a": result.pins.total_amps,
            "worst_pin_current_a": result.pins.worst_pin_amps,
        },
        "findings": [finding_object(finding) for finding in result.findings],
    }


def finding_object(finding: Finding) -> dict[str, object]:
    """Return one finding as plain values; a limit that does not exist is ``None``."""
    return {
        "id": finding.id,
        "severity": finding.severity.value,
        "subject": finding.subject,
        "headline": finding.headline,
        "measured": finding.measured,
        "unit": finding.unit,
        "low": finding.low,
        "high": finding.high,
        "source": finding.source,
        "from_memory": finding.from_memory,
        "why": finding.why,
        "remedy": finding.remedy_text,
    }


def report_text(result: Result) -> str:
    """Return the report for a terminal, every figure with its unit, every finding with its source."""
    sections = (
        _timing_lines(result.project.mode),
        _drive_lines(result.project),
        *(_channel_lines(names, channel) for names, channel in _alike(result)),
        _pin_lines(result),
        _finding_lines(result.findings),
    )
    return f"{result.project.name}\n\n" + "\n\n".join("\n".join(section) for section in sections) + "\n"


def timing_text(mode: Mode) -> str:
    """Return the figures of a mode for a terminal."""
    return "\n".join(_timing_lines(mode)) + "\n"


def _channel_object(channel: ChannelResult) -> dict[str, object]:
    known = {"bits": channel.network.bits, "topology": channel.topology.value}
    figures = _figures_object(channel)
    if not is_sound(channel.levels):
        figures = dict.fromkeys(figures)
    return {**known, **figures}


def _figures_object(channel: ChannelResult) -> dict[str, object]:
    levels, linearity, step = channel.levels, channel.linearity, channel.step
    return {
        "levels_v": levels.volts_by_code.tolist(),
        "unloaded_levels_v": levels.open_by_code.tolist(),
        "full_scale_v": linearity.full_scale_volts,
        "lsb_v": linearity.lsb_volts,
        "inl_lsb": linearity.inl_lsb.tolist(),
        "dnl_lsb": linearity.dnl_lsb.tolist(),
        "monotonic": linearity.monotonic,
        "source_ohms": levels.source_ohms,
        "pin_current_a": levels.pin_amps[-1].tolist(),
        "rise_s": step.rise_s,
        "bandwidth_hz": step.bandwidth_hz,
        "settle_s": step.settle_s,
        "first_ghost_ratio": step.first_ghost_ratio,
        "first_ghost_s": step.first_ghost_s,
        "worst_glitch": None if channel.glitch is None else _glitch_object(channel.glitch),
    }


def _glitch_object(glitch: Glitch) -> dict[str, object]:
    return {
        "before": glitch.before,
        "after": glitch.after,
        "peak_v": glitch.peak_volts,
        "area_v_s": glitch.area_volt_s,
    }


def _row(name: str, *cells: str) -> str:
    return f"  {name:<{_NAME_WIDTH}}{'  '.join(cells)}".rstrip()


def _timing_lines(mode: Mode) -> Iterator[str]:
    yield f"Timing: {mode.name}, {mode.source}"
    yield _row("pixel clock", format_quantity(mode.pixel_clock_hz, "Hz", 8), _ns(mode.pixel_s, "a pixel"))
    yield _row("line", _us(mode.line_s), format_quantity(mode.line_rate_hz, "Hz", 6))
    yield _row("frame", format_fixed(mode.frame_s, "s", prefix="m"), f"{mode.frame_rate_hz:.3f} Hz")
    yield _row("", f"{'active':>8}{'front porch':>13}{'sync':>8}{'back porch':>12}{'total':>8}  polarity")
    yield _axis_row("horizontal, px", mode.h)
    yield _axis_row("vertical, lines", mode.v)


def _axis_row(name: str, axis: Axis) -> str:
    counts = f"{axis.active:>8}{axis.front_porch:>13}{axis.sync:>8}{axis.back_porch:>12}{axis.total:>8}"
    return _row(name, f"{counts}  {axis.polarity.value.replace('-', '−')}")


def _drive_lines(project: Project) -> Iterator[str]:
    driver, load, cable = project.driver, project.load, project.cable
    yield "Drive and load"
    yield _row("supply", format_fixed(driver.supply_volts, "V", decimals=2))
    ohms = f"{format_quantity(driver.high_ohms, 'Ω')} high, {format_quantity(driver.low_ohms, 'Ω')} low"
    yield _row("pins", ohms, f"zeros {driver.zeros.value}", f"edges {format_quantity(driver.rise_s, 's')}")
    each = "none" if load.ohms is None else format_quantity(load.ohms, "Ω")
    yield _row("load", each if load.monitors == 1 else f"{load.monitors} × {each}", _capacitance(load.farads))
    for name, line in (("H sync", project.sync.h), ("V sync", project.sync.v)):
        series = f"{format_quantity(line.series_ohms, 'Ω')} in series"
        into = "" if line.input_ohms is None else f"into {format_quantity(line.input_ohms, 'Ω')}"
        yield _row(name, series, into)
    if cable is not None:
        yield _row("cable", format_quantity(cable.metres, "m"), format_quantity(cable.ohms, "Ω"))


def _capacitance(farads: float) -> str:
    return format_quantity(farads, "F") if farads else ""


def _alike(result: Result) -> list[tuple[str, ChannelResult]]:
    """Return the channels with the words for those that share one network and its skews."""
    names: dict[tuple[Network, Glitch | None], list[str]] = {}
    first: dict[tuple[Network, Glitch | None], ChannelResult] = {}
    for channel in Channel:
        found = result.channels[channel]
        alike = found.network, found.glitch
        names.setdefault(alike, []).append(channel.value)
        first.setdefault(alike, found)
    return [(join_words(words).capitalize(), first[alike]) for alike, words in names.items()]


def _channel_lines(names: str, channel: ChannelResult) -> Iterator[str]:
    levels, linearity, step = channel.levels, channel.linearity, channel.step
    yield f"{names}: {channel.network.bits} bits, {channel.topology.value}"
    for resistor in channel.network.resistors:
        yield _row(resistor.id, format_quantity(resistor.ohms, "Ω"))
    for capacitor in channel.network.capacitors:
        yield _row(capacitor.id, format_quantity(capacitor.farads, "F"))
    if not is_sound(levels):
        for name in _FIGURES:
            yield _row(name, NOTHING)
        return
    white = format_fixed(linearity.full_scale_volts, "V")
    yield _row("white", f"{white} loaded", f"{format_fixed(float(levels.open_by_code[-1]), 'V')} open")
    yield _row("one step", format_fixed(linearity.lsb_volts, "V", prefix="m", decimals=1))
    yield _row("largest DNL, INL", _lsb(linearity.max_dnl_lsb), _lsb(linearity.max_inl_lsb))
    yield _row("monotonic", "yes" if linearity.monotonic else "no")
    yield _row("source resistance", source_text(levels))
    yield _row("pins at white", *map(_amps, levels.pin_amps[-1].tolist()))
    yield _row("edge, 10 to 90 %", format_significant(step.rise_s, "s", 3))
    bandwidth = "no limit" if step.bandwidth_hz is None else format_significant(step.bandwidth_hz, "Hz", 3)
    yield _row("bandwidth, -3 dB", bandwidth)
    yield _row("settles to half LSB", format_significant(step.settle_s, "s", 3))
    if step.first_ghost_ratio is not None and step.first_ghost_s is not None:
        ghost = f"{100 * step.first_ghost_ratio:.1f} %"
        yield _row("first ghost", ghost, f"{format_significant(step.first_ghost_s, 's', 3)} after the edge")
    if channel.glitch is not None:
        spike = format_fixed(channel.glitch.peak_volts, "V")
        codes = f"code {channel.glitch.before} to {channel.glitch.after}"
        yield _row("largest spike", spike, f"{channel.glitch.area_volt_s * 1e9:.3g} V ns", codes)
    yield from _levels_table(channel)


def _levels_table(channel: ChannelResult) -> Iterator[str]:
    levels, linearity = channel.levels, channel.linearity
    digits = max(4, channel.network.bits)
    yield f"  code  {'bits':>{digits}}  loaded V    open V   DNL LSB   INL LSB"
    opened = levels.open_by_code.tolist()
    for code, volts in enumerate(levels.volts_by_code.tolist()):
        dnl = _signed(float(linearity.dnl_lsb[code - 1])) if code else ""
        bits = f"{code:0{channel.network.bits}b}" if channel.network.bits else ""
        inl = _signed(float(linearity.inl_lsb[code]))
        yield f"  {code:>4}  {bits:>{digits}}{volts:>10.4f}{opened[code]:>10.4f}{dnl:>10}{inl:>10}"


def _pin_lines(result: Result) -> Iterator[str]:
    yield "Colour pins, worst over all codes"
    yield _row("all together", _amps(result.pins.total_amps))
    yield _row("worst pin", _amps(result.pins.worst_pin_amps), result.pins.worst_pin)


def _finding_lines(findings: tuple[Finding, ...]) -> Iterator[str]:
    yield "Findings"
    if not findings:
        yield "  none"
    for finding in findings:
        yield from _wrapped(finding.headline, f"  {_WORDS[finding.severity]:<7}")
        yield from _wrapped(finding.why)
        if finding.remedy_text:
            yield from _wrapped(f"Remedy: {finding.remedy_text}")
        yield from _wrapped(f"Source: {finding.source}")


def _wrapped(text: str, start: str = _INDENT) -> list[str]:
    return wrap(text, _WIDTH, initial_indent=start, subsequent_indent=_INDENT)


def _signed(value: float) -> str:
    """Return a value with its sign, none at zero."""
    text = f"{value:+.3f}".replace("-", "−")
    return text if text.strip("+−0.") else "0.000"


def _amps(amps: float) -> str:
    return format_significant(amps, "A", 4)


def _lsb(value: float) -> str:
    return format_fixed(value, "LSB", decimals=2)


def _us(seconds: float) -> str:
    return format_fixed(seconds, "s", prefix="µ")


def _ns(seconds: float, of: str) -> str:
    return f"{format_fixed(seconds, 's', prefix='n', decimals=2)} {of}"
