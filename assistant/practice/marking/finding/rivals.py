"""What cannot be meant together with what is asked: another colour, mode or setting, the other side, the other way."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from assistant.practice.marking.finding.beside_point import COMPARES
from assistant.practice.marking.finding.found import Held
from assistant.practice.marking.finding.only_aside import only_aside
from assistant.practice.marking.finding.only_naming import told_of_none
from assistant.practice.marking.finding.polarity import denied
from assistant.practice.marking.points import Need, Point
from assistant.practice.marking.questions.asked import bare_names
from assistant.practice.marking.reading import wording
from assistant.practice.marking.reading.contraries import OTHER
from assistant.practice.marking.reading.said import Said, plain
from assistant.resolving import tables
from assistant.resolving.knowing import Knowledge

_PERSONS = ("captain", "first_officer", "maintenance", "ground_crew")
_SELECTED = (
    "person",
    "colour",
    "braking-mode",
    "autobrake-setting",
    "hydraulic-system",
)


_LED_TO = (("in",), ("into",), ("to",))
"""Words before a mode that one is left in, and does not lose."""
_NAMED_BARE = tuple(family for family in _SELECTED if family != "colour")


def rivals(need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return the members of a family that an answer names in place of, or beside, the one asked for."""
    bares = bare_names(know, _NAMED_BARE)
    families = families_of(know)
    asked = frozenset(c for m in need.question.mentions for c in m.concepts)
    wanted = {c for p in need.points for e in p.elements for c in e.concepts}
    wanted |= {c.rpartition(".")[2] for c in wanted if c in families}
    wanted |= {c for bare in wanted & bares.keys() for c in families if c.split(".")[-1].startswith(bare)}
    turned = {c for p in need.points for e in p.elements if e.off for c in e.concepts}
    found = []
    for family in _SELECTED:
        members = {c for c in wanted if families.get(c) == family and not _only_given(c, need)}
        if not members:
            continue
        named = [(i, c) for i, here in enumerate(said.concepts) for c in here if families.get(c) == family]
        for place, concept in named:
            if family == "person" and concept in wanted and _is_once_more(concept, members, need, said):
                found.append(" ".join(said.reading.words[place : place + 1]))
                break
            if concept in wanted or concept in asked or (not members & turned and is_put_off(place, said, need)):
                continue
            led_to = said.concepts[place].isdisjoint(need.said) and said.reading.words[place - 1 : place] in _LED_TO
            if need.loss and family == "braking-mode" and not led_to:
                continue
            if concept in need.said and any(c in members for _, c in named) and not _as_choice(place, members, said):
                continue
            if any(c in members for c in said.concepts[place]):
                continue
            found.append(" ".join(said.reading.words[place : place + 1]))
    return found


def families_of(know: Knowledge) -> dict[str, str]:
    """Return the family of each concept that has one, by its bare name too: "firm" for the setting."""
    short = {c.removesuffix(f"_{f.split('-')[-1]}"): f for c, f in know.lexicon.families.items() if f in _NAMED_BARE}
    bares = bare_names(know, _NAMED_BARE)
    bares |= {f"={t.id}.{o.id}.{v}": bares[v] for t in tables.tables(know.base) for o in t.outputs
              for v, _, _ in o.values if v in bares and v != "none"}  # fmt: skip
    return {**bares, **know.lexicon.families, **short, **dict.fromkeys(_PERSONS, "person")}


def _as_choice(place: int, members: set[str], said: Said) -> bool:
    """Return whether a name stands with an "or" beside the one that is asked for: "System 1 or System 2"."""
    words = said.reading.words
    ors = [i for i in range(max(0, place - 4), min(len(words), place + 5)) if words[i] == "or"]
    near = {k for i in ors for k in range(max(0, i - 4), min(len(words), i + 5)) if k != place}
    return any(not said.concepts[k].isdisjoint(members) for k in near)


def _is_once_more(concept: str, members: set[str], need: Need, said: Said) -> bool:
    """Return whether a person is named more often than asked for, and another who is asked for is not."""
    wanted = sum(1 for p in need.points if any(concept in e.concepts for e in p.elements))
    named = [m for m in said.reading.mentions if concept in m.concepts]
    named = [m for i, m in enumerate(named) if not i or m.start - named[i - 1].end > _APPOSED]
    silent = any(not said.where(frozenset((other,))) for other in members if other != concept)
    return silent and len(named) > wanted


_APPOSED = 2
"""Words between two names of one person that are said of him together: "the captain in the left seat"."""


def set_at(need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return the setting with which a thing is named that is not there: "no anti-skid, autobrake FIRM"."""
    absent = frozenset(c for p in need.points if p.state and not p.state.there for c in p.state.subject)
    settings = (c for i in said.where(absent) for c in (said.concepts[i + 1] if i + 1 < len(said.words) else ()))
    return [c for c in settings if know.lexicon.families.get(c) == "autobrake-setting" and c not in absent]


def other_thing(need: Need, said: Said) -> list[str]:
    """Return the thing that an answer speaks of in place of the one asked about: the nose tyres for the main ones."""
    said = said._replace(words=tuple(_MOVES.get(word, word) for word in said.words))
    words = set(said.words)
    pairs = [(a, b) for one, two in _THINGS for a, b in ((one, two), (two, one))]
    pairs = [(a, b) for a, b in pairs if a in need.asked and b not in need.asked and b in words]
    if not said.claims and COMPARES.search(" ".join(said.reading.words)):
        return []  # "lower than the mains" gives no figure to the mains
    return [
        b for a, b in pairs
        if (a not in words and not only_aside(b, need, said)) or _figure_beside(b, a, need, said)
    ]  # fmt: skip


def _figure_beside(other: str, own: str, need: Need, said: Said) -> bool:
    """Return whether the figure asked for is given to the other thing: "205 psi in the nose, 190 in the mains"."""
    wanted = {f.value for p in need.points for f in p.figures}
    for claim in (c for c in said.claims if c.amount.value in wanted):
        end = claim.amount.end
        stopped = said.reading.words[end : end + 1] == () or said.reading.words[end] in wording.STOPS
        following = [] if stopped else said.right(end)
        near = said.left(claim.amount.start) + following
        behind = [w for i, w in enumerate(following[:_BEHIND]) if said.numbered.isdisjoint(range(end, end + i + 1))]
        if (other in near and own not in near) or (other in behind and own not in behind):
            return True
    return False


_BEHIND = 4
"""Words behind a figure within which the thing stands that it is of: "205 on the nose"."""
_MOVES = {plain("extension"): plain("extend"), plain("retraction"): plain("retract")}
_THINGS = tuple((plain(a), plain(b)) for a, b in (("main", "nose"), ("extend", "retract")))


def persons(need: Need, said: Said) -> list[str]:
    """Return the pilots that are named in place of those on the ground who do it."""
    seated = any("seat" in e.words for p in need.points for e in p.elements)
    if seated and "seat" not in said.words and "captain" not in said.words:
        duty = _BY_DUTY.search(" ".join(said.reading.words))
        if duty and duty.group() not in " ".join((*need.question.words, need.expected.lower())):
            return [duty.group()]
    wanted = {c for p in need.points for e in p.elements for c in e.concepts} & {"maintenance", "ground_crew"}
    if not wanted or said.where(frozenset(wanted)):
        return []
    told = zip(said.words, said.reading.words, strict=True)
    return [w for w, full in told if full in _FLYING and w not in need.asked]


_BY_DUTY = re.compile(r"\b(?:pilot (?:flying|monitoring)|flying pilot|monitoring pilot|pf|pm)\b")
"""A pilot named by what he does, where the seat is asked for."""
_FLYING = frozenset(("pilot", "pilots", "crew", "captain", "copilot"))


def _only_given(concept: str, need: Need) -> bool:
    return all(e.given for p in need.points for e in p.elements if concept in e.concepts)


def is_put_off(place: int, said: Said, need: Need, last: int | None = None) -> bool:
    """Return whether a name is said not to hold: "NORMAL is gone", "not red", "was white". last: its last word."""
    words = said.reading.words
    for i in range(place - 1, max(-1, place - 4), -1):
        if words[i] in _DENYING:
            if words[i] in ("no", "without") and any(i < m.start and m.end <= place for m in said.content):
                break  # "no autobrake, white bars" denies the autobrake alone
            return i > 0 or words[i] != "no" or not any(p.verdict for p in need.points)
        if words[i] in wording.STOPS or words[i] in ("and", "or", "in"):
            break
    end = place if last is None else last
    for word in words[end + 1 : end + 5]:
        if word in wording.STOPS or word in wording.CONTRASTS or word in ("with", "without"):
            return False
        if word in wording.LOST:
            return True
    return False


_DENYING = frozenset({"not", "no", "without", "lose", "lost", "loses", "losing", "than", "was", "from", "never", "isn"})


def opposed(points: Sequence[Point], places: Sequence[tuple[int, ...]], need: Need, said: Said) -> list[str]:
    """Return the sides and ways that are the other of those asked: "ahead of the pedestal", "right of the display"."""
    found = []
    words = set(said.words) - told_of_none(points, said) - _only_denied(said)
    asked = set(need_words(need))
    full = set(map(plain, re.findall(r"[\w-]+", need.expected.lower())))
    for point, here in zip(points, places, strict=True):
        if point.figures and not here:
            continue
        for word in (w for e in point.elements if not e.given for w in e.words if not (e.off and w in _ENDS)):
            for other in sorted(OTHER.get(word, frozenset()) - _retracted_then(point)):
                if _is_no_way(word, point) or (point.figures and word in _BOUNDS and other == _BEGINNING):
                    continue
                if point.state and other in words & full and _told_alike(other, need, said):
                    continue
                if other not in words or _bounds(other, said) or _accounted(other, points, places, said):
                    continue
                if (other in need.asked and word not in _SIDED) or (word == "off" and "take-off" in point.text):
                    continue
                beside = _is_beside(other, word, point, said) and not _is_beside(word, other, point, said)
                if beside or (word not in words and other not in asked and word not in _SIDED):
                    found.append(f"{other}: {point.text}")
    return found


def _only_denied(said: Said) -> set[str]:
    """Return the words that an answer only denies: "do not | pump |"."""
    denied = {said.words[i] for i in range(1, len(said.words)) if said.reading.words[i - 1] in wording.NEGATORS}
    plainly = {word for i, word in enumerate(said.words) if not i or said.reading.words[i - 1] not in wording.NEGATORS}
    return denied - plainly


def _is_no_way(word: str, point: Point) -> bool:
    """Return whether a word of a point is no way of its own: "up to 15 kt", "on the ground crew's word"."""
    return (word == "up" and bool(_UP_TO.search(point.text))) or (word == "on" and not _ON.search(point.text))


def _retracted_then(point: Point) -> frozenset[str]:
    """Return the word of retracting where a point says it too: what is left down first is retracted then."""
    return _RAISED if any(not _RAISED.isdisjoint(e.words) for e in point.elements) else frozenset()


_RAISED = frozenset((plain("retract"),))
_ON = re.compile(r"\bON\b|\bon(?=\s*(?:[,;.)]|$|and\b|again\b))")
_UP_TO = re.compile(r"\bup to \d")
_ENDS = frozenset(map(plain, ("open", "closed")))
"""States of which not to be the one is to be the other: "still open" for not closed."""


def _told_alike(word: str, need: Need, said: Said) -> bool:
    """Return whether the full answer denies something of a thing just where an answer does."""
    clauses = [re.findall(r"[\w-]+", clause) for clause in re.split(r"[.;:,]", need.expected.lower())]
    true = {w for clause in clauses if word in map(plain, clause) for w in clause}
    here = said.beside(i for i, w in enumerate(said.words) if w == word)
    return true.isdisjoint(wording.NEGATORS) is here.isdisjoint(wording.NEGATORS)


_SIDED_WORDS = """
    left right up down on off above below before after open closed all set main nose wet dry full both every first last
"""
_SIDED = frozenset(map(plain, _SIDED_WORDS.split()))
"""Words that are said of many things: their opposites count only beside the thing."""


def need_words(need: Need) -> Iterable[str]:
    """Return the plain words of the question and of all the points."""
    yield from need.asked
    for point in need.points:
        yield from (w for e in point.elements for w in e.words)


_BOUNDS = frozenset(map(plain, ("above", "below", "up", "after", "before", "inside", "outside")))


_BEGINNING = plain("begin")


def _bounds(other: str, said: Said) -> bool:
    """Return whether a word only bounds numbers wherever it stands: "over five percent"."""
    return other in _BOUNDS and all(
        {i + 1, i + 2} & said.numbered for i, word in enumerate(said.words) if word == other
    )


def _accounted(other: str, points: Sequence[Point], places: Sequence[tuple[int, ...]], said: Said) -> bool:
    """Return whether a word is said as often as the points that were found hold it, and so belongs to them."""
    found = [p for p, here in zip(points, places, strict=True) if here]
    own = [p for p in found if any(other in e.words for e in p.elements) or re.search(rf"\b{other.upper()}\b", p.text)]
    return bool(own) and _times(other, said) <= len(own)


def _times(word: str, said: Said) -> int:
    """Return how often a word is said; "on" counts only where it stands alone: not "taxi on the brakes"."""
    spots = [i for i, each in enumerate(said.words) if each == word]
    if word != "on":
        return len(spots)
    after = [said.reading.words[i + 1] if i + 1 < len(said.words) else "." for i in spots]
    return sum(w in wording.STOPS or w in _ALONE_AFTER for w in after)


_ALONE_AFTER = frozenset(("again", "and", "at", "below", "if", "just", "once", "one", "only", "then", "under"))
"""Words behind an "on" that is a switch's."""


def _is_beside(other: str, word: str, point: Point, said: Said) -> bool:
    """Return whether a word stands in a clause that speaks of the point by another word, and is not itself denied."""
    pair = {other, word}
    rest = [e for e in (*point.elements, *point.labels) if pair.isdisjoint(e.words) and e.weight > 0.3]
    telling = frozenset(c for e in rest for c in e.concepts)
    plain_words = frozenset(w for e in rest for w in e.words)
    alone = [e for e in point.elements if not e.given]
    far = denied(said.reading.words, said.reading) if other in _ENDS else frozenset()
    for i, found in enumerate(said.words):
        denying = i in far or {"not", "no", "never", "than"} & set(said.reading.words[max(0, i - 3) : i])
        if found != other or (denying and not point.negated) or (other in _BOUNDS and {i + 1, i + 2} & said.numbered):
            continue
        clause = [k for k, c in enumerate(said.clauses) if c == said.clauses[i] and k != i]
        beside = any(not said.concepts[k].isdisjoint(telling) or said.words[k] in plain_words for k in clause)
        inside = any(said.words[k] in e.words for e in alone if pair & set(e.words) for k in clause if abs(k - i) < 4)
        state = len(alone) == 1 and bool(alone[0].concepts) and all(c[0] == "@" for c in alone[0].concepts)
        if beside or state or (len(alone) == 1 and (inside or len(alone[0].words) == 1)):
            return True
    return False


def colours(held: Sequence[Held], need: Need, said: Said, know: Knowledge) -> list[str]:
    """Return the colours that an answer names where none is asked for and something asked for is not said."""
    families = know.lexicon.families
    asked = any(families.get(c) == "colour" for p in need.points for e in p.elements for c in e.concepts)
    if not any(h.share for h in held) and all(h.point.figures and not h.point.verdict for h in held):
        return []  # "it's amber" says nothing of a time
    if not asked and all(h.share >= 1 for h in held) and "how" not in need.question.words:
        return []
    known = need.known
    return [
        said.reading.words[i] for i, here in enumerate(said.concepts)
        if any(families.get(c) == "colour" for c in here) and here.isdisjoint(known) and not is_put_off(i, said, need)
    ]  # fmt: skip
