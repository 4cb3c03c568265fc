"""An instructor's own questions, from a YAML file: each with what must be said, and the paragraph it rests on.

    questions:
      - ask: Where is the spare torch kept?
        points: [in the left cupboard]      # what the answer must say; or `value`, or both
        cites: MANUAL 32.05.4               # a listed document and its paragraph
        value: 2 count                      # optional: the number that the answer must hold, exactly
        ordered: yes                        # optional: the points in this order
        section: 32-10                      # optional, as are `hint` and `difficulty` (1 to 3)

Problems are gathered and named by file and line, as those of knowledge files are.
"""

from __future__ import annotations

import re
from collections import Counter
from typing import Any

from assistant.answering.answer import Citation
from assistant.frozen import NamedTuple
from assistant.knowledge.paragraphs import holds, listed_shown, paragraphs_of
from assistant.knowledge.problems import Problem, suggestion
from assistant.knowledge.yaml_lines import Items, Node, Pairs, Text, read_yaml
from assistant.practice.asking.pool import section_of
from assistant.practice.making.question import OWN, Expected, Key, Question
from assistant.practice.sections import is_section
from assistant.rendering.speech import spoken
from assistant.resolving.knowing import Knowledge

FIELDS = ("ask", "points", "cites", "value", "ordered", "section", "hint", "difficulty")
_SHAPE = "write a list `questions:` of entries that begin with `- ask: …`"
_COUNTS = re.compile(r"\b(?:how many|number of|factor|mach)\b", re.IGNORECASE)
"""What asks for a number without a unit."""
_MEANT = {
    "question": "ask", "q": "ask", "text": "ask", "answer": "points", "answers": "points", "key": "points",
    "source": "cites", "paragraph": "cites", "reference": "cites", "number": "value", "order": "ordered",
}  # fmt: skip
"""What else a field may be called by somebody who writes without the list beside him."""
_CITED = re.compile(r"(\S+) (\S.*)")


class _Entry(NamedTuple):
    """One entry of the file with where it stands, and where its problems go."""

    fields: dict[str, Node]
    file: str
    line: int
    problems: list[Problem]

    def refuse(self, message: str, advice: str, node: Node | None = None) -> None:
        self.problems.append(Problem(self.file, node.line if node else self.line, message, advice))

    def text(self, name: str) -> str:
        """Return a field's text; a list where a text should be is a problem."""
        node = self.fields.get(name)
        if node is None:
            return ""
        if not isinstance(node, Text):
            self.refuse(f"`{name}` is not a text", "write it on one line", node)
            return ""
        return node.text.strip()


def read_own(path: str, know: Knowledge, name: str = "") -> tuple[tuple[Question, ...], list[Problem]]:
    """Return the questions of a file, or every problem in it; `name` is how problems call it."""
    tree, problems = read_yaml(path, name)
    if tree is None or problems:
        return (), problems
    found: list[Question] = []
    for node in _entries(tree, problems):
        question = _question(node, know, problems)
        if question is not None:
            found.append(question)
    return ((), problems) if problems else (tuple(found), [])


def _entries(tree: Node, problems: list[Problem]) -> tuple[Node, ...]:
    listed = None
    if isinstance(tree, Pairs):
        listed = next((value for key, value in tree.pairs if key.text == "questions"), None)
        for key, _ in tree.pairs:
            if key.text != "questions":
                problems.append(Problem(key.file, key.line, f"`{key.text}` is not known here", _SHAPE))
    if not isinstance(listed, Items):
        problems.append(Problem(tree.file, tree.line, "there is no list of questions", _SHAPE))
        return ()
    return listed.items


def _question(node: Node, know: Knowledge, problems: list[Problem]) -> Question | None:
    before = len(problems)
    if not isinstance(node, Pairs):
        problems.append(Problem(node.file, node.line, "this is no question", "begin it with `- ask: …`"))
        return None
    entry = _Entry({key.text: value for key, value in node.pairs}, node.file, node.line, problems)
    for key, _ in node.pairs:
        if key.text not in FIELDS:
            advice = f"write `{_MEANT[key.text]}:`" if key.text in _MEANT else ""
            advice = advice or suggestion(key.text, FIELDS, f"use {', '.join(FIELDS)}")
            entry.refuse(f"`{key.text}` is not known", advice, key)
    asks, cited = entry.text("ask"), _cited(entry, know)
    if not asks:
        entry.refuse("the question is missing", "write it after `ask:`")
    key_held = _key(entry, know)
    section, difficulty = _section(entry), _difficulty(entry)
    if len(problems) > before or cited is None:
        return None
    section = section or _section_of(cited, know)
    lexicon = know.base.pronunciations if isinstance(know.base.pronunciations, dict) else {}
    hint = entry.text("hint") or f"Think of {cited.document} {cited.paragraph}."
    heard = spoken(asks, know.units, lexicon, labels=know.base.labels)
    return Question(
        asks, heard, OWN, _record_of(asks, key_held, cited, know), section, "", key_held,
        (cited,), hint, difficulty,
    )  # fmt: skip


def _cites(record: Any, cited: Citation) -> bool:
    return any((each.document, each.paragraph) == (cited.document, cited.paragraph) for each in record.sources)


def _section_of(cited: Citation, know: Knowledge) -> str:
    """Return the ATA section that most records of a paragraph belong to, or nothing."""
    citing = (record for name in know.base.order if _cites(record := know.base.records[name], cited))
    found = Counter(section for record in citing if is_section(section := section_of(record, know.base)))
    return next((section for section, _ in found.most_common(1)), "")


def _record_of(asks: str, key: Key, cited: Citation, know: Knowledge) -> str:
    """Return the record whose figure a question asks for: of its paragraph, with its value, of what it names.

    So it is known with which figure of the type an answer confuses it. Else the question stands for itself.
    """
    alone = f"own:{asks}"
    if len(key.values) != 1 or key.points:
        return alone
    wanted, asked = key.values[0], _named(asks, know)
    found = []
    for name in know.base.ids("limits"):
        record = know.base.records[name]
        figures = (record.value, record.minimum, record.maximum)
        if _cites(record, cited) and any(each and (each.value, each.unit) == wanted[1:3] for each in figures):
            found.append((len(asked & _named(record.of, know)), name))
    found.sort(reverse=True)
    certain = bool(found) and found[0][0] > 0 and (len(found) == 1 or found[0][0] > found[1][0])
    return found[0][1] if certain else alone


def _named(text: str, know: Knowledge) -> frozenset[str]:
    return frozenset(concept for mention in know.phrase(text).mentions for concept in mention.concepts)


def _cited(entry: _Entry, know: Knowledge) -> Citation | None:
    text = entry.text("cites")
    found = _CITED.fullmatch(text)
    if not found:
        entry.refuse(
            f"“{text}” names no paragraph" if text else "the paragraph is missing",
            "write `cites:` with a document and its paragraph, as in MANUAL 32.50.2",
            entry.fields.get("cites"),
        )
        return None
    document = found[1]
    if document not in know.base.documents:
        known = sorted(know.base.documents)
        entry.refuse(f"{document} is no listed document", suggestion(document, known, f"there is {', '.join(known)}"),
                     entry.fields["cites"])  # fmt: skip
        return None
    record = know.base.documents[document]
    listed = paragraphs_of(record.paragraphs)
    if listed and not holds(listed, found[2]):
        advice = suggestion(found[2], listed, listed_shown(listed))
        entry.refuse(f"{document} does not list the paragraph {found[2]}", advice, entry.fields["cites"])
        return None
    return Citation(document, found[2], record.revision, record.effective)


def _key(entry: _Entry, know: Knowledge) -> Key:
    points = _points(entry)
    values = _values(entry, know)
    if not points and not values and "points" not in entry.fields and "value" not in entry.fields:
        entry.refuse("there is nothing that the answer must hold", "write `points: [...]`, or `value:` with its unit")
    ordered = entry.text("ordered")
    if ordered not in ("", "yes", "no"):
        entry.refuse(f"`ordered` is “{ordered}”", "write yes or no", entry.fields["ordered"])
    says = "; ".join([*(entry.text("value").removesuffix(" count") for _ in values), *points])
    return Key(says=says, values=values, points=points, ordered=ordered == "yes")


def _points(entry: _Entry) -> tuple[str, ...]:
    node = entry.fields.get("points")
    if node is None:
        return ()
    items = node.items if isinstance(node, Items) else (node,)
    found = tuple(item.text.strip() for item in items if isinstance(item, Text) and item.text.strip())
    if len(found) < len(items) or not found:
        entry.refuse("`points` holds what is no text", "write a list of what must be said", node)
    return found


def _values(entry: _Entry, know: Knowledge) -> tuple[Expected, ...]:
    text = entry.text("value")
    if not text:
        return ()
    number, _, unit = text.replace(",", "").partition(" ")
    try:
        value, symbol = float(number), unit.strip() or "count"
        know.units.get(symbol)
    except (ValueError, KeyError):
        entry.refuse(f"“{text}” is no amount", "write a number and a unit, such as 68 deg", entry.fields["value"])
        return ()
    if not unit.strip() and not _COUNTS.search(entry.text("ask")):
        advice = "write it with its unit, such as 800 psi, or 3 count"
        entry.refuse(f"“{text}” has no unit", advice, entry.fields["value"])
        return ()
    return (Expected("answer", value, symbol),)


def _section(entry: _Entry) -> str:
    text = entry.text("section")
    if text and not is_section(text):
        entry.refuse(f"“{text}” is no section", "write an ATA section such as 32-40", entry.fields["section"])
    return text


def _difficulty(entry: _Entry) -> int:
    text = entry.text("difficulty")
    if text not in ("", "1", "2", "3"):
        entry.refuse(f"`difficulty` is “{text}”", "write 1, 2 or 3", entry.fields["difficulty"])
    return int(text) if text in ("1", "2", "3") else 1
