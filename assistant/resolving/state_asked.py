"""What a question asks of the state tables, and how much of it something else would have to explain."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from assistant.knowledge.records import StateTable
from assistant.resolving import tables as state_tables
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.results import Result
from assistant.understanding.clauses import asking
from assistant.understanding.grouping import LINKS
from assistant.understanding.matching import Match
from assistant.understanding.mentions import STATE, Mention
from assistant.understanding.states import Condition

Scored = tuple[float, float, Result]
"""A score, the weight behind it, and what is answered."""
ASKED = 0.97
UNEXPLAINED = 0.7
_LEAST = 0.2
"""Score from which a way of asking counts."""
_UNDER_STATES = 0.6
"""Score from which a way of asking counts that is one only where a state is given."""
_WHERE = frozenset(("kt", "ft"))
"""Units of amounts that say where something happened, and are no readings of an input."""
_FAILURES = frozenset(("failures", "things", "faults", "losses"))
_COUNTING = frozenset((None, "count"))
_SINCE_THEN = frozenset(("later", "afterwards", "after", "earlier", "into", "before"))
_LONG_AGO = frozenset(("min", "h"))
_AWAY, _FAR = frozenset(("out", "away", "from", "final", "finals", "short")), frozenset(("NM", "mile", "km"))
"""Words after how far out something happened, and the units of that."""
_LASTING = frozenset(("s", "min", "h"))
_SIDES = frozenset(("left", "right"))
WHICH = frozenset(("which", "what", "whats"))
_WRONG = frozenset({"wrong", "matter", "problem", "culprit", "suspect", "blame", "faulty", "diagnose", "diagnosis"})
_FAILED = frozenset(("@lost", "@off", "@empty"))
KINDS = frozenset({
    "system", "systems", "hydraulic", "hydraulics", "hyd", "hyds", "sys", "component", "components", "thing", "things",
    "item", "part", "unit", "side", "one", "ones", "circuit", "controller", "controllers", "switch", "switches",
    "computer", "box", "two", "single", "supply", "else", "failure", "fault",
})  # fmt: skip
"""What may be asked for by kind where it has failed."""
_LINKING = frozenset({
    "has", "have", "is", "are", "of", "the", "my", "our", "must", "may", "might", "could", "can", "will", "would", "be",
    "been", "do", "does", "did", "i", "we", "you", "to", "then", "likely", "probably", "apparently", "both", "it",
    "actually", "now", "just", "evidently", "presumably", "that", "a", "us", "on", "here", "there", "s", "with",
})  # fmt: skip
NAMELESS = frozenset({
    "i", "we", "you", "they", "it", "he", "she", "that", "which", "what", "who", "and", "or", "but", "if", "when", "as",
    "not", "no", "nothing", "one", "both", "either", "neither", "after", "before", "since", "because", "so", "to", "of",
    "by", "with", "in", "on", "for", "a", "an", "my", "our", "did", "do", "does", "should", "would", "can", "could",
    "may", "might", "never", "then", "there", "this", "these", "those", "suppose", "say", "also", "even", "just", "s",
})  # fmt: skip
"""Words before one for having failed that name nothing that could have."""
_SYSTEMS = frozenset({"system", "hydraulic", "hydraulics", "hyd", "sys", "controller"})
_LOSS = frozenset({"loss", "failure", "failing", "fault", "going"})
_SOME = frozenset(("the", "that", "this", "one", "a"))
_ARTICLES = frozenset(("the", "a", "my", "our"))
_BESIDE = 2
_KIND_OF_EITHER = ("system", "systems")
_MOST_NAMED = 9
_ASIDE = 0.88
"""Words from "which" to what has failed: "which of the two hydraulic systems must have failed"."""


def output_matches(
    question: Question, know: Knowledge, excused: Collection[int], given: Collection[Condition] | None = None
) -> list[Match]:
    """Return the ways of asking for results of state tables that a question fits, under its states or those given."""
    own = [c for c in question.conditions if not c.implied] if given is None else given
    states = [c for c in own if given is not None or not c.is_result]
    matches = know.matcher.rank_among(know.tables, question.reading, excused=excused, least=_LEAST)
    found = [m for m in matches if m.score > _LEAST]
    bound = question.reading.has("maximum", "minimum")  # how much it may be is a limit's to tell
    whether = _asks_whether_in_a_state(question)
    counts = {m.record: not bound and (whether or _rests_on(m.record, states, know)) for m in found if m.under_states}
    return [m for m in found if not m.under_states or (counts[m.record] and _fits_well(m))]


def _asks_whether_in_a_state(question: Question) -> bool:
    """Return whether a question asks whether something may be done in a state of anything: "can I retract with the
    bypass pin in". That the state has no bearing on it is told then.
    """
    reading = question.reading
    return reading.has("can") and not reading.amounts and any(not c.is_result for c in question.conditions)


def _fits_well(match: Match) -> bool:
    """Return whether a way of asking is said in whole, and hardly anything besides."""
    return match.whole and match.open and match.score >= _UNDER_STATES


def _rests_on(table: str, states: list[Condition], know: Knowledge) -> bool:
    """Return whether a table depends on one of some states."""
    record = know.base.records[table]
    return isinstance(record, StateTable) and any(c.input in record.inputs or c.table == table for c in states)


def content_of(question: Question, know: Knowledge, excused: Collection[int]) -> list[Mention]:
    """Return the mentions that an answer must explain: those that say a state are explained already."""
    return [
        m for m in question.reading.mentions if not m.weak and m.start not in excused and not know.matcher.is_soft(m)
    ]


def only_told(table: str, question: Question, know: Knowledge, excused: Collection[int]) -> bool:
    """Return whether a question names what a table tells only in what it tells: "the gear came down by …, | do I …"."""
    content = content_of(question, know, excused)
    asks = asking(question.reading.words) if content else frozenset()
    inside = [m for m in content if m.start in asks]
    vocabulary = know.matcher.vocabulary(table)
    return bool(inside) and all(vocabulary.isdisjoint(m.concepts | m.implied) for m in inside)


def unused_amounts(question: Question) -> float:
    """Amounts that are no reading of an input speak against an answer by states alone."""
    used = {k for c in question.conditions for k in c.where}
    words = question.reading.words
    left = [a for a in question.reading.amounts if a.start not in used]
    asks = asking(words) if left else frozenset()
    share = 1.0
    for amount in left:
        after = words[amount.end : amount.end + 2]
        if _SIDES.intersection(after):
            share *= 0.9  # "tiller 30 left"
        elif after and after[0] in _SINCE_THEN and amount.unit in _LASTING:
            share *= 0.95  # "ten minutes later the brake controller followed"
        elif after and after[0] == "ago" and amount.unit in _LONG_AGO:
            share *= 0.95  # "System 2 failed a minute ago"
        elif after and after[0] in _AWAY and amount.unit in _FAR:
            share *= 0.95  # "ten miles out"
        elif asks and amount.start not in asks and amount.unit in _WHERE:
            share *= 0.88  # "the caution came up at 60 kt. Does autobrake work?"
        elif not (after and after[0] in _FAILURES and amount.unit in _COUNTING):
            share *= 0.7
    return share


def barring(barred: list[Mention], know: Knowledge, thing: float = _ASIDE) -> float:
    """Return how far unexplained mentions speak against an answer: words no term names most of all.

    thing: how far a thing of the trade does.
    """
    share = 1.0
    for mention in barred:
        share *= 0.45 if know.matcher.is_strict(mention) else thing if _is_thing(mention, know) else _ASIDE
    return share


def _is_thing(mention: Mention, know: Knowledge) -> bool:
    """Return whether a thing of the trade is named, and no quantity, aspect or state."""
    return any(c[0].isalpha() and not know.lexicon.kinds.get(c) for c in mention.concepts)


def asks_what_failed(question: Question, know: Knowledge) -> tuple[str, ...] | None:
    """Return the words by which a question asks what has failed ("which | hydraulic system | is out"), else None.

    A thing or a result that is named there is asked about itself: "which brakes are lost" asks for no failure.
    """
    words = question.reading.words
    asks = asking(words)
    found = _loss_of_which(question)
    if found:
        return found
    for at in (k for k in sorted(asks) if words[k] in WHICH):
        end = next((k for k in range(at + 1, len(words)) if k not in asks or k - at > _MOST_NAMED), len(words))
        said = _said_failed(question, at, end)
        if said is None:
            continue
        named = words[at + 1 : said[0]]
        rest = (m for m in question.reading.mentions if said[1] <= m.start < end and not (m.weak or m.passing))
        if all(w in KINDS or w in _LINKING for w in named) and not any(rest):
            return tuple(w for w in named if w in KINDS)
    return _KIND_OF_EITHER if _asks_which_of_two(question, know, asks) else None


def _loss_of_which(question: Question) -> tuple[str, ...]:
    """Return the words of "loss of | which system", "losing which system" and "which system failure"."""
    words = question.reading.words
    for at in (k for k, word in enumerate(words) if word in ("which", "what")):
        end = next((k for k in range(at + 1, len(words)) if words[k] not in KINDS), len(words))
        named = words[at + 1 : end]
        if not named or not _SYSTEMS.issuperset(named[:1]):
            continue
        before = words[max(0, at - 2) : at]
        if not _LOSS.isdisjoint(before) or not _LOSS.isdisjoint((*named, *words[end : end + 1])):
            return tuple(w for w in named if w not in _LOSS)
    return ()


def _asks_which_of_two(question: Question, know: Knowledge, asks: Collection[int]) -> bool:
    """Return whether one of two things is asked for by naming both alone: "amber bars, no autobrake: hyd 1 or 2?"."""
    places = left_open(question, know)
    if not places or any(not c.is_result for c in question.conditions):
        return False
    after = [m for m in question.reading.mentions if m.start > max(places) and not (m.weak or m.passing)]
    return not after and not places.isdisjoint(asks)


def _said_failed(question: Question, at: int, end: int) -> tuple[int, int] | None:
    """Return where the word for having failed stands that is asked about: "which system | has gone |"."""
    reading = question.reading
    for mention in reading.mentions:
        if at < mention.start < end and not _FAILED.isdisjoint(mention.concepts):
            only = reading.words[at] == "which" or not ("lose" in mention.concepts or "work" in mention.text)
            kind = set(reading.words[mention.start : mention.end]) <= KINDS
            if only and not kind and not _is_a_thing(mention, reading.words):
                return mention.start, mention.end
    return next(((k, k + 1) for k in range(at, end) if reading.words[k] in _WRONG), None)


def _is_a_thing(mention: Mention, words: Sequence[str]) -> bool:
    """Return whether a word for a state is the name of a thing where it stands: "what will | the stop | be like"."""
    named = any(not c.startswith(STATE) for c in mention.concepts)
    return named and words[max(0, mention.start - 1)] in _ARTICLES


def fails_unknown(question: Question) -> bool:
    """Return whether something is told to have failed that is not understood: "both systems ok, BC dead, …"."""
    reading = question.reading
    taken = {k for m in reading.mentions if not (m.is_plain and m.weak) for k in m.taken}
    told = {k for c in question.conditions for k in c.where}
    for mention in reading.mentions:
        if "@lost" not in mention.concepts or mention.weak or mention.start in told:
            continue
        at = mention.start - 1
        while at >= 0 and reading.words[at] in LINKS:
            at -= 1
        unknown = at >= 0 and reading.words[at].isalpha() and at not in taken and reading.words[at] not in NAMELESS
        if unknown and mention.start not in asking(reading.words):
            return True
    return False


def turns_off_unknown(question: Question) -> bool:
    """Return whether a switch is told to be off that is not named: "with System 1 gone and | the switch OFF |"."""
    words = question.reading.words
    at = [k for k in range(1, len(words)) if words[k] == "switch" and words[k - 1] in _SOME]
    told = {k for c in question.conditions for k in c.where} if at else frozenset()
    off = (m for m in question.reading.mentions if "@off" in m.concepts and told.isdisjoint(m.taken)) if at else ()
    return any(k <= m.start <= k + _BESIDE for m in off for k in at)


def left_open(question: Question, know: Knowledge) -> set[int]:
    """Return where a question names one of several things without saying which: "one system"."""
    if know.lexicon.either.isdisjoint(question.reading.named):
        return set()  # sooner known than by looking at each name, several times in a question
    return {
        k
        for m in question.reading.mentions
        if any(know.lexicon.kinds.get(c) == "either" for c in m.concepts)
        for k in m.taken
    }


def told_differs(
    outcomes: Sequence[Mapping[tuple[str, str], str]], question: Question, know: Knowledge
) -> bool:
    """Return whether a question tells a result that is so in none of some outcomes, each a value by table and output:
    "ANTI-SKID is OFF and still no brakes". What leads to that it does not say: the states given are not all there is.
    """
    for c in question.conditions:
        if not c.is_result or c.asked or is_normal(know.base.records[c.table], c.output, c.value, know):
            continue
        now = {outcome[key] for outcome in outcomes if (key := (c.table, c.output)) in outcome}
        if now and c.value not in now:
            return True
    return False


def is_well(condition: Condition, know: Knowledge) -> bool:
    """Return whether a thing is in its normal state."""
    return condition.value == state_tables.normal(know.base.inputs[condition.input])


def is_normal(table: StateTable, output: str, value: str, know: Knowledge) -> bool:
    """Return whether a result is the one with everything normal."""
    return state_tables.outputs(table, {}, know.base).get(output) == value
