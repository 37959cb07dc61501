"""Things that are no readable file are named as what they are."""

import os
from pathlib import Path

import pytest

from workbench.errors import FileError
from workbench.files.reading import read_bytes


def test_a_file_is_read_up_to_its_limit(tmp_path: Path) -> None:
    path = tmp_path / "a"
    path.write_bytes(b"x" * 1000)

    assert read_bytes(path, 1000) == b"x" * 1000
    with pytest.raises(FileError, match="a: the file has more than 0 kB; choose another one"):
        read_bytes(path, 999)


def test_missing_files_and_folders_are_said(tmp_path: Path) -> None:
    with pytest.raises(FileError, match="missing: there is no such file; check the name"):
        read_bytes(tmp_path / "missing", 10)
    with pytest.raises(FileError, match="this is a folder; choose a file in it"):
        read_bytes(tmp_path, 10)
    with pytest.raises(FileError, match="the file cannot be read"):
        read_bytes(Path("a\0b"), 10)


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="no named pipes on this system")
def test_a_pipe_is_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe")

    with pytest.raises(FileError, match="this is no ordinary file"):
        read_bytes(tmp_path / "pipe", 10)


@pytest.mark.skipif(os.name != "posix" or os.geteuid() == 0, reason="needs a user without all rights")
def test_a_locked_file_is_said(tmp_path: Path) -> None:
    path = tmp_path / "locked"
    path.touch(mode=0o000)

    with pytest.raises(FileError, match="you may not read this file"):
        read_bytes(path, 10)
