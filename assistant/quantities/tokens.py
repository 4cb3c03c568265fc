"""Cut a question into tokens, so that every later reader sees the same words at the same places.

One regular expression does the work, because this runs on every keystroke-length question and must stay
in microseconds. It never fails: what it cannot use (control characters, emoji, lone surrogates) only
separates tokens. Letters of other scripts stay words, so that a word nobody explained is still noticed.
"""

from __future__ import annotations

import re

from assistant.frozen import NamedTuple


class Token(NamedTuple):
    """One word, number or sign: lower-case `text`, `raw` as written, offsets in the cleaned input."""

    text: str
    raw: str
    start: int
    end: int


# Signs that mean a word: read as that word, so that "@90kt" and "at 90 kt" are one question.
_SIGN_WORDS = {"'s": "is", "~": "about", "@": "at", ">": "above", "<": "below", "\u00d7": "times"}

# Applied before Unicode normalisation, which would turn "º" into "o" and "2½" into "21/2".
_POWERS = "\u2070\u00b9\u00b2\u00b3\u2074\u2075\u2076\u2077\u2078\u2079"
_REPLACED = str.maketrans(
    {
        **dict.fromkeys("\u00ba\u02da\u2218", "\u00b0"),  # ordinal sign, ring, operator
        "\u00bd": " 1/2", "\u00bc": " 1/4", "\u00be": " 3/4", "\u2153": " 1/3", "\u2154": " 2/3",
        **dict.fromkeys("\u2044\u2215\u00f7", "/"),
        **{sign: f"^{power}" for power, sign in enumerate(_POWERS)},
        **dict.fromkeys("\u2212\u2010\u2011\u2012\u2013", "-"), "\u2014": " - ", "\u2015": " - ",
        **dict.fromkeys("\u2018\u2019\u02bc\u2032\u00b4`", "'"),
        **dict.fromkeys("\u2248\u2243\u2245\u223c", "~"), "\u2265": ">", "\u2264": "<",
        **dict.fromkeys("\u2715\u2716", "\u00d7"),
        **dict.fromkeys("\u00ad\u200c\u200d\u2060\ufeff\ufe0f", ""),  # joiners that show nothing
    }
)  # fmt: skip
# Patterns that few texts need are texts: each is compiled at its first use.
_MARKS = "[\u0300-\u036f]+"
_ESCAPES = r"(?s)\x1b(?:\[[0-?]*[ -/]*[@-~]|\][^\x07\x1b]*(?:\x07|\x1b\\)?|.)?"

_MARKUP_SIGNS = frozenset("<>&[%")
_ENTITIES = {
    "&lt;": "<", "&gt;": ">", "&amp;": "&", "&quot;": '"', "&#39;": "'", "&nbsp;": " ", "&deg;": "\u00b0", "%20": " ",
}  # fmt: skip
_TAGS = (
    r"(?i)</?(?:a|b|i|u|p|em|h[1-6]|li|ol|ul|td|th|tr|br|hr|div|pre|img|code|span|body|head|html|font|form|input|table|tbody"
    r"|thead|title|style|small|strong|button|blockquote)(?:\s[^<>]*)?/?>"
)
_PAIRED = r"(?s)\[(\w+)\](.*?)\[/\1\]"
_QUOTED = r"(?m)^(?:\s*>)+\s*(?=[^\W\d_])"
"""Marks at the beginning of a line that was quoted in a mail; before a number the sign says more than."""

_BEFORE = r"\bb4(?= [a-z])"
"""The word that it is written for in haste; a paragraph of that name has a capital."""
_NUMBERED = r"#(?=[0-9])"
"""The sign that stands for the word "number": "#1 system" is a name, "1 system" counts."""

_DIGITS = frozenset("0123456789")
_POWER_OF_TEN = r"(?<![\w.])[0-9]+(?:\.[0-9]+)?[eE][+-]?[0-9]+(?![\w.])"
_BY_ZERO = r"(?<![\w./])[0-9]+(?:\.[0-9]+)?/0+(?![\w./])"
_GREATEST = 1e12
"""Numbers written with a power of ten are read up to this one; greater ones measure nothing here."""
_NO_NUMBER = "infinity"
_OWNED = "'s"

_TOKEN = re.compile(
    r"""
      [0-9]+(?:\.[0-9]+){2,}                                       # paragraph reference: 32.50.2
    | [0-9]+(?:[Ss][Tt]|[Nn][Dd]|[Rr][Dd]|[Tt][Hh])(?![^\W_])    # ordinal: 1st
    | (?:(?<![^\W_])(?<![)%°-])-)?(?:                              # a minus glued on, not between two things
          [0-9]{1,3}(?:,[0-9]{3})+(?![0-9])(?:\.[0-9]+)?           # 3,000  1,450.5
        | [0-9]+(?:\.[0-9]+)?                                      # 90  20.5
        | (?:(?<![A-Za-z]{2})|(?<=[Mm][Aa][Cc][Hh]))\.[0-9]+       # .60, but not the end of "sys.2"
      )
    | (?<=[0-9])'[Ss](?![^\W_])                                   # "the 120's brakes": no seconds
    | (?<![A-Za-z/])(?:
          (?:m|M|ft|FT|Ft|km|KM|Km|deg|DEG|Deg|nm|NM|kg|KG|lb|LB)
              /(?:[Ss](?:\^?2|/[Ss])?|[Mm][Ii][Nn]|[Hh][Rr]?|[Ss][Ee][Cc])  # ft/min
        | [A-Za-z]/[A-Za-z]                                        # t/o  u/s
      )(?![A-Za-z0-9/])
    | [^\W\d_]+(?:'[^\W\d_]+)?                                     # words, "don't"
    | °[CcFf](?![^\W\d_])
    | (?<![^\W\d_])-(?![^\W\d_])  # a hyphen that touches a letter only splits
    | [,;:.?!()/&=+°%$€£~@<>\u00d7]
    """,
    re.VERBOSE,
)


def clean(text: str) -> str:
    """Return the text that token offsets refer to: plain quotes, hyphens and letters, no escapes and no mark-up."""
    if "\x1b" in text:
        text = re.sub(_ESCAPES, " ", text)
    if not _MARKUP_SIGNS.isdisjoint(text):
        text = _without_markup(text)
    if ("e" in text or "E" in text or "/0" in text) and not _DIGITS.isdisjoint(text):
        text = re.sub(_BY_ZERO, _NO_NUMBER, re.sub(_POWER_OF_TEN, _in_full, text))
    if "b4" in text:
        text = re.sub(_BEFORE, "before", text)
    if "#" in text:
        text = re.sub(_NUMBERED, "number ", text)
    if text.isascii():
        return text.replace("`", "'") if "`" in text else text
    from unicodedata import normalize  # only needed off the common path

    return re.sub(_MARKS, "", normalize("NFKD", text.translate(_REPLACED))).translate(_REPLACED)


def _in_full(match: re.Match[str]) -> str:
    """Return a number written with a power of ten in full: "2e2" is 200."""
    value = float(match.group())
    return f"{value:.6f}".rstrip("0").rstrip(".") if 1e-6 <= value <= _GREATEST else _NO_NUMBER


def _without_markup(text: str) -> str:
    """Return a text that was copied with its mark-up as it is read: no tags, entities or quotation marks of a mail."""
    for coded, sign in _ENTITIES.items():
        text = text.replace(coded, sign)
    if ">" in text:
        text = re.sub(_TAGS, " ", re.sub(_QUOTED, "", text))
    return re.sub(_PAIRED, r" \2 ", text) if "[" in text else text


def tokenize(text: str, whole: frozenset[str] = frozenset()) -> list[Token]:
    """Return the tokens of any text.

    whole: lower-case words such as "50x" that stay one token although a digit meets a letter in them.
    """
    tokens = [
        Token(_plain(raw), raw, match.start(), match.end())
        for match in _TOKEN.finditer(clean(text))
        for raw in (match.group(),)
    ]
    return _join_whole(tokens, whole) if whole else tokens


def words_of(text: str) -> tuple[str, ...]:
    """Return the token texts of a name, as names are compared."""
    return tuple(token.text for token in tokenize(text))


def _plain(raw: str) -> str:
    if len(raw) == 1:
        return _SIGN_WORDS.get(raw) or raw.lower()
    text = raw.lower()
    if text[0] == "'":
        return _SIGN_WORDS.get(text, text)
    if "/s" in text:
        return text.replace("^", "").replace("s/s", "s2")
    return text


def _join_whole(tokens: list[Token], whole: frozenset[str]) -> list[Token]:
    """Put back together neighbours, written without a space, that form a word of `whole`, be it an owner: "50x's"."""
    joined: list[Token] = []
    for token in tokens:
        before = joined[-1] if joined else None
        own = token.text.removesuffix(_OWNED)
        if before and before.end == token.start and before.text + own in whole:
            end = token.start + len(own)
            joined[-1] = Token(before.text + own, before.raw + token.raw[: len(own)], before.start, end)
            if own != token.text:
                joined.append(Token(_SIGN_WORDS[_OWNED], _OWNED, end, token.end))
        else:
            joined.append(token)
    return joined
