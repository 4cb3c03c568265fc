"""Mark a free answer: right, partly, wrong or missed, with what is missing and what is wrong, and the full answer.

Begin here: `required` finds what the question asks for and turns it into points, `read_said` reads the answer,
`compare` holds the one against the other.
"""

from __future__ import annotations

import re

from assistant.answering.answer import Citation
from assistant.frozen import NamedTuple
from assistant.practice.marking.compare import Compared, compare
from assistant.practice.marking.finding.also_said import put_plainly
from assistant.practice.marking.finding.beside_point import beside_the_point
from assistant.practice.marking.finding.found import Held, lacking
from assistant.practice.marking.finding.polarity import HINDERING, denied
from assistant.practice.marking.finding.sided import with_side
from assistant.practice.marking.missed.confirmed import is_confirmed, without_true
from assistant.practice.marking.missed.evasive import evades, without_remarks
from assistant.practice.marking.missed.general import is_general
from assistant.practice.marking.missed.of_people import tells_of_people
from assistant.practice.marking.missed.other_matter import on_another_matter
from assistant.practice.marking.missed.says_nothing import says_nothing
from assistant.practice.marking.missed.told_aside import tells_aside
from assistant.practice.marking.missed.true_remarks import is_true_remark
from assistant.practice.marking.missed.vague import without_vague
from assistant.practice.marking.of_results.no_thing import without_determiners
from assistant.practice.marking.points import Need
from assistant.practice.marking.reading.confessing import without_confession
from assistant.practice.marking.reading.relative import reckoned
from assistant.practice.marking.reading.said import Said, plain, read_said
from assistant.practice.marking.reading.wording import NEGATORS, UNKNOWING
from assistant.practice.marking.requiring.required import required
from assistant.practice.marking.rewording.asked_names import as_asked
from assistant.practice.marking.rewording.citing import miscited, uncited
from assistant.practice.marking.rewording.continental import continental
from assistant.practice.marking.rewording.no_figures import without_no_figures
from assistant.practice.marking.rewording.reworded import reworded
from assistant.practice.marking.rewording.run_together import apart
from assistant.practice.marking.rewording.slips import without_shortenings, without_slips
from assistant.practice.marking.rewording.small_numbers import listed
from assistant.practice.marking.rewording.sums_told import without_sum
from assistant.practice.marking.rewording.variant_labels import labels_named
from assistant.practice.marking.rewording.verbatim import verbatim
from assistant.practice.marking.wrong_statements.absolutes import limitless
from assistant.practice.marking.wrong_statements.modes_left import without_left_modes
from assistant.practice.marking.wrong_statements.reserved import without_reserve
from assistant.practice.marking.wrong_things.other_rows import without_other_rows
from assistant.resolving.knowing import Knowledge
from assistant.understanding.mentions import Mention

RIGHT, PARTLY, WRONG, MISSED = "right", "partly", "wrong", "missed"
UNMARKED = "unmarked"


class Mark(NamedTuple):
    """The mark of one answer.

    mark: RIGHT, PARTLY, WRONG or MISSED; UNMARKED where nothing loaded answers the question. share: how much of what is
    needed was said, 0 to 1. missing: the points not said. wrong: what contradicts. expected: the full answer.
    """

    mark: str
    share: float
    missing: tuple[str, ...]
    wrong: tuple[str, ...]
    expected: str
    sources: tuple[Citation, ...]


NOTHING = Mark(UNMARKED, 0.0, (), (), "", ())
_HALF = 0.5
_SURE = 2
"""Telling words of another wording that puts right what was held to be wrong."""
_MOST = 500
"""Questions whose needs are kept at once."""


def mark_answer(question: str, answer: str, knowledge: Knowledge) -> Mark:
    """Return the mark of an answer to a question, typed or recognised from speech; never raises for any text."""
    need = required(question, knowledge)
    return mark_against(need, answer, knowledge) if need else NOTHING


class Marker:
    """Marks answers one after another, and keeps what each question needs: a class answers one many times."""

    def __init__(self, knowledge: Knowledge) -> None:
        self._knowledge = knowledge
        self._needs: dict[str, Need | None] = {}

    def mark(self, question: str, answer: str) -> Mark:
        """Return the mark of an answer, as `mark_answer` does."""
        if question not in self._needs:
            if len(self._needs) >= _MOST:
                self._needs.clear()
            self._needs[question] = required(question, self._knowledge)
        need = self._needs[question]
        return mark_against(need, answer, self._knowledge) if need else NOTHING


def mark_against(need: Need, answer: str, knowledge: Knowledge) -> Mark:
    """Return the mark of an answer to a question whose needs are known already."""
    first = _marked(need, answer, knowledge)
    open_to_it = first.mark in (PARTLY, MISSED) or (first.mark == WRONG and _are_words_of(first.wrong, answer))
    least = _SURE if first.mark == WRONG else 1
    plainly = put_plainly(answer, first.missing, least, need, knowledge) if open_to_it else answer
    if plainly != answer:
        first = _marked(need, plainly, knowledge)
    as_whole = (each for each in need.alike if each.expected == need.expected and len(each.points) >= len(need.points))
    if first.share and first.mark in (PARTLY, WRONG):
        first = next((m for each in as_whole if (m := _marked(each, answer, knowledge)).mark == RIGHT), first)
    if first.share or first.mark not in (WRONG, MISSED, PARTLY):
        return first
    others = (_marked(other, answer, knowledge) for other in need.alike)
    return next((each for each in others if each.mark in (RIGHT, PARTLY)), first)


def _are_words_of(wrong: tuple[str, ...], answer: str) -> bool:
    """Return whether all that is wrong in an answer are words of it that nothing explains, and nothing is exchanged."""
    own = answer.lower()
    return all(words.lower() in own for words in wrong)


def _marked(need: Need, answer: str, knowledge: Knowledge) -> Mark:
    """Return the mark of an answer to one reading of a question."""
    labelled = labels_named(listed(apart(uncited(answer, need, knowledge), need, knowledge), need), need, knowledge)
    spelled = without_slips(continental(without_shortenings(labelled, need, knowledge), need), need, knowledge)
    spelled = without_determiners(without_sum(without_left_modes(spelled, need, knowledge), need), need, knowledge)
    plainly = without_reserve(reworded(reckoned(spelled, knowledge), need), need)
    said = _without_asked(read_said(as_asked(with_side(plainly, need), need), knowledge), need, knowledge)
    said = _to_the_point(_without_talk(said, need, knowledge), need, knowledge)
    rest = without_confession(said)
    known = said
    if rest:
        known = _to_the_point(_without_asked(read_said(rest, knowledge), need, knowledge), need, knowledge)
    compared = compare(need, known, knowledge)
    share = sum(h.share for h in compared.held) / len(compared.held) if compared.held else 0.0
    if compared.wrong and all(h.share >= 1 for h in compared.held):
        compared = compared._replace(wrong=without_true(compared.wrong, need, known, knowledge))
    compared = compared._replace(wrong=(*compared.wrong, *miscited(answer, need)))
    mark = _mark(need, said, compared, knowledge)
    if mark in (WRONG, PARTLY) and compared.held and verbatim(need, answer, all(h.share >= 1 for h in compared.held)):
        return Mark(RIGHT, 1.0, (), (), need.expected, need.sources)
    missing = tuple(lacking(h) for h in compared.held if h.share < 1)
    wrong = compared.wrong if mark == WRONG else ()
    return Mark(mark, round(share, 2), missing, wrong or _beside(mark, answer), need.expected, need.sources)


def _to_the_point(said: Said, need: Need, know: Knowledge) -> Said:
    """Return an answer without what is vague in it, and without numbers that are no figures."""
    return without_no_figures(without_vague(said, need, know), need)


def _without_talk(said: Said, need: Need, know: Knowledge) -> Said:
    """Return an answer without what it says in place of one."""
    for rest in (without_remarks(said, know), without_other_rows(said, need)):
        said = _without_asked(read_said(rest, know), need, know) if rest else said
    return said


def _without_asked(said: Said, need: Need, know: Knowledge) -> Said:
    """Return an answer in which a word of the question is no name of what it asks for: "some sound" for the horn."""
    points = [e for p in need.points for e in p.elements if not e.given]
    own = {w for e in points for w in e.words}
    wanted = {
        c for e in points for c in e.concepts if c[0] not in "~@=" and know.lexicon.kinds.get(c, "thing") == "thing"
    }
    spots = {
        m.start for m in said.reading.mentions
        if len(m.taken) == 1 and wanted & m.concepts and said.words[m.start] in need.asked - own
    }  # fmt: skip
    spots |= {i for m in said.reading.mentions if wanted & m.concepts and _is_acted_on(m, own, know) for i in m.taken}
    spots -= denied(said.reading.words, said.reading) if spots else frozenset()  # "no sound" does say something
    if not spots:
        return said
    here, inner = (
        tuple(c - wanted if i in spots else c for i, c in enumerate(each)) for each in (said.concepts, said.inner)
    )
    alike = {i: (words, named - wanted if i in spots else named) for i, (words, named) in said.fellows.items()}
    return said._replace(concepts=here, inner=inner, fellows=alike)


def _is_acted_on(mention: Mention, own: set[str], know: Knowledge) -> bool:
    """Return whether words are what a thing stops, by which it is only asked for: "spinning" of a brake pulse."""
    words = mention.text.lower().split()
    if not own.isdisjoint(map(plain, words)) or len(words) > _FEW:
        return False
    return words[0].startswith("stop") or any(
        mention.concepts & m.concepts and m.start == 0 and m.end == len(words) + 1
        for m in know.phrase(f"stop {mention.text}").mentions
    )


_FEW = 2


def _beside(mark: str, answer: str) -> tuple[str, ...]:
    return (answer.strip(),) if mark == WRONG else ()


def _mark(need: Need, said: Said, compared: Compared, know: Knowledge) -> str:
    unknowing = _unknowing(need, said)
    told = any(h.share > 0 for h in compared.held)
    halfway = any(h.share >= _HALF for h in compared.held)
    if not _tells(compared.held) and evades(said, know, need.question):
        return MISSED
    numbered = _numbers(said) and any(p.figures for p in need.points)
    if unknowing and not numbered and not _tells(compared.held) and not _decides(compared.held, said):
        return MISSED
    if (compared.wrong or told) and not need.follows and on_another_matter(compared.held, need, said, know):
        return MISSED
    if compared.wrong:
        aside = is_true_remark(compared, need, said, know) or (not halfway and tells_aside(need, said))
        aside = aside or (not told and is_confirmed(need, said, know))
        return MISSED if aside else WRONG
    if told:
        whole = all(h.share >= 1 for h in compared.held) and not need.unanswered
        return RIGHT if whole else PARTLY
    if not unknowing and not says_nothing(need, said, know) and _tells_of_it(need, said, know):
        return PARTLY
    claims = _claims(need, said, know) and not unknowing and not beside_the_point(need, said, know)
    claims = claims and not says_nothing(need, said, know) and not is_general(need, said, know)
    claims = claims and not tells_of_people(need, said)
    wrong = claims or (limitless(need, said) and not unknowing)
    if not wrong or on_another_matter(compared.held, need, said, know):
        return MISSED
    return MISSED if is_true_remark(compared, need, said, know) or is_confirmed(need, said, know) else WRONG


def _tells_of_it(need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether a reason that holds no point is one half of it: only things that the full answer speaks of."""
    if not need.question.has("why") or said.claims or not said.content:
        return False
    full = know.phrase(need.expected)
    turned = denied(full.words, full)
    hindered = {i for i, w in enumerate(full.words) if HINDERING.intersection(full.words[max(0, i - _NEAR) : i])}
    plainly = [m for m in full.mentions if not (turned | hindered).intersection(m.taken)]
    true = frozenset(c for m in plainly for c in m.concepts) - need.question.concepts
    words = said.reading.words
    put_off = denied(words, said.reading)
    put_off |= {k for i in range(1, len(words)) if words[i - 1 : i + 1] in _INSTEAD for k in range(i, len(words))}
    named = [m for m in said.content if words[m.start] not in NEGATORS]  # "not brake" is a name of its own
    told = [m for m in named if not put_off & set(m.taken)]  # "deceleration, not brake pressure"
    sure = not any(m.concepts & true for m in named if m not in told)
    things = frozenset(c for c in need.known if c[0] not in "@~=")
    return sure and any(m.concepts & true for m in told) and all(m.concepts & things for m in told)


_NEAR = 4
_INSTEAD = (("rather", "than"), ("instead", "of"))


def _unknowing(need: Need, said: Said) -> bool:
    """Return whether an answer says that it does not know, or leaves it to somebody who is not asked for."""
    full = need.expected.lower()
    told = UNKNOWING.finditer(" ".join(said.reading.words).rstrip(" .!"))
    return any(found.group() not in full for found in told)


def _numbers(said: Said) -> list[str]:
    """Return the numbers that an answer gives; "a minute" to think is none."""
    return [c.amount.raw for c in said.claims if not c.amount.raw.startswith(("a ", "an "))]


def _tells(held: tuple[Held, ...]) -> bool:
    """Return whether anything but a yes or no was said to the point."""
    return any(h.share > 0 and not h.point.verdict and (not h.point.state or h.places) for h in held)


def _decides(held: tuple[Held, ...], said: Said) -> bool:
    """Return whether an answer gives its yes or no, and does not know the rest: "no, but I forget the limit"."""
    verdict = any(h.point.verdict for h in held)
    return verdict and _DECIDED.match(" ".join(said.reading.words)) is not None


_DECIDED = re.compile(
    r"(?:yes|no|nope|yep|yeah|it is|it is not|you can|you cannot|you may not|you may) "
    r"(?:but\b|though\b|[,.;] (?:but\b|"
    r".*\b(?:limit|limits|figure|number|rule|why|reason|setting|value|rest|minimum|maximum)\b))"
)


def _claims(need: Need, said: Said, know: Knowledge) -> bool:
    """Return whether an answer that holds nothing needed claims something else of the matter."""
    asked = frozenset(c for m in need.question.mentions for c in m.concepts)
    kinds = know.lexicon.kinds
    if need.question.has("why"):
        return any(not need.asked.issuperset(said.words[i] for i in m.taken) for m in said.content)
    own = (m.concepts for m in said.content if not m.mended and m.concepts.isdisjoint(asked))
    return any(kinds.get(c, "thing") == "thing" and c[0] not in "~@!" for concepts in own for c in concepts)
