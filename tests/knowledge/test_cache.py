"""The cache spares work and changes no answer: whatever is odd about it, the files are read again."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from assistant.knowledge import cache
from assistant.knowledge.base import Base
from assistant.knowledge.load import load

SOUND = Path(__file__).parent / "sound"
HEAVY = {"yaml", "pathlib", "dataclasses", "inspect", "logging", "hashlib", "platformdirs", "tempfile"}


class Counter:
    """A derivation that counts how often it was asked for, which is once a compilation."""

    def __init__(self) -> None:
        self.calls = 0

    def __call__(self, base: Base) -> dict[str, int]:
        self.calls += 1
        return {"records": len(base.records)}


@pytest.fixture
def root(tmp_path: Path) -> Path:
    return Path(shutil.copytree(SOUND, tmp_path / "root"))


def opened(root: Path, folder: Path, derive: Counter) -> Base:
    base, problems = load(str(root), cache_dir=str(folder), derive=derive)
    assert problems == []
    assert base is not None
    assert base.derived == {"records": len(base.records)}
    return base


def test_a_second_start_compiles_nothing_and_knows_the_same(root: Path, tmp_path: Path) -> None:
    derive = Counter()
    first = opened(root, tmp_path / "cache", derive)
    second = opened(root, tmp_path / "cache", derive)

    assert derive.calls == 1
    assert dict(second.records) == dict(first.records)
    assert second.overrides == first.overrides


def test_a_second_start_imports_nothing_heavy(root: Path, tmp_path: Path) -> None:
    code = (
        "import sys; before = set(sys.modules); from assistant.knowledge.load import load; "
        f"base, _ = load({str(root)!r}, cache_dir={str(tmp_path / 'cache')!r}); "
        "base.record('lever-travel', 'S2'); print(*(set(sys.modules) - before))"
    )
    first, second = (
        subprocess.run(
            [sys.executable, "-c", code], capture_output=True, text=True, check=True
        ).stdout.split()
        for _ in range(2)
    )

    assert "yaml" in first
    assert "assistant.knowledge.load" in second
    assert not set(second) & HEAVY


@pytest.mark.parametrize(
    "damage",
    [
        lambda raw: b"",
        lambda raw: raw[:-1],
        lambda raw: raw[: len(raw) // 2],
        lambda raw: raw.replace(b"ash wood", b"oak wood"),
        lambda raw: b"0" * 40 + raw[40:],
        lambda raw: b"\xff\xfe" + raw,
        lambda raw: raw.split(b"\n")[0] + b"\n{}",
        lambda raw: b"[" * 100_000,
    ],
)
def test_a_damaged_cache_is_rebuilt(root: Path, tmp_path: Path, damage: Callable[[bytes], bytes]) -> None:
    derive = Counter()
    opened(root, tmp_path / "cache", derive)
    [kept] = (tmp_path / "cache").iterdir()
    whole = kept.read_bytes()
    kept.write_bytes(damage(whole))

    base = opened(root, tmp_path / "cache", derive)

    assert derive.calls == 2
    assert base.records["skid-made-of"].says == "The skid is of ash wood."
    assert kept.read_bytes() == whole


def test_a_cache_of_another_form_is_rebuilt(root: Path, tmp_path: Path) -> None:
    derive = Counter()
    opened(root, tmp_path / "cache", derive)
    [kept] = (tmp_path / "cache").iterdir()
    key = kept.read_bytes().split()[0].decode()
    for content in (
        {},
        {"base": {}},
        {"base": [], "derived": {}},
        {"base": {"records": 1}, "derived": {}},
        {"base": {}, "derived": 1},
    ):
        cache.write_cache(str(kept), key, content)
        opened(root, tmp_path / "cache", derive)

    assert derive.calls == 6


@pytest.mark.parametrize(
    "change",
    [
        lambda root: (root / "language" / "neutral_words.txt").write_text("please\n"),
        lambda root: (root / "principles" / "more.yaml").write_text("settings: {a: b}\n"),
        lambda root: (root / "principles" / "rules.yaml").rename(root / "principles" / "laws.yaml"),
    ],
)
def test_any_changed_file_is_seen(root: Path, tmp_path: Path, change: Callable[[Path], object]) -> None:
    derive = Counter()
    opened(root, tmp_path / "cache", derive)
    change(root)
    opened(root, tmp_path / "cache", derive)

    assert derive.calls == 2


def test_another_version_or_changed_code_has_another_key(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "a.py").write_text("1")
    keys = {cache.content_key([("a", b"b")], cache.code_stamps([str(tmp_path)]))}
    (tmp_path / "a.py").write_text("12")
    keys.add(cache.content_key([("a", b"b")], cache.code_stamps([str(tmp_path)])))
    monkeypatch.setattr("assistant.__version__", "another")
    keys.add(cache.content_key([("a", b"b")], cache.code_stamps([str(tmp_path)])))

    assert len(keys) == 3


def test_broken_knowledge_is_never_kept(root: Path, tmp_path: Path) -> None:
    (root / "principles" / "more.yaml").write_text("facts: [x]\n")
    load(str(root), cache_dir=str(tmp_path / "cache"), partial=True)

    assert not (tmp_path / "cache").exists()


@pytest.mark.parametrize("place", ["file", "file/below", ""])
def test_without_a_place_for_it_nothing_is_kept(root: Path, tmp_path: Path, place: str) -> None:
    (tmp_path / "file").write_text("in the way")
    base, problems = load(str(root), cache_dir=str(tmp_path / place) if place else "")

    assert base is not None
    assert problems == []
    assert sorted(path.name for path in tmp_path.iterdir()) == ["file", "root"]


def test_the_user_names_the_folder(root: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("DOWNLOCK_CACHE", str(tmp_path / "mine"))
    load(str(root))

    assert len(list((tmp_path / "mine").iterdir())) == 1
    monkeypatch.delenv("DOWNLOCK_CACHE")
    assert os.path.isabs(cache.user_cache_folder())


@pytest.mark.parametrize("system", ["linux", "darwin", "win32"])
def test_the_folder_agrees_with_platformdirs(monkeypatch: pytest.MonkeyPatch, system: str) -> None:
    platformdirs = pytest.importorskip("platformdirs")
    macos = pytest.importorskip("platformdirs.macos")
    monkeypatch.delenv("DOWNLOCK_CACHE", raising=False)
    monkeypatch.delenv("XDG_CACHE_HOME", raising=False)
    monkeypatch.setattr(sys, "platform", system)
    expected = {
        "linux": platformdirs.unix.Unix("downlock").user_cache_dir if system == "linux" else "",
        "darwin": macos.MacOS("downlock").user_cache_dir,
        "win32": platformdirs.user_cache_dir("downlock", appauthor=False),
    }

    assert cache.user_cache_folder() == expected[system]
