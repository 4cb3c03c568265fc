"""Questions on statements: where, why, what it means, when it shows, who, and what else the book says."""

from __future__ import annotations

import re
from collections.abc import Iterator

from assistant.knowledge.records import NOT_ASKED, Fact
from assistant.practice.making.drafting import Desk, asked_wordings, expected
from assistant.practice.making.question import FACT, MEANING, PLACE, REASON, SHOWN, WHO, Draft, Key
from assistant.practice.making.wording import GOOD

_LEAST, _SHARE = 5, 0.7
"""Words at least with which a statement is begun, and the share of it at most."""
_JOINTS = frozenset((
    "is", "are", "if", "when", "below", "above", "because", "only", "than", "until", "while",
    "before", "after", "must", "need", "needs",
))  # fmt: skip
"""Words after which a beginning may break off: what follows is what there is to know."""
_BEGINNINGS, _TOPICS = 6, 12
"""Beginnings and headings that are tried."""
_OPENINGS = (
    (r"(?:Say |State )?where\b|[^:]+: where\b", PLACE), (r"Why\b", REASON), (r"Who\b", WHO),
    (r".*\bmean[st]?\b", MEANING), (r"(?:When do(?:es)?|Say when)\b.*\bshows?\b", SHOWN),
)  # fmt: skip
"""In which form a whole question asks, by how it begins."""
_ARTICLES = frozenset(("the", "a", "an"))
_TELLING = frozenset((
    "no", "not", "none", "nothing", "cannot", "do", "works", "they", "it", "any", "all", "only", "both",
))  # fmt: skip
"""Words that say too little to begin with, or all that there is to know."""
_LISTED = 3
"""Points from which on a statement is a list."""
_SHORT = 3
"""Words of a point up to which its first one would be half of it."""
_FIRST = 3
"""Ways of asking among which one by "who" tells that the statement is of a person."""


def fact_drafts(name: str, desk: Desk) -> Iterator[Draft]:
    """Yield a draft for each form in which a statement may be asked for.

    Sentences come first, then the statement's own title, which was written to be read; a heading only after these, and
    last the statement's beginning.
    """
    record: Fact = desk.record(name)
    if record.quiz:
        yield from _quizzed(record, desk)
        return
    asked = [found for ask in record.asks if (found := desk.wording.asked(ask)) and found.natural]
    if not any(ask.startswith("who ") for ask in record.asks[:_FIRST]):
        asked = [each for each in asked if each.form != WHO]
    sentences = {each.form for each in asked if each.rank == GOOD}
    ordered = any(each.ordered for each in asked)
    titled = _titled(record, desk)
    spare = [
        *asked_wordings(record.asks, desk, best_only=True), *(titled[1] if titled else ()),
        *asked_wordings(record.asks, desk), *_begun(record, desk),
    ]  # fmt: skip
    forms = sentences or {titled[0] if titled else FACT}
    for form in sorted(forms, key=lambda each: (each == FACT, each)):
        wordings = asked_wordings(record.asks, desk, (form,), best_only=True)
        key, hint = _key(record, ordered), _hint(record, desk)
        yield Draft(form, name, record.topic, key, (*wordings, *spare), hint, _difficulty(record))


def _titled(record: Fact, desk: Desk) -> tuple[str, list[tuple[str, ...]]] | None:
    """Return the form in which a record's title asks, and sentences from it: for a figure, what it is comes first.

    Of a figure nobody is asked what the book says: there is no end to that.
    """
    if not record.title:
        return None
    form, sentences = desk.wording.titled(record.title)
    if record.values and form == FACT and desk.wording.is_measure(record.title):
        sentences = [desk.wording.sentences("measure", of=record.title.removeprefix("the ")), *sentences]
    return form, sentences


def _difficulty(record: Fact) -> int:
    """Return how hard a statement is to tell: a list of several things is more than plain recall."""
    return 2 if len(record.points) >= _LISTED else 1


def _quizzed(record: Fact, desk: Desk) -> Iterator[Draft]:
    """Yield the record's own questions, a draft for each form in which they ask."""
    texts: dict[str, tuple[str, ...]] = {}
    for text in record.quiz:
        if text != NOT_ASKED:
            form = form_of(text)
            texts[form] = (*texts.get(form, ()), text)
    for form, wordings in texts.items():
        key, hint = _key(record, False), _hint(record, desk)
        yield Draft(form, record.id, record.topic, key, (wordings,), hint, _difficulty(record))


def form_of(question: str) -> str:
    """Return in which form a whole question asks."""
    return next((form for opening, form in _OPENINGS if re.match(opening, question, re.IGNORECASE)), FACT)


def _begun(record: Fact, desk: Desk) -> Iterator[tuple[str, ...]]:
    """Yield questions that begin the statement itself and ask how it goes on, alone and under a heading."""
    words = re.split(r"(?<=[a-z0-9)])[.;]\s", record.says)[0].rstrip(".").split()
    cuts = [i for i in range(_LEAST, len(words) - 1) if i <= _SHARE * len(words) and not _within(words, i)]
    cuts = [i for i in reversed(cuts) if words[i - 1].lower().rstrip(",") in _JOINTS]
    begun = [" ".join(words[:cut]).rstrip(":,;") for cut in cuts]
    begun = [each for each in begun if not set(each) & set("“”()=")][:_BEGINNINGS]
    yield from (desk.wording.sentences("begun", of=each) for each in begun)
    topics = dict.fromkeys(topic for ask in record.asks if (topic := desk.wording.topic(ask)))
    for topic in list(topics)[:_TOPICS]:
        for each in begun:
            yield desk.wording.sentences("begun_on", topic=topic, of=each)


def _within(words: list[str], cut: int) -> bool:
    """Whether a cut falls within a caption or before the number of a name."""
    before, after = words[cut - 1], words[cut]
    return (before.isupper() and after.isupper()) or (before[:1].isupper() and after[:1].isdigit())


def _key(record: Fact, ordered: bool) -> Key:
    values = tuple(expected(value) for value in record.values)
    return Key(says=record.says, values=values, points=record.points, ordered=ordered and len(record.points) > 1)


def _hint(record: Fact, desk: Desk) -> str:
    """Return how many things there are to say and how the first begins, where that does not give it away."""
    many = len(record.points) > 1
    asked = {word.lower() for text in (record.title, *record.quiz) for word in re.findall(r"\w+", text)}
    begins = _beginning(record.points[0], many, asked) if record.points else ""
    shape = ("points_begun" if begins else "points") if many else "point" if begins else "paragraph"
    return desk.hint(shape, record.sources, n=len(record.points), begins=begins)


def _beginning(point: str, many: bool, asked: set[str]) -> str:
    """Return how a point begins, as a help: its first word but for an article, or of a short one the first letter.

    Nothing where that would be the figure, the name or the yes or no that is asked for, or a word of the question.
    """
    words = point.split()
    if len(words) > 1 and words[0].lower() in _ARTICLES:
        words = words[1:]
    first = words[0]
    if first[0].isdigit() or first.lower() in _TELLING | asked or (first.isupper() and not many):
        return ""
    return first if len(words) > (1 if many else _SHORT) else first[0]
