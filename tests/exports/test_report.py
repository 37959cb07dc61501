import json
import re
from dataclasses import replace

import pytest

from tests.exports.boards import board, solved
from workbench.circuit.network import Cable, Capacitor, Driver, Load, Network, Zeros
from workbench.exports.report import report_object, report_text
from workbench.pipeline.run import Pipeline
from workbench.project.document import Channels, Project, Wiring
from workbench.timing.search import find_mode

CHANNEL_KEYS = {
    *("bits", "topology", "levels_v", "unloaded_levels_v", "full_scale_v", "lsb_v", "inl_lsb", "dnl_lsb"),
    *("monotonic", "source_ohms", "pin_current_a", "rise_s", "bandwidth_hz", "settle_s"),
    *("first_ghost_ratio", "first_ghost_s"),
    "worst_glitch",  # beyond the public keys: null where no pin is late
}
FINDING_KEYS = {
    *("id", "severity", "subject", "measured", "unit", "low", "high", "source", "why", "remedy"),
}


def test_the_object_has_every_key_of_the_contract():
    report = report_object(solved())

    assert (report["format"], report["version"]) == ("backporch-report", 1)
    assert set(report) == {"format", "version", "timing", "channels", "pins", "findings"}
    assert {key: set(channel) for key, channel in report["channels"].items()} == dict.fromkeys(
        ("red", "green", "blue"), CHANNEL_KEYS
    )
    assert set(report["pins"]) == {"total_current_a", "worst_pin_current_a"}
    assert all(set(finding) >= FINDING_KEYS for finding in report["findings"])


def test_figures_are_unrounded_and_in_code_order():
    red = report_object(solved())["channels"]["red"]

    # common practice, no source: 500/1k/2k/4k/8k at 3.3 V into 75 Ω gives 258 Ω and 0.743 V
    total = 1 / 500 + 1 / 1000 + 1 / 2000 + 1 / 4000 + 1 / 8000
    assert red["full_scale_v"] == pytest.approx(3.3 * total / (total + 1 / 75), rel=1e-12)
    assert red["source_ohms"] == pytest.approx(1 / total, rel=1e-12)
    assert red["levels_v"][16] == pytest.approx(3.3 / 500 / (total + 1 / 75), rel=1e-12)
    assert red["unloaded_levels_v"][31] == pytest.approx(3.3)
    assert (len(red["levels_v"]), len(red["inl_lsb"]), len(red["dnl_lsb"])) == (32, 32, 31)
    assert red["pin_current_a"] == sorted(red["pin_current_a"], reverse=True)
    assert red["first_ghost_ratio"] is None


def test_timing_is_the_mode_object():
    timing = report_object(solved())["timing"]

    assert timing["line_s"] == pytest.approx(31.7776e-6, rel=1e-5)
    assert timing["frame_rate_hz"] == pytest.approx(59.9405, rel=1e-6)
    assert timing["h"]["polarity"] == "-"


def test_a_cable_brings_its_ghost():
    red = report_object(solved(cable=Cable(10.0), load=Load(82.0)))["channels"]["red"]

    # 2 x 10 m / (0.66 c) (common practice, no source: two thirds of the speed of light)
    assert red["first_ghost_s"] == pytest.approx(101.1e-9, rel=1e-3)
    assert red["first_ghost_ratio"] > 0.01


@pytest.mark.parametrize(
    "network", [Network((), ()), Network(("bit0",), ())], ids=["no pins", "no resistors"]
)
def test_a_broken_project_still_reports_as_valid_json(network):
    wiring = Wiring(*(("P0",)[: network.bits] for _ in range(3)), h="H", v="V")
    project = Project("broken", find_mode("640x480@60"), Channels(network, network, network), wiring)
    result = Pipeline().run(project)

    again = json.loads(json.dumps(report_object(result), allow_nan=False))

    assert any(finding["severity"] == "fail" for finding in again["findings"])
    assert "Findings" in report_text(result)


def test_an_interlaced_mode_reports_its_figures():
    report = report_object(solved("1024x768@43i"))

    assert report["timing"]["interlaced"] is True
    assert "interlaced" in {finding["id"] for finding in report["findings"]}


def test_the_text_holds_every_figure_and_finding():
    result = solved(driver=Driver(5.0))
    text = report_text(result)

    for figure in ("25.175 MHz", "31.778 µs", "1.126 V loaded", "5.000 V open", "258.1 Ω"):
        assert figure in text
    assert "  16  10000    0.5811" in text
    flat = " ".join(text.split())
    assert all(f"{' '.join(finding.headline.split())} {finding.why}" in flat for finding in result.findings)
    assert "fails  White is 1.126 V, above 0.770 V." in text


@pytest.mark.parametrize(
    ("driver", "ohms", "words"),
    [
        (Driver(high_ohms=40, low_ohms=40), 272.1, "272.1 Ω"),
        (Driver(high_ohms=40, low_ohms=55), 272.1, "272.1 Ω at white, 277.2 Ω at black"),
        (
            Driver(high_ohms=40, zeros=Zeros.FLOATING),
            272.1,
            "272.1 Ω at white, at black nothing holds it",
        ),
    ],
    ids=["alike", "unlike", "floating"],
)
def test_the_source_resistance_is_what_a_load_takes_from_white(driver, ohms, words):
    result = solved(driver=driver)
    red = report_object(result)["channels"]["red"]

    assert red["source_ohms"] == pytest.approx(ohms, abs=0.05)
    taken = 75 * (red["unloaded_levels_v"][-1] / red["full_scale_v"] - 1)
    assert red["source_ohms"] == pytest.approx(taken, rel=1e-9)
    assert f"source resistance     {words}\n" in report_text(result)


def test_no_current_is_0_amperes():
    text = report_text(solved(driver=Driver(zeros=Zeros.FLOATING), load=Load(ohms=None)))

    assert "pins at white         0 A  0 A  0 A  0 A  0 A\n" in text
    assert "all together          0 A\n" in text
    assert "e−" not in text


def test_the_text_fits_a_terminal_and_shows_equal_channels_once():
    text = report_text(solved())

    assert max(len(line) for line in text.splitlines()) <= 100
    assert text.count("Red, green and blue: 5 bits, weighted") == 1
    assert "nan" not in text.lower()


def test_a_network_without_levels_has_dashes_and_null_and_no_verdict():
    pins = ("bit1", "bit0")
    only = Network(pins, (), tuple(Capacitor(f"C{k}", pin, "out", 100e-12) for k, pin in enumerate(pins)))
    wiring = Wiring(("R1", "R0"), ("G1", "G0"), ("B1", "B0"), "H", "V")
    project = replace(board(), channels=Channels(only, only, only), wiring=wiring)
    result = Pipeline().run(project)

    red = report_object(result)["channels"]["red"]
    text = report_text(result)

    assert set(red) == CHANNEL_KEYS
    assert {key for key, value in red.items() if value is not None} == {"bits", "topology"}
    assert re.search(r"monotonic +–", text)
    assert not any(words in text for words in ("yes", "no limit", "0.000 V", "Mend the network"))
    assert "Add a resistor from each pin to out" in text
