"""The pixels of images that a project keeps by reference: read once, kept while they are shown."""

from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QFileSystemWatcher, QObject, Signal

from workbench.errors import FileError
from workbench.gui.bench import Bench
from workbench.gui.jobs import Job
from workbench.gui.picture.decode import Decoded
from workbench.gui.picture.references import place_of, read_referenced
from workbench.picture.images import image_pixels
from workbench.picture.scene import Image
from workbench.project.session import Change

__all__ = ["Shelf"]

ByteArray = NDArray[np.uint8]

_KEPT = 3
"""Images whose pixels are remembered. [1]"""


class Shelf(QObject):
    """Gives the engine the pixels of images; reads files in a thread and says when they are there."""

    changed = Signal()
    """An image was read, or cannot be: run the engine again."""

    forgot = Signal()
    """What was read may be another picture now, or gone: the engine forgets it too."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._bench: Bench | None = None
        self._pixels: dict[str, ByteArray] = {}
        self._troubles: dict[str, str] = {}
        self._job: Job | None = None
        self._reading: Image | None = None
        self._watcher = QFileSystemWatcher(self)
        self._watcher.fileChanged.connect(self._on_file)
        self._watched: dict[str, Image] = {}

    def attach(self, bench: Bench) -> None:
        """Read files from now on, in threads that end with the window."""
        self._bench = bench
        bench.session.subscribe(self._on_change)
        self.changed.emit()

    def put(self, image: Image, decoded: Decoded, path: Path) -> None:
        """Keep the pixels of an image that was just loaded, and watch its file."""
        self._remember(_key(image), decoded.rgb)
        self._watch(image, path)

    def pixels(self, image: Image) -> ByteArray:
        """Return an image's pixels, for the engine.

        Raises
        ------
        FileError
            If they are not there, or not there yet; the sentence says which.
        """
        if image.content:
            return image_pixels(image)
        if _key(image) in self._pixels:
            return self._pixels[_key(image)]
        if _key(image) in self._troubles:
            raise FileError(self._troubles[_key(image)])
        self._read(image)
        raise FileError(f"{image.name} is being read.")

    def look_again(self) -> None:
        """Look once more for images that were missing."""
        if self._troubles:
            self._troubles.clear()
            self.changed.emit()

    def _on_change(self, change: Change) -> None:
        """Read the files anew for a project that was opened: they may have gone since."""
        if change.opened:
            self._pixels.clear()
            self._troubles.clear()
            self.forgot.emit()

    def _read(self, image: Image) -> None:
        if self._bench is None or self._job is not None:
            return
        near = self._bench.session.path
        self._reading = image
        self._job = Job(self._bench, lambda _progress: read_referenced(image, near), self)
        self._job.done.connect(self._take)
        self._job.failed.connect(self._on_failed)
        self._job.cancelled.connect(self._forget_job)
        self._job.start()

    def _take(self, rgb: ByteArray) -> None:
        image = self._forget_job()
        if image is not None:
            self._remember(_key(image), rgb)
            near = self._bench.session.path if self._bench else None
            self._watch(image, place_of(image, near))
        self.changed.emit()

    def _on_failed(self, reason: str) -> None:
        image = self._forget_job()
        if image is not None:
            self._troubles[_key(image)] = reason
        self.changed.emit()

    def _forget_job(self) -> Image | None:
        if self._job is not None:
            self._job.deleteLater()
        image, self._job, self._reading = self._reading, None, None
        return image

    def _remember(self, sha256: str, rgb: ByteArray) -> None:
        self._troubles.pop(sha256, None)
        self._pixels[sha256] = rgb
        while len(self._pixels) > _KEPT:
            del self._pixels[next(iter(self._pixels))]

    def _watch(self, image: Image, path: Path) -> None:
        if path.exists():
            self._watched[str(path)] = image
            self._watcher.addPath(str(path))

    def _on_file(self, path: str) -> None:
        """Say that a file went or changed; what was read of it stays shown."""
        image = self._watched.get(path)
        if self._bench is None or image is None or self._bench.session.project.picture.image != image:
            return
        if not Path(path).exists():
            said = (
                f"{image.name} has gone from {Path(path).parent}: it stays shown while this window is open."
            )
        else:
            said = f"{image.name} was changed on disk: what is shown is as it was. Load it again to take it."
        self._bench.notice(said, warning=True)


def _key(image: Image) -> str:
    return image.sha256 or ""
