"""Ways of speaking that a reader of questions need not know: digits one by one, a correction, "System 1 or 2".

Numbers are spoken digit by digit on the radio: "two three zero", "one niner zero", "two zero thousand". They are
written as one number here, where nothing else can be meant.
"""

from __future__ import annotations

import re

from assistant.practice.marking.reading.corrected import corrected
from assistant.practice.marking.reading.phrases import plainer

_DIGITS = {
    "zero": "0", "oh": "0", "one": "1", "two": "2", "three": "3", "tree": "3", "four": "4", "fower": "4", "five": "5",
    "fife": "5", "six": "6", "seven": "7", "eight": "8", "ait": "8", "nine": "9", "niner": "9",
}  # fmt: skip
_DIGIT = "|".join(_DIGITS)
_ROW = re.compile(
    rf"(?<![\w.-])(?<!point )(?<!decimal )(?<!level )(?<!system )"
    rf"((?:{_DIGIT})(?:[ -](?:{_DIGIT})){{1,4}})(?![\w-]| (?:point|decimal|{_DIGIT})\b)", re.IGNORECASE,
)  # fmt: skip
_ROUND = re.compile(r"[ -]*(?:thousand|knots?|kt|kts|psi|degrees?|feet|hundred|tonnes?|metres?|$|[.,;])", re.IGNORECASE)
_TIMES = ((re.compile(r"\b(?:just |only )?one time\b", re.IGNORECASE), "once"),
          (re.compile(r"\b(?:just |only )?two times\b", re.IGNORECASE), "twice"))  # fmt: skip
_AGAIN = re.compile(
    r"\b(and|the|at|is|to|of|in|it|you|or|for|on|hundred|thousand|so|then|below|above|up|down) "
    r"(?:um,? |uh,? )?\1\b(?! to\b)", re.IGNORECASE,
)  # fmt: skip
"""A small word said twice: "two hundred and and five"."""
_ALONE = re.compile(r"^\W*(yes|no) (?:and|then) (yes|no)\W*$", re.IGNORECASE)
"""Two verdicts, and nothing else."""
_NO_STOP = re.compile(
    rf"^\s*no\. ?(?=(?:{_DIGIT}|ten|eleven|twelve|\w+teen|\w+ty)[ -]"
    rf"(?:hundred|thousand|\w+ty|\w+teen|ten|{_DIGIT})\b)", re.IGNORECASE,
)  # fmt: skip
"""The same with a stop, which is no "number": "no. two thirty max"."""
_NO_NUMBER = re.compile(rf"^\s*no (?=(?:{_DIGIT}|ten|eleven|twelve|\w+teen|\w+ty)\b)", re.IGNORECASE)
"""A "no" that answers, before a number: "no two fifty is the most"."""
_NEGATIVE = re.compile(
    rf"^\s*negative (?=(?:{_DIGIT}|\w+teen|\w+ty|ten|twelve)(?: \w+)? (?:hundred|thousand)\b|"
    rf"(?:{_DIGIT}) (?:hundred|thousand|\w+ty|\w+teen|ten|eleven|twelve)\b)", re.IGNORECASE,
)  # fmt: skip
"""The same in the words of the radio, where no number below zero is meant."""
_BEFORE_POINT = re.compile(rf"\b(point (?:{_DIGIT}))(?: and)? (?=(?:{_DIGIT}) point\b)", re.IGNORECASE)
"""Between two decimals said one after another: "one point four two point three"."""
_POINT_HUNDRED = re.compile(
    rf"\b(point (?:{_DIGIT})) (?=(?:{_DIGIT}|ten|eleven|twelve|\w+teen|\w+ty) (?:hundred|thousand)\b)", re.IGNORECASE
)
"""A decimal and a number behind it that are no one number: "one point six eight hundred"."""
_THREE_LISTED = re.compile(
    rf"(?<!point )\b({_DIGIT}) ({_DIGIT}) and ({_DIGIT})(?= (?:seconds?|minutes?|degrees?)\b)", re.IGNORECASE
)
"""Three small numbers in a row: "three two and one seconds"."""
_KEPT_OR_LOST = re.compile(
    r"\b(?!(?:you|we|i|it|they|and|or|but|will|would|to|also|then|not|can|both|still|do|does)\b)(\w+) "
    r"(lose|loses|losing|keep|keeps|keeping) (?=[a-z])", re.IGNORECASE,
)  # fmt: skip
"""Where what is kept ends and what is lost begins: "keep anti-skid lose autobrake"."""
_INCHES = re.compile(r"(?<=\d) in(?=\s*(?:[,.;)]|$| on\b| for\b))")
_ONE_EACH = re.compile(rf"\b({_DIGIT}|[2-9]) one(?= (?:for|on|per|at) (?:each|every)\b)", re.IGNORECASE)
"""How many, and one a piece: "three one for every leg" is no row of digits."""
_EITHER_WAY = re.compile(r",? \b(\w+) or no \1\b", re.IGNORECASE)
"""What makes no difference: "brakes or no brakes"."""
_THE_NUMBER = re.compile(
    r"\bthe (?=(?:one|two|three) (?:oh|hundred|thousand|ten|eleven|twelve|\w+teen|\w+ty)\b)", re.IGNORECASE
)
"""The article of a number said in two halves: "over the two fifty five"."""
_ARROW = re.compile(r"\s*(?:->|=>|→|➔)\s*")
_STEP = re.compile(r"\s+(?:>+|»|›)\s+(?=[a-z])", re.IGNORECASE)
"""A sign that leads to the next step, and is no "more than"."""
_OTHER_SIGN = re.compile(r">>|»|›")
_AND_THOUSAND = re.compile(
    rf"\b((?:\w+teen|ten|eleven|twelve|twenty(?:[ -](?:{_DIGIT}))?) hundred) and "
    rf"(?=(?:{_DIGIT}|ten|twelve|\w+teen|\w+ty) thousand\b)", re.IGNORECASE,
)  # fmt: skip
"""Two numbers that no one says as one: "twelve hundred and three thousand"."""
_SYSTEMS = re.compile(
    r"\bsystems? (?:no\.? |number )?([12]|one|two)((?:,? (?:or|and|and/or)| ?/) ?)(?:no\.? |number )?([12]|one|two)\b",
    re.IGNORECASE,
)


_AND_A_BIT = re.compile(
    r"(?: and a (?:bit|half or so)| (?:point|decimal) (?:something|odd)|[ -]odd|-ish)(?= ?(?:percent|per cent|%))",
    re.IGNORECASE,
)
"""What rounds a share down as it is said: "eleven and a bit percent"."""
_PLUS = re.compile(r"(?<=[a-z)]) ?\+ ?(?=[a-z(])|(?<=\d) \+ (?=[a-z(])|(?<=[a-z)]) \+ (?=\d)", re.IGNORECASE)
"""A sign that joins what belongs together, and adds no numbers: "leg unlocked + landing flaps"."""
_ALL_KNOWN = re.compile(
    r"[\s,.;—–-]*\b(?:and |but )?(?:that's|thats|that is|which is|it's) (?:about |just |really )*all (?:that )?"
    r"i(?:'ve|ve| have| do| can)? ?(?:got|know|remember|recall|have|say|tell you|think of)?"
    r"(?: (?:on|about|of) (?:it|that|this))?[.!]?\s*$",
    re.IGNORECASE,
)
"""What says at the end that nothing more is known: "it's amber, that's all I've got"."""
_LETTER = re.compile(r"^\W*([YN])(?=\s*(?:[.,;:!–—-]|$))")
"""A yes or no by its letter."""
_OF_A_MINUTE = {"a third": "20", "one third": "20", "two thirds": "40", "three quarters": "45"}
_PARTS = re.compile(rf"\b({'|'.join(_OF_A_MINUTE)}) of a minute\b", re.IGNORECASE)
"""Parts of a minute, as seconds; a half and a quarter are known as they are."""
_CALLED_ONE = re.compile(
    rf"\b((?:the|that|this|my|our|its) (?!number |system )[a-z]{{3,}} one) "
    rf"(?=(?:{_DIGIT}) (?:{_DIGIT}|\w+ty|\w+teen|hundred)\b)",
    re.IGNORECASE,
)
"""One of several things, before a number: "the short one two zero five"."""


_ROWS = re.compile(r"^\W*(?:[\w-]+[ ,]?){1,5} *[:=–-] *\S.*$", re.MULTILINE)
"""A line of a list of names with what each is: "Anti-skid: no"."""
_DASHED = re.compile(r"^(\W*(?:[\w-]+[ ,]?){1,5}?) +[=–-](?= )", re.MULTILINE)
_NAMED = re.compile(r"^(\W*)(\w+), (\w+):", re.MULTILINE)
"""A name of two words with a comma between: "green, steady: down"."""
_SLASHED = re.compile(r"\s+/\s+(?=[a-z][a-z ]*:)", re.IGNORECASE)
_LEAST = 2
_UNSTOPPED = re.compile(r"(?<=[\w)°%])[ \t]*\n\s*(?:[*•–-] *)?")


_NO_MATTER = re.compile(r"\bno matter(?: what| how| which)?\b", re.IGNORECASE)
"""What says that something counts for nothing, and denies nothing."""


def _by_lines(text: str) -> str:
    """Return a list of names with what each is, one a line, with a stop behind each."""
    lines = [line for line in text.splitlines() if line.strip()]
    if len(lines) < _LEAST or len(_ROWS.findall(text)) < len(lines):
        return text
    return _UNSTOPPED.sub(". ", _NAMED.sub(r"\1\2 \3:", _DASHED.sub(r"\1:", text)))


_SPACED = re.compile(r"(?<![\d.,]\s)(?<![\w.,])(\d) (\d{3})(?![\w.,]*\d)(?! (?:and|or|to) \d)")
"""A number of four digits with a space in it: "1 500"."""
_PUMPED_TO = re.compile(r"\bpump(?:ed|s|ing)? (?:up )?to(?= (?:about |some )?(?:\d|one|two))", re.IGNORECASE)
"""What sets a pressure, and is no pumping of pedals."""


def written(text: str) -> str:
    """Return an answer as one would write it: without what was taken back, its spoken digits as numbers."""
    text = _PUMPED_TO.sub("set to", _SPACED.sub(r"\1\2", text))
    text = _LETTER.sub(lambda found: "yes" if found[1] == "Y" else "no", text)
    text = _NO_MATTER.sub("whatever", text)
    text = _by_lines(_SLASHED.sub(". ", _ALL_KNOWN.sub("", text) or text))
    text = _PARTS.sub(lambda found: f"{_OF_A_MINUTE[found[1].lower()]} seconds", text)
    text = _CALLED_ONE.sub(r"\1, ", _PLUS.sub(" and ", _AND_A_BIT.sub("", text)))
    text = _EITHER_WAY.sub("", _ONE_EACH.sub(r"\1, one", _INCHES.sub(" inches", text)))
    text = _AND_THOUSAND.sub(r"\1, ", _in_steps(_THE_NUMBER.sub("", text)))
    text = _NO_STOP.sub("no, ", _ALONE.sub(r"\1, \2", _AGAIN.sub(r"\1", text)))
    text = _NO_NUMBER.sub("no, ", _NEGATIVE.sub("negative, ", text))
    text = _BEFORE_POINT.sub(r"\1, ", _KEPT_OR_LOST.sub(r"\1, \2 ", text))
    text = _POINT_HUNDRED.sub(r"\1, ", text)
    text = _THREE_LISTED.sub(r"\1, \2 and \3", text)
    for spoken, meant in _TIMES:
        text = spoken.sub(meant, text)
    text = _ARROW.sub(" to ", plainer(text))
    text = _SYSTEMS.sub(r"system \1\2system \3", corrected(text))
    return _ROW.sub(lambda found: _number(found.group(1), text[found.end() :]), text)


def _in_steps(text: str) -> str:
    """Return an answer with its steps apart; one sign alone leads nowhere, it is "more than": "thrust > idle"."""
    return _STEP.sub("; ", text) if len(_STEP.findall(text)) > 1 or _OTHER_SIGN.search(text) else text


def _number(row: str, following: str) -> str:
    """Return a row of spoken digits as a number; as it is, where it may be a list: "three two one"."""
    digits = [_DIGITS[word] for word in re.split(r"[ -]", row.lower())]
    inside = "0" in digits[1:] and digits[0] != "0"
    short = len(digits) == 2 and not _ROUND.match(following)
    return "".join(digits) if inside and not short and digits[1:] != ["0", "0"] else row
