"""Image files, dropped or chosen, and pictures on the clipboard, into the project."""

from pathlib import Path

from PySide6.QtCore import QObject
from PySide6.QtGui import QGuiApplication, QImage

from workbench.errors import FileError
from workbench.gui.bench import Bench
from workbench.gui.jobs import Job
from workbench.gui.picture.decode import Decoded, decode_file, file_filter, pixels_of, readable_suffixes
from workbench.gui.picture.references import digest
from workbench.gui.picture.shelf import Shelf
from workbench.gui.settings import PICTURE_FOLDER
from workbench.picture.images import MOST_CONTENT, kept_image
from workbench.picture.scene import Image
from workbench.project.edits.picture import show_image

__all__ = ["Loaded", "Loader", "picture_folder", "readable_suffixes"]

_LONGEST = 80
"""Letters of a name that are kept. [1]"""

Loaded = tuple[Image, Decoded, Path | None]


def picture_folder(bench: Bench) -> Path:
    """Return the folder of the image that was loaded last, or the person's own."""
    kept = Path(bench.settings.get(PICTURE_FOLDER))
    return kept if kept.is_absolute() and kept.is_dir() else Path.home()


class Loader(QObject):
    """Reads an image in a thread and makes one edit of it; the project is untouched until then."""

    def __init__(self, bench: Bench, shelf: Shelf, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._bench, self._shelf = bench, shelf
        self._job: Job | None = None

    @property
    def busy(self) -> bool:
        """Whether an image is being read."""
        return self._job is not None

    def choose(self) -> None:
        """Ask for a file and show the image in it."""
        bench = self._bench
        if bench.dialogs is None:
            return
        path = bench.dialogs.open_path("Load an image", picture_folder(bench), file_filter())
        if path is not None:
            bench.settings.set(PICTURE_FOLDER, str(path.absolute().parent))
            self.load(path)

    def load(self, path: Path) -> None:
        """Show the image in a file."""
        self._start(lambda _progress: load_file(path))

    def paste(self) -> None:
        """Show the picture on the clipboard, or the file that is named there."""
        data = QGuiApplication.clipboard().mimeData()
        files = [Path(url.toLocalFile()) for url in data.urls() if url.isLocalFile()]
        if files:
            self.load(files[0])
        elif data.hasImage():
            image = QImage(QGuiApplication.clipboard().image())
            self._start(lambda _progress: load_pasted(image))
        else:
            self._bench.notice("There is no picture on the clipboard: copy one first.", warning=True)

    def _start(self, work) -> None:
        if self._job is not None:
            self._bench.notice("Another picture is being read: wait for it.", warning=True)
            return
        self._job = Job(self._bench, work, self)
        self._job.done.connect(self._take)
        self._job.failed.connect(self._on_failed)
        self._job.cancelled.connect(self._forget)
        self._job.start()

    def _take(self, loaded: Loaded) -> None:
        self._forget()
        image, decoded, path = loaded
        if path is not None and not image.content:
            self._shelf.put(image, decoded, path)
        if self._bench.apply(f"Show {image.name}", lambda project: show_image(project, image), origin=self):
            kept = "" if image.content else " It is large: the project keeps its place, not its pixels."
            said = " ".join(decoded.remarks)
            self._bench.notice(f"{image.name}, {image.width} × {image.height} pixels. {said}{kept}".strip())

    def _on_failed(self, reason: str) -> None:
        self._forget()
        self._bench.notice(reason, warning=True)

    def _forget(self) -> None:
        if self._job is not None:
            self._job.deleteLater()
            self._job = None


def load_file(path: Path) -> Loaded:
    """Return the image in a file: with its pixels where they are few, else with its digest and place.

    Raises
    ------
    FileError
        If it cannot be read, or is no whole picture of a bearable size.
    """
    data, decoded = decode_file(path)
    name = printable(path.name)
    image = kept_image(name, decoded.rgb)
    if image is None:
        height, width, _ = decoded.rgb.shape
        image = Image(name, width, height, path=str(path.absolute()), sha256=digest(data))
    return image, decoded, path


def load_pasted(pasted: QImage) -> Loaded:
    """Return the image of a picture on the clipboard, which can only be kept with its pixels."""
    decoded = pixels_of(pasted, "the picture on the clipboard")
    image = kept_image("pasted picture", decoded.rgb)
    if image is None:
        raise FileError(
            f"The picture on the clipboard takes more than {MOST_CONTENT // 1000} kB, too much to be kept in "
            "a project: save it as a file, then load that."
        )
    return image, decoded, None


def printable(name: str) -> str:
    """Return a file's name as one line of bearable length."""
    kept = "".join(letter if letter.isprintable() else "?" for letter in name)
    return kept if len(kept) <= _LONGEST else f"{kept[: _LONGEST - 1]}…"
