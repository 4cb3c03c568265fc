"""Which of two figures told lately is the greater, and by how much: "which of those is higher", "so which is quicker".

Such a turn names nothing. It is of the last two answers whose figures measure the same, whatever gave them: a limit, a
calculation, a schedule. How far two limits are apart is told by `figures_apart.py` before it.
"""

from __future__ import annotations

import re

from assistant.answering.answer import ANSWER, Answer
from assistant.answering.parts import difference_unit
from assistant.conversation.context import LATELY, Context
from assistant.quantities.show import given_shown
from assistant.resolving.knowing import Knowledge
from assistant.resolving.results import FactResult, LimitResult, ModelResult, ScheduleResult

_MOST_CHARACTERS = 70
_TOLD = (LimitResult, ModelResult, ScheduleResult, FactResult)
_LESS = frozenset({
    "lower", "slower", "less", "smaller", "shorter", "lighter", "cooler", "tighter", "stricter", "weaker", "lowest",
    "least", "smallest", "softer", "gentler",
})  # fmt: skip
_MORE = frozenset({
    "higher", "faster", "more", "greater", "bigger", "larger", "longer", "heavier", "hotter", "stronger", "highest",
    "most", "biggest", "largest", "harder", "firmer",
})  # fmt: skip
_QUICK = frozenset({"quicker", "faster", "sooner", "quickest"})
_APART = frozenset({
    "difference", "differ", "differs", "apart", "between", "gap", "separates", "separate", "different", "diff",
    "extra",
})  # fmt: skip
_PAIR = frozenset({"those", "two", "both", "them", "these", "which", "between", "apart"})
_BARE = _LESS | _MORE | _QUICK | _APART | _PAIR | {
    "how", "much", "many", "far", "what", "whats", "what's", "is", "are", "the", "that", "thats", "that's",
    "s", "of",
    "by", "so", "and", "then", "do", "does", "they", "one", "ones", "it", "a", "there", "ok", "hm", "um",
    "now", "than",
    "other", "from", "each", "long", "fast", "hot", "heavy", "high", "knots", "degrees", "seconds", "big",
    "in", "or",
    "normal", "standard", "short", "compared", "to", "with", "again", "exactly", "sorry", "off", "be", "would",
    "first",
    "quite", "this", "just", "right", "well", "who", "er", "er,", "please", "figure", "figures", "numbers",
    "values",
    "limit", "limits", "it's", "its", "minutes", "kilos", "kilograms", "metres", "psi", "which's", "make", "makes",
}  # fmt: skip
_OF_TIME = ("s", "min", "h")
_MEASURES = {
    "hotter": ("degC", "degF", "K"), "cooler": ("degC", "degF", "K"), "heavier": ("kg",), "lighter": ("kg",),
}  # fmt: skip
"""Words that hold figures of one kind alone against each other, with its units: of two energies neither is hotter."""
_SAME = 1e-9


def greater_of_two(text: str, context: Context, knowledge: Knowledge) -> Answer | None:
    """Return how two figures told lately stand to each other, to a turn that asks no more than that."""
    if context.asked is None or context.answer is None or len(text) > _MOST_CHARACTERS:
        return None
    words = re.findall(r"[\w']+", text.lower().replace("\u2019", "'"))
    if not _asks(words) or not isinstance(context.result, _TOLD):
        return None
    like = _like(context, knowledge) if _measures(words, context.answer, knowledge) else None
    return _apart(text, words, context.answer, like, knowledge) if like else None


def _asks(words: list[str]) -> bool:
    """Return whether words ask how two figures stand to each other, and name nothing."""
    if not _BARE.issuperset(words):
        return False
    compares = not (_LESS | _MORE | _QUICK | _APART).isdisjoint(words)
    return compares or words[-3:] == ["by", "how", "much"]


def _measures(words: list[str], last: Answer, knowledge: Knowledge) -> bool:
    """Return whether the figure told last is of the kind by which words ask how much the one is more than the other;
    which of two is hotter is told by their energies as well.
    """
    if not {"how", "much"} <= set(words):
        return True
    kinds = {knowledge.units.get(unit).dimension for word in words for unit in _MEASURES.get(word, ())}
    return not kinds or any(knowledge.units.get(v.unit).dimension in kinds for v in last.values[:1])


def _like(context: Context, knowledge: Knowledge) -> Answer | None:
    """Return the answer told lately whose figure measures the same as the last one's and is another, the latest."""
    last = context.answer
    if last is None or last.outcome != ANSWER or not last.values:
        return None
    for turn in context.earlier[:LATELY]:
        answer = turn.answer
        if not isinstance(turn.result, _TOLD) or not answer.values or answer.text == last.text:
            continue
        one, other = last.values[0], answer.values[0]
        if knowledge.units.get(one.unit).dimension == knowledge.units.get(other.unit).dimension:
            return answer
    return None


def _apart(text: str, words: list[str], last: Answer, before: Answer, knowledge: Knowledge) -> Answer:
    """Return by how much the greater of two figures is greater, with both as they were told."""
    unit = last.values[0].unit
    value = knowledge.units.convert(before.values[0].value, before.values[0].unit, unit)
    apart = last.values[0].value - value
    greater, smaller = (last, before) if apart > 0 else (before, last)
    one, other = _told(greater), _told(smaller)
    shown = given_shown(round(abs(apart), 6), difference_unit(unit), knowledge.units)
    if abs(apart) < _SAME:
        said = f"They are the same. {_told(last)}. {_told(before)}."
    elif not _LESS.isdisjoint(words) or (not _QUICK.isdisjoint(words) and unit in _OF_TIME):
        said = f"The smaller, by {shown}, is {other}. The greater is {one}."
    else:
        said = f"The greater, by {shown}, is {one}. The smaller is {other}."
    gap = last.values[0]._replace(value=abs(apart), unit=difference_unit(unit))
    return last._replace(
        question=text, text=said, values=(gap, *last.values[:1], *before.values[:1]), working="", aloud=(),
        sources=tuple(dict.fromkeys((*last.sources, *before.sources))),
    )  # fmt: skip


def _told(answer: Answer) -> str:
    """Return what an answer begins with: its figure, and what that is of."""
    return answer.text.partition(". ")[0].rstrip(".")
