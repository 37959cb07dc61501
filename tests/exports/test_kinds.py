"""The list of what can be exported."""

import pytest

from tests.exports.boards import solved
from workbench.errors import TimingError
from workbench.exports import KINDS


@pytest.mark.parametrize("name", KINDS)
def test_every_kind_makes_a_file_of_a_usual_board(name):
    kind = KINDS[name]

    assert kind.name == name
    assert kind.suffix.startswith(".")
    assert len(kind.content(solved())) > 100


@pytest.mark.parametrize("name", ["scanline-csv", "scanline-svg"])
def test_an_interlaced_mode_has_no_scanline_and_says_why(name):
    with pytest.raises(TimingError, match="interlaced"):
        KINDS[name].content(solved("1024x768@43i"))
