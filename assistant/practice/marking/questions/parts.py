"""A question of an examiner in its parts: each is asked as a question of its own, on the subject of them all."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from typing import Any

from assistant.conversation.reading_turns.readings import question_of
from assistant.knowledge.records import Fact
from assistant.practice.marking.questions.asked import Asked, as_asked, ask, measures, record_of, things
from assistant.practice.marking.questions.phrased import asks_label, label_in, purpose_told, tells_more
from assistant.resolving import results as r
from assistant.resolving.asked_quantity import QUANTITIES, quantity_of
from assistant.resolving.candidates import Candidate
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.ranking import candidates

FORM = re.compile(
    r"^(?:and |then )?(?:please )?(?:give|state|name|list|answer|say|quote|in order|in that order|"
    r"with (?:the )?(?:speed|time|figure|number|unit|reason|limit|value|step)s?|talk me through|yes or no|"
    r"for planning|size and direction|step by step|both cases|word for word|"
    r"from memory|in (?:psi|knots|kt|degrees|metres|minutes|seconds|your own words))\b",
    re.IGNORECASE,
)
_ABOUT_WHAT = (
    r"(?:(?<=at |by |to |in )about (?=(?:what|which) (?:\w+ ){0,2}(?:temperature|speed|pressure|height|angle)))?"
)
_ASKS = re.compile(
    r"^(?:and |then |also |otherwise |if not )*(?:at |to |by |in |into |up to |from |on |of |for |below |above |"
    r"with |within |past |after |under |how |and by |before |until |between |against |through |"
    r"(?:less|more|later|earlier) than |or (?:above|below|less|more|under|over) )*"
    rf"{_ABOUT_WHAT}"
    r"(?:what|which|who|whom|whose|where|when|why|how|does|do|is|are|can|may|must|will|would|should|has)\b",
    re.IGNORECASE,
)
_ASKS_INSIDE = re.compile(
    r"\b(?:from|than|at|of|by|for|within|over|under|to|in|means|until|after|with) "
    r"(?:what|when|whom|how (?:long|much|many|far|fast|hot|high|often))\b",
    re.IGNORECASE,
)
"""What asks in the middle of a part: "and counted from when", "for a turnaround shorter than how long"."""
_BREAKS = re.compile(
    r"\s*(?:[?.;:](?=\s|$)|,(?=\s))\s*|"
    r"(?<!\bat)\s+and\s+(?=(?:at |to |by |in |into |up to |from |on |of |below |above |with |between |against |"
    r"through |otherwise |if not |(?:less|more|later|earlier) than |or (?:above|below|less|more|under|over) )*"
    rf"{_ABOUT_WHAT}"
    r"(?:what|which|who|whom|where|when|why|how|does|do|is|are|can|may|must)\b)",
    re.IGNORECASE,
)
_WHOLE_PIECE = re.compile(rf"(.+?)({_BREAKS.pattern}|$)", re.IGNORECASE | re.DOTALL)
_CONDITION = re.compile(
    r"^when (?!(?:is|are|does|do|may|can|must|did|will|should|and|to)\b)"
    r"(?:.*\b(?:is|are|has|have)\b|(?:you|we|they|it|one|somebody|someone) \w+|"
    r"(?:the|an?|both|all|its|your|either|one|no)\b)",
    re.IGNORECASE,
)
"""A clause that tells when, and does not ask it: "when the pin is in"."""
_LISTED = re.compile(r"(?!(?:and|or|but|with|without|in|on|at|to|for)\b)[\w-]+(?: [\w-]+)? and [\w-]+(?: \w+)?")
"""The rest of a list at which a comma broke a question: "What deceleration do STEADY, FIRM and FULL aim at"."""
_BARE = re.compile(
    r"\b(?:and|with|of|in|on|then|also|to|by|at|from|for|where|when|why|whom|who|how|what|which)\b", re.IGNORECASE
)
_WHAT_FOR = re.compile(r"(?:and )?what for", re.IGNORECASE)
LEADS = re.compile(r"^(?:(?:and|then|also) )+", re.IGNORECASE)
"""Words that lead on to a part of a question, and are no part of what it asks."""
CASES = re.compile(r"\b(?:both|each|either|the two|all) (?:of the )?(?:two )?cases?\b", re.IGNORECASE)
POLAR = re.compile(
    r"(?:^|[.?!;:,]\s*)(?:so |then |and )?(?:may|can|is|are|does|do|did|will|would|should|must|could|was|has|have|am)\b"
    r"|\b(?:acceptable|allowed|permitted|ok|okay|legal|within limits)\s*[?,]",
    re.IGNORECASE,
)


def pieces(text: str) -> list[str]:
    """Return the pieces of a text between its stops, commas and joined questions."""
    return [piece.strip() for piece in _BREAKS.split(text) if piece and piece.strip()]


def parts_of(text: str) -> list[str]:
    """Return the questions in a text, without what only says how to answer.

    A bare "and where" belongs to the question that it is joined with: the next after an "and", else the one before.
    """
    parts: list[str] = []
    carried = ""
    broken = False
    for found in _WHOLE_PIECE.finditer(text):
        piece = found.group(1).strip()
        rest, broken = broken, found.group(2).strip() == "," and bool(_ASKS.match(piece))
        if rest and parts and _LISTED.match(piece):
            parts[-1] += ", " + piece
        if not (_ASKS.match(piece) or _ASKS_INSIDE.search(piece)) or FORM.match(piece) or _CONDITION.match(piece):
            continue
        piece, carried = carried + piece, ""
        if len(_BARE.sub("", piece).split()) > 0 or (parts and _WHAT_FOR.fullmatch(piece)):
            parts.append(piece)
        elif found.group(2).strip().lower() == "and":
            carried = piece + " and "
        elif parts:
            parts[-1] += " " + piece
        else:
            parts.append(piece)
    return parts


def measured_parts(parts: list[str], text: str, whole: Asked, know: Knowledge) -> list[Asked]:
    """Return the figures for which a part asks besides what a state gives: "how, and at what speed at most"."""
    if len(parts) < 2 or not isinstance(whole.result, (r.TableResult, r.TablesResult)) or whole.answer.values:
        return []
    found = []
    for part in parts:
        wanted = know.phrase(part).concepts & _MEASURES
        one = _part(part, head_of(text, parts), "", [whole], whole.question.variant, know) if wanted else None
        if one and quantity_of(one.result, know) in wanted:
            found.append(one)
    return found


_MEASURES = frozenset(("speed", "pressure", "temperature", "duration", "angle", "altitude", "mass"))


def head_of(text: str, parts: Sequence[str]) -> str:
    """Return what stands before the first question: "Gear ground-lock pins:"."""
    return text[: text.lower().find(parts[0].lower())].strip(" ,:;.")


def by_parts(parts: list[str], text: str, know: Knowledge) -> list[Asked]:
    """Return what answers each part of a question, on the subject of the first."""
    head = head_of(text, parts)
    found: list[Asked] = []
    subject = head
    variant = question_of(text, know, "").variant
    for part in parts:
        if found and tells_more(part, text) and isinstance(found[-1].result, r.FactResult):
            continue
        if found and isinstance(found[-1].result, r.FactResult) and purpose_told(part, found[-1].result.fact.points):
            continue
        named = _with_noun(part, parts[0])
        asked = ask(named, know) if named != part else None if head else _whole_figure(part, know)
        one = asked[1] if asked else _part(part, head, subject, found, variant, know)
        if one:
            found.append(one)
            says = one.result.fact.says if isinstance(one.result, r.FactResult) and asks_label(text) else ""
            subject = subject or label_in(says) or _subject(one, know)
    return found


def _whole_figure(part: str, know: Knowledge) -> tuple[float, Asked] | None:
    """Return the stated figure that a part asks for by itself, where it names a thing of its own."""
    question = question_of(part, know, "")
    found = ask(part, know) if things(question, know) and not question.reading.variants else None
    return found if found and found[0] >= _STANDS and isinstance(found[1].result, r.LimitResult) else None


_STANDS = 0.6
"""Score from which a part of a question needs no subject of another part."""


def _with_noun(part: str, first: str) -> str:
    """Return a part with the noun of the first, where it asks "which" of the same: "and which runs the steering"."""
    words, heads = re.sub(r"^(?:and|then) ", "", part).split(), first.split()
    if len(words) < 2 or words[0].lower() != "which" or heads[0].lower() != "which" or words[1] not in heads[2:]:
        return part
    return " ".join((*heads[: heads.index(words[1])], *words[1:]))


def _subject(one: Asked, know: Knowledge) -> str:
    """Return the names of the things that a part is about and its record knows, for the parts that leave them out."""
    record = record_of(one.result)
    known = know.matcher.vocabulary(record.id) if record is not None and hasattr(record, "id") else frozenset()
    return " ".join(
        m.text
        for m in one.question.reading.mentions
        if not know.matcher.is_soft(m)
        and not measures(m.concepts, know)
        and (not known or not known.isdisjoint(m.concepts))
    )


def _part(part: str, head: str, subject: str, before: list[Asked], variant: str, know: Knowledge) -> Asked | None:
    texts = [f"{head}: {part}"] if head else [part]
    if subject and not head and before:
        texts = [f"{subject} {part}", f"{_first_name(subject, know)} {part}", part]
    used = {one.answer.text for one in before}
    about = things(question_of(subject, know, ""), know) if subject else frozenset()
    own = things(question_of(part, know, ""), know) - about
    best: tuple[tuple[int, float, int, int], Asked] | None = None
    for text in texts:
        question = question_of(text, know, variant)
        for exact, candidate in _chosen(question, part, (about, own), _on_type(before, know), know):
            made = as_asked(part, question, candidate.result, know)
            stated = exact and isinstance(candidate.result, (r.LimitResult, r.ScheduleResult))
            words = _text_of(candidate.result).lower().split() if "where" in part.lower().split() else []
            on_it = sum(word in words for word in subject.lower().split())
            told = stated and not _is_figure_of(candidate.result, before)
            rank = (exact + told, round(candidate.score, 2), on_it, -len(_text_of(candidate.result)))
            if made.answer.text not in used and (best is None or rank > best[0]):
                best = rank, made
    return best[1] if best else None


def _is_figure_of(result: r.Result, before: Iterable[Asked]) -> bool:
    """Return whether a stated figure is the very one that an earlier part has told, as a schedule gives it."""
    limit = result.limits[0] if isinstance(result, r.LimitResult) else None
    figure = (limit.value or limit.maximum or limit.minimum) if limit else None
    told = [one.result for one in before if isinstance(one.result, r.ScheduleResult)]
    return figure is not None and any(figure.value in pair for each in told for pair in each.found)


def _chosen(
    question: Question, part: str, named: tuple[frozenset[str], frozenset[str]], on_type: bool, know: Knowledge
) -> list[tuple[bool, Candidate]]:
    """Return the candidates that serve a part: of the very quantity or aspect asked for, else all of them."""
    serving = [c for c in candidates(question, know)[:12] if _serves(c, question, part, named, on_type, know)]
    wanted = _wanted(question, part, know)
    exact = [c for c in serving if quantity_of(c.result, know) in wanted]
    near = [c for c in serving if c.score >= serving[0].score - 0.15]
    exact = exact or [c for c in near if _has_aspect(c.result, part, know)]
    return [(bool(exact), c) for c in exact or serving]


def _first_name(subject: str, know: Knowledge) -> str:
    """Return the first of the things that a subject names."""
    mentions = know.phrase(subject).mentions
    return mentions[0].text if mentions else subject


def _on_type(before: list[Asked], know: Knowledge) -> bool:
    """Return whether the parts answered so far are of the type's own documents."""
    records = [record_of(one.result) for one in before]
    return any(record is not None and not know.is_general(record) for record in records)


def _has_aspect(result: r.Result, part: str, know: Knowledge) -> bool:
    """Return whether a statement answers what a part asks of its subject: where, who, why, when, the colour."""
    concepts = know.phrase(part).concepts
    wanted = {aspect for concept, aspect in _ASPECTS.items() if concept in concepts}
    return isinstance(result, r.FactResult) and bool(wanted.intersection(aspects_of(result.fact, know)))


def aspects_of(fact: Fact, know: Knowledge) -> Iterable[str]:
    """Return what a statement answers: as it says itself, else as one of its ways of asking has it."""
    return fact.answers or ("where",) * any("where" in know.phrase(text).concepts for text in fact.asks)


_ASPECTS = {"where": "where", "who": "who", "why": "why", "when": "when", "when_word": "when", "color": "colour"}


def _text_of(result: r.Result) -> str:
    """Return the statement of a fact: of two that serve as well, the one that says no more than was asked."""
    return result.fact.says if isinstance(result, r.FactResult) else " " * 200


def _wanted(question: Question, part: str, know: Knowledge) -> frozenset[str]:
    """Return the quantities that a part names itself."""
    return (question.reading.asked | know.phrase(part).concepts) & QUANTITIES


def _says(record: Any, part: str) -> bool:
    """Return whether a record is a statement that has the last word of a part of a question."""
    last = re.findall(r"[a-z]+", part.lower())[-1:]
    return isinstance(record, Fact) and bool(last) and last[0] in record.says.lower().split()


def _serves(
    candidate: Candidate,
    question: Question,
    part: str,
    named: tuple[frozenset[str], frozenset[str]],
    on_type: bool,
    know: Knowledge,
) -> bool:
    """Return whether a candidate may answer a part: on its subject, what it names, and of the quantity asked for."""
    result, (about, own) = candidate.result, named
    if candidate.score < 0.3 or isinstance(result, (r.Declined, r.Choices, r.Needed)):
        return False
    if isinstance(result, r.TableResult) and not any(row.conditions for row in result.rows):
        return False  # with everything normal: no state is asked about
    if isinstance(result, r.ProcedureResult) and result.step is None and not question.reading.has("steps"):
        return False
    record = record_of(result)
    if record is None:
        return candidate.score >= 0.7
    if on_type and know.is_general(record):
        return False  # what is true of all aeroplanes does not answer a part on this type's own
    asks = frozenset(c for text in getattr(record, "asks", ()) for c in know.phrase(text).concepts)
    explained = asks | know.matcher.vocabulary(record.id)
    brought = about | {c for each in about for c in know.lexicon.implied.get(each, ())}
    if (about and brought.isdisjoint(explained)) or (own and own.isdisjoint(explained) and not _says(record, part)):
        return False
    wanted = question.reading.asked & QUANTITIES
    mine = quantity_of(result, know)
    return not (
        wanted and mine and mine not in wanted and not any(mine in know.lexicon.implied.get(w, ()) for w in wanted)
    )
