"""The file commands, and the menu under the project's name that shows them."""

from collections.abc import Callable
from functools import partial

from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QMenu, QWidget

from workbench.gui.actions import Actions, ActionSpec
from workbench.gui.files.flow import FilesFlow
from workbench.gui.files.templates import menu_title
from workbench.project.templates import TEMPLATES, Template

__all__ = ["FileMenu", "file_specs"]

Key = QKeySequence.StandardKey


def file_specs(files: FilesFlow, quit_: Callable[[], object]) -> tuple[ActionSpec, ...]:
    """Return the commands of files, templates and exports."""
    return (
        ActionSpec("file.open", "Open …", files.open, "File", Key.Open, "Opens a project file."),
        ActionSpec("file.save", "Save", files.save, "File", Key.Save, "Writes the project to its file."),
        ActionSpec(
            "file.save-as",
            "Save as …",
            files.save_as,
            "File",
            "Ctrl+Shift+S",
            "Writes the project to another file, which is its file from then on.",
        ),
        *(
            ActionSpec(
                f"file.export-{kind.name}",
                f"Export {kind.name}",
                partial(files.export, kind),
                "Export",
                tip=f"Writes {kind.description} ({kind.suffix}).",
            )
            for kind in files.kinds
        ),
        *(_template_spec(files, template) for template in TEMPLATES),
        ActionSpec("file.quit", "Quit", quit_, "File", "Ctrl+Q", "Closes the window.", also="exit"),
    )


def _template_spec(files: FilesFlow, template: Template) -> ActionSpec:
    return ActionSpec(
        f"new.{template.id}",
        f"New from {menu_title(template)}",
        lambda: files.start_from(template),
        "New",
        tip=template.description,
    )


class FileMenu(QMenu):
    """What can be done with the project and its file."""

    def __init__(self, actions: Actions, files: FilesFlow, parent: QWidget) -> None:
        super().__init__(parent)
        self._actions = actions
        self._files = files
        self.setAccessibleName("File menu")
        self._fill("New from", "new.")
        self._add("file.open")
        self.recent = self._recent_menu()
        self.addSeparator()
        self._add("file.save", "file.save-as")
        self._fill("Export", "file.export-")
        self.addSeparator()
        self._add("view.preferences", "help.keys", "help.cautions")
        self.addSeparator()
        self._add("file.quit")
        self.aboutToHide.connect(self.deleteLater)

    def _add(self, *ids: str) -> None:
        for spec_id in ids:
            self.addAction(self._actions.action(spec_id))

    def _fill(self, title: str, prefix: str) -> None:
        menu = self.addMenu(title)
        for spec in self._actions.specs:
            if spec.id.startswith(prefix):
                words = spec.text.removeprefix(title).strip()
                action = menu.addAction(words)
                action.setToolTip(spec.tip)
                action.triggered.connect(self._actions.action(spec.id).trigger)
        menu.setToolTipsVisible(True)

    def _recent_menu(self) -> QMenu:
        menu = self.addMenu("Open recent")
        for path in self._files.recent:
            action = menu.addAction(path.name)
            action.setToolTip(str(path))
            action.setEnabled(path.exists())
            action.triggered.connect(lambda _checked=False, path=path: self._files.open(path))
        menu.setToolTipsVisible(True)
        if self._files.recent:
            menu.addSeparator()
            menu.addAction("Clear").triggered.connect(self._files.forget_recent)
        menu.setEnabled(bool(self._files.recent))
        return menu
