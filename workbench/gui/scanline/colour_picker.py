"""Asks for the colour of the solid card; the plot follows while the person looks."""

from collections.abc import Callable

from PySide6.QtGui import QColor
from PySide6.QtWidgets import QColorDialog, QWidget

__all__ = ["ColourPicker"]

Colour = tuple[float, float, float]


class ColourPicker(QColorDialog):
    """A dialog that tells every colour at once and takes it back when it is left."""

    def __init__(
        self, colour: Colour, take: Callable[[Colour], object], drop: Callable[[], object], parent: QWidget
    ) -> None:
        super().__init__(QColor.fromRgbF(*colour), parent)
        self.setWindowTitle("Colour of the solid card")
        self.setOption(QColorDialog.ColorDialogOption.DontUseNativeDialog)
        self.currentColorChanged.connect(lambda c: take((c.redF(), c.greenF(), c.blueF())))
        self.rejected.connect(drop)
        self.finished.connect(self.deleteLater)
