"""A label that was told of, said to show by "it": "I get it lowering the gear", after how soon GEAR MISMATCH shows."""

from __future__ import annotations

from itertools import pairwise

from assistant.conversation.context import Context
from assistant.conversation.reading_turns.paragraphs_told import title_told
from assistant.knowledge.records import Fact
from assistant.resolving.knowing import Knowledge
from assistant.resolving.results import FactResult, LimitResult

_GOT = frozenset({"get", "gets", "got", "getting", "have", "had", "see", "saw", "with"})
_SHOWS = frozenset({
    "comes", "came", "come", "coming", "lights", "lit", "shows", "showed", "showing", "appears", "appeared", "pops",
    "popped",
})  # fmt: skip
_IS, _ON = frozenset({"is", "has", "stays"}), frozenset({"on", "lit", "showing", "come", "amber"})
_WHO = frozenset({"i", "we", "you", "they", "if", "when", "suppose", "say", "now", "and", "crew", "with"})
_SOON = 3
"""Words at most before who gets it: what is told opens a turn."""


def label_got(words: list[str], context: Context, knowledge: Knowledge) -> tuple[int, int, str] | None:
    """Return where a turn tells that "it" shows, and the name of the one label that was told of."""
    at = _told_place(words)
    if at is None or context.asked is None or not isinstance(context.result, (FactResult, LimitResult)):
        return None
    said = context.asked.reading.concepts | knowledge.phrase(title_told(context, knowledge)).concepts
    shown = {knowledge.base.terms[c].show for c in said if c in knowledge.base.terms}
    labels = [name for name in shown if name.isupper() and _is_label(name, knowledge)]
    return (at, at + 1, labels[0].lower()) if len(labels) == 1 else None


def _told_place(words: list[str]) -> int | None:
    """Return where "it" stands that somebody gets, or that comes on, near the beginning of a turn."""
    for k, (one, other) in enumerate(pairwise(words)):
        if other == "it" and one in _GOT and not _WHO.isdisjoint(words[max(0, k - 1) : k + 1]) and k <= _SOON:
            return k + 1
        is_on = other in _IS and not _ON.isdisjoint(words[k + 2 : k + 3]) and words[k - 1 : k] != ["is"]
        if one == "it" and (other in _SHOWS or is_on) and k <= _SOON and words[k - 1 : k] != ["does"]:
            return k
    return None


def _is_label(name: str, knowledge: Knowledge) -> bool:
    """Return whether a statement tells a name as a label, with its colour in brackets."""
    facts = (knowledge.base.records[each] for each in knowledge.base.ids("facts"))
    return any(isinstance(fact, Fact) and fact.says.startswith(f"{name} (") for fact in facts)
