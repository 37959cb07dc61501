"""How far slow work has come, and the wish to stop it."""

from collections.abc import Callable

__all__ = ["SILENT", "Cancelled", "Progress", "Watched"]


class Cancelled(Exception):  # noqa: N818 - no error: somebody asked for it
    """Slow work was stopped because somebody asked for that."""


class Progress:
    """What slow work tells others while it runs; this one tells nobody."""

    def step(self, done: int, total: int) -> None:
        """Say that ``done`` of ``total`` is finished; work calls this at least every 20 ms.

        Raises
        ------
        Cancelled
            If the work is to stop.
        """


SILENT = Progress()
"""For work that nobody watches."""


class Watched(Progress):
    """Progress that is reported, and that another thread may cancel.

    Parameters
    ----------
    report : callable
        Is told ``(done, total)`` at each step, in the thread that works.
    """

    def __init__(self, report: Callable[[int, int], None]) -> None:
        self._report = report
        self._cancelled = False

    def cancel(self) -> None:
        """Ask the work to stop at its next step."""
        self._cancelled = True

    def step(self, done: int, total: int) -> None:
        """Report, unless the work is to stop.

        Raises
        ------
        Cancelled
            If :meth:`cancel` was called.
        """
        if self._cancelled:
            raise Cancelled
        self._report(done, total)
