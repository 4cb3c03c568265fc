"""The unit table of the project, read once for these tests."""

from pathlib import Path

import pytest
import yaml

from assistant.quantities.units import Units

UNITS_FILE = Path(__file__).parents[2] / "knowledge_base" / "language" / "units.yaml"


@pytest.fixture(scope="session")
def units() -> Units:
    return Units(yaml.load(UNITS_FILE.read_text("utf-8"), yaml.BaseLoader))
