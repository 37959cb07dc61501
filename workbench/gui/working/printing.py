"""Text on paper, black on white, with a head that says whose it is."""

from html import escape

from PySide6.QtGui import QFont, QPageSize, QTextDocument
from PySide6.QtPrintSupport import QPrintDialog, QPrinter
from PySide6.QtWidgets import QDialog, QWidget

__all__ = ["paper", "print_text"]


def print_text(owner: QWidget, head: str, text: str) -> None:
    """Ask for a printer, or for a PDF to write, and print."""
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setPageSize(QPageSize(QPageSize.PageSizeId.A4))
    printer.setDocName(head)
    dialog = QPrintDialog(printer, owner)
    dialog.setWindowTitle("Print the working")
    if dialog.exec() == QDialog.DialogCode.Accepted:
        paper(head, text).print_(printer)
    dialog.deleteLater()


def paper(head: str, text: str) -> QTextDocument:
    """Return what goes on paper."""
    document = QTextDocument()
    document.setDefaultFont(QFont("IBM Plex Mono", 9))
    document.setHtml(
        f'<h3 style="color: #000000">{escape(head)}</h3>'
        f'<pre style="color: #000000; white-space: pre-wrap">{escape(text)}</pre>'
    )
    return document
