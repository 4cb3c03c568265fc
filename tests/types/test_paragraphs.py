"""The delivered type: every paragraph of its documents is cited, every change told, none of it in code."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from assistant.conversation.opening import Knowledge, open_knowledge
from assistant.knowledge.base import RECORDS
from assistant.knowledge.library_records import Change
from assistant.knowledge.location import knowledge_root
from assistant.knowledge.named import every_record
from assistant.knowledge.paragraph_checks import paragraphs_of

ASSISTANT = Path(__file__).parents[2] / "assistant"

# The numbered paragraphs of the type's documents: section, first and last paragraph
NUMBERED = [
    ("AOM", "32.00", 1, 6),
    ("AOM", "32.01", 1, 7),
    ("AOM", "32.05", 1, 7),
    ("AOM", "32.30", 1, 7),
    ("AOM", "32.40", 1, 8),
    ("AOM", "32.44", 1, 9),
    ("AOM", "32.47", 1, 7),
    ("AOM", "32.50", 1, 10),
    ("AOM", "32.55", 1, 5),
    ("AOM", "32.60", 1, 5),
    ("ABN", "32", 1, 13),
    ("SOP", "B", 1, 8),
    ("LIM", "3", 1, 2),
]
PARAGRAPHS = [
    (document, f"{section}.{number}")
    for document, section, first, last in NUMBERED
    for number in range(first, last + 1)
]

# What the revision in force changed: paragraph, former value, value now, since
HIGHLIGHTS = [
    ("LIM 3.1", "200 kt", "205 kt", "LIM 7"),
    ("LIM 3.2", "280 °C", "250 °C", "LIM 7"),
    ("LIM 3.2", "1,800 psi", "2,000 psi", "LIM 7"),
    ("AOM 32.50.3", "100 kt", "110 kt", "AOM 7"),
    ("AOM 32.44.6", "90% of the target", "85% of the target", "AOM 7"),
    ("ABN 32.6", "1.5", "1.6", "ABN 5"),
    ("SOP B.2", "12 kt", "10 kt", "SOP 12"),
]
REVISIONS = {
    "AOM": ("7", "2026-08-01"),
    "LIM": ("7", "2026-08-01"),
    "ABN": ("5", "2026-06-15"),
    "SOP": ("12", "2026-09-10"),
}


@pytest.fixture(scope="module")
def delivered() -> Knowledge:
    knowledge, problems = open_knowledge(type_id="aldermere_120", cache_dir="")
    assert knowledge is not None, "\n".join(map(str, problems))
    return knowledge


def _sources(record: Any) -> Iterator[tuple[str, str]]:
    """Every paragraph that a record cites, in its parts too."""
    if isinstance(record, tuple):
        for source in getattr(record, "sources", ()):
            yield source.document, source.paragraph
        for part in record:
            yield from _sources(part)


@pytest.fixture(scope="module")
def cited(delivered: Knowledge) -> set[tuple[str, str]]:
    return {pair for named in every_record(delivered.base) for pair in _sources(named.record)}


def test_the_list_is_whole() -> None:
    assert len(PARAGRAPHS) == len(set(PARAGRAPHS)) == 94


@pytest.mark.parametrize(("document", "paragraph"), PARAGRAPHS, ids=[f"{d} {p}" for d, p in PARAGRAPHS])
def test_a_paragraph_is_cited(cited: set[tuple[str, str]], document: str, paragraph: str) -> None:
    assert (document, paragraph) in cited


def test_the_documents_list_their_paragraphs(delivered: Knowledge) -> None:
    documents = delivered.base.documents

    listed = [(name, each) for name in REVISIONS for each in paragraphs_of(documents[name].paragraphs)]
    assert sorted(listed) == sorted(PARAGRAPHS)


def test_no_paragraph_is_cited_that_does_not_exist(cited: set[tuple[str, str]]) -> None:
    sections = {(document, section) for document, section, _, _ in NUMBERED}
    own = {pair for pair in cited if pair[0] in REVISIONS}

    assert own - set(PARAGRAPHS) - sections == set()


def test_documents_are_those_in_force(delivered: Knowledge) -> None:
    own = {d.id: (d.revision, d.effective) for d in delivered.base.documents.values() if not d.published}

    assert own == REVISIONS


@pytest.mark.parametrize(("paragraph", "formerly", "now", "since"), HIGHLIGHTS)
def test_a_revision_highlight_is_a_change(
    delivered: Knowledge, paragraph: str, formerly: str, now: str, since: str
) -> None:
    found = [c for c in delivered.base.changes.values() if _is(c, paragraph, formerly, now, since)]

    assert len(found) == 1
    assert found[0].record in delivered.base.records


def _is(change: Change, *wanted: str) -> bool:
    where = [f"{source.document} {source.paragraph}" for source in change.sources]
    return (where[0], change.formerly, change.now, change.since) == wanted


def test_there_are_no_other_changes(delivered: Knowledge) -> None:
    assert len(delivered.base.changes) == len(HIGHLIGHTS)


def test_every_kind_that_the_type_needs_is_there(delivered: Knowledge) -> None:
    empty = {kind for kind in RECORDS if not delivered.base.ids(kind)}

    assert empty <= {"outlines"}


def _names_of_types() -> set[str]:
    """Names of all delivered types, of their operators and of their documents' titles, as words."""
    names: set[str] = set()
    for folder in Path(knowledge_root()).iterdir():
        if (folder / "type.yaml").is_file():
            knowledge, _ = open_knowledge(type_id=folder.name, cache_dir="")
            assert knowledge is not None
            info = knowledge.base.type_info
            names |= {info.id, info.name, info.operator, info.name.split()[0], info.operator.split()[0]}
            names |= {v.show for v in knowledge.base.variants.values() if not v.show.isdigit()}
    return {name for name in names if name}


def test_the_assistant_names_no_type() -> None:
    names = _names_of_types()
    pattern = re.compile(r"(?<!\w)(?:" + "|".join(map(re.escape, sorted(names))) + r")(?!\w)", re.IGNORECASE)
    assert {"Aldermere", "Saltmarsh"} <= names

    found = [
        f"{path.relative_to(ASSISTANT)}:{number}: {line.strip()}"
        for path in sorted(ASSISTANT.rglob("*.py"))
        for number, line in enumerate(path.read_text("utf-8").splitlines(), 1)
        if pattern.search(line)
    ]
    assert found == []
