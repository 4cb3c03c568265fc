"""What the documents say is so: options, examples, exit codes, and the format of knowledge."""

import io
import json
import re
import shlex
import sys
from pathlib import Path

import pytest

from assistant.knowledge.compiling import compile_base
from assistant.knowledge.fields import Shape
from assistant.knowledge.shapes import SHAPES, TYPE
from assistant.knowledge.yaml_lines import parse_yaml
from assistant.terminal import main as command
from assistant.terminal.ask import EXIT_CODES
from assistant.terminal.options import COMMANDS

ROOT = Path(__file__).parents[1]
README = (ROOT / "README.md").read_text("utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text("utf-8")
FORMAT = (ROOT / "knowledge_base" / "FORMAT.md").read_text("utf-8")

OPTIONS = sorted({option.name for each in COMMANDS for option in each.options})
FAILING = (command.BROKEN, command.WRONG_USAGE, command.NOT_WRITTEN, command.INTERRUPTED)
CODES = sorted({*EXIT_CODES.values(), *FAILING})
EXAMPLES = re.findall(r"^\$ downlock (ask .+)\n(.+)$", README, re.MULTILINE)
TEXTS = [(line, first) for line, first in EXAMPLES if "--json" not in line]
OBJECTS = [(line, first) for line, first in EXAMPLES if "--json" in line]
TURNS = re.findall(r"^Question: (.+)\n(.+)$", README, re.MULTILINE)[:-1]
FORMAT_EXAMPLE = re.findall(r"```yaml\n(.*?)```", FORMAT, re.DOTALL)[0]
PACKAGES = sorted(path.parent.name for path in (ROOT / "assistant").glob("*/__init__.py"))


@pytest.fixture(scope="module")
def cache(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("cache")


@pytest.fixture(autouse=True)
def own_places(tmp_path: Path, cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("DOWNLOCK_HOME", str(tmp_path))
    monkeypatch.setenv("DOWNLOCK_CACHE", str(cache))
    for name in ("DOWNLOCK_KNOWLEDGE", "DOWNLOCK_TYPE"):
        monkeypatch.delenv(name, raising=False)


@pytest.mark.parametrize("option", OPTIONS)
def test_the_readme_lists_every_option(option: str) -> None:
    assert re.search(rf"^\| `{option}[ `]", README, re.MULTILINE)


@pytest.mark.parametrize("code", CODES)
def test_the_readme_lists_every_exit_code(code: int) -> None:
    assert f"\n| {code} |" in README


def test_the_readme_holds_examples() -> None:
    assert len(TEXTS) >= 10
    assert len(OBJECTS) == 1
    assert len(TURNS) >= 4


@pytest.mark.parametrize(("line", "first"), TEXTS, ids=[line for line, _ in TEXTS])
def test_an_example_of_the_readme_is_answered_so(
    line: str, first: str, capsys: pytest.CaptureFixture[str]
) -> None:
    command.main([*shlex.split(line), "--width", "80"])

    assert capsys.readouterr().out.splitlines()[0] == first


@pytest.mark.parametrize(("line", "first"), OBJECTS, ids=[line for line, _ in OBJECTS])
def test_the_object_of_the_readme_is_answered_so(
    line: str, first: str, capsys: pytest.CaptureFixture[str]
) -> None:
    command.main(shlex.split(line))

    answered, printed = json.loads(capsys.readouterr().out), json.loads(first)
    assert list(answered) == list(printed)
    del answered["understood"], printed["understood"]
    assert answered == printed
    assert all(f"`{key}`" in README for key in printed)


def test_the_conversation_of_the_readme_goes_so(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    typed = "".join(f"{turn}\n" for turn, _ in TURNS).encode()
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(typed)))

    command.main(["--width", "80"])

    replies = capsys.readouterr().out.split("\n\n")
    assert [reply.splitlines()[0] for reply in replies[: len(TURNS)]] == [first for _, first in TURNS]


@pytest.mark.parametrize("package", PACKAGES)
def test_the_developers_map_names_every_package(package: str) -> None:
    assert f"`{package}`" in DEVELOPERS


def test_the_example_of_the_format_is_read_without_problems() -> None:
    tree, problems = parse_yaml(FORMAT_EXAMPLE.encode(), "FORMAT.md")

    assert problems == []
    assert tree is not None
    assert [str(problem) for problem in compile_base([tree])[1]] == []


@pytest.mark.parametrize("shape", [*SHAPES.values(), TYPE], ids=lambda shape: shape.key)
def test_the_format_tells_of_every_field(shape: Shape) -> None:
    assert f"\n{shape.key}:" in f"\n{FORMAT_EXAMPLE}"
    assert [field.name for field in shape.fields if f"{field.name}:" not in FORMAT_EXAMPLE] == []


@pytest.mark.parametrize("document", [README, DEVELOPERS, FORMAT], ids=["README", "DEVELOPERS", "FORMAT"])
def test_links_between_documents_lead_somewhere(document: str) -> None:
    folder = ROOT / "knowledge_base" if document is FORMAT else ROOT
    linked = [link.split("#")[0] for link in re.findall(r"\]\(([^)]+)\)", document)]

    assert [link for link in linked if link and "://" not in link and not (folder / link).exists()] == []
