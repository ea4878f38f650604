"""Writing files so that a power cut loses nothing that was said to be kept.

A file's bytes are safe after fsync of the file; that it is there under its name, only after fsync
of the folder (POSIX.1-2017, fsync; Linux manual page fsync(2)).
"""

import os
import shutil
from pathlib import Path

PRIVATE_FOLDER = 0o700
PRIVATE_FILE = 0o600


def make_folder(path: Path) -> None:
    """The folder and those above it, readable for their owner only, each safe under its name."""
    if path.is_dir():
        return
    make_folder(path.parent)
    try:
        os.mkdir(path, PRIVATE_FOLDER)
    except FileExistsError:
        return
    sync_folder(path.parent)


def append(path: Path, data: bytes) -> None:
    """More bytes at the end of a file, which is made if it is not there. Not yet safe: see sync."""
    handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_APPEND, PRIVATE_FILE)
    try:
        _write(handle, data)
    finally:
        os.close(handle)


def sync(path: Path) -> None:
    """Waits until the file's bytes are on the disk."""
    handle = os.open(path, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def sync_folder(path: Path) -> None:
    """Waits until the names in this folder are on the disk."""
    sync(path)


def move(source: Path, target: Path) -> None:
    """Gives a file or folder, whose contents are safe, another name, and makes that safe too."""
    make_folder(target.parent)
    os.replace(source, target)
    sync_folder(target.parent)


def write_whole(path: Path, data: bytes) -> None:
    """A file that is there as a whole or not at all."""
    make_folder(path.parent)
    started = path.with_name(f".{path.name}.part")
    handle = os.open(started, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, PRIVATE_FILE)
    try:
        _write(handle, data)
        os.fsync(handle)
    finally:
        os.close(handle)
    move(started, path)


def copy_whole(source: Path, target: Path) -> None:
    """The same for a copy of a file, however large; the disk may be another one."""
    make_folder(target.parent)
    started = target.with_name(f".{target.name}.part")
    remove(started)
    append(started, b"")  # readable for its owner only, from the start
    shutil.copyfile(source, started)
    sync(started)
    move(started, target)


def linked(source: Path, target: Path) -> bool:
    """Gives a file a second name; False where the disk cannot do that."""
    make_folder(target.parent)
    try:
        os.link(source, target)
    except OSError:
        return False
    sync_folder(target.parent)
    return True


def remove(path: Path) -> None:
    """Takes a file away, if it is there."""
    try:
        os.unlink(path)
    except FileNotFoundError:
        return


def _write(handle: int, data: bytes) -> None:
    left = memoryview(data)
    while len(left) > 0:
        left = left[os.write(handle, left) :]
