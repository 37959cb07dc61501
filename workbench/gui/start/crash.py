"""When something goes wrong that should not: a log, a recovery copy, and plain words."""

import faulthandler
import logging
import sys
import threading
import traceback
from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from types import TracebackType
from typing import TextIO

__all__ = ["CrashHook", "FaultLog"]

log = logging.getLogger(__name__)


class CrashHook:
    """Takes exceptions that nobody caught; the program goes on with the project as it is."""

    def __init__(self, log_path: Path) -> None:
        self._log_path = log_path
        self._rescue: Callable[[], object] = lambda: None
        self._tell: Callable[[str], object] = lambda _details: None
        self._telling = False

    def install(self) -> None:
        """Take uncaught exceptions of every thread from now on."""
        sys.excepthook = self.handle
        threading.excepthook = lambda args: self.handle(args.exc_type, args.exc_value, args.exc_traceback)

    def connect(self, *, rescue: Callable[[], object], tell: Callable[[str], object]) -> None:
        """Say what keeps a copy of the project, and what tells the person."""
        self._rescue, self._tell = rescue, tell

    def handle(
        self, kind: type[BaseException], value: BaseException | None, trace: TracebackType | None
    ) -> None:
        """Log, keep a copy of the project, tell; one dialog at a time."""
        if issubclass(kind, KeyboardInterrupt):
            sys.__excepthook__(kind, value or kind(), trace)
            return
        details = "".join(traceback.format_exception(kind, value, trace))
        sys.stderr.write(details)
        self._write(details)
        if self._telling:
            return
        self._telling = True
        try:
            self._rescue()
            if threading.current_thread() is threading.main_thread():
                self._tell(details)
        finally:
            self._telling = False

    def _write(self, details: str) -> None:
        stamp = datetime.now().astimezone().isoformat(timespec="seconds")
        try:
            self._log_path.parent.mkdir(parents=True, exist_ok=True)
            with self._log_path.open("a", encoding="utf-8") as file:
                file.write(f"{stamp}\n{details}\n")
        except OSError as reason:
            log.error("the log %s cannot be written: %s", self._log_path, reason)


class FaultLog:
    """Where the interpreter writes when the process itself is ended; read at the next start."""

    def __init__(self, path: Path) -> None:
        self._path = path
        self._file: TextIO | None = None

    def take_last(self) -> str:
        """Return what the last run left, and set it aside; empty if it ended well."""
        try:
            left = self._path.read_text(encoding="utf-8", errors="replace")
        except OSError:
            return ""
        if left.strip():
            self._path.replace(self._path.with_suffix(".last.log"))
        return left.strip()

    def open(self) -> None:
        """Let the interpreter write here from now on."""
        try:
            self._path.parent.mkdir(parents=True, exist_ok=True)
            self._file = self._path.open("w", encoding="utf-8")
        except OSError as reason:
            log.warning("the log %s cannot be written: %s", self._path, reason)
            return
        faulthandler.enable(self._file)

    def close(self) -> None:
        """Stop, and remove the empty log."""
        if self._file is not None:
            faulthandler.disable()
            self._file.close()
            self._file = None
            if not self._path.stat().st_size:
                self._path.unlink()
