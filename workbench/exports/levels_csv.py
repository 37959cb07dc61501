"""Every code of every channel as a table: levels, steps, currents, lightness."""

from collections.abc import Iterator

from workbench.checks.groups import is_sound
from workbench.pipeline.result import ChannelResult, Result
from workbench.project.document import Channel
from workbench.waveform.eye import lightness

__all__ = ["levels_csv"]

_HEADER = "channel,code,bits,loaded_v,open_v,step_v,dnl_lsb,inl_lsb,pins_a,load_a,lightness"


def levels_csv(result: Result) -> bytes:
    """Return the levels of all codes of all channels, UTF-8.

    ``step_v`` and ``dnl_lsb`` belong to the step up to the code of their row, so code 0 has none.
    ``pins_a`` is what all pins of the channel draw from the supply, ``load_a`` what flows into the
    monitor; ``lightness`` is L* of a grey of that level. A channel whose network has no levels has
    empty cells.
    """
    rows = [row for channel in Channel for row in _rows(channel, result.channels[channel])]
    return "\n".join([_HEADER, *rows, ""]).encode()


def _rows(channel: Channel, solved: ChannelResult) -> Iterator[str]:
    levels, line = solved.levels, solved.linearity
    loaded, opened = levels.volts_by_code.tolist(), levels.open_by_code.tolist()
    drawn, flowing = levels.supply_amps.tolist(), levels.load_amps.tolist()
    light = lightness(levels.volts_by_code).tolist()
    steps, dnl, inl = line.steps_volts.tolist(), line.dnl_lsb.tolist(), line.inl_lsb.tolist()
    for code, volts in enumerate(loaded):
        step = [repr(steps[code - 1]), repr(dnl[code - 1])] if code else ["", ""]
        figures = [repr(inl[code]), repr(drawn[code]), repr(flowing[code]), repr(light[code])]
        cells = [repr(volts), repr(opened[code]), *step, *figures]
        if not is_sound(levels):
            cells = [""] * len(cells)
        yield ",".join([channel.value, str(code), format(code, f"0{solved.network.bits}b"), *cells])
