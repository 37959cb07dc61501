"""Recovery copies: kept two seconds after the last change, offered at the next start."""

from PySide6.QtCore import QObject, QTimer

from workbench.errors import FileError
from workbench.files.recovery import Copy, Recovery, leftover_copies
from workbench.gui.bench import Bench
from workbench.gui.messages import Messages
from workbench.gui.widgets import Sign
from workbench.project.session import Change

__all__ = ["KEPT_AFTER_MS", "RecoveryFlow"]

KEPT_AFTER_MS = 2000

RECOVER, THROW_AWAY, LATER = "Recover it", "Throw it away", "Ask again next time"


class RecoveryFlow(QObject):
    """Follows the session of one window and keeps its copy true."""

    def __init__(
        self, bench: Bench, messages: Messages, recovery: Recovery, *, after_ms: int = KEPT_AFTER_MS
    ) -> None:
        super().__init__(bench)
        self._bench = bench
        self._messages = messages
        self._recovery = recovery
        self._warned = False
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(after_ms)
        self._timer.timeout.connect(self.keep_copy)
        self._unsubscribe = bench.session.subscribe(self._on_change)

    def keep_copy(self) -> None:
        """Write the copy now, if there is anything to lose; say once if it cannot be written."""
        session = self._bench.session
        if not session.dirty:
            return
        try:
            self._recovery.write(session.project, session.path)
        except FileError as reason:
            if not self._warned:
                self._warned = True
                self._bench.notice(f"No recovery copy is kept: {reason}", warning=True)

    def offer(self, last_fault: str = "") -> None:
        """Offer what the last run left, newest first, until one is taken."""
        for copy in leftover_copies(self._recovery.path.parent):
            if self._offer_one(copy, last_fault):
                return

    def close(self) -> None:
        """Stop, and remove the copy: the work is saved, or given up."""
        self._timer.stop()
        self._unsubscribe()
        self._recovery.remove()

    def _offer_one(self, copy: Copy, last_fault: str) -> bool:
        """Return whether the copy was taken; it stays until its work is safe or not wanted."""
        answer = self._messages.ask(
            f"Work on {copy.project.name} was not saved when the program last ended.",
            (RECOVER, THROW_AWAY, LATER),
            sentence=where_from(copy),
            sign=Sign.WARNS,
            details=last_fault,
        )
        if answer == RECOVER:
            # Where the file has changed meanwhile, saving asks for a name, so that nothing is lost.
            path = None if copy.source_changed else copy.source
            self._bench.session.replace(copy.project, path, saved=False)
            self.keep_copy()
            copy.remove()
            return True
        if answer == THROW_AWAY:
            copy.remove()
        return False

    def _on_change(self, _change: Change) -> None:
        if self._bench.session.dirty:
            self._timer.start()
        else:
            self._timer.stop()
            self._recovery.remove()


def where_from(copy: Copy) -> str:
    """Return one or two sentences about the file that a copy belongs to."""
    if copy.source is None:
        return "It was in no file yet. Recover it, and save it under a name."
    if copy.source_changed:
        return (
            f"Its file {copy.source} has changed or gone since; recover it, and save it under another name."
        )
    return f"It belongs to {copy.source}, which is as it was."
