"""Scenarios for an oral examination: failure upon failure, and after each "and then?" and "why?", as far as it goes.

A scene begins with one thing out of the ordinary in a state table, asks what follows from it there and in the other
tables, why, and what is done; then another thing fails, there or in another table, until no further failure changes
anything. Every turn is a question that the assistant answers by itself, so that it can be marked by itself.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence
from itertools import islice
from random import Random

from assistant.frozen import NamedTuple
from assistant.knowledge.records import StateTable, TableOutput
from assistant.practice.making import Question, make_questions
from assistant.practice.making.drafting import Desk
from assistant.practice.making.make import prove
from assistant.practice.making.question import MEANING, MEMORY, REASON, SHOWN, STEPS
from assistant.practice.making.states import State, conditions_of, single_drafts
from assistant.practice.making.wording import Wording
from assistant.practice.sitting_following import follows_well, other_tables, stays
from assistant.resolving import tables
from assistant.resolving.knowing import Knowledge

_MOST_FAILURES = 4
_MOST_OUTPUTS = 2
"""Results of the table itself that are asked after each failure, and as many of the other tables."""
_FOLLOWING = (REASON, STEPS, MEMORY, MEANING, SHOWN)
_LOST = "@lost"
_LEAST_SHARED = 0.6
"""Share of what a question is about that the scene must have brought up, for the one to follow from the other."""


class Turn(NamedTuple):
    """One turn of an examiner: what is said, and the question that it is, whole, by which it is marked.

    step: how many things have failed by then.
    """

    said: str
    question: Question
    step: int = 0


class Examiner:
    """Sets scenes, none twice. topics: records to keep to, or none."""

    def __init__(self, knowledge: Knowledge, seed: str, among: Iterable[str], variant: str = "") -> None:
        self._know = knowledge
        self._seed = seed
        self._among = frozenset(among)
        self._chance = Random(f"{seed} oral")
        chosen = variant or knowledge.variants[0]
        self._desk = Desk(knowledge, Wording(knowledge.base), self._chance, chosen)
        self._made: dict[str, list[Question]] = {}
        self._known: dict[str, frozenset[str]] = {}
        self._asked: set[str] = set()
        """Texts of questions, and cases of tables' results."""
        self._begun: set[tuple[str, str]] = set()
        self._procedures: set[str] = set()

    def scene(self) -> tuple[Turn, ...]:
        """Return the turns of another scene, nothing when there is none left."""
        while start := self._start():
            table, first = start
            self._begun.add((table.id, first[0]))
            if turns := tuple(self._turns(table, first)):
                return turns
        return self._procedure()

    def _start(self) -> tuple[StateTable, tuple[str, str]] | None:
        """Choose a table and a first failure that changes something there; tables with more to ask come up more."""
        found = [
            (table, each)
            for table in tables.tables(self._know.base)
            if table.id in self._among
            for each in self._abnormal(table)
            if (table.id, each[0]) not in self._begun and self._changed(table, (), (each,))
        ]
        failures = [(table, each) for table, each in found if self._is_failure(each)]
        return self._chance.choice(failures or found) if found else None

    def _turns(self, table: StateTable, first: tuple[str, str]) -> Iterator[Turn]:
        state: State = (first,)
        before: State = ()
        begun = False
        while True:
            asked = list(self._after_failure(table, before, state, begun))
            begun = begun or bool(asked)
            for turn in (*asked, *self._follow_ups(table, state, asked)):
                yield turn._replace(step=len(state))
            more = self._next_failure(table, state) if len(state) < _MOST_FAILURES else None
            if more is None:
                return
            before, (table, failure) = state, more
            state = (*state, failure)

    def _abnormal(self, table: StateTable) -> list[tuple[str, str]]:
        return [(name, value) for name in table.inputs for value, _, _ in self._know.base.inputs[name].values[1:]]

    def _next_failure(self, table: StateTable, state: State) -> tuple[StateTable, tuple[str, str]] | None:
        """Choose what fails next: in the table of the scene, else in another, else what somebody sets otherwise."""
        every = [table, *other_tables(table, self._among, self._know)]
        telling = [
            (one, each) for one in every for each in self._abnormal(one)
            if each[0] not in dict(state) and self._changed(one, state, (*state, each))
        ]  # fmt: skip
        failures = [pair for pair in telling if self._is_failure(pair[1])]
        here = [pair for pair in failures if pair[0].id == table.id]
        left = here or failures or [pair for pair in telling if pair[0].id == table.id]
        return self._chance.choice(left) if left else None

    def _is_failure(self, condition: tuple[str, str]) -> bool:
        """Whether a value means that the thing is lost, rather than that somebody set it so."""
        known = self._know.base.inputs[condition[0]].values
        return any(value == condition[1] and _LOST in words.split("; ") for value, _, words in known)

    def _changed(self, table: StateTable, before: State, after: State) -> list[TableOutput]:
        """Return the results that another failure changes."""
        was, now = (tables.outputs(table, dict(each), self._know.base) for each in (before, after))
        return [output for output in table.outputs if was[output.id] != now[output.id]]

    # --- what is asked after a failure

    def _after_failure(self, table: StateTable, before: State, state: State, begun: bool) -> Iterator[Turn]:
        """Yield what becomes of the table's own results, and of those of the other tables that the failure touches."""
        opening = self._opening(state[-1]) if begun else ""
        own = tuple(each for each in state if each[0] in table.inputs)
        for output in self._own_results(table, before, state):
            turn = self._result(table, output, own, opening)
            if turn is not None:
                opening = "And then"
                begun = True
                yield turn
        if begun:  # what becomes of another table's results goes on from those of its own
            yield from islice(self._other_results(table, state), _MOST_OUTPUTS)

    def _other_results(self, table: StateTable, state: State) -> Iterator[Turn]:
        """Yield what becomes of the other tables' results."""
        new = state[-1]
        for other in tables.tables(self._know.base):
            own = tuple(each for each in state if each[0] in other.inputs)
            if other.id == table.id or new not in own or other.id not in self._among:
                continue
            changed = self._changed(other, own[:-1], own)
            found = (self._result(other, output, own, "And then") for output in changed)
            turn = next((each for each in found if each is not None), None)
            if turn is not None:
                yield turn

    def _own_results(self, table: StateTable, before: State, state: State) -> list[TableOutput]:
        """Return the first result, which is what the table is about, and one more that has changed."""
        changed = self._changed(table, before, state)
        first = [table.outputs[0]] if table.outputs[0] in changed or not before else []
        rest = [output for output in changed if output not in first]
        return [*first, *self._chance.sample(rest, min(len(rest), _MOST_OUTPUTS - len(first)))]

    def _result(self, table: StateTable, output: TableOutput, state: State, opening: str) -> Turn | None:
        """Return the turn that asks for a result in a state, in the first wording that the assistant understands."""
        case = f"{table.id}.{output.id} {sorted(state)}"
        drafts = list(single_drafts(table, state, output, self._desk)) if case not in self._asked else []
        for ask, draft in self._chance.sample(drafts, len(drafts)):
            question = prove(draft, self._desk, self._seed)
            if question is not None:
                self._asked.add(case)
                return Turn(f"{opening}: {ask}?" if opening else question.text, question)
        return None

    def _opening(self, new: tuple[str, str]) -> str:
        words = self._words(new)
        return f"And now {words} as well" if self._is_failure(new) else f"And now with {words}"

    def _words(self, condition: tuple[str, str]) -> str:
        return conditions_of((condition,), self._desk)[1]

    # --- what follows from it: why, what it looks like, what is done

    def _follow_ups(self, table: StateTable, state: State, asked: list[Turn]) -> Iterator[Turn]:
        """Yield a reason and one other question that follow from what has failed and what became of it."""
        if not asked:
            return
        sections = {each.topic for each in tables.tables(self._know.base) if state[-1][0] in each.inputs}
        became = self._concepts(" ".join(point for turn in asked for point in turn.question.key.points))
        failed = self._concepts(" ".join(map(self._words, state)))
        scene = became | self._concepts(self._words(state[-1]))
        questions = [turn.question for turn in asked]
        for forms, of in (((REASON,), became - failed), ((STEPS, MEMORY, MEANING, SHOWN), None)):
            turn = self._nearest(scene, forms, sections | {table.topic}, of, state, questions)
            if turn is not None:
                yield turn

    def _nearest(
        self, scene: frozenset[str], forms: tuple[str, ...], sections: Collection[str],
        of: frozenset[str] | None = None, state: State = (), asked: Sequence[Question] = (),
    ) -> Turn | None:  # fmt: skip
        """Return the question not asked yet that is most about what the scene brought up. of: what it must be about.

        asked: the questions of this step in a state, with which it must stay.
        """
        new = state[-1][0] if state else ""
        found = [
            (self._share(question, scene, new), question)
            for section in sorted(sections)
            for question in self._following(section)
            if question.form in forms
            and question.text not in self._asked
            and follows_well(question)
            and (of is None or of & self._concepts(question.text))
            and (not state or stays(question, state, asked, self._named_share(question, scene), self._know))
        ]
        share, question = max(found, key=lambda each: each[0], default=(0.0, None))
        if question is None or share < _LEAST_SHARED:
            return None
        self._asked.add(question.text)
        return Turn(f"And then? {question.text}" if question.form in (STEPS, MEMORY) else question.text, question)

    def _following(self, section: str) -> list[Question]:
        """Return what may follow from something else of a section."""
        if section not in self._made:
            own = [name for name in self._among if getattr(self._know.base.records[name], "topic", "") == section]
            self._made[section] = list(
                make_questions(
                    self._know, self._seed, entries=own, forms=_FOLLOWING, variant=self._desk.variant,
                    wording=self._desk.wording,
                )
            ) if own else []  # fmt: skip
        return self._made[section]

    def _share(self, question: Question, scene: frozenset[str], new: str) -> float:
        """Return the share of a question that the scene has brought up; enough where it tells of what failed."""
        told = _LEAST_SHARED if new in self._concepts(question.key.says) else 0.0
        return max(self._named_share(question, scene), told)

    def _named_share(self, question: Question, scene: frozenset[str]) -> float:
        own = self._concepts(question.text)
        return len(own & scene) / len(own) if own else 0.0

    def _concepts(self, text: str) -> frozenset[str]:
        if text not in self._known:
            self._known[text] = self._concepts_of(text)
        return self._known[text]

    def _concepts_of(self, text: str) -> frozenset[str]:
        known = self._know.base.terms
        kinds = self._know.lexicon.kinds
        mentions = self._know.phrase(text).mentions
        return frozenset(
            concept for mention in mentions for concept in (*mention.concepts, *mention.implied)
            if concept[:1] == "=" or (concept in known and kinds.get(concept, "thing") == "thing")
        )  # fmt: skip

    # --- where no table is of the topic

    def _procedure(self) -> tuple[Turn, ...]:
        """Return a scene that begins with a procedure and goes on with what shows and why, of the same things."""
        sections = {getattr(self._know.base.records[name], "topic", "") for name in self._among}
        left = [
            each for section in sorted(sections) for each in self._following(section)
            if each.form in (STEPS, MEMORY) and each.text not in self._asked and each.entry not in self._procedures
        ]  # fmt: skip
        if not left:
            return ()
        first = self._chance.choice(left)
        self._procedures.add(first.entry)
        self._asked.add(first.text)
        scene = self._concepts(f"{first.text} {first.key.says}")
        found = (self._nearest(scene, forms, sections) for forms in ((SHOWN, MEANING), (REASON,), (STEPS, MEMORY)))
        return (Turn(first.text, first), *(turn for turn in found if turn is not None))
