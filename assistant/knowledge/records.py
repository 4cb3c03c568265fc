"""The shapes of knowledge: one frozen record for each kind that answers questions, and what they are made of.

Records hold plain values only (text, numbers, tuples of them), so that a compiled base is kept as it is.
Numbers stay in the unit of the document they come from; SI happens where physics begins.
"""

from __future__ import annotations

from assistant.frozen import NamedTuple


class Value(NamedTuple):
    """A number as a document states it: `quantity` says of what ("speed", "time", …)."""

    value: float
    unit: str
    quantity: str = ""


class Source(NamedTuple):
    """Where a statement stands: a listed document's id and the paragraph in it."""

    document: str
    paragraph: str


class Fact(NamedTuple):
    """A statement that answers, with the ways of asking for it."""

    id: str
    asks: tuple[str, ...]
    says: str
    sources: tuple[Source, ...]
    answers: tuple[str, ...] = ()
    also: str = ""
    values: tuple[Value, ...] = ()
    points: tuple[str, ...] = ()
    why: str = ""
    topic: str = ""
    says_more: str = ""
    when: tuple[tuple[str, str], ...] = ()
    """Inputs of state tables under which the statement is a consequence worth naming."""
    title: str = ""
    """What it tells, in a few words, as it is offered for choice."""
    then: tuple[str, ...] = ()
    """Ways of asking that are for it only where something of its paragraph has just been told."""
    quiz: tuple[str, ...] = ()
    """Whole questions by which alone it is rehearsed, where its ways of asking make none that all of it answers."""
    also_said: tuple[tuple[str, tuple[str, ...]], ...] = ()
    """Points, each with other words in which a learner says it rightly."""


class Limit(NamedTuple):
    """A maximum, a minimum, a range or a stated figure, of one quantity under one condition."""

    id: str
    asks: tuple[str, ...]
    of: str
    sources: tuple[Source, ...]
    maximum: Value | None = None
    minimum: Value | None = None
    value: Value | None = None
    """A stated figure that is not a limit (a wheelbase, a time, a pressure set)."""
    second: Value | None = None
    """A second maximum of another quantity, the lower of both applying (255 kt or Mach 0.60)."""
    basis: str = ""
    check: tuple[str, ...] = ()
    also: str = ""
    answers: tuple[str, ...] = ()
    when: tuple[tuple[str, str], ...] = ()
    applies: tuple[tuple[str, str, float, str], ...] = ()
    """(quantity, comparison, value, unit): the limit holds only where that other amount compares so."""
    exceeded: str = ""
    needed: tuple[str, ...] = ()
    within: str = ""
    why: str = ""
    topic: str = ""
    under: str = ""
    """What holds at an amount under a stated figure, whole and in words that answer by themselves."""
    over: str = ""
    then: tuple[str, ...] = ()
    """Ways of asking that are for it only where something of its paragraph has just been told."""
    quiz: tuple[str, ...] = ()
    """Whole questions by which alone its figure is rehearsed, where what it is of makes none that reads well."""
    chooses: tuple[tuple[str, str, str], ...] = ()
    """(when, set, because): a term, or `exceeded`; what is set then, and why. The first that fits decides."""


class BandRule(NamedTuple):
    """One row of a set of bands: from the top, the first whose test holds decides."""

    test: str
    value: float
    unit: str
    verdict: str
    says: str
    rehearsed: bool = True
    """Whether a reading that it decides may be asked of a learner: not where the documents say nothing to do."""


NOT_ASKED = "no"
"""What stands in the place of a record's questions where it is none to rehearse."""
READING = "reading"


class Bands(NamedTuple):
    """A reading judged by the first of some ordered tests; tests may be shares of a stated figure."""

    id: str
    asks: tuple[str, ...]
    of: str
    quantity: str
    unit: str
    rules: tuple[BandRule, ...]
    sources: tuple[Source, ...]
    reference: str = ""
    also: str = ""
    needed: tuple[str, ...] = ()
    topic: str = ""
    says: str = ""
    """The whole rule in words, for a question without a number."""
    each: str = ""
    """The id of a limit that each of the readings compared is held against as well."""
    opens: str = ""
    """READING where an answer opens with the reading: each side says what to do, so that none is outside the rule."""
    then: tuple[str, ...] = ()
    """Ways of asking that are for it only where something of its paragraph has just been told."""
    quiz: tuple[str, ...] = ()
    """Whole questions by which alone it is rehearsed, with {amount} where the reading stands."""


class Schedule(NamedTuple):
    """One quantity by another, straight between breakpoints, and what lies beyond them."""

    id: str
    asks: tuple[str, ...]
    of: str
    input: str
    input_unit: str
    output: str
    output_unit: str
    points: tuple[tuple[float, float], ...]
    sources: tuple[Source, ...]
    top: str = ""
    """Id of the stated figure that the first output equals, for a variant to change."""
    works: str = ""
    """Of a control: the result of a state table, and its values with which the control works."""
    below: str = ""
    above: str = ""
    also: str = ""
    basis: str = ""
    why: str = ""
    topic: str = ""


class TableInput(NamedTuple):
    """One thing that may be in a state, shared by every state table. Its first value is the normal one."""

    id: str
    term: str
    values: tuple[tuple[str, str, str], ...]
    """(value, how it is said of this input, words for it: names of word groups or words)."""
    sources: tuple[Source, ...] = ()
    number: tuple[tuple[str, float, str, str, str], ...] = ()
    """(test, value, unit, input value, remark): what a reading means, first match."""
    failure: bool = True
    """False for a switch, a pin or a phase, which is chosen rather than lost."""
    read_on: str = ""
    """The term of an instrument whose readings are this thing's, where they are told of it alone."""


class TableOutput(NamedTuple):
    """One column that a state table answers."""

    id: str
    asks: tuple[str, ...]
    values: tuple[tuple[str, str, str], ...]
    """(value, the sentence that states it, words that name it in a question)."""
    label: str = ""
    asks_under: tuple[str, ...] = ()
    """Ways of asking that are for it only where a state that its table rests on is given: "do I need chocks"."""
    shown: bool = False
    """Whether an instrument shows it: the colour of the pressure bars."""
    goes: tuple[str, ...] = ()
    """Terms in whose names it is said to be lost or kept: "takes the brakes but leaves me the tiller"."""
    quiz: tuple[str, ...] = ()
    """Questions by which alone it is rehearsed, as they follow a state: "do you have steering"."""


class TableRule(NamedTuple):
    """A row: alternatives of input conditions, any of which matches, and the outputs then."""

    when: tuple[tuple[tuple[str, str], ...], ...]
    then: tuple[tuple[str, str], ...]
    sources: tuple[Source, ...] = ()


class TableReason(NamedTuple):
    """The statement that says why results of a table come with a state; without a state, why they are so at all."""

    why: str
    of: tuple[str, ...] = ()
    """The outputs that it is the reason for; all of them where none is named."""
    when: tuple[tuple[str, str], ...] = ()


class TableMeans(NamedTuple):
    """The statement that tells by what means something is done while a result of a table holds."""

    tell: str
    of: str
    value: str
    asked: str
    """The concept that a question holds which asks for it."""


class StateTable(NamedTuple):
    """Ordered rules over inputs; the first that matches decides (OMG DMN, hit policy First)."""

    id: str
    of: str
    inputs: tuple[str, ...]
    outputs: tuple[TableOutput, ...]
    rules: tuple[TableRule, ...]
    sources: tuple[Source, ...]
    also: str = ""
    topic: str = ""
    remarks: tuple[tuple[str, str, str], ...] = ()
    """(input, value, remark) said whenever that value is part of the question."""
    reasons: tuple[TableReason, ...] = ()
    means: tuple[TableMeans, ...] = ()
    apart: tuple[str, ...] = ()
    """Inputs of other tables that no rehearsed scenario adds to it: nobody parks with the nose leg in the air."""


class Step(NamedTuple):
    """One step of a procedure."""

    do: str
    memory: bool = False
    asks: tuple[str, ...] = ()
    values: tuple[Value, ...] = ()
    answers: tuple[str, ...] = ()
    done: tuple[str, ...] = ()
    then: tuple[str, ...] = ()
    """Ways of asking that are for it only where something of its paragraph has just been told."""
    quiz: tuple[str, ...] = ()
    """Whole questions by which alone the step is rehearsed by itself."""
    also_said: tuple[str, ...] = ()
    """Other words in which a learner says it rightly."""


class Procedure(NamedTuple):
    """Steps in order, and what calls for them."""

    id: str
    title: str
    asks: tuple[str, ...]
    steps: tuple[Step, ...]
    sources: tuple[Source, ...]
    condition: str = ""
    also: str = ""
    why: str = ""
    topic: str = ""
    then: tuple[str, ...] = ()
    """Ways of asking that are for it only where something of its paragraph has just been told."""


class ModelInput(NamedTuple):
    """An input of a planning model: what it is, in which unit, how it is recognised and asked for."""

    id: str
    quantity: str
    unit: str
    ask: str = ""
    cues: str = ""
    default: str = ""
    """A number, the id of a stated figure, or empty: then it must be given."""
    assumed: str = ""
    """What the answer says when the default was used."""
    choices: tuple[tuple[str, str, str], ...] = ()
    """(words that choose it, the number or stated figure, what is then said)."""
    sought: str = ""
    """Words that ask for it, ways parted by semicolons: all words of one stand in what is asked."""


class Model(NamedTuple):
    """A physics function bound to a type's stated figures."""

    id: str
    asks: tuple[str, ...]
    of: str
    function: str
    inputs: tuple[ModelInput, ...]
    output: str
    output_unit: str
    sources: tuple[Source, ...]
    says: str = ""
    working: str = ""
    assumes: tuple[str, ...] = ()
    also: str = ""
    inverse: tuple[str, ...] = ()
    """Inputs that may be solved for when the output is given."""
    needs: tuple[str, ...] = ()
    """Words without which the model is not meant (a landing, an RTO)."""
    descending: tuple[str, ...] = ()
    """Inputs of one quantity, the greatest first: a brake is hotter than its target, that than the air outside.
    "output" is the result."""
    topic: str = ""
    extra: tuple[tuple[str, str], ...] = ()
    why: str = ""
    quiz: tuple[str, ...] = ()
    """"no" alone, where nobody can know which of several results is meant."""
