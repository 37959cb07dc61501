"""What an EDID says, in words for a person."""

from workbench.timing.edid.values import Edid, Extension, Limits

__all__ = ["extension_words", "identity_words", "input_words", "limits_words"]


def identity_words(edid: Edid) -> str:
    """Return who made the monitor and when: ``ROW “Riverside 17”, product 1234, week 7 of 2004``."""
    product = edid.product
    name = f" “{product.name}”" if product.name else ""
    serial = product.serial_text or (str(product.serial) if product.serial else "")
    if product.week == 255:
        made = f"model year {product.year}"
    elif product.week:
        made = f"week {product.week} of {product.year}"
    else:
        made = f"{product.year}"
    number = f", serial {serial}" if serial else ""
    return f"{product.maker}{name}, product {product.code:04x}{number}, {made}"


def input_words(edid: Edid) -> str:
    """Return the analog input definition: levels, setup, the kinds of sync it takes."""
    analog = edid.analog
    if analog is None:
        return "digital: these are not the limits of an analog input"
    below = f" ({analog.sync_volts:.3f} V below blanking)" if analog.sync_volts else ""
    kinds = (
        ("separate sync", analog.separate_sync),
        ("composite sync on H", analog.composite_sync),
        (f"sync on green{below}", analog.sync_on_green),
    )
    taken = " or ".join(name for name, is_taken in kinds if is_taken) or "no kind of sync"
    setup = "black above blanking (setup)" if analog.setup_expected else "black at blanking"
    serration = ", V sync serrated where shared" if analog.serration else ""
    return f"analog, white {analog.white_volts:.3f} V, {setup}; takes {taken}{serration}"


def limits_words(limits: Limits | None) -> str:
    """Return the range limits."""
    if limits is None:
        return "no range limits given"
    clock_hz = limits.finer_pixel_clock_hz or limits.max_pixel_clock_hz
    clock = f", pixels up to {clock_hz / 1e6:g} MHz" if clock_hz else ""
    lines, fields = "lines not said", "fields not said"
    if limits.lines:
        lines = f"lines {limits.lines[0] / 1e3:.4g} … {limits.lines[1] / 1e3:.4g} kHz"
    if limits.fields:
        fields = f"fields {limits.fields[0]:.4g} … {limits.fields[1]:.4g} Hz"
    return f"{lines}, {fields}{clock}"


def extension_words(extension: Extension) -> str:
    """Return a block after the base block, and that it is skipped."""
    wrong = "" if extension.checksum_ok else ", checksum wrong"
    return f"{extension.kind} (tag {extension.tag:02x}), skipped{wrong}"
