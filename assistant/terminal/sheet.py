"""`sheet quiz`: a paper of questions and, apart from it, the key with paragraphs: as text, a page to print, or QTI."""

from __future__ import annotations

import os
import sys

from assistant.conversation.opening import Knowledge
from assistant.frozen import NamedTuple
from assistant.practice.making import Question, UnknownTopic, make_questions
from assistant.practice.making.own import read_own
from assistant.practice.making.telling import none_told_before
from assistant.practice.marking.mark import Marker
from assistant.practice.marking.own_held import contradicted
from assistant.practice.papers.page import SIZES, key_page, questions_page
from assistant.practice.papers.paper import Paper, key_text, questions_text
from assistant.practice.papers.qti import package
from assistant.practice.papers.renewing import renewed
from assistant.practice.papers.sets import NoSet, QuestionSet, read_set, set_of, written
from assistant.rendering.text import clean
from assistant.terminal.arguments import unknown
from assistant.terminal.options import Parsed, UsageProblem
from assistant.terminal.screen import complain, prepare, remark, screen_for
from assistant.terminal.session import Session, open_session

SHEETS = ("quiz",)
DEFAULT_NUMBER, MOST = 10, 200
_LARGEST_SET = 5_000_000
"""Bytes of a saved set that are read."""
_TEXT_WIDTH = 80
_BROKEN, _NOT_WRITTEN = 1, 5


class Output(NamedTuple):
    """A file to be written: its path, its content, and what it is called when it is said to be written."""

    path: str
    content: bytes
    called: str


def sheet(parsed: Parsed) -> int:
    """Write what was asked for; return the exit code. Raises UsageProblem and BrokenKnowledge."""
    _check(parsed)
    session = open_session(parsed, learnt=True)
    know = session.knowledge
    chosen = opened_set(parsed.values["--set"], know) if "--set" in parsed.values else _made(parsed, session)
    if isinstance(chosen, int):
        return chosen
    paper = Paper(_title(parsed, chosen, know), know.deference, chosen.seed, chosen.questions)
    prepare(sys.stdout, json=False)
    screen = screen_for(parsed, sys.stdout)
    outputs = _outputs(parsed, paper, know)
    if "--save" in parsed.values:
        outputs.append(Output(set_file(parsed), written(chosen).encode("utf-8"), "the set"))
    for output in outputs:
        try:
            _write(output)
        except OSError as error:
            complain(clean(f"cannot write {output.path}: {(error.strerror or 'it cannot be opened').lower()}"))
            return _NOT_WRITTEN
        screen.say(clean(f"written: {output.path} ({output.called})"))
    if "-o" not in parsed.values:
        asked = questions_text(paper, screen.width, closing=False)
        screen.say(f"{asked}\n{key_text(paper, screen.width)}".rstrip())
    return 0


def _check(parsed: Parsed) -> None:
    if not parsed.words:
        raise UsageProblem("name the sheet: downlock sheet quiz")
    if parsed.words[0] not in SHEETS:
        raise unknown("sheet", parsed.words[0], SHEETS)
    if len(parsed.words) > 1:
        raise UsageProblem(f"{clean(parsed.words[1])} has no place here; a topic is named with --topic")
    for name in ("--topic", "--number", "--seed", "--own", "--variant"):
        if "--set" in parsed.values and name in parsed.values:
            raise UsageProblem(f"{name} does not go with --set, which holds its questions already")
    if parsed.values.get("--paper", "a4").lower() not in SIZES:
        raise unknown("paper", parsed.values["--paper"], tuple(SIZES))
    if "--save" in parsed.values:
        set_file(parsed)
    ending = _ending(parsed.values["-o"]) if "-o" in parsed.values else ".txt"
    if ending not in (".txt", ".html", ".zip"):
        raise UsageProblem(f"-o takes a file that ends in .txt, .html or .zip, not {clean(ending or 'none')}")


def _number(parsed: Parsed) -> int:
    text = parsed.values.get("--number", str(DEFAULT_NUMBER))
    if not (text.isascii() and text.isdigit() and 1 <= int(text[:6]) <= MOST):
        raise UsageProblem(f"--number takes a number from 1 to {MOST}, not {clean(text)}")
    return int(text)


def _made(parsed: Parsed, session: Session) -> QuestionSet | int:
    """Return new questions as a set, or an exit code when an own question is wrong."""
    know = session.knowledge
    own = own_questions(parsed, know)
    if isinstance(own, int):
        return own
    number, seed = _number(parsed), parsed.values.get("--seed") or _fresh_seed()
    topics = [topic for topic in parsed.values.get("--topic", "").split(",") if topic.strip()]
    try:
        made = make_questions(know, seed, max(0, number - len(own)), topics, variant=session.variant)
    except UnknownTopic as problem:
        raise UsageProblem(str(problem)) from None
    questions = none_told_before((*made, *own[:number]))
    if len(questions) < number:
        complain(f"there are only {len(questions)} questions that differ on this; all of them are taken")
    return set_of(questions, seed, know)


def own_questions(parsed: Parsed, know: Knowledge) -> tuple[Question, ...] | int:
    """Return the instructor's own questions, or an exit code where one is wrong; what the books contradict is told."""
    if not parsed.has("--own"):
        return ()
    path = parsed.values["--own"]
    own, problems = read_own(path, know)
    for problem in problems:
        sys.stderr.write(f"{clean(str(problem))}\n")
    if problems:
        complain(f"the questions in {clean(path)} have problems ({len(problems)})")
        return _BROKEN
    for line in contradicted(own, Marker(know)):
        remark(f"{clean(path)}: {clean(line)} It is asked as you wrote it.", parsed.width)
    return own


def set_file(parsed: Parsed) -> str:
    """Return where the set is to be saved. Raises UsageProblem for a file that would not be what its name says."""
    path = parsed.values["--save"]
    if _ending(path) not in ("", ".json"):
        raise UsageProblem(f"--save writes JSON: name a file that ends in .json, not {clean(_ending(path))}")
    return path


def _fresh_seed() -> str:
    from random import SystemRandom

    return str(SystemRandom().randrange(100_000, 1_000_000))


def opened_set(path: str, know: Knowledge) -> QuestionSet | int:
    """Return a saved set as it may be asked today, with what has changed told; an exit code where it cannot be."""
    try:
        with open(path, encoding="utf-8") as file:
            chosen = read_set(file.read(_LARGEST_SET))
    except OSError as error:
        raise UsageProblem(f"cannot read {path}: {error.strerror or 'unreadable'}") from None
    except (NoSet, UnicodeDecodeError) as problem:
        reason = str(problem) if isinstance(problem, NoSet) else "it is not text in UTF-8"
        complain(clean(f"{path} cannot be used: {reason}"))
        return _BROKEN
    if chosen.type_id != know.base.type_info.id:
        complain(clean(f"{path} cannot be used: the set is about another type, {chosen.type_id}"))
        return _BROKEN
    today, notes = renewed(chosen, know)
    for line in notes:
        remark(f"{clean(path)}: {clean(line)}")
    if not today.questions:
        complain("no question of the set can be asked any more: make one anew, with --save")
        return _BROKEN
    return today


def _title(parsed: Parsed, chosen: QuestionSet, know: Knowledge) -> str:
    topic = parsed.values.get("--topic", "").strip()
    count = len(chosen.questions)
    variant = next((question.variant for question in chosen.questions if question.variant), know.variants[0])
    name = know.type_name if variant == know.variants[0] else f"{know.type_name}, {know.base.variants[variant].show}"
    return f"{name}: {count} question{'s' * (count != 1)}" + (f" on {topic}" if topic else "")


def _ending(path: str) -> str:
    return os.path.splitext(path)[1].lower()


def _outputs(parsed: Parsed, paper: Paper, know: Knowledge) -> list[Output]:
    path = parsed.values.get("-o")
    if path is None:
        return []
    if _ending(path) == ".zip":
        return [Output(path, package(paper, know.units), "a QTI 3.0 package")]
    stem, ending = os.path.splitext(path)
    if ending.lower() == ".html":
        size = parsed.values.get("--paper", "a4").lower()
        texts = questions_page(paper, size), key_page(paper, size)
    else:
        width = parsed.width or _TEXT_WIDTH
        texts = questions_text(paper, width), key_text(paper, width)
    key = f"{stem}-key{ending}"
    _spare(key)
    return [Output(path, texts[0].encode("utf-8"), "the questions"), Output(key, texts[1].encode("utf-8"), "the key")]


def _spare(path: str) -> None:
    """Raise UsageProblem where a file that is no key of ours stands at the path of the key."""
    try:
        with open(path, "rb") as file:
            begins = file.read(600)
    except OSError:
        return
    if b"Key to: " not in begins:
        raise UsageProblem(f"{path} is there already and is no key of a paper; name another file with -o")


def _write(output: Output) -> None:
    """Write a file whole or not at all. Raises OSError."""
    beside = f"{output.path}.{os.getpid()}"
    try:
        with open(beside, "wb") as file:
            file.write(output.content)
        os.replace(beside, output.path)
    except OSError:
        if os.path.exists(beside):
            os.remove(beside)
        raise
