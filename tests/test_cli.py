"""The command line: what it prints, its exit codes, and one clear line for bad input."""

import json
import re
import shlex
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from tests.edids import base_block
from workbench import __version__
from workbench.circuit.ladders import Topology, recognise
from workbench.circuit.network import Zeros
from workbench.circuit.series import Series, is_in
from workbench.cli import main
from workbench.exports import KINDS
from workbench.files.project_file import read_project, write_project
from workbench.picture.scene import Picture
from workbench.project.document import Channel

GOOD = ["new", "--bits", "5", "--values", "500,1k,2k,4k,8k", "-o"]


@pytest.fixture
def board(tmp_path: Path) -> Path:
    """Return the path of a good project: 500 Ω … 8 kΩ, five bits a channel."""
    path = tmp_path / "slip.backporch"
    assert main([*GOOD, str(path)]) == 0
    return path


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


def test_report_prints_figures_and_findings(board, capsys):
    assert main(["report", str(board)]) == 0

    printed = capsys.readouterr().out
    assert "0.743 V loaded  3.300 V open" in printed
    assert "warns  Three values of this ladder are not made in E24" in printed


def test_report_as_json_is_the_contract(board, capsys):
    assert main(["report", str(board), "--json"]) == 0

    report = json.loads(capsys.readouterr().out)
    assert report["format"] == "backporch-report"
    assert report["channels"]["green"]["bits"] == 5


def test_strict_tells_a_failing_project_from_a_good_one(board, tmp_path, capsys):
    bad = tmp_path / "bad.backporch"
    write_project(replace(read_project(board), picture=Picture(blanking=(31, 0, 0))), bad)

    assert main(["report", str(board), "--strict"]) == 0
    assert main(["report", str(bad)]) == 0
    assert main(["report", str(bad), "--strict"]) == 1
    assert main(["report", str(bad), "--strict", "--json"]) == 1


def test_new_takes_every_option(tmp_path):
    path = tmp_path / "board.backporch"
    options = (
        "--mode 800x600@60 --ladder r2r --bits 4,4,3 --values 270,540 --supply 5 --on-resistance 40/55 "
        "--load 82 --shunt 150 --idle floating --node-capacitance 30p --cable 2m --rise 3n "
        "--load-capacitance 10p --name Slip"
    )

    assert main(["new", *options.split(), "-o", str(path)]) == 0

    project = read_project(path)
    driver, load, red = project.driver, project.load, project.channels.red
    assert (project.name, project.mode.name, project.linked) == ("Slip", "800x600@60", False)
    assert (driver.supply_volts, driver.high_ohms, driver.low_ohms, driver.rise_s) == (5.0, 40.0, 55.0, 3e-9)
    assert (driver.zeros, load.ohms, load.farads) == (Zeros.FLOATING, 82.0, 10e-12)
    assert (project.cable.metres, project.cable.ohms, project.cable.velocity) == (2.0, 75.0, 0.66)
    assert [project.channels[c].bits for c in Channel] == [4, 4, 3]
    assert recognise(red) is Topology.R2R
    assert {r.ohms for r in red.resistors} == {540.0, 270.0, 150.0}
    assert red.capacitors[0].farads == 30e-12


def test_a_shorter_channel_takes_the_first_values(tmp_path):
    path = tmp_path / "sign.backporch"

    assert main(["new", "--bits", "3,3,2", "--values", "500,1k,2k", "-o", str(path)]) == 0

    channels = read_project(path).channels
    assert [r.ohms for r in channels.red.resistors] == [500.0, 1000.0, 2000.0]
    assert [r.ohms for r in channels.blue.resistors] == [500.0, 1000.0]


def test_three_lists_give_each_channel_its_own_values(tmp_path):
    path = tmp_path / "sign.backporch"

    assert main(["new", "--bits", "2,2,1", "--values", "430,820/470,910/280", "-o", str(path)]) == 0

    channels = read_project(path).channels
    assert [[r.ohms for r in channels[c].resistors] for c in Channel] == [[430, 820], [470, 910], [280]]


@pytest.mark.parametrize("ladder", ["weighted", "r2r"])
def test_a_series_is_fitted_to_a_white_inside_the_window(tmp_path, capsys, ladder):
    path = tmp_path / "fit.backporch"
    assert main(["new", "--ladder", ladder, "--series", "E24", "--bits", "4", "-o", str(path)]) == 0

    assert main(["report", str(path), "--json", "--strict"]) == 0

    project = read_project(path)
    assert project.series is Series.E24
    assert project.linked
    assert all(is_in(r.ohms, Series.E24) for r in project.channels.red.resistors)


def test_every_pin_of_a_new_project_has_a_name_of_its_own(board):
    wiring = read_project(board).wiring
    names = [*wiring.red, *wiring.green, *wiring.blue, wiring.h, wiring.v]

    assert names[0] == "P0"
    assert len(names) == len(set(names)) == 17


def test_mode_prints_text_and_the_timing_object(capsys):
    assert main(["mode", "640x480@60"]) == 0
    assert "31.778 µs  31.4688 kHz" in capsys.readouterr().out

    assert main(["mode", "1280x720@60", "--by", "cvt", "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["source"].startswith("VESA CVT")


def test_an_interlaced_mode_is_listed_and_said_not_to_be_shown(capsys):
    assert main(["mode", "1024x768@43i"]) == 0

    assert "interlaced" in capsys.readouterr().out


def test_export_lists_its_kinds(capsys):
    assert main(["export", "--list"]) == 0

    assert [line.split()[0] for line in capsys.readouterr().out.splitlines()] == list(KINDS)


def test_export_writes_a_file_or_to_the_standard_output(board, tmp_path, capsysbinary):
    path = tmp_path / "levels.csv"

    assert main(["export", str(board), "--as", "levels-csv", "-o", str(path)]) == 0
    assert main(["export", str(board), "--as", "levels-csv", "-o", "-"]) == 0

    assert capsysbinary.readouterr().out == path.read_bytes()


def test_version_and_help_end_well(capsys):
    for option in ("--version", "--help"):
        assert main([option]) == 0

    printed = capsys.readouterr().out
    assert printed.startswith(f"backporch {__version__}")
    assert "examples:" in printed


@pytest.mark.parametrize(
    ("words", "told"),
    [
        pytest.param(["report"], "FILE", id="no file"),
        pytest.param(
            ["report", "nowhere.backporch"], "nowhere.backporch: there is no such file", id="missing"
        ),
        pytest.param(["mode", "big"], "640x480@60", id="no mode"),
        pytest.param(["mode", "640x480@60", "--by", "magic"], "--by", id="no such way"),
        pytest.param(["export"], "FILE and --as KIND and -o PATH", id="export what"),
        pytest.param(["export", "a", "--as", "gold", "-o", "b"], "levels-csv", id="no such kind"),
        pytest.param(["new"], "-o", id="new where"),
        pytest.param(["new", "-o", "-"], "“-” is no name of a file", id="new to nowhere"),
        pytest.param(["new", "-o", ""], "“” is no name of a file", id="new without a name"),
        pytest.param(["new", "-o", "/nowhere/at/all.backporch"], "folder does not exist", id="no folder"),
        pytest.param(["new", "-o", "x", "--bits", "5,5"], "5,5,5", id="two counts"),
        pytest.param(["new", "-o", "x", "--bits", "1000"], "1 to 8 bits", id="a thousand bits"),
        pytest.param(["new", "-o", "x", "--bits", "-1"], "--bits", id="negative bits"),
        pytest.param(["new", "-o", "x", "--values", "500,-5"], "above 0", id="negative ohms"),
        pytest.param(["new", "-o", "x", "--values", "-500,1k"], "“-500” is not possible", id="-500 first"),
        pytest.param(["new", "-o", "x", "--load", "-5k"], "“-5k” is not possible", id="negative load"),
        pytest.param(["new", "-o", "x", "--values", "500,nan"], "not a number", id="nan"),
        pytest.param(["new", "-o", "x", "--values", "500,1k"], "2 values for 5 bits", id="too few values"),
        pytest.param(["new", "-o", "x", "--values", "1k/2k"], "slash", id="two lists"),
        pytest.param(["new", "-o", "x", "--values", "500,,1k"], "missing", id="empty value"),
        pytest.param(["new", "-o", "x", "--values", "4k7k", "--bits", "1"], "stands twice", id="k twice"),
        pytest.param(["new", "-o", "x", "--supply", "inf"], "--supply", id="infinite supply"),
        pytest.param(["new", "-o", "x", "--supply", "0.6"], "higher supply", id="supply under white"),
        pytest.param(["new", "-o", "x", "--supply", "1G"], "between", id="a gigavolt"),
        pytest.param(["new", "-o", "x", "--mode", "1024x768@43i"], "progressive", id="interlaced"),
        pytest.param(["new", "-o", "x", "--on-resistance", "1/2/3"], "40/55", id="three resistances"),
        pytest.param(
            ["new", "-o", "x", "--ladder", "r2r", "--values", "1,2,3"], "R, or R and 2R", id="three of two"
        ),
        pytest.param(["--frobnicate"], "--frobnicate", id="no such option"),
        pytest.param(
            ["repot", "a.backporch"],
            "repot is neither a command nor a file: did you mean report?",
            id="a slip",
        ),
        pytest.param(
            ["frobnicate"],
            "frobnicate is neither a command nor a file: see backporch --help",
            id="no command",
        ),
    ],
)
def test_bad_words_get_one_clear_line(refused, words, told, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)

    assert told in refused(*words)
    assert not list(tmp_path.iterdir())


@pytest.mark.parametrize(
    ("damage", "told"),
    [
        pytest.param(lambda text: b"", "", id="empty"),
        pytest.param(lambda text: text[: len(text) // 2], "line", id="cut"),
        pytest.param(lambda text: b"\xff\xfe" + text, "UTF-8", id="not UTF-8"),
        pytest.param(lambda text: b'{"format": "other"}', "no Backporch project", id="other format"),
        pytest.param(lambda text: text.replace(b'"version": 1', b'"version": 99'), "99", id="future"),
        pytest.param(lambda text: text.replace(b'"ohms": 500', b'"ohms": NaN', 1), "NaN", id="NaN"),
        pytest.param(lambda text: text.replace(b'"ohms": 500', b'"ohms": 1e999', 1), "", id="infinity"),
        pytest.param(
            lambda text: text.replace(b'"ohms": 500', b'"ohms": -500', 1), "ohms", id="negative ohms"
        ),
        pytest.param(
            lambda text: text.replace(
                b'"pins": ["bit4"',
                b'"pins": [' + b", ".join(b'"p%d"' % i for i in range(1000)) + b', "bit4"',
                1,
            ),
            "",
            id="a thousand bits",
        ),
        pytest.param(lambda text: b"[" * 100_000, "", id="deep nesting"),
        pytest.param(
            lambda text: text.replace(b'"ohms": 500', b'"ohms": true', 1), "ohms", id="not a number"
        ),
    ],
)
@pytest.mark.parametrize(
    "words",
    [["report"], ["export", "--as", "levels-csv", "-o", "out.csv"]],
    ids=["report", "export"],
)
def test_a_damaged_file_is_named_and_left_as_it_was(refused, board, damage, told, words, monkeypatch):
    monkeypatch.chdir(board.parent)
    damaged = damage(board.read_bytes())
    assert damaged != board.read_bytes()
    board.write_bytes(damaged)

    line = refused(words[0], str(board), *words[1:])

    assert str(board) in line
    assert told in line
    assert board.read_bytes() == damaged
    assert not (board.parent / "out.csv").exists()


def test_no_number_is_told_with_its_line(refused, board):
    text = board.read_text(encoding="utf-8").replace('"name": "', '"name": "NaN of ', 1)
    before, five_hundred, after = text.partition('"ohms": 500')
    board.write_text(f'{before}"ohms": NaN{after}', encoding="utf-8")
    assert five_hundred

    line = refused("report", str(board))

    place = before.count("\n") + 1
    assert f"NaN stands where a number is needed, at line {place}; write the value" in line


def test_a_project_is_never_written_over_by_its_own_export(refused, board):
    before = board.read_bytes()

    assert "project itself" in refused("export", str(board), "--as", "levels-csv", "-o", str(board))
    assert board.read_bytes() == before


def test_an_empty_file_holds_nothing_and_is_filled(tmp_path):
    path = tmp_path / "slip.backporch"
    path.touch()

    assert main([*GOOD, str(path)]) == 0
    assert read_project(path).name == "slip"


def test_new_does_not_write_over_what_is_no_project(refused, tmp_path):
    notes = tmp_path / "notes.txt"
    notes.write_text("tide tables")

    assert str(notes) in refused(*GOOD, str(notes))
    assert notes.read_text() == "tide tables"


def in_a_process(*words: str, script: str = "from workbench.cli import main; import sys; sys.exit(main())"):
    return subprocess.run(
        [sys.executable, "-c", script, *words], capture_output=True, text=True, timeout=60, check=False
    )


def test_headless_commands_load_no_window_and_no_scipy(board):
    script = (
        "import sys\n"
        "from workbench.cli import main\n"
        "code = main()\n"
        "loaded = {'PySide6', 'pyqtgraph', 'scipy'} & set(sys.modules)\n"
        "sys.exit(f'loaded {loaded}' if loaded else code)\n"
    )

    done = in_a_process("report", str(board), script=script)

    assert (done.returncode, done.stderr) == (0, "")


def test_ctrl_c_ends_with_one_word(board, monkeypatch, capsys):
    def stop(_path):
        raise KeyboardInterrupt

    monkeypatch.setattr("workbench.cli.report.read_project", stop)

    assert main(["report", str(board)]) == 130
    assert capsys.readouterr().err == "backporch: stopped\n"


def test_a_terminal_without_ohm_signs_still_gets_its_report(board):
    script = (
        "import sys; sys.stdout.reconfigure(encoding='ascii')\n"
        "from workbench.cli import main; sys.exit(main())"
    )

    text = in_a_process("report", str(board), script=script)
    as_json = in_a_process("report", str(board), "--json", script=script)

    assert (text.returncode, text.stderr) == (0, "")
    assert any(
        "Ω" in finding["unit"] or "V" in finding["unit"] for finding in json.loads(as_json.stdout)["findings"]
    )


def test_the_examples_of_the_reference_page_run_in_their_order(tmp_path, monkeypatch, capsysbinary):
    page = (Path(__file__).parents[1] / "docs" / "reference" / "commands.md").read_text(encoding="utf-8")
    lines = [line for block in re.findall(r"```sh\n(.*?)```", page, re.DOTALL) for line in block.splitlines()]
    monkeypatch.chdir(tmp_path)
    (tmp_path / "desk.edid").write_bytes(base_block())
    (tmp_path / "desk.hex").write_text(base_block().hex(" "))
    (tmp_path / "drawer.csv").write_text("value,count\n1k,60\n470,60\n820,\n")

    codes = {line: main(shlex.split(line.partition(" | ")[0])[1:]) for line in lines}

    assert len(codes) > 12
    assert set(codes.values()) == {0}, codes
