"""The points of one thing that a question asks for in a state: a result, its figure, what to do, what remains."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from assistant.answering.states import output_words
from assistant.practice.marking.finding.elements import concepts_in, point, told_concepts
from assistant.practice.marking.of_results.outcomes import action_of, output_point, table_points_of
from assistant.practice.marking.of_results.remarks import COUNTED, remarked
from assistant.practice.marking.of_statements.named_half import of_what_is_named
from assistant.practice.marking.of_statements.of_part import asks_figure
from assistant.practice.marking.of_statements.steps_asked import measured
from assistant.practice.marking.points import Point, State
from assistant.practice.marking.questions.asked import Asked
from assistant.practice.marking.questions.parts import POLAR
from assistant.resolving import results as r
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.knowing import Knowledge
from assistant.resolving.labels_told import label_holds


class ItemResult(r.TableResult):
    """The row of a state table of which one result alone is asked for, by what the question of its answer says."""

    __slots__ = ()


_SHOWS = re.compile(
    r"(?:does|will|would|do|is|whether) (?:the )?(?P<label>[A-Z][A-Z -]+[A-Z])\b(?: \w+)? "
    r"(?:show|come|appear|light|lit|shown|displayed|illuminate)"
)
_MEANS = re.compile(
    r"\b(?:means|ways?) (?:of|to)\b[^,;]*\b(?:remains?|left|still|have)\b|\bremaining means\b", re.IGNORECASE
)


def asks_action(item: str) -> bool:
    """Return whether a thing asked for is what to do or to use, and no figure."""
    return _USES.search(item) is not None and not asks_figure(item)


_USES = re.compile(
    r"\bwhat (?:do|should|must|can|may|could|will|would) (?:you|we|i|they) (?:still |then )?(?:use|do)\b|"
    r"\bwhat (?:is|must be|has to be) (?:then |to be )?(?:done|used)\b|\bwhat (?:now|then)$",
    re.IGNORECASE,
)


def asks_label_shown(item: str) -> bool:
    """Return whether it is asked of a label whether it shows."""
    return _SHOWS.match(item) is not None


def figure_pieces(result: r.TableResult, item: str, know: Knowledge) -> list[Point]:
    """Return the figures of the results of a state that are of the quantity asked for, or count what is counted."""
    if COUNTED.search(item):
        asked = told_concepts(know.phrase(" ".join(COUNTED.findall(item)))) | know.phrase(item).concepts
        told = [p for p in _pieces(result) if know.phrase(p).amounts and told_concepts(know.phrase(p)) & asked]
        return [p for p in (point(each, know) for each in told) if p.figures and _is_count(p)]
    wanted = know.phrase(item).concepts & QUANTITIES
    made = [point(piece, know) for piece in _pieces(result)] if wanted else []
    units = [{measured(f.unit, know) for f in p.figures if f.unit not in ("", "count")} for p in made]
    return [p._replace(figures_suffice=True) for p, own in zip(made, units, strict=True) if own & wanted]


def _is_count(made: Point) -> bool:
    return all(f.unit in ("", "count") for f in made.figures)


def _pieces(result: r.TableResult) -> Iterator[str]:
    for name, value in result.rows[0].outputs:
        yield from re.split(r"[:,] ", output_words(result.table, name, value))


def item_points(one: Asked, text: str, know: Knowledge) -> list[Point]:
    """Return the points of one thing asked for in a state."""
    result: Any = one.result
    item, table, row = one.answer.question, result.table, result.rows[0]
    said = dict(row.outputs)
    shows = _SHOWS.match(item)
    if shows:
        return _label(shows["label"], one, know)
    figures = figure_pieces(result, item, know)
    if figures:
        return figures[:1]
    if _MEANS.search(item):
        return _means(result, know)
    if asks_action(item):
        action = [p for name in result.asked for p in action_of(table, name, said[name], know)]
        return action or _remarked(table, row, item, know)
    beside = _remarked(table, row, item, know) if _IT.search(item) else []
    if beside or POLAR.match(item):
        return beside or table_points_of(one, item, know)
    gone = [p for name in result.asked for p in _without(table, name, said[name], item, know)]
    if gone:
        return gone
    made = [output_point(table, name, said[name], know) for name in result.asked]
    return [of_what_is_named(p, item, know) for p in made]


_IT = re.compile(r"\b(?:it|that|they|this)\b", re.IGNORECASE)


def _remarked(table: Any, row: Any, item: str, know: Knowledge) -> list[Point]:
    """Return what is remarked on a state, as far as one thing asks for it."""
    return remarked(table, row, f"Is it so, and {item}?", know)


def _without(table: Any, name: str, value: str, item: str, know: Knowledge) -> list[Point]:
    """Return that a thing is not there, where it is asked for by its name and the result says so besides."""
    told, _, besides = output_words(table, name, value).partition(": ")
    label = next(o.label for o in table.outputs if o.id == name)
    asked = know.phrase(item).concepts
    if not besides.startswith(f"no {label}") or not concepts_in(label, know) & asked:
        return []
    subject = concepts_in(" ".join(told.split()[:_SUBJECT]), know)
    made = point(f"no {label}", know)
    if subject & asked or made.state is None:
        return []
    return [made._replace(state=made.state._replace(names=(f"={table.id}.{name}.{value}", made.state.names[1])))]


_SUBJECT = 3
"""Words of a result that name what it is said of: "the nose wheels castor"."""


def _means(result: Any, know: Knowledge) -> list[Point]:
    """Return each of the means that are left, as a result of the state lists them."""
    table = result.table
    told = (output_words(table, name, value).partition(": ")[2] for name, value in result.rows[0].outputs)
    listed = next((each for each in told if " and " in each and not know.phrase(each).amounts), "")
    return [point(re.sub(r" only$", "", each), know, kept=True, state=None) for each in listed.split(" and ") if each]


def _label(label: str, one: Asked, know: Knowledge) -> list[Point]:
    """Return whether a label shows in the state that a question tells."""
    subject = concepts_in(label, know)
    named = [c for c in subject if c in know.states.shows]
    if not named:
        return []
    there = any(label_holds(c, one.question.conditions, know) for c in named)
    return [Point(f"{label} {'shows' if there else 'does not show'}", state=State(subject, there))]
