"""The compiled base kept between starts, as JSON trusted only if it is whole and belongs to these files.

The first line holds the key of the content that the rest was compiled from and a digest of the rest. Anything
unexpected means no cache: a start may be slower for it, never wrong.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable
from typing import Any

import assistant
from assistant.knowledge.shelf import read, written

try:
    from _blake2 import blake2b  # a tenth of the time that hashlib takes to import
except ImportError:  # pragma: no cover - another Python
    from hashlib import blake2b

FORMAT = "5"
"""Changed whenever the compiled form changes."""
CACHE_VARIABLE = "DOWNLOCK_CACHE"


def content_key(files: Iterable[tuple[str, bytes]], code: Iterable[str]) -> str:
    """A key that differs whenever a file's name or bytes, the program's version or its code differ."""
    digest = blake2b(digest_size=20)
    for part in (FORMAT, getattr(assistant, "__version__", ""), *code):
        digest.update(part.encode("utf-8", "surrogateescape") + b"\0")
    for name, raw in files:
        digest.update(f"{name}\0{len(raw)}\0".encode("utf-8", "surrogateescape") + raw)
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
    return os.path.join(chosen, f"knowledge-{digest.hexdigest()}.json")


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
        with open(path, "rb", buffering=0) as file:
            raw = file.read()
        end = raw.index(b"\n") + 1
        if raw[:end].decode("ascii").split() != [key, _digest(memoryview(raw)[end:])]:
            return None
        found = read(raw, end)
    except (OSError, ValueError, TypeError, RecursionError):
        return None
    return found if isinstance(found, dict) else None


def write_cache(path: str, key: str, content: dict[str, Any]) -> bool:
    """Keep the content whole or not at all; False when this place cannot be written."""
    body = written(content)
    beside = f"{path}.{os.getpid()}"
    try:
        os.makedirs(os.path.dirname(path), exist_ok=True)
        with open(beside, "wb") as file:
            file.write(f"{key} {_digest(body)}\n".encode("ascii") + body)
        os.replace(beside, path)
    except OSError:
        _remove(beside)
        return False
    return True


def _digest(body: bytes | memoryview) -> str:
    return blake2b(body, digest_size=20).hexdigest()


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
