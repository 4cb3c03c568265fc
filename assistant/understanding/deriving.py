"""What is worked out once for a base: a start that finds it in the cache imports nothing of what makes it."""

from __future__ import annotations

from typing import Any

from assistant.knowledge.base import Base


def derive(base: Base) -> dict[str, Any]:
    """Return everything that understanding needs of a base, as plain values."""
    from assistant.understanding.indexing import derive as index

    return index(base)
