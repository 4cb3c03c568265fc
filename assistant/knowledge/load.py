"""Opening a base: find its files, take the compiled form from the cache, or else compile and keep it."""

from __future__ import annotations

import os
from collections.abc import Callable, Sequence
from typing import Any

from assistant.frozen import NamedTuple
from assistant.knowledge.base import RECORDS, Base, Compiled
from assistant.knowledge.cache import cache_path, code_stamps, content_key, read_cache, write_cache
from assistant.knowledge.problems import Problem
from assistant.knowledge.shelf import Shelved

SHARED = ("language", "principles")
"""Folders that every type shares."""
UNITS = "language/units.yaml"
_MANY = 5
TYPE_VARIABLE = "DOWNLOCK_TYPE"

Derive = Callable[[Base], dict[str, Any]]
Tell = Callable[[str, str], None]
"""Is told "compiling", before what takes a while, and "not kept", where each start will; with the file."""


class KnowledgeFile(NamedTuple):
    """A file of the base: its path from the root, as problems show it, and its bytes."""

    name: str
    raw: bytes


def types(root: str) -> list[str]:
    """Ids of the types that a root holds: the folders with a type.yaml, alphabetically."""
    try:
        names = sorted(os.listdir(root))
    except OSError:
        return []
    return [name for name in names if os.path.isfile(os.path.join(root, name, "type.yaml"))]


def load(
    root: str,
    type_id: str | None = None,
    cache_dir: str | None = None,
    extra: Sequence[str] = (),
    derive: Derive | None = None,
    partial: bool = False,
    tell: Tell | None = None,
) -> tuple[Base | None, list[Problem]]:
    """The base of one type (the first, or that of DOWNLOCK_TYPE), or every problem found in one pass.

    `extra` are further folders to read; `derive` computes what a later layer wants kept in the same cache;
    `cache_dir` is used instead of the user's, and "" keeps no cache;
    `tell` hears of what takes a while. With `partial`, what could be read is
    returned beside its problems. Never raises for anything that a file holds.
    """
    folders, problems = _folders(root, type_id, extra)
    if problems:
        return None, problems
    files, problems = _read_files(folders)
    path = cache_path(cache_dir, [folder for folder, _ in folders])
    key = content_key(files, code_stamps(_code_folders(derive)))
    if path and not problems:
        kept = _from_cache(path, key, root)
        if kept is not None:
            return kept, []
    if tell and path:
        tell("compiling", path)
    base, problems = _compile(root, files, problems, derive)
    if base is not None and path and not problems:
        written = write_cache(path, key, {"base": _to_keep(base), "derived": base.derived})
        if tell and not written:
            tell("not kept", path)
    return (base if partial or not problems else None), problems


def _to_keep(base: Base) -> Compiled:
    """What is kept of a base: its records without their ways of asking after what was told, where these are derived.

    They are the fifth part of the records, and nothing else asks for them.
    """
    if not base.derived:
        return base.compiled
    records = dict(base.compiled["records"])
    for kind, listed in records.items():
        fields = RECORDS[kind]._fields
        if "then" in fields:
            at = fields.index("then")
            records[kind] = Shelved({n: [*values[:at], [], *values[at + 1 :]] for n, values in listed.items()})
    return {**base.compiled, "records": records}


def _from_cache(path: str, key: str, root: str) -> Base | None:
    """The base kept under this key, if it has the form of one."""
    kept = read_cache(path, key)
    if kept is None or not isinstance(kept.get("derived"), dict):
        return None
    try:
        return Base(kept["base"], root, kept["derived"])
    except (KeyError, TypeError, AttributeError, ValueError):
        return None


def _compile(
    root: str, files: list[KnowledgeFile], problems: list[Problem], derive: Derive | None
) -> tuple[Base | None, list[Problem]]:
    """The base of what could be read; derived from only when nothing is wrong with it."""
    from assistant.knowledge.checks import check_base
    from assistant.knowledge.compiling import compile_base
    from assistant.knowledge.pronunciations import add_lexemes, read_lexicon
    from assistant.knowledge.unread import held_by
    from assistant.knowledge.yaml_lines import parse_yaml

    trees, lexemes = [], []
    unread = {problem.file: "" for problem in problems}
    for name, raw in files:
        if name.endswith(".yaml"):
            tree, found = parse_yaml(raw, name)
            problems += found
            trees += [tree] if tree is not None else []
            if tree is None:
                unread[name] = held_by(raw, found)
        elif name.endswith(".pls"):
            entries, found = read_lexicon(raw, name)
            problems += found
            lexemes += entries
    compiled, found = compile_base(trees, unread)
    problems += add_lexemes(lexemes, compiled)
    base = Base(compiled, root)
    problems = sorted(set(_at_their_cause(problems + found + check_base(base), [name for name, _ in files])))
    if derive and not problems:
        base.derived = derive(base)
    return base, problems


def _at_their_cause(problems: list[Problem], files: list[str]) -> list[Problem]:
    """Problems with the units of a base whose list of them is not there, as the one that they are."""
    others = [p for p in problems if "unknown unit" not in p.message and "a known unit" not in p.message]
    if UNITS in files or len(problems) - len(others) < _MANY or any(problem.file == UNITS for problem in problems):
        return problems  # a few are slips
    missing = f"is missing: {len(problems) - len(others)} figures have units that are listed nowhere"
    return [*others, Problem(UNITS, 0, missing, "put the file back, or list the units in another")]


def _code_folders(derive: Derive | None) -> list[str]:
    """Folders of the code that decides what is compiled and derived."""
    code = getattr(derive, "__code__", None)
    return [os.path.dirname(__file__)] + ([os.path.dirname(code.co_filename)] if code else [])


def _folders(
    root: str, type_id: str | None, extra: Sequence[str]
) -> tuple[list[tuple[str, str]], list[Problem]]:
    """The folders to read as (path, name shown)."""
    if not os.path.isdir(root):
        return [], [Problem(root, 0, "no such folder", "name the folder of the knowledge base")]
    known = types(root)
    if not known:
        return [], [Problem(root, 0, "holds no type", "give one of its folders a type.yaml")]
    chosen = type_id or os.environ.get(TYPE_VARIABLE) or known[0]
    if chosen not in known:
        return [], [Problem(root, 0, f"holds no type '{chosen}'", f"choose one of {', '.join(known)}")]
    named = [(os.path.join(root, name), name) for name in (*SHARED, chosen)]
    return [pair for pair in named if os.path.isdir(pair[0])] + [(path, path) for path in extra], []


def _read_files(folders: list[tuple[str, str]]) -> tuple[list[KnowledgeFile], list[Problem]]:
    files: list[KnowledgeFile] = []
    problems: list[Problem] = []
    for folder, shown in folders:
        try:
            names = sorted(os.listdir(folder))
        except OSError as error:
            problems.append(_unreadable(shown, error))
            continue
        for name in names:
            if name.endswith((".yaml", ".txt", ".pls")):
                _read_file(os.path.join(folder, name), f"{shown}/{name}", files, problems)
    return files, problems


def _read_file(path: str, shown: str, files: list[KnowledgeFile], problems: list[Problem]) -> None:
    if os.path.exists(path) and not os.path.isfile(path) and not os.path.isdir(path):
        # To open a pipe or a device would wait for whoever writes to it.
        what = "cannot be read (no file, but a pipe or a device)"
        problems.append(Problem(shown, 0, what, "put a file in its place"))
        return
    try:
        with open(path, "rb") as file:
            files.append(KnowledgeFile(shown, file.read()))
    except OSError as error:
        problems.append(_unreadable(shown, error))


def _unreadable(shown: str, error: OSError) -> Problem:
    reason = error.strerror or "unreadable"
    return Problem(shown, 0, f"cannot be read ({reason})", "check that it exists and may be read")
