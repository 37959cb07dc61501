"""The running program: one application, one desk, and what is done before and after."""

import sys
from pathlib import Path

from PySide6.QtCore import QStandardPaths
from PySide6.QtWidgets import QApplication

from workbench.files.recovery import Recovery
from workbench.gui.files.templates import new_project
from workbench.gui.icons import window_icon
from workbench.gui.settings import Settings
from workbench.gui.start.crash import CrashHook, FaultLog
from workbench.gui.start.desk import Desk
from workbench.gui.start.fonts import load_fonts
from workbench.gui.widgets import Sign
from workbench.project.session import Session
from workbench.project.templates import TEMPLATES

__all__ = ["make_application", "run"]


def make_application(arguments: list[str]) -> QApplication:
    """Return the application with the program's style, faces and icon."""
    application = QApplication(arguments)
    application.setStyle("Fusion")
    application.setApplicationName("backporch")
    application.setApplicationDisplayName("Backporch")
    application.setDesktopFileName("backporch")
    load_fonts()
    application.setWindowIcon(window_icon())
    return application


def run(path: Path | None) -> int:
    """Open the window and stay until it is closed; return the exit code."""
    application = make_application(sys.argv[:1])
    folder = state_folder()
    faults = FaultLog(folder / "faults.log")
    last_fault = faults.take_last()
    faults.open()
    crash = CrashHook(folder / "errors.log")
    crash.install()
    settings = Settings(Settings.usual_path())
    desk = Desk(Session(new_project(TEMPLATES[0], settings)), settings, Recovery(folder / "recovery"))
    crash.connect(
        rescue=desk.recovery.keep_copy,
        tell=lambda details: desk.messages.tell(
            "Something in the program went wrong.",
            "Your project is as it was, and a recovery copy is kept. Save it, then start the program again.",
            sign=Sign.FAILS,
            details=details,
        ),
    )
    desk.window.restore_geometry()
    desk.window.show()
    if path is not None:
        desk.files.load(path)
        desk.live.refresh()
    desk.recovery.offer(last_fault)
    code = application.exec()
    faults.close()
    return code


def state_folder() -> Path:
    """Return where logs and recovery copies lie."""
    data = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.GenericDataLocation)
    return Path(data) / "backporch"
