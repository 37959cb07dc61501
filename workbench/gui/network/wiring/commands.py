"""What can be done to parts, legs, nodes and names, as rows of the command table."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import partial

from workbench.circuit.network import GROUND, Capacitor, Network, NodeId, PartId, Resistor
from workbench.errors import FileError
from workbench.gui.actions import ActionSpec
from workbench.gui.bench import Bench
from workbench.gui.network.canvas import Canvas
from workbench.gui.network.naming import can_rename
from workbench.gui.network.told import told
from workbench.gui.network.wiring.clipboard import parts_on_clipboard, put_parts
from workbench.project.document import Channel, Project
from workbench.project.edits.clippings import clip, leg_of, paste, pin_of, remove_leg
from workbench.project.edits.connecting import PartKind, add_in_parallel, add_in_series, add_part, duplicate
from workbench.project.edits.networks import parts_of
from workbench.project.edits.parts import remove_part

__all__ = ["LEG_TOOLS", "NODE_TOOLS", "PART_TOOLS", "WiringCommands"]

GROUP = "Network"
Edit = Callable[[Project, Channel], Project]
RESISTOR, CAPACITOR = PartKind.RESISTOR, PartKind.CAPACITOR

TO_GROUND = "From the node or pin the keys are on; of a chosen part, from the end whose ring is filled."
NODE_TOOLS = (
    "network.connect",
    "network.resistor-to-ground",
    "network.capacitor-to-ground",
    "network.rename",
)
"""What a menu on a node offers."""
PART_TOOLS = (
    "network.series-resistor",
    "network.series-capacitor",
    "network.parallel-resistor",
    "network.parallel-capacitor",
    "network.connect",
    "network.move-end",
    "network.duplicate",
    "network.copy",
    "network.cut",
)
"""What a menu on a part offers, beside splitting and removing it."""
LEG_TOOLS = ("network.rename", "network.connect", "network.copy-leg", "network.remove-leg")
"""What a menu on a pin offers."""


@dataclass(slots=True)
class WiringCommands:
    """What the commands act on: the target of the keys, and the chosen part."""

    bench: Bench
    canvas: Canvas
    copy_picture: Callable[[], object]
    _leg: tuple[Network | None, PartId, int | None] = (None, PartId(""), None)
    """Network and part for which a pin was last looked for, and the pin: it is asked for at every key."""

    @property
    def channel(self) -> Channel:
        """The drawn channel."""
        return self.bench.view.channel

    @property
    def network(self) -> Network:
        """The drawn network, as it is now."""
        return self.bench.session.project.channels[self.channel]

    @property
    def part(self) -> Resistor | Capacitor | None:
        """The chosen part of the network; none if it stands around it."""
        chosen = self.bench.view.chosen
        return next((part for part in parts_of(self.network) if part.id == chosen), None)

    @property
    def pin(self) -> int | None:
        """The pin that the keys are on, or the one whose leg the chosen part belongs to."""
        target = self.canvas.target
        if target is not None and target.pin is not None:
            return target.pin if target.pin < self.network.n_pins else None
        part, network = self.part, self.network
        if part is None:
            return None
        if self._leg[:2] != (network, part.id):
            self._leg = network, part.id, pin_of(network, part.id)
        return self._leg[2]

    def specs(self) -> tuple[ActionSpec, ...]:
        """Return the rows of the table."""
        return (*self._joining(), *self._beside(), *self._carrying())

    def _spec(self, verb: str, text: str, callback: Callable[[], object], **more: object) -> ActionSpec:
        return ActionSpec(f"network.{verb}", text, callback, GROUP, scope=self.canvas, **more)  # type: ignore[arg-type]

    def _joining(self) -> tuple[ActionSpec, ...]:
        return (
            self._spec(
                "connect",
                "Put a part in from here",
                self.canvas.connect_from_here,
                shortcut="A",
                tip="From the node the keys are on: arrows choose the other one, R or C the part, "
                "Enter joins. A drag from wire to wire does the same.",
            ),
            self._spec(
                "move-end",
                "Move an end of the part",
                self.canvas.move_end,
                shortcut="E",
                enabled=self._has_part,
                tip="Arrows choose the node, E takes the other end, Enter joins. An end can be dragged too.",
            ),
            self._spec(
                "resistor-to-ground",
                "Resistor from here to ground",
                partial(self._add_to_ground, RESISTOR),
                shortcut="Shift+G",
                enabled=self._above_ground,
                label=lambda: self._to_ground("Resistor"),
                tip=TO_GROUND,
            ),
            self._spec(
                "capacitor-to-ground",
                "Capacitor from here to ground",
                partial(self._add_to_ground, CAPACITOR),
                shortcut="Shift+C",
                enabled=self._above_ground,
                label=lambda: self._to_ground("Capacitor"),
                tip=TO_GROUND,
            ),
            self._spec(
                "rename",
                "Rename the pin or node",
                self.canvas.rename,
                enabled=lambda: can_rename(self.canvas.target),
                tip="F2 on a pin or a node does it too, and so does a click on a pin's name.",
            ),
        )

    def _beside(self) -> tuple[ActionSpec, ...]:
        rows = (
            ("series-resistor", "Resistor in series", "Shift+S", add_in_series, RESISTOR),
            ("series-capacitor", "Capacitor in series", None, add_in_series, CAPACITOR),
            ("parallel-resistor", "Resistor in parallel", "Shift+P", add_in_parallel, RESISTOR),
            ("parallel-capacitor", "Capacitor in parallel", None, add_in_parallel, CAPACITOR),
        )
        return tuple(
            self._spec(
                verb,
                text,
                partial(self._add_beside, text, edit, kind),
                shortcut=key,
                enabled=self._has_part,
                tip=f"Puts a {text.lower()} with the chosen part; its value is typed at once.",
            )
            for verb, text, key, edit, kind in rows
        )

    def _carrying(self) -> tuple[ActionSpec, ...]:
        return (
            self._spec(
                "duplicate",
                "Duplicate the part",
                self._duplicate,
                shortcut="D",
                enabled=self._has_part,
                tip="One more of the chosen part, beside it.",
            ),
            self._spec(
                "copy",
                "Copy",
                self._copy,
                shortcut="Ctrl+C",
                label=lambda: f"Copy {self.part.id}" if self.part else "Copy the drawing",
                tip="The chosen part as text and for pasting; without one, the drawing as a picture.",
            ),
            self._spec("cut", "Cut the part", self._cut, shortcut="Ctrl+X", enabled=self._has_part),
            self._spec(
                "paste",
                "Paste parts",
                self._paste,
                tip="Ctrl+V on the drawing: parts go to the nodes of the same names, a leg gets a bit.",
            ),
            self._spec(
                "copy-leg",
                "Copy the leg",
                self._copy_leg,
                shortcut="Ctrl+Shift+C",
                enabled=lambda: self.pin is not None,
                tip="The pin and all parts that serve it alone, to paste here or in another channel.",
            ),
            self._spec(
                "remove-leg",
                "Remove the leg",
                self._remove_leg,
                shortcut="Shift+Del",
                enabled=lambda: self.pin is not None and self.network.bits > 1,
                tip="Takes the pin and the parts that serve it alone out of the network.",
            ),
        )

    # Questions

    def _has_part(self) -> bool:
        return self.part is not None

    def _to_ground(self, kind: str) -> str:
        """Return what a part to ground would be called: it names where from."""
        return f"{kind} from {self.canvas.node_here() if self._above_ground() else 'here'} to ground"

    def _above_ground(self) -> bool:
        return self.canvas.node_here() != GROUND

    # Edits

    def add(self, label: str, edit: Edit) -> None:
        """Put a part in and type its value at once, all one step of the history."""
        before = {part.id for part in parts_of(self.network)}
        channel, merge = self.channel, ("add", self.bench.session.revision)
        if self.bench.apply(label, lambda project: edit(project, channel), merge=merge):
            self.bench.live.refresh()
            new = next((part.id for part in parts_of(self.network) if part.id not in before), None)
            self.canvas.connecting.joined.emit(new, True)

    def _add_to_ground(self, kind: PartKind) -> None:
        node: NodeId = self.canvas.node_here()
        self.add(f"Add a {kind.value}, {node} to ground", lambda p, c: add_part(p, c, kind, node, GROUND))

    def _add_beside(
        self, text: str, edit: Callable[[Project, Channel, PartId, PartKind], Project], kind: PartKind
    ) -> None:
        part = self.part
        if part is not None:
            self.add(f"{text} with {part.id}", lambda p, c: edit(p, c, part.id, kind))

    def _duplicate(self) -> None:
        part = self.part
        if part is not None:
            self._apply(f"Duplicate {part.id}", lambda p, c: duplicate(p, c, part.id))

    def _copy(self) -> None:
        if self.part is None:
            self.copy_picture()
            return
        put_parts(clip(self.network, [self.part.id]))
        self.bench.notice(f"{self.part.id} is on the clipboard, as text and for pasting.")

    def _cut(self) -> None:
        part = self.part
        if part is not None:
            put_parts(clip(self.network, [part.id]))
            self.bench.view.choose(None)
            self._apply(f"Cut {part.id}", lambda p, c: remove_part(p, c, part.id))

    def _paste(self) -> None:
        try:
            clipping = parts_on_clipboard()
        except FileError as reason:
            self.bench.notice(str(reason), warning=True)
            return
        if clipping is None:
            self.bench.notice(
                "There are no parts on the clipboard: copy some in a network first.", warning=True
            )
            return
        what = "a leg" if clipping.pins else ", ".join(part.id for part in clipping.parts[:3])
        self._apply(f"Paste {what}", lambda p, c: paste(p, c, clipping))

    def _copy_leg(self) -> None:
        pin = self.pin
        if pin is not None:
            network = self.network
            put_parts(clip(network, leg_of(network, pin), [network.pins[pin]]))
            name = self.bench.session.project.wiring[self.channel][pin]
            self.bench.notice(f"The leg of {name} is on the clipboard; pasted, it becomes the lowest bit.")

    def _remove_leg(self) -> None:
        pin = self.pin
        if pin is not None:
            name = self.bench.session.project.wiring[self.channel][pin]
            self.bench.view.choose(None)
            self._apply(f"Remove the leg of {name}", lambda p, c: remove_leg(p, c, pin))

    def _apply(self, label: str, edit: Edit) -> None:
        """Make an edit, say what it did, and choose the first part it brought."""
        before, channel = {part.id for part in parts_of(self.network)}, self.channel
        was = self.bench.session.project
        if self.bench.apply(label, lambda project: edit(project, channel)):
            self.bench.live.refresh()
            self.bench.notice(told(label, was, self.bench.session.project, channel), undo=True)
            new = next((part.id for part in parts_of(self.network) if part.id not in before), None)
            if new is not None:
                self.bench.view.choose(new)
