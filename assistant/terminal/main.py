"""The `downlock` command: from what was written to the command that does it, and its exit code.

Each command is imported when it is called for, so that a question pays for nothing but its answer.
"""

from __future__ import annotations

import gc
import sys
from collections.abc import Callable, Sequence

from assistant.rendering.text import clean
from assistant.terminal.arguments import parse
from assistant.terminal.options import PROGRAM, Parsed, UsageProblem
from assistant.terminal.screen import complain, let_go, stand_in

DONE, BROKEN, WRONG_USAGE, NOT_WRITTEN, INTERRUPTED = 0, 1, 2, 5, 130


def main(argv: list[str] | None = None) -> int:
    """Run the command that the arguments name, by default those of the program; return its exit code."""
    gc.disable()  # a single question is over before a look for what may be freed would pay
    stand_in()
    try:
        return _finish(sys.argv[1:] if argv is None else argv)
    finally:
        gc.freeze()  # spares the end of the process a last look at what it leaves anyway
        gc.enable()


def _finish(arguments: Sequence[str]) -> int:
    """Run a command to whatever end it comes; return the exit code."""
    if sys.stdout is None:
        complain("cannot read or write: the output is closed")
        return NOT_WRITTEN
    try:
        return _run(parse(arguments))
    except UsageProblem as problem:
        complain(clean(" ".join(str(problem).split())))
        return WRONG_USAGE
    except BrokenPipeError:
        let_go(sys.stdout)
        return DONE
    except KeyboardInterrupt:
        return INTERRUPTED
    except OSError as error:
        let_go(sys.stdout)
        complain(f"cannot read or write: {error.strerror or error}")
        return NOT_WRITTEN


def _run(parsed: Parsed) -> int:
    if parsed.has("--help"):
        from assistant.terminal.help import help_text

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
            sys.stderr.write(f"{clean(str(problem))}\n")
        complain(f"the knowledge base has problems ({len(broken.problems)}), and nothing is answered from it")
        return BROKEN
    except ModuleNotFoundError as missing:
        if not missing.name or missing.name.startswith(f"{__package__.partition('.')[0]}."):
            raise
        complain(f"the package {missing.name} is missing, which this needs; install it: pip install {missing.name}")
        return BROKEN


def _print(text: str) -> int:
    sys.stdout.write(f"{text}\n")
    sys.stdout.flush()
    return DONE


def _converse(parsed: Parsed) -> int:
    gc.enable()
    if parsed.has("--hands-free"):
        from assistant.terminal.hands_free import talk_hands_free

        return talk_hands_free(parsed)
    from assistant.terminal.talking import converse

    return converse(parsed)


def _ask(parsed: Parsed) -> int:
    if parsed.has("--batch"):
        gc.enable()
    if parsed.has("--hear"):
        from assistant.terminal.hearing import ask_heard

        return ask_heard(parsed)
    from assistant.terminal.ask import ask

    return ask(parsed)


def _check(parsed: Parsed) -> int:
    gc.enable()
    from assistant.terminal.check import check

    return check(parsed)


def _progress(parsed: Parsed) -> int:
    gc.enable()
    from assistant.terminal.progress import progress

    return progress(parsed)


def _rehearse(parsed: Parsed) -> int:
    gc.enable()
    from assistant.terminal.rehearsing import rehearse

    return rehearse(parsed)


def _class(parsed: Parsed) -> int:
    gc.enable()
    from assistant.terminal.class_room import lead_class

    return lead_class(parsed)


def _sheet(parsed: Parsed) -> int:
    gc.enable()
    from assistant.terminal.sheet import sheet

    return sheet(parsed)


def _audio(parsed: Parsed) -> int:
    gc.enable()
    from assistant.terminal.audio import audio

    return audio(parsed)


_COMMANDS: dict[str, Callable[[Parsed], int]] = {
    "": _converse,
    "ask": _ask,
    "check": _check,
    "audio": _audio,
    "progress": _progress,
    "class": _class,
    "sheet": _sheet,
    "rehearse": _rehearse,
}
