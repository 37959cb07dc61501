"""What was found is said where it is: beside the part in a few words, at the node by a sign."""

from dataclasses import replace

from workbench.circuit.network import GROUND, Capacitor, Network, NodeId, PartId, Resistor
from workbench.gui.network.figures import figure_texts
from workbench.gui.network.targets import MONITOR, SCREEN, Kind, Target
from workbench.gui.network.words import spoken, tip
from workbench.project.document import Channel
from workbench.project.edits.channels import unlink
from workbench.project.edits.networks import put_networks

OUT = NodeId("out")


PIN = NodeId("bit0")


def with_parts(project, *parts: Resistor, pins: tuple[NodeId, ...] = (PIN,)):
    network = Network(pins, tuple(parts))
    return put_networks(project, dict.fromkeys(Channel, network))


def resistor(name: str, a: str, b: str) -> Resistor:
    return Resistor(PartId(name), NodeId(a), NodeId(b), 470.0)


def notes(panel) -> dict[str, str]:
    return {note.part: note.words for note in panel.canvas.scene().notes}


def test_a_value_the_series_lacks_is_said_beside_the_part(make_panel) -> None:
    wide, narrow = make_panel(width=1000), make_panel(width=540, height=600)

    assert notes(wide)["R1"] in ("not made in E24", "not in E24")
    assert notes(narrow) == {}, "no room beside the names"


def test_a_dead_part_and_a_loop_that_does_nothing_have_their_finding(make_panel, project) -> None:
    panel = make_panel(
        with_parts(
            project,
            resistor("R1", "bit0", "out"),
            resistor("R2", "out", "x"),
            resistor("R3", "x", "y"),
            resistor("R4", "y", "x"),
            resistor("R5", "out", "out"),
        )
    )

    findings = panel.canvas.scene().findings
    assert {"R2", "R3", "R4", "R5"} <= set(findings)
    assert findings[PartId("R5")].id == "network-dead-part"


def test_parts_in_the_air_have_their_finding(make_panel, project) -> None:
    panel = make_panel(with_parts(project, resistor("R1", "bit0", "out"), resistor("R2", "p", "q")))

    assert panel.canvas.scene().findings[PartId("R2")].id == "network-island"


def test_an_open_output_has_a_sign_at_its_node_and_says_why(make_panel, project) -> None:
    panel = make_panel(with_parts(project, resistor("R1", "bit0", "x")))

    assert len(panel.canvas.scene().node_signs) >= 1
    result, canvas = panel._bench.live.result, panel.canvas
    text = tip(Target(Kind.NODE, node=OUT), result, Channel.RED, canvas.shown)
    assert "connect a resistor from a pin" in text or "connect one" in text


def test_an_output_without_level_has_dashes_and_no_figures(qtbot, make_panel, project) -> None:
    only = tuple(Capacitor(PartId(f"C{k}"), NodeId(f"bit{k}"), OUT, 100e-12) for k in range(2))
    network = Network((NodeId("bit1"), NodeId("bit0")), (), only)
    panel = make_panel(unlink(put_networks(project, dict.fromkeys(Channel, network))), height=900)
    result, canvas = panel._bench.live.result, panel.canvas

    assert figure_texts(result.channels.red) == ("–",) * 5
    assert all("0.000" not in card.accessibleName() for card in panel.cards.cards.values())
    for target in (Target(Kind.NODE, node=OUT), SCREEN, MONITOR):
        assert "0.000" not in spoken(target, project, Channel.RED, canvas.shown)
        assert "no level" in spoken(target, project, Channel.RED, canvas.shown)
    assert not canvas.shown.sound


def test_a_pin_tied_to_ground_fails_at_its_node(make_panel, project) -> None:
    panel = make_panel(with_parts(project, resistor("R1", "bit0", "out"), pins=(NodeId("bit0"), GROUND)))

    assert any(sign.fails for sign in panel.canvas.scene().node_signs)


def test_findings_follow_an_edit(panel) -> None:
    session = panel._bench.session
    before = panel.canvas.scene().findings

    def use_e24(project):
        red = project.channels.red
        values = (510.0, 1e3, 2e3, 3.9e3, 8.2e3)
        parts = tuple(replace(r, ohms=v) for r, v in zip(red.resistors, values, strict=True))
        return put_networks(project, dict.fromkeys(Channel, replace(red, resistors=parts)))

    session.apply("Use E24", use_e24)
    panel._bench.live.refresh()

    assert PartId("R1") in before
    assert not [note for note in panel.canvas.scene().notes if "E24" in note.words]
