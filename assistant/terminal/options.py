"""What may be written after `downlock`: one table a command, from which both the reader and the help follow.

A reader of our own, because the standard one costs a start more than the whole of understanding a question,
and because a mistyped option is to be answered with the one that was meant.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from assistant.frozen import NamedTuple
from assistant.rendering.text import NARROWEST, clean

PROGRAM = "downlock"


class Option(NamedTuple):
    """An option: its name with the dashes, what its value is called (empty: it takes none), what it does."""

    name: str
    value: str
    about: str


class Command(NamedTuple):
    """A command: how it is written, what it does, its options. The empty name opens the conversation."""

    name: str
    usage: str
    about: str
    options: tuple[Option, ...]


class Parsed(NamedTuple):
    """What was written: the command, its options with their values ("" where they take none), its words."""

    command: str
    values: dict[str, str]
    words: tuple[str, ...]

    def has(self, option: str) -> bool:
        """Return whether an option was written."""
        return option in self.values

    @property
    def width(self) -> int | None:
        """Columns asked for, if any."""
        return int(self.values["--width"]) if "--width" in self.values else None


class UsageProblem(Exception):
    """Something was written that no command takes; the message is one line and names what was meant."""


_NEVER_EMPTY = (
    "--mark", "--batch", "--variant", "--type", "--knowledge", "--schema", "--page", "--ready-by", "--topic",
    "--number", "--seed", "--own", "--save", "--set", "--paper", "-o", "--minutes", "--pace", "--voice", "--learner",
    "--stale", "--roster", "--names", "--teams", "--difficulty", "--think", "--title", "--csv", "--own-copy", "--xapi",
)  # fmt: skip
"""Options whose value may not be an empty text."""

_TOGETHER = frozenset({"--hear", "--batch"})
"""Written together, one file is named for both."""
HELP = Option("--help", "", "say how a command is written; also -h")
VERSION = Option("--version", "", "say which version this is")
_TYPE = Option("--type", "ID", "the aeroplane type, a folder of the knowledge base")
_KNOWLEDGE = Option("--knowledge", "DIR", "the folder of the knowledge base")
_KNOWING = (
    Option("--variant", "NAME", "the variant to ask about when a question names none"),
    _TYPE,
    _KNOWLEDGE,
    Option("--width", "N", f"wrap text at N columns, {NARROWEST} or more"),
    Option("--plain", "", "text alone: no colour and no line editing"),
)

_TOPIC = Option("--topic", "T", "sections (32-50) or plain words (brakes), several with commas between")
_OWN = Option("--own", "FILE", "questions of your own too, from a YAML file")
_SAVE = Option("--save", "FILE", "keep the questions as a set, to ask every class the same")
_SPEAK = Option("--speak", "", "say the answer aloud too; a key stops it")
_MANNER = (
    Option("--pace", "N", "words a minute, 80 to 320"),
    Option("--voice", "NAME", "another voice of this machine"),
    Option("--human", "", "the more human voice, where the extra human-voice is installed"),
    Option("--digits", "", "say numbers digit by digit, as on the radio"),
)
"""How it is to be said."""

CONVERSATION = Command(
    "",
    f"{PROGRAM} [options]",
    "open the conversation: ask, and ask on",
    (
        *_KNOWING,
        _SPEAK,
        *_MANNER,
        Option("--hands-free", "", "talk: it listens, answers aloud, and listens again"),
        Option("--talk-key", "", "with --hands-free: listen only once a key is pressed"),
        Option("--no-history", "", "keep no record of the questions typed"),
        VERSION,
        HELP,
    ),
)
ASK = Command(
    "ask",
    f"{PROGRAM} ask QUESTION... [options]",
    "answer one question, or each line of a file; '-' reads the question from the input",
    (
        Option("--json", "", "print one JSON object an answer"),
        Option("--batch", "FILE", "answer each line of a file, '-' for the input"),
        Option("--conversation", "", "with --batch: lines follow one another, a blank line starts afresh"),
        Option("--hear", "FILE", "answer a recorded question; with --batch, each recording that the file names"),
        Option("--explain", "", "print also how the question was understood"),
        _SPEAK,
        Option("--ssml", "", "print what would be said, as SSML for a synthesiser"),
        *_MANNER,
        *_KNOWING,
        HELP,
    ),
)
CHECK = Command(
    "check",
    f"{PROGRAM} check [options]",
    "check the knowledge base, and name each problem by its file and line",
    (
        _TYPE,
        _KNOWLEDGE,
        Option("--schema", "DIR", "also write the schemas of knowledge files, for editors, into a folder"),
        HELP,
    ),
)
PROGRESS = Command(
    "progress",
    f"{PROGRAM} progress [NAME | export FILE | import FILE | forget NAME] [options]",
    "show how a learner stands; write the record out, take one in, remove a person wholly",
    (
        Option("--json", "", "print one JSON object"),
        Option("--page", "FILE", "write a page with charts, which a browser shows and prints"),
        Option("--ready-by", "DATE", "the day to be ready by, such as 2026-12-10"),
        *_KNOWING,
        HELP,
    ),
)
REHEARSE = Command(
    "rehearse",
    f"{PROGRAM} rehearse [options]",
    "rehearse alone: what is fading is asked first, each answer is marked and kept",
    (
        Option("--learner", "NAME", "who rehearses; asked for when left out"),
        Option("--topic", "T", "sections (32-50), plain words (brakes) or general, with commas between"),
        Option("--number", "N", "how many questions; when left out, what today asks"),
        Option("--minutes", "N", "or how long"),
        Option("--ready-by", "DATE", "the day to be ready by, such as 2026-12-10, kept from then on; or none"),
        Option("--oral", "", "be examined: a scenario that goes on, failure upon failure, and a debrief"),
        Option("--seed", "S", "the same gives the same wordings and numbers"),
        Option("--mark", "FILE", "mark answers without a learner: lines of JSON, '-' for the input"),
        *_KNOWING,
        HELP,
    ),
)
CLASS = Command(
    "class",
    f"{PROGRAM} class [report [NUMBER]] [options]",
    "quiz a class aloud and mark it; one that was not ended goes on; or report on one",
    (
        Option("--roster", "FILE", "who is in the class, a CSV file; else names are asked for"),
        Option("--names", "NAMES", "who is in the class, with commas between; a team in brackets"),
        Option("--teams", "N", "deal the class into teams"),
        _TOPIC,
        Option("--number", "N", "how many questions; 12 when left out"),
        Option("--minutes", "N", "how long it is to be, in place of a number"),
        Option("--difficulty", "N", "1 recall, 2 applied, 3 several things at once, and long sums"),
        Option("--think", "N", "seconds to think before somebody is named; else Enter names"),
        Option("--title", "TEXT", "what the class and its report are called"),
        Option("--seed", "S", "what gives the same questions again"),
        _OWN,
        _SAVE,
        Option("--set", "FILE", "ask a set that was kept"),
        Option("--speak", "", "say the questions and the names aloud too"),
        *_MANNER,
        Option("--listen", "", "hear an answer at the microphone, on the key l"),
        Option("--key-here", "", "show the key, once revealed, of the class in another terminal"),
        Option("--page", "FILE", "write the report as a page, without names, .html"),
        Option("--csv", "FILE", "write the turns as a table, without names, .csv"),
        Option("--own-copy", "FILE", "write the report with names, for yourself, .html or .csv"),
        Option("--xapi", "FILE", "write xAPI statements, by pseudonyms, .json"),
        Option("--names-too", "", "with --xapi: with the names of the persons"),
        *_KNOWING,
        HELP,
    ),
)
SHEET = Command(
    "sheet",
    f"{PROGRAM} sheet quiz [options]",
    "write a paper of questions and, apart from it, the key with paragraphs",
    (
        _TOPIC,
        Option("--number", "N", "how many questions; 10 when left out"),
        Option("--seed", "S", "what gives the same paper again; it is printed on the paper"),
        _OWN,
        _SAVE,
        Option("--set", "FILE", "print a set that was kept"),
        Option("--paper", "SIZE", "a4 or letter, for a page"),
        Option("-o", "FILE", "where to: .txt, .html to print, or .zip for QTI 3.0; else the screen"),
        *_KNOWING,
        HELP,
    ),
)
AUDIO = Command(
    "audio",
    f"{PROGRAM} audio --topic T --minutes N -o FILE [options]",
    "make a file to listen to: questions, a pause to answer each aloud, the answer",
    (
        _TOPIC,
        Option("--minutes", "N", "how long it is to be; 20 when left out"),
        Option("-o", "FILE", "the file to make: .mp3, .opus, .flac or .wav"),
        Option("--seed", "S", "another number gives other questions; the same gives the same"),
        Option("--learner", "NAME", "begin with what is due to be asked of a learner"),
        Option("--script", "", "print what would be said"),
        *_MANNER,
        Option("--stale", "DIR", "name the files in a folder that a later revision has outdated"),
        Option("--briefing", "", "make a file of a briefing; not possible yet"),
        *_KNOWING,
        HELP,
    ),
)
COMMANDS = (CONVERSATION, ASK, CHECK, PROGRESS, REHEARSE, CLASS, SHEET, AUDIO)
ENDINGS = {
    "": (
        "From the environment: DOWNLOCK_KNOWLEDGE and DOWNLOCK_TYPE name the folder and the type where no\n"
        "option does, DOWNLOCK_HOME the folder for your own files, DOWNLOCK_CACHE one for what may be\n"
        "thrown away, DOWNLOCK_TODAY a day to take for today; NO_COLOR turns colour off."
    ),
    ASK.name: (
        "After -- every word belongs to the question. A single question ends with 0 answered, 3 something\n"
        "is missing, 4 not known, 2 wrongly written, 1 broken knowledge, 5 the answer could not be written;\n"
        "a batch ends with 0 whatever its answers."
    ),
    CHECK.name: "Ends with 0 when nothing is wrong, with 1 when there is a problem.",
    REHEARSE.name: (
        "The record lies in the folder for your own files. DOWNLOCK_TODAY=2026-12-01 in the environment\n"
        "lets it be that day, to try weeks ahead.\n"
        'With --mark a line is {"question": ..., "answer": ...}; its mark is right, partly, wrong or missed,\n'
        "or unmarked where nothing loaded answers the question or the line cannot be read.\n"
        "Ends with 0 whatever the marks, 2 wrongly written, 1 broken knowledge."
    ),
    CLASS.name: (
        "Every step is kept at once: after a crash the same command goes on from where it stood. Where no\n"
        "file is named the report goes into the folder for your own files. Ends with 0 done, 2 wrongly\n"
        "written, 1 own questions or a set that cannot be used, or broken knowledge, 5 what could not be\n"
        "written."
    ),
    PROGRESS.name: (
        "The record lies in the folder for your own files. Ends with 0 done, 2 wrongly written, 1 a file that\n"
        "cannot be taken in or broken knowledge, 5 what could not be written."
    ),
    SHEET.name: (
        "The key goes into a file beside the questions, FILE-key. Ends with 0 done, 2 wrongly written, 1 own\n"
        "questions or a set that cannot be used, or broken knowledge, 5 what could not be written."
    ),
    AUDIO.name: (
        "Stopped in the middle, the same command goes on where it was. Ends with 0 done, 2 wrongly\n"
        "written, 1 no voice, broken knowledge or, with --stale, a file that is outdated, 5 what could not\n"
        "be written, 130 stopped."
    ),
}
"""What the help of each command ends with."""


def parse(arguments: Sequence[str]) -> Parsed:
    """Return what was written after the program's name. Raises UsageProblem."""
    named = bool(arguments) and (not arguments[0].startswith("-") or arguments[0] == "-")
    command = _command(arguments[0]) if named else CONVERSATION
    parsed = _read(command, arguments[1:] if named else arguments)
    if not parsed.has("--help") and not parsed.has("--version"):
        _check_words(parsed)
        _check_values(parsed)
    return parsed


def help_text(command: str) -> str:
    """Return how a command is written, with every option that it takes."""
    chosen = next(each for each in COMMANDS if each.name == command)
    lines = [f"{chosen.usage}", f"  {chosen.about}", ""]
    if not command:
        lines += [line for other in COMMANDS[1:] for line in (other.usage, f"  {other.about}")]
        lines.append("")
    size = max(len(_written(option)) for option in chosen.options)
    lines += [f"  {_written(option):<{size}}  {option.about}" for option in chosen.options]
    return "\n".join([*lines, "", ENDINGS[command]])


def nearest(name: str, known: Iterable[str]) -> str:
    """Return the known name most like a mistaken one, or nothing."""
    import difflib  # only ever needed once something is wrong

    found = difflib.get_close_matches(name.lower(), list(known), n=1, cutoff=0.5)
    return found[0] if found else ""


def unknown(what: str, name: str, known: Sequence[str]) -> UsageProblem:
    """Return the problem of a name that does not exist, with the one meant or else those that exist."""
    meant = nearest(name, known)
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
            raise unknown("option", name, [each for each in known if each.startswith("--")])
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
        raise UsageProblem(f"{option.name} takes a value: {_written(option)}")
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
    if parsed.has("--talk-key") and not parsed.has("--hands-free"):
        raise UsageProblem("--talk-key goes with --hands-free")
    if parsed.has("--conversation") and not parsed.has("--batch"):
        raise UsageProblem("--conversation goes with --batch FILE")
    for name in _NEVER_EMPTY:
        both = name in _TOGETHER and _TOGETHER.issubset(parsed.values)
        if parsed.values.get(name, "some") == "" and not both:
            raise UsageProblem(f"{name} takes a value")
    width = parsed.values.get("--width")
    fits = width is None or (
        width.isascii() and width.isdigit() and len(width) < 6 and int(width) >= NARROWEST
    )
    if not fits:
        raise UsageProblem(
            f"--width takes a number of columns, {NARROWEST} or more, not {clean(width or '')}"
        )


def _check_manner(parsed: Parsed) -> None:
    """Raise UsageProblem for a way of speaking where nothing is to be said; a conversation may turn its voice on."""
    if parsed.command not in (ASK.name, CLASS.name) or parsed.has("--speak") or parsed.has("--ssml"):
        return
    for option in _MANNER:
        if parsed.has(option.name):
            also = " or --ssml" if parsed.command == ASK.name else ""
            raise UsageProblem(f"{option.name} goes with --speak{also}")


def _written(option: Option) -> str:
    return f"{option.name} {option.value}".strip()
