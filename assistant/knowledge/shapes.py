"""What each kind of record may hold: one table of fields a kind, for reading, checks and schema alike.

`knowledge_base/FORMAT.md` explains the same to curators, with examples.
"""

from __future__ import annotations

from typing import Any

from assistant.knowledge import records
from assistant.knowledge.fields import Field, Shape, part, row
from assistant.knowledge.readers import (
    AMOUNT,
    APPLIES,
    BAD,
    DATE,
    IDENTIFIER,
    LOOSE,
    NAME,
    POINTS,
    SOURCES,
    TEST,
    TEXT,
    TEXTS,
    UNIT,
    WORDS,
    YES_NO,
    Reader,
    Reading,
    choice,
    many,
    mapping,
)
from assistant.knowledge.yaml_lines import Items, Node


def _keyed(*fields: Field) -> Reader:
    """A mapping of names to rows, read as rows that begin with the name."""
    pairs = mapping(row(*fields))

    def read(node: Node, label: str, reading: Reading) -> Any:
        found = pairs.read(node, label, reading)
        return BAD if found is BAD else [[name, *rest] for name, rest in found]

    return Reader(read, pairs.schema)


def _outputs() -> Reader:
    """The columns of a state table, by name; a column's own name comes first in its record."""
    values = _keyed(Field("says", TEXT, required=True), Field("words", TEXT))
    columns = mapping(
        part(
            records.TableOutput,
            Field("asks", TEXTS, required=True),
            Field("values", values, required=True),
            Field("label", TEXT),
        )
    )

    def read(node: Node, label: str, reading: Reading) -> Any:
        found = columns.read(node, label, reading)
        return BAD if found is BAD else [[name, *column[1:]] for name, column in found]

    return Reader(read, columns.schema)


def _alternatives() -> Reader:
    """Conditions of a rule: a mapping all of which must hold, or a list of such, any of which must."""
    conditions = mapping(TEXT, empty=True)
    several = many(conditions)

    def read(node: Node, label: str, reading: Reading) -> Any:
        if isinstance(node, Items):
            return several.read(node, label, reading)
        found = conditions.read(node, label, reading)
        return BAD if found is BAD else [found]

    return Reader(read, several.schema)


def _raw(node: Node, label: str, reading: Reading) -> Any:
    return node


RAW = Reader(_raw, {"type": "object", "minProperties": 1})
"""Left as it stands, to be read once the record that it changes is known."""

_ID = Field("id", IDENTIFIER, required=True, about="unique within its kind; other records refer to it")
_ASKS = Field("asks", TEXTS, required=True, about="the telling words of each question that it answers")
_ALSO = Field("also", TEXT, about="more words that a question on this may hold")
_ANSWERS = Field("answers", WORDS, about="the aspects that it answers, beyond those that its asks show")
_TOPIC = Field("topic", TEXT, about="ATA section, such as 32-30")
_WHY = Field("why", IDENTIFIER, about="id of the record that states the reason")
_OF = Field("of", TEXT, required=True, about="what it is the value or state of, in words")
_NEEDED = Field("needed", TEXTS, about="what else must hold")
_SOURCE = Field(
    "source", SOURCES, required=True, into=("sources",), about="document and paragraph; several by ';'"
)
_CITED = _SOURCE._replace(required=False)
_CONDITIONS = mapping(TEXT)
_VALUES = many(
    part(
        records.Value,
        Field("is", AMOUNT, required=True, into=("value", "unit", "")),
        Field("quantity", TEXT),
    )
)
_QUANTITY = (Field("quantity", TEXT, required=True), Field("unit", UNIT, required=True))

DOCUMENTS = Shape(
    "documents",
    "document",
    records.Document,
    (
        Field("id", NAME, required=True),
        Field("title", TEXT, required=True),
        Field("revision", TEXT),
        Field("effective", LOOSE),
        Field("validated", TEXT),
        Field("review_by", DATE),
        Field("temporary_revisions", TEXTS),
        Field("published", YES_NO),
    ),
)
TERMS = Shape(
    "terms",
    "term",
    records.Term,
    (
        _ID,
        Field("names", TEXTS, required=True),
        Field("heard", TEXTS),
        Field("kind", choice("thing", "state", "action", "quantity", "place", "ask", "ask!", "filler")),
        Field("implies", WORDS),
        Field("family", TEXT),
        Field("sets", _CONDITIONS),
        Field("wants", TEXT),
        Field("show", TEXT),
        Field("say", TEXT),
        Field("misspelt", TEXTS),
    ),
)
FACTS = Shape(
    "facts",
    "fact",
    records.Fact,
    (
        _ID,
        _ASKS,
        Field("says", TEXT, required=True, about="the answer, starting with the fact"),
        _SOURCE,
        _ANSWERS,
        _ALSO,
        Field("values", _VALUES),
        Field("points", TEXTS, about="what a learner must say"),
        _WHY,
        _TOPIC,
        Field("says_more", TEXT),
        Field("when", _CONDITIONS, about="inputs of state tables of which it is a consequence"),
    ),
)
LIMITS = Shape(
    "limits",
    "limit",
    records.Limit,
    (
        _ID,
        _ASKS,
        _OF,
        _SOURCE,
        Field("maximum", AMOUNT),
        Field("minimum", AMOUNT),
        Field("value", AMOUNT, about="a stated figure that is not a limit"),
        Field("second", AMOUNT, about="a second maximum of another quantity; the lower applies"),
        Field("basis", TEXT),
        Field("check", TEXTS, about="what is done at the amount"),
        _ALSO,
        _ANSWERS,
        Field("when", _CONDITIONS, about="inputs, or outputs as table.output, under which alone it holds"),
        Field(
            "applies", many(APPLIES), about="another amount that must compare so, as 'ground speed over 5 kt'"
        ),
        Field("exceeded", TEXT, about="what follows when it is exceeded"),
        _NEEDED,
        Field("within", TEXT),
        _WHY,
        _TOPIC,
    ),
)
BANDS = Shape(
    "bands",
    "set of bands",
    records.Bands,
    (
        _ID,
        _ASKS,
        _OF,
        *_QUANTITY,
        Field(
            "rules",
            many(
                part(
                    records.BandRule,
                    Field("test", TEST, required=True, into=("test", "value", "unit")),
                    Field("verdict", choice("within", "outside"), required=True),
                    Field("says", TEXT, required=True),
                )
            ),
            required=True,
        ),
        _SOURCE,
        Field("reference", IDENTIFIER, about="id of the stated figure of which tests may be shares"),
        _ALSO,
        _NEEDED,
        _TOPIC,
        Field("says", TEXT, about="the whole rule in words"),
    ),
)
SCHEDULES = Shape(
    "schedules",
    "schedule",
    records.Schedule,
    (
        _ID,
        _ASKS,
        _OF,
        Field(
            "input",
            row(*_QUANTITY, Field("basis", TEXT)),
            required=True,
            into=("input", "input_unit", "basis"),
        ),
        Field("output", row(*_QUANTITY), required=True, into=("output", "output_unit")),
        Field("points", POINTS, required=True, about="[input, output] breakpoints, inputs rising"),
        _SOURCE,
        Field("top", IDENTIFIER, about="id of the figure that the first outputs equal"),
        Field("below", TEXT, about="what holds before the first breakpoint"),
        Field("above", TEXT, about="what holds beyond the last breakpoint"),
        _ALSO,
        _WHY,
        _TOPIC,
    ),
)
INPUTS = Shape(
    "inputs",
    "input",
    records.TableInput,
    (
        _ID,
        Field("term", IDENTIFIER, required=True),
        Field("values", _keyed(Field("says", TEXT, required=True), Field("words", TEXT)), required=True),
        _CITED,
        Field(
            "number",
            many(
                row(
                    Field("test", TEST, required=True, into=("test", "value", "unit")),
                    Field("is", TEXT, required=True),
                    Field("remark", TEXT),
                )
            ),
            about="what a reading means, first match",
        ),
        Field("failure", YES_NO, about="no for what is chosen rather than lost"),
    ),
)
TABLES = Shape(
    "tables",
    "table",
    records.StateTable,
    (
        _ID,
        _OF,
        Field("inputs", WORDS, required=True),
        Field("outputs", _outputs(), required=True),
        Field(
            "rules",
            many(
                part(
                    records.TableRule,
                    Field("when", _alternatives(), required=True),
                    Field("then", _CONDITIONS, required=True),
                    _CITED,
                )
            ),
            required=True,
        ),
        _SOURCE,
        _ALSO,
        _TOPIC,
        Field(
            "remarks",
            many(row(Field("input", TEXT, True), Field("value", TEXT, True), Field("remark", TEXT, True))),
            about="said whenever that value of that input is part of the question",
        ),
    ),
)
PROCEDURES = Shape(
    "procedures",
    "procedure",
    records.Procedure,
    (
        _ID,
        Field("title", TEXT, required=True),
        _ASKS,
        Field(
            "steps",
            many(
                part(
                    records.Step,
                    Field("do", TEXT, required=True),
                    Field("memory", YES_NO),
                    Field("asks", TEXTS),
                    Field("values", _VALUES),
                    Field("answers", WORDS),
                )
            ),
            required=True,
        ),
        _SOURCE,
        Field("condition", TEXT, about="what calls for it"),
        _ALSO,
        _WHY,
        _TOPIC,
    ),
)
MODELS = Shape(
    "models",
    "model",
    records.Model,
    (
        _ID,
        _ASKS,
        _OF,
        Field("function", IDENTIFIER, required=True),
        Field(
            "inputs",
            many(
                part(
                    records.ModelInput,
                    _ID,
                    *_QUANTITY,
                    Field("ask", TEXT),
                    Field("cues", TEXT),
                    Field(
                        "default", TEXT, about="a number, the id of a stated figure, or 'both' of the choices"
                    ),
                    Field("assumed", TEXT),
                    Field(
                        "choices",
                        many(row(Field("words", TEXT, True), Field("is", TEXT, True), Field("says", TEXT))),
                    ),
                )
            ),
            required=True,
        ),
        Field("output", row(*_QUANTITY), required=True, into=("output", "output_unit")),
        _SOURCE,
        Field("says", TEXT),
        Field("working", TEXT),
        Field("assumes", TEXTS),
        _ALSO,
        Field("inverse", WORDS, about="inputs that may be solved for"),
        Field("needs", WORDS, about="words without which it is not meant"),
        _TOPIC,
        Field("extra", _CONDITIONS),
    ),
)
CHANGES = Shape(
    "changes",
    "change",
    records.Change,
    (
        _ID,
        Field("subject", TEXT, required=True),
        Field("formerly", TEXT, required=True),
        Field("now", TEXT, required=True),
        Field("since", TEXT, required=True),
        Field("record", IDENTIFIER, required=True),
        _SOURCE,
    ),
)
VARIANTS = Shape(
    "variants",
    "variant",
    records.Variant,
    (
        Field("id", NAME, required=True),
        Field("names", TEXTS, required=True),
        Field("show", TEXT, required=True),
        _CITED,
    ),
)
OVERRIDES = Shape(
    "overrides",
    "override",
    records.Override,
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
        _SOURCE,
        Field("says", TEXT),
    ),
)
OUTLINES = Shape(
    "outlines",
    "outline",
    records.Outline,
    (
        _ID,
        Field("title", TEXT, required=True),
        Field(
            "items",
            many(row(Field("title", TEXT, True), Field("record", TEXT, True), Field("when", TEXT))),
            required=True,
        ),
        _CITED,
    ),
)
TYPE = Shape(
    "type",
    "type",
    records.TypeInfo,
    (
        _ID,
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

SHAPES: dict[str, Shape] = {
    shape.key: shape
    for shape in (
        DOCUMENTS,
        TERMS,
        INPUTS,
        FACTS,
        LIMITS,
        BANDS,
        SCHEDULES,
        TABLES,
        PROCEDURES,
        MODELS,
        CHANGES,
        VARIANTS,
        OVERRIDES,
        OUTLINES,
    )
}
"""Kinds of record by the key of their list in files; `type` stands alone, once, in type.yaml."""

WORD_GROUPS = mapping(TEXTS)
"""Words by the name of their group, which `@name` stands for in the values of inputs and outputs."""
