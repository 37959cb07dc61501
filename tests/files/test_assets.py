"""What ships with the program is found."""

import pytest

from workbench.errors import FileError
from workbench.files.assets import asset_path


def test_a_shipped_file_is_found() -> None:
    assert asset_path("fonts/OFL.txt").read_text(encoding="utf-8").strip()


def test_a_missing_one_says_what_to_do() -> None:
    with pytest.raises(FileError, match=r"no-such-thing: .* install Backporch again"):
        asset_path("no-such-thing")
