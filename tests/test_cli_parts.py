"""The commands that choose and judge parts: ``fit`` and ``tolerance``."""

import json
from dataclasses import replace
from itertools import product
from pathlib import Path

import numpy as np
import pytest

from workbench.circuit.series import Series, is_in, series_values
from workbench.cli import main
from workbench.files.project_file import read_project, write_project
from workbench.project.document import Channel, Channels

WORST_KEYS = {"mean", "std", "p01", "p50", "p99", "worst_low", "worst_high"}


@pytest.fixture
def board(tmp_path: Path) -> Path:
    """Return the path of a project with three bits a channel."""
    path = tmp_path / "slip.backporch"
    assert main(["new", "--bits", "3", "--values", "500,1k,2k", "-o", str(path)]) == 0
    return path


def printed(capsys, *words: str):
    assert main([*words, "--json"]) == 0
    return json.loads(capsys.readouterr().out)


def test_fit_gives_the_contract_best_first(board, capsys):
    found = printed(capsys, "fit", str(board), "--series", "E12")

    assert found["proved_best"] is True
    best = found["candidates"][0]
    assert set(best) >= {
        *("ohms", "worst_error_v", "full_scale_v", "max_inl_lsb", "max_dnl_lsb", "source_ohms"),
        *("worst_total_current_a", "parts"),
    }
    assert [len(best["ohms"][channel.value]) for channel in Channel] == [3, 3, 3]
    errors = [candidate["worst_error_v"] for candidate in found["candidates"]]
    assert errors[0] == min(errors)


@pytest.mark.parametrize(
    ("aim", "name", "figure"),
    [
        ("level", "level error", "worst_error_v"),
        ("match", "channels alike", "mismatch"),
        ("steps", "even steps", "max_dnl_lsb"),
        ("current", "little current", "worst_total_current_a"),
        ("parts", "few parts", "parts"),
    ],
)
def test_the_first_is_named_by_the_aim_and_nothing_listed_beats_it(
    board, tmp_path, capsys, aim, name, figure
):
    drawer = tmp_path / "drawer.csv"
    drawer.write_text("value,count\n470,1\n510,1\n560,2\n1k,2\n1.1k,2\n2k,1\n2.2k,2\n2.4k,2\n")

    words = ("fit", str(board), "--drawer", str(drawer), "--aim", aim)
    candidates = printed(capsys, *words)["candidates"]

    assert name in candidates[0]["best_at"]
    assert candidates[0][figure] == min(each[figure] for each in candidates)
    named = [each for candidate in candidates for each in candidate["best_at"]]
    assert len(named) == len(set(named)) == 6
    assert main([*words]) == 0
    assert f"\n{', '.join(candidates[0]['best_at'])}: 9 resistors\n" in capsys.readouterr().out


def test_the_best_of_a_series_is_the_best_there_is(board, capsys):
    best = printed(capsys, "fit", str(board), "--series", "E12")["candidates"][0]

    values = [value * decade for decade in (100.0, 1000.0) for value in series_values(Series.E12)]
    codes = np.arange(8)
    even = 0.7 * codes / 7
    least = min(float(np.abs(_levels(ohms, codes) - even).max()) for ohms in product(values, repeat=3))
    assert best["worst_error_v"] == pytest.approx(least, rel=1e-9)


def _levels(ohms: tuple[float, ...], codes: np.ndarray) -> np.ndarray:
    """Return the levels of a weighted ladder by hand: 3.3 V, pins without resistance, 75 Ω."""
    siemens = 1 / np.array(ohms)
    bits = codes[:, None] >> np.array([2, 1, 0]) & 1
    return 3.3 * (bits * siemens).sum(axis=1) / (siemens.sum() + 1 / 75)


def test_fit_writes_the_project_with_the_first_candidate(board, tmp_path, capsys):
    fitted = tmp_path / "fitted.backporch"

    assert main(["fit", str(board), "--series", "E24", "-o", str(fitted)]) == 0

    project = read_project(fitted)
    assert "Proved" in capsys.readouterr().out
    assert project.linked
    assert all(is_in(r.ohms, Series.E24) for r in project.channels.red.resistors)
    assert main(["report", str(fitted), "--strict"]) == 0


def test_a_drawer_is_used_up_and_its_bad_rows_are_told(board, tmp_path, capsys):
    drawer = tmp_path / "drawer.csv"
    drawer.write_text("value,count\n510,3\n1k,3\n2k,3\nbig,9\n")

    assert main(["fit", str(board), "--drawer", str(drawer)]) == 0

    told = capsys.readouterr()
    assert told.err.startswith(f"backporch: {drawer}: row 5 is left out")
    assert "510 Ω  1 kΩ  2 kΩ" in told.out


def test_tolerance_gives_the_contract(board, capsys):
    found = printed(capsys, "tolerance", str(board), "--resistors", "1%", "--boards", "2000", "--seed", "7")

    red = found["channels"]["red"]
    assert (found["boards"], found["seed"]) == (2000, 7)
    assert set(red["full_scale_v"]) == set(red["max_dnl_lsb"]) == WORST_KEYS
    # Worst case of 1 % resistors: all conductances 1 % up, 3.3 G / (G + 1/75) with G = 3.5 mS / 0.99
    siemens = 0.0035 / 0.99
    assert red["full_scale_v"]["worst_high"] == pytest.approx(3.3 * siemens / (siemens + 1 / 75), rel=1e-6)
    assert red["monotonic_yield"] == 1.0
    assert [each["part"] for each in red["sensitivity"]] == ["R1", "R2", "R3"]


def test_the_same_seed_draws_the_same_boards(board, capsys):
    words = ("tolerance", str(board), "--boards", "500", "--seed", "3")

    assert printed(capsys, *words) == printed(capsys, *words)
    assert printed(capsys, *words) != printed(capsys, *words[:-1], "4")


def test_tolerance_prints_equal_channels_once(board, capsys):
    assert main(["tolerance", str(board), "--resistors", "5%", "--boards", "1000", "--normal"]) == 0

    text = capsys.readouterr().out
    assert text.startswith("1 000 boards, seed 1\n")
    assert text.count("white, V") == 1


def test_a_single_board_is_one(board, capsys):
    assert main(["tolerance", str(board), "--boards", "1"]) == 0
    assert capsys.readouterr().out.startswith("1 board, seed 1\n")


@pytest.fixture
def without_green(board) -> Path:
    """Return the path of a project whose green has no resistors."""
    project = read_project(board)
    green = replace(project.channels.green, resistors=())
    write_project(replace(project, channels=replace(project.channels, green=green), linked=False), board)
    return board


def test_a_dead_channel_is_named_and_the_others_have_their_boards(without_green, capsys):
    assert main(["tolerance", str(without_green), "--boards", "100"]) == 0

    text = capsys.readouterr().out
    assert "\nRed, blue  " in text
    assert "\nGreen: This channel shows nothing that could vary. The output out floats" in text


def test_a_dead_channel_is_null_in_json_and_named_beside_it(without_green, capsys):
    assert main(["tolerance", str(without_green), "--boards", "100", "--json"]) == 0

    told = capsys.readouterr()
    channels = json.loads(told.out)["channels"]
    assert [name for name, channel in channels.items() if channel is None] == ["green"]
    assert told.err.startswith("backporch: green: This channel shows nothing")
    assert told.err.count("\n") == 1


def test_a_fit_names_the_channel_that_is_no_ladder(without_green, capsys):
    assert main(["fit", str(without_green), "--series", "E24"]) == 2
    assert capsys.readouterr().err.startswith("backporch: green: Values are chosen for weighted, segm")


def test_dead_channels_alone_are_refused(board, capsys):
    project = read_project(board)
    dead = replace(project.channels.green, resistors=())
    write_project(replace(project, channels=Channels(dead, dead, dead)), board)

    assert main(["tolerance", str(board), "--boards", "100"]) == 2
    assert capsys.readouterr().err.startswith("backporch: This channel shows nothing that could vary.")


@pytest.mark.parametrize(
    ("words", "told"),
    [
        pytest.param(["fit"], "--series --drawer", id="from what"),
        pytest.param(["fit", "--series", "E24", "-o", "-"], "no name of a file", id="to nowhere"),
        pytest.param(["fit", "--series", "E13"], "E12", id="no such series"),
        pytest.param(["fit", "--series", "E24", "--parts-per-leg", "4"], "choose from", id="four parts"),
        pytest.param(
            ["fit", "--drawer", "nowhere.csv"], "nowhere.csv: there is no such file", id="no drawer"
        ),
        pytest.param(["tolerance", "--resistors", "100%"], "100 %", id="all of it"),
        pytest.param(["tolerance", "--resistors=-1%"], "not possible", id="negative"),
        pytest.param(["tolerance", "--resistors", "-1%"], "“-1%” is not possible", id="negative, a word"),
        pytest.param(["tolerance", "--load", "-.5"], "“-.5” is not possible", id="negative, from a point"),
        pytest.param(["tolerance", "--boards", "-3"], "“-3” is no whole number", id="negative boards"),
        pytest.param(["tolerance", "--boards", "0"], "from 1", id="no boards"),
        pytest.param(["tolerance", "--boards", "many"], "whole number", id="no number"),
        pytest.param(["tolerance", "--seed", "-1"], "whole number", id="negative seed"),
    ],
)
def test_bad_words_get_one_clear_line(board, capsys, words, told):
    try:
        code = main([words[0], str(board), *words[1:]])
    except SystemExit as ended:
        code = ended.code

    line = capsys.readouterr().err
    assert code == 2
    assert line.count("\n") == 1
    assert told in line


def test_a_segmented_ladder_is_fitted_and_written(tmp_path, capsys):
    made, fitted = tmp_path / "made.backporch", tmp_path / "fitted.backporch"
    assert main(["new", "--ladder", "segmented", "--bits", "6", "--matched", "-o", str(made)]) == 0
    capsys.readouterr()

    assert main(["fit", str(made), "--series", "E24", "-o", str(fitted)]) == 0
    told = capsys.readouterr().out
    assert told.startswith("Proved: ")

    channel = read_project(fitted).channels.red
    best = printed(capsys, "fit", str(made), "--series", "E24")["candidates"][0]
    assert [part.ohms for part in channel.resistors if part.id != "RS"] == best["ohms"]["red"]
    assert len(best["ohms"]["red"]) == channel.n_pins == 7
    assert [part.ohms for part in channel.resistors if part.id == "RS"] == [130.0]
