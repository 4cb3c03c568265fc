"""What people say in place of an answer: they leave it to somebody, would look it up, tell of their lessons, or say no
more than what kind of thing it is.

"That's for the ground crew to decide" claims nothing, and is no wrong answer. Who it is left to, where it is looked up
and how people speak of learning are words of the language: `settings: evading` of the knowledge.
"""

from __future__ import annotations

import re
from functools import lru_cache
from itertools import pairwise

from assistant.frozen import NamedTuple
from assistant.practice.marking.of_statements.narrowing import MODES
from assistant.practice.marking.reading.said import Said
from assistant.practice.marking.reading.wording import CONTRASTS, word_set
from assistant.resolving.knowing import Knowledge
from assistant.understanding.mentions import Reading

_CUTS = CONTRASTS | frozenset(".,;:?!-–—()…")
_OPENERS = word_set("""
    actually and because but er erm gee gosh ha heavens hm hmm honestly just oh ok okay right so surely think to uh um
    well wow
""")


class _Ways(NamedTuple):
    whole: re.Pattern[str]
    """A clause that is nothing but a remark."""
    left: re.Pattern[str]
    """One that leaves it to somebody."""
    telling: re.Pattern[str]
    """What people say of themselves or of a lesson, somewhere in a clause about nobody's aeroplane."""
    oneself: re.Pattern[str]


def evades(said: Said, know: Knowledge, question: Reading) -> bool:
    """Return whether an answer is remarks and nothing else, each of which claims nothing.

    To leave it to somebody is no remark where it is asked who does it, nor what a thing tells where its meaning is.
    """
    of_people = not question.has("who")
    if not question.has("why") and not _MEANING.search(question.text) and _REMINDS.fullmatch(_text(said)):
        return True
    families = know.lexicon.families
    if any(families.get(c) in (*MODES, "colour") for m in said.reading.mentions for c in m.concepts):
        return False
    clauses = [_opened(words) for words in _clauses(said)]
    return any(clauses) and all(_is_remark(words, know, of_people) for words in clauses if words)


def is_remark(words: list[str], know: Knowledge) -> bool:
    """Return whether the words of a clause are a remark in place of an answer."""
    return _is_remark(_opened(words), know, True)


def _text(said: Said) -> str:
    return " ".join(said.reading.words).rstrip(" .!")


_MEANING = re.compile(r"\b(?:mean|means|meaning|for|tell|tells|purpose|do|does)\b[^.,;]*[?.]?$", re.IGNORECASE)
_REMINDS = re.compile(
    r"(?:it|they|that|this)(?: is| are)?(?: there)?(?: just| only| to)* (?:reminds?|tells?|warns?|lets?|gets?|shows?)"
    r"(?: (?:you|us|me|the crew|pilots|people))(?: know)? (?:about|of|to|that)?(?: the| your)? ?(?:\w+ ?){0,2}"
)
"""What a light does as any light does: "it reminds you about the brake"."""


def without_remarks(said: Said, know: Knowledge) -> str:
    """Return an answer's words without the clauses that are such remarks; "" where there are none, or nothing else."""
    words = said.reading.words
    pieces = [(piece, _is_remark(_opened([words[i] for i in piece]), know, False)) for piece in said.pieces(_CUTS)]
    drop = {i for piece, remark in pieces if remark for i in piece}
    left = [word for i, word in enumerate(words) if i not in drop]
    return " ".join(left) if drop and any(w[0].isalnum() and w not in _CUTS for w in left) else ""


def _clauses(said: Said) -> list[list[str]]:
    words = said.reading.words
    return [[words[i] for i in each] for piece in said.pieces(_CUTS) for each in _by_speaker(piece, words)]


def _by_speaker(piece: range, words: tuple[str, ...]) -> list[range]:
    """Return a clause parted before an "I" or "we" that begins another one: "it's in the book I'd read it there"."""
    starts = [
        i for i in piece[_LEAST:-_LEAST]
        if words[i] in _SPEAKING and words[i + 1] in _SPOKEN and words[i - 1] not in _LEADING_ON
    ]  # fmt: skip
    edges = [piece.start, *starts, piece.stop]
    return [range(a, b) for a, b in pairwise(edges)]


_LEAST = 2
_SPEAKING = word_set("i we you")
_SPOKEN = word_set("can could do just must need should will would")
_LEADING_ON = word_set("as before how if or than that until what when where which while who why")


def _opened(words: list[str]) -> list[str]:
    """Return a clause without the words that only open it, or lead on from it."""
    start = next((i for i, word in enumerate(words) if word not in _OPENERS), len(words))
    start += 2 if words[start : start + 1] == ["i"] and _HOLDING.intersection(words[start + 1 : start + 2]) else 0
    end = len(words)
    while end > start and words[end - 1] in _ENDING:
        end -= 1
    return words[start:end]


_HOLDING = word_set("believe fear guess reckon suppose think")
_ENDING = word_set("and because but or so then")


def _is_remark(words: list[str], know: Knowledge, of_people: bool) -> bool:
    given = know.base.settings.get("evading")
    if not words or not isinstance(given, dict) or any(word[0].isdigit() for word in words):
        return False
    ways = _ways(tuple((name, tuple(map(str, names))) for name, names in given.items()))
    text = " ".join(words)
    if ways.whole.match(text) or (of_people and ways.left.match(text)):
        return True
    return bool(ways.telling.search(text) and ways.oneself.search(text))


_LEAVES = (
    r"(?:it|that|this|which)(?: is| was| s| would be| will be| may be)?"
    r"(?: all| rather| more| really| usually| probably)?"
)
_MAY = (
    r"(?: would| will| may| might| should| could| can| do| ought to)?(?: usually| always| normally| generally| then)?"
)
_LOOKS = (
    "see|look|looking|check|checking|asking|ask|consult|follow|refer|read|find|phone|ring|call|study|inspect|speak|"
    "talk|wait|work"
)
_TAKES = "run|use|open|get|do|take|have|go|let|leave|pull"
_TELLS = (
    "decides?|says?|calls?|reads?|does|do|did|works?|handles?|makes?|tells?|knows?|looks?|sorts?|takes?|has|have|had|"
    "covers?|explains?|gives?|deals?|briefs?|writes?|shows?"
)
_ABOUT = (
    r"(?:it|that|this|those|these|them|so|me|us|what to do)"
    r"(?: one| decision| call| sum| out| up| for (?:me|us))*"
)
_STUFF = "thing|things|stuff|items?|points?|words?|ones?|suspects|lot|business|drill|talk|story"
_SUBJECT = (
    r"(?:the |all the |all )?(?:answer|details?|drill|figures?|items?|numbers?|order|procedure|rest|steps?|values?)"
    r"(?: (?:for|to|of|about) (?:that|it|this|those|them))?"
)
_COMES = r"(?:(?:it|that|this|they) ?(?:is|s|are|comes?(?: on| up)?|shows?|lights?(?: up)?|means?)? ?(?:that )?)?"
_SOMETHING = (
    r"(?:(?:there|it) ?(?:is|s|has|are) )?"
    r"(?:so?m?e?thi?ngs?|anything|things|a problem|problems|a fault|a failure|trouble)"
)
_AMISS = (
    r"(?:(?:is|s|has|have|are|goes|go|gone|went|been|being|not|t|isn|isnt|quite|up|a bit|really) )*"
    r"(?:wrong|right|amiss|up|off|the matter|bad|broken|funny|working|as it should(?: be)?)"
)
_ADJECTIVES = r"(?: very| quite| important| big| special| safety| certain| specific| good| memory)*"


@lru_cache(maxsize=4)
def _ways(given: tuple[tuple[str, tuple[str, ...]], ...]) -> _Ways:
    """Return the patterns of what is said in place of an answer, from the words of the language."""
    names = {name: "|".join(sorted(map(re.escape, each), key=len, reverse=True)) for name, each in given}
    person = rf"(?:the |my |our |a |an |some )?(?:\w+ ){{0,2}}(?:{names['people']})(?: \w+)?"
    whole, left = _claiming_nothing(names, person), _leaving_it(names, person)
    return _Ways(
        re.compile(rf"(?:{'|'.join(whole)})$"),
        re.compile(rf"(?:{'|'.join(left)})$"),
        re.compile(rf"\b(?:{names['doubts']}|{names['lessons']})\b"),
        re.compile(
            r"\b(?:i|me|my|we|us|our|you give|(?:could|can) you|just give|tricky|"
            r"(?:chapter|lesson|lecture|slide) (?:was|is))\b"
        ),
    )


def _claiming_nothing(names: dict[str, str], person: str) -> tuple[str, ...]:
    """Return the patterns of remarks that look it up, that put it off, or that say only what kind of thing it is."""
    writing = rf"(?:the |my |our |a |an )?(?:\w+ ){{0,3}}(?:{names['writings']})"
    thing = rf"(?:the |this |that )?(?:\w+ )?(?:{names['things']})"
    want = r"(?:i|you|we|one)(?: would| will| d| should| must| could| need| needs| want| have| like| prefer| to| be)+"
    kind = rf"(?:a|an|the|one of the|(?:just|only) an?|some (?:kind|sort) of){_ADJECTIVES} (?:{names['kinds']})s?"
    return (
        rf"{want} (?:{_LOOKS})\b.* (?:{writing}|{person}|{_ABOUT}|first)(?: first| before i \w+.*| up)?",
        rf"{want} (?:{_TAKES})\b.* (?:{writing}|{person})(?: .*{_ABOUT})?",
        rf"{want} (?:{_LOOKS}) (?:at )?{thing}(?: first| again| once more| before .*| for myself)?",
        rf"{want} (?:{_LOOKS}) {_ABOUT}(?: off| up| out)*(?: from| in)? (?:there|here|that)",
        rf"(?:just |simply |then |and )*(?:{_LOOKS}|{_TAKES}|work through|go through|read off) "
        rf"(?:{_ABOUT} )?(?:up |off |out |from |in |on |through |by )*(?:{writing})(?: .*{_ABOUT})?",
        rf"(?:i|we|you)(?: would| d| will| always| usually| normally| just| rather)* leave "
        rf"(?:(?:{_ABOUT}|(?:the |my |all )?(?:\w+ ){{1,3}}?) )?(?:all )?to {person}(?: with .*)?",
        r"(?:\w+ ){1,3}and (?:that|this|such|those)(?: sort| kind)?(?: of)? things?",
        rf"(?:(?:it|that|they) (?:is|are) )?(?:just |only |all |really )*the usual (?:{_STUFF})\b.*",
        r"(?:that|it|this) is (?:one|something|a thing)(?: that)? (?:you|we|i|people) (?:\w+ ){0,2}?"
        r"(?:want|like|love|hate|respect|enjoy|dread)\b.*",
        r"(?:that|this|it) is (?:a lot|quite a lot|quite something|a (?:bad|long|hard|rough|busy) \w+)\b.*",
        r"(?:then )?(?:somebody|someone)(?: else)? (?:is|was|did|had|must have)\b.*",
        rf"(?:they|those|these) (?:are|were) (?:both |all |just |only )+(?:\w+ ){{0,3}}?(?:{names['kinds']})s?",
        rf"(?:they |those |and |both )+(?:are )?(?:both |all )*(?:in|on) (?:{writing})",
        rf"{_SUBJECT} (?:is|are|s|was)(?: all| just| only)* "
        rf"(?:written |stated |printed |listed |given |somewhere |there )*(?:in|on) (?:{writing})(?: .*{_ABOUT})?",
        rf"(?:(?:as|like) )?(?:my|our|an old) (?:\w+ )?(?:{names['people']}) (?:always |once |often |used to )*"
        r"(?:says?|said|tells?|told|warns?|warned|taught)(?: (?:me|us|so|that))*",
        r"(?:that|it|this|they)(?: is| are| s)? what (?:\w+ )?(?:is|are|s)(?: there)? for",
        r"(?:that|it|this|they)(?: is| are| s)? what (?:you|we|one|they) (?:do|use|press|hold|need|want) "
        r"(?:it |them )?(?:for|to) .*",
        rf"{writing}{_MAY} (?:{_TELLS}) (?:\w+ )?{_ABOUT}",
        rf"{_LEAVES} (?:written |stated |printed |listed |given |somewhere |there )*(?:in|on) (?:{writing})"
        r"(?: somewhere)?",
        rf"there (?:is|s) {writing}(?: in .*)? (?:for|on|about) (?:it|that|this)(?: .*)?",
        rf"{want} {person} to (?:{_LOOKS})\b.*",
        r"(?:it|they|that)\b.* depend(?:s|ing) on (?:the |what |which |how )?(?:\w+ ?){1,4}",
        r"(?:(?:it|that) )?(?:all )?depends (?:on )?(?:how|if|what|where|whether|which|who|whose) (?:\w+ ?){1,6}",
        r"(?:you|we|i)(?: would| will| can| could| should| d)+ (?:just |soon )?(?:feel|notice|know|tell|expect)\b.*",
        rf"(?:whichever|whatever|what)(?: one)? {writing} (?:says|tells|gives|has|shows|wants)\b.*",
        rf"{want} (?:{_LOOKS})\b.* (?:instead|myself|too|as well)",
        r".*\b(?:sorts?|handles?|looks? after|takes? care of) (?:itself|themselves|it|that)(?: out)?"
        r"(?: automatically)?",
        r".* (?:to be (?:safe|sure)|just in case|(?:to be )?on the safe side)",
        r"(?:just |always |first )*fly the (?:aeroplane|aircraft|plane)(?: first)?",
        r"(?:it|that|this)(?: all| really| just)? (?:depends|varies)(?: on (?:the )?(?:situation|circumstances|"
        r"conditions|case|day|aeroplane|aircraft|type|operator))?",
        rf"(?:it|that|this|they) (?:is|s|was)(?: not)? {kind}(?: (?:to know|to remember|to bear in mind|"
        rf"(?:about|for|on|of|to do with|in)(?: the| your)? (?:{names['things']})))?",
        rf"{_LEAVES} (?:the )?(?:sort|kind) of thing .*",
        rf"(?:(?:you|we|i|they|just|to|can|check|measure|read|see) )*(?:it |that |them )?with "
        r"(?:a|an|the|your) (?:\w+ )?"
        rf"(?:{names['instruments']})(?: in .*| of .*)?",
        rf"(?:you|we|i|they)(?: can| just| will| would| could| do)* (?:see|look|read|check|watch)"
        rf"(?: it| that| this| them)?(?: at| on| from| off)* (?:a|an|the|your) (?:\w+ )?(?:{names['instruments']})",
        rf"{_LEAVES} (?:right |just |all |somewhere )*(?:in|on|under) the same (?:{names['writings']}|list|line) as .*",
        rf"{_LEAVES} what {person} (?:do|does|did|uses?|wants?|needs?|asks?) (?:it |them |that )?"
        r"(?:for|when|before|at|during) .*",
        rf"{_COMES}(?:when|if|because) (?:{_SOMETHING}) (?:{_AMISS})(?: (?:with|in|on|about) {thing})?"
        r"(?: basic\w+| or other| somewhere| really)*",
        r"(?:in |on )?(?:the )?same (?:way|thing|one)? ?(?:as|like) (?:on |with |for )?(?:any|every|all|most) .*",
        r"(?:safety|flying the aeroplane) (?:comes|is|goes) first",
    )


def _leaving_it(names: dict[str, str], person: str) -> tuple[str, ...]:
    """Return the patterns of remarks that leave it to somebody."""
    return (
        rf"(?:{_LEAVES} )?(?:up to|down to|for|one for|(?:a|the) (?:question|job|matter|decision) for) {person}"
        rf"(?: to \w+(?: {_ABOUT})?)?",
        rf"{_LEAVES} (?:{person}(?: s)?|their) (?:call|decision|job|business|problem|matter|department|responsibility)",
        rf"{_LEAVES} an? (?:\w+ )?(?:{names['people']}) (?:matter|question|decision|thing|call|job)",
        rf"(?:{_LEAVES} |they are |those are )?left to {person}",
        rf"(?:{person}|they|he|she){_MAY} (?:{_TELLS}) (?:\w+ )?{_ABOUT}",
        r"(?:whoever|somebody|someone)\b.* (?:has to say|decides?|says|should know|will know)",
    )
