"""Everything that can be done to the network, as rows of the command table."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial

from PySide6.QtCore import QMimeData
from PySide6.QtGui import QGuiApplication, QImage

from workbench.circuit.ladders import MOST_BITS, analyse
from workbench.circuit.network import GROUND, Network, PartId, Resistor
from workbench.gui.actions import ActionSpec
from workbench.gui.bench import LINK_TIP, Bench
from workbench.gui.network.canvas import Canvas
from workbench.gui.network.pins import PinKeys
from workbench.gui.network.table_rows import as_text
from workbench.gui.network.told import told
from workbench.project.document import Channel, Project
from workbench.project.edits.ladders import add_bit, remove_bit, set_capacitor, set_output_series, set_shunt
from workbench.project.edits.networks import parts_of
from workbench.project.edits.parts import join, partner, remove_part, split_in_parallel, split_in_series

__all__ = ["NetworkCommands"]

SHUNT_OHMS = 130.0
"""First value of a shunt: it makes the source of a matched 3.3 V ladder about 75 Ω; to be changed. [Ω]"""
SERIES_OHMS = 33.0
"""First value of a series resistor at the output; our own choice, made to be changed. [Ω]"""
NODE_FARADS = 30e-12
"""First value of a capacitor at the node: what a short board and its pins bring; from experience. [F]"""

GROUP = "Network"


@dataclass(slots=True)
class NetworkCommands:
    """What the network's commands act on."""

    bench: Bench
    canvas: Canvas
    pins: PinKeys
    show_table: Callable[[], object]
    table_shown: Callable[[], bool]

    @property
    def channel(self) -> Channel:
        """The drawn channel."""
        return self.bench.view.channel

    @property
    def network(self) -> Network:
        """The drawn network, as it is now."""
        return self.bench.session.project.channels[self.channel]

    @property
    def part(self) -> PartId | None:
        """The chosen part of the network; none if it stands around it."""
        chosen = self.bench.view.chosen
        mine = {part.id for part in parts_of(self.network)}
        return chosen if chosen in mine else None

    @property
    def resistor(self) -> Resistor | None:
        """The chosen resistor."""
        chosen = self.bench.view.chosen
        return next((part for part in self.network.resistors if part.id == chosen), None)

    def specs(self) -> tuple[ActionSpec, ...]:
        """Return the rows of the table."""
        return (*self._part_specs(), *self._ladder_specs(), *self._pin_specs(), *self._view_specs())

    def _spec(self, verb: str, text: str, callback: Callable[[], object], **more: object) -> ActionSpec:
        return ActionSpec(f"network.{verb}", text, callback, GROUP, **more)  # type: ignore[arg-type]

    def _part_specs(self) -> tuple[ActionSpec, ...]:
        return (
            self._spec(
                "edit-value",
                "Edit the chosen value",
                self.canvas.edit,
                enabled=lambda: self.canvas.chosen_value() is not None,
                tip="Opens the field in the part's box; typing a number does it too.",
            ),
            self._spec(
                "split-series",
                "Split in series",
                partial(self._split, split_in_series, "in series"),
                shortcut="S",
                scope=self.canvas,
                enabled=lambda: self.resistor is not None,
                tip="Two resistors one after the other stand for the chosen one.",
            ),
            self._spec(
                "split-parallel",
                "Split in parallel",
                partial(self._split, split_in_parallel, "in parallel"),
                shortcut="P",
                scope=self.canvas,
                enabled=lambda: self.resistor is not None,
                tip="Two resistors side by side stand for the chosen one.",
            ),
            self._spec(
                "merge",
                "Merge with its partner",
                self._merge,
                shortcut="M",
                scope=self.canvas,
                enabled=self._has_partner,
                tip="One resistor takes the place of two that stand for one value.",
            ),
            self._spec(
                "remove-part",
                "Remove the part",
                self._remove,
                shortcut="Del",
                scope=self.canvas,
                enabled=lambda: self.part is not None,
                label=lambda: f"Remove {self.part}" if self.part else "Remove the part",
            ),
        )

    def _ladder_specs(self) -> tuple[ActionSpec, ...]:
        return (
            self._spec(
                "add-bit",
                "Add a bit",
                lambda: self._apply("Add a bit", add_bit),
                shortcut="B",
                scope=self.canvas,
                enabled=lambda: self.network.bits < MOST_BITS,
                tip="One more leg for a least significant bit, of twice the last value.",
            ),
            self._spec(
                "remove-bit",
                "Remove a bit",
                lambda: self._apply("Remove a bit", remove_bit),
                shortcut="Shift+B",
                scope=self.canvas,
                enabled=lambda: self.network.bits > 1,
                tip="Takes the least significant bit away.",
            ),
            self._optional("shunt", "shunt to ground", "G", set_shunt, SHUNT_OHMS),
            self._optional("series", "series resistor at the output", "O", set_output_series, SERIES_OHMS),
            self._optional("capacitor", "capacitor at the node", "C", set_capacitor, NODE_FARADS),
        )

    def _pin_specs(self) -> tuple[ActionSpec, ...]:
        held = self.bench.view.held
        return (
            self._spec(
                "release",
                "Release the pins",
                self.pins.release,
                shortcut="Ctrl+R",
                enabled=lambda: any(held(channel) is not None for channel in Channel),
                tip="Gives the pins back to the picture.",
            ),
            *(self._channel_spec(number, channel) for number, channel in enumerate(Channel, 1)),
            self._spec(
                "link",
                "Link the channels",
                self.bench.toggle_link,
                shortcut="L",
                scope=self.canvas,
                label=lambda: self.bench.link_words,
                tip=LINK_TIP,
                in_finder=False,
            ),
        )

    def _channel_spec(self, number: int, channel: Channel) -> ActionSpec:
        view = self.bench.view
        return self._spec(
            f"channel-{channel.value}",
            f"Draw {channel.value}",
            lambda: view.choose_channel(channel),
            shortcut=f"Ctrl+{number}",
            checked=lambda: view.channel is channel,
        )

    def _view_specs(self) -> tuple[ActionSpec, ...]:
        return (
            self._spec(
                "table",
                "Network as a table",
                self.show_table,
                shortcut="Ctrl+T",
                checked=self.table_shown,
                tip="Every part with value, tolerance, rating and ends; values can be typed there.",
            ),
            self._spec(
                "copy-picture",
                "Copy the drawing as a picture",
                self.copy_picture,
                tip="Puts the drawing on the clipboard, and the same as text.",
            ),
            self._spec("copy-text", "Copy the network as text", self.copy_text),
        )

    def _optional(
        self,
        verb: str,
        noun: str,
        key: str,
        edit: Callable[[Project, Channel, float | None], Project],
        value: float,
    ) -> ActionSpec:
        """Return the row that adds a part there is at most one of, or takes it away."""

        def words() -> str:
            part = self.fitted(f"network.{verb}")
            return f"Remove the {noun}, {part}" if part else f"Add a {noun}"

        def turn() -> None:
            new = None if self.fitted(f"network.{verb}") else value
            self._apply(words(), lambda project, channel: edit(project, channel, new))

        tip = f"Adds a {noun}, or takes it away; its value is typed in its place."
        return self._spec(verb, f"Add a {noun}", turn, shortcut=key, scope=self.canvas, label=words, tip=tip)

    def fitted(self, action: str) -> str:
        """Return the name of the part, or of both halves, that an action takes away; empty if it adds one."""
        found, network = analyse(self.network), self.network
        if action == "network.capacitor":
            ends = {found.bus, GROUND}
            return next((part.id for part in network.capacitors if {part.a, part.b} == ends), "")
        branch = {"network.shunt": found.shunt, "network.series": found.series}.get(action)
        return " and ".join(branch.parts) if branch is not None else ""

    # Edits

    def _apply(self, label: str, edit: Callable[[Project, Channel], Project]) -> None:
        """Make an edit and say what it did: one key is enough for it, so it can come about by mistake."""
        channel, before = self.channel, self.bench.session.project
        made = self.bench.apply(label, lambda project: edit(project, channel))
        after = self.bench.session.project
        if made and after is not before:
            self.bench.notice(told(label, before, after, channel), undo=True)

    def _split(self, edit: Callable[[Project, Channel, PartId], Project], how: str) -> None:
        resistor = self.resistor
        if resistor is not None:
            before = {part.id for part in self.network.resistors}
            self._apply(f"Split {resistor.id} {how}", lambda p, c: edit(p, c, resistor.id))
            self._choose_new(before)

    def _merge(self) -> None:
        resistor = self.resistor
        if resistor is not None:
            before = {part.id for part in self.network.resistors}
            self._apply(f"Merge {resistor.id}", lambda p, c: join(p, c, resistor.id))
            self._choose_new(before)

    def _choose_new(self, before: set[PartId]) -> None:
        new = [part.id for part in self.network.resistors if part.id not in before]
        self.bench.live.refresh()
        if new:
            self.bench.view.choose(new[0])

    def _remove(self) -> None:
        part = self.part
        if part is not None:
            self.bench.view.choose(None)
            self._apply(f"Remove {part}", lambda project, channel: remove_part(project, channel, part))

    def copy_picture(self) -> None:
        """Put the drawing on the clipboard, as a picture and in words."""
        image = QImage(self.canvas.size() * 2, QImage.Format.Format_ARGB32_Premultiplied)
        image.setDevicePixelRatio(2.0)
        self.canvas.render(image)
        data = QMimeData()
        data.setImageData(image)
        data.setText(as_text(self.bench.session.project, self.channel))
        QGuiApplication.clipboard().setMimeData(data)
        self.bench.notice("The drawing is on the clipboard, as a picture and as text.")

    def copy_text(self) -> None:
        """Put the table of parts on the clipboard."""
        QGuiApplication.clipboard().setText(as_text(self.bench.session.project, self.channel))
        self.bench.notice("The network is on the clipboard, one part a line.")

    # Questions

    def _has_partner(self) -> bool:
        return self.resistor is not None and partner(self.network, self.resistor) is not None
