"""The commands of timing: ``mode --by``, ``mode --descriptor``, ``monitor`` and ``clock``."""

import json
from pathlib import Path

import pytest

from tests.edids import base_block
from workbench.cli import main
from workbench.timing.clock.plan import Jitter
from workbench.timing.edid.descriptor import write_descriptor
from workbench.timing.edid.text import c_array, hex_text
from workbench.timing.search import find_mode

CHIP = ["--reference", "12M", "--multiply", "16..320", "--divide", "1..7x1..7", "--max-system", "133M"]


@pytest.fixture
def refused(capsys):
    """Return a runner of a command that must be refused; gives its one line on stderr."""

    def run(*words: str) -> str:
        try:
            code = main(words)
        except SystemExit as ended:
            code = ended.code
        printed = capsys.readouterr()
        assert code == 2
        assert printed.out == ""
        assert printed.err.count("\n") == 1
        assert printed.err.startswith("backporch")
        return printed.err.rstrip("\n")

    return run


def as_json(capsys, *words: str):
    assert main([*words, "--json"]) == 0
    return json.loads(capsys.readouterr().out)


@pytest.mark.parametrize(
    ("by", "clock_hz"),
    [
        ("dmt", 25_175_000),
        ("cta", 25_175_000),
        ("cvt", 23_750_000),
        ("cvt-rb", 23_500_000),
        ("gtf", 23_856_000),
    ],
)
def test_a_mode_by_each_way(capsys, by, clock_hz):
    timing = as_json(capsys, "mode", "640x480@60", "--by", by)

    assert timing["pixel_clock_hz"] == pytest.approx(clock_hz, abs=6000)


def test_a_descriptor_is_18_bytes_of_hex_and_its_losses_stand_apart(capsys):
    assert main(["mode", "640x480@60", "--descriptor"]) == 0

    printed = capsys.readouterr()
    assert printed.out == "d5 09 80 a0 20 e0 2d 10 10 60 a2 00 00 00 00 00 00 18\n"
    assert "25.17 MHz" in printed.err


def test_a_descriptor_as_json_keeps_the_timing(capsys):
    timing = as_json(capsys, "mode", "1024x768@60", "--descriptor")

    assert timing["descriptor"].startswith("64 19 00 40 41")
    assert timing["descriptor_losses"] == []
    assert timing["h"]["total"] == 1344


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["0x0@0"], "has no picture"),
        (["640x480"], "lacks a refresh rate"),
        (["99999x1@1"], "is larger than"),
        (["640x-480@60"], "is not a display mode"),
        (["641x481@60", "--by", "dmt"], "is not in the VESA DMT table"),
        (["640x480@1", "--by", "gtf"], "too long for GTF"),
        (["640x480@1000000000", "--by", "cvt"], "is outside 1 … 1000"),
        (["640x480@60", "--by", "wish"], "invalid choice"),
        (["4096x2160@60RB2", "--descriptor"], "does not fit the descriptor"),
    ],
)
def test_an_impossible_mode_is_refused(refused, words, said):
    assert said in refused("mode", *words)


@pytest.fixture
def monitor(tmp_path: Path) -> Path:
    path = tmp_path / "desk.edid"
    path.write_bytes(base_block())
    return path


def test_a_monitor_is_the_contract(capsys, monitor):
    said = as_json(capsys, "monitor", str(monitor))

    assert {"version", "input", "checksum_ok", "white_v", "sync_v", "setup_expected"} < set(said)
    assert {"separate_sync", "composite_sync", "sync_on_green", "modes", "range"} < set(said)
    assert said["input"] == "analog"
    assert said["range"]["h_max_hz"] == 70e3
    assert said["modes"][0]["name"] == "1024x768@75"


def test_hex_text_says_the_same_as_the_bytes(capsys, monitor, tmp_path):
    text = tmp_path / "desk.hex"
    text.write_text(hex_text(base_block()))

    assert as_json(capsys, "monitor", str(text)) == as_json(capsys, "monitor", str(monitor))


def test_a_c_array_of_a_block_says_the_same_as_the_bytes(capsys, monitor, tmp_path):
    text = tmp_path / "desk.h"
    text.write_text(f"#include <stdint.h>\n// of a desk\n{c_array(base_block(), 'desk')}\n")

    assert as_json(capsys, "monitor", str(text)) == as_json(capsys, "monitor", str(monitor))


def test_a_c_array_of_a_descriptor_is_the_mode_it_was_made_from(capsys, tmp_path):
    mode = find_mode("800x600@60")
    text = tmp_path / "mode.h"
    text.write_text(c_array(write_descriptor(mode), "detailed_timing"))

    said = as_json(capsys, "monitor", str(text))

    assert (said["pixel_clock_hz"], said["h"]["total"], said["v"]["total"]) == (40_000_000, 1056, 628)
    assert main(["monitor", str(text)]) == 0
    assert "800x600@60" in capsys.readouterr().out


def test_a_monitor_as_text_names_what_counts(capsys, monitor):
    assert main(["monitor", str(monitor)]) == 0

    text = capsys.readouterr().out
    for words in (
        "ROW “Riverside 17”",
        "separate sync",
        "lines 30 … 70 kHz",
        "1024x768@75",
        "checksum   right",
    ):
        assert words in text


def test_a_wrong_checksum_is_said_and_read_on(capsys, tmp_path):
    path = tmp_path / "bent.edid"
    path.write_bytes(base_block({127: 0}, mend=False))

    assert main(["monitor", str(path)]) == 0
    text = capsys.readouterr().out
    assert "checksum   wrong" in text
    assert "byte 127" in text


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"", "is empty"),
        (bytes(100), "cut short: it has 100 bytes"),
        (base_block()[:127], "has 127 bytes"),
        (bytes(128), "This is no EDID"),
        (bytes(10_000_000), "has more than"),
        (b"00 ff f", "odd number of digits"),
        (b"the kettle", "which is no hex"),
    ],
    ids=["empty", "100", "127", "zeros", "10 MB", "odd digits", "no hex"],
)
def test_a_file_that_is_no_edid_is_refused(refused, tmp_path, content, said):
    path = tmp_path / "no.edid"
    path.write_bytes(content)

    line = refused("monitor", str(path))

    assert said in line
    assert str(path) in line


@pytest.mark.parametrize("length", [128, 129, 256])
def test_bytes_after_the_block_are_counted(capsys, tmp_path, length):
    path = tmp_path / "long.edid"
    path.write_bytes(base_block().ljust(length, b"\0"))

    said = as_json(capsys, "monitor", str(path))

    assert bool(said["damages"]) is (length > 128)


def test_a_missing_file_is_refused(refused, tmp_path):
    assert "there is no such file" in refused("monitor", str(tmp_path / "gone.edid"))


def test_a_clock_is_the_contract_best_first(capsys):
    plans = as_json(capsys, "clock", "640x480@60", *CHIP, "--vco", "750M..1600M", "--fraction", "8")["plans"]

    assert set(plans[0]) == {
        "system_hz",
        "divider",
        "pixel_hz",
        "error_ppm",
        "jitter",
        "uneven_s",
        "settings",
    }
    order = [jitter.value for jitter in Jitter]
    ranks = [order.index(plan["jitter"]) for plan in plans]
    assert ranks == sorted(ranks)
    assert plans[0]["error_ppm"] == pytest.approx(993.05, abs=0.01)
    assert plans[0]["pixel_hz"] == 25_200_000.0


def test_a_clock_as_text_gives_settings_and_rates(capsys):
    assert main(["clock", "640x480@60", *CHIP]) == 0

    text = capsys.readouterr().out
    assert "+993.05 ppm" in text
    assert "12 MHz × 63 / 6 / 5 = 25.2 MHz, / 1" in text
    assert "60.0000 Hz" in text


def test_a_far_clock_carries_its_caution(capsys):
    words = ["--reference", "50M", "--multiply", "1", "--max-system", "50M"]

    assert main(["clock", "640x480@60", *words]) == 0

    text = capsys.readouterr().out
    assert "−6951.34 ppm" in text
    assert "many monitors still lock" in text


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ({"--multiply": "320..16"}, "runs backwards"),
        ({"--multiply": "many"}, "multiply range “many” cannot be read"),
        ({"--divide": "1..7x"}, "divide range “” cannot be read"),
        ({"--reference": "0"}, "reference"),
        ({"--reference": "12MM"}, "reference cannot be read"),
        ({"--max-system": "1k"}, "No setting keeps the system clock under"),
        ({"--vco": "1600M..750M"}, "runs backwards"),
        ({"--vco": "750M"}, "oscillator's range"),
        ({"--fraction": "99"}, "99 fractional bits"),
        ({"--fraction": "-1"}, "--fraction"),
        ({"--multiply": "1..1000000", "--divide": "1..1000000"}, "more than the 20000000 tried here"),
    ],
    ids=str,
)
def test_an_impossible_chip_is_refused(refused, change, said):
    options = dict(zip(CHIP[::2], CHIP[1::2], strict=True)) | change

    assert said in refused("clock", "640x480@60", *(word for pair in options.items() for word in pair))
