"""Which records a question to be marked asks for: asked whole, in its parts, or with the form of its answer left out.

An examiner asks more in a sentence than a pilot does ("how many, what colour, and where are they kept?"), and says how
to answer ("yes or no, and give the limit"). Each part is asked of the same resolvers as a question of its own.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import combinations
from typing import Any, NamedTuple

from assistant.answering.answer import ANSWER, Answer
from assistant.conversation.completing import question_of
from assistant.conversation.composing import composed, finished
from assistant.conversation.context import Context
from assistant.conversation.turn import answer_turn
from assistant.resolving import results as r
from assistant.resolving.asked_quantity import QUANTITIES, quantity_of
from assistant.resolving.choosing import candidates, chosen_record, resolve_scored
from assistant.resolving.knowing import Knowledge, Question

_FORM = re.compile(
    r"^(?:and |then )?(?:please )?(?:give|state|name|list|answer|say|quote|in order|in that order|with (?:the )?(?:speed|time|figure|number|"
    r"unit|reason|limit|value|step)s?|talk me through|yes or no|for planning|size and direction|step by step|both cases|"
    r"word for word|from memory|in (?:psi|knots|kt|degrees|metres|minutes|seconds|your own words))\b",
    re.IGNORECASE,
)
_ASKS = re.compile(
    r"^(?:and |then |also )?(?:at |to |by |in |up to |from |on |of |for |below |above |with |within |past |after |under |how |and by |"
    r"before |until )*(?:what|which|who|whom|whose|where|when|why|how|does|do|is|are|can|may|must|will|should|has)\b",
    re.IGNORECASE,
)
_BREAKS = re.compile(r"\s*(?:[?.;:](?=\s|$)|,(?=\s))\s*|\s+and\s+(?=(?:at |to |by |in |up to |from |on |of |below |above |with )*"
                     r"(?:what|which|who|whom|where|when|why|how|does|do|is|are|can|may|must)\b)", re.IGNORECASE)
_FAINT = 0.25
"""Score that is enough where the kind of the limit leaves no other."""
_WHOLE_PIECE = re.compile(rf"(.+?)({_BREAKS.pattern}|$)", re.IGNORECASE | re.DOTALL)
_BARE = re.compile(r"\b(?:and|with|of|in|on|then|also|to|by|at|from|for|where|when|why|whom|who|how|what|which)\b", re.IGNORECASE)
_STRUCTURED = (
    r.CheckResult, r.BandResult, r.TableResult, r.TablesResult, r.ModelResult, r.ProcedureResult, r.LossResult,
    r.CauseResult, r.ChangeResult, r.CompareResult, r.NotApplicable, r.VariantResult, r.Conversion,
)  # fmt: skip
_VERDICTS = (r.CheckResult, r.BandResult, r.TableResult, r.TablesResult, r.NotApplicable, r.FactResult)
POLAR = re.compile(
    r"(?:^|[.?!;:,]\s*)(?:so |then |and )?(?:may|can|is|are|does|do|did|will|would|should|must|could|was|has|have|am)\b"
    r"|\b(?:acceptable|allowed|permitted|ok|okay|legal|within limits)\s*\?",
    re.IGNORECASE,
)


_STEPS_ASKED = re.compile(
    r"\b(?:what (?:do|should|must|would) (?:you|we|i|they) do|steps|drill|procedure|in order|what follows)\b", re.IGNORECASE
)
_STEPS = 0.65
"""Score from which a procedure is meant where steps are asked for."""
_MOSTLY = 0.75
"""Share of a way of asking that a question must hold to be taken for it though one of its words is strange."""


class Asked(NamedTuple):
    """One answer that the question asks for."""

    question: Question
    result: r.Result
    answer: Answer


def asked(text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return what answers a question, in the order of its parts; nothing where nothing loaded does."""
    parts = parts_of(text)
    whole = _steps(text, know) or _whole(text, know)
    if whole and _is_beside(whole, text, know):
        whole = None
    if whole:
        whole = _all_steps(whole, len(parts), know)
    if whole and (isinstance(whole.result, _STRUCTURED) or len(parts) < 2):
        return (*_with_siblings(whole, text, know), *_measured_parts(parts, text, whole, know))
    split = _by_parts(parts, text, know) if len(parts) > 1 else []
    if len(split) > 1 or (split and not whole):
        return tuple(split)
    if whole:
        return _with_siblings(whole, text, know)
    found = _by_share(text, know) or _shortened(text, know) or _offered(text, know) or _nearest(text, know)
    if len(found) == 1:
        found = _with_siblings(found[0], text, know)
    return tuple(_all_steps(one, len(parts), know) for one in found)


def _steps(text: str, know: Knowledge) -> Asked | None:
    """Return the procedure of which a question asks the steps, though a statement on its subject comes first."""
    question = question_of(text, know, "")
    if not (_STEPS_ASKED.search(text) or question.reading.has("steps", "order_of", "memory_items")):
        return None
    for candidate in candidates(question, know)[:3]:
        result = candidate.result
        if not isinstance(result, r.ProcedureResult) or candidate.score < _STEPS or not candidate.match:
            continue
        named = _things(question_of(result.procedure.title, know, ""), know) & _things(question, know)
        if named and not candidate.match.barred:
            return _made(text, question, result, know)
    return None


def _is_beside(one: Asked, text: str, know: Knowledge) -> bool:
    """Return whether an answer gives no verdict where "yes or no" is asked for, though a limit would."""
    if isinstance(one.result, r.ModelResult) and (not one.result.values or _asks_verdict(text, know)):
        return True
    if not re.search(r"\byes or no\b", text, re.IGNORECASE) or isinstance(one.result, _VERDICTS):
        return False
    return bool(_shortened(text, know))


def _asks_verdict(text: str, know: Knowledge) -> bool:
    """Return whether a yes-or-no question is one that a limit decides: "is FIRM enough, 1,700 m of 2,000 m?"."""
    return any(POLAR.match(piece) for piece in _pieces(text)) and bool(_by_share(text, know))


def _whole(text: str, know: Knowledge) -> Asked | None:
    answer, context = answer_turn(text, Context(), know)
    if answer.outcome != ANSWER or context.asked is None or context.result is None:
        return None
    if not answer.text.startswith(composed(text, context.asked, context.result, know).text[:40]):
        return None  # it was answered in two halves, of which the context remembers the second alone
    return Asked(context.asked, context.result, answer)


def _all_steps(one: Asked, parts: int, know: Knowledge) -> Asked:
    """Return a procedure whole where a question asks for its steps, or for more than one of them."""
    if not isinstance(one.result, r.ProcedureResult) or one.result.step is None:
        return one
    asks_whole = parts > 1 or one.question.reading.has("steps", "order_of", "list_all")
    return _made(one.answer.question, one.question, one.result._replace(step=None), know) if asks_whole else one


def _with_siblings(one: Asked, text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Add the figures that the same question asks for under another condition: "normally, and once …"."""
    if not isinstance(one.result, r.LimitResult) or " and " not in text:
        return (one,)
    unit = _unit(one.result)
    question = question_of(text, know, one.question.variant)
    explained = know.phrase(one.result.limits[0].of).concepts
    left = [m for m in question.reading.mentions if not know.matcher.is_soft(m) and explained.isdisjoint(m.concepts)]
    found = [one]
    for candidate in candidates(question, know)[:8]:
        result = candidate.result
        if candidate.score < 0.45 or not isinstance(result, r.LimitResult) or _unit(result) != unit:
            continue
        words = know.phrase(result.limits[0].of).concepts
        if _is_counterpart(one.result.limits[0].of, result.limits[0].of, question) or any(not words.isdisjoint(m.concepts) for m in left):
            found.append(_made(text, question, result, know))
            left = [m for m in left if words.isdisjoint(m.concepts)]
    return tuple(found)


def _is_counterpart(of: str, other: str, question: Question) -> bool:
    """Return whether a figure is the other of two that a question asks for: "with and without fans"."""
    both = {"with", "without"}
    return both <= set(question.reading.words) and len({"without" in of.split(), "without" in other.split()}) == 2


def _unit(result: r.LimitResult) -> str:
    limit = result.limits[0]
    figure = limit.value or limit.maximum or limit.minimum
    return figure.unit if figure else ""


def _ask(text: str, know: Knowledge, variant: str = "") -> tuple[float, Asked] | None:
    question = question_of(text, know, variant)
    scored = resolve_scored(question, know)
    if isinstance(scored.result, (r.Declined, r.Choices, r.Needed)):
        return None
    return scored.score, _made(text, question, scored.result, know)


def _made(text: str, question: Question, result: r.Result, know: Knowledge) -> Asked:
    return Asked(question, result, finished(composed(text, question, result, know), know))


# --- in parts


def _pieces(text: str) -> list[str]:
    return [piece.strip() for piece in _BREAKS.split(text) if piece and piece.strip()]


def parts_of(text: str) -> list[str]:
    """Return the questions in a text, without what only says how to answer.

    A bare "and where" belongs to the question that it is joined with: the next after an "and", else the one before.
    """
    parts: list[str] = []
    carried = ""
    for found in _WHOLE_PIECE.finditer(text):
        piece = found.group(1).strip()
        if not _ASKS.match(piece) or _FORM.match(piece):
            continue
        piece, carried = carried + piece, ""
        if len(_BARE.sub("", piece).split()) > 0:
            parts.append(piece)
        elif found.group(2).strip().lower() == "and":
            carried = piece + " and "
        elif parts:
            parts[-1] += " " + piece
        else:
            parts.append(piece)
    return parts


def _measured_parts(parts: list[str], text: str, whole: Asked, know: Knowledge) -> list[Asked]:
    """Return the figures for which a part asks besides what a state gives: "how, and at what speed at most"."""
    if len(parts) < 2 or not isinstance(whole.result, (r.TableResult, r.TablesResult)) or whole.answer.values:
        return []
    found = []
    for part in parts:
        wanted = know.phrase(part).concepts & _MEASURES
        one = _part(part, _head(text, parts), "", [whole], whole.question.variant, know) if wanted else None
        if one and quantity_of(one.result, know) in wanted:
            found.append(one)
    return found


_MEASURES = frozenset(("speed", "pressure", "temperature", "duration", "angle", "altitude", "mass"))


def _head(text: str, parts: list[str]) -> str:
    """Return what stands before the first question: "Gear ground-lock pins:"."""
    before = text[: text.lower().find(parts[0].lower())].strip(" ,:;.")
    return before


def _by_parts(parts: list[str], text: str, know: Knowledge) -> list[Asked]:
    head = _head(text, parts)
    found: list[Asked] = []
    subject = head
    variant = question_of(text, know, "").variant
    for part in parts:
        one = _part(part, head, subject, found, variant, know)
        if one:
            found.append(one)
            subject = subject or _subject(one.question, know)
    return found


def _subject(question: Question, know: Knowledge) -> str:
    """Return the names of the things that a question is about, for the parts that leave them out."""
    return " ".join(
        m.text for m in question.reading.mentions if not know.matcher.is_soft(m) and not _measures(m.concepts, know)
    )


def _measures(concepts: frozenset[str], know: Knowledge) -> bool:
    return all(know.lexicon.kinds.get(c) in ("quantity", "ask", "ask!") for c in concepts)


def _part(part: str, head: str, subject: str, before: list[Asked], variant: str, know: Knowledge) -> Asked | None:
    texts = [f"{head}: {part}"] if head else [part]
    if subject and not head and before:
        texts = [f"{subject} {part}", part]
    used = {one.answer.text for one in before}
    about = _things(question_of(subject, know, ""), know) if subject else frozenset()
    for text in texts:
        question = question_of(text, know, variant)
        serving = [c for c in candidates(question, know)[:12] if _serves(c.score, c.result, question, about, know)]
        wanted = _wanted(question, part, know)
        exact = [c for c in serving if quantity_of(c.result, know) in wanted]
        near = [c for c in serving if c.score >= serving[0].score - 0.15]
        exact = exact or [c for c in near if _has_aspect(c.result, part, know)]
        chosen = sorted(exact or serving, key=lambda c: (-round(c.score, 2), len(_text_of(c.result))))
        for candidate in chosen:
            made = _made(part, question, candidate.result, know)
            if made.answer.text not in used:
                return made
    return None


def _has_aspect(result: r.Result, part: str, know: Knowledge) -> bool:
    """Return whether a statement answers what a part asks of its subject: where, who, why, when, the colour."""
    concepts = know.phrase(part).concepts
    wanted = {aspect for concept, aspect in _ASPECTS.items() if concept in concepts}
    return isinstance(result, r.FactResult) and bool(wanted.intersection(result.fact.answers))


_ASPECTS = {"where": "where", "who": "who", "why": "why", "when": "when", "when_word": "when", "color": "colour"}


def _text_of(result: r.Result) -> str:
    """Return the statement of a fact: of two that serve as well, the one that says no more than was asked."""
    return result.fact.says if isinstance(result, r.FactResult) else " " * 200


def _wanted(question: Question, part: str, know: Knowledge) -> frozenset[str]:
    """Return the quantities that a part names itself."""
    return (question.reading.asked | know.phrase(part).concepts) & QUANTITIES


def _things(question: Question, know: Knowledge) -> frozenset[str]:
    return frozenset(
        c for m in question.reading.mentions if not know.matcher.is_soft(m) and not _measures(m.concepts, know)
        for c in m.concepts
    )  # fmt: skip


def _serves(
    score: float, result: r.Result, question: Question, about: frozenset[str], know: Knowledge
) -> bool:
    """Return whether a candidate may answer a part: it is on the same subject and of the quantity asked for."""
    if score < 0.3 or isinstance(result, (r.Declined, r.Choices, r.Needed)):
        return False
    if isinstance(result, r.ProcedureResult) and result.step is None and not question.reading.has("steps"):
        return False
    record = record_of(result)
    if record is None:
        return score >= 0.7
    asks = frozenset(c for text in getattr(record, "asks", ()) for c in know.phrase(text).concepts)
    if about and about.isdisjoint(asks | know.matcher.vocabulary(record.id)):
        return False
    wanted = question.reading.asked & QUANTITIES
    mine = quantity_of(result, know)
    return not (wanted and mine and mine not in wanted and not any(mine in know.lexicon.implied.get(w, ()) for w in wanted))


def record_of(result: r.Result) -> Any:
    """Return the one record that a result comes from, if it is one."""
    for name in ("fact", "bands", "schedule", "table", "procedure", "model", "limit", "record"):
        if hasattr(result, name):
            return getattr(result, name)
    if isinstance(result, r.LimitResult):
        return result.limits[0]
    if isinstance(result, r.CheckResult):
        return result.checks[0].limit
    return None


# --- with less in it


def _shortened(text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return the answer to a question without the form of its answer, then without some of its asides."""
    found: list[tuple[float, Asked]] = []
    polar = bool(POLAR.search(text))
    for dropped, shorter in _shorter(text):
        one = _verdict(shorter, know) if polar else _ask(shorter, know)
        if one is None:
            continue
        found.append((one[0] - 0.04 * dropped, one[1]))
        if dropped == 0 and not polar:
            break
    return (max(found, key=lambda pair: pair[0])[1],) if found else ()


def _verdict(text: str, know: Knowledge) -> tuple[float, Asked] | None:
    """Return the amount held against its limit that a yes-or-no question asks for."""
    question = question_of(text, know, "")
    temperatures = sum(1 for a in question.reading.amounts if a.unit in ("degC", "degF", "deg"))
    found = []
    for candidate in candidates(question, know)[:8]:
        result = candidate.result
        if isinstance(result, r.BandResult) and result.bands.unit == "K" and temperatures < 2:
            continue  # one reading is no difference of readings
        if isinstance(result, (r.CheckResult, r.BandResult)) and candidate.score >= 0.6:
            found.append((candidate.score + (0.1 if isinstance(result, r.CheckResult) else 0.0), result))
    if not found:
        return _ask(text, know)
    score, result = max(found, key=lambda pair: pair[0])
    return score, _made(text, question, result, know)


def _by_share(text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return the limit on a share where two amounts of one kind are given: 1,700 m of 2,000 m is 85 percent."""
    question = question_of(text, know, "")
    amounts = [a for a in question.reading.amounts if a.unit]
    if len(amounts) != 2 or amounts[0].unit != amounts[1].unit or not amounts[1].value:
        return ()
    share = 100 * amounts[0].value / amounts[1].value
    shares = text.replace(amounts[0].raw, f"{share:g} percent", 1).replace(amounts[1].raw, "", 1)
    found = []
    for dropped, shorter in _shorter(shares):
        asked_so = question_of(shorter, know, "")
        for candidate in candidates(asked_so, know)[:3]:
            if dropped < 3 and candidate.score >= _FAINT and _on_share(candidate.result):
                found.append((candidate.score, _made(text, asked_so, candidate.result, know)))
    return (max(found, key=lambda pair: pair[0])[1],) if found else ()


def _on_share(result: r.Result) -> bool:
    return isinstance(result, r.CheckResult) and result.checks[0].unit == "percent"


def _shorter(text: str) -> Iterator[tuple[int, str]]:
    pieces = [piece for piece in _pieces(text) if not _FORM.match(piece)]
    yield 0, ", ".join(pieces)
    most = min(len(pieces) - 1, 3)
    for size in range(1, most + 1):
        for left in combinations(range(len(pieces)), size):
            yield size, ", ".join(piece for i, piece in enumerate(pieces) if i not in left)


def _offered(text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return the records between which a question leaves the choice, where it asks for each of them."""
    question = question_of(text, know, "")
    result = resolve_scored(question, know).result
    if not isinstance(result, r.Choices):
        return ()
    made = [
        _made(text, question, found, know)
        for name, _ in result.options
        if (found := chosen_record(name, question, know)) is not None
    ]
    wanted = question.reading.concepts & QUANTITIES
    made.sort(key=lambda one: quantity_of(one.result, know) not in wanted if wanted else False)
    first = made[0]
    if len(getattr(record_of(first.result), "points", ())) > 1:
        return (first,)
    alike = [one for one in made if _kind(one, know) == _kind(first, know)]
    return tuple(alike)


def _kind(one: Asked, know: Knowledge) -> tuple[str, str]:
    return type(one.result).__name__, quantity_of(one.result, know) or ""


def _nearest(text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return what comes nearest to answering, though a word of the question is not explained."""
    question = question_of(text, know, "")
    told = [m for m in question.reading.mentions if not know.matcher.is_soft(m) and not _measures(m.concepts, know)]
    for candidate in candidates(question, know)[:5]:
        match = candidate.match
        if match is None or isinstance(candidate.result, (r.Declined, r.Choices, r.Needed)):
            continue
        if match.covered >= _MOSTLY and len(told) - len(match.barred) >= 2 and len(match.barred) < 2:
            return (_made(text, question, candidate.result, know),)
    return ()
