"""What each kind of record that answers questions may hold: one table of fields a kind."""

from __future__ import annotations

from assistant.knowledge import records
from assistant.knowledge.fields import Field, Shape, part, row
from assistant.knowledge.parts import (
    ALSO,
    ANSWERS,
    ASKS,
    CITED,
    CONDITIONS,
    ID,
    NEEDED,
    OF,
    QUANTITY,
    QUIZ,
    SOURCE,
    THEN,
    TOPIC,
    VALUES,
    WHY,
    alternatives,
    keyed,
    outputs,
)
from assistant.knowledge.readers import (
    AMOUNT,
    APPLIES,
    IDENTIFIER,
    POINTS,
    TEST,
    TEXT,
    TEXTS,
    WORDS,
    YES_NO,
    choice,
    many,
    mapping,
)

FACTS = Shape(
    "facts",
    "fact",
    records.Fact,
    (
        ID,
        ASKS,
        Field("says", TEXT, required=True, about="the answer, starting with the fact"),
        SOURCE,
        ANSWERS,
        ALSO,
        Field("values", VALUES),
        Field("points", TEXTS, about="what a learner must say"),
        WHY,
        TOPIC,
        Field("says_more", TEXT),
        Field("when", CONDITIONS, about="inputs of state tables of which it is a consequence"),
        Field("title", TEXT, about="what it tells, in a few words, as it is offered for choice"),
        THEN,
        QUIZ,
        Field("also_said", mapping(TEXTS), about="points, each with other words in which a learner says it rightly"),
    ),
)

LIMITS = Shape(
    "limits",
    "limit",
    records.Limit,
    (
        ID,
        ASKS,
        THEN,
        OF,
        SOURCE,
        Field("maximum", AMOUNT),
        Field("minimum", AMOUNT),
        Field("value", AMOUNT, about="a stated figure that is not a limit"),
        Field("second", AMOUNT, about="a second maximum of another quantity; the lower applies"),
        Field("basis", TEXT),
        Field("check", TEXTS, about="what is done at the amount"),
        ALSO,
        ANSWERS,
        Field("when", CONDITIONS, about="inputs, or outputs as table.output, under which alone it holds"),
        Field(
            "applies", many(APPLIES), about="another amount that must compare so, as 'ground speed over 5 kt'"
        ),
        Field("exceeded", TEXT, about="what follows when it is exceeded"),
        NEEDED,
        Field("within", TEXT),
        Field("under", TEXT),
        Field("over", TEXT),
        WHY,
        TOPIC,
        QUIZ,
        Field(
            "chooses",
            many(row(Field("when", TEXT, True), Field("set", TEXT, True), Field("because", TEXT, True))),
            about="what a policy sets by it and by what is named, first match",
        ),
    ),
)

BANDS = Shape(
    "bands",
    "set of bands",
    records.Bands,
    (
        ID,
        ASKS,
        THEN,
        OF,
        *QUANTITY,
        Field(
            "rules",
            many(
                part(
                    records.BandRule,
                    Field("test", TEST, required=True, into=("test", "value", "unit")),
                    Field("verdict", choice("within", "outside"), required=True),
                    Field("says", TEXT, required=True),
                    Field("rehearsed", YES_NO, about="no where the documents give nothing to do at such a reading"),
                )
            ),
            required=True,
        ),
        SOURCE,
        Field("reference", IDENTIFIER, about="id of the stated figure of which tests may be shares"),
        ALSO,
        NEEDED,
        TOPIC,
        Field("says", TEXT, about="the whole rule in words"),
        Field("opens", choice("reading"), about="reading: each side of the rule says what to do, and none breaks it"),
        Field("each", IDENTIFIER, about="id of a limit that each of the readings compared is held against as well"),
        QUIZ,
    ),
)

SCHEDULES = Shape(
    "schedules",
    "schedule",
    records.Schedule,
    (
        ID,
        ASKS,
        OF,
        Field(
            "input",
            row(*QUANTITY, Field("basis", TEXT)),
            required=True,
            into=("input", "input_unit", "basis"),
        ),
        Field("output", row(*QUANTITY), required=True, into=("output", "output_unit")),
        Field("points", POINTS, required=True, about="[input, output] breakpoints, inputs rising"),
        SOURCE,
        Field("top", IDENTIFIER, about="id of the figure that the first outputs equal"),
        Field("works", TEXT, about="of a control: table.output: and the values with which it works"),
        Field("below", TEXT, about="what holds before the first breakpoint"),
        Field("above", TEXT, about="what holds beyond the last breakpoint"),
        ALSO,
        WHY,
        TOPIC,
    ),
)

INPUTS = Shape(
    "inputs",
    "input",
    records.TableInput,
    (
        ID,
        Field("term", IDENTIFIER, required=True),
        Field("values", keyed(Field("says", TEXT, required=True), Field("words", TEXT)), required=True),
        CITED,
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
        Field("read_on", IDENTIFIER, about="the term of the instrument that shows its number"),
    ),
)

TABLES = Shape(
    "tables",
    "table",
    records.StateTable,
    (
        ID,
        OF,
        Field("inputs", WORDS, required=True),
        Field("outputs", outputs(), required=True),
        Field(
            "rules",
            many(
                part(
                    records.TableRule,
                    Field("when", alternatives(), required=True),
                    Field("then", CONDITIONS, required=True),
                    CITED,
                )
            ),
            required=True,
        ),
        SOURCE,
        ALSO,
        TOPIC,
        Field(
            "remarks",
            many(row(Field("input", TEXT, True), Field("value", TEXT, True), Field("remark", TEXT, True))),
            about="said whenever that value of that input is part of the question",
        ),
        Field(
            "reasons",
            many(
                part(
                    records.TableReason,
                    Field("why", IDENTIFIER, required=True),
                    Field("of", WORDS),
                    Field("when", CONDITIONS),
                )
            ),
            about="the statement that says why, asked after a result that a state brings; without a state, of the rest",
        ),
        Field(
            "means",
            many(
                part(
                    records.TableMeans,
                    Field("tell", IDENTIFIER, required=True),
                    Field("of", IDENTIFIER, required=True),
                    Field("value", IDENTIFIER, required=True),
                    Field("asked", IDENTIFIER, required=True),
                )
            ),
            about="the statement told with a result, where a question holds a concept: by what means one steers then",
        ),
        Field("apart", WORDS, about="inputs of other tables that no rehearsed scenario adds to it"),
    ),
)

PROCEDURES = Shape(
    "procedures",
    "procedure",
    records.Procedure,
    (
        ID,
        Field("title", TEXT, required=True),
        ASKS,
        THEN,
        Field(
            "steps",
            many(
                part(
                    records.Step,
                    Field("do", TEXT, required=True),
                    Field("memory", YES_NO),
                    Field("asks", TEXTS),
                    Field("values", VALUES),
                    Field("answers", WORDS),
                    Field("done", TEXTS, about="how it is told that the step has been done"),
                    THEN,
                    QUIZ,
                    Field("also_said", TEXTS, about="other words in which a learner says it rightly"),
                )
            ),
            required=True,
        ),
        SOURCE,
        Field("condition", TEXT, about="what calls for it"),
        ALSO,
        WHY,
        TOPIC,
    ),
)

MODELS = Shape(
    "models",
    "model",
    records.Model,
    (
        ID,
        ASKS,
        OF,
        Field("function", IDENTIFIER, required=True),
        Field(
            "inputs",
            many(
                part(
                    records.ModelInput,
                    ID,
                    *QUANTITY,
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
                    Field("sought", TEXT, about="words that ask for it, ways parted by semicolons; '!' bars one"),
                )
            ),
            required=True,
        ),
        Field("output", row(*QUANTITY), required=True, into=("output", "output_unit")),
        SOURCE,
        Field("says", TEXT),
        Field("working", TEXT),
        Field("assumes", TEXTS),
        ALSO,
        Field("inverse", WORDS, about="inputs that may be solved for"),
        Field("needs", WORDS, about="words without which it is not meant"),
        Field("descending", WORDS, about="inputs of one quantity, the greatest first"),
        WHY,
        TOPIC,
        Field("extra", CONDITIONS),
        QUIZ,
    ),
)
