"""What people tell of themselves before they ask, or after: where they are, who wants to know, how long the day was.

"My instructor caught me out with this yesterday. Tiller limit at 30 kt?" The sentence is no part of the question. It is
known by a word of private life or of learning, and by what it lacks: a figure, a state, a thing of the trade.
"""

from __future__ import annotations

from assistant.conversation.reading_turns.readings import question_of, things_named
from assistant.resolving.knowing import Knowledge, Question
from assistant.understanding.clauses import asking, parted
from assistant.understanding.mentions import STATE
from assistant.understanding.set_aside import without_what_is_set_aside

_ENDS = frozenset((".", "!", "?", ";"))
_TELLING_ENDS = frozenset((".", "!", ";"))
OF_ONESELF = frozenset({
    "across", "airport", "argue", "argued", "arguing", "argument", "asked", "asking", "asks", "asleep", "beer",
    "bet", "boarding", "books", "bored", "boss", "boyfriend", "brain", "breakfast", "briefing", "brother", "bus",
    "cadet", "cadets", "cafe", "canteen", "catering", "chapter", "charger", "checkride", "class", "classroom",
    "coffee", "colleague", "colleagues", "commute", "commuting", "confused", "conversion", "converting", "couch",
    "course", "crewroom", "cup", "curious", "dad", "daughter", "day", "debrief", "desk", "dinner", "embarrassed",
    "embarrassing", "evening", "everybody", "everyone", "exam", "examiner", "exams", "flashcards", "fleet",
    "forget", "forgot", "forgotten", "freighter", "friday", "friend", "friends", "fueller", "gate", "girlfriend",
    "headset", "hello", "holiday", "holidays", "homework", "hotel", "hungry", "husband", "instructor",
    "instructors", "interview", "jetlag", "jetlagged", "keen", "kid", "kids", "kitchen", "know", "knows", "laptop",
    "layover", "lunch", "mate", "mates", "memory", "monday", "month", "months", "morning", "moving", "mum",
    "nervous", "newbie", "night", "nobody", "notebook", "notes", "passengers", "phone", "podcast", "pub", "purser",
    "question", "questions", "queue", "quiz", "recurrent", "retired", "revise", "revising", "room", "roster",
    "rusty", "saturday", "school", "sim", "simulator", "sister", "sitting", "sleepy", "slides", "sofa", "somebody",
    "someone", "somewhere", "son", "student", "students", "studying", "sunday", "tablet", "tea", "teacher",
    "textbook", "thursday", "tired", "today", "tomorrow", "tonight", "trainee", "trainees", "trainer",
    "transitioning", "trivia", "tuesday", "turboprop", "turboprops", "typerating", "upgrade", "vacation", "waiting",
    "wednesday", "week", "weekend", "weeks", "wife", "written", "year", "years", "yesterday",
})  # fmt: skip
_POINTING = frozenset({
    "it", "its", "that", "this", "they", "them", "their", "theyre", "those", "these", "he", "she", "his", "her",
    "him", "there", "one", "ones",
})  # fmt: skip
"""Words by which the question may speak of what the sentence tells."""
_DAYS = frozenset(("week", "year", "month", "day"))
_WHERE = frozenset(("stand", "airfield", "ground_crew", "first_officer", "captain"))
"""Where somebody is and who is there: with a word of private life beside it, it only sets the scene."""
_PLAINLY = 2
"""Words of private life with which a sentence is of nothing else."""
_LEFT = frozenset(("from", "used", "left", "leaving", "was", "were"))
"""Words by which a variant is one that somebody flew before."""
_KINDS = frozenset(("ask", "ask!", "filler", "quantity"))


def asked_alone(text: str, knowledge: Knowledge, variant: str) -> Question:
    """Return a text as a question of its own, without the sentences that people tell of themselves."""
    question = question_of(text, knowledge, variant)
    words = question.reading.words
    asked = without_what_is_set_aside(words)
    if asked:
        bare = question_of(" ".join(asked), knowledge, question.variant if question.named_variant else variant)
        return bare._replace(named_variant=question.named_variant).with_text(text)
    if OF_ONESELF.isdisjoint(words) or _TELLING_ENDS.isdisjoint(words):
        return question
    parts = parted(words, _ENDS)
    kept = [part for part in parts if not _is_of_oneself(part, question, knowledge)]
    rest = [words[i] for part in kept for i in part]
    if not kept or len(kept) == len(parts):
        return question
    if not _POINTING.isdisjoint(rest) and not _names_a_thing(question, kept, knowledge):
        return question
    bare = question_of(" ".join(rest), knowledge, question.variant if question.named_variant else variant)
    return bare._replace(named_variant=question.named_variant).with_text(text)


def _names_a_thing(question: Question, parts: list[range], knowledge: Knowledge) -> bool:
    """Return whether some sentences name a thing of the trade themselves, while the others name no other subject."""
    mentions = question.reading.mentions
    own = {m.start for m in things_named(question.reading, knowledge) if not (m.is_plain or m.is_outside)}
    elsewhere = (
        m
        for m in mentions
        if m.is_outside and m.text not in OF_ONESELF and not any(m.start in part for part in parts)
    )
    return any(start in part for start in own for part in parts) and not any(elsewhere)


def _is_of_oneself(part: range, question: Question, knowledge: Knowledge) -> bool:
    """Return whether a sentence tells of who asks, and gives the question nothing to rest on."""
    reading = question.reading
    words = reading.words[part.start : part.stop]
    private = sum(word in OF_ONESELF for word in words)
    if not private or words[-1] == "?":
        return False
    if any(a.start in part and a.unit not in _DAYS for a in reading.amounts):
        return False
    if any(k in part and not c.implied for c in question.conditions for k in c.where):
        return False
    if not _LEFT.isdisjoint(words) and any(place in part for place in reading.variant_places):
        return False
    scene = all(
        any(_sets_the_scene(c, knowledge) for c in m.concepts)
        for m in reading.mentions
        if m.start in part and not (m.weak or m.passing or m.is_plain or m.is_outside)
    )
    plainly = private >= _PLAINLY
    return (scene and plainly) if asking(words, marks=False) else (scene or plainly)


def _sets_the_scene(concept: str, knowledge: Knowledge) -> bool:
    """Return whether a concept is of what is asked, where somebody is, or a state that is told of nothing."""
    return concept in _WHERE or concept.startswith(STATE) or knowledge.lexicon.kinds.get(concept) in _KINDS
