"""Answers that say nothing to the point, though they name things: no answer in kind, or words that tell nothing.

Who is asked for a colour, a sound, a figure, a person or a place has not answered wrongly with anything else that is
so: "it means that a leg isn't locked". And who says of what is asked no more than that it is safe, that one has to
be careful or that it was taught so, claims nothing.
"""

from __future__ import annotations

import re
from functools import lru_cache

from assistant.practice.marking.finding.beside_point import OF_AMOUNTS, numbered
from assistant.practice.marking.finding.rivals import families_of
from assistant.practice.marking.missed.told_aside import only_names_it, tells_aside
from assistant.practice.marking.of_statements.narrowing import MODES
from assistant.practice.marking.points import Need, Point
from assistant.practice.marking.reading.said import Said, plain
from assistant.practice.marking.reading.wording import NO, YES, word_set
from assistant.resolving.knowing import Knowledge

_SOUNDS = frozenset(
    map(
        plain,
        word_set("""
    beep beeping bell buzzer chime clacker click gong horn intermittent noise silent silence siren tone voice whistle
"""),
    )
)
_PEOPLE = frozenset(
    map(
        plain,
        word_set("""
    captain commander copilot crew dispatcher driver either engineer everybody everyone instructor maintenance nobody
    officer passenger pilot pilots seat skipper
"""),
    )
)
_SPOTS = word_set("above behind below beneath beside between in inside near next on outside over under")
_PERSON = frozenset(("captain", "first_officer", "maintenance", "ground_crew"))


def says_nothing(need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether an answer that holds no point says nothing in the place of one either."""
    return (
        _empty(need, said, know)
        or _of_other_kinds(need, said, know)
        or _undecided(need, said, know)
        or tells_aside(need, said)
        or _lacks_only(need, said)
        or only_names_it(need, said, know)
    )


def _lacks_only(need: Need, said: Said) -> bool:
    """Return whether a yes or no is asked for, and an answer only tells what other thing there is not: "no flaps"."""
    return need.polar and not said.claims and _WITHOUT_ONLY.fullmatch(" ".join(said.reading.words)) is not None


_WITHOUT_ONLY = re.compile(
    r"(?:(?:well|so|then|just|but|there is|there are|you have|you get|we have|and|or|though|either|[,.;]) ?)*"
    r"without [a-z-]+(?: [a-z-]+){0,2}"
    r"(?:(?: [,.;])? (?:and |or |but )?(?:without|no) [a-z-]+(?: [a-z-]+){0,2})*(?: [.!?])?"
)


def _undecided(need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether an answer decides nothing where a yes or no is asked for, and gives no figure or measure."""
    text = " ".join(said.reading.words)
    if not any(p.verdict for p in need.points) or said.claims or not OF_AMOUNTS.isdisjoint(said.reading.words):
        return False
    chosen = any(families_of(know).get(c) in MODES for here in said.concepts for c in here)
    return not (chosen or YES.search(text) or NO.search(text) or _JUDGING.search(text))


_JUDGING = re.compile(r"\b(?:just|still|enough|too|high|hot|low|fine|ok|only|so long|as long|if|unless|until|needs?)\b")
"""Words that decide something all the same."""


def _of_other_kinds(need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether nothing in an answer is of a kind that is asked for, where all that is asked for is of a few."""
    if need.ordered or need.loss or need.polar or need.cause:
        return False
    placed = need.question.has("where")
    kinds = {_kind(p, placed, know) for p in need.points}
    words = set(said.reading.words)
    counted = "figure" in kinds and (not OF_AMOUNTS.isdisjoint(words) or numbered(need, said, know))
    if "" in kinds or kinds == {"figure"} or counted or _ABSENT.search(" ".join(said.reading.words)):
        return False
    return not any(_in_kind(kind, said, know) for kind in kinds)


_ABSENT = re.compile(
    r"\b(?:none|nothing|neither|without|no (?:\w+ )?(?:colou?r|light|lamp|sound|noise|warning|one|pins?))\b"
)
"""What says that there is none of what is asked for."""


def _kind(point: Point, placed: bool, know: Knowledge) -> str:
    """Return what sort of thing a point is: a figure, a colour, a sound, a person or a place; "" for anything else."""
    own = [e for e in point.elements if not e.given and e.weight > _TELLING]
    if point.verdict or point.state or point.which or point.way:
        return ""
    if point.figures:
        return "figure"
    if own and all(any(know.lexicon.families.get(c) == "colour" for c in e.concepts) for e in own):
        return "colour"
    if any(not _SOUNDS.isdisjoint(e.words) for e in own):
        return "sound"
    if own and any(not _PERSON.isdisjoint(e.concepts) or plain("seat") in e.words for e in own):
        return "person"
    first = point.text.lower().removeprefix("only ").split()[0]
    return "place" if placed and first in _SPOTS else ""


_TELLING = 0.7


def _in_kind(kind: str, said: Said, know: Knowledge) -> bool:
    words = set(said.words)
    if kind == "colour":
        return any(know.lexicon.families.get(c) == "colour" for here in said.concepts for c in here)
    if kind == "sound":
        return not _SOUNDS.isdisjoint(words)
    if kind == "person":
        return not _PEOPLE.isdisjoint(words)
    if kind == "place":
        return not _SPOTS.isdisjoint(said.reading.words)
    return False


def _empty(need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether all the words of an answer that the question has not are such as tell nothing of any matter."""
    given = know.base.settings.get("evading")
    if said.claims or not isinstance(given, dict):
        return False
    words = (*given.get("empty", ()), *(given.get("rules", ()) if need.question.has("why") else ()))
    empty = _plainly(tuple(map(str, words)))
    passed = empty | need.asked
    told = [m for m in said.reading.mentions if not passed.issuperset(said.words[i] for i in m.taken)]
    return bool(said.reading.mentions) and not told and not _OPPOSING.search(" ".join(said.reading.words))


@lru_cache(maxsize=4)
def _plainly(words: tuple[str, ...]) -> frozenset[str]:
    """Return the plain forms of words that tell nothing, with those that only join what tells something."""
    return frozenset(map(plain, words)) | _JOINING


_JOINING = frozenset(
    map(
        plain,
        word_set("""
    a all always an and any are as at be been can could do does ever for from had has have i in is it its like might
    more most much must need never no not of on one only or should so that the there these they this those to too very
    was were when will with would you
"""),
    )
)
_OPPOSING = re.compile(r"\b(?:nothing|none|neither|no \w+)\b")
"""What claims that there is none of what is asked for."""
