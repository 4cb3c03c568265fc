"""A checkout, an installed copy and the environment variable each lead to their own knowledge base."""

import os
from pathlib import Path

import pytest

from assistant.knowledge import location

ROOT = Path(__file__).parents[2]


@pytest.fixture
def installed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty folder that the package seems to lie in."""
    monkeypatch.delenv(location.OVERRIDE, raising=False)
    monkeypatch.setattr(location, "__file__", str(tmp_path / "assistant" / "knowledge" / "location.py"))
    return tmp_path


def test_a_checkout_uses_the_folder_beside_the_package(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv(location.OVERRIDE, raising=False)

    assert Path(location.knowledge_root()) == ROOT / "knowledge_base"


def test_an_installed_copy_uses_what_it_carries(installed: Path) -> None:
    carried = installed / "assistant" / "_knowledge_base"
    carried.mkdir(parents=True)
    (installed / "knowledge_base").mkdir()

    assert location.knowledge_root() == str(carried)


def test_the_environment_variable_comes_first(installed: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (installed / "mine").mkdir()
    monkeypatch.chdir(installed)
    monkeypatch.setenv(location.OVERRIDE, "mine")

    assert location.knowledge_root() == os.path.join(os.getcwd(), "mine")


def test_an_empty_variable_counts_as_unset(installed: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (installed / "knowledge_base").mkdir()
    monkeypatch.setenv(location.OVERRIDE, "")

    assert location.knowledge_root() == str(installed / "knowledge_base")


@pytest.mark.parametrize("named", ["", "nowhere"])
def test_a_missing_folder_is_named_with_a_remedy(
    installed: Path, monkeypatch: pytest.MonkeyPatch, named: str
) -> None:
    monkeypatch.setenv(location.OVERRIDE, named)

    with pytest.raises(FileNotFoundError, match=f"no knowledge base at .*{location.OVERRIDE}"):
        location.knowledge_root()
