"""The face in which the head of a table is written."""

from PySide6.QtGui import QFont
from PySide6.QtWidgets import QHeaderView

__all__ = ["set_head_face"]


def set_head_face(head: QHeaderView, face: QFont) -> None:
    """Write a table's head in a face.

    Qt paints the words on the head's viewport, and under a style sheet that one keeps the face it had
    before: it is told as well.
    """
    head.setFont(face)
    head.viewport().setFont(face)
