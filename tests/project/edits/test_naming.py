"""Edits of names."""

import pytest

from workbench.circuit.series import Series
from workbench.errors import EditError
from workbench.project.document import Channel, Direction, Project
from workbench.project.edits.naming import name_pin, name_sync_pin, rename, set_series


def test_names_are_given(project: Project) -> None:
    edited = rename(project, "  Pier ")
    edited = name_pin(edited, Channel.RED, 2, "GP14")
    edited = name_sync_pin(edited, Direction.VERTICAL, "GP15")

    assert edited.name == "Pier"
    assert edited.wiring.red == ("P0", "P1", "GP14")
    assert edited.wiring.v == "GP15"


@pytest.mark.parametrize(
    ("name", "sentence"),
    [
        (" ", "the project's name is empty: type a name"),
        ("x" * 101, "the project's name is longer than 100 characters"),
        ("a\nb", "holds a line break or a control character"),
    ],
)
def test_impossible_names_are_refused(project: Project, name: str, sentence: str) -> None:
    with pytest.raises(EditError, match=sentence):
        rename(project, name)


def test_a_pin_has_one_line(project: Project) -> None:
    with pytest.raises(EditError, match="P9 drives another line already"):
        name_pin(project, Channel.RED, 0, "P9")
    with pytest.raises(EditError, match="red has 3 pins, counted from 0: there is no 3"):
        name_pin(project, Channel.RED, 3, "P20")


def test_choosing_a_series_changes_no_value(project: Project) -> None:
    edited = set_series(project, Series.E96)

    assert edited.series is Series.E96
    assert edited.channels is project.channels
