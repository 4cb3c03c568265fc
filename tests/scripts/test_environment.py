"""The private environment is made once, found again at once, and mended after whatever went wrong.

No test installs anything: what would run pip is replaced by a function that notes its command.
"""

import os
import shutil
import subprocess
import sys
from collections.abc import Sequence
from importlib.util import find_spec
from pathlib import Path
from types import ModuleType

import pytest

SCRIPTS = Path(__file__).parents[2] / "scripts"
POSIX = pytest.mark.skipif(os.name == "nt", reason="stands a shell script in for the interpreter")


@pytest.fixture
def environment(monkeypatch: pytest.MonkeyPatch) -> ModuleType:
    monkeypatch.syspath_prepend(str(SCRIPTS))
    import _environment

    return _environment


@pytest.fixture
def checks(environment: ModuleType) -> ModuleType:
    import _checks

    return _checks


@pytest.fixture
def root(tmp_path: Path) -> Path:
    """A checkout with nothing but its project file."""
    (tmp_path / "pyproject.toml").write_text("first")
    return tmp_path


class Installer:
    """Stands in for venv and pip: notes what it is asked for, and fails or is interrupted on demand."""

    def __init__(self, environment: ModuleType, fails_with: str = "", interrupted_at: str = "") -> None:
        self.environment = environment
        self.fails_with = fails_with
        self.interrupted_at = interrupted_at
        self.asked: list[str] = []
        self.compiled = 0

    def __call__(self, command: Sequence[str], folder: str) -> int:
        if "-c" in command:
            self.compiled += 1
            return 0
        step = "venv" if "venv" in command else f"pip {command[-1]}"
        self.asked.append(step)
        if self.interrupted_at and step.startswith(self.interrupted_at):
            raise KeyboardInterrupt
        if step == "venv":
            for name in ("python", "pip"):
                path = Path(self.environment.command_path(folder, name))
                path.parent.mkdir(parents=True, exist_ok=True)
                path.write_text("#!/bin/sh\n")
            return 0
        Path(self.environment.log_path(folder)).write_text(self.fails_with)
        return int(bool(self.fails_with))


def test_the_knowledge_is_compiled_before_the_first_question(environment: ModuleType, root: Path) -> None:
    run = Installer(environment)

    environment.prepare(str(root), "", run)
    environment.prepare(str(root), "", run)

    assert run.compiled == 1


def prepared(environment: ModuleType, root: Path, extra: str = "") -> list[str]:
    """Prepare the environment; return the steps that this took."""
    run = Installer(environment)
    environment.prepare(str(root), extra, run)
    return run.asked


# What is done when


def test_the_first_run_makes_all_and_the_second_nothing(environment: ModuleType, root: Path) -> None:
    assert environment.state(str(root)) == "missing"
    assert prepared(environment, root) == ["venv", "pip ."]
    assert environment.state(str(root)) == "ready"
    assert prepared(environment, root) == []


def test_a_changed_project_file_only_installs_again(environment: ModuleType, root: Path) -> None:
    prepared(environment, root)
    (root / "pyproject.toml").write_text("second")

    assert environment.state(str(root)) == "outdated"
    assert prepared(environment, root) == ["pip ."]
    assert environment.state(str(root)) == "ready"


def test_the_developers_extra_is_added_once_and_kept(environment: ModuleType, root: Path) -> None:
    prepared(environment, root)

    assert prepared(environment, root, "dev") == ["pip .[dev]"]
    assert prepared(environment, root) == []
    (root / "pyproject.toml").write_text("second")
    assert prepared(environment, root) == ["pip .[dev]"]
    assert prepared(environment, root, "dev") == []


def test_another_python_version_makes_it_anew(
    environment: ModuleType, root: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    prepared(environment, root)
    monkeypatch.setattr(sys, "version_info", (3, 99, 0, "final", 0))

    assert prepared(environment, root) == ["venv", "pip ."]


def test_a_moved_checkout_makes_it_anew(environment: ModuleType, root: Path, tmp_path: Path) -> None:
    (tmp_path / "old").mkdir()
    shutil.copy(root / "pyproject.toml", tmp_path / "old")
    prepared(environment, tmp_path / "old")
    moved = (tmp_path / "old").rename(tmp_path / "new")

    assert prepared(environment, moved) == ["venv", "pip ."]


def test_a_lost_interpreter_makes_it_anew(environment: ModuleType, root: Path) -> None:
    prepared(environment, root)
    os.remove(environment.python_path(str(root)))

    assert prepared(environment, root) == ["venv", "pip ."]


# What goes wrong


@pytest.mark.parametrize("step", ["venv", "pip"])
def test_an_interrupted_run_is_taken_up_again(environment: ModuleType, root: Path, step: str) -> None:
    with pytest.raises(KeyboardInterrupt):
        environment.prepare(str(root), "", Installer(environment, interrupted_at=step))

    assert environment.state(str(root)) == "missing"
    assert prepared(environment, root) == ["venv", "pip ."]


def test_an_interrupted_update_is_not_taken_for_finished(environment: ModuleType, root: Path) -> None:
    prepared(environment, root)
    with pytest.raises(KeyboardInterrupt):
        environment.prepare(str(root), "dev", Installer(environment, interrupted_at="pip"))

    assert environment.state(str(root)) == "missing"


@pytest.mark.parametrize("length", range(0, 200, 7))
def test_a_stamp_cut_short_is_not_taken_for_finished(
    environment: ModuleType, root: Path, length: int
) -> None:
    prepared(environment, root, "dev")
    stamp = Path(environment.stamp_path(str(root)))
    whole = stamp.read_text()
    stamp.write_text(whole[: min(length, len(whole) - 1)])

    assert environment.state(str(root), "dev") != "ready"


def test_an_environment_of_somebody_else_is_left_alone(environment: ModuleType, root: Path) -> None:
    (root / ".venv").mkdir()
    (root / ".venv" / "theirs").write_text("precious")

    with pytest.raises(environment.SetupProblem, match="not of this script's making: move it away"):
        prepared(environment, root)
    assert [path.name for path in (root / ".venv").iterdir()] == ["theirs"]


@pytest.mark.parametrize(
    ("log", "message"),
    [
        (
            "WARNING: Retrying after connection broken by 'X'\nERROR: No matching",
            "no package index can be reached",
        ),
        ("ERROR: first\nERROR: Disk full", "installing failed: ERROR: Disk full"),
        ("odd", "installing failed: no reason given"),
    ],
)
def test_a_failed_installation_is_told_in_one_line(
    environment: ModuleType, root: Path, log: str, message: str
) -> None:
    with pytest.raises(environment.SetupProblem, match=message) as problem:
        environment.prepare(str(root), "", Installer(environment, fails_with=log))

    assert "\n" not in str(problem.value)
    assert environment.state(str(root)) == "missing"


@pytest.mark.parametrize(
    ("absent", "outcome"),
    [
        ([], "own pip"),
        (["ensurepip"], "pip of the caller"),
        (["ensurepip", "pip"], "sudo apt install python3-venv"),
    ],
)
def test_a_python_without_its_installers(
    environment: ModuleType, root: Path, monkeypatch: pytest.MonkeyPatch, absent: list[str], outcome: str
) -> None:
    monkeypatch.setattr("importlib.util.find_spec", lambda name: None if name in absent else find_spec("sys"))
    commands: list[list[str]] = []

    def run(command: Sequence[str], folder: str) -> int:
        commands.append(list(command))
        code = Installer(environment)(command, folder)
        if "--without-pip" in command:
            os.remove(environment.command_path(folder, "pip"))
        return code

    if outcome.startswith("sudo"):
        with pytest.raises(environment.SetupProblem, match=outcome):
            environment.prepare(str(root), "", run)
        return
    environment.prepare(str(root), "", run)
    assert ("--without-pip" in commands[0]) == (outcome == "pip of the caller")
    assert ("--python" in commands[1]) == (outcome == "pip of the caller")


# The scripts themselves


@POSIX
def test_a_ready_start_passes_arguments_output_and_exit_code_through(
    environment: ModuleType, root: Path
) -> None:
    shutil.copytree(SCRIPTS, root / "scripts", ignore=shutil.ignore_patterns("__pycache__"))
    prepared(environment, root, "speech")
    python = Path(environment.python_path(str(root)))
    python.write_text('#!/bin/sh\nfor word; do echo "[$word]"; done\nexit 3\n')
    python.chmod(0o755)

    done = subprocess.run(
        [sys.executable, str(root / "scripts" / "start.py"), "ask", "v l e?", ""],
        capture_output=True,
        text=True,
        check=False,
    )

    assert done.stdout.splitlines() == ["[-P]", "[-m]", "[assistant]", "[ask]", "[v l e?]", "[]"]
    assert (done.stderr, done.returncode) == ("", 3)


def test_progress_goes_to_standard_error_alone(
    environment: ModuleType, root: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    prepared(environment, root)
    printed = capsys.readouterr()

    assert printed.out == ""
    assert [line[:13] for line in printed.err.splitlines()] == [f"downlock: {n}/3" for n in (1, 2, 3)]


def test_a_ready_start_loads_no_slow_module() -> None:
    listing = "import sys; sys.path.insert(0, sys.argv[1]); import _environment; print(*sys.modules)"
    done = subprocess.run(
        [sys.executable, "-S", "-c", listing, str(SCRIPTS)], capture_output=True, text=True, check=True
    )

    slow = {"subprocess", "shutil", "typing", "pathlib", "re", "importlib.util"}
    assert slow.isdisjoint(done.stdout.split())


@pytest.mark.parametrize(
    ("options", "workers"),
    [
        ([], ("-n", "2")),
        (["tests/scripts", "-k", "stamp"], ("-n", "2")),
        (["-n", "0"], ()),
        (["-n4"], ()),
        (["--pdb"], ()),
        (["-p", "no:xdist"], ()),
    ],
)
def test_who_chooses_the_workers_gets_them(
    checks: ModuleType, options: list[str], workers: tuple[str, ...]
) -> None:
    assert checks._workers(options) == workers


def test_a_failed_check_fails_the_run_but_stops_nothing(
    checks: ModuleType, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    asked: list[str] = []
    monkeypatch.setattr(checks, "_passes", lambda name, command: asked.append(name) or name != "types")
    monkeypatch.setattr(checks, "_tests", lambda command: asked.append("tests") or 0)

    assert checks._run_all([]) == 1
    assert asked == ["style", "types", "imports", "knowledge", "tests"]
    assert capsys.readouterr().out == "failed: types - now the tests\n"


def test_the_voice_is_added_once_and_kept_and_a_developer_has_it(environment: ModuleType, root: Path) -> None:
    prepared(environment, root)

    assert prepared(environment, root, "voice") == ["pip .[voice]"]
    assert prepared(environment, root) == []
    (root / "pyproject.toml").write_text("second")
    assert prepared(environment, root) == ["pip .[voice]"]
    assert prepared(environment, root, "dev") == ["pip .[dev]"]
    assert prepared(environment, root, "voice") == []


def test_the_word_for_the_voice_is_not_passed_on(environment: ModuleType, monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[object] = []
    monkeypatch.setattr(environment, "prepare", lambda root, extra="": asked.append(extra))
    monkeypatch.setattr(environment, "_hand_over", lambda command: asked.append(command[-2:]) or 0)

    environment.start(["--with-voice", "ask", "vle"])
    environment.start(["ask", "vle"])

    assert asked == ["voice", ["ask", "vle"], "speech", ["ask", "vle"]]
