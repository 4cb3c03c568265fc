"""Which records may be drilled: none whose document is out of force, none set aside, none of another type."""

from datetime import date

import pytest

from assistant.conversation.opening import open_knowledge
from assistant.knowledge.library_records import Document
from assistant.practice.asking.pool import GENERAL, Item, Pool, drillable, out_of_force
from tests.practice.asking.conftest import Library

TODAY = date(2026, 11, 25)
NOT_YET = ("effective: 2026-03-01", "effective: 2026-12-01")
PAST = ("effective: 2026-03-01", "effective: 2026-03-01\n    review_by: 2026-11-24")
NAMED = ("title: Tarrowby 40 Quick List", "title: Tarrowby 40 Quick List (superseded)")


def why(pool: Pool) -> dict[str, str]:
    return {each.record: each.why for each in pool.left_out}


def test_everything_that_answers_may_be_drilled(library: Library) -> None:
    base = library()

    pool = drillable(base, TODAY)

    assert [item.record for item in pool.items] == base.order
    assert {item.kind for item in pool.items} == {"facts", "limits", "schedules", "tables", "procedures", "models"}
    assert pool.left_out == ()


def test_what_is_none_to_rehearse_is_never_unknown(library: Library) -> None:
    said = "says: The hand pump is between the front seats."
    pool = drillable(library((said, f"{said}\n    quiz: no")), TODAY)

    assert pool.get("hand-pump-location") is None
    assert len(pool.items) == len(library().order) - 1
    assert pool.left_out == ()


@pytest.mark.parametrize("edit", [NOT_YET, PAST, NAMED], ids=["not yet effective", "review date over", "by its title"])
def test_a_record_whose_document_is_out_of_force_is_left_out(library: Library, edit: tuple[str, str]) -> None:
    pool = drillable(library(edit), TODAY)

    assert why(pool) == {"pump-failure": "out of force"}
    assert pool.get("pump-failure") is None
    assert "QL 2" in pool.left_out[0].line


@pytest.mark.parametrize(
    ("more", "line"),
    [
        ({}, ""),
        ({"effective": "2026-11-25"}, ""),
        ({"effective": "2026-11-26"}, "AOM 7 is not effective before 2026-11-26"),
        ({"review_by": "2026-11-25"}, ""),
        ({"review_by": "2026-11-24"}, "AOM 7 was to be reviewed by 2026-11-24"),
        ({"title": "Old text (historic)"}, "AOM 7 is historic"),
        ({"title": "Rules (cancelled in 2020)"}, "AOM 7 is cancelled"),
        ({"title": "Historic aeroplanes"}, ""),
        ({"effective": ""}, ""),
    ],
)
def test_what_says_that_a_document_is_out_of_force(more: dict[str, str], line: str) -> None:
    document = Document("AOM", "A manual", "7", "2026-08-01")._replace(**more)

    assert out_of_force(document, TODAY) == line


def test_what_is_disputed_or_marked_as_another_type_s_is_left_out(library: Library) -> None:
    pool = drillable(library(), TODAY, set_aside=[("tiller-most", "check it")], others=["slowing"])

    assert why(pool) == {"tiller-most": "disputed", "slowing": "another type's"}
    assert pool.left_out[0].line == "tiller deflection, maximum either way is set aside as disputed: check it"


def test_an_item_knows_its_statement_revisions_and_paragraph(library: Library) -> None:
    pool = drillable(library(('revision: "3"', 'revision: "3"\n    temporary_revisions: ["3-1 tiller"]')), TODAY)

    item = pool.get("gear-down-speed")

    assert item is not None
    assert item.statement == "maximum speed with the gear down, VLE: at most 165 kt"
    assert item.revisions == (("HB", "3 + 3-1 tiller"),)
    assert item.paragraph == "HB 3.1"
    assert [change.formerly for change in item.changes] == ["150 kt"]


def test_the_mark_of_content_follows_what_is_said_not_how_it_is_asked(library: Library) -> None:
    def mark(*edits: tuple[str, str]) -> str:
        item = drillable(library(*edits), TODAY).get("hand-pump-location")
        assert item is not None
        return item.content

    assert mark() == mark(('asks: ["where hand pump", ', 'asks: ["hand pump place", '))
    assert mark() != mark(("between the front seats.", "under the front seats."))


def test_a_variant_has_its_own_statement_and_the_same_mark(library: Library) -> None:
    def of(variant: str, *edits: tuple[str, str]) -> Item:
        item = drillable(library(*edits), TODAY, variant=variant).get("gear-down-speed")
        assert item is not None
        return item

    assert of("40K").statement.endswith("155 kt")
    assert of("40K").content.split()[0] == of("").content.split()[0]
    assert of("", ("maximum: 155 kt", "maximum: 150 kt")).content != of("").content


def test_sections_of_the_delivered_type_are_those_of_ata_chapter_32() -> None:
    knowledge, _ = open_knowledge()
    assert knowledge is not None

    pool = drillable(knowledge.base, TODAY)

    sections = {item.section for item in pool.items}
    assert sections >= {"32-10", "32-20", "32-30", "32-40", "32-50", "32-60", GENERAL}
    published = {name for name, document in knowledge.base.documents.items() if document.published}
    for item in pool.items:
        assert (item.section == GENERAL) == all(name in published for name, _ in item.revisions), item.record
    assert {item.section for item in pool.only(sections=["32-50"]).items} == {"32-50"}
    assert [item.record for item in pool.only(records=["wheelbase"]).items] == ["wheelbase"]
    assert all(item.title and item.statement for item in pool.items)


def test_historic_rules_are_not_drilled_in_the_delivered_type() -> None:
    knowledge, _ = open_knowledge()
    assert knowledge is not None

    lines = {each.line for each in drillable(knowledge.base, TODAY).left_out}

    assert lines == {"14CFR23 to Amdt 23-62 is historic"}
