"""The table of codes."""

import csv
import io
from dataclasses import replace

import pytest

from tests.exports.boards import board, solved
from workbench.circuit.network import Capacitor, Network
from workbench.exports.levels_csv import levels_csv
from workbench.pipeline.run import Pipeline
from workbench.project.document import Channels, Wiring


@pytest.fixture(scope="module")
def rows():
    return list(csv.DictReader(io.StringIO(levels_csv(solved()).decode())))


def test_one_row_a_code_and_channel(rows):
    assert [row["channel"] for row in rows] == ["red"] * 32 + ["green"] * 32 + ["blue"] * 32
    assert [int(row["bits"], 2) for row in rows[:32]] == list(range(32))


def test_white_is_743_millivolts_loaded_and_the_supply_open(rows):
    white = rows[31]

    # 3.3 V x G / (G + 1/75) with G = 1/500 + 1/1k + 1/2k + 1/4k + 1/8k
    assert float(white["loaded_v"]) == pytest.approx(0.743099, abs=1e-6)
    assert float(white["open_v"]) == pytest.approx(3.3)
    assert float(white["load_a"]) == pytest.approx(0.743099 / 75, rel=1e-6)
    assert float(white["pins_a"]) == pytest.approx(0.743099 / 75, rel=1e-6)
    assert float(white["lightness"]) == 100.0


def test_first_code_has_no_step_and_the_next_is_one_lsb(rows):
    assert rows[0]["step_v"] == rows[0]["dnl_lsb"] == ""
    assert float(rows[1]["step_v"]) == pytest.approx(0.743099 / 31, rel=1e-6)
    assert float(rows[1]["dnl_lsb"]) == pytest.approx(0.0, abs=1e-9)


def test_a_network_without_levels_leaves_its_cells_empty():
    only = Network(("bit0",), (), (Capacitor("C1", "bit0", "out", 30e-12),))
    wiring = Wiring(("R0",), ("G0",), ("B0",), "H", "V")
    project = replace(board(), channels=Channels(only, only, only), wiring=wiring)

    rows = levels_csv(Pipeline().run(project)).decode().splitlines()

    assert rows[1:3] == ["red,0,0,,,,,,,,", "red,1,1,,,,,,,,"]
