"""The house: which room may import which, that Qt lives in one of them, and that files stay small."""

import ast
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
HOUSE = ROOT / "workbench"

LEVELS: dict[str, int] = {
    "errors": 0,
    "units": 0,
    "progress": 0,
    "circuit": 1,
    "timing": 1,
    "picture": 1,
    "waveform": 2,
    "drawing": 2,
    "project": 3,
    "checks": 3,
    "pipeline": 4,
    "files": 5,
    "bringup": 5,
    "exports": 5,
    "lessons": 5,
    "gui": 6,
    "cli": 6,
    "__main__": 7,
}
SIBLINGS_ALLOWED = {("units", "errors"), ("progress", "errors"), ("checks", "project"), ("cli", "gui")} | {
    (a, b) for a in ("files", "bringup", "exports", "lessons") for b in ("files", "exports")
}
FOREIGN = {
    0: {"numpy", "quantiphy"},
    1: {"numpy", "scipy"},
    2: {"numpy"},
    3: {"numpy"},
    4: {"numpy"},
    5: {"numpy", "msgspec"},
    6: {"numpy", "PySide6", "pyqtgraph", "shiboken6", "msgspec"},
    7: set(),
}

MODULES = sorted(HOUSE.rglob("*.py"))


def room_of(path: Path) -> str:
    """Return the top package or module a file belongs to."""
    first = path.relative_to(HOUSE).parts[0]
    return first.removesuffix(".py")


def imported(path: Path) -> list[str]:
    """Return the dotted name of everything a module imports, late imports included."""
    names: list[str] = []
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            names += [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: relative import"
            names.append(node.module or "")
            if node.module == "workbench":
                names += [f"workbench.{alias.name}" for alias in node.names]
    return names


@pytest.mark.parametrize("path", MODULES, ids=lambda p: str(p.relative_to(HOUSE)))
def test_imports_point_down(path: Path) -> None:
    room = room_of(path)
    if room == "__init__":
        return
    level = LEVELS[room]

    for name in imported(path):
        parts = name.split(".")
        if parts[0] == "workbench":
            if len(parts) == 1 or parts[1] in (room, "__version__"):
                continue
            other = LEVELS[parts[1]]
            assert other < level or (room, parts[1]) in SIBLINGS_ALLOWED, f"{room} imports {name}"
        elif parts[0] not in sys.stdlib_module_names:
            assert parts[0] in FOREIGN[level], f"{room} imports {name}"


def test_engine_and_command_line_load_without_qt() -> None:
    rooms = [m for m in MODULES if room_of(m) not in ("gui", "__main__", "__init__")]
    names = [".".join(m.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__") for m in rooms]
    script = (
        "import importlib, sys\n"
        "class Wall:\n"
        "    def find_spec(self, name, path=None, target=None):\n"
        "        if name.split('.')[0] in ('PySide6', 'pyqtgraph', 'shiboken6'):\n"
        "            raise ImportError('Qt is not for this room: ' + name)\n"
        "sys.meta_path.insert(0, Wall())\n"
        f"for name in {names!r}:\n"
        "    importlib.import_module(name)\n"
        "assert 'scipy' not in sys.modules, 'scipy is imported late'\n"
    )

    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, cwd=ROOT, check=False
    )

    assert done.returncode == 0, done.stderr


@pytest.mark.parametrize("path", MODULES, ids=lambda p: str(p.relative_to(HOUSE)))
def test_file_is_of_readable_size(path: Path) -> None:
    lines = len(path.read_text(encoding="utf-8").splitlines())

    assert lines <= 420, f"{lines} lines: split it by noun"


def test_every_room_says_what_it_holds() -> None:
    for package in sorted(HOUSE.rglob("__init__.py")):
        docstring = ast.get_docstring(ast.parse(package.read_text(encoding="utf-8")))
        assert docstring, f"{package.relative_to(ROOT)} has no docstring"
