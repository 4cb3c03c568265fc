"""The labels that show in a state, where a question asks for them besides what the state tables give, and those that
do not: whoever says of a light that it comes on, which does not in that state, has that state wrong.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Any

from assistant.practice.marking.finding.elements import named_elements
from assistant.practice.marking.finding.found import Held
from assistant.practice.marking.finding.polarity import denied, subjects_denied
from assistant.practice.marking.finding.rivals import is_put_off
from assistant.practice.marking.of_results.outcomes import table_results
from assistant.practice.marking.points import Element, Need, Point, State
from assistant.practice.marking.questions.asked import Asked, ask
from assistant.practice.marking.questions.parts import head_of, parts_of
from assistant.practice.marking.questions.phrased import label_in
from assistant.practice.marking.reading.said import Said
from assistant.practice.marking.reading.wording import word_set
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge
from assistant.resolving.labels_told import label_holds
from assistant.understanding.mentions import Mention

_SHOWS = re.compile(
    r"(?:and )?(?:does|will|would|do|is) (?:the )?(?P<label>[A-Z][A-Z -]+[A-Z])\b(?: \w+)? "
    r"(?:show|come|appear|light|lit|shown|displayed|illuminate)"
)
_NOT = re.compile(r"\b(?:does|is|will) not\b|\bnever\b")


def labels_shown(found: tuple[Asked, ...], text: str, know: Knowledge) -> list[Point]:
    """Return for each label asked about whether it shows, as far as a statement tells it of the state given."""
    if len(found) != 1 or not isinstance(found[0].result, r.TableResult):
        return []
    parts = parts_of(text)
    made = []
    for part in parts:
        asked = _SHOWS.match(part)
        told = ask(f"{head_of(text, parts)}. {part.removeprefix('and ')}", know) if asked else None
        if asked is None or told is None or not isinstance(told[1].result, r.FactResult):
            continue
        says = told[1].result.fact.says
        subject = know.phrase(asked["label"]).concepts
        if subject & know.phrase(says).concepts:
            there = _NOT.search(says.split(",")[0]) is None
            made.append(Point(f"{asked['label']} {'shows' if there else 'does not show'}", state=State(subject, there)))
    return made


def labels_told(found: tuple[Asked, ...], text: str, know: Knowledge) -> list[Point]:
    """Return a point for each label that is told to show in the state of a question which asks what does."""
    facts = [fact for one in found for result in table_results(one.result) for fact in getattr(result, "labels", ())]
    labels = dict.fromkeys(label_in(fact.says) for fact in facts if label_in(fact.says))
    return [Point(label, (), _by_name(label, know), kept=True) for label in labels if label not in text]


def _by_name(label: str, know: Knowledge) -> tuple[Element, ...]:
    """Return a label as one name: the words of "ANTI-SKID LOST" say it together alone."""
    own = know.phrase(label).concepts & _labels(know)
    return (Element(own, (label.lower(),), 3.0),) if own else named_elements(label, know)[:1]


def unshown(found: tuple[Asked, ...], know: Knowledge) -> Iterator[str]:
    """Yield the concepts of the labels that do not show in the state of a question."""
    for one in found:
        given: Any = [c for c in one.question.conditions if not c.is_result]
        if given and any(True for _ in table_results(one.result)):
            yield from (c for c in know.states.shows if not label_holds(c, given, know))
            yield from (c for c in _labels(know) if c not in know.states.shows and c not in know.lexicon.ends)


def _labels(know: Knowledge) -> frozenset[str]:
    """Return the concepts of the labels of lights and memos: names in capitals that no switch has."""
    terms = know.base.terms.values()
    return frozenset(t.id for t in terms if t.show.isupper() and " " in t.show and not t.sets)


def falsely_shown(held: Sequence[Held], need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return the labels that an answer has come on in a state in which they do not, or in another colour."""
    if not any(h.share for h in held):
        return other_label(need, said, know)
    named = _named(need, said, know)
    shown = [m.text for m in named if other_label(need, said, know) or _shows_here(m, need, said, know)]
    return [*shown, *_coloured(need, said, know)]


def other_label(need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return the labels that an answer names in place of the one that is asked for."""
    asked = _asked(need, know)
    if not asked or any(asked & m.concepts for m in said.reading.mentions):
        return []
    return [m.text for m in _named(need, said, know)]


def _asked(need: Need, know: Knowledge) -> frozenset[str]:
    """Return the concepts of the labels that are asked for."""
    told = frozenset(c for p in need.points for e in p.elements if p.text.isupper() for c in e.concepts)
    return told & _labels(know)


def _named(need: Need, said: Said, know: Knowledge) -> list[Mention]:
    """Return where an answer names a label that neither the question nor the full answer knows, and means it."""
    words = said.reading.words
    off = denied(words, said.reading) | subjects_denied(words, said.reading)
    named = [m for m in said.reading.mentions if m.concepts & (_labels(know) | need.unshown) - need.known]
    return [m for m in named if not off.issuperset(m.taken) and not is_put_off(m.start, said, need, m.end - 1)]


def _coloured(need: Need, said: Said, know: Knowledge) -> Iterator[str]:
    """Yield the colours in which a label is said to show that is asked for, and shows in another."""
    known = need.known
    families = know.lexicon.families
    if not any(families.get(c) == _COLOUR for c in known):
        return
    for mention in (m for m in said.reading.mentions if m.concepts & _asked(need, know)):
        for i in (*range(max(0, mention.start - _NEAR), mention.start), *range(mention.end, mention.end + _NEAR)):
            here = said.concepts[i] if i < len(said.words) else frozenset()
            if any(families.get(c) == _COLOUR for c in here) and here.isdisjoint(known):
                yield said.reading.words[i]


_COLOUR = "colour"


def _shows_here(mention: Mention, need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether a label that does not show is said to: what no state brings up only where a word says so."""
    if not mention.concepts & need.unshown:
        return False
    words = said.reading.words
    near = (*words[max(0, mention.start - _NEAR) : mention.start], *words[mention.end : mention.end + _NEAR])
    return bool(mention.concepts & know.states.shows.keys()) or not _SHOWING.isdisjoint(near)


_NEAR = 3
_SHOWING = word_set("shows show showing lit lights light comes come appears memo caption message get gets on warning")
