"""The plot on the clipboard: as a picture and as text."""

from PySide6.QtCore import QMimeData
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QWidget

from workbench.gui.scanline.cards.readout_card import Readout
from workbench.gui.scanline.content.areas import region_spans
from workbench.gui.scanline.content.words import microseconds, reading_table
from workbench.project.document import Project

__all__ = ["copy_both", "copy_picture", "copy_text", "line_text"]


def line_text(project: Project, readout: Readout | None) -> str:
    """Return the line as text: its counts, and what the cursors read, with tabs between columns."""
    mode = project.mode
    rows = [f"{project.name}: scanline {project.scanline} of {mode.v.total}, {mode.name}", ""]
    rows.append("region\tpx\tµs")
    for region, first, after in region_spans(mode.h):
        rows.append(f"{region.value}\t{after - first}\t{microseconds((after - first) * mode.pixel_s, mode)}")
    if readout is not None:
        rows += ["", reading_table(readout.here, readout.there, readout.between, mode)]
    return "\n".join(rows) + "\n"


def copy_picture(widget: QWidget) -> None:
    """Put a picture of a widget on the clipboard."""
    QGuiApplication.clipboard().setPixmap(widget.grab())


def copy_text(text: str) -> None:
    """Put a text on the clipboard."""
    QGuiApplication.clipboard().setText(text)


def copy_both(widget: QWidget, text: str) -> None:
    """Put a picture and a text on the clipboard: who pastes takes what it can."""
    data = QMimeData()
    data.setImageData(widget.grab().toImage())
    data.setText(text)
    QGuiApplication.clipboard().setMimeData(data)
