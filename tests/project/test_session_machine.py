"""Random edits, undos, redos, gestures, saves and openings: nothing is ever lost or bent."""

import tempfile
from contextlib import suppress
from pathlib import Path

from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, precondition, rule

from tests.strategies import modes, projects
from workbench.circuit.network import Cable, Network, NodeId, PartId, Zeros
from workbench.circuit.series import Series
from workbench.circuit.wish import LadderWish, Shape
from workbench.errors import EditError
from workbench.files.project_file import decode, encode, read_project, write_project
from workbench.picture.scene import Card
from workbench.project.document import Channel, Direction, Project
from workbench.project.edits import channels, drive, ladders, naming, parts, picture, sync, timing
from workbench.project.session import Session
from workbench.project.validity import first_flaw
from workbench.timing.mode import Polarity

CHANNEL = st.sampled_from(Channel)
DIRECTION = st.sampled_from(Direction)
OHMS = st.floats(1e-4, 1e7) | st.sampled_from([0.0, -1.0, float("nan"), 500.0])
COUNT = st.integers(-5, 3000)


def nodes(network: Network) -> list[NodeId]:
    ends = {node for part in network.resistors for node in (part.a, part.b)}
    return sorted({*network.pins, network.output, NodeId("gnd"), *ends})


class Sessions(RuleBasedStateMachine):
    """A session beside a plain list of the projects it went through."""

    @initialize(project=projects())
    def open_any(self, project: Project) -> None:
        self.folder = tempfile.TemporaryDirectory()
        self.path = Path(self.folder.name) / "board.backporch"
        self.session = Session(project)
        self.past: list[Project] = []
        self.future: list[Project] = []
        self.heard = 0
        self.session.subscribe(lambda change: setattr(self, "heard", change.revision))

    def teardown(self) -> None:
        if hasattr(self, "folder"):
            self.folder.cleanup()

    def edit(self, change) -> None:
        before = self.session.project
        with suppress(EditError):
            self.session.apply("Edit", change)
        if self.session.project != before:
            self.past.append(before)
            self.future.clear()

    def part(self, data: st.DataObject, channel: Channel) -> PartId:
        network = self.session.project.channels[channel]
        names = [part.id for part in (*network.resistors, *network.capacitors)] or [PartId("none")]
        return data.draw(st.sampled_from(names))

    @rule(data=st.data(), channel=CHANNEL, ohms=OHMS)
    def change_a_value(self, data: st.DataObject, channel: Channel, ohms: float) -> None:
        part = self.part(data, channel)
        self.edit(lambda p: parts.set_value(p, channel, part, ohms))

    @rule(data=st.data(), channel=CHANNEL, verb=st.sampled_from(["series", "parallel", "join", "remove"]))
    def split_join_or_remove(self, data: st.DataObject, channel: Channel, verb: str) -> None:
        part = self.part(data, channel)
        verbs = {
            "series": parts.split_in_series,
            "parallel": parts.split_in_parallel,
            "join": parts.join,
            "remove": parts.remove_part,
        }
        self.edit(lambda p: verbs[verb](p, channel, part))

    @rule(data=st.data(), channel=CHANNEL, ohms=OHMS, capacitor=st.booleans())
    def add_a_part(self, data: st.DataObject, channel: Channel, ohms: float, capacitor: bool) -> None:
        at = st.sampled_from([*nodes(self.session.project.channels[channel]), NodeId("new")])
        a, b = data.draw(at), data.draw(at)
        if capacitor:
            self.edit(lambda p: parts.add_capacitor(p, channel, a, b, 1e-11))
        else:
            self.edit(lambda p: parts.add_resistor(p, channel, a, b, ohms))

    @rule(channel=CHANNEL, more=st.booleans())
    def change_the_bits(self, channel: Channel, more: bool) -> None:
        self.edit(lambda p: (ladders.add_bit if more else ladders.remove_bit)(p, channel))

    @rule(channel=CHANNEL, ohms=st.none() | OHMS, verb=st.sampled_from(["shunt", "output", "node"]))
    def change_the_options(self, channel: Channel, ohms: float | None, verb: str) -> None:
        verbs = {"shunt": ladders.set_shunt, "output": ladders.set_output_series}
        if verb in verbs:
            self.edit(lambda p: verbs[verb](p, channel, ohms))
        else:
            self.edit(lambda p: ladders.set_capacitor(p, channel, None if ohms is None else ohms * 1e-13))

    @rule(
        shape=st.sampled_from(Shape),
        bits=st.tuples(*[st.integers(1, 8)] * 3),
        series=st.none() | st.just(Series.E24),
        matched=st.booleans(),
    )
    def choose_ladders(
        self, shape: Shape, bits: tuple[int, int, int], series: Series | None, matched: bool
    ) -> None:
        red, green, blue = (LadderWish(shape, each, series=series, matched=matched) for each in bits)
        self.edit(lambda p: ladders.set_ladders(p, (red, green, blue)))

    @rule(channel=CHANNEL, series=st.sampled_from(Series))
    def use_a_series(self, channel: Channel, series: Series) -> None:
        self.edit(lambda p: ladders.use_series_values(naming.set_series(p, series), channel, series))

    @rule(channel=CHANNEL, link=st.booleans())
    def link_or_unlink(self, channel: Channel, link: bool) -> None:
        self.edit(lambda p: channels.link_channels(p, channel) if link else channels.unlink(p))

    @rule(mode=modes())
    def choose_a_mode(self, mode) -> None:
        self.edit(lambda p: timing.set_mode(p, mode))

    @rule(direction=DIRECTION, edge=st.integers(0, 2), position=COUNT, polarity=st.sampled_from(Polarity))
    def change_counts(self, direction: Direction, edge: int, position: int, polarity: Polarity) -> None:
        self.edit(lambda p: timing.move_edge(p, direction, edge, position))
        self.edit(lambda p: timing.set_polarity(p, direction, polarity))
        self.edit(lambda p: timing.set_counts(p, direction, back_porch=position))

    @rule(card=st.sampled_from(Card), channel=CHANNEL, code=st.integers(-1, 300), scanline=COUNT)
    def change_the_picture(self, card: Card, channel: Channel, code: int, scanline: int) -> None:
        self.edit(lambda p: picture.set_card(p, card))
        self.edit(lambda p: picture.set_blanking_code(p, channel, code))
        self.edit(lambda p: picture.set_scanline(p, scanline))

    @rule(line=DIRECTION, ohms=OHMS, zeros=st.sampled_from(Zeros), monitors=st.integers(0, 9))
    def change_the_surroundings(self, line: Direction, ohms: float, zeros: Zeros, monitors: int) -> None:
        self.edit(lambda p: sync.set_sync_series(p, line, ohms))
        self.edit(lambda p: drive.set_zeros(p, zeros))
        self.edit(lambda p: drive.set_on_resistance(p, ohms))
        self.edit(lambda p: drive.set_monitors(p, monitors))
        self.edit(lambda p: drive.set_cable(p, Cable(2.0) if p.cable is None else None))

    @rule(channel=CHANNEL, pin=st.integers(-1, 8), name=st.sampled_from(["P0", "P1", "Q7", ""]))
    def name_pins(self, channel: Channel, pin: int, name: str) -> None:
        self.edit(lambda p: naming.name_pin(p, channel, pin, name))

    @rule(names=st.lists(st.sampled_from(["a", "b", "c"]), max_size=4), drop=st.booleans())
    def type_a_name(self, names: list[str], drop: bool) -> None:
        before = self.session.project
        self.session.release()
        heard = self.heard
        for name in names:
            self.session.apply("Type", lambda p, name=name: naming.rename(p, name), merge="name")
        if drop:
            self.session.drop()
            assert self.session.project == before
        self.session.release()
        if self.session.project != before:
            self.past.append(before)
        if self.heard != heard:
            self.future.clear()

    @rule(name=st.sampled_from(["a", "b"]), spoil=st.booleans())
    def make_a_gesture(self, name: str, spoil: bool) -> None:
        before = self.session.project
        history = (self.session.undo_label, self.session.redo_label)
        with suppress(EditError), self.session.gesture("Gesture"):
            self.session.apply("one", lambda p: naming.rename(p, name + name))
            self.session.apply("two", lambda p: naming.rename(p, "" if spoil else name))
        if spoil:
            assert self.session.project == before
            assert history == (self.session.undo_label, self.session.redo_label)
        else:
            self.future.clear()
            if self.session.project != before:
                self.past.append(before)

    @precondition(lambda self: self.past)
    @rule()
    def undo(self) -> None:
        before = self.session.project
        self.session.undo()
        assert self.session.project == self.past.pop()
        self.future.append(before)

    @precondition(lambda self: self.future)
    @rule()
    def redo(self) -> None:
        before = self.session.project
        self.session.redo()
        assert self.session.project == self.future.pop()
        self.past.append(before)

    @rule()
    def save_and_open(self) -> None:
        write_project(self.session.project, self.path)
        self.session.mark_saved(self.path)
        assert not self.session.dirty
        assert read_project(self.path) == self.session.project

    @invariant()
    def everything_holds(self) -> None:
        if not hasattr(self, "session"):
            return
        project = self.session.project
        assert first_flaw(project) is None
        assert decode(encode(project)) == project
        assert self.session.can_undo == bool(self.past)
        assert self.session.can_redo == bool(self.future)
        assert self.heard == self.session.revision


TestSessions = Sessions.TestCase
TestSessions.settings = settings(max_examples=40, stateful_step_count=30, deadline=None)
