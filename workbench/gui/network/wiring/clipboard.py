"""Parts on the clipboard: as JSON for this program, and as readable text for all others."""

from PySide6.QtCore import QMimeData
from PySide6.QtGui import QGuiApplication

from workbench.errors import FileError
from workbench.files.clipping import MIME, clipping_text, read_clipping
from workbench.project.edits.clippings import Clipping
from workbench.units import format_percent, format_quantity

__all__ = ["holds_parts", "parts_on_clipboard", "put_parts", "readable"]


def readable(clipping: Clipping) -> str:
    """Return parts as lines: name, value, tolerance, between which nodes."""
    lines = [
        (part.id, format_quantity(part.ohms, "Ω"), f"± {format_percent(part.tolerance)}", part.a, part.b)
        for part in clipping.resistors
    ]
    lines += [
        (part.id, format_quantity(part.farads, "F"), "", part.a, part.b) for part in clipping.capacitors
    ]
    return "".join("\t".join(line) + "\n" for line in lines)


def put_parts(clipping: Clipping) -> None:
    """Put parts on the clipboard."""
    data = QMimeData()
    data.setData(MIME, clipping_text(clipping).encode())
    data.setText(readable(clipping))
    QGuiApplication.clipboard().setMimeData(data)


def holds_parts() -> bool:
    """Return whether the clipboard seems to hold parts."""
    data = QGuiApplication.clipboard().mimeData()
    return data.hasFormat(MIME) or (data.hasText() and data.text().lstrip().startswith("{"))


def parts_on_clipboard() -> Clipping | None:
    """Return the parts that are on the clipboard; none if it holds something else.

    Parts that came as JSON text, from a mail for instance, are read as well.

    Raises
    ------
    FileError
        If they are damaged; says where.
    """
    data = QGuiApplication.clipboard().mimeData()
    if data.hasFormat(MIME):
        return read_clipping(bytes(data.data(MIME).data()).decode(errors="replace"))
    text = data.text() if data.hasText() else ""
    if not text.lstrip().startswith("{"):
        return None
    try:
        return read_clipping(text)
    except FileError as reason:
        raise FileError(f"the text on the clipboard cannot be put in: {reason}") from reason
