"""What becomes of the command line's words where nobody listens, or where the terminal has few letters."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from tests.edids import base_block
from workbench.cli import main
from workbench.cli.output import print_text
from workbench.cli.streams import open_streams

CLOCK = "clock 640x480@60 --reference 10M --multiply 20..100 --divide 1..8 --max-system 150M"
COMMANDS = [
    "report {board}",
    "export {board} --as levels-csv -o -",
    "mode 640x480@60",
    "monitor {edid}",
    CLOCK,
    "fit {board} --series E12 --json",
    "tolerance {board} --boards 100",
    "--help",
]
ENDS = [
    *((words, end) for words in COMMANDS for end in (">&-", "| true")),
    ("report {board}", ">&- 2>&-"),
    ("report {board}", "2>&1 | true"),
]


@pytest.fixture(scope="module")
def files(tmp_path_factory) -> dict[str, Path]:
    """Return the paths of a project whose white is too low, and of an EDID."""
    folder = tmp_path_factory.mktemp("streams")
    board, edid = folder / "slip.backporch", folder / "desk.edid"
    assert main(["new", "--bits", "2", "--values", "1k,2k", "-o", str(board)]) == 0
    edid.write_bytes(base_block())
    return {"board": board, "edid": edid}


def shell(line: str, **environment: str) -> subprocess.CompletedProcess[bytes]:
    """Run a line of bash with ``backporch`` in it, warnings being errors, output buffered as usual."""
    kept = {name: value for name, value in os.environ.items() if name != "PYTHONUNBUFFERED"}
    here = str(Path(__file__).parents[1])
    command = f'backporch() {{ "{sys.executable}" -W error -m workbench "$@"; }}; {line}'
    return subprocess.run(
        ["bash", "-o", "pipefail", "-c", command],
        env=kept | {"PYTHONPATH": here} | environment,
        capture_output=True,
        timeout=60,
        check=False,
    )


@pytest.mark.parametrize(("words", "end"), ENDS)
def test_a_command_that_nobody_listens_to_ends_quietly(files, words, end):
    done = shell(f"backporch {words.format(**files)} {end}")

    assert (done.returncode, done.stdout, done.stderr) == (0, b"", b"")


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="this system has no /dev/full")
@pytest.mark.parametrize("unbuffered", ["", "1"], ids=["buffered", "unbuffered"])
@pytest.mark.parametrize("words", COMMANDS[:2])
def test_a_full_disk_is_said_in_one_line(files, words, unbuffered):
    done = shell(f"backporch {words.format(**files)} > /dev/full", PYTHONUNBUFFERED=unbuffered)

    assert done.returncode == 2
    assert done.stderr == b"backporch: the output: No space left on device\n"


@pytest.mark.parametrize("end", [">&-", ">&- 2>&-", "2>&1 | true"])
@pytest.mark.parametrize(
    ("words", "code"),
    [
        pytest.param("report {board} --strict", 1, id="a finding fails"),
        pytest.param("report nowhere.backporch", 2, id="no such file"),
        pytest.param("report", 2, id="a missing word"),
    ],
)
def test_the_exit_code_is_kept(files, words, code, end):
    assert shell(f"backporch {words.format(**files)} {end}").returncode == code


def test_new_needs_no_one_to_listen(tmp_path):
    path = tmp_path / "quay.backporch"

    done = shell(f'backporch new --bits 2 -o "{path}" >&- 2>&-')

    assert done.returncode == 0
    assert main(["report", str(path)]) == 0


ASCII = {"LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONCOERCECLOCALE": "0"}


@pytest.mark.skipif(sys.platform != "linux", reason="names of files are bytes on Linux")
@pytest.mark.parametrize("environment", [{"LC_ALL": "C"}, ASCII], ids=["C", "ASCII alone"])
def test_a_name_with_other_letters_is_shown_as_it_is(tmp_path, environment):
    missing = shell(f'cd "{tmp_path}"; backporch report quayé.backporch', **environment)
    made = shell(f'cd "{tmp_path}"; backporch new --bits 2 -o quayé.backporch', **environment)
    read = shell(f'cd "{tmp_path}"; backporch report quayé.backporch', **environment)

    assert missing.returncode == 2
    assert missing.stderr.decode().startswith("backporch: quayé.backporch: there is no such file")
    assert (made.returncode, made.stderr) == (0, b"")
    assert '"name": "quayé"' in (tmp_path / "quayé.backporch").read_text(encoding="utf-8")
    assert (read.returncode, read.stderr) == (0, b"")


@pytest.mark.skipif(sys.platform != "linux", reason="names of files are bytes on Linux")
def test_a_name_that_is_no_text_is_shown_with_an_escape(tmp_path):
    name = "$'quay\\xff.backporch'"

    missing = shell(f'cd "{tmp_path}"; backporch report {name}', PYTHONUTF8="1")
    made = shell(f'cd "{tmp_path}"; backporch new --bits 2 -o {name}', PYTHONUTF8="1")
    read = shell(f'cd "{tmp_path}"; backporch report {name} | head -n 1', PYTHONUTF8="1")

    assert missing.stderr.startswith(b"backporch: quay\\xff.backporch: there is no such file")
    assert (made.returncode, made.stderr) == (0, b"")
    assert read.stdout == b"quay\\xff\n"


def test_an_ascii_stream_gets_escapes_for_what_it_has_not(capsys):
    sys.stdout.reconfigure(encoding="ascii")
    open_streams()

    print_text("75 Ω, \ud800 and quay\udcc3\udca9")

    assert (
        capsys.readouterr().out.encode("utf-8", "surrogateescape")
        == b"75 \\u03a9, \\ud800 and quay\xc3\xa9\n"
    )
