"""Every key, read from the table of actions."""

from PySide6.QtWidgets import QWidget

from workbench.gui.bench import Bench
from workbench.gui.widgets.choice_list import Row
from workbench.gui.widgets.search_card import SearchCard

__all__ = ["KeysCard"]


class KeysCard(SearchCard):
    """Lists what has a key; typing narrows the list, Enter does the thing."""

    def __init__(self, bench: Bench, parent: QWidget) -> None:
        super().__init__(
            bench, "Keys", self._rows, parent, width=520, most_rows=13, placeholder="what, or which key"
        )
        self.picked.connect(lambda row: bench.actions.action(row.payload).trigger())

    def _rows(self, text: str) -> list[Row]:
        rows = []
        for spec in self.bench.actions.specs:
            keys = self.bench.actions.keys(spec.id)
            if keys and text.lower() in f"{spec.text} {keys}".lower():
                rows.append(Row(spec.text, spec.group, keys, spec.id))
        return rows
