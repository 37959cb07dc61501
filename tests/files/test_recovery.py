"""Recovery copies: written, found after a crash, set aside when damaged, gone after saving."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from workbench.errors import FileError
from workbench.files.project_file import write_project
from workbench.files.recovery import Recovery, leftover_copies
from workbench.project.document import Project
from workbench.project.edits.naming import rename
from workbench.project.templates import TEMPLATES


@pytest.fixture
def project() -> Project:
    return TEMPLATES[0].project()


def crashed(folder: Path, project: Project, source: Path | None = None) -> Path:
    """Write a copy as a program would that has ended since."""
    ended = subprocess.Popen([sys.executable, "-c", ""])
    ended.wait()
    recovery = Recovery(folder)
    recovery.write(project, source)
    left = folder / f"{ended.pid}-0000abcd.recovery"
    recovery.path.rename(left)
    return left


def test_a_copy_is_found_after_a_crash(tmp_path: Path, project: Project) -> None:
    path = crashed(tmp_path / "recovery", project)

    (copy,) = leftover_copies(tmp_path / "recovery")

    assert (copy.path, copy.project, copy.source, copy.source_changed) == (path, project, None, False)
    copy.remove()
    assert leftover_copies(tmp_path / "recovery") == ()


@pytest.mark.skipif(os.name != "posix", reason="needs to ask for a process")
def test_the_copy_of_a_running_program_is_left_alone(tmp_path: Path, project: Project) -> None:
    Recovery(tmp_path).write(project, None)

    assert leftover_copies(tmp_path) == ()
    assert len(os.listdir(tmp_path)) == 1


def test_a_copy_knows_its_source_and_whether_it_changed(tmp_path: Path, project: Project) -> None:
    source = tmp_path / "board.backporch"
    write_project(project, source)
    crashed(tmp_path / "recovery", rename(project, "Pier"), source)

    (copy,) = leftover_copies(tmp_path / "recovery")
    assert (copy.source, copy.source_changed, copy.project.name) == (source, False, "Pier")

    write_project(rename(project, "Quay"), source)
    assert leftover_copies(tmp_path / "recovery")[0].source_changed
    source.unlink()
    assert leftover_copies(tmp_path / "recovery")[0].source_changed


def test_a_copy_is_renewed_and_removed(tmp_path: Path, project: Project) -> None:
    recovery = Recovery(tmp_path)
    recovery.write(project, None)
    recovery.write(rename(project, "Pier"), None)
    assert os.listdir(tmp_path) == [recovery.path.name]
    assert b"Pier" in recovery.path.read_bytes()

    recovery.remove()
    recovery.remove()
    assert os.listdir(tmp_path) == []


def test_a_damaged_copy_is_set_aside_and_not_deleted(tmp_path: Path, project: Project) -> None:
    good = crashed(tmp_path, project)
    cut = tmp_path / "999999999-00000000.recovery"
    cut.write_bytes(good.read_bytes()[:200])

    (copy,) = leftover_copies(tmp_path)

    assert copy.path == good
    assert not cut.exists()
    assert (tmp_path / "damaged" / cut.name).read_bytes() == good.read_bytes()[:200]


@pytest.mark.parametrize("content", ["[]", "{}", '{"format": "backporch-recovery", "version": 1}'])
def test_what_is_no_copy_is_set_aside(tmp_path: Path, content: str) -> None:
    (tmp_path / "999999999-00000000.recovery").write_text(content)

    assert leftover_copies(tmp_path) == ()
    assert len(os.listdir(tmp_path / "damaged")) == 1


def test_other_files_and_a_missing_folder_are_no_copies(tmp_path: Path) -> None:
    (tmp_path / "notes.txt").write_text("mine")

    assert leftover_copies(tmp_path) == ()
    assert leftover_copies(tmp_path / "missing") == ()
    assert (tmp_path / "notes.txt").exists()


def test_a_folder_that_cannot_be_made_is_said(tmp_path: Path, project: Project) -> None:
    (tmp_path / "file").touch()

    with pytest.raises(FileError, match="no recovery copies can be kept here"):
        Recovery(tmp_path / "file" / "recovery").write(project, None)
