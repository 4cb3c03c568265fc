"""Words as they are meant: contractions opened, slips that are words themselves, and who is only quoted."""

from __future__ import annotations

from assistant.quantities.amounts import Amount
from assistant.quantities.numbers import STARTERS
from assistant.quantities.tokens import Token
from assistant.understanding.words import expand

SAYING = frozenset({
    "says", "said", "told", "tells", "reckons", "claims", "claimed", "insists", "swears", "thinks", "believes",
    "argues", "maintains", "keeps", "wrote", "writes", "heard",
})  # fmt: skip
"""Words that end the opening of a question in which somebody else is quoted."""
_TAKES_OF = frozenset(("of", "made", "out", "consist", "consists", "kind", "sort", "type", "part", "think", "full"))
"""Words after which a last "of" is what it says."""

_MINUTES = frozenset(("minute", "minutes", "min", "mins", "hour", "hr"))
"""Units before a turn that is made at the stand: "a 35 minute turn"."""
_NUMBERED = {
    "runway": 36, "rwy": 36, "stand": 99, "gate": 99, "bay": 99, "taxiway": 99, "twy": 99, "flight": 9999,
}  # fmt: skip
"""Words before a number that is a name, with the greatest that there may be."""
_ONE_OF_SEVERAL = frozenset(("brake", "wheel", "tyre", "tire"))
"""Words before a small number that tells one of several apart, where something is told of it: "brake 3 reads 410"."""
_MOST_OF_A_KIND = 8
_TELLS = frozenset({
    "is", "at", "was", "reads", "reading", "read", "shows", "showing", "has", "indicates", "says", "still", "temp",
    "temperature",
})  # fmt: skip
_SIZES = frozenset(("wide", "long", "width", "length", "across", "broad", "m", "metres", "degrees", "celsius", "c"))
_MOVING = frozenset(("rolling", "taxiing", "taxying", "moving", "travelling", "trundling", "rollout", "crawling"))
_NUMBER = frozenset(("no", "nr", "nbr", "num"))
_LEFT = frozenset(("working", "left", "remain"))
_SMALL = frozenset(("one", "two", "three", "four"))
_ASKED_FOR = frozenset(("what", "the", "name", "those", "any", "give", "tell", "me", "state"))
_PEOPLE = frozenset(("of us", "of them", "of you"))


_BEFORE_NUMBER = {"form": "from", "won": "one"}
"""Words that are slips before a number: "form 300", "won twenty"."""
_READ_AT = frozenset(("at", "reads", "read", "shows", "of", "says"))
_COUNTING = STARTERS | {"and"}
"""Words after which "too" or "ate", written for a number that sounds so, are that number: "at too three five"."""
_BEFORE_DOING = frozenset(("what", "how", "where", "when", "whether", "needs", "ought"))
"""Words before "to" and what is done, where "too" is a slip: "what too do"."""
_SO_MUCH = frozenset((
    "hot", "high", "low", "much", "many", "little", "heavy", "soft", "warm", "short", "late", "soon", "big", "small",
))  # fmt: skip
_LOSING = frozenset({
    "i", "we", "you", "they", "it", "do", "does", "did", "would", "could", "will", "can", "might", "may", "me", "us",
    "not", "aeroplane", "aircraft", "pedals", "tiller", "tillers", "brakes",
})  # fmt: skip
"""Who loses something, where "loose" is a slip: "do we loose autobrake"."""
_OWNED = frozenset(("the", "my", "our", "your", "their", "thier", "its", "all", "any", "every", "some"))
_ARTICLES = frozenset(("a", "any", "no"))
_WHETHER = frozenset(("is", "are", "was", "were"))
_LET_DOWN = frozenset(("gear", "wheels", "undercarriage", "legs", "leg", "lever", "to", "will"))
"""What is lowered, after which "lower" compares nothing."""
_SHARED = frozenset(("psi", "degC"))
_ALIKE = 0.75
"""How near in size a bare number must be to one with a unit, to be meant in it."""


_MAY_SLIP = frozenset(("of", "no", "lower", "turn", "turns", "too", "ate", "hi", "loose", *_BEFORE_NUMBER))
"""Words that may be meant as others by what stands around them."""


def hearsay(words: list[str]) -> int:
    """Return where a question begins that opens with who says it: "a man from the union told me that …"."""
    for i, word in enumerate(words[:9]):
        if word in SAYING and i:
            return i
    return 0


def words_meant(tokens: list[Token]) -> list[Token]:
    """Read "of" as "off" where nothing follows that it could belong to ("anti skid of, both systems normal"), and
    "form" before a number as "from", "won" as "one".
    """
    may_slip = [(i, token) for i, token in enumerate(tokens) if token.text in _MAY_SLIP]
    if not may_slip:
        return tokens
    result = list(tokens)
    for i, token in may_slip:
        following = tokens[i + 1].text if i + 1 < len(tokens) else "."
        after = tokens[i - 1].text if i else "of"
        last = not following[0].isalnum() or following in ("and", "but", "with")
        if token.text == "of" and after not in _TAKES_OF and last:
            result[i] = token._replace(text="off")
        if token.text == "no" and [t.text for t in tokens[i + 1 : i + 3]] == [".", "of"]:
            result[i] = token._replace(text="number")
        if token.text == "lower" and (after in _ARTICLES or following == "than" or _is_less(tokens, i)):
            result[i] = token._replace(text="smaller")
        if token.text in ("turn", "turns") and after in _MINUTES:
            result[i] = token._replace(text="turnaround")
        result[i] = _slip(result[i], after, following)
        number = following[0].isdigit() or following in STARTERS
        if token.text in _BEFORE_NUMBER and number:
            result[i] = token._replace(text=_BEFORE_NUMBER[token.text])
        if token.text == "too" and after in _READ_AT and number:
            result[i] = token._replace(text="two")
        if token.text == "ate" and (after in _COUNTING or (i and result[i - 1].text == "two")):
            result[i] = token._replace(text="eight")
    counting = {i + 1 for i, token in enumerate(result) if token.text == "number" and tokens[i].text == "no"}
    return [token for i, token in enumerate(result) if i not in counting]  # "no. of": its dot ends no sentence


def _is_less(tokens: list[Token], at: int) -> bool:
    """Return whether "lower" compares, where nothing before it could be let down: "is it lower on the …"."""
    on = at + 1 < len(tokens) and tokens[at + 1].text in ("on", "for", "with")
    asked = tokens[0].text in _WHETHER or (at and tokens[at - 1].text in _WHETHER)
    return on and bool(asked) and _LET_DOWN.isdisjoint(t.text for t in tokens[:at])


def _slip(token: Token, before: str, following: str) -> Token:
    """Return a word as the one that it is written for by those who take them for one: too and to, loose and lose."""
    if token.text == "too" and before in _BEFORE_DOING and following[0].isalpha() and following not in _SO_MUCH:
        return token._replace(text="to")
    if token.text == "hi" and before in ("how", "too"):
        return token._replace(text="high")
    if token.text == "loose" and (before in _LOSING or (following in _OWNED and before not in ("is", "are"))):
        return token._replace(text="lose")
    return token


def designators(amounts: list[Amount], words: list[str]) -> set[int]:
    """Return where bare numbers begin that are names of places and flights: "runway 27", "stand 14", "flight 402".

    So do those that count people, and those that only say how many are asked for: "three of us argued", "between
    which two points".
    """
    people = {a.start for a in amounts if " ".join(words[a.end : a.end + 2]) in _PEOPLE}
    people |= {a.start for a in amounts if a.start and (_is_sought(a, words) or _tells_apart(a, words))}
    people |= {a.start for a in amounts if a.unit is None and _is_their_number(a, words)}
    return people | {
        a.start
        for a in amounts
        if a.unit is None and a.start and not a.value % 1 and 0 <= a.value <= _NUMBERED.get(words[a.start - 1], -1)
        if _SIZES.isdisjoint(words[a.end : a.end + 2])
    }


def _tells_apart(amount: Amount, words: list[str]) -> bool:
    """Return whether a number only says which one of several is told of: "brake four is at 420"."""
    if amount.unit is not None or amount.value % 1 or not 1 <= amount.value <= _MOST_OF_A_KIND:
        return False
    return words[amount.start - 1] in _ONE_OF_SEVERAL and not _TELLS.isdisjoint(words[amount.end : amount.end + 1])


def _is_their_number(amount: Amount, words: list[str]) -> bool:
    """Return whether a number only says of how many some are told: "one of its four brakes"."""
    before = words[max(0, amount.start - 3) : amount.start]
    before = before[:-1] if before[-1:] and before[-1] in _OWNING else before
    return before[-1:] == ["of"] and before[-2:-1] in (["one"], ["two"], ["three"]) and not amount.value % 1


_OWNING = frozenset(("its", "the", "our", "their", "my"))


def _is_sought(amount: Amount, words: list[str]) -> bool:
    """Return whether a number only says how many are asked for: "which two", "what two things"."""
    if words[amount.start] not in _SMALL:
        return False
    things = words[amount.end : amount.end + 1] in (["things"], ["conditions"], ["reasons"], ["causes"])
    return words[amount.start - 1] == "which" or (things and words[amount.start - 1] in _ASKED_FOR)


def speeds_moved_at(amounts: list[Amount], words: list[str]) -> set[int]:
    """Return where bare numbers begin that say how fast something moves: "rolling out at 44", "doing 60"."""
    found = set()
    for a in amounts:
        before = words[max(0, a.start - 3) : a.start]
        if a.unit is None and before and before[-1] == "at" and not _MOVING.isdisjoint(before[:-1]):
            found.add(a.start)
    return found


def sharing_unit(amounts: list[Amount]) -> list[Amount]:
    """Read a bare number in the unit of the only other number of its size: "1,800 psi was enough, it shows 1,850"."""
    units = [a for a in amounts if a.unit in _SHARED]
    if len(amounts) < 2 or len(units) == len(amounts):
        return amounts

    def unit_for(bare: Amount) -> str | None:
        alike = {a.unit for a in units if _ALIKE <= abs(a.value / bare.value) <= 1 / _ALIKE} if bare.value else set()
        return next(iter(alike)) if len(alike) == 1 else None

    return [a._replace(unit=unit_for(a)) if a.unit is None else a for a in amounts]


def counted_at(amount: Amount, words: list[str]) -> set[int]:
    """Return where what a number counts may be named: right after it, or after a word such as "working"."""
    more = {amount.end + 1} if words[amount.end : amount.end + 1] in (["working"], ["other"], ["full"]) else set()
    return {amount.end} | more


def tells_how_many(amount: Amount, words: list[str]) -> bool:
    """Return whether a number counts what was spoken of before: "one is locked out, so three are working", "all four".
    """
    if amount.start and words[amount.start - 1] == _ALL:
        return True
    after = words[amount.end : amount.end + 3]
    return after[:1] in (["are"], ["remain"]) and not _LEFT.isdisjoint(after)


_ALL = "all"
_ONES = frozenset({"ones", "twos"})
_IS_SO = frozenset({
    "gone", "dead", "failed", "lost", "out", "fine", "back", "still", "ok", "down", "packed", "quit", "just",
})  # fmt: skip
"""Words by which a number before them is the subject of a sentence."""


def expanded(tokens: list[Token]) -> list[Token]:
    """Return the tokens with contractions as the words that they stand for."""
    result: list[Token] = []
    tokens = _what_to_do(_added_on_top(_without_dots(tokens)))
    for at, token in enumerate(tokens):
        parts = expand(token.text)
        if token.text in _ONES and at + 1 < len(tokens) and tokens[at + 1].text in _IS_SO:
            parts = (token.text[:-1], "is")  # "system ones gone"
        if parts == (token.text,):
            result.append(token)
        else:
            result.extend(Token(part, token.raw, token.start, token.end) for part in parts if part)
    return result


def _what_to_do(tokens: list[Token]) -> list[Token]:
    """Read "what do" at the end as "what do I do": "STEER LOST what do"."""
    end = next((k for k in range(len(tokens), 0, -1) if tokens[k - 1].text[0].isalnum()), 0)
    if [t.text for t in tokens[max(0, end - 2) : end]] != ["what", "do"]:
        return tokens
    last = tokens[end - 1]
    return [*tokens[:end], last._replace(text="i", raw="i"), last, *tokens[end:]]


def _added_on_top(tokens: list[Token]) -> list[Token]:
    """Read "on top of that" as "as well": it is no place, and nothing is on."""
    at = next((k for k, t in enumerate(tokens) if t.text == "top"), 0)
    around = tuple(t.text for t in tokens[at - 1 : at + 3]) if at else ()
    if around[:3] != ("on", "top", "of") or around[3:] not in (("that",), ("this",), ("it",)):
        return tokens
    as_well = [t._replace(text=word, raw=word) for t, word in zip(tokens[at - 1 : at + 1], ("as", "well"), strict=True)]
    return [*tokens[: at - 1], *as_well, *tokens[at + 3 :]]


def _without_dots(tokens: list[Token]) -> list[Token]:
    """Drop the dot of an abbreviated "number": "no. 1 system", "nr. 2"."""
    return [
        token
        for i, token in enumerate(tokens)
        if not (
            token.text == "."
            and 0 < i < len(tokens) - 1
            and tokens[i - 1].text in _NUMBER
            and (tokens[i + 1].text.isdigit() or tokens[i + 1].raw in _SMALL)
        )
    ]
