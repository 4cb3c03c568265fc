"""A turn that names a thing by its number or its place among those spoken of, read with the thing's own name.

"Number two has failed as well", with System 1 lost; "the other one goes too"; "how long before that one bites", after a
setting; "switch back on, and System 1 gone", after one switch was put off.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from assistant.conversation.context import Context
from assistant.conversation.on_states.in_scenario import told_table
from assistant.conversation.on_states.label_got import label_got
from assistant.conversation.reading_turns.readings import OPEN_WORDS, question_of
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import FactResult, LimitResult, ModelResult
from assistant.understanding.binding import value_meant
from assistant.understanding.mentions import Mention
from assistant.understanding.states import opens_turn

_LONG, _BRIEF = 14, 8
_NUMBERED = r"^(.+) (\d)$"
FIGURES = {"one": "1", "two": "2", "three": "3", "four": "4", "first": "1", "second": "2", "third": "3"}
_CARDINALS = frozenset({"one", "two", "three", "four", "1", "2", "3", "4"})
_NUMBER = frozenset({"number", "no", "num", "nr"})
_NOUNS = frozenset({"one", "system"})
_BEFORE = frozenset({
    "and", "now", "then", "what", "if", "about", "so", "with", "lose", "losing", "lost", "say", "suppose", "but", "ok",
    "how", "next", "plus", "also", "without", "minus", "lets", "meanwhile", "later", "right", ",", "i", "we", "you",
})  # fmt: skip
_AFTER = frozenset({
    "fails", "failed", "goes", "gone", "went", "quits", "dies", "died", "drops", "is", "has", "as", "too", "also",
    "lost", "out", "now", "fail", "go", "failing", "packs", "s", "drains", "dropped", "comes", "came", "back", "?",
    "what", "which", "do", "have", "am", ",", "runs", "run", "does",
})  # fmt: skip
_RUNNING = frozenset({"on", "off", "from", "without", "by"})
"""Words before the number of a thing that ends a turn: "what runs on one"."""
_OPENING = _BEFORE | {
    "it", "s", "is", "its", "no", "wait", "sorry", "actually", "put", "that", "was", "been", "has", "not", "then",
}  # fmt: skip
_OPENING_WORDS = 7
_BEFORE_KIND = _BEFORE | {"the", "my", "our", "that", "put", "with", "turn", "set", "his", "her"}
_LINKING = frozenset({"is", "s", "goes", "comes", "back", "now", "was", "been", "has", "gets", "put", "again", "went"})
_AFTER_STATE = frozenset({"again", "now", "then"})
_POINTING = frozenset({"that", "this"})
_HARD = frozenset({"hard", "strongly", "target", "deceleration", "decelerate", "fiercely"})
_SWITCHED = frozenset({"on", "off", "running"})
_IT = frozenset({"it", "its"})


def with_names(alone: Question, context: Context, knowledge: Knowledge) -> Question:
    """Return a turn with the names of the things that it only numbers or points at, else as it is."""
    words = list(alone.reading.words)
    if context.asked is None or len(words) > 2 * _LONG:
        return alone
    found = None if len(words) > _LONG else _named_again(alone, words, context, knowledge)
    found = found or label_got(words, context, knowledge)
    if found is None:
        return alone
    at, end, name = found
    text = " ".join((*words[:at], name, *words[end:]))
    return question_of(text, knowledge, context.variant).with_text(alone.reading.text)


def _named_again(
    alone: Question, words: list[str], context: Context, knowledge: Knowledge
) -> tuple[int, int, str] | None:
    """Return where a short turn numbers or points at a thing, and its name."""
    found = _by_number(alone, context, knowledge) or _that_one(words, context, knowledge)
    found = found or _switched(words, context, knowledge)
    return found or _by_kind(alone, context, knowledge) or _unnamed(alone, context, knowledge)


def _by_number(alone: Question, context: Context, knowledge: Knowledge) -> tuple[int, int, str] | None:
    """Return where a turn numbers one of some numbered things, of which another's state was given, and its name."""
    words = list(alone.reading.words)
    if FIGURES.keys().isdisjoint(words) and not {"1", "2", "other"}.intersection(words):
        return None
    numbered = tuple(_numbered(context, knowledge)) or tuple(_of_a_kind(context, knowledge))
    for name, number in numbered:
        if name in words or f"{name}s" in words or any(w in words for w in name.split()):
            return None  # named in full
        for at, end, said in _said_numbers(words, number):
            other = f"{name} {said}"
            if _in_a_name(at, end, alone, knowledge):
                return None
            if other in {n for t in knowledge.base.inputs.values() for n in knowledge.base.terms[t.term].names}:
                return at, end, other
    return None


def _in_a_name(at: int, end: int, alone: Question, knowledge: Knowledge) -> bool:
    """Return whether a number is part of a longer name of a thing in a state: "number one hydraulics"."""
    known = knowledge.states.by_term
    longer = (m for m in alone.reading.mentions if m.start <= at and end <= m.end and m.end - m.start > end - at)
    return any(concept in known for m in longer for concept in m.concepts)


def _numbered(context: Context, knowledge: Knowledge) -> Iterator[tuple[str, str]]:
    """Yield the names and the numbers of the numbered things whose states were given last, or that were asked about."""
    given = (*(context.asked.conditions if context.asked else ()), *context.scenario)
    asked = context.asked.reading if context.asked and not context.asked.reading.amounts else None
    terms = {item.term: name for name, item in knowledge.base.inputs.items()}
    named = [terms[c] for m in (asked.mentions if asked else ()) for c in m.concepts if c in terms]
    for condition in dict.fromkeys((*(c.input for c in given if not c.is_result), *named)):
        term = knowledge.base.terms.get(knowledge.base.inputs[condition].term)
        found = re.match(_NUMBERED, term.names[0]) if term else None
        if found:
            yield found.group(1), found.group(2)


def _of_a_kind(context: Context, knowledge: Knowledge) -> Iterator[tuple[str, str]]:
    """Yield the name of the numbered things that the question before spoke of without a number: "what pressure do the
    hydraulics run at"; of no number, as no "other one" is told apart.
    """
    said = context.asked.reading.concepts if context.asked else frozenset()
    for item in knowledge.base.inputs.values():
        term = knowledge.base.terms[item.term]
        found = re.match(_NUMBERED, term.names[0])
        if found and term.family and not said.isdisjoint(term.implies):
            yield found.group(1), ""
            return


def _said_numbers(words: list[str], number: str) -> Iterator[tuple[int, int, str]]:
    """Yield where a number of a thing is said, and which; number: that of the thing whose state was given."""
    for k, word in enumerate(words):
        figure = FIGURES.get(word, word if word.isdigit() else "")
        after = words[k + 1 : k + 2]
        if figure and k and words[k - 1] in _NUMBER:
            yield k - 1, k + 1, figure
        elif word in ("first", "second") and words[k - 1 : k] == ["the"] and (not after or after[0] in _NOUNS | _AFTER):
            yield k - 1, k + 1 + (after[:1] == ["one"]), figure
        elif number and word == "other" and words[k - 1 : k] == ["the"] and (not after or after[0] in _NOUNS | _AFTER):
            yield k - 1, k + 1 + bool(_NOUNS.intersection(after)), "2" if number == "1" else "1"
        elif figure and word in _CARDINALS and _stands_alone(words, k):
            yield k, k + 1, figure


def _stands_alone(words: list[str], k: int) -> bool:
    """Return whether a number stands for a thing: it opens a turn, or what runs on it ends one."""
    end = len(words) - (words[-1:] == ["?"])
    ends = k == end - 1 and bool(_RUNNING.intersection(words[k - 1 : k]))
    return ends or (_BEFORE.issuperset(words[:k]) and bool(_AFTER.intersection(words[k + 1 : k + 2])))


def _by_kind(alone: Question, context: Context, knowledge: Knowledge) -> tuple[int, int, str] | None:
    """Return where a turn says the state of a thing by its kind alone, and the name of the one whose state was given:
    "the switch goes back on", "button released".
    """
    words = alone.reading.words
    for name in _names_given(context, knowledge):
        kind = name.rpartition(" ")[2].lower()
        if not name.endswith(f" {kind}") or kind not in words or name.lower() in " ".join(words).lower():
            continue
        at = words.index(kind)
        after = next((k for k in range(at + 1, len(words)) if words[k] not in _LINKING), len(words))
        said = (m for m in alone.reading.mentions if m.says_state and m.start in (at, after))
        if (at == 0 or words[at - 1] in _BEFORE_KIND) and any(said):
            return at, at + 1, name
    return None


def _unnamed(alone: Question, context: Context, knowledge: Knowledge) -> tuple[int, int, str] | None:
    """Return the place before a state that opens a turn and has no thing, and the name of the thing spoken of last that
    it fits, where more follows: "back on, but System 1 has gone".
    """
    words = alone.reading.words
    if not context.scenario or not alone.conditions:
        return None
    it = next((k for k, w in enumerate(words[:_OPENING_WORDS]) if w in ("it", "its")), -1)
    said = (m for m in alone.reading.mentions if m.start > it and m.text != "no")
    first = next((m for m in said if not opens_turn(m, alone.reading)), None)
    if first is None or not first.says_state or not _OPENING.issuperset(words[max(it, 0) : first.start]):
        return None
    parted = next((k for k in range(first.end, len(words)) if words[k] not in _AFTER_STATE), len(words))
    if words[parted : parted + 1] not in ((",",), ("and",), ("but",)):
        return None
    name = _other_state(first, "not" in words[max(it, 0) : first.start], alone, context, knowledge)
    at = it if it >= 0 else first.start
    return (at, at + (it >= 0), name) if name else None


def _other_state(state: Mention, denied: bool, alone: Question, context: Context, knowledge: Knowledge) -> str:
    """Return the name of the one thing of the scenario that a word says to be in another state than was given."""
    given = {c.input: c.value for c in context.scenario}
    named = {c.input for c in alone.conditions if not set(c.where).issubset(state.taken)}
    fits = [(n, value_meant(n, state, knowledge.states)) for n in given if n not in named]
    other = [n for n, value in fits if value is not None and (value == given[n]) == denied]
    return _name(other[0], knowledge) if len(other) == 1 else ""


def _names_given(context: Context, knowledge: Knowledge) -> Iterator[str]:
    """Yield the names of the things whose states were given, the last first, one of each kind; then of those that the
    table told last depends on.
    """
    kinds: set[str] = set()
    for condition in reversed(context.scenario):
        name = _name(condition.input, knowledge)
        kind = name.rpartition(" ")[2]
        if not condition.is_result and kind not in kinds:
            kinds.add(kind)
            yield name
    table = told_table(context)
    names = [_name(each, knowledge) for each in table.inputs] if table else []
    ends = [name.rpartition(" ")[2] for name in names]
    yield from (name for name, kind in zip(names, ends, strict=True) if kind not in kinds and ends.count(kind) == 1)


def _name(given: str, knowledge: Knowledge) -> str:
    return knowledge.base.terms[knowledge.base.inputs[given].term].names[0]


def _switched(words: list[str], context: Context, knowledge: Knowledge) -> tuple[int, int, str] | None:
    """Return where a turn says "them on", and the name of what was told to be switched: the fans of a drill."""
    at = next((k for k, word in enumerate(words[:-1]) if word == "them" and words[k + 1] in _SWITCHED), None)
    if at is None or context.answer is None:
        return None
    told = knowledge.phrase(context.answer.text)
    things = (m for m in told.mentions if not m.weak and not _SWITCHED.isdisjoint(told.words[m.end : m.end + 1]))
    name = next((m.text for m in things if m.text.endswith("s")), "")
    return (at, at + 1, name) if name else None


def _was_chosen(words: list[str], context: Context, knowledge: Knowledge) -> bool:
    """Return whether what was told is which one of its like it is: a short turn on "it" is of that one then."""
    if len(words) > _BRIEF or OPEN_WORDS.isdisjoint(words[:2]):
        return False
    if not isinstance(context.result, FactResult) or context.asked is None:
        return False
    says = knowledge.phrase(context.result.fact.says).mentions[:1]
    families, asked = knowledge.lexicon.families, context.asked.reading
    first = [c for m in says if m.start == 0 for c in m.concepts if c in families and c in knowledge.base.terms]
    kinds = {families[c].rpartition("-")[2] for c in first if not asked.has(c) and knowledge.base.terms[c].show}
    return not kinds.isdisjoint(asked.words) or any(asked.has(families[c].partition("-")[0]) for c in first)


def _that_one(words: list[str], context: Context, knowledge: Knowledge) -> tuple[int, int, str] | None:
    """Return where a turn points at "that one", or at it by its kind, "that setting", and the name of the one among its
    like that was told last.
    """
    kinds = {family.rpartition("-")[2] for family in knowledge.lexicon.families.values() if "-" in family}
    # What a table tells in the states given ("in that mode") needs no name.
    kinds.difference_update(o.id for name in knowledge.base.ids("tables") for o in knowledge.base.records[name].outputs)
    at = next((k for k, w in enumerate(words[:-1]) if w in _POINTING and words[k + 1] in {"one", *kinds}), None)
    kind = "" if at is None or words[at + 1] == "one" else words[at + 1]
    end = 2
    # "And how hard does it brake", "its target"; "what does it aim for", after which setting is chosen.
    if at is None and (not _HARD.isdisjoint(words) or _was_chosen(words, context, knowledge)):
        at, end = next((k for k, w in enumerate(words) if w in _IT), None), 1
    if at is None or context.answer is None or not isinstance(context.result, (FactResult, LimitResult, ModelResult)):
        return None
    families = knowledge.lexicon.families
    known = knowledge.phrase(context.answer.text.split(". ")[0]).mentions
    asked = context.asked.reading.mentions if context.asked else ()
    for mention in (*(m for m in known if len(families.keys() & m.concepts) == 1), *asked):
        concept = next((c for c in sorted(mention.concepts) if c in families), "")
        if kind and not families.get(concept, "").endswith(f"-{kind}"):
            continue
        if concept in knowledge.base.terms and knowledge.base.terms[concept].show:
            return at, at + end, mention.text if len(mention.taken) > 1 else knowledge.base.terms[concept].names[0]
    return None
