"""Make questions: draft them from the records, put them into words, prove each against the assistant's own answer."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator
from random import Random

from assistant.answering.answer import Answer, Citation
from assistant.knowledge.records import Fact
from assistant.practice.making.bands import band_drafts
from assistant.practice.making.calculations import model_drafts
from assistant.practice.making.curves import schedule_drafts
from assistant.practice.making.drafting import Desk
from assistant.practice.making.facts import fact_drafts
from assistant.practice.making.limits import limit_drafts
from assistant.practice.making.procedures import procedure_drafts
from assistant.practice.making.proving import answer_to, counts_otherwise, differences, gives_away
from assistant.practice.making.question import Draft, Question
from assistant.practice.making.revisions import change_drafts, variant_drafts
from assistant.practice.making.selecting import Sitting, entries_on, in_turn, own_records
from assistant.practice.making.states import table_drafts
from assistant.practice.making.telling import place_for
from assistant.practice.making.wording import Wording
from assistant.rendering.speech import spoken
from assistant.resolving.knowing import Knowledge

_TRIED = 200
"""Wordings of a draft that are tried before it is given up."""

_OF_A_VARIANT = "On the "
"""How what differs on a variant begins, which belongs to the statement."""
_STILL, _NOT_AFFECTED = "Still so, ", "Not affected"
"""How the answer begins that tells of a state which changes nothing of what was asked."""

MAKERS: dict[str, Callable[[str, Desk], Iterator[Draft]]] = {
    "facts": fact_drafts, "limits": limit_drafts, "bands": band_drafts, "schedules": schedule_drafts,
    "tables": table_drafts, "procedures": procedure_drafts, "models": model_drafts,
}  # fmt: skip
"""What makes questions of each kind of record."""


def make_questions(
    knowledge: Knowledge, seed: int | str, number: int | None = None, topics: Iterable[str] = (),
    entries: Collection[str] = (), forms: Collection[str] = (), variant: str = "", hardest: int = 3,
    wording: Wording | None = None, easiest: int = 1,
) -> tuple[Question, ...]:  # fmt: skip
    """Return questions, the same for the same seed; all that can be made when no number is given.

    topics: ATA sections ("32-50"), plain words ("brakes", "tiller"), or "general". entries: ids of records. forms:
    of `question.FORMS`. variant: the one asked about, the base type by default. hardest: difficulty not exceeded;
    easiest: difficulty at least.
    wording: of this base, where it is at hand already, as when questions are made one by one.
    With a number, no record is asked for twice, no two questions are alike, and none gives away a later one. Raises
    UnknownTopic.
    """
    wording = wording or Wording(knowledge.base)
    chosen_variant = variant or knowledge.variants[0]
    wanted = _wanted(entries_on(topics, knowledge, wording), entries, knowledge)
    desk = Desk(knowledge, wording, Random(f"{seed}"), chosen_variant)
    drafts = [
        draft for draft in every_draft(desk, wanted, f"{seed}")
        if easiest <= draft.difficulty <= hardest and (not forms or draft.form in forms)
    ]  # fmt: skip
    sitting = Sitting(each_entry_once=number is not None, apart=number is not None)
    found: list[Question] = []
    for draft in in_turn(drafts, desk.chance):
        if number is not None and len(found) >= number:
            break
        if sitting.may_draft(draft):
            question = prove(draft, desk, f"{seed}")
            place = _place(question, found, number) if question is not None else None
            if question is not None and place is not None and sitting.takes(question):
                found.insert(place, question)
    return tuple(found)


def _place(question: Question, found: list[Question], number: int | None) -> int | None:
    """Return where a question stands: after whatever its answer tells, where they are put one after the other."""
    return len(found) if number is None else place_for(question, found)


def every_draft(desk: Desk, wanted: Collection[str], seed: str) -> Iterator[Draft]:
    """Yield the drafts of every record wanted; each draws its numbers by itself, whatever else is wanted."""
    for name in desk.know.base.order:
        maker = MAKERS.get(desk.know.base.kind(name))
        if name in wanted and maker is not None:
            yield from maker(name, desk._replace(chance=Random(f"{seed} {name}")))
    for draft in (*change_drafts(desk), *variant_drafts(desk)):
        if draft.entry in wanted:
            yield draft


def prove(draft: Draft, desk: Desk, seed: str) -> Question | None:
    """Return a draft as a question in a wording that the assistant answers as its key says, or None."""
    chance = Random(f"{seed} {draft.entry} {draft.form} {draft.key.values} {draft.key.states}")
    tried = 0
    for group in draft.wordings:
        for text in chance.sample(group, len(group)):
            if tried >= _TRIED:
                return None
            if gives_away(text, draft) or counts_otherwise(text, draft.key):
                continue
            tried += 1
            answer = answer_to(text, desk.variant, desk.know)
            if not differences(draft.key, draft.by or draft.entry, answer, desk.know):
                return _question(text, draft, *_asked_for(answer, draft, desk), desk)
    return None


def alone(says: str) -> str:
    """Return an answer as the key to a question that nothing came before."""
    return _NOT_AFFECTED + says.removeprefix(_STILL + _NOT_AFFECTED.lower()) if says.startswith(_STILL) else says


def _asked_for(answer: Answer, draft: Draft, desk: Desk) -> tuple[str, tuple[Citation, ...]]:
    """Return the full answer and what it rests on, without another statement that the assistant tells beside one.

    Who is asked what something stores has not been asked how many needles show it.
    """
    says, record = alone(answer.text), desk.record(draft.entry)
    if not isinstance(record, Fact) or draft.by or not says.startswith(f"{record.says} "):
        return says, answer.sources
    rest = says.removeprefix(record.says).strip()
    if rest.startswith((_OF_A_VARIANT, record.says_more or _OF_A_VARIANT)):
        return says, answer.sources
    own = {(source.document, source.paragraph) for source in record.sources}
    return record.says, tuple(each for each in answer.sources if (each.document, each.paragraph) in own)


def _question(text: str, draft: Draft, says: str, sources: tuple[Citation, ...], desk: Desk) -> Question:
    lexicon = desk.know.base.pronunciations if isinstance(desk.know.base.pronunciations, dict) else {}
    heard = spoken(text, desk.know.units, lexicon, labels=desk.know.base.labels)
    return Question(
        text, heard, draft.form, draft.entry, draft.section, desk.variant,
        draft.key._replace(says=says), sources, draft.hint, draft.difficulty,
    )  # fmt: skip


def _wanted(on_topic: frozenset[str] | None, entries: Collection[str], know: Knowledge) -> frozenset[str]:
    """Return the records to ask about: those named, those on a topic, else all of the type's own."""
    if entries:
        return frozenset(entries) & (on_topic if on_topic is not None else frozenset(entries))
    if on_topic is not None:
        return on_topic
    return own_records(know)
