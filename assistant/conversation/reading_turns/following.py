"""Complete a turn from the question before it: what the turn names replaces its like, the rest stays.

The merged question is words again, read anew: so that everything that holds for a whole question holds for it.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from assistant.conversation.reading_turns.joining_words import in_full, measured_by, use_joining
from assistant.conversation.reading_turns.like_amounts import FEW, figure, like_of, unit_word
from assistant.conversation.reading_turns.other_orders import replace_orders
from assistant.conversation.reading_turns.settings import Setting
from assistant.conversation.reading_turns.turned_round import replace_with
from assistant.frozen import NamedTuple
from assistant.quantities.numbers import STARTERS
from assistant.resolving.asked_quantity import QUANTITIES
from assistant.resolving.knowing import Knowledge, Question
from assistant.understanding.mentions import Mention, Reading

_BEFORE_A_VARIANT = frozenset({"on", "for", "the", "a", "an", "in", "of", "with"})
_LEAD = frozenset({
    "and", "what", "about", "how", "ok", "okay", "so", "then", "now", "but", "right", "well", "if", "or", "also",
    "plus", "instead", "same", "again", "that", "it", "the", "in", "fine", "um", "er",
})  # fmt: skip
NEW = -1
"""In the place of an old amount: a new one is given besides all others, as the words beside it say."""
_POSITION = "position"
_OTHER_READING = "other_reading"
_POINTING = frozenset({"it", "them", "that", "those"})
_NOTHING = frozenset({"none", "nothing", "without"})
_NONE = _NOTHING | {"at", "all", "any", "with", "of", "them", "whatsoever"}
_LEADING = frozenset({"at", "from", "to", "with", "by", "of", "down", "up"})
"""Words that lead an amount and go where it goes: "and down to 200"."""


class Merged(NamedTuple):
    """The question before with a turn's parts in the place of their like.

    whole: all that the turn names took a place, so that it is no question of its own.
    """

    words: str
    whole: bool


class _Places:
    """What is put before and left out of the words of the question before, and what of the turn is used up."""

    def __init__(self) -> None:
        self.put: dict[int, list[str]] = {}
        self.drop: set[int] = set()
        self.used: set[int] = set()
        self.behind: list[str] = []

    def replace(self, old: Sequence[int], new: Sequence[str], used: Iterable[int]) -> None:
        """Put words in the place of some of the question before; used: the turn's own that they stand for."""
        self.put.setdefault(old[0], []).extend(new)
        self.drop.update(old)
        self.used.update(used)

    def set(self, old: Sequence[int], new: Sequence[str], used: Iterable[int]) -> None:
        """Put words in the place of some, or behind all where the question before holds none of their like."""
        if old:
            self.replace(old, new, used)
        else:
            self.behind += new
            self.used.update(used)


def merged_words(
    before: Question,
    turn: Question,
    know: Knowledge,
    corrects: bool = False,
    parts: Mapping[int, int] | None = None,
    only_parts: bool = False,
    setting: Setting | None = None,
    judged: bool = False,
) -> Merged:
    """Return the words of the question before, with the turn's own parts in the place of their like.

    parts: the start of the old amount that a new one, by its start, stands for, where a calculation tells.
    setting: what the turn chooses otherwise than the question before.
    judged: the question before was a verdict on a reading, which is none of another wheel or leg: "nose then?".
    only_parts: no other amount takes an old one's place: the turn gives what was asked back for.
    """
    reading = turn.reading
    places = _Places()
    replace_orders(before, reading, places)
    _replace_numbers(before, reading, know, places)
    _replace_amounts(before, reading, know, places, parts or {}, only_parts)
    if places.used:  # "another's 169": another reading has taken the place of the first
        places.used.update(k for m in reading.mentions if m.holds(_OTHER_READING) for k in m.taken)
    _replace_families(before, reading, know, places, corrects or "instead" in reading.words)
    if judged and _of_another_one(before, reading, know):
        places.drop.update(k for a in before.reading.amounts for k in range(a.start, a.end))
    _replace_in_names(before, reading, know, places)
    use_joining(reading, places, _LEAD)
    if not places.used and not _POINTING.isdisjoint(reading.words):
        replace_with(before, reading, places, know)
    if not places.used:
        _replace_by_none(before, reading, know, places)
    _replace_inside(before, reading, know, places)
    if not places.used:
        replace_with(before, reading, places, know)
    if setting and places.used.isdisjoint(setting.used) and places.drop.isdisjoint(setting.old):
        places.set(setting.old, setting.words, setting.used)
    _drop_conditions(before, {c.input for c in turn.conditions} | put_aside(before, turn, know), places)
    if reading.variants:
        places.drop.update(before.reading.variant_places)
    words = _put_together(before, places)
    named = {*reading.variant_places, *(i for i, w in enumerate(reading.words) if w in reading.variants)}
    named |= _leading_to(named, reading.words)
    rest = [w for i, w in enumerate(reading.words) if i not in places.used and i not in named]
    while rest and rest[0] in _LEAD and not (len(rest) == 2 and know.units.match(rest, 1)) and not _asks_how(rest):
        rest.pop(0)
    whole = bool(places.used) and _all_used(turn, places, know)
    if whole:  # what is said once more says nothing more: "book says 1,550 actually"
        filling = {w for m in reading.mentions if know.lexicon.fills(m.concepts) for w in m.text.split()}
        rest = [w for w in rest if w not in before.reading.words and w not in filling]
    text = " ".join(words).rstrip("?!. ") + (" , " + " ".join(rest) if rest else "")
    return Merged(text, whole)


def _of_another_one(before: Question, reading: Reading, know: Knowledge) -> bool:
    """Return whether a turn without an amount names another wheel or leg than the one judged, whose reading is not told
    of; not "same on the nose leg", nor "the nose one" after a tyre that was not said to be of either.
    """
    if reading.amounts or "same" in reading.words:
        return False
    named, placed = (
        any(_POSITION in know.lexicon.families_of(m.concepts) for m in each.mentions)
        for each in (reading, before.reading)
    )
    return bool(reading.unit) or (named and placed)


def _leading_to(named: set[int], words: Sequence[str]) -> set[int]:
    """Return the places of the small words that lead to a variant's name and mean nothing without it: "on the L"."""
    found: set[int] = set()
    for start in named:
        k = start - 1
        while k >= 0 and words[k] in _BEFORE_A_VARIANT:
            found.add(k)
            k -= 1
    return found


def _asks_how(words: Sequence[str]) -> bool:
    """Return whether words begin with a "how" that asks for a time, and does not lead on: "how about"."""
    return words[0] == "how" and words[1:2] == ["long"]


def _put_together(before: Question, places: _Places) -> list[str]:
    """Return the words of the question before with what takes their place; numbers that come together are parted."""
    words: list[str] = []
    touched = False
    for i, word in enumerate(before.reading.words):
        new = [*places.put.get(i, []), *([] if i in places.drop else [word])]
        if new and touched and words and _is_number(words[-1]) and _is_number(new[0]):
            words.append(",")
        touched = (touched and not new) or i in places.drop or i in places.put
        words += new
    return [*words, ",", *places.behind] if places.behind else words


def _is_number(word: str) -> bool:
    return word[0].isdigit() or word in STARTERS or word == "hundred"


def _all_used(turn: Question, places: _Places, know: Knowledge) -> bool:
    said = {k for c in turn.conditions for k in c.where}
    content = [m for m in know.matcher.telling(turn.reading) if not _LEAD.issuperset(m.text.split())]
    return all(places.used.issuperset(m.taken) or m.start in said for m in content)


def _replace_amounts(
    before: Question, reading: Reading, know: Knowledge, places: _Places, parts: Mapping[int, int], only_parts: bool
) -> None:
    taken: set[int] = set()
    olds = {a.start: a for a in before.reading.amounts}
    zero = () if reading.amounts else (figure(reading),)  # "at zero?"
    for amount in (*reading.amounts, *(a for a in zero if a)):
        if amount.start in places.used or parts.get(amount.start) == NEW:
            continue
        like = olds.get(parts.get(amount.start, NEW))
        if like is None and not only_parts:
            like = like_of(amount, before, reading, know, taken)
        if like is None or like.start in taken:
            continue
        taken.add(like.start)
        words = list(reading.words[amount.start : amount.end]) if amount.value else ["0"]  # "zero" may say empty
        if amount.unit is None and like.unit:
            words.append(unit_word(like.unit))
        places.put[like.start] = words
        places.drop.update(range(like.start, like.end))
        places.used.update(range(amount.start, amount.end))
        lead = amount.start - 1
        while lead >= 0 and reading.words[lead] in _LEADING:
            places.used.add(lead)
            lead -= 1


def _replace_numbers(before: Question, reading: Reading, know: Knowledge, places: _Places) -> None:
    """Put a bare number in the place of the one in a name, where that is a name too: "and 2?", after code 5."""
    amount = figure(reading)
    if amount is None or before.reading.amounts or amount.start in places.used:
        return
    for old in before.reading.mentions:
        at = [k for k in old.taken if before.reading.words[k].isdigit()]
        if len(at) != 1 or before.reading.words[at[0]] == f"{amount.value:g}":
            continue
        name = " ".join(f"{amount.value:g}" if k in at else before.reading.words[k] for k in old.taken)
        other = know.phrase(name)
        if len(other.mentions) == 1 and not other.amounts and other.mentions[0].concepts.isdisjoint(old.concepts):
            places.replace(at, (f"{amount.value:g}",), range(amount.start, amount.end))


def _replace_in_names(before: Question, reading: Reading, know: Knowledge, places: _Places) -> None:
    """Put a word in the place of one in a longer name, where that is a name of its family: "idle?", after full
    reverse.
    """
    if len(reading.words) > FEW:
        return
    for mention in reading.mentions:
        if len(mention.taken) != 1 or places.used.issuperset(mention.taken):
            continue
        word = reading.words[mention.start]
        for old in before.reading.mentions:
            mine = know.lexicon.families_of(old.concepts) if len(old.taken) > 1 else frozenset()
            for k in old.taken if mine and not places.drop.intersection(old.taken) else ():
                name = " ".join(word if i == k else before.reading.words[i] for i in old.taken)
                other = know.phrase(name).mentions
                if len(other) != 1 or not other[0].concepts.isdisjoint(old.concepts):
                    continue
                kept = " ".join(before.reading.words[i] for i in old.taken if i != k)
                of_one = not know.phrase(kept).concepts.isdisjoint(old.implied & other[0].implied)
                if of_one and mine & know.lexicon.families_of(other[0].concepts):
                    places.replace((k,), (word,), mention.taken)
                    break


def _replace_families(before: Question, reading: Reading, know: Knowledge, places: _Places, takes_place: bool) -> None:
    _replace_labels(before, reading, know, places)
    for mention in reading.mentions:
        mine = know.lexicon.families_of(mention.concepts)
        if not mine or places.used.issuperset(mention.taken) or (_can_fail(mention, know) and not takes_place):
            continue  # another thing that fails is added to the first, unless it is said to take its place
        for old in before.reading.mentions:
            theirs = know.lexicon.families_of(old.concepts)
            if mine & theirs and old.concepts != mention.concepts and not places.drop.intersection(old.taken):
                new = in_full(mention, old, before, know) or [reading.words[k] for k in mention.taken]
                places.replace(old.taken, new, mention.taken)
                places.drop.update(measured_by(before, old, reading))
                break


def _replace_by_none(before: Question, reading: Reading, know: Knowledge, places: _Places) -> None:
    """Put "no reverse" in the place of a use of reverse, after which "and with none?" is asked."""
    rest = [w for w in reading.words if w not in _LEAD and w.isalpha()]
    if not rest or not _NONE.issuperset(rest) or not _NOTHING.intersection(rest):
        return
    for old in before.reading.mentions:
        mine = know.lexicon.families_of(old.concepts)
        for word in (before.reading.words[k] for k in old.taken):
            name = f"no {word}"
            other = know.lexicon.families_of(know.phrase(name).concepts - old.concepts)
            if mine & other and not places.drop.intersection(old.taken):
                places.replace(old.taken, name.split(), range(len(reading.words)))
                return


def _replace_inside(before: Question, reading: Reading, know: Knowledge, places: _Places) -> None:
    """Put a thing in the place of its like inside a longer name: "and the pedals?", after the tiller limit."""
    for mention in reading.mentions:
        mine = know.lexicon.families_of(mention.concepts)
        if not mine or places.used.issuperset(mention.taken) or _can_fail(mention, know):
            continue
        if mention.concepts & QUANTITIES:
            continue  # the heat in the name of a message is none that is asked for
        longer = [k for old in before.reading.mentions if len(old.taken) > 1 for k in old.taken]
        for k in (k for k in longer if k not in places.drop):
            inner = know.phrase(before.reading.words[k]).concepts
            if mine & know.lexicon.families_of(inner) and inner != mention.concepts:
                places.replace((k,), [reading.words[i] for i in mention.taken], mention.taken)
                break


def _replace_labels(before: Question, reading: Reading, know: Knowledge, places: _Places) -> None:
    """Put a label's full name in the place of its like: "and full", after a question on another setting."""
    families = know.lexicon.families
    named = {k for m in reading.mentions for k in m.taken if not families.keys().isdisjoint(m.concepts)}
    for index, word in enumerate(reading.words):
        if index in named:
            continue
        name = know.lexicon.shown.get(word, "")
        mine = know.lexicon.families_of(c for m in know.phrase(name).mentions for c in m.concepts) if name else set()
        for old in before.reading.mentions if mine else ():
            theirs = know.lexicon.families_of(old.concepts)
            if mine & theirs and not places.drop.intersection(old.taken):
                places.replace(old.taken, name.split(), (index,))
                break


def _can_fail(mention: Mention, know: Knowledge) -> bool:
    inputs = {i for c in (*mention.concepts, *mention.implied) for i in know.states.by_term.get(c, ())}
    return not inputs.isdisjoint(know.states.failures)


def put_aside(before: Question, turn: Question, know: Knowledge) -> set[str]:
    """Return what is no longer failed, where a turn says that another thing is instead."""
    failures = know.states.failures
    new = {c.input for c in turn.conditions if c.input in failures}
    if "instead" not in turn.reading.words or not new:
        return set()
    return {c.input for c in before.conditions if c.input in failures} - new


def _drop_conditions(before: Question, named: set[str], places: _Places) -> None:
    for condition in before.conditions:
        if condition.input in named:
            others = {k for c in before.conditions if c.input not in named for k in c.where}
            places.drop.update(set(condition.where) - others)
