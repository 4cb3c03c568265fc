"""The points of a reading that is held against a limit or against bands: the verdict, the bound, what is to be done."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Any

from assistant.practice.marking.finding.elements import point
from assistant.practice.marking.of_results.remarks import ACTION
from assistant.practice.marking.of_statements.case_sides import with_sides
from assistant.practice.marking.of_statements.steps_asked import measured
from assistant.practice.marking.points import Element, Figure, Point
from assistant.practice.marking.questions.asked import Asked
from assistant.practice.marking.questions.parts import POLAR, pieces
from assistant.practice.marking.reading.said import plain
from assistant.quantities.amounts import Amount
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.knowing import Knowledge
from assistant.resolving.results import BandResult
from assistant.resolving.setting_chosen import EXCEEDED

COMPUTED = 0.03


THRESHOLD = re.compile(r"\b(below|under|above|over|past|up to|from) (?:which|what)\b", re.IGNORECASE)


RULE = re.compile(
    r"\b(?:(?<!within the )(?<!within its )(?<!within )limits?|rule|maximum|minimum|why|figure|how much|how far|"
    r"what temperature|what pressure|what speed|reason|value|share|range|band|shortfall|threshold|"
    r"(?:from|above|below|over|under) (?:what|which)|which (?:speeds?|pressures?|temperatures?|heights?|figures?))\b",
    re.IGNORECASE,
)


_DUTY = re.compile(
    r"\b(?:does|do|would) (?:the |your )?(?:\w+ ){1,2}(?:demand|require|call for|ask for)\b|"
    r"(?:^|[.?!;:,]\s*)(?:and )?(?:must|need|should|have to|do (?:you|we|i) (?:need|have))\b|"
    r"(?:^|[.?!;:,]\s*)(?:so |and )?(?:is|are) [^,?.;]*?\b(?:due|needed|necessary|called for)\s*(?:[?,.]|$)",
    re.IGNORECASE,
)
"""A yes-or-no question after a duty: what is outside its limit calls for it."""


def shown_as(value: float, unit: str, know: Knowledge) -> str:
    """Return a documented figure as it is shown, not rounded."""
    from assistant.quantities.show import exact_shown

    return exact_shown(value, unit, know.units)


def check_points(one: Asked, text: str, know: Knowledge) -> list[Point]:
    """Return the verdict on an amount held against its limit, the limit, and what is done where it is exceeded."""
    result: Any = one.result
    failed = [c for c in result.checks if not c.within]
    checks = failed or list(result.checks)
    duty = _DUTY.search(text) or _PASSED.search(text) or asks_action(text, checks[0].limit.exceeded, know)
    verdict = "no" if bool(failed) is not bool(duty) else "yes"
    wants = _WANTS.search(text) is not None and not POLAR.search(text)
    points = [] if wants else [Point(verdict, verdict=verdict)]
    if wants or RULE.search(text):
        points += [_bound_point(check, know) for check in _of_the_kind(checks, text, know)[:1]]
    if failed and (wants or ACTION.search(text)) and checks[0].limit.exceeded:
        points.append(point(_unsourced(checks[0].limit.exceeded), know))
    return points


def _of_the_kind(checks: list[Any], text: str, know: Knowledge) -> list[Any]:
    """Return the checks of the quantity that a question asks the limits of: "which speeds do you judge by"."""
    asked = _WHICH.search(text)
    wanted = know.phrase(asked.group()).concepts & QUANTITIES if asked else frozenset()
    return [c for c in checks if c.unit and measured(c.unit, know) in wanted] or checks


_WHICH = re.compile(
    r"\b(?:what|which) (?:speeds?|pressures?|temperatures?|heights?|altitudes?|masses)\b", re.IGNORECASE
)


def asks_action(text: str, action: str, know: Knowledge) -> bool:
    """Return whether a yes or no is asked for on what is to be done: "does the operator want chocks?"."""
    asking = next((piece for piece in pieces(text) if _DONE.match(piece)), "")
    return bool(asking) and not _verbs(asking, know).isdisjoint(_verbs(action, know))


def _verbs(text: str, know: Knowledge) -> set[str]:
    """Return the longer words of a text that are in no name of several words."""
    reading = know.phrase(text)
    named = {i for m in reading.mentions if len(m.taken) > 1 for i in m.taken}
    return {plain(w) for i, w in enumerate(reading.words) if i not in named and len(w) > _SHORT and w.isalpha()} - _DULL


_SHORT = 4
_DULL = frozenset(
    map(plain, ("about", "above", "after", "before", "below", "brake", "brakes", "limit", "maximum", "within"))
)
_DONE = re.compile(r"(?:so |then |and )?(?:is|are|does|do|will|would|has|have)\b", re.IGNORECASE)
_WANTS = re.compile(r"\bwhat (?:does|do|would) (?:\S+ ){1,3}(?:want|require|ask|call for|expect|say)\b", re.IGNORECASE)
"""What asks for what a rule has done, and for no verdict."""
_PASSED = re.compile(
    r"\b(?:is|was|were|has|have|did|does|are)\b[^.?!,;]*\b(?:exceed|exceeded|exceeds|broken|busted|overstepped|"
    r"over the limit|above the limit|outside the limits?|too (?:fast|hot|heavy|high))\b", re.IGNORECASE,
)  # fmt: skip
"""A yes-or-no question after what is not within its limit."""


def _bound_point(check: Any, know: Knowledge) -> Point:
    """Return the limit that a reading is held against: both ends of a range."""
    limit = check.limit
    tolerance = COMPUTED if check.bound_from else 0.0
    if limit.minimum and limit.maximum:
        shown = " to ".join(shown_as(v.value, v.unit, know) for v in (limit.minimum, limit.maximum))
        figures = tuple(Figure(v.value, v.unit, tolerance) for v in (limit.minimum, limit.maximum))
        return Point(shown, figures, figures_suffice=True)
    sense = "max" if limit.maximum else "min" if limit.minimum else ""
    figure = Figure(check.bound, check.unit, tolerance, sense)
    return Point(shown_as(check.bound, check.unit, know), (figure,), figures_suffice=True)


def _unsourced(text: str) -> str:
    plainly = re.sub(r"^If it was exceeded, ", "", text)
    return re.sub(r"\s*\([A-Z]{2,4} [^)]*\)", "", plainly).rstrip(".")


def bands_points(one: Asked, text: str, know: Knowledge) -> list[Point]:
    """Return the points of bands: of the one in which a reading lies, or of all where none is given."""
    result: Any = one.result
    record, rule = result.bands, result.rule
    if result.given != result.given:
        clauses = re.split(r";\s+|,\s+(?=at |below |over |above )", record.says.rstrip("."))
        made = [point(clause, know) for clause in clauses]
        sided = with_sides(made, know.reader.read(text), know)
        if sided != made:
            return sided
        bounded = THRESHOLD.search(one.answer.question) is not None
        return [p._replace(figures_suffice=bounded and bool(p.figures)) for p in made]
    if asks_rule(record, know.reader.read(text).amounts) or _BOTH_SIDES.search(text):
        made = [point(clause, know) for clause in re.split(r";\s+", record.says.rstrip("."))]
        return with_sides(made, know.reader.read(text), know)
    polar = bool(POLAR.search(text))
    good = (rule.verdict == "within") is not bool(_DUTY.search(text) or _asks_of_band(record, text, know))
    points = [Point(v, verdict=v) for v in (("yes" if good else "no"),) if polar]
    condition, _, action = rule.says.partition(": ")
    asking = _TITLE.sub("", text)
    acting = ACTION.search(text) or _BY_THE_BOOK.search(text) or _acts_named(record, text)
    action = action or (condition if _ORDERS.match(condition) else "")
    if RULE.search(asking) or not (polar or (action and acting)):
        figures = _band_figures(result)
        said = condition.partition(";")[0]
        if not action and not RULE.search(asking) and not re.search(r"\d", said):
            points.append(point(said, know))
        elif figures:
            points.append(Point(condition, figures, figures_suffice=True, any_figure=True))
    if action and (acting or not polar):
        points.append(point(action, know)._replace(chosen=bool(_acts_named(record, text))))
    return points + _share(result, text)


_SHARE_ASKED = re.compile(r"\b(?:by )?(?:what|which|how many) (?:percentage|per ?cent)\b", re.IGNORECASE)


def _share(result: Any, text: str) -> list[Point]:
    """Return by what share a reading is off its reference, where that is asked for."""
    if not result.reference or not _SHARE_ASKED.search(text):
        return []
    share = 100 * abs(result.reference - result.given) / result.reference
    return [Point(f"{share:.3g}%", (Figure(share, "percent", COMPUTED),), figures_suffice=True)]


def _acts_named(record: Any, text: str) -> frozenset[str]:
    """Return what two bands have done, where a question names both and asks which it is: "reject or continue?"."""
    verbs = {_verb(rule) for rule in record.rules}
    for one, other in re.findall(r"\b([\w-]+)(?: it| them)?,? or (?:do (?:you|we|they) )?([\w-]+)\b", text.lower()):
        if one != other and {one, other} <= verbs:
            return frozenset((one, other))
    return frozenset()


def _verb(rule: Any) -> str:
    """Return the first word of what a band has done."""
    action = rule.says.rpartition(": ")[2].split()
    return str(action[0]).strip(",").lower() if action else ""


def other_acts(one: Asked, text: str) -> list[Point]:
    """Return what another band has done that a question names as the choice: "reject" where it is "continue"."""
    result: Any = one.result
    if not isinstance(result, BandResult) or result.given != result.given:
        return []
    others = _acts_named(result.bands, text) - {_verb(result.rule)}
    return [Point(word, (), (Element(frozenset(), (plain(word),), _NAMED),), kept=True) for word in others]


def _asks_of_band(record: Any, text: str, know: Knowledge) -> bool:
    return any(asks_action(text, rule.says, know) for rule in record.rules if rule.verdict != "within")


_TITLE = re.compile(r"^[^?]*\d[^?]*?[.:] (?=what\b[^?]*\?\s*$)", re.IGNORECASE)
"""What is read, told before a short question of what follows: "tyre share below: 10%. What follows?"."""
_BY_THE_BOOK = re.compile(r"\bwhat (?:does|do) the books? say\b", re.IGNORECASE)
_ORDERS = re.compile(r"(?:request|call|release|replace|leave|stop|reject|wait)\b", re.IGNORECASE)
"""Verbs with which a rule that tells no condition orders something."""


_BOTH_SIDES = re.compile(
    r"\bbelow,? (?:and|or) (?:at or )?above\b|\babove,? (?:and|or) (?:at or )?below\b", re.IGNORECASE
)


def asks_rule(record: Any, amounts: Iterable[Amount]) -> bool:
    """Return whether a question names the edges of bands themselves, and so asks for the rule."""
    shares = {v for rule in record.rules if rule.unit == "percent" for v in (rule.value, 100 - rule.value)}
    edges = {rule.value for rule in record.rules if rule.test != "otherwise"}
    named = [
        a
        for a in amounts
        if (a.unit == "percent" and a.value in shares) or (a.unit == record.unit and a.value in edges)
    ]
    return len(named) > 1


def chosen_points(one: Asked, text: str, know: Knowledge) -> list[Point]:
    """Return the setting that a policy chooses, and why, where that is asked for: what is named, or the limit."""
    result: Any = one.result
    setting = Point(result.setting, (), point(result.setting, know).elements, kept=True)
    if not know.reader.read(text).has("why"):
        return [setting]
    limit = result.limit.maximum
    figures = (Figure(limit.value, "percent", 0.0, "higher"), Figure(result.share, "percent", COMPUTED))
    if result.when == EXCEEDED:
        over = f"more than {shown_as(limit.value, limit.unit, know)}"
        return [setting, Point(over, figures, figures_suffice=True, any_figure=True)]
    named = Element(frozenset((result.when,)), (plain(result.when),), _NAMED)
    return [setting, Point(result.because.partition(",")[0], (), (named,), kept=True)]


_NAMED = 3.0


def edges_of(result: Any) -> tuple[Figure, ...]:
    """Return the edge that decides where a reading is held against bands; none where nothing is read."""
    banded = isinstance(result, BandResult) and result.given == result.given
    return _band_figures(result) if banded else ()


def _band_figures(result: Any) -> tuple[Figure, ...]:
    """Return the figure of the band that decides: as the rule says it, as its test has it, as it comes to."""
    record, rule = result.bands, result.rule
    decisive = rule if rule.test != "otherwise" else _nearest_edge(result)
    if decisive is None:  # one rule for whatever is read: it has no edge
        return ()
    least = (decisive.test == "below") is not (decisive is rule and rule.verdict == "within")
    sense, turned = ("min", "max") if least else ("max", "min")
    if decisive is not rule:  # within: what is said may be what is allowed, or what would be too much
        sense = turned = ""
    found = [Figure(decisive.value, decisive.unit or record.unit, 0.0, sense)]
    if decisive.unit == "percent" and result.reference:
        found.append(Figure(100 - decisive.value, "percent", 0.0, turned))
        found.append(Figure(result.reference * decisive.value / 100, record.unit, 0.0, sense))
    return tuple(found)


def _nearest_edge(result: Any) -> Any:
    """Return the rule whose edge a reading in the band between all edges is nearest to; None where none has an edge."""
    record, given = result.bands, result.given
    share = 100 * given / result.reference if result.reference else given

    def distance(rule: Any) -> float:
        return float(abs(rule.value - (share if rule.unit == "percent" and record.unit != "percent" else given)))

    return min((rule for rule in record.rules if rule.test != "otherwise"), key=distance, default=None)
