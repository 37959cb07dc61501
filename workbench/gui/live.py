"""From an edit to exactly one recompute and one redraw."""

from collections.abc import Callable

from PySide6.QtCore import QObject, QTimer, Signal

from workbench.pipeline.result import Result
from workbench.project.document import Project
from workbench.project.session import Change, Session

__all__ = ["LiveResult"]


class LiveResult(QObject):
    """Follows a session: however many edits a turn of the event loop brings, it runs once."""

    result_changed = Signal(object)
    """The new :class:`Result`; its project is ``result.project``."""

    def __init__(
        self, session: Session, run: Callable[[Project], Result], parent: QObject | None = None
    ) -> None:
        super().__init__(parent)
        self._session = session
        self._run = run
        self._ran = session.project
        self._result = run(self._ran)
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(0)
        self._timer.timeout.connect(self.refresh)
        self._unsubscribe = session.subscribe(self._on_change)

    @property
    def result(self) -> Result:
        """The result of the project as of the last turn of the event loop."""
        return self._result

    def refresh(self) -> None:
        """Bring the result up to date now, if the project is another one."""
        self._timer.stop()
        if self._ran is self._session.project:
            return
        self._run_now()

    def run_again(self) -> None:
        """Run the same project once more, because something beside it is another one now.

        A deliberate fault was switched, an image was read, or a picture has settled; stages whose
        inputs are as they were are not computed again.
        """
        self._timer.stop()
        self._run_now()

    def close(self) -> None:
        """Stop following the session."""
        self._timer.stop()
        self._unsubscribe()

    def _run_now(self) -> None:
        self._ran = self._session.project
        self._result = self._run(self._ran)
        self.result_changed.emit(self._result)

    def _on_change(self, _change: Change) -> None:
        self._timer.start()
