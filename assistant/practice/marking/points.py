"""What an answer must hold, as the marker needs it: points with their figures and words, and the whole of them."""

from __future__ import annotations

from assistant.answering.answer import Citation
from assistant.frozen import NamedTuple
from assistant.quantities.amounts import Amount
from assistant.resolving.results import CauseResult
from assistant.understanding.mentions import Reading


class Figure(NamedTuple):
    """A number that must be said. tolerance: relative, 0 for a documented figure. sense: of the bound it is.

    sense: "max" or "min" of a limit, "lower" or "higher" of a threshold, "" where it is just a figure.
    """

    value: float
    unit: str
    tolerance: float = 0.0
    sense: str = ""


class Element(NamedTuple):
    """A word or name of a point: its concepts, its plain words, how much it tells."""

    concepts: frozenset[str]
    words: tuple[str, ...]
    weight: float
    given: bool = False
    """Whether the question itself holds it, so that saying it shows nothing."""
    denied: bool = False
    """Whether it is the lack of a thing: "no steering"."""
    off: bool = False
    """Whether the point says that it is not so: "a door NOT CLOSED"."""
    group: int = 0
    """Which of the things joined by "and" in the point it belongs to: each is to be said."""


class State(NamedTuple):
    """A yes or no of a thing: which concepts name it, and whether it is there."""

    subject: frozenset[str]
    there: bool
    names: tuple[str, str] = ("", "")
    """The concepts that say that it is not there, and that it is."""
    turned: bool = False
    """Whether a question asks for its loss, so that yes is that it is not there."""
    judged: bool = False
    """Whether it is no thing that is there or not, but what is allowed or within its limit."""


class Follows(NamedTuple):
    """What follows in a band. good: whether it is as it should be. nothing: whether there is nothing to be done then.

    allowed: whether bands tell what is allowed. high: whether too much, and not too little, is not well.
    own, other: the words that tell of this band alone, and of others alone.
    more: what is to be said beside that it is allowed: "once only".
    """

    good: bool
    nothing: bool
    allowed: bool
    high: bool
    own: tuple[Element, ...]
    other: tuple[Element, ...]
    more: tuple[Element, ...]


class Point(NamedTuple):
    """One thing to say. `verdict` is "yes" or "no" where a question asks for one."""

    text: str
    figures: tuple[Figure, ...] = ()
    elements: tuple[Element, ...] = ()
    verdict: str = ""
    negated: bool = False
    state: State | None = None
    figures_suffice: bool = False
    """Whether the figures say it all: the words only tell of what they are."""
    labels: tuple[Element, ...] = ()
    """Words of the part of the question that it answers, which tell it from the other parts' points."""
    kept: bool = False
    """Whether it is to be said though the question holds its words."""
    case: Figure | None = None
    """The number of the question in whose case it holds, which need not be said again."""
    any_figure: bool = False
    """Whether one of the figures is enough: a rule in percent or as the figure that it comes to."""
    either: bool = False
    """Whether the figures and the words each say it: "above 250 °C" for "above the maximum to begin take-off"."""
    optional: bool = False
    """Whether it need not be said, and may not be contradicted: the reason of a yes or no."""
    which: str = ""
    """Which of two figures counts, where it is asked: "less", "more", "first" or "last"."""
    side: str = ""
    """The side that the figure is to, which its sign says too: "left" or "right"."""
    chosen: bool = False
    """Whether the question names it as one of two, so that to say it is to choose it."""
    way: frozenset[tuple[str, str]] = frozenset()
    """The inputs and their values that lead to a result only together, where it is a way there."""


class Need(NamedTuple):
    """All that a question asks for, and what may be said besides. `ordered`: the points follow one another.

    alike: what it asks for where it is read as nearly in another way.
    """

    question: Reading
    points: tuple[Point, ...]
    ordered: bool = False
    sequence: bool = True
    """Whether the order of figures counts; not where each part of a question asks for one of the steps."""
    allowed: tuple[Amount, ...] = ()
    extra: tuple[Figure, ...] = ()
    """Other true figures, of the working or of the same record."""
    former: tuple[Figure, ...] = ()
    elsewhere: tuple[tuple[str, Figure], ...] = ()
    """Figures of other variants, each with the concept by which the answer must name it."""
    follows: Follows | None = None
    """What follows from a reading held against bands, where that is asked for."""
    differing: frozenset[str] = frozenset()
    """The variants on which what is held against a limit is judged otherwise."""
    others: tuple[Point, ...] = ()
    """What would be right of another case: another band's action, another mode."""
    denials: tuple[Point, ...] = ()
    """What other statements on the same subject deny: "does not prove that the brakes are working"."""
    row: tuple[Point, ...] = ()
    """What the state asked about holds beside what is asked for, and what would be another state's."""
    said: frozenset[str] = frozenset()
    """Concepts of the full answer: naming them is no contradiction."""
    besides: frozenset[str] = frozenset()
    """Concepts that statements say together with the results asked for: true of them, though nobody asked."""
    unshown: frozenset[str] = frozenset()
    """The labels that do not show in the state that is asked about."""
    expected: str = ""
    sources: tuple[Citation, ...] = ()
    change: bool = False
    within: bool | None = None
    """Where a reading is judged: whether it is within its limit."""
    standing: tuple[Figure, ...] = ()
    """Where a reading that is judged stands: itself, and as a share of what it is measured by."""
    edges: tuple[Figure, ...] = ()
    """Of a reading that is held against bands: the edge that decides, as the rule has it and as it comes to."""
    unanswered: bool = False
    """Whether a part of the question is answered by nothing, so that no answer can be seen to be whole."""
    loss: bool = False
    """Whether it is asked what is lost, so that a bare name says that it is."""
    polar: bool = False
    cause: CauseResult | None = None
    """The result that is asked for what leads to it; its ways are points."""
    alike: tuple[Need, ...] = ()
    one_way: bool = False
    """Whether one of the ways is asked for."""
    asked: frozenset[str] = frozenset()
    """The plain words of the question."""
    also_said: tuple[tuple[str, str], ...] = ()
    """Points, each with other words in which it is rightly said."""

    @property
    def words(self) -> frozenset[str]:
        """The plain words of the points."""
        return frozenset(w for p in self.points for e in p.elements for w in e.words)

    @property
    def known(self) -> frozenset[str]:
        """The concepts of the points, of the question and of its full answer."""
        own = frozenset(c for p in self.points for e in p.elements for c in e.concepts)
        return own | self.question.concepts | self.said
