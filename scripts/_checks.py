"""The checks that scripts/test.py runs, all of them even when one fails.

The tests come last, so that the last line printed is pytest's own summary. Paths among the options of pytest
start at the checkout.
"""

from __future__ import annotations

import _environment

CHECKS = (
    ("style", ["-m", "ruff", "check", "--quiet", "."]),
    ("types", ["-m", "mypy", "--strict", "assistant"]),
    ("imports", ["-c", "from importlinter.cli import lint_imports_command as run; run()", "--no-cache"]),
    ("knowledge", ["-m", "assistant", "check"]),
)
WORKERS = ("-n", "2")


def main(options: list[str]) -> int:
    """Run all in a ready environment; return 0 only if all passed."""
    try:
        _environment.prepare(_environment.ROOT, "dev")
        return _run_all(options)
    except _environment.SetupProblem as problem:
        _environment.say(str(problem))
        return 2
    except KeyboardInterrupt:
        return _environment.INTERRUPTED


def _run_all(options: list[str]) -> int:
    python = _environment.python_path(_environment.ROOT)
    failed = [name for name, arguments in CHECKS if not _passes(name, [python, *arguments])]
    print("failed: " + ", ".join(failed) if failed else "all checks passed", "- now the tests", flush=True)
    return _tests([python, "-m", "pytest", "-q", *_workers(options), *options]) or int(bool(failed))


def _passes(name: str, command: list[str]) -> bool:
    from subprocess import PIPE, STDOUT, run
    from time import monotonic

    begun = monotonic()
    done = run(command, cwd=_environment.ROOT, stdout=PIPE, stderr=STDOUT, check=False)
    outcome = "FAILED" if done.returncode else "passed"
    print(f"{name:<10}{outcome}  {monotonic() - begun:5.1f} s", flush=True)
    if done.returncode:
        print(done.stdout.decode(errors="replace"), flush=True)
    return done.returncode == 0


def _tests(command: list[str]) -> int:
    from subprocess import call

    return call(command, cwd=_environment.ROOT)


def _workers(options: list[str]) -> tuple[str, ...]:
    # A debugger needs the terminal for itself, and who names a number of workers gets it.
    chosen = any(option.startswith(("-n", "--numprocesses", "--pdb")) for option in options)
    return () if chosen or "no:xdist" in options else WORKERS
