"""The units and pronunciations of the project, and answers of every outcome to render."""

from collections.abc import Iterator
from pathlib import Path
from xml.etree import ElementTree

import pytest
import yaml

from assistant.answering.answer import ANSWER, CLARIFY, Answer, Citation, Number
from assistant.quantities.units import Units

KNOWLEDGE = Path(__file__).parents[2] / "knowledge_base"


def _read(name: str, key: str) -> object:
    return yaml.load((KNOWLEDGE / name).read_text("utf-8"), yaml.BaseLoader)[key]


def _lexemes(path: Path) -> Iterator[tuple[str, str, str]]:
    """What a lexicon's aliases say, read with another reader than the project's own."""
    space = "{http://www.w3.org/2005/01/pronunciation-lexicon}"
    for lexeme in ElementTree.parse(path).getroot():
        alias = lexeme.findtext(f"{space}alias")
        for grapheme in lexeme.findall(f"{space}grapheme"):
            if alias:
                yield str(grapheme.text), alias, lexeme.get("role", "")


@pytest.fixture(scope="session")
def units() -> Units:
    return Units({"units": _read("language/units.yaml", "units")})


@pytest.fixture(scope="session")
def lexicon() -> dict[str, str]:
    return {
        written: said
        for name in ("language", "aldermere_120")
        for written, said, role in _lexemes(KNOWLEDGE / name / "pronunciations.pls")
        if not role
    }


@pytest.fixture(scope="session")
def radio_words() -> dict[str, str]:
    return {
        written: said
        for written, said, role in _lexemes(KNOWLEDGE / "language" / "pronunciations.pls")
        if role == "say:radio"
    }


@pytest.fixture
def answered() -> Answer:
    return Answer(
        question="pedal limit 90kt",
        outcome=ANSWER,
        text="2.0° either way at 90 kt. Above 110 kt the pedals give no steering.",
        said="two degrees either way at ninety knots.",
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
