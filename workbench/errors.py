"""Errors a person can read: one sentence that says what, where and what to try."""

__all__ = [
    "EditError",
    "FileError",
    "NetworkError",
    "QuantityError",
    "TimingError",
    "WorkbenchError",
]


class WorkbenchError(Exception):
    """Base of every error whose text is meant for the user."""


class QuantityError(WorkbenchError):
    """A typed value cannot be read."""


class NetworkError(WorkbenchError):
    """A network is malformed: a part, a node or a count is impossible."""


class TimingError(WorkbenchError):
    """A display mode is unknown or impossible."""


class EditError(WorkbenchError):
    """An edit cannot be made; the project is unchanged."""


class FileError(WorkbenchError):
    """A file cannot be read or written; the text names the path and the place in it."""
