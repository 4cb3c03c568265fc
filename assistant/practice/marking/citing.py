"""An answer without the paragraphs that it names: whoever says where it stands in the books claims no figure.

"Within LIM 3.1: 240 kt" is an answer of 240 kt. The documents are those of the knowledge, as they are called there.
"""

from __future__ import annotations

import re

from assistant.resolving.knowing import Knowledge


def uncited(answer: str, know: Knowledge) -> str:
    """Return an answer without the numbers of paragraphs behind the names of documents; another text as it is."""
    if not re.search(r"[A-Z]{2,} [A-Z]?\.?\d", answer):
        return answer
    names = "|".join(re.escape(name) for name in know.base.documents)
    paragraph = r"(?:[A-Z]\.)?\d+(?:\.\d+)*"
    return re.sub(rf"\s*\((?:{names}) {paragraph}\)|(?<=\b)(?:{names}) {paragraph}", "", answer)
