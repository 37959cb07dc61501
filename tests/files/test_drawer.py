import pytest

from workbench.circuit.fit.drawer import Drawer, OwnedPart
from workbench.errors import FileError, WorkbenchError
from workbench.files.drawer import (
    changed_part,
    drawer_text,
    parse_drawer,
    parse_rows,
    read_drawer,
    write_drawer,
)


def test_a_table_with_every_column_is_read():
    drawer, refused = parse_drawer("value,count,tolerance,measured\n1k,12,1%,998\n470R,,5%,\n")

    assert refused == ()
    assert drawer.parts == (OwnedPart(998.0, 12, 0.01, 1000.0), OwnedPart(470.0, None, 0.05))


@pytest.mark.parametrize(
    "text",
    [
        "value;count\n4,7k;3\n",
        "value\tcount\n4k7\t3\n",
        "count,value\n3,4700\n",
        "\n\nValue , Count\n4.7k, 3\n",
    ],
    ids=["semicolon", "tab", "other order", "blanks"],
)
def test_usual_ways_to_write_a_table_are_read(text):
    drawer, refused = parse_drawer(text)

    assert (drawer.parts, refused) == ((OwnedPart(4700.0, 3),), ())


def test_a_row_of_nonsense_is_told_of_and_the_others_are_kept():
    drawer, refused = parse_drawer("value,count,tolerance\n1k,3,1%\nbig,3,1%\n2k,-1,1%\n\n3k,1,100%\n4k,2,\n")

    assert [part.ohms for part in drawer.parts] == [1000.0, 4000.0]
    assert [sentence.split(" is ")[0] for sentence in refused] == ["row 3", "row 4", "row 6"]
    assert "“big”" in refused[0]


@pytest.mark.parametrize(
    ("content", "told"),
    [
        pytest.param(b"", "no row", id="empty"),
        pytest.param(b"value,value\n1k,2k\n", "value must be there", id="one column twice"),
        pytest.param(b'1k,"3\n', "row 1", id="an open quote"),
        pytest.param(b"value,colour\n1k,red\n", "value must be there", id="unknown column"),
        pytest.param(b"value\n", "no row", id="head only"),
        pytest.param(b"value\nnan\n", "row 2", id="nonsense only"),
        pytest.param(b"\xff\xfe\x00", "UTF-8", id="not UTF-8"),
    ],
)
def test_what_is_no_drawer_is_refused_by_name(tmp_path, content, told):
    path = tmp_path / "drawer.csv"
    path.write_bytes(content)

    with pytest.raises(FileError, match=told) as error:
        read_drawer(path)
    assert str(path) in str(error.value)


@pytest.mark.parametrize(
    "text",
    ["4k7\t3\n470\t", "4,7k;3\n470;\n", "4.7k,3\n470,", "\n4k7,3,1%\n470R\n", "4k7\t3\r\n470\r\n"],
    ids=["tab", "semicolon", "comma", "longer row", "two-letter line ends"],
)
def test_rows_without_names_stand_in_the_usual_order(text):
    drawer, refused = parse_drawer(text)

    assert (drawer.parts, refused) == ((OwnedPart(4700.0, 3), OwnedPart(470.0)), ())


def test_a_list_of_values_with_decimal_commas_is_read():
    drawer, refused = parse_drawer("4,7k\n2,2k\n470\n")

    assert ([part.ohms for part in drawer.parts], refused) == ([4700.0, 2200.0, 470.0], ())


@pytest.mark.parametrize(
    ("row", "told"),
    [
        ("4,7k,3", "7k"),
        ("1k,2,3%,1001,extra", "semicolons"),
        ("0,3", "above 0"),
        ("1e12,3", "1 GΩ"),
        ("1k,3,60%", "50 %"),
        ("1k,3,-5%", "must not be below 0"),
        ("1k,3,1%,nan", "not a number"),
        ("1k,1.5", "no count"),
        (",3", "no value"),
    ],
)
def test_each_kind_of_nonsense_is_told_of_by_its_row(row, told):
    drawer, (sentence,) = parse_rows(f"2k,1\n{row}\n3k,2\n")

    assert [part.ohms for part in drawer.parts] == [2000.0, 3000.0]
    assert sentence.startswith("row 2 is left out: ")
    assert told in sentence


def test_a_first_row_of_nonsense_leaves_the_others():
    drawer, refused = parse_rows("banana\n1k\n")

    assert drawer == Drawer((OwnedPart(1000.0),))
    assert refused[0].startswith("row 1 is left out: “banana”")


@pytest.mark.parametrize("count", ["", "many", "Many"])
def test_a_count_may_be_as_many_as_wanted(count):
    drawer, refused = parse_rows(f"1k,{count},±5 %\n2k,{count},+/-5%\n")

    assert (drawer, refused) == (Drawer((OwnedPart(1e3, None, 0.05), OwnedPart(2e3, None, 0.05))), ())


def test_a_drawer_ends_somewhere():
    drawer, refused = parse_rows("1k\n" * 1002)

    assert (len(drawer.parts), len(refused)) == (1000, 2)


def test_a_drawer_is_written_and_read_back_exactly(tmp_path):
    drawer = Drawer(
        (OwnedPart(998.0123456789, 12, 0.001, 1000.0), OwnedPart(1e3 / 3, None, 0.05), OwnedPart(4.7, 1))
    )
    path = tmp_path / "drawer.csv"

    write_drawer(drawer, path)

    assert read_drawer(path) == (drawer, ())
    assert path.read_text().splitlines()[0] == "value,count,tolerance,measured"


def test_nothing_is_an_empty_drawer():
    assert parse_rows(drawer_text(Drawer(()))) == (Drawer(()), ())


def test_a_cell_is_typed():
    part = changed_part(None, "value", " 4k7 ")
    part = changed_part(part, "count", "12")
    part = changed_part(part, "tolerance", "±5")
    part = changed_part(part, "measured", "4,68k")

    assert part == OwnedPart(4680.0, 12, 0.05, 4700.0)
    assert changed_part(part, "value", "5k") == OwnedPart(4680.0, 12, 0.05, 5000.0)
    assert changed_part(part, "measured", "") == OwnedPart(4700.0, 12, 0.05)
    assert changed_part(part, "count", "").count is None


@pytest.mark.parametrize(
    ("column", "text"),
    [("value", ""), ("value", "4k7k"), ("count", "0"), ("tolerance", "99"), ("measured", "-1")],
)
def test_a_cell_that_cannot_be_is_refused(column, text):
    with pytest.raises(WorkbenchError):
        changed_part(OwnedPart(1000.0), column, text)


def test_a_new_row_starts_with_its_value():
    with pytest.raises(WorkbenchError, match="value first"):
        changed_part(None, "count", "3")
