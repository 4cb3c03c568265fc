"""How words are said: Pronunciation Lexicons (W3C PLS 1.0), read with the line of each entry.

A lexicon may come from anywhere, so that what makes reading XML unsafe is refused: entities, document types,
depth and size. Its problems are values, found in one pass, as those of the YAML files are.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any
from xml.parsers import expat

from assistant.frozen import NamedTuple
from assistant.knowledge.problems import Problem, suggestion

NAMESPACE = "http://www.w3.org/2005/01/pronunciation-lexicon"
LARGEST = 1 << 20
"""Bytes of a lexicon; no sensible one comes near."""
ROLES = {"": "pronunciations", "radio": "radio_words", "respelt": "respelt", "label": "labels"}
"""Roles, without their prefix, and where the aliases of each are kept: how a written form is said; how a word of a
number is, where numbers are said digit by digit; how an engine that reads plain text must be given what is said; a
label with the kind of thing it names, which its capitals tell the eye."""
_PARTS = ("grapheme", "alias", "phoneme", "example")
_ELEMENTS = ("lexicon", "meta", "metadata", "lexeme", *_PARTS)
_PARENTS = {"lexicon": "", "meta": "lexicon", "metadata": "lexicon", "lexeme": "lexicon"}
_SAVE = "save it as well-formed XML in UTF-8"


class Lexeme(NamedTuple):
    """One entry: its written forms, how they are said, how they are pronounced (IPA), and where it stands."""

    graphemes: tuple[str, ...]
    alias: str
    phoneme: str
    role: str
    file: str
    line: int


def read_lexicon(raw: bytes, name: str) -> tuple[list[Lexeme], list[Problem]]:
    """Return the entries of a lexicon, and what is wrong with it. Never raises for anything it holds."""
    if len(raw) > LARGEST:
        return [], [Problem(name, 0, f"holds more than {LARGEST:,} bytes", "divide it into several files")]
    builder = _Builder(name)
    try:
        builder.parser.Parse(raw, True)
    except expat.ExpatError as error:
        reason = expat.ErrorString(error.code)
        builder.problems.append(Problem(name, error.lineno, f"is not well-formed XML ({reason})", _SAVE))
    except (ValueError, LookupError):  # an encoding that is unknown or not what it says
        builder.problems.append(Problem(name, 1, "is not in an encoding that can be read", _SAVE))
    except _Refused:
        pass
    return builder.lexemes, builder.problems


def add_lexemes(lexemes: Iterable[Lexeme], compiled: dict[str, Any]) -> list[Problem]:
    """Enter the entries into a compiled base; an entry that two places hold is a problem."""
    problems: list[Problem] = []
    seen: dict[tuple[str, str], Lexeme] = {}
    for lexeme in lexemes:
        for written in lexeme.graphemes:
            first = seen.setdefault((lexeme.role, written), lexeme)
            if first is not lexeme:
                advice = f"it is also in {first.file}:{first.line}; keep one of the two"
                problems.append(Problem(lexeme.file, lexeme.line, f"'{written}' is said twice", advice))
                continue
            if lexeme.alias:
                compiled[ROLES[lexeme.role]][written] = lexeme.alias
            if lexeme.phoneme:  # of a radio word the alias is what is then written
                compiled["phonemes"][lexeme.alias if lexeme.role == "radio" else written] = lexeme.phoneme
    return problems


class _Refused(Exception):
    """The rest of the file is not worth reading; the problem is noted."""


class _Builder:
    """Puts the entries together element by element, gathering what is refused."""

    def __init__(self, file: str) -> None:
        self.file = file
        self.lexemes: list[Lexeme] = []
        self.problems: list[Problem] = []
        self._path: list[str] = []
        self._text: list[str] = []
        self._open: dict[str, list[str]] = {}
        self._line, self._role = 0, ""
        self.parser = expat.ParserCreate(namespace_separator=" ")
        self.parser.StartDoctypeDeclHandler = self._doctype
        self.parser.EntityDeclHandler = self._doctype
        self.parser.StartElementHandler = self._start
        self.parser.EndElementHandler = self._end
        self.parser.CharacterDataHandler = self._text.append

    def _refuse(self, message: str, advice: str, line: int = 0) -> None:
        at = line or self.parser.CurrentLineNumber
        self.problems.append(Problem(self.file, at, message, advice))

    def _doctype(self, *_: object) -> None:
        self._refuse("declares a document type or an entity", "leave it out: a lexicon needs none")
        raise _Refused

    def _start(self, full: str, attributes: dict[str, str]) -> None:
        space, _, name = full.rpartition(" ")
        inside = self._path[-1] if self._path else ""
        self._path.append(name)
        self._text.clear()
        if inside == "metadata" or (len(self._path) > 2 and self._path[1] == "metadata"):
            if len(self._path) > 20:
                self._refuse("nests deeper than 20", "write it flatter")
                raise _Refused
            return
        if not inside and (space != NAMESPACE or name != "lexicon"):
            self._refuse(f"does not begin with 'lexicon' of {NAMESPACE}", "see language/pronunciations.pls")
            raise _Refused
        if name not in _ELEMENTS or inside != _PARENTS.get(name, "lexeme"):
            advice = suggestion(name, _ELEMENTS, "a lexeme holds grapheme, alias, phoneme and example")
            self._refuse(f"has no place for '{name}' in '{inside or 'the file'}'", advice)
            raise _Refused
        if name == "lexicon" and attributes.get("alphabet", "ipa") != "ipa":
            self._refuse(f"is in the alphabet '{attributes['alphabet']}'", "write phonemes in 'ipa'")
        if name == "lexeme":
            self._begin(attributes.get("role", ""))

    def _begin(self, role: str) -> None:
        self._open = {part: [] for part in _PARTS}
        self._line = self.parser.CurrentLineNumber
        self._role = role.strip().rpartition(":")[2]
        if self._role not in ROLES:
            known = " or ".join(f"'{each}'" for each in ROLES if each)
            self._refuse(f"has the unknown role '{self._role}'", f"leave it out, or write {known}")
            self._role = ""

    def _end(self, full: str) -> None:
        name = self._path.pop()
        if name in _PARTS and self._path[-1] == "lexeme":
            text = " ".join("".join(self._text).split())
            if text:
                self._open[name].append(text)
            else:
                self._refuse(f"has an empty {name}", "write its text, or leave it out")
        elif name == "lexeme" and len(self._path) == 1:
            self._finish()

    def _finish(self) -> None:
        written, said, sounds = (tuple(self._open[part]) for part in ("grapheme", "alias", "phoneme"))
        if not written:
            self._refuse("has a lexeme without a grapheme", "write the form that is said", self._line)
        elif not said and not sounds:
            self._refuse(f"does not tell how '{written[0]}' is said", "give an alias or a phoneme", self._line)
        else:  # the first of several is preferred, as the standard has it
            first = (said[0] if said else "", sounds[0] if sounds else "")
            self.lexemes.append(Lexeme(written, *first, self._role, self.file, self._line))
