"""What may be said of documents, words and variants, and of a type as a whole: one table of fields a kind."""

from __future__ import annotations

from assistant.knowledge import library_records
from assistant.knowledge.fields import Field, Shape, row
from assistant.knowledge.parts import CITED, CONDITIONS, ID, RAW, SOURCE
from assistant.knowledge.readers import (
    DATE,
    IDENTIFIER,
    LOOSE,
    NAME,
    TEXT,
    TEXTS,
    WORDS,
    YES_NO,
    choice,
    many,
    mapping,
)

DOCUMENTS = Shape(
    "documents",
    "document",
    library_records.Document,
    (
        Field("id", NAME, required=True),
        Field("title", TEXT, required=True),
        Field("revision", TEXT),
        Field("effective", LOOSE),
        Field("validated", TEXT),
        Field("review_by", DATE),
        Field("temporary_revisions", TEXTS),
        Field("published", YES_NO),
        Field("paragraphs", TEXTS, about="what may be cited of it: '1.2', or a range as '1.2 to 1.9'"),
    ),
)

_TERM_KINDS = (
    "thing", "state", "action", "quantity", "place", "ask", "ask!", "filler", "either", "outside",
)  # fmt: skip
TERMS = Shape(
    "terms",
    "term",
    library_records.Term,
    (
        ID,
        Field("names", TEXTS, required=True),
        Field("heard", TEXTS),
        Field("kind", choice(*_TERM_KINDS)),
        Field("implies", WORDS),
        Field("family", TEXT),
        Field("sets", CONDITIONS),
        Field("shows", CONDITIONS),
        Field("ends", CONDITIONS),
        Field("wants", TEXT),
        Field("show", TEXT),
        Field("say", TEXT),
        Field("misspelt", TEXTS),
    ),
)

CHANGES = Shape(
    "changes",
    "change",
    library_records.Change,
    (
        ID,
        Field("subject", TEXT, required=True),
        Field("formerly", TEXT, required=True),
        Field("now", TEXT, required=True),
        Field("since", TEXT, required=True),
        Field("record", IDENTIFIER, required=True),
        SOURCE,
    ),
)

VARIANTS = Shape(
    "variants",
    "variant",
    library_records.Variant,
    (
        Field("id", NAME, required=True),
        Field("names", TEXTS, required=True),
        Field("show", TEXT, required=True),
        CITED,
    ),
)

OVERRIDES = Shape(
    "overrides",
    "override",
    library_records.Override,
    (
        Field("variant", NAME, required=True),
        Field("record", IDENTIFIER, required=True),
        Field(
            "set",
            RAW,
            required=True,
            into=("fields",),
            about="fields of the record, with the variant's values",
        ),
        SOURCE,
        Field("says", TEXT),
    ),
)

OUTLINES = Shape(
    "outlines",
    "outline",
    library_records.Outline,
    (
        ID,
        Field("title", TEXT, required=True),
        Field(
            "items",
            many(row(Field("title", TEXT, True), Field("record", TEXT, True), Field("when", TEXT))),
            required=True,
        ),
        CITED,
    ),
)

TYPE = Shape(
    "type",
    "type",
    library_records.TypeInfo,
    (
        ID,
        Field("name", TEXT, required=True),
        Field("names", TEXTS),
        Field("operator", TEXT),
        Field("operator_names", TEXTS),
        Field("caution", TEXT),
        Field("examples", TEXTS),
        Field(
            "not_here",
            mapping(IDENTIFIER),
            about="labels of other fleets, and the record that answers instead",
        ),
    ),
)
