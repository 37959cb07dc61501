import xml.etree.ElementTree as ET
from dataclasses import replace

import pytest

from workbench.circuit.ladders import weighted
from workbench.circuit.network import Cable, PartId
from workbench.exports.schematic_svg import board_of, schematic_svg
from workbench.files.assets import asset_path
from workbench.files.project_file import read_project
from workbench.pipeline.run import Pipeline
from workbench.project.document import Channel, Direction, Project
from workbench.project.edits.channels import unlink
from workbench.project.edits.networks import put_networks
from workbench.project.edits.parts import set_value
from workbench.project.edits.sync import set_sync_series

SVG = "{http://www.w3.org/2000/svg}"


@pytest.fixture
def tide() -> Project:
    return read_project(asset_path("projects/tide-board.backporch"))


def root_of(project: Project, *, zigzag: bool = False) -> ET.Element:
    return ET.fromstring(schematic_svg(Pipeline().run(project), zigzag=zigzag))


def texts(root: ET.Element) -> list[str]:
    return [element.text or "" for element in root.iter(f"{SVG}text")]


def test_equal_channels_share_one_drawing_with_each_value_once(tide: Project) -> None:
    written = texts(root_of(tide))

    assert [text for text in written if text in ("R1", "R2", "R3", "R4", "R5")] == [
        "R1",
        "R2",
        "R3",
        "R4",
        "R5",
    ]
    assert written.count("500 Ω") == 1
    assert sum("is built alike" in text for text in written) == 2


def test_a_channel_of_its_own_gets_a_drawing_of_its_own(tide: Project) -> None:
    project = set_value(unlink(tide), Channel.BLUE, PartId("R1"), 470.0)

    written = texts(root_of(project))

    assert written.count("R1") == 2
    assert "470 Ω" in written
    assert written.count("RH") == 1, "the sync lines belong to the board and stand once"


def test_the_page_holds_everything_drawn(tide: Project) -> None:
    root = root_of(put_networks(tide, dict.fromkeys(Channel, weighted(8, [1e3] * 8))))

    height = float(root.attrib["height"])
    lowest = max(float(element.attrib["y"]) for element in root.iter(f"{SVG}text"))
    assert lowest < height


def test_ink_is_black_on_white_only(tide: Project) -> None:
    page = schematic_svg(Pipeline().run(tide)).decode()

    colours = {page[i : i + 7] for i in range(len(page)) if page[i] == "#"}
    assert colours <= {"#000000", "#ffffff", "#404040", "#606060"}


def test_a_zigzag_drawing_has_no_boxes_for_resistors(tide: Project) -> None:
    boxes, zigzags = (root_of(tide, zigzag=zigzag) for zigzag in (False, True))

    def count(root: ET.Element) -> int:
        return sum(element.attrib.get("class") == "part" for element in root.iter(f"{SVG}rect"))

    assert count(boxes) == 8, "five legs, two sync lines, the load"
    assert count(zigzags) == 0


def test_no_figure_and_no_caption_of_one_stands_on_paper(tide: Project) -> None:
    written = texts(root_of(tide))

    assert not {"loaded", "open", "leg current"} & set(written)


def test_names_that_would_break_the_file_are_escaped(tide: Project) -> None:
    root = root_of(replace(tide, name="<tide> & board"))

    assert "<tide> & board" in texts(root)


def test_the_cable_and_a_wire_for_a_sync_line_are_said(tide: Project) -> None:
    project = set_sync_series(replace(tide, cable=Cable(2.0)), Direction.HORIZONTAL, 0.0)

    written = texts(root_of(project))

    assert "100 Ω" in written, "the V sync line keeps its resistor"
    assert written.count("100 Ω") == 1
    assert any("cable 2 m of 75 Ω" in text for text in written)


def test_the_board_names_the_contacts_of_each_channel(tide: Project) -> None:
    boards = [board_of(tide, channel) for channel in Channel]

    assert [(b.contact, b.return_contact) for b in boards] == [("1", "6"), ("2", "7"), ("3", "8")]
    assert [row.contact for row in boards[0].sync] == ["13", "14"]
