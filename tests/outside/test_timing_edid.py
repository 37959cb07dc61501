"""Real monitors' blocks against the data sets' own decode, where the folder of references is at hand."""

import csv
from pathlib import Path

import pytest

from workbench.timing.edid.descriptor import write_descriptor
from workbench.timing.edid.monitor import monitor_object
from workbench.timing.edid.read import read_edid
from workbench.timing.edid.text import hex_bytes
from workbench.timing.search import find_mode

FOLDER = Path(__file__).parents[3] / "shared" / "reference" / "edid"
EXPECTED = FOLDER / "expected.csv"
ROWS = list(csv.DictReader(EXPECTED.read_text("utf-8").splitlines())) if EXPECTED.is_file() else []
here = pytest.mark.skipif(not ROWS, reason="the real monitors' blocks are not shipped")


@here
@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["file"])
def test_input(row: dict[str, str]) -> None:
    figures = monitor_object(read_edid((FOLDER / row["file"]).read_bytes()))

    assert figures["version"] == row["edid_version"]
    assert figures["input"] == row["input"]
    assert f"{figures['white_v']:.3f}/{figures['sync_v']:.3f}" == row["white_sync_V"]
    assert figures["setup_expected"] == (row["setup_expected"] == "1")
    assert figures["separate_sync"] == (row["separate_sync"] == "1")
    assert figures["composite_sync"] == (row["composite_sync_on_hsync"] == "1")
    assert figures["sync_on_green"] == (row["sync_on_green"] == "1")
    assert figures["checksum_ok"] == (row["base_checksum"] == "ok")
    assert figures["gamma"] == float(row["gamma"])


@here
@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["file"])
def test_first_detailed_timing(row: dict[str, str]) -> None:
    edid = read_edid((FOLDER / row["file"]).read_bytes())
    mode = edid.detailed[0]

    assert len(edid.detailed) == int(row["dtd_count"])
    assert mode.pixel_clock_hz == 1000 * int(row["dtd1_clock_khz"])
    for axis, name in ((mode.h, "h"), (mode.v, "v")):
        assert axis.total == int(row[f"dtd1_{name}_total"])
        assert axis.front_porch == int(row[f"dtd1_{name}_front"])
        assert axis.sync == int(row[f"dtd1_{name}_sync"])
        assert axis.back_porch == int(row[f"dtd1_{name}_back"])
    assert (mode.h.active, mode.v.active) == (int(row["dtd1_width"]), int(row["dtd1_height"]))
    assert mode.interlaced == (row["dtd1_interlaced"] == "1")


@here
@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["file"])
def test_range(row: dict[str, str]) -> None:
    found = monitor_object(read_edid((FOLDER / row["file"]).read_bytes()))["range"]

    if not row["range_vmin_hz"]:
        assert found is None
        return
    clock_mhz = row["range_max_clock_mhz"]
    assert found == {
        "v_min_hz": float(row["range_vmin_hz"]),
        "v_max_hz": float(row["range_vmax_hz"]),
        "h_min_hz": 1e3 * float(row["range_hmin_khz"]),
        "h_max_hz": 1e3 * float(row["range_hmax_khz"]),
        "max_pixel_clock_hz": 1e6 * float(clock_mhz) if clock_mhz else None,
    }


@here
@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["file"])
def test_established_bits_become_as_many_modes(row: dict[str, str]) -> None:
    edid = read_edid((FOLDER / row["file"]).read_bytes())
    bits = int.from_bytes(hex_bytes(row["established_bytes_35_37"]), "big")

    assert len(edid.established) == (bits & ~0x7F).bit_count()


@here
@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["file"])
def test_a_flipped_byte_fails_the_checksum(row: dict[str, str]) -> None:
    data = bytearray(hex_bytes((FOLDER / row["file"]).read_text(encoding="ascii")))
    data[60] ^= 0xFF

    assert not read_edid(bytes(data)).checksum_ok


def test_check_value_of_1024x768() -> None:
    """The bytes of 1024x768@60 as they stand in real monitors' blocks."""
    packed = write_descriptor(find_mode("1024x768@60"))

    assert packed.hex(" ") == "64 19 00 40 41 00 26 30 18 88 36 00 00 00 00 00 00 18"
