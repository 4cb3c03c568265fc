"""Which files a later revision has outdated."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from assistant.frozen import NamedTuple
from assistant.voice.recording.tags import Origin


class Stale(NamedTuple):
    """A file that ought to be made again, and why."""

    path: str
    reason: str


def stale_files(
    origins: Iterable[tuple[str, Origin]], type_id: str, revisions: Mapping[str, str], entries: Iterable[str]
) -> list[Stale]:
    """Return the files of a type that rest on a revision that is no longer loaded, or on a record that is gone.

    origins: (path, what it was made from). revisions: those loaded, by document. entries: the records loaded.
    """
    known = frozenset(entries)
    found = []
    for path, origin in origins:
        if origin.type_id == type_id:
            reasons = [*_revised(origin, revisions), *_gone(origin, known)]
            found += [Stale(path, "; ".join(reasons))] if reasons else []
    return found


def _revised(origin: Origin, revisions: Mapping[str, str]) -> list[str]:
    changed = []
    for document, revision in origin.revisions.items():
        now = revisions.get(document)
        if now is None:
            changed.append(f"{document} is no longer loaded")
        elif now != revision:
            changed.append(f"made from {document} {revision}, now {document} {now}")
    return changed


def _gone(origin: Origin, known: frozenset[str]) -> list[str]:
    gone = [entry for entry in origin.entries if entry not in known]
    return [f"{len(gone)} of its facts {'is' if len(gone) == 1 else 'are'} no longer there"] if gone else []
