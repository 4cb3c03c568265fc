"""What was told before the last turn, asked for again: the limit, after what followed from it; where "that one" stands.

Only what was told in this conversation is meant, so that no other figure or paragraph is ever given for it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from assistant.answering.answer import Answer
from assistant.conversation.context import Context
from assistant.conversation.control_words.controls import control
from assistant.knowledge.base import Base
from assistant.resolving.knowing import Knowledge
from assistant.resolving.results import CheckResult, LimitResult, Result
from assistant.understanding.mentions import Reading

_LIMIT = (
    r"^\W*(?:(?:and|so|but|sorry|ok|okay|then|hang on|wait)\W+)*what (?:was|were) (?:the|that) (?:actual )?"
    r"(?:limit|maximum|max|minimum)(?: (?:again|then|there|though|on that|for that|figure|speed))*\W*$")
_NAMED = r"\b(?:the|that) (\w{4,})(?: one| rule| limit| figure| bit| thing)\b"
_ASIDE = r"^\W*(?:never mind|forget that|ok|okay|right|fine)\W+(?=\w)"
_SOURCE = (
    r"\b(?:source|ref\w*|para\w*|where|written|book|manual|document|publication|section|chapter|page|says who|who says)"
    r"\b")
_THOSE = (
    r"\b(?:the|those|these|that|this|a)(?: (?:limit|figure|one|value|rule|bit|factor))?\b(?! \w+ing\b)[ ,]*"
    r"(?=\W*$|where|what|says|who|from|come|came|written)")
_SHORT = 80
_BEGINNING = 5
"""Letters by which a word names what was told: "the briefing one", of a brief."""


def limit_again(text: str, context: Context) -> Answer | None:
    """Return the limit told or held against before the last turn, to a turn that asks no more than what it was."""
    if isinstance(context.result, (LimitResult, CheckResult)) or "what w" not in text[:60].lower():
        return None
    if not re.match(_LIMIT, text[:60], flags=re.IGNORECASE):
        return None
    for result, answer in _lately(context):
        if isinstance(result, (LimitResult, CheckResult)):
            return answer._replace(question=text)
    return None


def named_before(text: str, context: Context, base: Base) -> Answer | None:
    """Return the answer told lately whose source a turn asks for by a word: "whose rule is the briefing one?"."""
    found = re.search(_NAMED, text[:100], flags=re.IGNORECASE) if context.answer else None
    said = re.sub(_ASIDE, "", text.replace(found.group(), "that"), flags=re.IGNORECASE) if found else ""
    if found is None or control(said) != "source":
        return None
    word = found.group(1).lower()[:_BEGINNING]
    for _, answer in _lately(context):
        record = base.records.get(answer.entry)
        about = (str(getattr(record, field, "")).lower() for field in ("title", "of", "says"))
        if any(re.search(rf"\b{re.escape(word)}", words) for words in about):
            return answer
    return None


def figure_named(text: str, context: Context, knowledge: Knowledge) -> Answer | None:
    """Return the answer told in this conversation whose figure a turn names that asks for its source, the latest."""
    if context.answer is None or len(text) > _SHORT or not re.search(_SOURCE, text, flags=re.IGNORECASE):
        return None
    named = _figure_in(knowledge.reader.read(text))
    if named is None:
        return None
    figure, said = named
    pointing, bare = (re.sub(_THOSE, word, said, flags=re.IGNORECASE) for word in ("that", ""))
    if "source" not in (control(said), control(pointing), control(bare)):
        return None
    told = (answer for _, answer in _lately(context) if figure in _figures(answer.text))
    return next(told, None)


def _figure_in(reading: Reading) -> tuple[float, str] | None:
    """Return the one figure that a turn names, in its own unit, with what is said besides; None for none or more."""
    words = reading.words
    found = [(a.value, a.start, a.end) for a in reading.amounts]
    found = found or [(float(word), k, k + 1) for k, word in enumerate(words) if word.isdecimal()]
    if len(found) != 1:
        return None
    figure, start, end = found[0]
    return figure, " ".join((*words[:start], *words[end:])).replace(" ,", ",")


def _figures(text: str) -> set[float]:
    """Return the figures in a text."""
    return {float(each.replace(",", "")) for each in re.findall(r"\d[\d,]*(?:\.\d+)?", text)}


def _lately(context: Context) -> Iterator[tuple[Result | None, Answer]]:
    """Yield what was told, the latest first, with how it was answered."""
    if context.answer:
        yield context.result, context.answer
    for turn in context.earlier:
        yield turn.result, turn.answer
