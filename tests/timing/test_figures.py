import json

import pytest

from workbench.timing.figures import simulable, timing_object
from workbench.timing.standards import CTA, KNOWN, dmt_mode

KEYS = {"name", "source", "pixel_clock_hz", "pixel_s", "h", "v"} | {
    "line_rate_hz",
    "frame_rate_hz",
    "line_s",
    "frame_s",
}


def test_timing_object_has_the_keys_of_the_contract() -> None:
    figures = timing_object(dmt_mode(0x04))

    assert figures.keys() >= KEYS
    assert figures["h"] == {
        "active": 640,
        "front_porch": 16,
        "sync": 96,
        "back_porch": 48,
        "total": 800,
        "polarity": "-",
        "border": 8,
    }


@pytest.mark.parametrize("mode", KNOWN, ids=lambda mode: f"{mode.source} {mode.name}")
def test_times_and_rates_agree(mode) -> None:
    figures = json.loads(json.dumps(timing_object(mode)))

    assert figures["line_s"] * figures["line_rate_hz"] == pytest.approx(1, abs=1e-15)
    assert figures["frame_s"] * figures["frame_rate_hz"] == pytest.approx(1, abs=1e-15)
    assert figures["line_s"] == pytest.approx(figures["h"]["total"] * figures["pixel_s"], rel=1e-15)


def test_interlaced_modes_say_why_they_are_not_shown() -> None:
    vic_5 = CTA[3]

    assert simulable(dmt_mode(0x04)) is None
    assert "1920x1080@60i is interlaced" in (simulable(vic_5) or "")
    assert timing_object(vic_5)["field_rate_hz"] == pytest.approx(60)
    assert timing_object(vic_5)["frame_rate_hz"] == pytest.approx(30)
