"""Whether what an answer says to run on a system does run on it: "ALTERNATE, on System 2".

Which system runs what is read from the statements of the knowledge. Only a system that neither the question nor its
full answer names is looked up: everything else is held against the points.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from assistant.practice.marking.finding.elements import told_concepts
from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.said import Said
from assistant.practice.marking.reading.wording import LOST
from assistant.resolving.knowing import Knowledge

_SUPPLIES = re.compile(r"\b(?:runs?|supplies|supply|feeds?|powers?|needs?)\b")
_SENTENCE = re.compile(r"(?<=[a-z0-9)])[.;]\s+")
_BESIDE = re.compile(r",? (?:without|through|with|against|if)\b|: ")
_RAN_BY = re.compile(r"\b(?:runs? on|runs? off|(?:powered|supplied|fed|driven) (?:by|from)|needs?)$")
"""Words before a system by which it is said to run something."""
_SYSTEM = "hydraulic-system"


def not_supplied(need: Need, said: Said, know: Knowledge, put_off: frozenset[int]) -> list[str]:
    """Return the systems that an answer says to run something which another one runs."""
    families = know.lexicon.families
    known = need.question.concepts | need.said
    judged = []
    for i, here in enumerate(said.concepts):
        before, after = said.reading.words[max(0, i - 2) : i], said.reading.words[i : i + 5]
        ran_by = _RAN_BY.search(" ".join(said.reading.words[max(0, i - 3) : i])) is not None
        systems = {c for c in here if families.get(c) == _SYSTEM} - (frozenset() if ran_by else known)
        if not systems or i in put_off or (LOST - {"off"}).intersection(before) or LOST.intersection(after):
            continue
        judged.append((i, systems))
    ran = _running(need, said, know) if judged else frozenset()
    return [" ".join(said.reading.words[i : i + 2]) for i, systems in judged if ran and ran.isdisjoint(systems)][:1]


def _running(need: Need, said: Said, know: Knowledge) -> frozenset[str]:
    """Return the systems that run what an answer names; those that run what its question names, where none does."""
    systems = frozenset(c for c, family in know.lexicon.families.items() if family == _SYSTEM)
    rows = list(_ran(systems, know))
    own = frozenset(c for here in said.concepts for c in here)
    return _runners(own, rows, systems) or _runners(told_concepts(need.question), rows, systems)


def _runners(things: frozenset[str], rows: Iterable[frozenset[str]], systems: frozenset[str]) -> frozenset[str]:
    """Return the systems that are said to run any of some things."""
    named = things - systems
    return frozenset(s for concepts in rows if concepts & named for s in concepts & systems)


def _ran(systems: frozenset[str], know: Knowledge) -> Iterator[frozenset[str]]:
    """Yield the concepts of each sentence that says what one system runs."""
    for name in know.base.ids("facts"):
        for sentence in _SENTENCE.split(know.base.records[name].says):
            if _SUPPLIES.search(sentence) and "lost" not in sentence:
                told = [m for m in know.phrase(_BESIDE.split(sentence)[0]).mentions if not m.weak]
                things = [m for m in told if not _SUPPLIES.search(m.text)]
                concepts = frozenset(c for m in things for c in m.concepts if c[0] not in "@~")
                if len(concepts & systems) == 1:
                    yield concepts
