"""Writing leaves the old content or the new, and nothing else behind."""

import errno
import os
import stat
from pathlib import Path

import pytest

from workbench.errors import FileError
from workbench.files.atomic import write_atomic


def test_content_is_replaced_and_nothing_is_left_behind(tmp_path: Path) -> None:
    path = tmp_path / "board"
    write_atomic(path, b"old")

    write_atomic(path, b"new")

    assert path.read_bytes() == b"new"
    assert os.listdir(tmp_path) == ["board"]


@pytest.mark.parametrize("moment", ["fsync", "replace"])
def test_a_failure_keeps_the_old_content(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, moment: str
) -> None:
    path = tmp_path / "board"
    write_atomic(path, b"old")

    def fail(*_: object) -> None:
        raise OSError(errno.ENOSPC, "no space")

    monkeypatch.setattr(os, moment, fail)
    monkeypatch.setattr(Path, "replace", fail)

    with pytest.raises(FileError, match="board: not saved, the disk is full"):
        write_atomic(path, b"new")

    monkeypatch.undo()
    assert path.read_bytes() == b"old"
    assert os.listdir(tmp_path) == ["board"]


@pytest.mark.skipif(os.name != "posix", reason="permission bits")
def test_permissions_stay(tmp_path: Path) -> None:
    path = tmp_path / "board"
    path.write_bytes(b"old")
    path.chmod(0o640)

    write_atomic(path, b"new")

    assert stat.S_IMODE(path.stat().st_mode) == 0o640


@pytest.mark.skipif(os.name != "posix", reason="symbolic links")
def test_a_link_stays_one(tmp_path: Path) -> None:
    (tmp_path / "there").mkdir()
    target, link = tmp_path / "there/board", tmp_path / "link"
    target.write_bytes(b"old")
    link.symlink_to(target)

    write_atomic(link, b"new")

    assert link.is_symlink()
    assert target.read_bytes() == b"new"


def test_a_missing_folder_and_a_folder_in_the_way_are_said(tmp_path: Path) -> None:
    with pytest.raises(FileError, match="its folder does not exist"):
        write_atomic(tmp_path / "no" / "board", b"new")
    with pytest.raises(FileError, match="this is a folder: give the name of a file in it"):
        write_atomic(tmp_path, b"new")
    with pytest.raises(FileError, match="the name is too long"):
        write_atomic(tmp_path / ("x" * 300), b"new")
