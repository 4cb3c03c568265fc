"""What a listener would stumble over, each as it was once said."""

from __future__ import annotations

import pytest

from assistant.quantities.units import Units
from assistant.rendering.speech import spoken


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("It is wet; or compacted snow warmer than −15 °C; or ice.",
         "It is wet. Or compacted snow warmer than minus fifteen degrees Celsius. Or ice."),
        ("182 kt: tyre ground speed. That is within LIM 3.1, 195 kt.",
         "one hundred and eighty-two knots: tyre ground speed. That is within the limit, one hundred and ninety-five "
         "knots."),
        ("85%: share. That is outside SOP B.4, 80%.",
         "eighty-five percent: share. That is outside the limit, eighty percent."),
        ("1,680 m: distance for SOP B.4, 80%, the share.",
         "one thousand six hundred and eighty metres: distance for eighty percent, the share."),
        ("Within LIM 3.1: 190 kt is exactly at the limit, 190 kt IAS (maximum speed).",
         "Within limits: one hundred and ninety knots is exactly at the limit. The limit: maximum speed."),
        ("Outside LIM 3.1: 235 kt is 5 kt above the limit, 230 kt IAS (maximum speed for extending, VLO (extension)).",
         "Outside limits: two hundred and thirty-five knots is five knots above the maximum, two hundred and thirty "
         "knots indicated airspeed. The limit: maximum speed for extending, V L O extension."),
        ("No brakes: reverse thrust only. No autobrake. Use reverse thrust only.",
         "No brakes: reverse thrust only. No autobrake."),
        ("Use normal pedals. Use chocks only.", "Use normal pedals. Use chocks only."),
    ],
)  # fmt: skip
def test_it_is_said_plainly(written: str, said: str, units: Units, lexicon: dict[str, str]) -> None:
    assert spoken(written, units, lexicon) == said


@pytest.mark.parametrize(("written", "said"), [
    ("IAS, indicated airspeed, is the speed that is shown.", "indicated airspeed is the speed that is shown."),
    ("3 in is 76.2 mm.", "three inches is seventy-six point two millimetres."),
    ("1 in is 25.4 mm.", "one inch is twenty-five point four millimetres."),
    ("The pedals do not steer with the button held in; with the nose leg in the air; and at 110 kt or above.",
     "The pedals do not steer with the button held in, with the nose leg in the air, and at one hundred and ten knots "
     "or above."),
    ("GEAR MISMATCH (amber, horn) and GEAR DOOR (amber).", "Gear mismatch, amber, horn. Gear door, amber."),
])  # fmt: skip
def test_what_needs_the_verb_before_it_stays_with_it(
    written: str, said: str, units: Units, lexicon: dict[str, str]
) -> None:
    assert spoken(written, units, lexicon) == said
