"""Who is in the class: a list as offices keep it, read with whatever separators, headings and encoding it came with.

What cannot be used is told as `file:line: what`, and the class begins with the rest.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.frozen import NamedTuple
from assistant.practice.keeping.learners import LONGEST, NameProblem, name_key, tidy_name
from assistant.practice.keeping.rows import Seated

MOST = 200
"""People that a class may have."""
_FIRST_SIGN, _LOOKED_AT = 32, 4096
_SEPARATORS = (";", "\t", ",")
_NAME = ("name", "full name", "names", "trainee", "student", "pilot", "participant", "learner", "candidate", "person")
_FIRST = ("first name", "firstname", "given name", "given names", "forename", "first", "given")
_LAST = ("last name", "lastname", "surname", "family name", "last", "family")
_TEAM = ("team", "group", "crew", "class")
_TYPED = re.compile(r"(.+?)\s*[(\[]\s*(.*?)\s*[)\]]")


class Roster(NamedTuple):
    """The people of a list in its order, and a line on each entry that was left out or read in a special way."""

    people: tuple[Seated, ...]
    notes: tuple[str, ...]


class _Columns(NamedTuple):
    """Which columns hold the parts of a name, in the order they are said, and the team, if any."""

    name: tuple[int, ...]
    team: int | None = None


def read_roster(raw: bytes, file: str) -> Roster:
    """Return the people of a CSV file. file: what its lines are called by in notes."""
    if _is_binary(raw):
        return Roster((), (f"{file}: this is no list of names; write a name on each line, or save the list as CSV",))
    text, notes = _text(raw, file)
    rows = _rows(text)
    if not rows:
        return Roster((), (*notes, f"{file}: there is nobody in it; write a name on each line"))
    head = _heading(rows[0][1])
    if head is None:
        columns, told = _guessed([cells for _, cells in rows])
        notes += [f"{file}:{rows[0][0]}: {told}"] if told else []
    else:
        columns, rows = head, rows[1:]
    people, left = _people(rows, columns, file)
    return Roster(people, (*notes, *left))


def typed_roster(text: str) -> Roster:
    """Return the people of a typed line: names with commas between, a team in brackets after its member."""
    cells = [(number, part) for number, part in enumerate(re.split(r"[,;\n]", text), 1) if part.strip()]
    rows = []
    for number, cell in cells:
        found = _TYPED.fullmatch(cell.strip())
        rows.append((number, [found[1], found[2]] if found else [cell, ""]))
    people, left = _people(rows, _Columns((0,), 1), "")
    return Roster(people, left)


def named_in_team(text: str) -> Seated:
    """Return who is named by a name with or without a team in brackets: "Ana (Red)"."""
    found = _TYPED.fullmatch(text.strip())
    return Seated(found[1], _team(found[2])) if found else Seated(text.strip())


def _team(text: str) -> str:
    return " ".join(text.split())[: LONGEST // 2]


def in_teams(people: Sequence[Seated], count: int) -> tuple[Seated, ...]:
    """Return people dealt into teams in the order given, those who have a team left in it."""
    loose = iter(range(len(people)))
    return tuple(each if each.team else each._replace(team=f"Team {next(loose) % count + 1}") for each in people)


def _is_binary(raw: bytes) -> bool:
    """Whether a file holds no text: signs that no list has, other than those that two bytes a sign bring along."""
    if raw[:2] in (b"\xff\xfe", b"\xfe\xff"):
        return False
    return any(byte < _FIRST_SIGN and byte not in b"\t\n\v\f\r\x00\x1a" for byte in raw[:_LOOKED_AT])


def _text(raw: bytes, file: str) -> tuple[str, list[str]]:
    for encoding in ("utf-16",) if raw[:2] in (b"\xff\xfe", b"\xfe\xff") else ("utf-8-sig",):
        try:
            return raw.decode(encoding), []
        except UnicodeDecodeError:
            continue
    return raw.decode("cp1252", "replace"), [f"{file}: it is not UTF-8 and was read as Windows text; check the names"]


def _rows(text: str) -> list[tuple[int, list[str]]]:
    """Return the lines that hold anything, each with its number and its cells."""
    import csv

    lines = text.replace("\x00", "").splitlines()
    begun = lines[:1]
    if begun and re.fullmatch(r"sep=.", begun[0].strip(), re.IGNORECASE):
        separator, lines = begun[0].strip()[-1], ["", *lines[1:]]
    else:
        separator = max(_SEPARATORS, key=lambda sign: sum(sign in line for line in lines[:50]))
    found: list[tuple[int, list[str]]] = []
    try:
        reader = csv.reader(lines, delimiter=separator, skipinitialspace=True)
        for cells in reader:
            if any(cell.strip() for cell in cells):
                found.append((reader.line_num, [cell.strip() for cell in cells]))
    except csv.Error:
        return [(number, [line.strip()]) for number, line in enumerate(lines, 1) if line.strip()]
    return found


def _heading(cells: Sequence[str]) -> _Columns | None:
    """Return the columns that a first line names, or None where it names none."""
    named = [name_key(cell.strip("\"'").replace("_", " ")) for cell in cells]

    def column(words: tuple[str, ...]) -> int | None:
        return next((i for i, cell in enumerate(named) if cell in words), None)

    whole, first, last, team = (column(words) for words in (_NAME, _FIRST, _LAST, _TEAM))
    parts = tuple(each for each in (first, last) if each is not None)
    if whole is not None and not (len(parts) == 1 and last is not None):
        return _Columns((whole,), team)
    if whole is not None:  # "name" beside "surname" is the given one
        parts = (whole, *parts)
    return _Columns(parts, team) if parts else None


def _guessed(rows: Sequence[Sequence[str]]) -> tuple[_Columns, str]:
    """Return what the columns of a list without a heading hold, and what is to be told of that."""
    width = max(map(len, rows))
    columns = [i for i in range(width) if any(i < len(row) and re.search(r"[^\W\d]", row[i]) for row in rows)]
    columns = [i for i in columns if not any("@" in row[i] for row in rows if i < len(row))]
    if len(columns) < 2:
        return _Columns((columns[0] if columns else 0,)), ""
    second = [name_key(row[columns[1]]) for row in rows if len(row) > columns[1]]
    if len(set(second)) * 2 <= len(rows) or len(second) < len(rows):
        return _Columns((columns[0],), columns[1]), "there is no heading: the second column is read as the team"
    return _Columns((columns[0], columns[1])), "there is no heading: two columns are read as the parts of a name"


def _people(
    rows: Sequence[tuple[int, Sequence[str]]], columns: _Columns, file: str
) -> tuple[tuple[Seated, ...], tuple[str, ...]]:
    people: list[Seated] = []
    notes: list[str] = []
    seen: dict[str, int] = {}
    for line, cells in rows:
        place = f"{file}:{line}" if file else f"name {line}"
        try:
            name = tidy_name(" ".join(cells[i] for i in columns.name if i < len(cells)))
        except NameProblem as problem:
            notes.append(f"{place}: {problem}; left out")
            continue
        team = cells[columns.team] if columns.team is not None and columns.team < len(cells) else ""
        person = Seated(name, _team(team))
        if name_key(name) in seen:
            first = f"{'in line' if file else 'as name'} {seen[name_key(name)]}"
            person, told = _told_apart(person, people)
            notes.append(f"{place}: {name} stands {first} already; {told}")
        if len(people) >= MOST:
            notes.append(f"{place}: a class has {MOST} people at most; left out")
            break
        if name_key(person.name) not in seen:
            seen[name_key(person.name)] = line
            people.append(person)
    return tuple(people), tuple(notes)


def _told_apart(person: Seated, people: Sequence[Seated]) -> tuple[Seated, str]:
    """Return somebody whose name another has with the team in the name, if that is another one, and what is told."""
    teams = [name_key(each.team) for each in people if name_key(each.name) == name_key(person.name)]
    apart = person._replace(name=f"{person.name} ({person.team})")
    known = {name_key(each.name) for each in people}
    if person.team and name_key(person.team) not in teams and not {name_key(apart.name)} & known:
        return apart, f"taken for another person, of another team, and called {apart.name}"
    return person, "named once; if they are two people, add what tells them apart"
