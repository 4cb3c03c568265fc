"""A "no" that only determines a noun, and is no answer of its own: "no problem", "no autobrake", "no fans needed".

Of trouble it consents ("no restriction" lets one do it), of the very thing asked it denies that ("no steering"), and of
any other thing it says nothing to the question. Only what stands as an answer of its own is left as the "no" of it.
"""

from __future__ import annotations

import re

from assistant.practice.marking.of_statements.narrowing import MODES
from assistant.practice.marking.points import Need
from assistant.practice.marking.questions.parts import POLAR, pieces
from assistant.practice.marking.questions.turned import asks_loss
from assistant.practice.marking.reading.said import Said, plain
from assistant.practice.marking.reading.wording import NO, word_set
from assistant.resolving.knowing import Knowledge

_OF_DEGREE = (
    r"(?:(?:real|big|major|great|such|more|further|particular|special|known|specific|other|speed|weight|time) )*"
)
_BAR = (
    r"(?:problemo?|restriction|issue|limit|limitation|trouble|worry|worrie|objection|obstacle|difficulty|difficultie|"
    r"drama|bother|concern|sweat|harm|maximum|minimum|prohibition|constraint|hindrance|complaint)s?"
)
"""Nouns of what would stand in the way."""
_CHANGE = r"(?:change|effect|difference|impact|influence|consequence|degradation)s?"
"""Nouns of what would be otherwise than before."""
_IS_THERE = (
    r"(?:(?:there|that|it|this|they|i|we|you)(?:['’]?s| is| are| see| have| has|['’]?ve| would be|['’]?d be| should be|"
    r" will be|['’]?ll be| makes?)(?: got)? )?"
)
_DENIED = (
    rf"\b{_IS_THERE}(?:no|never an?|(?:(?:is|does|will|would|should)(?:n['’]?t| not) (?:(?:be|cause|make|have|see) )?|"
    rf"not )(?:an?|any)) {_OF_DEGREE}"
)
_NO_BAR = re.compile(
    rf"{_DENIED}{_BAR}\b(?! (?:(?:is|was|of|being) )?(?:\d|\w+ty\b|\w+ hundred))"
    r"(?: (?:at all|there|whatsoever|applies|apply|here|exceeded|on that|with (?:that|it)|is exceeded))*|"
    r"\bnothing (?:wrong|against|stops|stopping|prevents|forbids|to stop|speaks against)\b|"
    r"\b(?:i )?(?:do(?:n['’]?t| not)|can(?:['’]?t|not)) see (?:why not|any|an?) ?(?:problem|reason)?\b|"
    r"\bno reason (?:why )?not\b(?: to)?|\bwhy not\b",
    re.IGNORECASE,
)
_NO_CHANGE = re.compile(rf"{_DENIED}{_CHANGE}\b", re.IGNORECASE)
_HAS_NONE = re.compile(r"(?:\b(?:has|have|had|got|having|with)|['’]ve) no\b[\w ]*$", re.IGNORECASE)
"""Who has no effect does not do what is asked."""
_BOUND = re.compile(
    r"\s*,?\s*(?:as long as|below|under|up to|until|unless|if|provided|only|within|above|when|once|"
    r"(?:from|at|over)(?= \d))\b",
    re.IGNORECASE,
)
_FILLERS = r"(?:\W|\b(?:well|er|erm|uh|um|so|oh|ah|okay|ok|right|hmm|i think|i would say|no)\b)*"
_LEADS = re.compile(_FILLERS, re.IGNORECASE)
_FORBIDS = re.compile(
    r"\b(?:forbidden|prohibited|restricted|limited|not allowed|need|needs|needed|have to|has to|must|required|"
    r"necessary)\b",
    re.IGNORECASE,
)
"""What a question asks for where "no problem" might mean either."""
_MAY = re.compile(r"\b(?:may|allowed|permitted|acceptable|legal|within|ok|okay|can (?:i|we|you|one))\b", re.IGNORECASE)
_DETERMINES = re.compile(r"\bno (?=[a-z])", re.IGNORECASE)
_BEHIND = word_set("""
    and or nor but then at all needed required there available anymore any either neither here so because as since in
    on with for from to left now though anyway when while if after during until
""")
"""Words behind a thing with which no clause on it begins: in "no fans must be off" the "no" is the answer."""


def without_determiners(answer: str, need: Need, know: Knowledge) -> str:
    """Return an answer in which each "no" that only determines a noun is said otherwise, so that it answers nothing."""
    if not (need.polar or any(p.verdict for p in need.points)) or not _ANY.search(answer):
        return answer
    answer = _of_trouble(answer, need)
    more = any(p.elements and not (p.verdict or p.state or p.optional or p.figures) for p in need.points)
    return answer if more else _of_things(answer, need, know)  # "no steady", asked which setting it is then


_ANY = re.compile(r"\b(?:no|not|never|nothing)\b|n['’]?t\b", re.IGNORECASE)


def _of_trouble(answer: str, need: Need) -> str:
    """Return an answer with what says that nothing stands in the way as the yes that it is."""
    text = need.question.text
    if asks_loss(text):
        return _NO_BAR.sub("no", answer)  # asked whether it is affected
    for pattern in (_NO_BAR, _NO_CHANGE):
        found = pattern.search(answer)
        if found is None or any(plain(w) in need.asked for w in _nouns(found.group())):
            continue
        unclear = _FORBIDS.search(text) if pattern is _NO_BAR else _MAY.search(text) or _lone(found, answer)
        if pattern is _NO_CHANGE and _HAS_NONE.search(answer[: found.end()]):
            answer = f"no, {answer}" if _LEADS.fullmatch(answer[: found.start()]) else answer
            continue
        answer = _consented(found, answer, need, bool(unclear))
    return answer


def _nouns(text: str) -> list[str]:
    return [w for w in re.findall(r"[a-z]+", text.lower()) if re.fullmatch(f"{_BAR}|{_CHANGE}", w)]


def _lone(found: re.Match[str], answer: str) -> bool:
    """Return whether an effect is denied and nobody says on what: it may be what is asked for that has none."""
    return "change" not in found.group().lower() and not re.match(r"\s+(?:on|to|for)\b", answer[found.end() :])


def _consented(found: re.Match[str], answer: str, need: Need, unclear: bool) -> str:
    before, after = answer[: found.start()], answer[found.end() :]
    leads = _LEADS.fullmatch(before) is not None
    rest = NO.search(_plainly(after)) or (not leads and NO.search(_plainly(before)))
    if unclear or (rest and not leads):
        word = "without that"
    elif _BOUND.match(after):
        word = "only" if need.within is False else "yes"
    else:
        word = "yes," if after[:1] == " " else "yes"
    return f"{'' if leads else before}{word}{after}"


def _plainly(text: str) -> str:
    return " ".join(re.findall(r"[a-z]+", re.sub(r"n['’]t\b", " not", text.lower())))


def _of_things(answer: str, need: Need, know: Knowledge) -> str:
    """Return an answer with the things that are not there and that nobody asked for as that alone."""
    asked = _asked(need, know)
    loses = asks_loss(need.question.text) and all(p.verdict for p in need.points if not p.optional)
    made, start = "", 0
    for found in _DETERMINES.finditer(answer):
        thing = _thing(re.split(r"[.,;:!?()—–]", answer[found.end() :])[0], know)
        if not thing:
            continue
        if thing & asked:
            word = "yes, no " if loses and not made.strip() and not answer[: found.start()].strip() else found.group()
        else:
            word = "without "
        made, start = made + answer[start : found.start()] + word, found.end()
    return made + answer[start:]


def _thing(clause: str, know: Knowledge) -> frozenset[str]:
    """Return what a "no" determines: the things named right behind it, on which no clause begins; else nothing."""
    said = know.phrase(clause)
    end, found = 0, frozenset[str]()
    for mention in said.mentions:
        if mention.start != end or mention.weak or not any(_is_thing(c, know) for c in mention.concepts):
            break
        end, found = mention.end, found | mention.concepts
    after = said.words[end:]
    return found if not after or after[0] in _BEHIND else frozenset()


def _is_thing(concept: str, know: Knowledge) -> bool:
    """Return whether a concept is a thing, and not one of several values: "no full" is a "no", and then FULL."""
    named = concept[0] not in "~@#=" and know.lexicon.kinds.get(concept, "thing") == "thing"
    return named and know.lexicon.families.get(concept) not in _VALUES


_VALUES = frozenset((*MODES, "colour"))


def _asked(need: Need, know: Knowledge) -> frozenset[str]:
    """Return the concepts of what is asked, without those of the case that it is asked in, and those of the points."""
    asking = [p for p in pieces(need.question.text) if POLAR.match(p)]
    own = frozenset(c for p in asking for c in know.phrase(p).concepts) if asking else need.question.concepts
    lacking = _LACKING.findall(re.split(r"[.;]\s", need.expected)[0])
    own |= frozenset(c for each in lacking for c in _thing(each, know))
    points = [e for p in need.points for e in p.elements if not e.off]
    states = frozenset(c for p in need.points if p.state for c in p.state.subject)
    return own | states | frozenset(c for e in points for c in e.concepts if c[0] != "~")


_LACKING = re.compile(r"\bno ([a-z-]+(?: [a-z-]+)?)", re.IGNORECASE)
"""What the full answer itself denies."""


def denies_asked(place: int, need: Need, said: Said) -> bool:
    """Return whether a result is named by no more than the denial of the thing asked about: "no steering"."""
    named = [m for m in said.reading.mentions if place in m.taken and said.reading.words[m.start] == "no"]
    return need.polar and any(need.asked.issuperset(said.words[i] for i in m.taken[1:]) for m in named)
