"""What may be written after `downlock`: one table a command, from which both the reader and the help follow."""

from __future__ import annotations

from assistant.frozen import NamedTuple
from assistant.rendering.text import NARROWEST

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
MANNER = (
    Option("--pace", "N", "words a minute, 80 to 320"),
    Option("--voice", "NAME", "another voice of this machine"),
    Option("--human", "", "the more human voice, where the extra human-voice is installed"),
    Option("--digits", "", "say numbers digit by digit, as on the radio"),
    Option("--usual-voice", "", "leave out what was set of the voice in a conversation"),
)
"""How it is to be said."""
CONVERSATION = Command(
    "",
    f"{PROGRAM} [options]",
    "open the conversation: ask, and ask on",
    (
        *_KNOWING,
        _SPEAK,
        *MANNER,
        Option("--hands-free", "", "talk: it listens, answers aloud, and listens again"),
        Option("--talk-key", "", "with --hands-free: listen only once a key is pressed"),
        Option("--learner", "NAME", "with --hands-free: who rehearses when you say quiz me"),
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
        *MANNER,
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
        Option("--speak", "", "say what is asked and marked aloud too; a key stops it"),
        Option("--hands-free", "", "rehearse by ear: it asks aloud and listens; a silence marks nothing"),
        Option("--talk-key", "", "with --hands-free: listen only once a key is pressed"),
        *MANNER,
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
        Option("--difficulty", "N", "1 recall, 2 lists and applied too, 3 no recall, long sums"),
        Option("--think", "N", "seconds to think before somebody is named; else Enter names"),
        Option("--title", "TEXT", "what the class and its report are called"),
        Option("--seed", "S", "what gives the same questions again"),
        _OWN,
        _SAVE,
        Option("--set", "FILE", "ask a set that was kept"),
        Option("--speak", "", "say the questions and the names aloud too"),
        *MANNER,
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
        *MANNER,
        Option("--stale", "DIR", "name the files in a folder that a later revision has outdated"),
        Option("--briefing", "", "make a file of a briefing; not possible yet"),
        *_KNOWING,
        HELP,
    ),
)
COMMANDS = (CONVERSATION, ASK, CHECK, PROGRESS, REHEARSE, CLASS, SHEET, AUDIO)


def written(option: Option) -> str:
    """Return an option as it is written, with what its value is called."""
    return f"{option.name} {option.value}".strip()
