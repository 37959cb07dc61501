"""Work that would hold the window up, done in a thread of its own.

The function is pure and lives in the engine; it is given a progress to report to and ends when
that raises `Cancelled`. Nothing here touches a widget.
"""

from collections.abc import Callable
from threading import Thread
from time import monotonic

from PySide6.QtCore import QObject, Qt, Signal

from workbench.errors import WorkbenchError
from workbench.gui.bench import Bench
from workbench.progress import Cancelled, Progress, Watched

__all__ = ["Job"]

_PAUSE_S = 0.05
"""Least time between two reports of progress. [s]"""


class Job(QObject):
    """One piece of slow work; of ``done``, ``failed`` and ``cancelled`` exactly one is emitted.

    The window's closing ends it: it is cancelled and waited for.
    """

    progress = Signal(int, int)
    """How much is done, and of how much."""
    done = Signal(object)
    """What the function returned."""
    failed = Signal(str)
    """Why there is no result, a sentence for the user."""
    cancelled = Signal()

    _ended = Signal(object, object)
    """Result and error; comes from the thread that works and is taken in that of the window."""

    def __init__(
        self, bench: Bench, function: Callable[[Progress], object], parent: QObject | None = None
    ) -> None:
        super().__init__(parent)
        self.revision = bench.session.revision
        """Revision of the project that was current when the job was made."""
        self._function = function
        self._watched = Watched(self._report)
        self._asked_to_end = False
        self._told_at = 0.0
        self._thread = Thread(target=self._work, name="backporch job")
        self._ended.connect(self._end, Qt.ConnectionType.QueuedConnection)
        bench.closing.connect(self.stop)

    def start(self) -> None:
        """Begin."""
        self._thread.start()

    def cancel(self) -> None:
        """Ask the work to end; ``cancelled`` comes, even if a result was on its way."""
        self._asked_to_end = True
        self._watched.cancel()

    def stop(self) -> None:
        """Cancel, and wait until nothing runs any more."""
        self.cancel()
        if self._thread.is_alive():
            self._thread.join()

    def _report(self, done: int, total: int) -> None:
        now = monotonic()
        if now - self._told_at >= _PAUSE_S or done >= total:
            self._told_at = now
            self.progress.emit(done, total)

    def _work(self) -> None:
        result, error = None, None
        try:
            result = self._function(self._watched)
        except BaseException as reason:
            error = reason
        self._ended.emit(result, error)

    def _end(self, result: object, error: BaseException | None) -> None:
        self._thread.join()
        if self._asked_to_end or isinstance(error, Cancelled):
            self.cancelled.emit()
        elif error is None:
            self.done.emit(result)
        else:
            known = isinstance(error, WorkbenchError)
            self.failed.emit(str(error) if known else "This could not be worked out: a fault of the program.")
            if not known:
                raise error
