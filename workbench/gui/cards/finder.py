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


Source = Callable[[str], Iterable[Find]]
"""Given what is typed, the things of one kind; it may leave out what surely does not match."""


def rank(text: str, find: Find) -> int | None:
    """Return how far a thing is from a text, 0 the nearest; none if a word of it is missing.

    What cannot be done now comes after all that can.

    >>> rank("und", Find("Undo", "", "", print)), rank("do", Find("Undo", "", "", print))
    (0, 2)
    >>> rank("xyz", Find("Undo", "", "", print)) is None
    True
    """
    title = find.title.lower()
    searched = f"{title} {find.detail} {find.also}".lower()
    words = text.lower().split()
    if not all(word in searched for word in words):
        return None
    if find.refused:
        return 4
    if not words or title.startswith(words[0]) or words[0] in title.split():
        return 0
    if any(part.startswith(words[0]) for part in title.split()):
        return 1
    return 2 if words[0] in title else 3


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
