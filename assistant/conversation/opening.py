"""Open the knowledge for a conversation: from the cache where it is fresh, else compiled and kept."""

from __future__ import annotations

import os

from assistant.answering.compose import deference
from assistant.knowledge.load import Tell, load
from assistant.knowledge.location import knowledge_root
from assistant.knowledge.problems import Problem
from assistant.resolving import knowing
from assistant.understanding.deriving import derive


class Knowledge(knowing.Knowledge):
    """The knowledge with what the first screen and the prompt show of it."""

    @property
    def type_name(self) -> str:
        """The type's name as it is shown."""
        return self.base.type_info.name

    @property
    def variant_names(self) -> tuple[str, ...]:
        """Names of the variants, the base first."""
        return tuple(v.show for v in self.base.variants.values())

    @property
    def deference(self) -> str:
        """The deference to the approved documents, in one line."""
        return deference(self)

    @property
    def examples(self) -> tuple[str, ...]:
        """Questions that work."""
        return self.base.type_info.examples

    def completions(self) -> list[str]:
        """Return the names worth completing at a prompt."""
        from assistant.conversation.completions import names_worth_completing

        return names_worth_completing(self.base)


def open_knowledge(
    root: str | None = None, type_id: str | None = None, cache_dir: str | None = None, tell: Tell | None = None
) -> tuple[Knowledge | None, list[Problem]]:
    """Return the knowledge of one type, or every problem that keeps it from being used."""
    try:
        place = root or knowledge_root()
    except FileNotFoundError as error:
        return None, [Problem("knowledge base", 0, str(error), "set DOWNLOCK_KNOWLEDGE to its folder")]
    base, problems = load(place, type_id, cache_dir, derive=derive, tell=tell)
    if base is None:
        return None, problems
    return Knowledge(base, lambda name: _words(place, name)), []


def _words(root: str, name: str) -> str:
    path = os.path.join(root, "language", f"{name}.txt")
    try:
        with open(path, encoding="utf-8") as file:
            return file.read()
    except OSError:
        return ""
