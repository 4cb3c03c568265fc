"""What resolving finds: one frozen record for each kind of answer, numbers in the units of its documents."""

from __future__ import annotations

from typing import Any

from assistant.frozen import NamedTuple
from assistant.knowledge.library_records import Change, Override
from assistant.knowledge.records import BandRule, Bands, Fact, Limit, Model, Procedure, Schedule, Source, StateTable
from assistant.understanding.states import Condition


class FactResult(NamedTuple):
    """A curated statement."""

    fact: Fact


class LimitResult(NamedTuple):
    """Stated figures: the one asked for first, then others that the same question covers."""

    limits: tuple[Limit, ...]
    conditions: tuple[Condition, ...] = ()
    other: tuple[Limit | None, ...] = ()
    """The same figures on the other variants, where they differ."""
    claimed: float | None = None
    """An amount that was said to be the first figure, in its unit."""


class Check(NamedTuple):
    """An amount held against a limit, all in the limit's unit; exactly at the limit is within it."""

    limit: Limit
    given: float
    unit: str
    bound: float
    within: bool
    bound_from: str = ""
    """How the bound came about, when two limits apply and the lower was computed."""
    beyond: str = ""
    """"below" or "above" for an amount that is named as a bound: all below, or above, it is meant."""


class CheckResult(NamedTuple):
    """One or more amounts held against their limits."""

    checks: tuple[Check, ...]


class NotApplicable(NamedTuple):
    """A limit asked about, which does not hold in the state given."""

    limit: Limit
    because: str
    conditions: tuple[Condition, ...]
    sources: tuple[Source, ...] = ()


class ChosenResult(NamedTuple):
    """The setting that a policy chooses by what a question names and by a share that is held against a limit."""

    limit: Limit
    setting: str
    because: str
    share: float
    when: str


class BandResult(NamedTuple):
    """A reading judged by bands."""

    bands: Bands
    given: float
    rule: BandRule
    reference: float | None
    beyond: str = ""
    """As in a check."""


class ScheduleResult(NamedTuple):
    """A schedule read at an input, or the inputs that give an output. `found` are (from, to) intervals."""

    schedule: Schedule
    given: float
    value: float | None
    found: tuple[tuple[float, float], ...] = ()
    other: tuple[tuple[str, float], ...] = ()
    """The same reading on variants where it differs."""
    against: float | None = None
    """An output that the question gives besides the input."""


class TableResult(NamedTuple):
    """The row of a state table that fits, for each alternative of the conditions."""

    table: StateTable
    rows: tuple[Row, ...]
    asked: tuple[str, ...]
    unaffected: tuple[Condition, ...] = ()
    labels: tuple[Fact, ...] = ()
    """What is known of the labels that show with it, where these are asked for."""
    label: tuple[str, bool] | None = None
    """A label of which it is asked whether it shows, and whether it does."""


class Row(NamedTuple):
    """One alternative: its conditions and what the table then gives."""

    conditions: tuple[Condition, ...]
    outputs: tuple[tuple[str, str], ...]
    sources: tuple[Source, ...]


class TablesResult(NamedTuple):
    """Rows of several state tables, when a question asks for results of more than one."""

    results: tuple[TableResult, ...]


class LossResult(NamedTuple):
    """Everything that differs from normal under some conditions, across all tables, and facts that follow."""

    conditions: tuple[Condition, ...]
    lost: tuple[tuple[StateTable, str, str], ...]
    kept: tuple[tuple[StateTable, str, str], ...]
    facts: tuple[Fact, ...]
    sources: tuple[Source, ...]


class CauseResult(NamedTuple):
    """The minimal sets of states that lead to a result of a table, and to other results with it."""

    table: StateTable
    output: str
    value: str
    sets: tuple[tuple[tuple[str, str], ...], ...]
    single: bool
    given: tuple[Condition, ...] = ()
    also: tuple[tuple[StateTable, str, str], ...] = ()
    """Other results (table, output, value) that the sets lead to as well: what several indications have in common."""
    others: tuple[tuple[tuple[str, str], ...], ...] = ()
    """Sets that lead there too, but are of another kind than is asked for."""
    spared: bool = False
    """The sets do not lead there: each leaves the result as it is with everything normal."""


class ProcedureResult(NamedTuple):
    """A procedure, whole or the step asked for.

    step: its index; the number of steps where the one after the last was asked for. alone: the step is told
    without the others, as all were told before.
    """

    procedure: Procedure
    step: int | None = None
    memory_only: bool = False
    alone: bool = False


class ModelValue(NamedTuple):
    """One result of a calculation: what was assumed, how it came about, and the number."""

    value: float
    unit: str
    quantity: str
    under: str
    working: str
    extra: tuple[tuple[str, float, str], ...] = ()


class ModelResult(NamedTuple):
    """A calculation, once for each alternative that the question leaves open."""

    model: Model
    values: tuple[ModelValue, ...]
    assumed: tuple[str, ...]
    solved: str = ""
    """The input that was solved for, when the question gives the output."""
    sources: tuple[Source, ...] = ()
    note: str = ""
    against: float | None = None
    """A result that the question gives besides all inputs: it is compared with what is calculated."""
    limit: Limit | None = None
    """The limit that the result is held to."""
    over: tuple[tuple[Limit, float], ...] = ()
    """Limits that an amount given is beyond, each with the amount in the limit's unit."""
    to: Limit | None = None
    """The limit of the result at which an input was solved for, where no result is given."""
    picked: int | None = None
    """The place among the values of the setting that was asked for."""
    weighed: tuple[str, ...] = ()
    """The words of the turn that holds an amount against what was calculated before it."""


class BothResult(NamedTuple):
    """Two statements that fit a question as well as each other, or two verdicts on its readings: both are told."""

    first: FactResult | LimitResult | CheckResult | BandResult | ScheduleResult
    second: FactResult | LimitResult | CheckResult | BandResult | ScheduleResult


class Needed(NamedTuple):
    """A question that is understood and lacks something."""

    record: Any
    missing: tuple[str, ...]
    names: tuple[str, ...]
    hint: str = ""


class Choices(NamedTuple):
    """A question that fits several records: which may be chosen."""

    options: tuple[tuple[str, str], ...]
    """(record id, how it is offered)."""
    about: str = ""


class ChangeResult(NamedTuple):
    """What a revision changed."""

    changes: tuple[Change, ...]
    whole: bool = False


class VariantResult(NamedTuple):
    """How a variant differs."""

    variant: str
    overrides: tuple[Override, ...]


class CompareResult(NamedTuple):
    """One figure on all variants."""

    limits: tuple[tuple[str, Limit], ...]


class Conversion(NamedTuple):
    """An amount in another unit."""

    value: float
    unit: str
    result: float
    target: str
    difference: bool = False
    """Of two temperatures, whose zero points play no part."""


class Elsewhere(NamedTuple):
    """A label of another fleet, answered with this type's own."""

    label: str
    fact: Fact


class Declined(NamedTuple):
    """Nothing fits: the words that nothing explains, and what is known nearby."""

    words: tuple[str, ...]
    near: tuple[str, ...] = ()
    why: str = ""


Result = (
    FactResult | LimitResult | CheckResult | NotApplicable | BandResult | ScheduleResult | TableResult | TablesResult
    | LossResult | CauseResult | ProcedureResult | ModelResult | Needed | Choices | ChangeResult | VariantResult
    | CompareResult | Conversion | Elsewhere | BothResult | Declined | ChosenResult
)  # fmt: skip


def records_of(result: Result) -> tuple[Fact | Limit | Procedure, ...]:
    """Return the statement, the limits or the procedure that a result tells, or judges by; none of any other."""
    if isinstance(result, FactResult):
        return (result.fact,)
    return (result.procedure,) if isinstance(result, ProcedureResult) else limits_of(result)


def limits_of(result: Result | None) -> tuple[Limit, ...]:
    """Return the limits that a result tells, or holds an amount against; none of any other."""
    if isinstance(result, CheckResult):
        return tuple(check.limit for check in result.checks)
    return result.limits if isinstance(result, LimitResult) else ()
