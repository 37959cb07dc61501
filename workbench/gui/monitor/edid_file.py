"""A monitor's EDID: opened from a file, kept in the settings for every project."""

from pathlib import Path

from workbench.errors import TimingError, WorkbenchError
from workbench.files.reading import read_bytes
from workbench.gui.bench import Bench
from workbench.gui.settings import EDID, OPEN_FOLDER, Settings
from workbench.timing.edid.read import read_edid
from workbench.timing.edid.text import MOST_CONTENT, edid_bytes, hex_bytes
from workbench.timing.edid.values import Edid

__all__ = ["EDID_SUFFIXES", "ask_for_edid", "kept_edid", "open_edid", "start_folder"]

EDID_SUFFIXES = (".edid", ".bin", ".hex", ".txt")
"""Names under which people keep EDIDs; any other name is taken for a project."""
_KINDS = f"EDID, binary or hex text ({' '.join(f'*{suffix}' for suffix in EDID_SUFFIXES)});;All files (*)"


def ask_for_edid(bench: Bench) -> bool:
    """Let the person choose an EDID file and show it; return whether it is shown."""
    if bench.dialogs is None:
        return False
    path = bench.dialogs.open_path("Open a monitor's EDID", start_folder(bench), _KINDS)
    return path is not None and open_edid(bench, path)


def open_edid(bench: Bench, path: Path) -> bool:
    """Read an EDID and keep it; say why not where it is none, and change nothing."""
    try:
        content = read_bytes(path, MOST_CONTENT)
        read_edid(content)
    except TimingError as reason:
        bench.notice(f"{path.name}: {reason}", warning=True)
        return False
    except WorkbenchError as reason:
        bench.notice(str(reason), warning=True)
        return False
    bench.settings.set(EDID, edid_bytes(content).hex())
    bench.notice(f"{path.name} is read: the Monitor page shows what it says.")
    return True


def kept_edid(settings: Settings) -> Edid | None:
    """Return the monitor's EDID; none while none was opened."""
    text = settings.get(EDID)
    if not text:
        return None
    try:
        return read_edid(hex_bytes(text))
    except TimingError:
        return None


def start_folder(bench: Bench) -> Path:
    """Return the folder in which files were opened last."""
    folder = Path(bench.settings.get(OPEN_FOLDER))
    return folder if folder.is_absolute() and folder.is_dir() else Path.home()
