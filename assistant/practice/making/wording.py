"""Put a record's bare words into sentences: shapes from wording.toml, names from the knowledge itself.

A record's ways of asking are concepts in telegram style ("where STEER switch"), good for matching and poor to read
aloud. Here they get a verb and an article. Which words are names, and how they are capitalised, is read from the
records' own statements, so that no name of any type stands in the code.
"""

from __future__ import annotations

import os
import re
from collections.abc import Iterable, Mapping
from typing import Any

from assistant.answering.parts import upper
from assistant.frozen import NamedTuple
from assistant.knowledge.base import Base
from assistant.practice.making.grammar import Grammar
from assistant.practice.making.prose import Prose
from assistant.understanding.words import stem

_FILE = os.path.join(os.path.dirname(__file__), "wording.toml")
_WORD = re.compile(r"[A-Za-z][\w'’.-]*\w|[A-Za-z]")


GOOD, HEADING, BARE = 0, 1, 2
"""How good a shape is: a sentence of its own, a heading with "list the items", or the bare words."""


_MEASURE = r"the (?:[\w'’-]+ )*?([\w'’-]+)(?: (?:of|for|on|in|at|after|when|over|that|with|to)\b|$)"
"""A title that begins with a name; its last word is caught."""
_PAIR = 2
_MOST_TOPICS = 3
_MOST_IN_INDEX = 6
_OPENS = frozenset(("list", "define", "compare", "last", "does", "do", "is", "are", "can", "may", "must"))


class Asked(NamedTuple):
    """A way of asking as sentences: its form, whether order counts, how good the shape is (GOOD, HEADING or BARE)."""

    form: str
    sentences: tuple[str, ...]
    ordered: bool
    rank: int
    rough: int = 0
    """How far it still is from good English, 0 the best."""
    natural: bool = False
    """Whether it may be read aloud: what stands side by side in it does so in the knowledge's own English."""


class Wording:
    """The shapes of sentences, and how the words of one knowledge base are written in them."""

    def __init__(self, base: Base) -> None:
        self._data = _read()
        self._capitals = _capitals(base)
        self._numbered = frozenset(
            found.lower() for text in _texts(base) for found in re.findall(r"\w ([A-Z][a-z]+) \d\b", text)
        )
        words = self._data["words"]
        self._verbs = frozenset(words["verbs"])
        self._not_acts = frozenset(words["not_acts"])
        self._things = frozenset(words["things"])
        self._parts = frozenset(words["parts"])
        self._determiners = frozenset(words["determiners"])
        self._patterns = [(re.compile(each["match"], re.IGNORECASE), each) for each in self._data["asked"]]
        self._opening = frozenset(words["opening"])
        self._grammar = Grammar(words, self.plain)
        self._prose = Prose(base, words["small"], words["counted"], self._parts | self._things, self._grammar.kind)
        self._states = _states(base)
        self._asking = _QUESTION_WORDS | frozenset(words["asking"])
        self._made: dict[str, Asked | None] = {}

    @property
    def topics(self) -> Mapping[str, list[str]]:
        """Sections by plain word."""
        found: dict[str, list[str]] = self._data["topics"]
        return found

    def sentences(self, shape: str, **names: str) -> tuple[str, ...]:
        """Return every wording of a shape, filled; a name is there with a capital too ("of", "Of")."""
        filled = {**names, **{upper(name): upper(text) for name, text in names.items()}}
        return tuple(_tidy(text.format_map(filled)) for text in self._data["form"][shape])

    def hint(self, shape: str, **names: object) -> str:
        """Return a first help."""
        text: str = self._data["hint"][shape]
        return text.format_map(names)

    def context(self, quantity: str, amount: str) -> str:
        """Return how a limit's other amount is added to a question."""
        known: dict[str, str] = self._data["context"]
        return known.get(quantity, known["other"]).format(a=amount)

    @property
    def verbs(self) -> frozenset[str]:
        """Words that begin something that one does."""
        return self._verbs

    def is_kind(self, label: str) -> bool:
        """Whether a label names a kind of thing, which "which" asks for."""
        return label.split()[-1] in self._data["words"]["kinds"]

    def is_measure(self, title: str) -> bool:
        """Whether a title names one quantity, and no thing or several: "the length of an inch"."""
        found = re.match(_MEASURE, title)
        return found is not None and found[1].lower() not in self._things and not _is_plural(found[1])

    def ordinary(self, name: str) -> tuple[float, float, float] | None:
        """Return from where to where, and in which steps, an input of a calculation is ordinarily found."""
        found = self._data["ordinary"].get(name)
        return tuple(found) if found else None

    def called(self, name: str) -> str:
        """Return what an input of a calculation is called in a question, where its own name says too little."""
        found: str = self._data["called"].get(name, name)
        return found

    def instead_of(self, name: str) -> frozenset[str]:
        """Return the inputs of a calculation of which nobody gives two: there is one wind."""
        return frozenset(each for group in self._data["either"]["groups"] if name in group for each in group) - {name}

    def commands(self, text: str) -> bool:
        """Whether a text begins with what to do."""
        return self._grammar.imperative(text)

    def does(self, act: str) -> bool:
        """Whether words say something that one does."""
        words = act.lower().split()
        return words[0] in self._verbs and words[-1] not in self._not_acts

    def plain(self, words: str) -> str:
        """Return a record's bare words as they are written in a sentence: names capitalised, articles put in."""
        return " ".join(self._with_articles(self._capitalised(words).split()))

    def _capitalised(self, words: str) -> str:
        text = re.sub(r"\[([^\]]*)\]", r"\1", words)
        text = re.sub(r"\b(?:[Ii]|me)\b", "you", text)
        text = re.sub(r"\bmy\b", "your", text)
        tokens = [self._capitals.get(token.lower(), token) for token in text.split()]
        pairs = zip(tokens, [*tokens[1:], ""], strict=False)
        return " ".join(upper(token) if after[:1].isdigit() and token in self._numbered else token
                        for token, after in pairs)  # fmt: skip

    def asked(self, ask: str) -> Asked | None:
        """Return a way of asking as sentences, or None when no shape fits it; found once, and kept."""
        if ask not in self._made:
            self._made[ask] = self._sentences_of(ask)
        return self._made[ask]

    def _sentences_of(self, ask: str) -> Asked | None:
        bare, state = self._apart(re.sub(r"\[([^\]]*)\]", r"\1", ask).strip())
        with_state = f" with {state}" if state else ""
        found = self._by_pattern(bare, with_state, heading=False)
        if found is None and (made := self._grammar.sentence(bare)):
            form, sentence = made
            text = _tidy(sentence.rstrip("?") + with_state + "?")
            named = any(self._grammar.is_noun(word) for word in bare.split()[1:])
            natural = named and self._prose.sentence(_tidy(sentence)) and not self._grammar.lacks_joint(sentence)
            found = Asked(form, (text,), False, GOOD, self._grammar.rough(bare), natural)
        return found or self._by_pattern(bare, with_state, heading=True) or self._bare(bare, with_state)

    def _bare(self, bare: str, with_state: str) -> Asked | None:
        """Return the bare words as a question, where they begin as one: "Which memo before pushback?"."""
        if bare.split()[0].lower() not in self._opening:
            return None
        return Asked("fact", (_tidy(f"{self._capitalised(bare)}{with_state}?"),), False, BARE)

    def _by_pattern(self, bare: str, with_state: str, heading: bool) -> Asked | None:
        for pattern, each in self._patterns:
            found = pattern.fullmatch(bare) if bool(each.get("heading")) is heading else None
            if found is None or not self._suits(found["x"], each) or _asks_already(bare, each["match"]):
                continue
            names = self._names(found, with_state, heading)
            sentences = tuple(_tidy(text.format_map(names)) for text in each["say"])
            rank, natural = HEADING if heading else GOOD, self._is_natural(found["x"], heading)
            return Asked(each["form"], sentences, bool(each.get("ordered")), rank, 0, natural)
        return None

    def _is_natural(self, words: str, heading: bool) -> bool:
        """Whether what a pattern caught is a name, or a clause that agrees, in the knowledge's own English."""
        if heading and not self._is_title(words):
            return False
        return self._prose.name(words) and self._grammar.agrees(words) and not self._grammar.joins(words.split()[0])

    def _is_title(self, words: str) -> bool:
        """Whether words may stand as a title: two that belong together, or names that a preposition joins.

        Two captions side by side belong to nothing that they name together.
        """
        tokens = words.split()
        if all(_is_caption(self._capitalised(token)) for token in tokens):
            return False
        joined = any(self._grammar.joins(token) for token in tokens[1:-1])
        named = self._grammar.is_name(words, strictly=True) and self._grammar.is_noun(tokens[-1])
        return named and _QUESTION_WORDS.isdisjoint(tokens) and (joined or len(tokens) == _PAIR)

    def titled(self, title: str) -> tuple[str, list[tuple[str, ...]]]:
        """Return the form in which a title asks, and sentences from it, the best shapes first.

        A title is English: a name ("the sound of the horn") or a clause ("how a time is counted").
        """
        for each in self._data["titled"]:
            found = re.fullmatch(each["match"], title)
            if found:
                names = {name: text or "" for name, text in found.groupdict().items()}
                verb = names.get("verb", "")
                names = {**names, "t": title, "T": upper(title), "X": upper(names.get("x", "")), "base": verb}
                shapes = (each["say"], each.get("or", []))
                return each["form"], [tuple(_tidy(s.format_map(names)) for s in shape) for shape in shapes if shape]
        return "fact", []

    def topic(self, ask: str) -> str | None:
        """Return the names in a way of asking as a heading: "Autobrake, short runway", or None."""
        found, state = self._names_in(ask)
        names = [*filter(self._heads, found), *([state] if state else [])] if found else []
        return ", ".join(names[:_MOST_TOPICS]) or None

    def _names_in(self, ask: str) -> tuple[list[str], str]:
        """Return the names in a way of asking, and the state that it ends in."""
        bare, state = self._apart(re.sub(r"\[([^\]]*)\]", r"\1", ask).strip())
        tokens = [t for t in self._capitalised(bare).split() if t.lower() not in self._asking]
        return self._prose.names(tokens), state

    def entry(self, ask: str) -> str | None:
        """Return a way of asking as it would stand in an index: a few names in a row, and no word that asks."""
        words = self._capitalised(ask)
        tokens = words.split()
        fits = 1 < len(tokens) <= _MOST_IN_INDEX and self._grammar.is_name(tokens[0])
        fits = fits and not any(self._grammar.kind(token) in ("t", "x") for token in tokens)
        first = tokens[0].lower()
        asks = first in _OPENS or not _QUESTION_WORDS.isdisjoint(token.lower() for token in tokens)
        return words if fits and not asks and not any(map(self._grammar.joins, (first, tokens[-1]))) else None

    def _heads(self, name: str) -> bool:
        """Whether words may stand in a heading: a thing, or a name that ends in one and holds no verb."""
        tokens = name.split()
        if any(t[0].isdigit() for t in tokens) and not re.search(r"[a-z] \d$", name):
            return False
        if not self._grammar.is_name(name, strictly=True) or any(map(self._grammar.joins, tokens)):
            return False
        if re.search(r" (?:lost|[A-Z]{2,}) [a-z]", name) or name.lower() in self._data["words"]["counted"]:
            return False
        noun = self._grammar.is_noun(tokens[-1]) or tokens[-1].isdigit()
        return noun and (len(tokens) > 1 or _is_caption(name) or name.lower() in self._things or _is_plural(name)
                         or self._prose.alone(name))  # fmt: skip

    def _apart(self, bare: str) -> tuple[str, str]:
        """Return a way of asking without the state that it ends in, and that state as its input says it."""
        for words, says in self._states:
            if bare.lower().endswith(f" {words}") and bare.count(" ") > words.count(" ") + 2:
                return bare[: -len(words) - 1], says
        return bare, ""

    def _suits(self, words: str, each: Mapping[str, Any]) -> bool:
        last = words.split()[-1]
        if each.get("captions"):
            return all(_is_caption(token) for token in words.split())
        if each.get("short") and len(words.split()) > 3:
            return False
        if each.get("names") and not self._grammar.is_name(words, strictly=True):
            return False
        thing = (last.lower() in self._things and self._grammar.is_name(words)) or _is_caption(last)
        return thing or not each.get("noun")

    def _names(self, found: re.Match[str], with_state: str, heading: bool) -> dict[str, str]:
        bare = found["x"]
        words = (self._capitalised(bare) if heading else self.plain(bare)) + with_state
        many = _is_plural(bare)
        quoted = words if _is_caption(bare.split()[0]) else f"“{words.removeprefix('the ')}”"
        return {
            "x": words, "X": upper(words), "q": quoted, "y": found.groupdict().get("y") or "",
            "b": self._capitalised(bare), "B": upper(self._capitalised(bare)),
            "is": "are" if many else "is", "does": "do" if many else "does", "means": "mean" if many else "means",
        }  # fmt: skip

    def _with_articles(self, tokens: list[str]) -> list[str]:
        found: list[str] = []
        for start, end in self._runs(tokens):
            run = tokens[start:end]
            while found and self._is_thing(run) and self._joins(found[-1]):
                run.insert(0, found.pop())
            before = found[-1].lower() if found else ""
            if (
                self._is_thing(run)
                and before not in self._determiners
                and not before.isdigit()
                and not run[0][0].isdigit()
            ):
                found.append("the")
            found.extend(run)
        return found

    def _joins(self, token: str) -> bool:
        """Whether a word before a name belongs to it, so that the article comes before both."""
        return self._grammar.is_noun(token) and token.isalpha() and token.lower() not in self._determiners

    def _is_thing(self, run: Iterable[str]) -> bool:
        return any(token.lower() in self._things and not _is_caption(token) for token in run)

    def _runs(self, tokens: list[str]) -> Iterable[tuple[int, int]]:
        """Yield the stretches of words that belong to one name, and the words between them one by one."""
        start = 0
        while start < len(tokens):
            end = start
            while end < len(tokens) and self._is_part(tokens[end]):
                end += 1
            while end > start and tokens[end - 1].lower() not in self._things:
                end -= 1
            yield start, max(end, start + 1)
            start = max(end, start + 1)

    def _is_part(self, token: str) -> bool:
        return token.lower() in self._things or token.lower() in self._parts or _is_caption(token)


def content(text: str) -> frozenset[str]:
    """Return the stems of what a text says, numbers included, without the words that carry nothing."""
    tokens = re.findall(r"[A-Za-z][A-Za-z'’-]*|\d[\d.,]*", text)
    stems = {stem(token.lower().replace("’", "'")) for token in tokens}
    return frozenset(s.rstrip(".,") for s in stems if s not in _EMPTY and (len(s) > 1 or s.isdigit()))


_EMPTY = frozenset(map(stem, (
    "the", "a", "an", "of", "to", "in", "on", "at", "is", "are", "be", "it", "its", "and", "or", "for", "with", "by",
    "from", "this", "that", "there", "what", "which", "when", "where", "who", "why", "how", "does", "do", "did", "may",
    "you", "your", "if", "as", "so", "not", "no", "yes", "one", "has", "have", "then", "than", "will", "can", "them",
    "they", "each", "only", "all", "any", "show", "mean", "happen",
)))  # fmt: skip


def _read() -> dict[str, Any]:
    import tomllib  # only when questions are made

    with open(_FILE, "rb") as file:
        return tomllib.load(file)


def _tidy(text: str) -> str:
    text = re.sub(r"\s+([?.,:;])", r"\1", re.sub(r"\s+", " ", text)).strip()
    return upper(re.sub(r"([.?!])\?", r"\1", re.sub(r"\bthe (the|each|every|a|an)\b", r"\1", text)))


def _asks_already(bare: str, pattern: str) -> bool:
    """Whether words begin as a question of their own, which a pattern for what follows a name would spoil."""
    first = bare.split()[0].lower()
    return first in _QUESTION_WORDS and not pattern.startswith(first)


_QUESTION_WORDS = frozenset(("why", "what", "which", "how", "where", "when", "who"))


def _is_caption(token: str) -> bool:
    """Whether a word is written all in capitals, as a caption or a switch is."""
    letters = [c for c in token if c.isalpha()]
    return len(letters) > 1 and all(c.isupper() for c in letters)


def _is_plural(words: str) -> bool:
    head = re.sub(r" (?:measured|fitted|stowed|kept|shown|found)$", "", words).split()[-1]
    return head.endswith("s") and not head.endswith(("ss", "us", "is")) and not _is_caption(head)


def _states(base: Base) -> list[tuple[str, str]]:
    """Return what the inputs of state tables say, in small letters and as written, the longest first."""
    says = [text for item in base.inputs.values() for _, text, _ in item.values[1:]]
    return sorted(((text.lower().removeprefix("the "), text) for text in says), key=lambda pair: -len(pair[0]))


def _capitals(base: Base) -> dict[str, str]:
    """Return the words that the records never write small but at the start of a sentence: "System", "Mach"."""
    large: dict[str, str] = {}
    small: set[str] = set()
    for text in _texts(base):
        for found in _WORD.finditer(text):
            token = found.group()
            at_start = not text[: found.start()].rstrip(" “(") or text[: found.start()].rstrip(" “(")[-1] in ".:;!?"
            if token[0].isupper() and not at_start:
                large.setdefault(token.lower(), token)
            elif token[0].islower():
                small.add(token)
    return {name: token for name, token in large.items() if name not in small and token[1:].islower()}


def _texts(base: Base) -> Iterable[str]:
    for name in base.order:
        record = base.records[name]
        yield from (getattr(record, field, "") for field in ("says", "of", "title", "condition"))
    for item in base.inputs.values():
        yield from (says for _, says, _ in item.values)
