"""The private environment that scripts/start.py and scripts/test.py run in, made at first use.

It lies in `.venv` in the checkout. A stamp file in it says what it was made for, and is written only when
all is installed: a run that finds its own stamp starts at once, without network. Whatever an interrupted run
left behind carries an unfinished stamp, and is made anew. A `.venv` without a stamp was made by somebody
else, and is never touched.

Only quick modules are imported at the top: a run that finds all ready must not be felt.
"""

from __future__ import annotations

import os
import sys
from hashlib import sha256

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Callable, Sequence
    from typing import IO

    Run = Callable[[Sequence[str], str], int]  # (command, folder to run it in) -> exit code

EXTRAS = ("", "speech", "voice", "dev")
"""What may be installed, each with all that is before it."""
ROOT = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
UNFINISHED = "unfinished"
INTERRUPTED = 130  # what a shell reports for Ctrl-C
_NO_NETWORK = (
    "connection broken",
    "connectionerror",
    "connection error",
    "name resolution",
    "failed to resolve",
    "network is unreachable",
    "timed out",
    "proxyerror",
)


class SetupProblem(Exception):
    """The environment cannot be made; the message is one line that says what to do."""


WITH_VOICE = "--with-voice"


def start(arguments: list[str]) -> int:
    """Run `downlock` with the arguments in a ready environment, which can speak; return its exit code.

    "--with-voice" before the command is for this script: it also installs what hearing and audio files need.
    """
    voice = arguments[:1] == [WITH_VOICE]
    arguments = arguments[1:] if voice else arguments
    try:
        prepare(ROOT, "voice" if voice else "speech")
    except SetupProblem as problem:
        say(str(problem))
        return 2
    except KeyboardInterrupt:
        say("stopped; the same command takes it up again")
        return INTERRUPTED
    return _hand_over([python_path(ROOT), "-P", "-m", "assistant", *arguments])


def prepare(root: str, extra: str = "", run: Run | None = None) -> None:
    """Make the environment of a checkout ready, with an optional extra such as "dev".

    Raises SetupProblem; a KeyboardInterrupt leaves an unfinished stamp behind.
    """
    if state(root, extra) == "ready":
        return
    with _lock(root):
        found = state(root, extra)  # again: another run may have finished meanwhile
        if found != "ready":
            _build(root, found, extra, run or _run_logged)


def state(root: str, extra: str = "") -> str:
    """Return "ready", "missing", or "outdated": sound, for another pyproject.toml or extra."""
    made_for, _, installed = (_read(stamp_path(root)) or UNFINISHED).partition("\n")
    if made_for != interpreter_key(root) or not os.path.exists(python_path(root)):
        return "missing"
    enough = EXTRAS[EXTRAS.index(extra) :]
    return "ready" if installed in [project_key(root, each) for each in enough] else "outdated"


def stamp_text(root: str, extra: str) -> str:
    """Return the stamp of a finished environment: a line for the interpreter, one for the project."""
    return f"{interpreter_key(root)}\n{project_key(root, extra)}"


def interpreter_key(root: str) -> str:
    """Return what an environment cannot outlive: the Python version and the place of the checkout."""
    version = ".".join(map(str, sys.version_info[:3]))
    return f"{sys.implementation.name} {version} {os.path.realpath(root)}"


def project_key(root: str, extra: str) -> str:
    """Return what decides which packages belong in: the content of pyproject.toml and the extra."""
    with open(os.path.join(root, "pyproject.toml"), "rb") as file:
        return f"{sha256(file.read()).hexdigest()} {extra}"


def environment_path(root: str) -> str:
    """Return the folder of the private environment."""
    return os.path.join(root, ".venv")


def python_path(root: str) -> str:
    """Return the interpreter of the private environment."""
    return command_path(root, "python")


def command_path(root: str, name: str) -> str:
    """Return a command installed in the private environment."""
    if os.name == "nt":
        return os.path.join(environment_path(root), "Scripts", name + ".exe")
    return os.path.join(environment_path(root), "bin", name)


def stamp_path(root: str) -> str:
    """Return the file that says what the environment was made for."""
    return os.path.join(environment_path(root), "downlock.stamp")


def log_path(root: str) -> str:
    """Return the file that keeps what the installers printed."""
    return os.path.join(environment_path(root), "install.log")


def say(text: str) -> None:
    """Print progress on standard error, broken between words: standard output is for answers only."""
    line = f"downlock: {text}"
    if sys.stderr.isatty():
        import shutil
        import textwrap

        width = shutil.get_terminal_size((80, 24)).columns
        line = "\n".join(textwrap.wrap(line, width, subsequent_indent="  ", break_on_hyphens=False)) or line
    print(line, file=sys.stderr, flush=True)


# Making it


_COMPILE = "from assistant.conversation.opening import open_knowledge; open_knowledge()"


def _build(root: str, found: str, extra: str, run: Run) -> None:
    from time import monotonic

    begun = monotonic()
    extra = max(extra, _extra_before(root), key=EXTRAS.index)
    if found == "missing":
        say(f"1/3 making a private environment in {environment_path(root)}")
        _make(root, run)
    else:
        say(f"1/3 bringing the environment in {environment_path(root)} up to date")
        _write(stamp_path(root), UNFINISHED)
    say("2/3 installing Downlock and the packages it needs (a minute or so, and a network)")
    _install(root, extra, run)
    # The knowledge base is compiled once, and kept: else the first question would wait for it.
    run([python_path(root), "-c", _COMPILE], root)
    _write(stamp_path(root), stamp_text(root, extra))
    say(f"3/3 ready after {monotonic() - begun:.0f} s; the next start is immediate")


def _extra_before(root: str) -> str:
    # What was there before is kept when an ordinary start brings the packages up to date.
    before = (_read(stamp_path(root)) or "").rpartition(" ")[2]
    return before if before in EXTRAS else ""


def _make(root: str, run: Run) -> None:
    from importlib.util import find_spec
    from shutil import rmtree

    folder = environment_path(root)
    if _read(stamp_path(root)) is None and os.path.exists(folder) and os.listdir(folder):
        raise SetupProblem(
            f"{folder} is not of this script's making: move it away and run the same command again"
        )
    rmtree(folder, ignore_errors=True)
    os.makedirs(folder, exist_ok=True)
    _write(stamp_path(root), UNFINISHED)
    options = [] if find_spec("ensurepip") else ["--without-pip"]
    if run([_base_python(), "-m", "venv", *options, folder], root):
        raise SetupProblem(f"making the environment failed (details: {log_path(root)})")


def _base_python() -> str:
    # Not the one of an environment, which may be the very one that is to be made anew.
    return getattr(sys, "_base_executable", None) or sys.executable


def _install(root: str, extra: str, run: Run) -> None:
    project = f".[{extra}]" if extra else "."
    quiet = ["--quiet", "--no-input", "--disable-pip-version-check"]
    if run([*_pip(root), "install", *quiet, "--editable", project], root):
        raise SetupProblem(_why_failed(_read(log_path(root)) or "", log_path(root)))


def _pip(root: str) -> list[str]:
    """Return the pip to install with: the environment's own, or the caller's if it has none."""
    from importlib.util import find_spec

    if os.path.exists(command_path(root, "pip")):
        return [python_path(root), "-m", "pip"]
    if find_spec("pip"):
        return [sys.executable, "-m", "pip", "--python", python_path(root)]
    raise SetupProblem(
        "this Python came without pip and ensurepip: install them (Debian, Ubuntu: "
        "sudo apt install python3-venv) and run the same command again"
    )


def _why_failed(log: str, path: str) -> str:
    lowered = log.lower()
    if any(sign in lowered for sign in _NO_NETWORK):
        return (
            "no package index can be reached: connect to the network for this once and run the same command "
            f"again, or set PIP_NO_INDEX=1 and PIP_FIND_LINKS to a folder of wheels (details: {path})"
        )
    errors = [line for line in log.splitlines() if line.startswith("ERROR")]
    return f"installing failed: {errors[-1] if errors else 'no reason given'} (details: {path})"


def _run_logged(command: Sequence[str], folder: str) -> int:
    from subprocess import DEVNULL, STDOUT, call

    settings = {**os.environ, "PIP_USER": "0", "PIP_REQUIRE_VIRTUALENV": "0"}
    with open(log_path(folder), "wb") as log:
        return call(command, cwd=folder, env=settings, stdin=DEVNULL, stdout=log, stderr=STDOUT)


def _lock(root: str) -> IO[bytes]:
    """Return a file that, until closed, keeps a second run from building too (not on Windows)."""
    file = open(os.path.join(root, "pyproject.toml"), "rb")  # noqa: SIM115  (the caller closes it)
    try:
        import fcntl
    except ImportError:
        return file
    fcntl.flock(file, fcntl.LOCK_EX)
    return file


def _hand_over(command: list[str]) -> int:
    if os.name != "nt":
        os.execv(command[0], command)
    from subprocess import call  # Windows would give the prompt back before the new process is done

    return call(command)


def _read(path: str) -> str | None:
    try:
        with open(path, encoding="utf-8", errors="surrogateescape") as file:
            return file.read()
    except OSError:
        return None


def _write(path: str, text: str) -> None:
    # A stamp cut short by an interruption matches nothing, so it needs no more care than this.
    with open(path, "w", encoding="utf-8", errors="surrogateescape") as file:
        file.write(text)
