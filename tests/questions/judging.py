"""How answers to the questions are judged: by patterns, numbers and outcome, never by wording alone.

A key gives `outcome` (answer, clarify, decline), `all` patterns that a good answer's text or working
matches, `none` patterns that its text must not match, and a `value` that one of its numbers must equal within
`tol`. A line holds one question (`q`), or a dialogue of `turns` that share a context.
"""

from __future__ import annotations

import json
import re
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path
from typing import Any, NamedTuple

from assistant.answering.answer import ANSWER, CLARIFY, DECLINE, Answer
from assistant.conversation.context import Context
from assistant.conversation.turn import answer_turn
from assistant.resolving.knowing import Knowledge

RIGHT = "right"
WRONG = "wrong"
"""Answered, and not rightly: worse than no answer."""
UNHELPFUL = "unhelpful"
"""Asked back or declined where it could have answered, or the other way about."""

Key = Mapping[str, Any]


class Judged(NamedTuple):
    """One question or turn with its verdict."""

    id: str
    group: str
    style: str
    verdict: str


def judge(key: Key, answer: Answer) -> str:
    """Return the verdict on an answer."""
    if _matches_any(key.get("none"), answer.text):
        return WRONG
    shown = f"{answer.text} {answer.working}"
    if key["outcome"] != answer.outcome:
        return _of_another_outcome(key, answer, shown)
    if answer.outcome == DECLINE:
        return RIGHT
    good = _matches_all(key.get("all"), shown)
    if answer.outcome == CLARIFY:
        return RIGHT if good else UNHELPFUL
    return RIGHT if good and _has_value(key, answer) else WRONG


def _of_another_outcome(key: Key, answer: Answer, shown: str) -> str:
    if answer.outcome != ANSWER:
        return UNHELPFUL
    allowed = key.get("or_answer")
    return RIGHT if allowed and _matches_all(allowed, shown) else WRONG


def _has_value(key: Key, answer: Answer) -> bool:
    """Magnitudes are compared: the side is in the text."""
    value = key.get("value")
    if value is None:
        return True
    wanted = value if isinstance(value, list) else [value]
    most = (key.get("tol") or 0) + 1e-9
    return any(abs(abs(number.value) - abs(want)) <= most for number in answer.values for want in wanted)


def _matches_all(patterns: Iterable[str] | None, text: str) -> bool:
    return all(re.search(pattern, text, re.IGNORECASE | re.DOTALL) for pattern in patterns or ())


def _matches_any(patterns: Iterable[str] | None, text: str) -> bool:
    return any(re.search(pattern, text, re.IGNORECASE | re.DOTALL) for pattern in patterns or ())


def read_keys(path: Path) -> list[Key]:
    """Return the lines of a file of questions."""
    keys = [json.loads(line) for line in path.read_text("utf-8").splitlines() if line.strip()]
    return [key for key in keys if "q" in key or "turns" in key]


def one_line(text: str) -> str:
    """Return a question as a batch asks it: on one line, without zero bytes."""
    return " ".join(text.replace("\0", "").splitlines()) or " "


def asked(keys: Iterable[Key], knowledge: Knowledge) -> Iterator[tuple[Key, Answer]]:
    """Ask every question in a context of its own, the turns of a dialogue in one; yield key and answer."""
    for key in keys:
        context = Context()
        for number, turn in enumerate(key.get("turns", [key]), 1):
            answer, context = answer_turn(one_line(turn["q"]), context, knowledge)
            if "turns" in key:
                turn = {**turn, "id": f"{key['id']}.{number}", "class": "dialogue", "style": "dialogue"}
            yield turn, answer


def judged(keys: Iterable[Key], knowledge: Knowledge) -> list[Judged]:
    """Ask and judge every question and turn."""
    return [Judged(key["id"], key["class"], key["style"], judge(key, answer)) for key, answer in asked(keys, knowledge)]


def shares(found: Iterable[Judged]) -> tuple[float, float]:
    """Return the percentages that are right and wrong."""
    counts = Counter(each.verdict for each in found)
    total = sum(counts.values()) or 1
    return 100 * counts[RIGHT] / total, 100 * counts[WRONG] / total


def table(found: Iterable[Judged]) -> str:
    """Return counts by class, by style and in all."""
    counts: dict[str, Counter[str]] = {}
    for each in found:
        for name in (f"class {each.group}", f"style {each.style}", "all"):
            counts.setdefault(name, Counter())[each.verdict] += 1
    lines = [f"{'':28}{'asked':>7}{'right':>7}{'wrong':>7}{'unhelpful':>11}"]
    for name in sorted(counts, key=lambda n: (n == "all", n)):
        count = counts[name]
        lines.append(f"{name:28}{sum(count.values()):7}{count[RIGHT]:7}{count[WRONG]:7}{count[UNHELPFUL]:11}")
    return "\n".join(lines)
