"""What ``backporch monitor --json`` prints of an EDID."""

from workbench.timing.edid.ranges import outside
from workbench.timing.edid.values import Edid, Limits
from workbench.timing.figures import timing_object

__all__ = ["monitor_object"]


def monitor_object(edid: Edid) -> dict[str, object]:
    """Return the monitor object: SI units, null where the monitor does not say or is digital."""
    analog, product = edid.analog, edid.product
    return {
        "version": edid.version,
        "input": "digital" if analog is None else "analog",
        "checksum_ok": edid.checksum_ok,
        "white_v": analog and analog.white_volts,
        "sync_v": analog and analog.sync_volts,
        "setup_expected": analog and analog.setup_expected,
        "separate_sync": analog and analog.separate_sync,
        "composite_sync": analog and analog.composite_sync,
        "sync_on_green": analog and analog.sync_on_green,
        "modes": [timing_object(mode) for mode in edid.modes],
        "range": edid.limits and _range_object(edid.limits),
        "maker": product.maker,
        "product": product.code,
        "serial": product.serial,
        "name": product.name,
        "week": product.week,
        "year": product.year,
        "size_m": edid.size_cm and [side / 100 for side in edid.size_cm],
        "gamma": edid.gamma,
        "extensions": [
            {"tag": extension.tag, "kind": extension.kind, "checksum_ok": extension.checksum_ok}
            for extension in edid.extensions
        ],
        "damages": list(edid.damages),
        "outside_range": _outside_range(edid),
    }


def _range_object(limits: Limits) -> dict[str, float | None]:
    return {
        "v_min_hz": limits.v_min_hz,
        "v_max_hz": limits.v_max_hz,
        "h_min_hz": limits.h_min_hz,
        "h_max_hz": limits.h_max_hz,
        "max_pixel_clock_hz": limits.max_pixel_clock_hz,
    }


def _outside_range(edid: Edid) -> list[str]:
    """Return the names of listed modes that the monitor's own limits exclude."""
    limits = edid.limits
    return [] if limits is None else [mode.name for mode in edid.modes if outside(mode, limits)]
