"""Transfer tables as text."""

import pytest

from workbench.errors import FileError
from workbench.files.transfer_table import read_transfer, transfer_values


@pytest.mark.parametrize(
    ("text", "values"),
    [
        ("0 0.5 1", (0.0, 0.5, 1.0)),
        ("0\n0.25\n1\n", (0.0, 0.25, 1.0)),
        ("0, 51; 255", (0.0, 0.2, 1.0)),
        ("# bent\n0 # black\n\n1e0\n", (0.0, 1.0)),
        ("1 0", (1.0, 0.0)),
    ],
)
def test_numbers_in_any_layout(text, values):
    assert transfer_values(text) == pytest.approx(values)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "here are 0"),
        ("0.5", "here are 1"),
        ("\n".join(["0.5"] * 257), "here are 257"),
        ("0\nnought\n1", "line 2: “nought” is no number"),
        ("0 -1", "line 1: -1 is out of range"),
        ("0 256", "line 1: 256 is out of range"),
        ("0 nan", "line 1: nan is out of range"),
    ],
)
def test_what_is_no_table_is_refused_with_its_place(text, words):
    with pytest.raises(FileError, match=words):
        transfer_values(text)


def test_a_file_is_named_with_what_is_wrong(tmp_path):
    path = tmp_path / "curve.csv"
    path.write_text("0\n0.3\n1\n")
    assert read_transfer(path) == (0.0, 0.3, 1.0)

    path.write_bytes(b"\x00\xff\x10")
    with pytest.raises(FileError, match=r"curve\.csv: line 1"):
        read_transfer(path)
