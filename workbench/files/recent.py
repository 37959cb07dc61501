"""The list of files used lately."""

from collections.abc import Sequence
from pathlib import Path

__all__ = ["MOST_RECENT", "with_recent", "without_recent"]

MOST_RECENT = 10
"""Files the list holds. [1]"""


def with_recent(files: Sequence[Path], path: Path) -> tuple[Path, ...]:
    """Return the list with a file at its head, once, and not longer than it may be.

    Missing files stay: a disk may be out for a while, and the window greys them.

    >>> [str(path) for path in with_recent((Path("/a"), Path("/b")), Path("/b"))] == ["/b", "/a"]
    True
    """
    first = path.absolute()
    return (first, *(other for other in files if other != first))[:MOST_RECENT]


def without_recent(files: Sequence[Path], path: Path) -> tuple[Path, ...]:
    """Return the list without a file."""
    gone = path.absolute()
    return tuple(other for other in files if other != gone)
