"""Read what was written after `downlock`, and tell what was meant where it is mistyped.

A reader of our own, because the standard one costs a start more than the whole of understanding a question,
and because a mistyped option is to be answered with the one that was meant.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from assistant.rendering.text import NARROWEST, clean
from assistant.terminal.options import (
    ASK,
    CLASS,
    COMMANDS,
    CONVERSATION,
    HELP,
    MANNER,
    PROGRAM,
    PROGRESS,
    REHEARSE,
    SHEET,
    Command,
    Option,
    Parsed,
    UsageProblem,
    written,
)

_NEVER_EMPTY = (
    "--mark", "--batch", "--variant", "--type", "--knowledge", "--schema", "--page", "--ready-by", "--topic",
    "--number", "--seed", "--own", "--save", "--set", "--paper", "-o", "--minutes", "--pace", "--voice", "--learner",
    "--stale", "--roster", "--names", "--teams", "--difficulty", "--think", "--title", "--csv", "--own-copy", "--xapi",
)  # fmt: skip
"""Options whose value may not be an empty text."""
_MEANT = {"--name": ("--learner", "--names"), "--user": ("--learner",), "--student": ("--learner", "--names"),
          "--pilot": ("--learner",), "--count": ("--number",), "--questions": ("--number",),
          "--time": ("--minutes",), "--output": ("-o",), "--out": ("-o",)}  # fmt: skip
"""Options that there are not, with those that are meant, the first that a command has."""
_TOGETHER = frozenset({"--hear", "--batch"})
"""Written together, one file is named for both."""


def parse(arguments: Sequence[str]) -> Parsed:
    """Return what was written after the program's name. Raises UsageProblem."""
    named = bool(arguments) and (not arguments[0].startswith("-") or arguments[0] == "-")
    command = _command(arguments[0]) if named else CONVERSATION
    parsed = _read(command, arguments[1:] if named else arguments)
    if not parsed.has("--help") and not parsed.has("--version"):
        _check_words(parsed)
        _check_values(parsed)
    return parsed


def nearest(name: str, known: Iterable[str]) -> str:
    """Return the known name most like a mistaken one, or nothing."""
    import difflib  # only ever needed once something is wrong

    found = difflib.get_close_matches(name.lower(), list(known), n=1, cutoff=0.5)
    return found[0] if found else ""


def unknown(what: str, name: str, known: Sequence[str]) -> UsageProblem:
    """Return the problem of a name that does not exist, with the one meant or else those that exist."""
    meant = next((each for each in _MEANT.get(name, ()) if each in known), "") or nearest(name, known)
    advice = f"did you mean {meant}?" if meant else f"there is {', '.join(known)}"
    return UsageProblem(f"there is no {what} {clean(name)}; {advice}")


def _command(name: str) -> Command:
    for command in COMMANDS[1:]:
        if command.name == name:
            return command
    known = [command.name for command in COMMANDS[1:]]
    if nearest(name, known):
        raise unknown("command", name, known)
    raise UsageProblem(f"there is no command {clean(name)}; a question is asked with: {PROGRAM} ask QUESTION")


def _read(command: Command, arguments: Sequence[str]) -> Parsed:
    known = {option.name: option for option in command.options}
    values: dict[str, str] = {}
    words: list[str] = []
    i = 0
    while i < len(arguments):
        argument = arguments[i]
        i += 1
        if argument == "--":
            words += arguments[i:]
            break
        if not _is_option(argument):
            words.append(argument)
            continue
        name, joined, value = argument.partition("=")
        name = HELP.name if name == "-h" else name
        if name not in known:
            raise unknown("option", name, list(known))
        if known[name].value and not joined:
            value, i = _following(known[name], arguments, i)
        elif joined and not known[name].value:
            raise UsageProblem(f"{name} takes no value")
        if values.get(name, value) != value:
            raise UsageProblem(f"{name} is given twice; give it once")
        values[name] = value
    return Parsed(command.name, values, tuple(words))


def _is_option(argument: str) -> bool:
    """Whether an argument is an option rather than a word of a question, such as "-" or "-15"."""
    return argument.startswith("-") and len(argument) > 1 and not argument[1].isdigit() and argument[1] != "."


def _following(option: Option, arguments: Sequence[str], i: int) -> tuple[str, int]:
    if i >= len(arguments) or arguments[i].startswith("--"):
        if option.name in _TOGETHER and _TOGETHER.issubset(each.partition("=")[0] for each in arguments):
            return "", i
        raise UsageProblem(f"{option.name} takes a value: {written(option)}")
    return arguments[i], i + 1


def _check_words(parsed: Parsed) -> None:
    words = parsed.words
    if parsed.command == ASK.name:
        if parsed.has("--hear"):
            _check_hearing(parsed)
        elif parsed.has("--batch") and words:
            raise UsageProblem("--batch takes its questions from the file; leave out the question or --batch")
        elif not parsed.has("--batch") and not any(word.strip() for word in words):
            raise UsageProblem(f"there is no question; write: {ASK.usage}")
    elif parsed.command in (PROGRESS.name, SHEET.name, CLASS.name):
        return  # names and actions, which they look at themselves
    elif words and words[0] in (command.name for command in COMMANDS[1:]):
        raise UsageProblem(f"a command comes first: {PROGRAM} {words[0]} [options]")
    elif words:
        usage = next(each.usage for each in COMMANDS if each.name == parsed.command)
        raise UsageProblem(f"{clean(words[0])} has no place here; write: {usage}")


def _check_hearing(parsed: Parsed) -> None:
    named = [parsed.values[each] for each in ("--hear", "--batch") if parsed.values.get(each)]
    if parsed.words:
        raise UsageProblem("--hear takes its question from a recording; leave out the question or --hear")
    if len(named) != 1:
        raise UsageProblem("--hear takes one recording, or with --batch one file that names recordings")


def _check_values(parsed: Parsed) -> None:
    for one, other in (("--speak", "--batch"), ("--ssml", "--batch"), ("--ssml", "--json")):
        if parsed.has(one) and parsed.has(other):
            raise UsageProblem(f"{one} does not go with {other}; leave one of them out")
    _check_manner(parsed)
    _check_by_ear(parsed)
    if parsed.has("--conversation") and not parsed.has("--batch"):
        raise UsageProblem("--conversation goes with --batch FILE")
    for name in _NEVER_EMPTY:
        both = name in _TOGETHER and _TOGETHER.issubset(parsed.values)
        if parsed.values.get(name, "some") == "" and not both:
            raise UsageProblem(f"{name} takes a value that is not empty: {_shown(parsed.command, name)}")
    width = parsed.values.get("--width")
    fits = width is None or (
        width.isascii() and width.isdigit() and len(width) < 6 and int(width) >= NARROWEST
    )
    if not fits:
        raise UsageProblem(
            f"--width takes a number of columns, {NARROWEST} or more, not {clean(width or '')}"
        )


def _shown(command: str, name: str) -> str:
    """Return an option as its command shows it, with what its value is called."""
    options = next(each.options for each in COMMANDS if each.name == command)
    return next(written(option) for option in options if option.name == name)


def _check_by_ear(parsed: Parsed) -> None:
    if parsed.has("--talk-key") and not parsed.has("--hands-free"):
        raise UsageProblem("--talk-key goes with --hands-free")
    if parsed.has("--learner") and not parsed.command and not parsed.has("--hands-free"):
        raise UsageProblem("--learner goes with --hands-free, or with the command rehearse")
    for by_ear in ("--speak", "--hands-free"):
        for other in ("--oral", "--mark"):
            if parsed.command == REHEARSE.name and parsed.has(by_ear) and parsed.has(other):
                raise UsageProblem(f"{by_ear} does not go with {other}; leave one of them out")


_ALOUD = {ASK.name: " or --ssml", CLASS.name: "", REHEARSE.name: " or --hands-free"}
"""Commands that speak where they are told to, with what tells them besides --speak."""


def _check_manner(parsed: Parsed) -> None:
    """Raise UsageProblem for a way of speaking where nothing is to be said; a conversation may turn its voice on."""
    if parsed.command not in _ALOUD or any(map(parsed.has, ("--speak", "--ssml", "--hands-free"))):
        return
    for option in MANNER:
        if parsed.has(option.name):
            also = _ALOUD[parsed.command]
            raise UsageProblem(f"{option.name} goes with --speak{also}")
