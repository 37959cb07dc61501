from collections import Counter

import pytest

from workbench.timing.frame import line_region, v_sync_asserted, v_sync_lines
from workbench.timing.mode import Region
from workbench.timing.standards import KNOWN, dmt_mode


@pytest.mark.parametrize(
    ("number", "region"),
    [
        (1, Region.ACTIVE),
        (480, Region.ACTIVE),
        (481, Region.FRONT_PORCH),
        (490, Region.FRONT_PORCH),
        (491, Region.SYNC),
        (492, Region.SYNC),
        (493, Region.BACK_PORCH),
        (525, Region.BACK_PORCH),
        (526, Region.ACTIVE),
    ],
)
def test_lines_of_640x480(number: int, region: Region) -> None:
    assert line_region(dmt_mode(0x04), number) is region


@pytest.mark.parametrize("mode", KNOWN, ids=lambda mode: f"{mode.source} {mode.name}")
def test_a_frame_holds_every_count(mode) -> None:
    regions = Counter(line_region(mode, number) for number in range(1, mode.v.total + 1))

    assert regions[Region.ACTIVE] == mode.v.active
    assert regions[Region.FRONT_PORCH] == mode.v.front_porch
    assert regions[Region.SYNC] == mode.v.sync
    assert regions[Region.BACK_PORCH] == mode.v.back_porch
    assert all(line_region(mode, number) is Region.SYNC for number in v_sync_lines(mode))


def test_v_sync_changes_at_the_h_sync_edge() -> None:
    mode = dmt_mode(0x04)

    assert v_sync_asserted(mode, 490) == (False, False)
    assert v_sync_asserted(mode, 491) == (False, True)
    assert v_sync_asserted(mode, 492) == (True, True)
    assert v_sync_asserted(mode, 493) == (True, False)
    assert v_sync_asserted(mode, 1) == (False, False)
