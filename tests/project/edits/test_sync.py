"""Edits of the sync lines."""

import pytest

from workbench.errors import EditError
from workbench.project.document import Direction, Project, SyncLine
from workbench.project.edits.sync import set_sync_input, set_sync_series


def test_each_sync_line_has_its_own_resistors(project: Project) -> None:
    edited = set_sync_series(project, Direction.HORIZONTAL, 0.0)
    edited = set_sync_input(edited, Direction.VERTICAL, 1e3)

    assert edited.sync.h == SyncLine(0.0)
    assert edited.sync.v == SyncLine(100.0, 1e3)
    assert set_sync_input(edited, Direction.VERTICAL, None).sync.v == SyncLine(100.0)


def test_impossible_resistors_are_refused(project: Project) -> None:
    with pytest.raises(EditError, match="the V sync resistor cannot be −1 Ω"):
        set_sync_series(project, Direction.VERTICAL, -1.0)
    with pytest.raises(EditError, match="the H sync input cannot be 0 Ω"):
        set_sync_input(project, Direction.HORIZONTAL, 0.0)
