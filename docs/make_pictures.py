"""Make the pictures of the docs from the running program: ``python docs/make_pictures.py``.

Nothing is retouched: each picture is the window after the edits and keys named here.
"""

import os
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
os.environ.setdefault("QT_NO_GUI_THREADPOOL", "1")
sys.path.insert(0, str(Path(__file__).parent.parent))

from PySide6.QtWidgets import QApplication

from workbench.circuit.network import PartId
from workbench.files.assets import asset_path
from workbench.files.project_file import read_project
from workbench.files.recovery import Recovery
from workbench.gui.scanline.content.presets import Preset
from workbench.gui.settings import THEME, Settings
from workbench.gui.start.desk import Desk
from workbench.gui.start.program import make_application
from workbench.gui.theme import ThemeName
from workbench.project.document import Channel
from workbench.project.edits.parts import set_value
from workbench.project.edits.picture import set_scanline
from workbench.project.session import Session

PICTURES = Path(__file__).parent / "pictures"


def settle() -> None:
    """Let everything that is due be painted."""
    for _ in range(5):
        QApplication.processEvents()


def tune(desk: Desk, ohms: float) -> None:
    """Give R1 another value."""
    desk.bench.apply("Tune R1", lambda project: set_value(project, Channel.RED, PartId("R1"), ohms))


def bench(desk: Desk) -> None:
    """Hold code 22 and choose R1."""
    desk.bench.view.hold(tuple(Channel), 22)
    desk.bench.view.choose(PartId("R1"))


def levels(desk: Desk) -> None:
    """Open the levels of a ladder whose first resistor pulls too hard."""
    tune(desk, 470.0)
    bench(desk)
    desk.window.pages.toggle("levels")


def v_sync(desk: Desk) -> None:
    """Show the first line of vertical sync, close to its blanking."""
    desk.bench.apply("Scanline 491", lambda project: set_scanline(project, 491))
    desk.window.scanline.choose_preset(Preset.BLANKING)


def timing(desk: Desk) -> None:
    """Open the page of line and frame, on paper."""
    desk.bench.settings.set(THEME, ThemeName.PAPER)
    desk.window.pages.toggle("timing")


def projector(desk: Desk) -> None:
    """Fill a projector."""
    desk.bench.project_large(on=True)


SCENES: dict[str, Callable[[Desk], None]] = {
    "bench": bench,
    "levels": levels,
    "v-sync": v_sync,
    "timing": timing,
    "projector": projector,
}


def take(name: str, scene: Callable[[Desk], None], folder: Path) -> None:
    """Take one picture of a window of its own."""
    project = read_project(asset_path("projects/tide-board.backporch"))
    desk = Desk(Session(project), Settings(folder / f"{name}.ini"), Recovery(folder / name))
    desk.window.resize(1600, 900)
    desk.window.show()
    settle()
    scene(desk)
    settle()
    desk.window.grab().save(str(PICTURES / f"{name}.png"))
    desk.session.mark_saved(folder / "unused.backporch")
    desk.window.close()


def main() -> None:
    """Take every picture, or those named on the command line."""
    application = make_application(["backporch"])
    PICTURES.mkdir(exist_ok=True)
    with tempfile.TemporaryDirectory() as folder:
        for name in sys.argv[1:] or SCENES:
            take(name, SCENES[name], Path(folder))
    application.quit()


if __name__ == "__main__":
    main()
