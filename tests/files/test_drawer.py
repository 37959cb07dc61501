import pytest

from workbench.circuit.fit import OwnedPart
from workbench.errors import FileError
from workbench.files.drawer import parse_drawer, read_drawer


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
        pytest.param(b"", "value must be there", id="empty"),
        pytest.param(b"1k,3\n2k,4\n", "value must be there", id="no head"),
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
