"""A finished answer for a reader at a terminal: the fact first, then how it came about and where it stands.

Colour only repeats what order and words already say. Whatever is printed passes `clean`, because a question
is echoed in declines, and text from elsewhere could otherwise command the reader's terminal.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from assistant.answering.answer import CLARIFY, Answer, Citation

NARROWEST = 40
"""Columns below which nothing is wrapped narrower."""
_BOLD, _DIM, _RESET = "\x1b[1m", "\x1b[2m", "\x1b[0m"
_INDENT = "  "
_STEP_INDENT = "     "
_UNIT_SIGNS = frozenset(
    ("kt", "m/s", "mph", "psi", "bar", "kPa", "°C", "mm", "m", "ft", "s", "min", "h", "kg", "t", "m/s²", "MJ")
)
"""Signs that stay on the line of their number."""


def answer_text(answer: Answer, width: int = 80, color: bool = False, deference: bool = False) -> str:
    """Return the answer as lines of at most `width` columns, without a line end after the last.

    deference: end with the caution that every answer carries; a conversation says it once, at its opening.
    """
    width = max(width, NARROWEST)
    closing = answer.cautions[0] if deference and answer.cautions else ""
    lines = _fact(_without_choices(answer), width, color)
    lines += _choices(answer.choices, width)
    lines += _wrapped(_still_needed(answer), width)
    lines += _wrapped(f"Working: {answer.working}" if answer.working else "", width, _INDENT)
    for caution in answer.cautions[1:]:
        if caution not in answer.text:  # what must be read before the fact is said there already
            lines += _wrapped(f"Note: {caution}", width, _INDENT)
    lines += _styled(_wrapped(sources_line(answer.sources), width, _INDENT), _DIM, color)
    lines += _styled(_wrapped(closing, width), _DIM, color)
    return "\n".join(lines)


def sources_line(sources: Iterable[Citation]) -> str:
    """Return "AOM 32.50.3, revision 7; LIM 3.2, revision 7", each paragraph once."""
    shown = (
        f"{source.document} {source.paragraph}".strip()
        + (f", revision {source.revision}" if source.revision else "")
        for source in sources
    )
    return "; ".join(dict.fromkeys(shown))


def clean(text: str) -> str:
    """Return the text without anything that a terminal obeys: escapes, control and direction signs.

    Line ends stay, and half surrogates become the replacement character.
    """
    if text.isprintable():
        return text
    if any(sign in text for sign in "\x1b\x90\x98\x9b\x9d\x9e\x9f"):
        text = _without_escapes(text)
    return "".join(map(_shown, text.replace("\r\n", "\n")))


def wrap(text: str, width: int, hanging: str = "") -> list[str]:
    """Return the text as lines of at most `width` columns, further lines indented by `hanging`.

    A number stays with its unit; a word wider than a line is cut.
    """
    return [line for part in clean(text).split("\n") for line in _wrapped_line(part, width, hanging)]


def _without_escapes(text: str) -> str:
    import re  # only for what nobody types by accident

    strings = r"(?:\x1b[\]PX^_]|[\x90\x98\x9d\x9e\x9f])[^\x07\x1b\x9c\n]*(?:\x07|\x9c|\x1b\\)?"
    commands = r"(?:\x1b\[|\x9b)[0-?]*[ -/]*[@-~]?"
    others = r"\x1b[ -/]*[0-~]?"
    return re.sub(f"{strings}|{commands}|{others}", "", text)


def _shown(character: str) -> str:
    if character.isprintable() or character == "\n":
        return character
    if character.isspace():
        return " "
    return "\ufffd" if "\ud800" <= character <= "\udfff" else ""


def _fact(text: str, width: int, color: bool) -> list[str]:
    """The text with its first sentence bold, whole lines apart from the one where it ends; steps have their lines."""
    text = _steps_on_lines(clean(text))
    lines = [
        line
        for part in text.split("\n")
        for line in _wrapped(part, width, _STEP_INDENT if part.startswith(_INDENT) else "")
    ]
    if not color:
        return lines
    left = len(_first_sentence(text).split())
    styled = []
    for line in lines:
        words = line.split(" ")
        bold, plain = " ".join(words[:left]), " ".join(words[left:])
        left = max(left - len(words), 0)
        styled.append(" ".join(part for part in (f"{_BOLD}{bold}{_RESET}" if bold else "", plain) if part))
    return styled


def _steps_on_lines(text: str) -> str:
    """The text with each step of a procedure ("…: 1. One; 2. Two.") on a line of its own."""
    begin = text.find(": 1. ")
    if begin < 0:
        return text
    head, rest = text[: begin + 1], text[begin + 2 :]
    steps: list[str] = []
    while (end := rest.find(f"; {len(steps) + 2}. ")) >= 0:
        steps.append(rest[:end])
        rest = rest[end + 2 :]
    if not steps:
        return text
    stops = (i + 1 for i, sign in enumerate(rest[:-2]) if sign == "." and rest[i + 1] == " " and rest[i + 2].isupper())
    last = next((stop for stop in stops if stop > 3), len(rest))
    after = rest[last:].strip()
    lines = [head, *(f"{_INDENT}{step}" for step in (*steps, rest[:last]))]
    return "\n".join([*lines, _steps_on_lines(after)] if after else lines)


def _first_sentence(text: str) -> str:
    """The text up to the first stop that a new sentence or line follows."""
    line = text.split("\n", 1)[0]
    for i, sign in enumerate(line[:-2]):
        if sign in ".?!;" and line[i + 1] == " " and not line[i + 2].islower():
            return line[: i + 1]
    return line


def _without_choices(answer: Answer) -> str:
    """The text without the choices that it ends in, since they follow as lines."""
    listed = answer.text.rfind(f" 1. {answer.choices[0]}") if answer.choices else -1
    return answer.text[:listed] if listed > 0 else answer.text


def _choices(choices: Iterable[str], width: int) -> Iterator[str]:
    for number, choice in enumerate(choices, 1):
        yield from _wrapped(f"{_INDENT}{number}. {choice}", width, _INDENT * 2 + " ")


def _still_needed(answer: Answer) -> str:
    """What would tell more, unless the text names it; a question back is itself the text."""
    asked = answer.text.lower()
    names = [need.replace("_", " ") for need in answer.needs]
    missing = [name for name in names if name.lower() not in asked]
    return f"Still needed: {', '.join(missing)}." if missing and answer.outcome != CLARIFY else ""


def _wrapped(text: str, width: int, hanging: str = "") -> list[str]:
    return wrap(text, width, hanging) if text else []


def _styled(lines: list[str], style: str, color: bool) -> list[str]:
    return [f"{style}{line}{_RESET}" for line in lines] if color else lines


def _wrapped_line(text: str, width: int, hanging: str) -> Iterator[str]:
    if len(text) <= width and text.isascii():
        yield text
        return
    first = text[: len(text) - len(text.lstrip(" "))]
    line, used = first, len(first)
    for word in _cut_words(text.split(), width - max(len(hanging), len(first))):
        size = columns(word)
        if used + size > width and line.strip():
            yield line.rstrip()
            line, used = hanging, len(hanging)
        line += f"{word} "
        used += size + 1
    yield line.rstrip()


def _cut_words(words: list[str], width: int) -> Iterator[str]:
    """Words that fit a line, a number and its unit as one."""
    i = 0
    while i < len(words):
        word = words[i]
        following = words[i + 1] if i + 1 < len(words) else ""
        if word[-1].isdigit() and following.rstrip(".,;:?)") in _UNIT_SIGNS:
            word = f"{word} {following}"
            i += 1
        i += 1
        while columns(word) > width:
            head = _fitting(word, width)
            yield word[:head]
            word = word[head:]
        yield word


def _fitting(word: str, width: int) -> int:
    """How many characters of a word fit; at least one, so that every cut gets on."""
    used = 0
    for i, character in enumerate(word):
        used += columns(character)
        if used > width:
            return max(i, 1)
    return len(word)


def columns(text: str) -> int:
    """Return how many columns a terminal gives the text: two for wide ones, none for marks on others."""
    if text.isascii():
        return len(text)
    from unicodedata import combining, east_asian_width

    return sum(0 if combining(c) else 2 if east_asian_width(c) in "WF" else 1 for c in text)
