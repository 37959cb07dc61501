import pytest

from workbench.timing.edid.ranges import outside
from workbench.timing.edid.values import Limits
from workbench.timing.search import find_mode

TUBE = Limits(50, 90, 31e3, 48e3, 80e6)


@pytest.mark.parametrize(
    ("name", "parts"),
    [
        ("640x480@60", []),
        ("1024x768@60", []),  # 48.363 kHz: within the half kilohertz that whole units may hide
        ("1024x768@70", ["56.476 kHz"]),
        ("1920x1080@24", ["27.000 kHz", "24.00 Hz"]),
        ("800x600@120RB", ["76.302 kHz", "119.97 Hz"]),
        ("1280x1024@60", ["63.981 kHz", "108 MHz"]),
        ("1024x768@43i", []),  # 86.8 fields a second
    ],
)
def test_reasons(name: str, parts: list[str]) -> None:
    reasons = outside(find_mode(name), TUBE)

    assert len(reasons) == len(parts)
    for reason, part in zip(reasons, parts, strict=True):
        assert part in reason
