"""What a state table says beside its results, as far as it is asked for: a remark on a state, a number, what to do."""

from __future__ import annotations

import re
from typing import Any

from assistant.answering.states import output_words
from assistant.knowledge.records import StateTable
from assistant.practice.marking.finding.elements import point, told_concepts
from assistant.practice.marking.of_statements.of_part import asks_figure
from assistant.practice.marking.of_statements.steps_asked import measured
from assistant.practice.marking.points import Point
from assistant.practice.marking.questions.parts import parts_of
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.knowing import Knowledge

ACTION = re.compile(
    r"\b(?:what (?:\w+ )?(?:things? |steps? )?follows?\b|what must|"
    r"what do (?:you|we|i|they|crews?|pilots?)|what should|"
    r"what is (?:to be |then |now |next )*(?:done|requested)|what then|what has to|which setting|"
    r"what (?:is|are) the action|what to do|what happens|who do|what now|must be done|do about|"
    r"what (?:do|would|should|must) (?:you|we|i) (?:use|do)|instead)\b",
    re.IGNORECASE,
)


def remarked(table: StateTable, row: Any, text: str, know: Knowledge) -> list[Point]:
    """Return what is remarked on a state given, as far as it is asked for: that it is not to be relied on, chocks."""
    given = {(c.input, c.value) for c in row.conditions if c.remark}
    if not given or len(parts_of(text)) < 2:
        return []
    read = " ".join(c.remark for c in row.conditions)
    told = [
        remark
        for name, value, remark in table.remarks
        if any((name, value) == (c.input, c.value) for c in row.conditions) and _of_reading(remark, read, know)
    ]
    named = know.phrase(text).concepts
    outputs = frozenset(c for o in table.outputs for c in know.phrase(o.label).concepts)
    points = []
    for remark in told:
        says, _, action = re.sub(r"\s*\([^)]*\)", "", remark).partition(": ")
        clauses = [c for c in re.split(r",\s+(?:and\s+)?", says) if not know.phrase(c).amounts]
        asked = [c for c in clauses if (told_concepts(know.phrase(c)) & named) - outputs]
        points += [point(c, know)._replace(kept=True) for c in asked]
        points += [point(action, know)] if action and ACTION.search(text) else []
    return points


def _of_reading(remark: str, read: str, know: Knowledge) -> bool:
    """Return whether a remark is made of just such a reading: its figures are those that the reading goes by."""
    made, own = ({a.value for a in know.phrase(re.sub(r"\([^)]*\)", "", t)).amounts} for t in (remark, read))
    return made <= own


def counted_in(table: StateTable, said: dict[str, str], names: list[str], text: str, know: Knowledge) -> list[Point]:
    """Return the number that a result gives besides, where it is asked for: "and the number of applications"."""
    found = COUNTED.findall(text)
    asked = frozenset(c for words in found for c in told_concepts(know.phrase(words)))
    told = [(name, re.split(r"[:,] ", output_words(table, name, said[name]))) for name in said]
    pieces_ = [p for name, each in told for p in (each[1:] if name in names else each)]
    return [point(p, know) for p in pieces_ if know.phrase(p).amounts and told_concepts(know.phrase(p)) & asked]


def measured_in(table: StateTable, said: dict[str, str], names: list[str], text: str, know: Knowledge) -> list[Point]:
    """Return the figure of a result that is not named, where a part asks for its quantity: "what pressure"."""
    parts = [part for part in parts_of(text) if asks_figure(part)] if len(parts_of(text)) > 1 else []
    wanted = frozenset(c for part in parts for c in know.phrase(part).concepts) & QUANTITIES
    told = [p for name in said if name not in names for p in output_words(table, name, said[name]).split(": ")]
    made = [point(piece, know) for piece in told] if wanted else []
    units = [{measured(f.unit, know) for f in p.figures if f.unit not in ("", "count")} for p in made]
    return [p._replace(figures_suffice=True) for p, own in zip(made, units, strict=True) if own & wanted]


COUNTED = re.compile(r"\b(?:number of|how many) ([\w-]+(?: [\w-]+)?)", re.IGNORECASE)
