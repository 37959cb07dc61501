"""The list of recent files: newest first, no doubles, ten at most."""

from pathlib import Path

from workbench.files.recent import MOST_RECENT, with_recent, without_recent


def test_the_newest_comes_first_and_once() -> None:
    files = with_recent(with_recent(with_recent((), Path("/a")), Path("/b")), Path("/a"))

    assert files == (Path("/a").absolute(), Path("/b").absolute())


def test_the_list_ends_at_ten() -> None:
    files: tuple[Path, ...] = ()
    for number in range(15):
        files = with_recent(files, Path(f"/{number}"))

    assert len(files) == MOST_RECENT == 10
    assert files[0] == Path("/14").absolute()


def test_paths_are_kept_whole() -> None:
    assert with_recent((), Path("a"))[0].is_absolute()


def test_a_file_is_taken_off() -> None:
    files = (Path("/a").absolute(), Path("/b").absolute())

    assert without_recent(files, Path("/a")) == files[1:]
    assert without_recent(files, Path("/c")) == files
