"""Which records a question to be marked asks for: asked whole, in its parts, or with the form of its answer left out.

An examiner asks more in a sentence than a pilot does ("how many, what colour, and where are they kept?"), and says how
to answer ("yes or no, and give the limit"). Each part is asked of the same resolvers as a question of its own.
"""

from __future__ import annotations

import re

from assistant.conversation.reading_turns.readings import question_of
from assistant.practice.marking.finding.cases import coordinated, was_and_is
from assistant.practice.marking.finding.whichever import asks_choice, tells_choice, with_choice, without_choice
from assistant.practice.marking.of_statements.by_law import of_law
from assistant.practice.marking.of_statements.compound import headed, joined, of_each
from assistant.practice.marking.of_statements.itemised import of_each_member, of_its_cases
from assistant.practice.marking.of_statements.steps_asked import steps_asked
from assistant.practice.marking.questions.asked import Asked, as_asked, ask, things
from assistant.practice.marking.questions.asked_whole import ORDER_ASKED, STEPS, asked_whole
from assistant.practice.marking.questions.both_ways import apart, of_list
from assistant.practice.marking.questions.by_table import in_one_table, means_left
from assistant.practice.marking.questions.completed import at_each_number, with_the_like
from assistant.practice.marking.questions.lessened import by_share, nearest, offered, shortened
from assistant.practice.marking.questions.parts import POLAR, by_parts, head_of, measured_parts, parts_of, pieces
from assistant.practice.marking.questions.phrased import CHANGE, at_what_speed, brought_on, in_full
from assistant.practice.marking.questions.siblings import asks_both_ends, with_siblings
from assistant.practice.marking.questions.sure_parts import of_each_part
from assistant.practice.marking.requiring.beside_a_state import with_statements, without_states
from assistant.practice.marking.requiring.calculated import of_each_calculation
from assistant.practice.marking.requiring.carried_on import on_the_subject
from assistant.practice.marking.requiring.each_verdict import each_judged
from assistant.practice.marking.requiring.every_part import instead_of_state, with_every_part
from assistant.practice.marking.requiring.listing import listed
from assistant.practice.marking.requiring.paragraph_told import with_told
from assistant.practice.marking.requiring.reasons import (
    both_cases,
    of_what_it_explains,
    with_its_figure,
    with_reason,
    with_why,
)
from assistant.practice.marking.requiring.side_by_side import of_each_thing
from assistant.practice.marking.requiring.state_items import of_its_state
from assistant.practice.marking.requiring.state_told import by_its_state
from assistant.practice.marking.requiring.steps_by_part import by_clause
from assistant.practice.marking.requiring.told_whole import told_whole
from assistant.practice.marking.requiring.what_is_done import what_is_done
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.ranking import candidates

_STRUCTURED = (
    r.CheckResult, r.BandResult, r.TableResult, r.TablesResult, r.ModelResult, r.ProcedureResult, r.LossResult,
    r.CauseResult, r.ChangeResult, r.CompareResult, r.NotApplicable, r.VariantResult, r.Conversion,
)  # fmt: skip

_VERDICTS = (r.CheckResult, r.BandResult, r.TableResult, r.TablesResult, r.NotApplicable, r.FactResult)
_STEPS_ASKED = re.compile(
    r"\b(?:what (?:do|should|must|would) (?:you|we|i|they) do|steps|drill|procedure|in order|"
    r"what (?:\w+ )?(?:things? )?follows?|"
    r"talk me through|how (?:do|should|would|must) (?:you|we|i) (?:cope|deal|handle|manage|treat))\b",
    re.IGNORECASE,
)
_THROUGH = re.compile(r"\b(?:talk|take|walk|run) (?:me|us) through\b", re.IGNORECASE)
_TOLD_THROUGH = 0.05
"""Score that is enough where a question can ask for nothing but steps."""



def asked(text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return what answers a question, in the order of its parts; nothing where nothing loaded does."""
    choice = asks_choice(text)
    text = without_choice(brought_on(at_what_speed(in_full(CHANGE.sub("what changed about ", text)))))
    text = apart(text, know)
    parts = parts_of(text)
    each = of_each_member(text, know) or at_each_number(parts, text, know) or of_law(text, know)
    each = each or of_its_state(text, know) or of_list(text, know)
    if each:
        return each
    found = _asked(parts, text, know)
    each = each_judged(found, parts, text, know)
    if each:
        return each
    beside = with_statements(found, parts, text, know)
    if len(beside) > len(found):
        return beside
    several = of_its_cases(found, text, know) or of_each_thing(found, text, know)
    if several:
        return several
    found = _set_by_case(found, text, know) or found
    if choice and not any(tells_choice(one.answer.text) for one in found):
        found = with_choice(text, know) or found
    if len(parts) > 1:
        found = on_the_subject(with_every_part(found, parts, text, know), parts, text, know)
        found = tuple(of_what_it_explains(one, know) for one in with_the_like(found, parts, know))
        found = without_states(what_is_done(found, parts, text, know), parts, text)
    return with_told(of_each_part(found, parts, text, know) or found, parts, text, know)


def _asked(parts: list[str], text: str, know: Knowledge) -> tuple[Asked, ...]:
    whole = (_steps(text, know) if len(parts) < 2 else None) or asked_whole(text, know)
    if whole and _is_beside(whole, text, know):
        whole = None
    whole = _headed_steps(whole, parts, text, know) or whole
    judged = by_share(text, know) if whole is None and any(POLAR.match(piece) for piece in pieces(text)) else ()
    if judged:
        return judged
    steps = steps_asked(parts, text, whole, know) or by_clause(text, whole, know)
    if steps:
        return steps
    whole = _all_steps(whole, len(parts), know) if whole else None
    several = _in_parts(whole, parts, text, know) or _several(parts, text, whole, know)
    if several:
        return several
    if whole and len(parts) < 2 and isinstance(whole.result, r.FactResult):
        return _of_one(whole, text, know)
    if whole and len(parts) < 2 and isinstance(whole.result, r.LimitResult):
        return _with_more(whole, text, know)
    if whole and (isinstance(_first(whole.result), _STRUCTURED) or len(parts) < 2):
        return (*with_siblings(whole, text, know), *measured_parts(parts, text, whole, know))
    split = by_parts(parts, text, know) if len(parts) > 1 else []
    if len(split) > 1 or (split and not whole):
        return tuple(split)
    if whole:
        return with_siblings(whole, text, know)
    return _as_it_comes(parts, text, know)


def _in_parts(whole: Asked | None, parts: list[str], text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return what answers the parts of a question of which one thing alone was taken for the whole."""
    told = by_its_state(whole, parts, text, know) or of_each_calculation(whole, parts, text, know)
    told = told or in_one_table(whole, parts, text, know) or means_left(whole, text, know)
    return told or instead_of_state(whole, parts, text, know)


def _of_one(whole: Asked, text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return a statement with what is asked for beside it: its reason, the other case."""
    whole = with_why(whole, text, know)
    return with_its_figure(whole, text, know) or both_cases(whole, text, know) or with_reason(whole, text, know)


def _several(parts: list[str], text: str, whole: Asked | None, know: Knowledge) -> tuple[Asked, ...]:
    """Return what answers each of several things that a question asks for at once; nothing where it asks for one."""
    if whole and len(parts) > 1 and asks_both_ends(whole.result, text):
        return (whole,)
    if whole is None or isinstance(_first(whole.result), (r.FactResult, r.LimitResult)):
        both = told_whole(parts, text, know)
        if both:
            return both
    steps = whole is not None and isinstance(whole.result, r.ProcedureResult)
    each = of_each([text], text, know) if len(parts) < 2 else ()
    found = (each if len(each) > 2 else ()) or tuple(coordinated(text, know)) or headed(parts, text, steps, know)
    found = found or was_and_is(parts, text, know) or _steps_and_time(text, know)
    found = found or of_each(parts if len(parts) > 1 else [text], text, know)
    if found:
        return found
    tabled = whole is not None and isinstance(whole.result, (r.TableResult, r.TablesResult))
    figures = _figures(parts, know) if tabled and not POLAR.search(text) else ()
    if figures:
        return figures
    two = listed(whole, text, know) or (joined(whole, text, know) if len(parts) < 2 else ())
    return tuple(each for one in two for each in with_reason(one, text, know))


def _as_it_comes(parts: list[str], text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return what answers a question with less in it, or comes nearest."""
    found = by_share(text, know) or shortened(text, know) or offered(text, know) or nearest(text, know)
    if len(found) == 1:
        found = _with_more(found[0], text, know)
    return tuple(_all_steps(one, len(parts), know) for one in found)


def _figures(parts: list[str], know: Knowledge) -> tuple[Asked, ...]:
    """Return the stated figures that answer each of several parts by itself: "when is it lost, and when empty?"."""
    found = [ask(part, know) for part in parts] if len(parts) > 1 else []
    made = tuple(each[1] for each in found if each and isinstance(each[1].result, r.LimitResult))
    return made if len(made) == len(parts) else ()


def _first(result: r.Result) -> r.Result:
    return result.first if isinstance(result, r.BothResult) else result


def _steps(text: str, know: Knowledge) -> Asked | None:
    """Return the procedure of which a question asks the steps, though a statement on its subject comes first."""
    through = _THROUGH.search(text) is not None  # it names where to begin and end, which no record need know
    question = question_of(text.partition(" from ")[0] if through else text, know, "")
    by_name = _STEPS_ASKED.search(text) is not None
    if _ONLY_WHY.search(text) and not _WHAT_TO_DO.search(text):
        return None  # "in the drill for …, why do you …" asks for the reason of one step
    if not (by_name or question.reading.has("steps", "order_of", "memory_items")):
        return None
    titled = _titled(text, question, know) if by_name else None
    if titled:
        return titled
    for candidate in candidates(question, know)[: None if through else 3]:
        result = candidate.result
        least = _TOLD_THROUGH if through else STEPS
        if not isinstance(result, r.ProcedureResult) or candidate.score < least or not candidate.match:
            continue
        named = things(question_of(result.procedure.title, know, ""), know) & things(question, know)
        if named and (through or not candidate.match.barred):
            return as_asked(text, question, result._replace(step=None) if through else result, know)
    return None


def _titled(text: str, question: Question, know: Knowledge) -> Asked | None:
    """Return the procedure that a question for steps calls by its title, and by the longest of those that it holds."""
    named = know.phrase(text).concepts | question.reading.concepts
    found: list[tuple[int, str]] = []
    for name in know.base.ids("procedures"):
        told = [m for m in know.phrase(know.base.records[name].title).mentions if not m.weak]
        if told and all(m.concepts & named for m in told):
            found.append((len({i for m in told for i in m.taken}), name))
    most = max((size for size, _ in found), default=0)
    longest = [name for size, name in found if size == most]
    if len(longest) != 1:
        return None
    procedure = know.record(longest[0], question.variant)
    return as_asked(text, question, r.ProcedureResult(procedure), know)


def _set_by_case(found: tuple[Asked, ...], text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return the setting that a case calls for, where a share that is within its limit leaves it to that case."""
    result = found[0].result if len(found) == 1 else None
    if not isinstance(result, r.CheckResult) or POLAR.search(text) or not _WHICH_SETTING.search(text):
        return ()
    if not all(c.within for c in result.checks):
        return ()
    left = [piece for piece in pieces(text) if not know.phrase(piece).amounts]
    one = ask(", ".join(left), know)
    return (one[1],) if one and isinstance(one[1].result, r.FactResult) else ()


_WHICH_SETTING = re.compile(r"\b(?:which|what) (?:\w+ )?setting\b", re.IGNORECASE)


def _headed_steps(whole: Asked | None, parts: list[str], text: str, know: Knowledge) -> Asked | None:
    """Return the procedure that stands before three parts or more which a state's results answer only in part."""
    if whole is None or len(parts) < _MANY or not isinstance(whole.result, (r.TableResult, r.TablesResult)):
        return None
    head = head_of(text, parts)
    told = _titled(head, question_of(head, know, ""), know) if head and head.isupper() else None
    return told if told and not any(POLAR.match(part) for part in parts) else None


_MANY = 3
_TWO_PARTS = 2
_ONLY_WHY = re.compile(r"(?:^|[.,:;] )why (?:do|does|is|are|must|should|would|did)\b", re.IGNORECASE)
_WHAT_TO_DO = re.compile(r"\b(?:what|which|how)\b", re.IGNORECASE)


def _is_beside(one: Asked, text: str, know: Knowledge) -> bool:
    """Return whether an answer gives no verdict where "yes or no" is asked for, though a limit would."""
    if isinstance(one.result, r.ModelResult) and (not one.result.values or _asks_verdict(text, know)):
        return True
    both = isinstance(one.result, r.BothResult) and isinstance(one.result.first, _VERDICTS)
    if not re.search(r"\byes or no\b", text, re.IGNORECASE) or isinstance(one.result, _VERDICTS) or both:
        return False
    return bool(shortened(text, know))


def _asks_verdict(text: str, know: Knowledge) -> bool:
    """Return whether a yes-or-no question is one that a limit decides: "is FIRM enough, 1,700 m of 2,000 m?"."""
    return any(POLAR.match(piece) for piece in pieces(text)) and bool(by_share(text, know))


def _steps_and_time(text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Return a sequence and the time it takes, where both are asked for: "in order, with the time it takes"."""
    if not ORDER_ASKED.search(text):
        return ()
    said = pieces(text)
    kept = [piece for piece in said if not _WITH_TIME.match(piece)]
    if len(kept) == len(said):
        return ()
    steps, time = ask(_FORM_OF_LIST.sub("", ", ".join(kept)), know), ask(text, know)
    if not steps or not time or not isinstance(time[1].result, r.LimitResult):
        return ()
    fact = getattr(steps[1].result, "fact", None)
    return (steps[1], time[1]) if fact and "steps" in fact.answers else ()


_FORM_OF_LIST = re.compile(
    r"\b(?:give|state|name|list) (?:me )?(?:the )?(?:(?:two|three|four|five|six) )?", re.IGNORECASE
)
"""What says in which form a list is wanted, and how long it is."""
_WITH_TIME = re.compile(r"(?:and |with )+(?:the |its )?(?:time|duration)|(?:and )?how long", re.IGNORECASE)


def _all_steps(one: Asked, parts: int, know: Knowledge) -> Asked:
    """Return a procedure whole where a question asks for its steps, or for more than one of them."""
    if not isinstance(one.result, r.ProcedureResult) or one.result.step is None:
        return one
    asks_whole = parts > 1 or one.question.reading.has("steps", "order_of", "list_all")
    asks_whole = asks_whole and not (parts < _TWO_PARTS and _ONLY_WHY.search(one.answer.question))
    return as_asked(one.answer.question, one.question, one.result._replace(step=None), know) if asks_whole else one


def _with_more(one: Asked, text: str, know: Knowledge) -> tuple[Asked, ...]:
    """Add to a stated figure its reason, or else the figures asked for beside it, as far as they are asked for."""
    reason = with_reason(one, text, know) if isinstance(one.result, r.LimitResult) else ()
    return reason if len(reason) > 1 else with_siblings(one, text, know)
