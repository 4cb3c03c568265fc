"""What a conversation by ear says of itself: the first line, the signs that it waits or ends, what it did not catch."""

from __future__ import annotations

BUSY = "You seem busy. I end here, and nothing is lost. Start me again when you have time."
NOT_CAUGHT = ("I did not catch that. Say again.", "I still did not catch it. Say it in other words.")
STANDING_BY = "Standing by."
DISREGARDED = "Disregarded."
FAREWELL = "Ended."
ECHO = "The microphone hears the loudspeaker: I listen only once I have spoken. With a headset you can interrupt me."
NOTHING_YET = "Nothing has been said yet."
GO_ON = "All right. Ask when you are ready."
HOW_TO_AFFIRM = "Say affirm, or the figures one by one."
HOW_TO_CHOOSE = "Say the figures one by one, or the first, or the second."
LISTENING = "I am listening. Ask."
ASK_AGAIN = "Then say it again, the number above all."
IN_OTHER_WORDS = "Then ask it in other words."
NO_REHEARSING = "There is nothing to rehearse with here. Ask when you are ready."
LOUDNESS = "Set how loud I am at the machine itself."
CORRECTING = "To put a number right, say correction, and the number."
SAFETY = (
    "Training only. Set it up before you move off, and stop when traffic needs you. "
    "Not for use in flight or while at the controls."
)


def start_line(type_name: str, loaded: str) -> str:
    """Return what is said first: which type, what is loaded, and once what this is for."""
    return f"{type_name}. Loaded: {loaded}. {SAFETY} Ask when you are ready; say stop to end."
