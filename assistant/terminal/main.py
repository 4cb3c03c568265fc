"""The `downlock` command: from what was written to the command that does it, and its exit code.

Each command is imported when it is called for, so that a question pays for nothing but its answer.
"""

from __future__ import annotations

import sys
from collections.abc import Callable

from assistant.terminal.options import PROGRAM, Parsed, UsageProblem, help_text, parse
from assistant.terminal.screen import complain, let_go

DONE, BROKEN, WRONG_USAGE, INTERRUPTED = 0, 1, 2, 130


def main(argv: list[str] | None = None) -> int:
    """Run the command that the arguments name, by default those of the program; return its exit code."""
    try:
        return _run(parse(sys.argv[1:] if argv is None else argv))
    except UsageProblem as problem:
        complain(" ".join(str(problem).split()))
        return WRONG_USAGE
    except BrokenPipeError:
        let_go(sys.stdout)
        return DONE
    except KeyboardInterrupt:
        return INTERRUPTED


def _run(parsed: Parsed) -> int:
    if parsed.has("--help"):
        return _print(help_text(parsed.command))
    if parsed.has("--version"):
        from assistant import __version__

        return _print(f"{PROGRAM} {__version__}")
    return _opened(_COMMANDS[parsed.command], parsed)


def _opened(command: Callable[[Parsed], int], parsed: Parsed) -> int:
    from assistant.terminal.session import BrokenKnowledge

    try:
        return command(parsed)
    except BrokenKnowledge as broken:
        for problem in broken.problems:
            sys.stderr.write(f"{problem}\n")
        complain(f"the knowledge base has problems ({len(broken.problems)}), and nothing is answered from it")
        return BROKEN


def _print(text: str) -> int:
    sys.stdout.write(f"{text}\n")
    sys.stdout.flush()
    return DONE


def _converse(parsed: Parsed) -> int:
    from assistant.terminal.talking import converse

    return converse(parsed)


def _ask(parsed: Parsed) -> int:
    from assistant.terminal.ask import ask

    return ask(parsed)


def _check(parsed: Parsed) -> int:
    from assistant.terminal.check import check

    return check(parsed)


_COMMANDS: dict[str, Callable[[Parsed], int]] = {"": _converse, "ask": _ask, "check": _check}
