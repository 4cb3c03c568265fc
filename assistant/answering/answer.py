"""The one record that everything downstream sees: what was answered, on what, and what is still needed."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from assistant.frozen import NamedTuple

ANSWER = "answer"
CLARIFY = "clarify"
DECLINE = "decline"


class Number(NamedTuple):
    """A number of an answer at full precision: of what, how much, in which unit."""

    quantity: str
    value: float
    unit: str


class Citation(NamedTuple):
    """A paragraph that an answer rests on, with the revision loaded."""

    document: str
    paragraph: str
    revision: str
    effective: str


class Saying(NamedTuple):
    """What is to be said aloud, still as it is written, and how words are made of it when somebody listens."""

    text: str
    knowledge: Any
    how: Callable[[str, Any], str]


class Answer(NamedTuple):
    """What the assistant says to one question.

    outcome: ANSWER, CLARIFY (something is missing or two things fit) or DECLINE.
    text: starts with the fact; rounded for display. said: the same for the ear, or what makes it when it is wanted.
    values: `values[0]` is the number asked for; of a limit check the limit, then the value given, then the margin.
    working: how a number came about, with units. entry: the id of the record that answered.
    needs: names of missing inputs. choices: what may be chosen, in order, each a question that can be asked.
    cautions: always the deference to the approved documents, then what belongs to this answer.
    understood: how the question was read, for --explain.
    aloud: what of the text is said in other words, each as it is written and as it is best heard.
    """

    question: str
    outcome: str
    text: str
    said: str | Saying = ""
    values: tuple[Number, ...] = ()
    working: str = ""
    sources: tuple[Citation, ...] = ()
    cautions: tuple[str, ...] = ()
    entry: str = ""
    needs: tuple[str, ...] = ()
    choices: tuple[str, ...] = ()
    variant: str = ""
    understood: dict[str, Any] = {}  # noqa: RUF012  read only
    aloud: tuple[tuple[str, str], ...] = ()

    @property
    def by_ear(self) -> str:
        """The text with what it says in other words for a listener, still as it is written."""
        text = self.text
        for written, heard in self.aloud:
            text = text.replace(written, heard, 1)
        return text

    @property
    def spoken(self) -> str:
        """What is said of the answer aloud. Most answers are only read: the words are made at each call."""
        said = self.said
        return said if isinstance(said, str) else said.how(said.text, said.knowledge)
