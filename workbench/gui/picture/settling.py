"""Gives a picture that needs time its whole frame, and runs the engine again when it is there."""

from PySide6.QtCore import QObject

from workbench.gui.bench import Bench
from workbench.gui.jobs import Job
from workbench.picture.source import PictureCodes
from workbench.pipeline.result import Result

__all__ = ["Settling"]


class Settling(QObject):
    """Follows the results; of several pictures that need time the newest counts."""

    def __init__(self, bench: Bench, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._bench = bench
        self._job: Job | None = None
        bench.live.result_changed.connect(self._on_result)
        self._on_result(bench.live.result)

    def _on_result(self, result: Result) -> None:
        picture: PictureCodes = result.picture
        if picture.settled or self._job is not None:
            return
        self._job = Job(self._bench, lambda _progress: picture.frame(), self)
        self._job.done.connect(self._on_done)
        self._job.failed.connect(self._forget)
        self._job.cancelled.connect(self._forget)
        self._job.start()

    def _on_done(self, _frame: object) -> None:
        self._forget()
        self._bench.live.run_again()

    def _forget(self, _reason: str = "") -> None:
        if self._job is not None:
            self._job.deleteLater()
            self._job = None
