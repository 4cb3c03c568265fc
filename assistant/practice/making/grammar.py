"""Give telegram style its verb: "when solenoid pin withdraws" becomes "When does the solenoid pin withdraw?".

Each word is put into one of a few classes by lists of ordinary English; a question word and the order of the classes
after it decide which sentence is meant. What fits no order is no sentence, and the record's other ways are taken.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Mapping, Sequence
from itertools import pairwise
from typing import Any

from assistant.frozen import NamedTuple

_NOUNS = r"(?P<np>[nadp]*n)"
"""A name in classes: nouns with what may stand before them."""
_UNLED = ("colour", "faster", "much", "way")
"""What may not come first after a question word: another shape is wanted for it."""
_OPENING = ("can", "may", "must", "will", "do", "does")
_EXTENTS = ("long", "fast", "far", "high", "hard", "hot", "deep", "low")


class Rule(NamedTuple):
    """After which word, in which order of classes, which sentence; {np}, {v}, {rest} are filled."""

    word: str
    order: re.Pattern[str]
    sentence: str
    form: str


def _rule(word: str, order: str, sentence: str, form: str = "fact") -> Rule:
    return Rule(word, re.compile(order), sentence, form)


_REST = r"(?P<rest>(?:o.*)?)"
_ANY = r"(?P<rest>.*)"
RULES = (
    _rule("what", rf"(?P<v>t)(?P<rest>[nadp]+{'(?:o.*)?'})", "What {v} {rest}?"),
    _rule("what", rf"{_NOUNS}(?P<v>t){_REST}", "What does {np} {base} {rest}?"),
    _rule("what", rf"{_NOUNS}(?P<v>b){_REST}", "What do {np} {v} {rest}?"),
    _rule("what", rf"(?P<v>x){_ANY}", "What {v} {rest}?"),
    _rule("which way", rf"{_NOUNS}(?P<v>t){_REST}", "Which way does {np} {base} {rest}?"),
    _rule("which way", rf"{_NOUNS}(?P<v>b){_REST}", "Which way do {np} {v} {rest}?"),
    _rule("which", rf"{_NOUNS}(?P<v>[tx])(?P<rest>(?:[nadpo].*)?)", "Which {bare} {v} {rest}?"),
    _rule("how", rf"{_NOUNS}(?P<v>t){_ANY}", "How does {np} {base} {rest}?"),
    _rule("how", rf"{_NOUNS}(?P<v>b){_ANY}", "How do {np} {v} {rest}?"),
    _rule("how", rf"(?P<v>b){_ANY}", "How do you {v} {rest}?"),
    _rule("how", rf"{_NOUNS}(?P<v>p){_REST}", "How {is} {np} {v} {rest}?"),
    _rule("when", r"(?P<np>dn+)(?P<rest>(?:o.*)?)", "When is there {np} {rest}?"),
    _rule("when", rf"{_NOUNS}(?P<v>t){_ANY}", "When does {np} {base} {rest}?"),
    _rule("when", rf"{_NOUNS}(?P<v>b){_ANY}", "When do {np} {v} {rest}?"),
    _rule("when", r"(?P<v>b)(?P<rest>[nadpo].*)", "When do you {v} {rest}?"),
    _rule("when", rf"{_NOUNS}(?P<v>[pa]){_REST}", "When {is} {np} {v} {rest}?"),
    _rule("where", rf"{_NOUNS}(?P<v>t){_REST}", "Where does {np} {base} {rest}?", "place"),
    _rule("where", rf"{_NOUNS}(?P<v>p){_REST}", "Where {is} {np} {v} {rest}?", "place"),
    _rule("where", r"(?P<v>b)(?P<rest>[nadp].*)", "Where do you {v} {rest}?", "place"),
    _rule("why", rf"(?P<np>d[nap]+){_REST}", "Why is there {np} {rest}?", "reason"),
    _rule("why", rf"(?P<v>!b){_ANY}", "Why {v} {rest}?", "reason"),
    _rule("why", rf"{_NOUNS}(?P<v>t){_ANY}", "Why does {np} {base} {rest}?", "reason"),
    _rule("why", rf"{_NOUNS}(?P<v>b){_ANY}", "Why do {np} {v} {rest}?", "reason"),
    _rule("why", r"(?P<v>b)(?P<rest>[nadp].*)", "Why do you {v} {rest}?", "reason"),
    _rule("why", rf"{_NOUNS}(?P<v>[pa]){_REST}", "Why {is} {np} {v} {rest}?", "reason"),
    _rule("who", r"(?P<v>t)(?P<rest>(?:[nadpo].*)?)", "Who {v} {rest}?", "who"),
    _rule("how many", r"(?P<np>[nadp]*s)", "How many {bare} are there?"),
    _rule("how many", r"(?P<np>[nadp]*s)(?P<rest>o.*)", "How many {bare} are there {rest}?"),
    _rule("how many", rf"(?P<np>[nadp]*s)(?P<v>p){_REST}", "How many {bare} are {v} {rest}?"),
    _rule("how many", rf"(?P<np>[nadp]*s)(?P<v>[xb]){_ANY}", "How many {bare} {v} {rest}?"),
    *(
        rule
        for extent in _EXTENTS
        for rule in (
            _rule(f"how {extent}", rf"(?P<v>b){_ANY}", f"How {extent} do you {{v}} {{rest}}?"),
            _rule(f"how {extent}", rf"{_NOUNS}(?P<v>t){_ANY}", f"How {extent} does {{np}} {{base}} {{rest}}?"),
            _rule(f"how {extent}", rf"{_NOUNS}(?P<v>b){_ANY}", f"How {extent} do {{np}} {{v}} {{rest}}?"),
        )
    ),
    *(_rule(word, r"(?P<rest>[nadp]+.*[bpatn])", "{Word} {rest}?") for word in _OPENING),
    *(_rule(word, r"(?P<rest>[nds]+.*[ap])", "{Word} {rest}?") for word in ("is", "are")),
)


class Grammar:
    """Puts words into classes and finds the sentence that they make."""

    def __init__(self, words: Mapping[str, Any], plain: Callable[[str], str]) -> None:
        self._verbs = frozenset(words["doing"])
        self._adjectives = frozenset(words["adjectives"])
        self._small = frozenset(words["small"])
        self._alone = frozenset(words["alone"])
        self._joined: Mapping[str, str] = words["joined"]
        self._done: Mapping[str, str] = words["done"]
        self._plain = plain

    def sentence(self, ask: str) -> tuple[str, str] | None:
        """Return (form, sentence) for a way of asking that begins with a question word, or None."""
        tokens = self._with_joints(ask.split())
        for size in (2, 1):
            word, rest = " ".join(tokens[:size]).lower(), tokens[size:]
            extent = word == "how" and rest[:1] and rest[0].lower() in ("many", "much", *_EXTENTS)
            if not rest or rest[0].lower() in _UNLED or extent:
                continue
            classes = "".join(self.kind(token) for token in rest)
            for rule in RULES:
                if rule.word == word and (found := self._match(rule, classes, rest)):
                    return rule.form, self._filled(rule, found, rest)
        return None

    def _with_joints(self, tokens: Sequence[str]) -> list[str]:
        """Return the words with what joins a circumstance at their end: "work alternate", "land with a caption"."""
        for ending, joint in self._joined.items():
            size = ending.count(" ") + 1
            before = tokens[:-size]
            fits = " ".join(tokens[-size:]).lower() == ending and len(before) > 2
            if fits and self.kind(before[-1]) in "nsbtpa" and any(self.kind(word) in "btx" for word in before[1:]):
                return [*before, *joint.split(), *tokens[-size:]]
        place = next((i for i, word in enumerate(tokens) if word.isupper() and len(word) > 1), 0)
        if place > 1 and tokens[place - 1].lower() in self._alone:
            return [*tokens[:place], "with", *tokens[place:]]
        return list(tokens)

    def imperative(self, text: str) -> bool:
        """Whether a text begins with what to do."""
        return text.split()[0].lower() in self._verbs

    def rough(self, ask: str) -> int:
        """Return how far a way of asking is from a sentence: names in a row, with no word to join them."""
        classes = "".join(self.kind(token) for token in ask.split()[1:])
        runs = re.findall(r"[nsa]{4,}", classes)
        if re.fullmatch(r"b[nsa]+p", classes) and ask.split()[1].lower() != "know":
            return 1
        return sum(len(run) - 3 for run in runs) + len(re.findall(r"[bt][nsa]+[btp][nsa]", classes))

    def agrees(self, words: str) -> bool:
        """Whether no verb in its base form follows a single thing: not "the gear retract"."""
        tokens = words.split()
        classes = [self.kind(token) for token in tokens]
        return not any(one == "n" and other == "b" and not before.isupper()
                       for one, other, before in zip(classes, classes[1:], tokens, strict=False))  # fmt: skip

    def lacks_joint(self, sentence: str) -> bool:
        """Whether a caption stands unjoined after a verb that takes nothing: "land DOOR OPEN"."""
        return any(one.lower() in self._alone and other.strip("?").isupper() and len(other) > 1
                   for one, other in pairwise(sentence.split()))  # fmt: skip

    def joins(self, token: str) -> bool:
        """Whether a word is a preposition or a conjunction."""
        return token.lower() in self._small and not (token.isupper() and len(token) > 1)

    def is_name(self, words: str, strictly: bool = False) -> bool:
        """Whether words hold no verb, nor strictly a participle, and so may be the name of a thing."""
        return not any(self.kind(token) in ("btxp" if strictly else "btx") for token in words.split())

    def is_noun(self, token: str) -> bool:
        """Whether a word is a noun as far as the lists tell."""
        return self.kind(token) in "ns"

    def _match(self, rule: Rule, classes: str, tokens: Sequence[str]) -> re.Match[str] | None:
        """Return how the classes fit a rule; `s` stands for a name in the plural."""
        found = rule.order.fullmatch(classes.replace("s", "n")) if "s" not in rule.order.pattern else None
        if found is None and "s" in rule.order.pattern:
            found = rule.order.fullmatch(classes)
        if found is None:
            found = rule.order.fullmatch(classes.replace("s", "n"))
        if found is None:
            return None
        return found if self._agrees(rule, found, tokens) else None

    def _agrees(self, rule: Rule, found: re.Match[str], tokens: Sequence[str]) -> bool:
        """Whether a verb in its base form stands after a plural, and one with an s after a singular."""
        groups = found.groupdict()
        if not groups.get("np") or not groups.get("v"):
            return True
        subject = tokens[found.end("np") - 1].lower()
        if tokens[found.start("np")].lower() in _DENYING and " does {np}" in rule.sentence:
            return False
        plural = subject.endswith("s") and not subject.endswith(("ss", "us", "is"))
        if groups["v"] == "b" and " do {np}" in rule.sentence:
            return plural
        return not (groups["v"] == "t" and plural)

    def _filled(self, rule: Rule, found: re.Match[str], tokens: Sequence[str]) -> str:
        def said(group: str) -> str:
            if group not in found.re.groupindex or found[group] is None:
                return ""
            return " ".join(tokens[found.start(group) : found.end(group)])

        verb, name = said("v"), said("np")
        many = name.endswith("s") and not name.endswith(("ss", "us", "is"))
        return rule.sentence.format(
            np=self._plain(name), bare=name, v=verb, base=self._base(verb), rest=self._plain(said("rest")),
            Word=rule.word.capitalize(), **{"is": "are" if many else "is"},
        )  # fmt: skip

    def kind(self, token: str) -> str:
        """Return the letter of a word's class."""
        word = token.lower().strip(",")
        if token.isupper() and len(token) > 1:
            return "n"
        for letter, known in (("x", _MODAL), ("d", _DENYING), ("o", self._small), ("a", self._adjectives)):
            if word in known:
                return "!" if word == "not" else letter
        if word in self._done or (word.endswith("ed") and self._of_regular(word)):
            return "p"
        if word in self._verbs:
            return "b"
        if self._base(word) in self._verbs:
            return "t"
        return "s" if word.endswith("s") and not word.endswith(("ss", "us")) else "n"

    def _of_regular(self, word: str) -> bool:
        return any(base in self._verbs for base in (word[:-2], word[:-1], word[:-3]))

    def _base(self, verb: str) -> str:
        word = verb.lower()
        for ending, instead in (("ies", "y"), ("es", ""), ("s", "")):
            base = word.removesuffix(ending) + instead
            if word.endswith(ending) and base in self._verbs:
                return base
        return word


_MODAL: Collection[str] = frozenset({"is", "are", "has", "have", "gives", "runs", *_OPENING})
_DENYING: Collection[str] = frozenset({"no", "not"})
