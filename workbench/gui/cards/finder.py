"""The command finder: one field that knows every command, part, page and display mode."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass

from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets.choice_list import Row
from workbench.gui.widgets.search_card import SearchCard

__all__ = ["Find", "Finder", "rank"]

MOST = 60
"""How many things are listed at most. [1]"""


@dataclass(frozen=True, slots=True)
class Find:
    """One thing that can be found, and what picking it does."""

    title: str
    detail: str
    figures: str
    take: Callable[[], object]
    refused: str = ""
    also: str = ""
    """Words that find it and are not shown."""


_REFUSED = 6
"""The rank of what cannot be done now: after all that can. [1]"""

Source = Callable[[str], Iterable[Find]]
"""Given what is typed, the things of one kind; it may leave out what surely does not match."""


def rank(text: str, find: Find) -> int | None:
    """Return how far a thing is from a text, 0 the nearest; none if a word of it is missing.

    What cannot be done now comes after all that can.

    >>> [rank("levels", Find(title, "", "", print)) for title in ("Page Levels", "Export levels-csv")]
    [0, 3]
    >>> rank("xyz", Find("Undo", "", "", print)) is None
    True
    """
    title, said = find.title.lower(), " ".join(text.lower().split())
    words, of_title = said.split(), title.split()
    if not all(word in f"{title} {find.detail} {find.also}".lower() for word in words):
        return None
    if find.refused:
        return _REFUSED
    # A page goes by its own name too: "levels" is the page before it is an export.
    if not words or said in (title, title.removeprefix("page ")):
        return 0
    if title.startswith(said):
        return 1
    if words[0] in of_title or words[0] in find.also.lower().split():
        return 2
    if any(part.startswith(words[0]) for part in of_title):
        return 3
    return 4 if words[0] in title else 5


class Finder(SearchCard):
    """Asks its sources what there is, best match first."""

    def __init__(self, bench: Bench, sources: Sequence[Source], parent: QWidget) -> None:
        super().__init__(
            bench,
            "Find a command or a part",
            self._rows,
            parent,
            width=560,
            most_rows=12,
            placeholder="a command, a part such as R3, a page, a mode such as 800x600",
        )
        self._sources = tuple(sources)
        self.picked.connect(self._do)

    def _rows(self, text: str) -> list[Row]:
        ranked = []
        for find in (find for source in self._sources for find in source(text)):
            nearness = rank(text, find)
            if nearness is not None:
                ranked.append((nearness, find))
        ranked.sort(key=lambda pair: pair[0])
        return [Row(f.title, f.detail, f.figures, f, f.refused) for _, f in ranked[:MOST]]

    def _do(self, row: Row) -> None:
        assert isinstance(row.payload, Find)
        row.payload.take()
