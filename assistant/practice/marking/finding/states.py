"""Whether an answer says that a thing is there or not: "no anti-skid", "autobrake has gone", "both still work"."""

from __future__ import annotations

import re

from assistant.practice.marking.finding.judged_each import judged_said
from assistant.practice.marking.points import Need, State
from assistant.practice.marking.reading import wording
from assistant.practice.marking.reading.said import Said, plain

_NOT = frozenset(
    {"no", "not", "without", "neither", "never", "nor", "cannot", "lose", "lost", "losing", "loses", "nothing"}
)


_LOSING = wording.word_set("lose lost losing loses")


def state_said(state: State, need: Need, said: Said) -> bool | None:
    """Return whether an answer says that the thing is there, None where it says nothing of it."""
    told = judged_said(state, need, said) if state.judged else None
    return _said_there(state, need, said) if told is None else told


def _said_there(state: State, need: Need, said: Said) -> bool | None:
    named = next((concept for here in said.concepts for concept in here if concept and concept in state.names), "")
    if named:
        return named == state.names[1]
    subjects = {i for p in need.points if p.state for i in said.where(p.state.subject)}
    found: list[bool] = []
    for place in said.where(state.subject):
        words = said.reading.words
        if words[place + 1 : place + 2] in (("switch",), ("skid",)):
            continue
        found.append(_said_at(place, subjects, need, said))
    if found or need.question.has("why"):
        return found[0] if found else None  # a reason is named outright, and a bare "no" is none
    if "neither" in said.reading.words:
        return False
    unsaid = [p.state for p in need.points if p.state and not said.where(p.state.subject)]
    both = _BOTH.search(" ".join(said.reading.words)) if len(unsaid) == _TWO else None
    if both and state in unsaid:
        return both.group(1) not in wording.LOST
    alone = all(p.state for p in need.points)
    opens = need.polar and said.reading.words[:1] in _OF_IT
    of_it = _said_of_it(said) if len(unsaid) == 1 and (alone or opens) else None
    if of_it is None and unsaid == [state] and not state.turned:
        of_it = _by_its_verb(need, said)
    if of_it is not None:
        return of_it
    bare = _bare(need, said, len(unsaid))
    if state not in unsaid or len(bare) != len(unsaid):
        return None
    return bare[unsaid.index(state)] is not state.turned


def _by_its_verb(need: Need, said: Said) -> bool | None:
    """Return what is said by the verb with which a question asks of its one thing: "so it will not hold the plane"."""
    asked = _VERBS_OF_IT.intersection(need.question.words)
    words = said.reading.words
    for i, word in enumerate(words):
        if word.removesuffix("s") in asked and _PRONOUNS.intersection(words[max(0, i - _CLOSE) : i]):
            return not _DENYING_VERB.intersection(words[max(0, i - _CLOSE) : i])
    return None


_VERBS_OF_IT = wording.word_set("hold steer work")
_PRONOUNS = wording.word_set("it they that")
_DENYING_VERB = wording.word_set("not never cannot no nor")
_CLOSE = 3


_OF_THE_NEXT = wording.word_set("keep keeps keeping lose loses losing")
"""Verbs that say of the thing behind them whether it is there."""
_SAYING_SO = frozenset(("with", "yes", "have", "has", "got", "keep", "keeps"))
_WITH = wording.word_set("got has have keep keeps still with")


def state_told(state: State, said: Said) -> bool | None:
    """Return whether an answer says outright that a thing is there or not, though nobody asked for it."""
    words = said.reading.words
    for place in said.where(state.subject):
        if words[place + 1 : place + 2] in (("switch",), ("on",), ("off",)):
            continue
        if place and words[place - 1] in ("no", "without"):
            return False
        if _does(place, said):
            return True
        after = _after(place, {place}, said)
        if after is not None:
            return after
        if _denied_before(place, {place}, said):
            return False
        if _WITH.intersection(words[max(0, place - 3) : place]):
            return True
    return None


def _does(place: int, said: Said) -> bool:
    """Return whether a verb alone behind a thing says that it does what another does not: "but the pedals do"."""
    words = said.reading.words
    behind = words[place + 1 : place + 3]
    ends = len(behind) == 1 or (len(behind) == _TWO and (behind[1] in wording.STOPS or behind[1] in _STILL))
    return ends and behind[0] in _DOING and not _DENYING_BEFORE.intersection(words[max(0, place - _TWO) : place])


_DOING = wording.word_set("do does can will steer steers work works")
_STILL = wording.word_set("still though however instead fine normally")
_DENYING_BEFORE = wording.word_set("nor neither not no")


def _said_of_it(said: Said) -> bool | None:
    """Return what is said of the one thing asked about, by "it" or by nothing: "it won't hold", "not available"."""
    words = list(said.reading.words)
    first = words[1:] if tuple(words[:1]) in _VERDICTS else words
    if first[:1] == [","]:
        return None  # the yes or no says it, and what follows may speak of something else
    clause = []
    for word in first:
        if word in wording.STOPS or word in wording.CONTRASTS:
            break
        clause.append(word)
    if not clause or (clause[0] not in _OPENING and len(clause) > 3):
        return None
    gone = bool((wording.LOST - {"off", "out"}).intersection(clause))
    there = bool((wording.KEPT | {"hold", "steer"}).intersection(clause))
    denies = sum(1 for w in clause if w in wording.NEGATORS or w in _CEASING)
    gone = gone or (not _OFF.isdisjoint(clause) and not _TURNING.isdisjoint(clause))
    return (gone is bool(denies % 2)) if gone else not denies % 2 if there else None


_CEASING = wording.word_set("stop stops stopped cease ceases quit quits")
_TURNING = wording.word_set("cuts drops goes is switches turns")
_OFF = frozenset(("off", "out"))
"""With a verb before it, the loss of a thing: "it switches off"."""
_OF_IT = (("it",), ("holds",), ("steers",), ("works",))
"""First words that speak of the thing asked about without its name."""
_TWO = 2
_BOTH = re.compile(
    r"\bboth (?:of them )?(?:are |have |is |do )?(?:now |still )?(gone|lost|out|off|dead|unavailable|inoperative|inop|"
    r"work|working|available|active)\b"
)
"""What is said of two things at once that are not named."""
_VERDICTS = (("yes",), ("no",), ("yep",), ("nope",), ("negative",), ("affirmative",), ("affirm",))
_OPENING = frozenset(("it", "that", "this", "they", "not", "still", "no", "is", "does", "will", "gone", "lost"))


def bare_said(need: Need, said: Said) -> bool | None:
    """Return the one yes or no that stands alone at the end of an answer, where one thing is asked about."""
    states = [p.state for p in need.points if p.state]
    bare = _bare(need, said, 1) if len(states) == 1 and not any(p.verdict for p in need.points) else []
    last = [w for w in said.reading.words if w not in wording.STOPS][-1:]
    return bare[0] is not states[0].turned if len(bare) == 1 and last and last[0] in _ALONE else None


def _bare(need: Need, said: Said, wanted: int) -> list[bool]:
    """Return the yes and no that stand alone, one for each thing asked: "ALTERNATE, none, none"."""
    clauses: dict[int, list[str]] = {}
    for word, clause in zip(said.reading.words, said.clauses, strict=True):
        if word not in wording.STOPS and word not in ("and", "but"):
            clauses.setdefault(clause, []).append(word)
    alone = [words[0] for words in clauses.values() if len(words) == 1 and words[0] in _ALONE]
    first = said.reading.words[:1]
    named = any(m.start == 0 and m.end > 1 and not m.weak for m in said.reading.mentions)  # "no wheel brakes"
    named = named or any(1 in said.where(p.state.subject) for p in need.points if p.state)  # "no anti-skid"
    if not alone and wanted == 1 and need.polar and first in _VERDICTS and not named:
        alone = [first[0]]
    return [word in _AFFIRMING for word in alone]


_AFFIRMING = frozenset(("yes", "yep", "yeah", "affirm", "affirmative"))
_ALONE = _AFFIRMING | {"no", "none", "nope", "neither", "negative", "nah"}


def _said_at(place: int, subjects: set[int], need: Need, said: Said) -> bool:
    first = min((m.start for m in said.reading.mentions if place in m.taken and not m.weak), default=place)
    if any(i and said.reading.words[i - 1] in ("no", "without", "neither", "nor") for i in (place, first)):
        return False
    if "full" in (*said.reading.words[place - 1 : place], *said.reading.words[place + 1 : place + 2]) and place:
        return True
    after = _after(place, subjects, said)
    if after is not None:
        return after
    if need.loss and not wording.KEPT.intersection(words_beside(said, place)):
        return _as_before(place, said) is True
    return not _denied_before(place, subjects, said)


def _as_before(place: int, said: Said) -> bool | None:
    """Return what the clause before says, where a thing is only said to be as that is: "they work, autobrake too"."""
    words = said.right(place)[1:]
    if not words or words[0] not in _AS_WELL:
        return None
    earlier = [i for i in range(place) if said.clauses[i] == said.clauses[place] - 1]
    before = {said.reading.words[i] for i in earlier}
    if before & _GONE or before & _NOT:
        return False
    return True if before & wording.KEPT else None


_AS_WELL = frozenset(map(plain, ("too", "also", "likewise", "as")))


def words_beside(said: Said, place: int) -> list[str]:
    """Return the words of a thing's clause, without "normal" where it names a mode: "normal braking"."""
    words = said.left(place) + said.right(place)
    normal = plain("normal")
    return [w for w, after in zip(words, [*words[1:], ""], strict=True) if w != normal or after[:4] not in _MODES]


_MODES = ("brak", "mod", "mode")


def _after(place: int, subjects: set[int], said: Said) -> bool | None:
    """Return what the words after a thing say of it, past the things that it is joined with."""
    words, denied = said.reading.words, False
    for i in range(place + 1, min(len(words), place + 12)):
        word = words[i]
        if _passed(i, subjects, said):
            continue
        if _ends(i, subjects, said) or (word in _OF_THE_NEXT and _thing_next(i, subjects, said)):
            break
        if word in ("none", "nil") or (word == "nothing" and words[i - 1] in ("do", "does")):
            return False
        if words[i : i + 2] == ("no", "longer"):
            denied = True
            continue
        if word == "no":
            return _no_after(i, place, subjects, said)
        if word in ("not", "never", "neither"):
            denied = True
        elif word in _SAID_BEHIND:
            return denied is (word in _GONE)
    return False if denied else None


_GONE = (wording.LOST - {"unaffected"}) | {"affected", "impaired", "touched"}
_SAID_BEHIND = _GONE | wording.KEPT
"""Words behind a thing that say whether it is as it was; "not affected" is that it works."""


def _passed(i: int, subjects: set[int], said: Said) -> bool:
    """Return whether a word only joins a thing with the next of them, or with what is said of it."""
    word = said.reading.words[i]
    joins = word in wording.JOINS and (word != "and" or _thing_next(i, subjects, said))
    return i in subjects or joins or word == ":" or (word == "," and _joined_on(i, subjects, said))


def _ends(i: int, subjects: set[int], said: Said) -> bool:
    """Return whether what is said of a thing ends at a word."""
    word = said.reading.words[i]
    return (
        word in wording.STOPS or word in wording.CONTRASTS or word in ("and", "without") or i in said.numbered
        or (word == "not" and i + 1 in subjects)
    )  # fmt: skip


def _no_after(i: int, place: int, subjects: set[int], said: Said) -> bool | None:
    """Return what a "no" after a thing says: of it ("anti-skid no"), or of the next ("anti-skid, no autobrake")."""
    words = said.reading.words
    if i + 1 >= len(words) or words[i + 1] in wording.STOPS:
        return False
    if i + 1 not in subjects and i > place + 1:
        return False  # "have no effect"
    first = min(subjects)
    leads = words[first - 1] in _NOT | _SAYING_SO if first else False
    return None if leads or i != place + 1 or i + 1 not in subjects else False


def _thing_next(i: int, subjects: set[int], said: Said) -> bool:
    """Return whether an "and" joins another of the things: "anti-skid and the autobrake"."""
    following = [k for k in range(i + 1, min(i + 4, len(said.words))) if said.reading.words[k] not in wording.JOINS]
    return bool(following) and following[0] in subjects


def _joined_on(i: int, subjects: set[int], said: Said) -> bool:
    following = [k for k in (i + 1, i + 2) if k < len(said.words)]
    if following and said.reading.words[following[0]] in _OF_THE_NEXT:
        return False
    return any(k in subjects for k in following) and said.words[following[0]] not in ("no", "not", "without")


def _denied_before(place: int, subjects: set[int], said: Said) -> bool:
    """Return whether the words before a thing deny it, its own or those of a thing that it is joined with."""
    words = said.reading.words
    for i in range(place - 1, max(-1, place - 12), -1):
        word = words[i]
        if word in (".", ";", ":", "(") or word in wording.CONTRASTS:
            return False
        if word in _LOSING and {"not", "never"}.intersection(words[max(0, i - _TWO) : i]):
            return False  # "you haven't lost autobrake"
        if word in _NOT:
            return True
        if word == "," and not _all_joined(i, place, subjects, said):
            return False
        if word in wording.KEPT and word not in ("both", "on"):
            return False
    return False


def _all_joined(start: int, end: int, subjects: set[int], said: Said) -> bool:
    between = [i for i in range(start + 1, end) if i not in subjects and said.words[i] not in wording.JOINS]
    return not between and any(i in subjects for i in range(max(0, start - 2), start))
