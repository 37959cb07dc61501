"""Reading a file that may not be what it should be."""

import stat
from pathlib import Path

from workbench.errors import FileError

__all__ = ["read_bytes"]


def read_bytes(path: Path, most_bytes: int) -> bytes:
    """Return the content of an ordinary file of limited size.

    Raises
    ------
    FileError
        If it is missing, a folder, not an ordinary file, too large or not to be read.
    """
    try:
        status = path.stat()
        if stat.S_ISDIR(status.st_mode):
            raise FileError(f"{path}: this is a folder; choose a file in it")
        if not stat.S_ISREG(status.st_mode):
            raise FileError(f"{path}: this is no ordinary file; choose another one")
        with path.open("rb") as stream:
            data = stream.read(most_bytes + 1)
    except FileNotFoundError as error:
        raise FileError(f"{path}: there is no such file; check the name and the folder") from error
    except PermissionError as error:
        raise FileError(f"{path}: you may not read this file; ask for the right to or copy it") from error
    except (OSError, ValueError) as error:
        raise FileError(f"{path}: the file cannot be read ({error}); choose another one") from error
    if len(data) > most_bytes:
        raise FileError(f"{path}: the file has more than {most_bytes // 1000} kB; choose another one")
    return data
