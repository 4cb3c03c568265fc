"""Everyday words that stand for one another in an answer: a wheel that swivels castors, a shaded bar is hatched.

They are words of the language, of whatever aeroplane is spoken; what the trade calls a thing is a name of its term in
the knowledge. A word is taken for its fellows where a point looks for one of them, never to contradict anything.
"""

from __future__ import annotations

from assistant.understanding.words import stem

_GROUPS = """
    castor caster castering swivel swivels pivot pivots freewheel trail
    comes returns return reappears recurs
    moving travelling traveling travel transit movement motion linkage
    filled solid
    hatched shaded striped
    hollow outline outlined empty unfilled
    target selected chosen
    setting selected chosen
    first earlier earliest sooner soonest
    sum total combined
    add sum combine
    signs sign algebraically
    mechanical mechanically
    shoulder shoulders edge edges
    centre center middle
    aligned straight line lined
    deflate deflates flat
    design purpose intention deliberately intentionally
    underlined underline line
    fluid oil
    press push depress tap touch squeeze
    drive push force
    release let
    reverse reversers
    thrust power engines engine throttles
    reject stop abort abandon
    continue proceed go
    dark off unlit extinguished
    disagree disagrees mismatch differs conflict odds
    towed tow tug
    explode explosion explosive
    shown show displayed display
    silenced silence cancelled cancel muted mute killed kill
    beside next alongside near
    begin start starts begins commence
    prevent avoid stop
    guarded covered
    inverse reverse reversed
    inspected checked examined
    clear vacate vacated
    drain empty bleed
    flight flies fly flown
    isolated shut closed cut
    stay stays remain remains
    look looks watch watched watching eye eyes monitor
    disconnect disconnected undo undone unhook detach detached
    rearward aft backwards
    bay bays well wells
    off away
    lost gone
    moving operating operate operation lowering raising
    spin spun spins throw throws thrown fling flung sling slung shed sheds shake shakes shaken
"""


def _fellows() -> dict[str, frozenset[str]]:
    found: dict[str, frozenset[str]] = {}
    for line in _GROUPS.strip().splitlines():
        words = line.split()
        for word in words:
            found[stem(word)] = found.get(stem(word), frozenset()) | frozenset(words)
    return found


_FELLOWS = _fellows()


def fellows(word: str) -> frozenset[str]:
    """Return the words that may be meant by a word, itself among them; none where it has no fellow."""
    return frozenset() if word in _NAMES else _FELLOWS.get(stem(word), frozenset())


_NAMES = frozenset(("guard",))
"""Words that are things of their own, though their stem is that of an everyday word."""
