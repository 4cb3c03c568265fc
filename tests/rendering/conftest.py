"""The units and pronunciations of the project, and answers of every outcome to render."""

from pathlib import Path

import pytest
import yaml

from assistant.answering.answer import ANSWER, CLARIFY, Answer, Citation, Number
from assistant.quantities.units import Units

KNOWLEDGE = Path(__file__).parents[2] / "knowledge_base"


def _read(name: str, key: str) -> object:
    return yaml.load((KNOWLEDGE / name).read_text("utf-8"), yaml.BaseLoader)[key]


@pytest.fixture(scope="session")
def units() -> Units:
    return Units({"units": _read("language/units.yaml", "units")})


@pytest.fixture(scope="session")
def lexicon() -> dict[str, str]:
    shared = _read("language/pronunciations.yaml", "pronunciations")
    own = _read("aldermere_120/pronunciations.yaml", "pronunciations")
    assert isinstance(shared, dict) and isinstance(own, dict)
    return {**shared, **own}


@pytest.fixture
def answered() -> Answer:
    return Answer(
        question="pedal limit 90kt",
        outcome=ANSWER,
        text="2.0° either way at 90 kt. Above 110 kt the pedals give no steering.",
        spoken="two degrees either way at ninety knots.",
        values=(Number("angle", 2.0, "deg"),),
        working="8° at 30 kt, straight to 0° at 110 kt",
        sources=(Citation("AOM", "32.50.3", "7", "2026-08-01"),),
        cautions=("Training only. Loaded: AOM 7. Check your library.", "The rudder is not in it."),
        entry="pedal-limit",
        variant="120",
        understood={"words": "pedal limit 90 kt", "amounts": [{"value": 90.0, "unit": "kt"}]},
    )


@pytest.fixture
def asked_back() -> Answer:
    return Answer(
        question="vlo",
        outcome=CLARIFY,
        text="Which do you mean? 1. VLO extension; 2. VLO retraction.",
        choices=("VLO extension", "VLO retraction"),
        cautions=("Training only. Loaded: AOM 7. Check your library.",),
    )
