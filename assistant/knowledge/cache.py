"""The compiled base kept between starts, trusted only if it is whole and belongs to these files.

The first line holds the key of the content that the rest was compiled from and a checksum of the rest. Anything
unexpected means no cache: a start may be slower for it, never wrong. Checksums find what was changed by accident or
by editing, in a fifth of the time of a digest; who may write there on purpose could change the program as well.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable
from typing import Any
from zlib import crc32

import assistant
from assistant.knowledge.shelf import FORM, read, written

try:
    from _blake2 import blake2b  # a tenth of the time that hashlib takes to import
except ImportError:  # pragma: no cover - another Python
    from hashlib import blake2b

FORMAT = f"6 {FORM} {sys.implementation.cache_tag}"
"""Changed whenever the compiled form changes, or the Python that reads it."""
CACHE_VARIABLE = "DOWNLOCK_CACHE"
_PIECE = 1 << 16
"""Bytes that are summed at a time."""


def content_key(files: Iterable[tuple[str, bytes]], code: Iterable[str]) -> str:
    """A key that differs whenever a file's name or bytes, the program's version or its code differ."""
    digest = blake2b(digest_size=20)
    for part in (FORMAT, getattr(assistant, "__version__", ""), *code):
        digest.update(part.encode("utf-8", "surrogateescape") + b"\0")
    for name, raw in files:
        digest.update(f"{name}\0{len(raw)}\0{crc32(raw)}\0".encode("utf-8", "surrogateescape"))
    return digest.hexdigest()


def code_stamps(folders: Iterable[str]) -> list[str]:
    """Name, size and time of each module in these folders, so that changed code never meets an old cache."""
    stamps = []
    for folder in folders:
        try:
            entries = [
                (entry.name, entry.stat()) for entry in os.scandir(folder) if entry.name.endswith(".py")
            ]
        except OSError:
            continue
        stamps += [f"{name} {found.st_size} {found.st_mtime_ns}" for name, found in sorted(entries)]
    return stamps


def cache_path(folder: str | None, names: Iterable[str]) -> str:
    """The file for a base read from these folders; empty when there is no place for it."""
    chosen = user_cache_folder() if folder is None else folder
    if not chosen:
        return ""
    digest = blake2b("\0".join(map(os.path.abspath, names)).encode("utf-8", "surrogateescape"), digest_size=8)
    return os.path.join(chosen, f"knowledge-{digest.hexdigest()}.kept")


def user_cache_folder() -> str:
    """The user's folder for what may be thrown away; DOWNLOCK_CACHE names another."""
    if CACHE_VARIABLE in os.environ:
        return os.environ[CACHE_VARIABLE]
    home = os.path.expanduser("~")
    if sys.platform == "win32":
        return _platform_folder()
    if sys.platform == "darwin":
        return os.path.join(home, "Library", "Caches", "downlock")
    return os.path.join(os.environ.get("XDG_CACHE_HOME") or os.path.join(home, ".cache"), "downlock")


def read_cache(path: str, key: str) -> dict[str, Any] | None:
    """What was kept under this key, or None when it is absent, damaged or of other content."""
    try:
        kept = _Kept(path)
        begin = len(_head(key, 0))
        if kept.cut(0, begin) != _head(key, kept.checksum(begin)):
            return None
        found = read(kept.cut, begin)
    except (OSError, ValueError, EOFError, TypeError):
        return None
    return found if isinstance(found, dict) else None


def write_cache(path: str, key: str, content: dict[str, Any]) -> bool:
    """Keep the content whole or not at all; False when this place cannot be written."""
    body = written(content)
    beside = f"{path}.{os.getpid()}"
    try:
        os.makedirs(os.path.dirname(path), exist_ok=True)
        with open(beside, "wb") as file:
            file.write(_head(key, crc32(body)) + body)
        os.replace(beside, path)
    except OSError:
        _remove(beside)
        return False
    return True


class _Kept:
    """A file of which a part is read when it is wanted, so that the rest takes no memory.

    It stays open, and so the same, when another program puts a newer one in its place. Where a system cannot read at
    a place (or would not let an open file be replaced), all of it is read at once. Raises OSError.
    """

    def __init__(self, path: str) -> None:
        self._file = -1
        self._whole: bytes | None = None
        if hasattr(os, "pread"):
            self._file = os.open(path, os.O_RDONLY)
        else:
            with open(path, "rb") as file:
                self._whole = file.read()

    def __del__(self) -> None:
        if self._file >= 0:
            os.close(self._file)

    def cut(self, start: int, length: int) -> bytes:
        """So many bytes from a place on."""
        if self._whole is not None:
            return self._whole[start : start + length]
        return os.pread(self._file, length, start)

    def checksum(self, start: int) -> int:
        """The checksum of all from a place on."""
        found = 0
        while piece := self.cut(start, _PIECE):
            found = crc32(piece, found)
            start += len(piece)
        return found


def _head(key: str, checksum: int) -> bytes:
    return f"{key} {checksum:08x}\n".encode("ascii")


def _remove(path: str) -> None:
    try:
        os.remove(path)
    except OSError:
        return


def _platform_folder() -> str:
    try:
        from platformdirs import user_cache_dir
    except ImportError:
        return ""
    return user_cache_dir("downlock", appauthor=False)
