"""A drawing with other values: where they need no other room, everything else stays as it is."""

from collections.abc import Iterator
from dataclasses import replace

from workbench.circuit.network import Capacitor, Network
from workbench.drawing.elements import Drawing, Symbol
from workbench.drawing.faces import VALUE
from workbench.drawing.needs import VALUE_PAD, value_text
from workbench.drawing.runs import Part
from workbench.drawing.sheet import Sheet, least_box

__all__ = ["relabelled"]


def relabelled(drawing: Drawing, before: Network, after: Network, sheet: Sheet) -> Drawing | None:
    """Return what drawing the changed network anew would give; none where it has to be drawn anew.

    Parameters
    ----------
    drawing : Drawing
        Of ``before``, on the same board and ``sheet``.
    before, after : Network
        The network then and now.
    sheet : Sheet
        The room of the drawing.
    """
    if _shape(before) != _shape(after):
        return None
    changed = {new.id: new for old, new in zip(_parts(before), _parts(after), strict=True) if old != new}
    symbols = []
    for symbol in drawing.symbols:
        part = changed.get(symbol.part)
        if part is not None:
            text = value_text(part)
            if not _fits(symbol, text, sheet, least_box(sheet, first=symbol.field.left == drawing.boxes)):
                return None
            symbol = replace(symbol, value=replace(symbol.value, text=text))
        symbols.append(symbol)
    return replace(drawing, symbols=tuple(symbols))


def _parts(network: Network) -> Iterator[Part]:
    yield from network.resistors
    yield from network.capacitors


def _shape(network: Network) -> tuple[object, ...]:
    parts = tuple((isinstance(part, Capacitor), part.id, part.a, part.b) for part in _parts(network))
    return network.pins, network.output, parts


def _fits(symbol: Symbol, text: str, sheet: Sheet, least: float) -> bool:
    """Return whether neither the old text nor the new one is what makes its column wide."""
    if symbol.vertical or symbol.value.face != VALUE:
        return False
    widths = {sheet.measure(each, VALUE) for each in (symbol.value.text, text)}
    return len(widths) == 1 or max(widths) + VALUE_PAD * sheet.unit <= least
