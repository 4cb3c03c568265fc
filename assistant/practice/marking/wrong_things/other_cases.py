"""What an answer says that would be right of another case: the action of another band, another mode."""

from __future__ import annotations

from assistant.practice.marking.finding.rivals import is_put_off
from assistant.practice.marking.of_results.no_thing import denies_asked
from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.said import Said, plain
from assistant.practice.marking.reading.wording import NO_ACTION, NOTHING_DONE


def others_said(need: Need, said: Said) -> list[str]:
    """Return what is said that would be right of another case: the action of another band, another mode."""
    own = need.words
    held = {c for p in need.points for e in p.elements for c in e.concepts}
    found = []
    judged = need.within is not None
    asked = held | need.question.concepts if judged else held
    nothing = NOTHING_DONE.search(" ".join(said.reading.words)) is not None
    for other in (o for o in need.others if nothing or not NO_ACTION.match(o.text)):
        mine = held if other.kept else asked  # of two that the question names one is right alone
        telling = [e for e in other.elements if not (set(e.words) & own or e.concepts & mine)]
        telling = [e for e in telling if e.weight > 0.7] or telling
        heavy = max((e.weight for e in telling), default=0.0)
        spots = [_spot(e.words, e.concepts, said) for e in telling if e.weight >= 0.9 * heavy]
        spots += [_alone(word, own, said) for e in telling for word in e.words[-1:] if judged and len(e.words) > 1]
        said_so = [s for s in spots if s is not None and not _is_put_off(s, need, said)]
        if any(not (judged and _is_case(s, said)) for s in said_so):
            found.append(other.text)
    return found


def _is_put_off(place: int, need: Need, said: Said) -> bool:
    return is_put_off(place, said, need) or _outdone(place, said) or denies_asked(place, need, said)


def _alone(word: str, own: frozenset[str], said: Said) -> int | None:
    """Return where the last word of another case's name stands by itself: "its mate" for the axle mate."""
    known = word in own or word in said.words[:_LEADING] or not word.isalpha()
    return next((i for i, each in enumerate(said.words) if each == word and not known), None)


def _outdone(place: int, said: Said) -> bool:
    """Return whether another thing is said to come before the one at a place: "this has priority over that"."""
    before = said.reading.words[max(0, place - 2) : place]
    return not _OUTDOING.isdisjoint(before) and place > _LEADING


_OUTDOING = frozenset(("beats", "over", "overrides", "trumps"))
_LEADING = 1


def _is_case(place: int, said: Said) -> bool:
    """Return whether a place is in a clause that tells of some case: "more than 5% low: re-inflate"."""
    start = max((i + 1 for i in range(place) if said.reading.words[i] in (";", ".", ",", "so")), default=0)
    before = range(start, place)
    return bool(said.numbered.intersection(before)) or any(said.reading.words[i] in _CASES for i in before)


_CASES = frozenset(("if", "when", "otherwise", "outside", "beyond", "rule"))


def _spot(words: tuple[str, ...], concepts: frozenset[str], said: Said) -> int | None:
    for i, here in enumerate(said.concepts):
        if said.words[i + 1 : i + 2] == (plain("pedals"),):
            continue  # "normal pedals" are no NORMAL braking
        if not here.isdisjoint(concepts) or (
            said.words[i] == words[0] and all(w in said.words[i : i + len(words) + 1] for w in words)
        ):
            return i
    return None
