"""Writing a file whole or not at all."""

import errno
import os
import secrets
import stat
from pathlib import Path

from workbench.errors import FileError

__all__ = ["write_atomic"]

_REASONS = {
    errno.ENOSPC: "the disk is full: free some space or save elsewhere",
    errno.EDQUOT: "the disk quota is used up: free some space or save elsewhere",
    errno.EROFS: "the disk can only be read: save elsewhere",
    errno.EACCES: "you may not write there: save elsewhere or ask for the right to",
    errno.EPERM: "you may not write there: save elsewhere or ask for the right to",
    errno.ENOENT: "its folder does not exist: make the folder or save elsewhere",
    errno.ENOTDIR: "its folder is a file: save elsewhere",
    errno.ENAMETOOLONG: "the name is too long: choose a shorter one",
}


def write_atomic(path: Path, data: bytes) -> None:
    """Write a file so that at every moment the old or the new content is there, whole.

    The data goes to a new file in the same folder, to the disk, and then takes the old one's
    place. The permissions of the old file are kept; a symbolic link stays one, and the file it
    points to is written.

    Raises
    ------
    FileError
        If it cannot be written; the old file is untouched.
    """
    try:
        target = Path(os.path.realpath(path))
        permissions = _permissions(target)
        part = target.with_name(f".{target.name[:100]}.{secrets.token_hex(4)}.part")
        try:
            _write_new(part, data, permissions)
            part.replace(target)
        except BaseException:
            part.unlink(missing_ok=True)
            raise
        _flush_folder(target.parent)
    except (OSError, ValueError) as error:
        number = getattr(error, "errno", None)
        reason = _REASONS.get(number) if number is not None else None
        raise FileError(f"{path}: not saved, {reason or error}") from error


def _permissions(target: Path) -> int | None:
    """Return the permission bits of the file to be replaced; none if there is no file."""
    try:
        mode = target.stat().st_mode
    except FileNotFoundError:
        return None
    if stat.S_ISDIR(mode):
        raise FileError(f"{target}: not saved, this is a folder: give the name of a file in it")
    if not stat.S_ISREG(mode):
        raise FileError(f"{target}: not saved, this is no ordinary file: choose another name")
    if not os.access(target, os.W_OK):
        raise PermissionError(errno.EACCES, "read-only")
    return stat.S_IMODE(mode)


def _write_new(part: Path, data: bytes, permissions: int | None) -> None:
    with open(os.open(part, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o666), "wb") as stream:
        stream.write(data)
        stream.flush()
        os.fsync(stream.fileno())
    if permissions is not None:
        part.chmod(permissions)


def _flush_folder(folder: Path) -> None:
    """Let the new name reach the disk too, where the system can."""
    if os.name != "posix":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
