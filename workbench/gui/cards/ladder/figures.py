"""What a new ladder would give, channel by channel where they differ."""

from collections import Counter

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QWidget

from workbench.circuit.network import Network
from workbench.gui.bench import Bench
from workbench.gui.widgets import Words
from workbench.pipeline.result import ChannelResult, Result
from workbench.project.document import Channel
from workbench.units import format_fixed, format_quantity

__all__ = ["FIGURES", "LadderFigures", "parts_text"]

FIGURES = {
    "white, loaded": lambda c: format_fixed(float(c.levels.volts_by_code[-1]), "V"),
    "white, open": lambda c: format_fixed(float(c.levels.open_by_code[-1]), "V"),
    "worst step, off by": lambda c: format_fixed(c.linearity.max_dnl_lsb, "LSB", decimals=2),
    "source resistance": lambda c: format_quantity(c.levels.source_ohms, "Ω", 3),
    "all its pins, at most": lambda c: format_fixed(
        float(c.levels.supply_amps.max()), "A", prefix="m", decimals=1
    ),
    "pins": lambda c: str(c.network.n_pins),
    "resistors": lambda c: str(len(c.network.resistors)),
}


class LadderFigures(QWidget):
    """The figures of a result: one column where all channels are alike, else one each.

    Room for all three is kept, so that nothing moves, unless it is ``narrow``.
    """

    def __init__(self, bench: Bench, parent: QWidget | None = None, *, narrow: bool = False) -> None:
        super().__init__(parent)
        self._narrow = narrow
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(bench.px(14))
        grid.setVerticalSpacing(bench.px(3))
        self._heads = {
            channel: Words(bench, channel.value, size=0.86, role=channel.value, weight=500)
            for channel in Channel
        }
        self._cells: dict[tuple[str, Channel], Words] = {}
        for row, name in enumerate(FIGURES, 1):
            grid.addWidget(Words(bench, name, role="dim"), row, 0)
            for column, channel in enumerate(Channel, 1):
                cell = Words(bench, "", mono=True, weight=500, width_for="00.00 LSB")
                cell.setAlignment(Qt.AlignmentFlag.AlignRight)
                self._cells[name, channel] = cell
                grid.addWidget(cell, row, column)
        for column, head in enumerate(self._heads.values(), 1):
            head.setAlignment(Qt.AlignmentFlag.AlignRight)
            grid.addWidget(head, 0, column)
        grid.setColumnStretch(4, 1)

    def text(self, name: str, channel: Channel = Channel.RED) -> str:
        """Return a figure as it is shown."""
        return self._cells[name, channel].text()

    def show_result(self, result: Result) -> None:
        """Show the figures of every channel that is not like red."""
        alike = len({result.channels[channel].network for channel in Channel}) == 1
        for channel in Channel:
            shown = channel is Channel.RED or not alike
            self._show(channel, result.channels[channel] if shown else None)
            self._heads[channel].set_role("dim" if alike else channel.value)
            self._heads[channel].say(channel.value if not alike else "each" if shown else "")

    def show_nothing(self) -> None:
        """Show that there are no figures."""
        for channel in Channel:
            self._show(channel, None)
            self._heads[channel].say("")
        for name in FIGURES:
            self._cells[name, Channel.RED].say("–")

    def _show(self, channel: Channel, solved: ChannelResult | None) -> None:
        for name, figure in FIGURES.items():
            cell = self._cells[name, channel]
            cell.say("" if solved is None else figure(solved))
            cell.setHidden(self._narrow and solved is None and channel is not Channel.RED)


def parts_text(result: Result) -> str:
    """Return the resistors to fetch, a line for all channels alike: ``blue: 430 Ω   820 Ω``."""
    alike: dict[Network, list[str]] = {}
    for channel in Channel:
        alike.setdefault(result.channels[channel].network, []).append(channel.value)
    if len(alike) == 1:
        return _parts(*alike)
    return "\n".join(f"{', '.join(names)}: {_parts(network)}" for network, names in alike.items())


def _parts(network: Network) -> str:
    """Return the resistors of a channel: ``3 × 1.1 kΩ   2.2 kΩ   shunt 130 Ω``."""
    shunts = [part for part in network.resistors if part.id == "RS"]
    counts = Counter(part.ohms for part in network.resistors if part not in shunts)
    values = [
        f"{count} × {format_quantity(ohms, 'Ω')}" if count > 1 else format_quantity(ohms, "Ω")
        for ohms, count in counts.items()
    ]
    return "   ".join((*values, *(f"shunt {format_quantity(part.ohms, 'Ω')}" for part in shunts)))
