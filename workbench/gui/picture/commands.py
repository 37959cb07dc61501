"""The commands that bring images in; the page brings those of its own."""

from PySide6.QtGui import QKeySequence

from workbench.gui.actions import ActionSpec
from workbench.gui.bench import Images

__all__ = ["picture_specs"]


def picture_specs(images: Images) -> tuple[ActionSpec, ...]:
    """Return the commands that can be given on any page."""
    return (
        ActionSpec(
            "picture.load",
            "Load an image …",
            images.choose,
            "Picture",
            "Ctrl+I",
            "Shows a picture file by the colours that the board makes.",
        ),
        ActionSpec(
            "picture.paste",
            "Paste an image",
            images.paste,
            "Picture",
            QKeySequence.StandardKey.Paste,
            "Shows the picture that is on the clipboard.",
        ),
    )
