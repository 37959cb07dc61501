"""The project file: what is written reads back, and what is wrong is named with its place."""

import json
import os
from contextlib import suppress
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.strategies import projects
from workbench.circuit.network import PartId
from workbench.errors import FileError
from workbench.files.project_file import decode, encode, read_project, schema, write_project
from workbench.project.document import Channel, Project
from workbench.project.edits.channels import unlink
from workbench.project.edits.naming import rename
from workbench.project.edits.parts import set_value
from workbench.project.edits.timing import take_plan
from workbench.project.templates import TEMPLATES
from workbench.timing.clock.chip import MOST_FRACTION_BITS, Chip, Span
from workbench.timing.clock.plan import plan_clock

ROOT = Path(__file__).resolve().parents[2]
OLD_FILES = sorted((ROOT / "tests/files/data").rglob("*.backporch"))
R4 = ("channels", "red", "resistors", 3)


@pytest.fixture
def tide_board() -> Project:
    return TEMPLATES[0].project()


@given(project=projects())
def test_what_is_written_reads_back_exactly(project: Project) -> None:
    assert decode(encode(project)) == project


@given(project=projects())
def test_writing_again_gives_the_same_bytes(project: Project) -> None:
    assert encode(decode(encode(project))) == encode(project)


@pytest.mark.parametrize("path", OLD_FILES, ids=lambda path: f"{path.parent.name}/{path.stem}")
def test_old_files_open(path: Path) -> None:
    project = read_project(path)

    assert project.name
    assert decode(encode(project)) == project


def test_there_are_old_files_of_every_version() -> None:
    assert {path.parent.name for path in OLD_FILES} == {"v1"}
    assert len(OLD_FILES) >= 4


def test_a_changed_value_changes_one_line(tide_board: Project) -> None:
    apart = unlink(tide_board)
    before = encode(apart).decode().splitlines()
    after = encode(set_value(apart, Channel.RED, PartId("R4"), 3900.0)).decode().splitlines()

    changed = [new for old, new in zip(before, after, strict=True) if old != new]
    assert len(changed) == 1
    assert changed[0].startswith('        {"id": "R4", "a": "bit1", "b": "out", "ohms": 3900, ')


def test_the_file_begins_with_format_and_version(tide_board: Project) -> None:
    assert encode(tide_board).startswith(b'{\n  "format": "backporch-project",\n  "version": 1,\n  "name": ')
    assert encode(tide_board).endswith(b"}\n")


def test_what_is_missing_takes_its_default(spoilt) -> None:
    assert decode(spoilt("driver")).driver.supply_volts == 3.3
    assert decode(spoilt(*R4, "tolerance")).channels.red.resistors[3].tolerance == 0.01


def test_a_byte_order_mark_is_no_harm(tide_board: Project) -> None:
    assert decode(b"\xef\xbb\xbf" + encode(tide_board)) == tide_board


@pytest.mark.parametrize(
    ("place", "value", "sentence"),
    [
        ((*R4, "ohms"), 0, "channels.red.resistors[3].ohms cannot be 0 Ω: a resistance lies between"),
        ((*R4, "ohms"), -5, "channels.red.resistors[3].ohms cannot be −5 Ω"),
        ((*R4, "ohms"), "4k7", "channels.red.resistors[3].ohms must be a number, not a text"),
        ((*R4, "ohms"), True, "channels.red.resistors[3].ohms must be a number, not true or false"),
        ((*R4, "ohms"), float("nan"), "NaN stands where a number is needed"),
        ((*R4, "ohms"), float("inf"), "Infinity stands where a number is needed"),
        ((*R4, "ohms"), ..., 'channels.red.resistors[3] has no "ohms": add it'),
        ((*R4, "colour"), 1, "channels.red.resistors[3].colour is not known in version 1"),
        (("a\nb" * 50,), 1, "a?ba?b"),
        (("cable",), {"meters": 2}, "cable.meters is not known in version 1"),
        (("cable",), {"metres": -2}, "cable.metres cannot be −2 m"),
        ((*R4, "id"), "R1", "channels.red.resistors[3].id is R1, as another part of this channel is"),
        ((*R4, "a"), "out", "channels.red.resistors[3] has both ends on the node out"),
        (R4, 5, "channels.red.resistors[3] must be an object in { }, not a whole number"),
        (("channels", "red", "pins"), ["a", "b", "c", "d", "a"], "channels.red.pins has a twice"),
        (
            ("channels", "red", "pins"),
            [f"b{i}" for i in range(1000)],
            "has 1000 pins; a channel has at most 8",
        ),
        (("channels", "blue", "pins"), [], "wiring.blue names 5 pins and the channel has 0"),
        (("wiring", "h"), "P0", "wiring has P0 twice"),
        (("mode", "h", "sync"), 0, "mode is not possible: The line's sync is 0"),
        (("mode", "h", "sync"), 1.5, "mode.h.sync must be a whole number, not a number"),
        (("mode", "pixel_clock_hz"), 10**400, "a whole number has 401 digits"),
        (("load", "monitors"), 1e30, "load.monitors must be a whole number, not a number"),
        (("mode", "interlaced"), True, "mode.interlaced is true, but interlaced modes are not simulated"),
        (("driver", "zeros"), "loose", "driver.zeros is 'loose', which is no value it can have"),
        (("load", "monitors"), 0, "load.monitors cannot be 0: the number of monitors lies between 1 and 8"),
        (("picture", "blanking"), [0, 0], "picture.blanking must have 3 items"),
        (("picture", "repeat_lines"), 3, "picture.repeat_lines is 3, but a pixel or line is sent 1, 2 or 4"),
        (("picture", "blanking"), [0, 0, 32], "picture.blanking[2] is 32, but blue has codes 0 to 31"),
        (("picture", "colour"), [0, 2, 0], "picture.colour[1] cannot be 2: a part of full scale"),
        (("scanline",), 526, "scanline is 526, but the mode has scanlines 1 to 525"),
        (("series",), 25, "series is 25, which is no value it can have"),
        (("name",), "a\nb", "name holds a line break or a control character"),
        (("name",), "\ud800", "name holds a line break or a control character"),
        (("name",), " ", "name is empty: type a name"),
        (("monitor",), {"h_min_hz": 9, "h_max_hz": 8, "v_min_hz": 1, "v_max_hz": 2}, "is above h_max_hz"),
        (("format",), "photo", 'this is no Backporch project: "format": "backporch-project" is missing'),
        (("version",), 2, "the file has version 2, and this program knows up to 1: take a newer program"),
        (("version",), "1", "version is not a whole number from 1"),
        (("version",), True, "version is not a whole number from 1"),
        (("name",), ..., 'the file has no "name": add it'),
    ],
    ids=lambda value: ".".join(map(str, value)) if isinstance(value, tuple) else None,
)
def test_a_wrong_value_is_named_with_its_place(spoilt, place, value, sentence: str) -> None:
    with pytest.raises(FileError) as error:
        decode(spoilt(*place, value=value))

    assert sentence in str(error.value)
    assert "\n" not in str(error.value)
    assert len(str(error.value)) < 250


def test_channels_said_to_be_linked_must_be_alike(spoilt) -> None:
    with pytest.raises(FileError, match="linked says that all channels are alike, but they differ"):
        decode(spoilt(*R4, "ohms", value=3900))


@pytest.mark.parametrize(
    ("data", "sentence"),
    [
        (b"", "the file is empty"),
        (b" \n", "the file is empty"),
        (b'{"format": "backporch-project", "ver', "the file is cut off at line 1"),
        (b'{"format": backporch}', "the JSON is damaged (Expecting value) at line 1, column 12"),
        (b"\xff\xfe{\x00", "byte 0 is not UTF-8 text"),
        (b"[]", "this is no Backporch project"),
        (b'"backporch-project"', "this is no project: a project's file begins with a brace"),
        ("Zettel für morgen".encode(), "this is no project: a project's file begins with a brace"),
        (b"[" * 100_000, "nested too deep"),
        (b'{"a":' * 100_000, "nested too deep"),
        (b'{"a": 1, "a": 2}', 'the key "a" stands twice in one object'),
        (b'{"a": ' + b"9" * 6000 + b"}", "a whole number has 6000 digits"),
    ],
    ids=[
        "empty",
        "blank",
        "cut",
        "damaged",
        "UTF-16",
        "list",
        "text",
        "notes",
        "deep lists",
        "deep",
        "twice",
        "long",
    ],
)
def test_damage_is_said_in_one_sentence(data: bytes, sentence: str) -> None:
    with pytest.raises(FileError) as error:
        decode(data)

    assert sentence in str(error.value)
    assert len(str(error.value)) < 200


@given(data=st.binary(max_size=60) | st.text(max_size=60).map(lambda text: text.encode("utf-8", "replace")))
def test_any_bytes_are_refused_in_one_sentence(data: bytes) -> None:
    with pytest.raises(FileError, match=r"^[^\n]{10,200}$"):
        decode(data)


JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=5),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=5), inner, max_size=3),
    max_leaves=8,
)


@given(data=st.data())
def test_any_value_anywhere_is_taken_or_refused_with_its_place(data: st.DataObject) -> None:
    content = json.loads(encode(TEMPLATES[0].project()))
    inner, path = content, []
    while isinstance(inner, dict | list) and inner and (not path or data.draw(st.booleans())):
        keys = list(inner) if isinstance(inner, dict) else list(range(len(inner)))
        outer, key = inner, data.draw(st.sampled_from(keys))
        path.append(key)
        inner = outer[key]
    outer[key] = data.draw(JSON)

    with suppress(FileError):
        project = decode(json.dumps(content).encode())
        assert decode(encode(project)) == project


def test_a_file_cut_anywhere_is_refused(tide_board: Project) -> None:
    whole = encode(tide_board).rstrip()
    for length in range(0, len(whole), 7):
        with pytest.raises(FileError):
            decode(whole[:length])


def test_a_nesting_that_hides_in_a_field_is_refused(spoilt) -> None:
    deep = json.loads("[" * 400 + "]" * 400)
    with pytest.raises(FileError, match="name must be a text, not a list"):
        decode(spoilt("name", value=deep))


def test_the_path_stands_before_the_place(tmp_path: Path, spoilt) -> None:
    path = tmp_path / "board.backporch"
    path.write_bytes(spoilt(*R4, "ohms", value=0))

    with pytest.raises(FileError) as error:
        read_project(path)

    assert str(error.value).startswith(f"{path}: channels.red.resistors[3].ohms cannot be 0 Ω")


def test_saving_and_opening(tmp_path: Path, tide_board: Project) -> None:
    path = tmp_path / "board.backporch"

    write_project(tide_board, path)
    assert read_project(path) == tide_board
    write_project(rename(tide_board, "Pier"), path)
    assert read_project(path).name == "Pier"


@pytest.mark.parametrize("content", [b"notes of mine", b'{"format": "backporch-project", "version": 9}'])
def test_a_file_that_cannot_be_read_is_never_overwritten(
    tmp_path: Path, tide_board: Project, content: bytes
) -> None:
    path = tmp_path / "board.backporch"
    path.write_bytes(content)

    with pytest.raises(FileError, match="not overwritten: save under another name"):
        write_project(tide_board, path)

    assert path.read_bytes() == content
    assert os.listdir(tmp_path) == ["board.backporch"]


def test_an_empty_file_holds_nothing_to_lose(tmp_path: Path, tide_board: Project) -> None:
    path = tmp_path / "board.backporch"
    path.touch()

    write_project(tide_board, path)

    assert read_project(path) == tide_board


def test_the_shipped_schema_is_current() -> None:
    shipped = json.loads((ROOT / "docs/reference/project-file.schema.json").read_text(encoding="utf-8"))

    assert shipped == json.loads(json.dumps(schema()))


def test_the_description_names_every_field() -> None:
    text = (ROOT / "docs/reference/project-file.md").read_text(encoding="utf-8")
    names = {name for kind in schema()["$defs"].values() for name in kind.get("properties", ())}

    assert {name for name in names if name not in text} == set()


def test_a_pixel_divider_is_kept_and_checked(tide_board: Project) -> None:
    uneven = replace(tide_board, pixel_divider=5.30078125)
    assert decode(encode(uneven)) == uneven

    for wrong, words in (
        (0.5, "pixel divider"),
        (5.3, "no whole number of 1/16777216"),
        (5.0, "a whole number, which leaves pixels even"),
    ):
        with pytest.raises(FileError, match=words):
            decode(encode(replace(tide_board, pixel_divider=wrong)))


def test_a_plan_of_the_finest_divider_is_read_back(tide_board: Project) -> None:
    chip = Chip(12_000_000, Span(11, 11), (Span(1, 1),), 133_000_000, fraction_bits=MOST_FRACTION_BITS)
    finest = plan_clock(tide_board.mode, chip)[-1]
    taken = take_plan(tide_board, finest)

    assert finest.divider.denominator > 1 << 16
    assert decode(encode(taken)).pixel_divider == finest.divider
