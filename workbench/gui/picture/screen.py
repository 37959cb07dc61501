"""Follows the edits with a small picture at once and the whole one as soon as it is computed."""

from dataclasses import dataclass

from PySide6.QtCore import QObject, QTimer, Signal
from PySide6.QtGui import QImage

from workbench.gui.bench import Bench
from workbench.gui.jobs import Job
from workbench.gui.picture.images import Side, enlarged, picture_image
from workbench.pipeline.result import Result
from workbench.pipeline.screen import Look, glance, look
from workbench.progress import Progress
from workbench.waveform.monitor import Monitor
from workbench.waveform.places import Places, difference, places_of

__all__ = ["Screen", "Shot"]

QUIET_MS = 30
"""The whole picture is begun once edits have stopped for so long. [ms]"""
_PREVIEW_PIXELS = 14_000
"""About how many dots a preview has: what can be computed between two paints. [1]"""


@dataclass(frozen=True, slots=True, eq=False)
class Shot:
    """One look at a result; a preview, or whole."""

    result: Result
    look: Look
    every: int
    places: Places | None
    """Where the screen's dots lie in the picture; none where nothing is seen."""
    images: dict[Side, QImage]
    """Each picture there is, to be painted."""
    whole: bool
    """Whether every pixel is there, and the monitor has adjusted itself to this very picture."""

    @property
    def moved(self) -> tuple[int, int]:
        """Return by how many pixels and lines the monitor looks beside the picture's start. [1]"""
        if self.look.seen is None:
            return 0, 0
        found, mode = self.look.seen.adjustment, self.result.project.mode
        first = found.left * mode.h.total / found.total
        return round(first) - mode.h.sync - mode.h.back_porch, found.top - mode.v.sync - mode.v.back_porch


class Screen(QObject):
    """Holds the newest look at the newest result, and how the monitor is set."""

    changed = Signal()
    """Another look, or another setting of the monitor."""

    def __init__(self, bench: Bench, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self._result: Result | None = None
        self._job: Job | None = None
        self.shot: Shot | None = None
        self._quiet = QTimer(self)
        self._quiet.setSingleShot(True)
        self._quiet.setInterval(QUIET_MS)
        self._quiet.timeout.connect(self._begin)
        bench.closing.connect(self._quiet.stop)

    @property
    def monitor(self) -> Monitor:
        """The monitor as the person set it."""
        return self._bench.view.monitor

    def set_monitor(self, monitor: Monitor) -> None:
        """Look with another monitor, or another setting of it."""
        if monitor != self.monitor:
            self._bench.view.set_monitor(monitor)
            if self._result is not None:
                self.show(self._result)

    def show(self, result: Result) -> None:
        """Look at a result: small at once, whole soon."""
        self._result = result
        if self._job is not None:
            self._job.cancel()
        mode = result.project.mode
        every = max(1, round((mode.h.active * mode.v.active / _PREVIEW_PIXELS) ** 0.5))
        found = self.shot.look.seen if self.shot is not None and self.shot.whole else None
        last = found.adjustment if found is not None and _same_mode(self.shot, result) else None
        self.shot = _shot(result, glance(result, self._bench.monitor, every=every, adjustment=last), every)
        self.changed.emit()
        self._quiet.start()

    def stop(self) -> None:
        """Leave off; the last look stays."""
        self._quiet.stop()
        if self._job is not None:
            self._job.cancel()

    def _begin(self) -> None:
        """Start on the whole picture, unless a cancelled look is still ending."""
        result, monitor = self._result, self._bench.monitor
        if result is None or self._job is not None:
            return

        def whole(progress: Progress) -> Shot:
            return _shot(result, look(result, monitor, progress=progress), 1, whole=True)

        self._job = Job(self._bench, whole, self)
        self._job.done.connect(self._take)
        self._job.failed.connect(self._on_failed)
        self._job.cancelled.connect(self._on_cancelled)
        self._job.start()

    def _take(self, shot: Shot) -> None:
        self._forget_job()
        if shot.result is self._result:
            self.shot = shot
            self.changed.emit()
        else:
            self._quiet.start()

    def _on_failed(self, reason: str) -> None:
        self._forget_job()
        self._bench.notice(reason, warning=True)

    def _on_cancelled(self) -> None:
        self._forget_job()
        if self.shot is not None and not self.shot.whole and not self._quiet.isActive():
            self._quiet.start()

    def _forget_job(self) -> None:
        if self._job is not None:
            self._job.deleteLater()
            self._job = None


def _same_mode(shot: Shot | None, result: Result) -> bool:
    return shot is not None and shot.result.project.mode == result.project.mode


def _shot(result: Result, taken: Look, every: int, *, whole: bool = False) -> Shot:
    images = {Side.SENT: picture_image(taken.sent)}
    shown = taken.shown(every=every)
    if taken.seen is None or shown is None:
        return Shot(result, taken, every, None, images, whole)
    n_rows, n_columns, _ = taken.seen.rgb.shape
    places = places_of(result.project.mode, taken.seen.adjustment, n_columns, n_rows, every=every)
    images[Side.SEEN] = picture_image(shown)
    apart = difference(taken.sent, taken.seen.rgb, places, every=every)
    images[Side.APART] = picture_image(enlarged(apart))
    return Shot(result, taken, every, places, images, whole)
