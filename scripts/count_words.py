"""Counts which words follow which in the questions that are tuned on: `python3 scripts/count_words.py`.

Writes `knowledge_base/language/word_order.txt`, by which hearing knows how questions are put. Spoken and typed
questions, stories and conversations are counted, as they are said; what is spelt badly or cut short is left out.
"""

from __future__ import annotations

import json
import sys
from collections import Counter
from collections.abc import Iterable, Iterator
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
sys.path.insert(0, str(ROOT))

from assistant.conversation.opening import Knowledge, open_knowledge  # noqa: E402
from assistant.rendering.speech import spoken  # noqa: E402
from assistant.voice.hearing.usage import BEGINNING, END, counted_words  # noqa: E402
from tests.questions.judging import one_line  # noqa: E402

QUESTIONS = ROOT / "tests" / "questions" / "tuned"
TARGET = ROOT / "knowledge_base" / "language" / "word_order.txt"
STYLES = ("spoken", "typed", "story", "dialogue")
LEAST_THREES = 2
HEADING = """\
# How questions are put: which words follow which, counted in questions on many subjects of the trade as people say
# them. By it hearing tells what may have been asked from what only sounds so. Made by scripts/count_words.py.
# A line has one or two words, a colon, and words that came after them, each with how often; "<" stands for the
# beginning of a question, ">" for its end, "0" for any number. Without words before the colon: each word alone.
"""


def questions(folder: Path, knowledge: Knowledge) -> Iterator[str]:
    """Yield each question of a folder once, as it is said."""
    seen: set[str] = set()
    for path in sorted(folder.glob("*.jsonl")):
        for line in path.read_text(encoding="utf-8").splitlines():
            key = json.loads(line)
            asked = [key["q"]] if "q" in key else [turn["q"] for turn in key["turns"]]
            for text in filter(lambda q: isinstance(q, str), asked if key["style"] in STYLES else ()):
                if text not in seen:
                    seen.add(text)
                    said = one_line(text)
                    yield said if key["style"] == "spoken" else spoken(
                        said, knowledge.units, knowledge.base.pronunciations
                    )


def counted(texts: Iterable[str]) -> str:
    """Return the file of counts of some texts."""
    after: dict[str, Counter[str]] = {"": Counter()}
    for text in texts:
        words = [BEGINNING, BEGINNING, *counted_words(text), END]
        after[""].update(words[1:])
        for i in range(2, len(words)):
            after.setdefault(words[i - 1], Counter())[words[i]] += 1
            after.setdefault(f"{words[i - 2]} {words[i - 1]}", Counter())[words[i]] += 1
    lines = [_line(before, counts, LEAST_THREES if " " in before else 1) for before, counts in sorted(after.items())]
    return HEADING + "".join(filter(None, lines))


def _line(before: str, counts: Counter[str], least: int) -> str:
    kept = sorted((word, count) for word, count in counts.items() if count >= least)
    return f"{before}: {' '.join(f'{word} {count}' for word, count in kept)}\n" if kept else ""


def main() -> None:
    """Count, and write the file."""
    knowledge, problems = open_knowledge()
    if knowledge is None:
        sys.exit("\n".join(map(str, problems)))
    TARGET.write_text(counted(questions(QUESTIONS, knowledge)), encoding="utf-8")


if __name__ == "__main__":
    main()
