"""What a number of a planning model says of one held against it: enough or not, how far apart, which setting."""

from __future__ import annotations

from assistant.answering.parts import alike, as_given, rounded
from assistant.quantities.show import exact_shown, given_shown, round_shown
from assistant.resolving import results as r
from assistant.resolving.knowing import Knowledge, Question
from assistant.resolving.model_choices import asks_difference
from assistant.understanding.clauses import asks_whether

_ENOUGH, _REACHED = "enough", "reached"
"""What a model's `verdict` says of a result: what is given must be as much at least, or reaches it."""
_OPEN = frozenset(("what", "which", "how", "whats", "when", "where"))
_HELPING = frozenset((
    "ok", "okay", "alright", "legal", "is", "are", "will", "would", "can", "could", "do", "does", "enough", "may",
    "should",
))  # fmt: skip
_COMPARED = frozenset({
    "less", "more", "below", "above", "under", "over", "exceed", "exceeds", "than", "longer", "shorter", "slower",
    "faster",
})  # fmt: skip
"""Words by which a verdict may be meant either way: how far apart the two are answers them."""
_DENIED = frozenset({"not", "no", "never", "insufficient", "short", "little", "tight", "narrow"})


def verdict(result: r.ModelResult, question: Question, know: Knowledge) -> str:
    """Return what opens the answer to whether an amount is enough, or reaches a result: "Yes, 30 m is enough. "."""
    kind = dict(result.model.extra).get("verdict", "")
    given = result.against
    words = result.weighed or question.reading.words
    if given is None or result.solved or not kind or not _COMPARED.isdisjoint(words):
        return ""
    if not result.weighed and not _asks_whether(words):
        return ""
    reached = {given >= value.value or alike(value.value, given) for value in result.values}
    if len(reached) > 1:
        return ""
    said = as_given(given, result.model.output_unit, question, know)
    if kind == _REACHED:
        return f"Yes, {said} is above it. " if True in reached else ""
    told = f"{said} is {'enough' if True in reached else 'not enough'}. "
    if result.weighed and not _DENIED.isdisjoint(words):
        return told  # a yes to "so that isn't enough" may be taken either way
    yes = (True in reached) != ("too" in words)
    return f"{'Yes' if yes else 'No'}, {told}"


def _asks_whether(words: tuple[str, ...]) -> bool:
    """Return whether a question wants yes or no, wherever it stands: "20 minutes, is that enough", "do we fit"."""
    plain = _OPEN.isdisjoint(words) and not _HELPING.isdisjoint(words)
    return plain or asks_whether(words)


def number(value: float, unit: str, against: float | None, know: Knowledge) -> str:
    """Return a number as display rounds it, or finer where it would look like the one that it is held against."""
    text = rounded(value, unit, know)
    if against is None or alike(value, against) or text != given_shown(against, unit, know.units):
        return text
    return exact_shown(round(value, 1), unit, know.units)


def apart(value: float, given: float, unit: str, know: Knowledge) -> str:
    """Return how far a result is from the one given: "That is 92 m less than 1,200 m."."""
    said = given_shown(given, unit, know.units)
    if alike(value, given):
        return f" That is {said} exactly."
    difference = abs(value - given)
    shown = rounded(difference, unit, know)
    if difference < 1 or shown == round_shown(0.0, unit, know.units):
        shown = exact_shown(float(f"{difference:.1g}"), unit, know.units)
    return f" That is {shown} {'more' if value > given else 'less'} than {said}."


def difference(result: r.ModelResult, question: Question) -> float | None:
    """Return how far two cases are apart, where a question asks that: "how many minutes do the fans save"."""
    if len(result.values) != 2 or not asks_difference(question.reading.words):
        return None
    one, two = (value.value for value in result.values)
    return abs(one - two)


def setting(result: r.ModelResult, know: Knowledge) -> str:
    """Return the setting that was asked for, with what each of them gives, or that none does."""
    given = given_shown(result.against or 0.0, result.model.output_unit, know.units)
    told = [f"{v.under} {rounded(v.value, v.unit, know)}" for v in result.values]
    if result.picked is None:
        return f"None: no setting gives {given}. {upper_of(result)}: {', '.join(told)}."
    return f"{result.values[result.picked].under.split(',')[0]}, for {given}. {upper_of(result)}: {', '.join(told)}."


def upper_of(result: r.ModelResult) -> str:
    """Return what a model is of, as a sentence begins with it."""
    return result.model.of[:1].upper() + result.model.of[1:]
