"""A conversation as the terminal holds it: opened once, then turn after turn, each from the last context."""

from __future__ import annotations

import gc
import os
import sys

from assistant.answering.answer import DECLINE, Answer
from assistant.conversation.context import Context
from assistant.conversation.opening import Knowledge, open_knowledge
from assistant.conversation.turn import answer_turn
from assistant.knowledge.load import types
from assistant.knowledge.location import OVERRIDE
from assistant.knowledge.problems import Problem
from assistant.rendering.text import clean
from assistant.terminal.arguments import unknown
from assistant.terminal.disputes import Disputes, disputes_told, keep_disputes
from assistant.terminal.options import Parsed, UsageProblem
from assistant.terminal.screen import complain, is_terminal

FAULT = "This question met a fault in the program and is not answered."
NOT_KEPT = "It could not be kept in a file, and holds for this conversation only."


class BrokenKnowledge(Exception):
    """The knowledge base cannot be used; holds every problem."""

    def __init__(self, problems: list[Problem]) -> None:
        super().__init__(f"{len(problems)} problems")
        self.problems = problems


class Session:
    """Knowledge and the context of a conversation with it.

    keeps_disputes: whether records set aside are remembered for later conversations too.
    """

    def __init__(
        self, knowledge: Knowledge, variant: str = "", disputed: Disputes = (), keeps_disputes: bool = False
    ) -> None:
        self.knowledge = knowledge
        self.variant = variant
        """Id of the variant that questions are about when they name none; empty for the base."""
        self._keeps_disputes = keeps_disputes
        self._kept = () if keeps_disputes else disputed
        self._context = Context(variant=variant, disputed=disputed, forgets=not keeps_disputes, kept=self._kept)

    def answer(self, text: str) -> Answer:
        """Return the answer to a turn, and remember the turn."""
        before = self._context.disputed
        try:
            answer, self._context = answer_turn(text, self._context, self.knowledge)
        except Exception as fault:  # a fault at one question must not cost those after it
            sys.stderr.write(f"downlock: {type(fault).__name__} at: {' '.join(clean(text).split())[:200]}\n")
            return self.unanswered(text, FAULT)
        if self._keeps_disputes and self._context.disputed != before and not self._keep():
            return answer._replace(cautions=(*answer.cautions, NOT_KEPT))
        return answer

    def _keep(self) -> bool:
        return keep_disputes(self.knowledge.base.type_info.id, self._context.disputed)

    @property
    def context(self) -> Context:
        """What the conversation remembers."""
        return self._context

    def take(self, context: Context) -> None:
        """Go on from a context: that after a turn which was answered elsewhere."""
        self._context = context

    def start_afresh(self) -> None:
        """Forget every turn, and what was set aside in them; what earlier conversations left stays so."""
        forgets = not self._keeps_disputes
        self._context = Context(variant=self.variant, disputed=self._kept, forgets=forgets, kept=self._kept)

    def unanswered(self, question: str, reason: str) -> Answer:
        """Return the decline of what is no question at all."""
        return Answer(question, DECLINE, reason, reason, cautions=(self.knowledge.deference,))


def open_session(parsed: Parsed, disputes: bool = False, keeps: bool = False, learnt: bool = False) -> Session:
    """Return a session with what the options name. Raises UsageProblem and BrokenKnowledge.

    disputes: know what was set aside in former conversations. keeps: remember it for later ones. learnt: it is to be
    learnt, so that a base of somebody's own is looked through for figures that do not agree, as `check` does.
    """
    root, type_id = parsed.values.get("--knowledge"), parsed.values.get("--type")
    check_place(root, type_id)
    knowledge, problems = open_knowledge(root, type_id, tell=_tell)
    if knowledge is None:
        raise BrokenKnowledge(problems)
    if learnt and (root or os.environ.get(OVERRIDE)):
        _need_agreement(knowledge)
    gc.freeze()  # it lives as long as the process: no need to look through it again and again
    variant = _variant(parsed.values.get("--variant", ""), knowledge)
    disputed, damage = disputes_told(knowledge.base.type_info.id) if disputes else ((), "")
    if damage:
        complain(clean(damage), parsed.width)
    return Session(knowledge, variant, disputed, keeps)


def _need_agreement(knowledge: Knowledge) -> None:
    """Raise BrokenKnowledge where two figures of a base do not agree: nobody is to learn one of them."""
    from assistant.knowledge.figure_checks import contradictions

    if problems := contradictions(knowledge.base):
        raise BrokenKnowledge(problems)


def _tell(what: str, path: str) -> None:
    """Say at a terminal that the knowledge base is compiled, and anywhere that it could not be kept."""
    if what == "not kept":
        folder = clean(os.path.dirname(path))
        complain(f"the knowledge base is compiled at each start, as it cannot be kept in {folder}; set DOWNLOCK_CACHE")
    elif is_terminal(sys.stderr):
        complain("compiling the knowledge base, once until it changes; this takes some seconds")


def check_place(root: str | None, type_id: str | None) -> None:
    """Raise UsageProblem for a folder or a type that does not exist."""
    if root is not None and not os.path.isdir(root):
        raise UsageProblem(f"there is no folder {root}")
    if type_id is None:
        return
    from assistant.knowledge.location import knowledge_root

    known = types(root or knowledge_root())
    if known and type_id not in known:
        raise unknown("type", type_id, known)


def _variant(name: str, knowledge: Knowledge) -> str:
    """The id of the variant that a name of any of its forms stands for."""
    wanted = name.casefold()
    if not wanted:
        return ""
    for variant in knowledge.base.variants.values():
        if wanted in (each.casefold() for each in (variant.id, variant.show, *variant.names)):
            return variant.id
    raise unknown("variant", name, knowledge.variant_names)
