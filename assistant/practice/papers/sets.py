"""A set of questions kept in a file, so that every class is asked the same.

The file holds the texts and keys as they were, with the seed and the revisions they rest on. When it is opened again,
each question is held against the knowledge of now: what is answered otherwise since is named, and not asked blindly
(`renewing`).
"""

from __future__ import annotations

from typing import Any

from assistant.answering.answer import Citation
from assistant.frozen import NamedTuple
from assistant.practice.making.proving import answer_to, differences
from assistant.practice.making.question import CHANGE, FORMS, LOSS, OWN, Expected, Key, Question
from assistant.resolving.knowing import Knowledge

MARK = "downlock questions"
VERSION = 1


class QuestionSet(NamedTuple):
    """Questions with where they come from: the type's id, the seed, (document, revision) that they rest on."""

    type_id: str
    seed: str
    questions: tuple[Question, ...]
    documents: tuple[tuple[str, str], ...]


class NoSet(ValueError):
    """A file that holds no set of questions; the message says what is wrong."""


def set_of(questions: tuple[Question, ...], seed: str, know: Knowledge) -> QuestionSet:
    """Return questions as a set, with the revisions of the documents that they cite."""
    names = sorted({source.document for question in questions for source in question.sources})
    revisions = tuple((name, know.base.documents[name].revision) for name in names if name in know.base.documents)
    return QuestionSet(know.base.type_info.id, seed, questions, revisions)


def written(chosen: QuestionSet) -> str:
    """Return a set as the text of its file."""
    import json

    plain = {
        "file": MARK, "version": VERSION, "type": chosen.type_id, "seed": chosen.seed,
        "documents": dict(chosen.documents), "questions": [_plain(question) for question in chosen.questions],
    }  # fmt: skip
    return json.dumps(plain, ensure_ascii=False, indent=1) + "\n"


def read_set(text: str) -> QuestionSet:
    """Return the set in a file's text. Raises NoSet."""
    import json

    try:
        plain = json.loads(text)
    except (ValueError, RecursionError):
        raise NoSet("it is not JSON") from None
    if not isinstance(plain, dict) or plain.get("file") != MARK:
        raise NoSet("it holds no set of questions")
    if plain.get("version") != VERSION:
        raise NoSet("it was written by another version of the program")
    try:
        questions = tuple(map(_question, plain["questions"]))
        documents = tuple((_text(name), _text(revision)) for name, revision in plain["documents"].items())
        return QuestionSet(_text(plain["type"]), _text(plain["seed"]), questions, documents)
    except (KeyError, TypeError, ValueError, AttributeError) as error:
        raise NoSet(f"a question in it is not whole ({error})") from None


def changed(chosen: QuestionSet, know: Knowledge) -> tuple[str, ...]:
    """Return in words what the knowledge of now answers otherwise than the set's keys; nothing when all hold."""
    if chosen.type_id != know.base.type_info.id:
        return (f"the set is about another type, {chosen.type_id}",)
    return tuple(
        f"question {place + 1} is answered otherwise now: {chosen.questions[place].text}"
        for place in sorted(stale(chosen, know))
    )


def stale(chosen: QuestionSet, know: Knowledge) -> frozenset[int]:
    """Return the places of the questions that the knowledge of now answers otherwise than their keys."""
    return frozenset(
        place for place, question in enumerate(chosen.questions) if question.form != OWN and not _holds(question, know)
    )


def _holds(question: Question, know: Knowledge) -> bool:
    answer = answer_to(question.text, question.variant, know)
    entry = answer.entry if question.form in (CHANGE, LOSS) else question.entry
    return answer.text == question.key.says or not differences(question.key, entry, answer, know)


def _plain(question: Question) -> dict[str, Any]:
    key = question.key._asdict() | {"values": [value._asdict() for value in question.key.values]}
    return question._asdict() | {"key": key, "sources": [source._asdict() for source in question.sources]}


def _question(plain: dict[str, Any]) -> Question:
    key = plain["key"]
    sets = tuple(tuple((_text(name), _text(value)) for name, value in each) for each in key["sets"])
    held = Key(
        _text(key["outcome"]), _text(key["says"]), tuple(map(_expected, key["values"])), _texts(key["points"]),
        key["ordered"] is True, _text(key["verdict"]),
        tuple((_text(name), _text(value)) for name, value in key["states"]), sets, _text(key["formerly"]),
    )  # fmt: skip
    if plain["form"] not in FORMS:
        raise ValueError("its form is not known")
    sources = tuple(Citation(*(_text(each[name]) for name in Citation._fields)) for each in plain["sources"])
    return Question(
        _text(plain["text"]), _text(plain["spoken"]), plain["form"], _text(plain["entry"]), _text(plain["section"]),
        _text(plain["variant"]), held, sources, _text(plain["hint"]), int(plain["difficulty"]),
    )  # fmt: skip


def _expected(plain: dict[str, Any]) -> Expected:
    value, tolerance = float(plain["value"]), float(plain["tolerance"])
    if value != value or not 0 <= tolerance < 1:
        raise ValueError("a value in it is no number")
    return Expected(_text(plain["quantity"]), value, _text(plain["unit"]), tolerance)


def _texts(plain: list[Any]) -> tuple[str, ...]:
    return tuple(map(_text, plain))


def _text(plain: Any) -> str:
    if not isinstance(plain, str):
        raise TypeError("a text is missing")
    return plain
