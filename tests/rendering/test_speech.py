"""Every way in which an answer is written has its way of being said."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.quantities.units import Units
from assistant.rendering.speech import spoken

IN_FULL = [
    ("68° either way at 15 kt", "sixty-eight degrees either way at fifteen knots."),
    ("250 °C", "two hundred and fifty degrees Celsius."),
    ("−15 °C", "minus fifteen degrees Celsius."),
    ("at -5 °C", "at minus five degrees Celsius."),
    ("M 0.60", "Mach zero point six."),
    ("Mach 0.60", "Mach zero point six."),
    ("Above M.60 or M0.60", "Above Mach zero point six or Mach zero point six."),
    ("M4", "M four."),
    ("3,000 psi", "three thousand p s i."),
    ("1,400 to 2,000 psi", "one thousand four hundred to two thousand p s i."),
    ("60–110 mm", "sixty to one hundred and ten millimetres."),
    ("15-25 min", "fifteen to twenty-five minutes."),
    ("1.4 m/s²", "one point four metres per second squared."),
    ("22.4 MJ", "twenty-two point four megajoules."),
    ("85% of it", "eighty-five percent of it."),
    ("0.1", "zero point one."),
    ("factor 1.6", "factor one point six."),
    ("1 kt and 2 kt", "one knot and two knots."),
    ("3°/s", "three degrees per second."),
    ("56,000 kg", "fifty-six thousand kilograms."),
    ("1,300 J/(kg·K)", "one thousand three hundred joules per kilogram and kelvin."),
    ("2 in each leg", "two in each leg."),
    ("System 2, 6 applications", "System two, six applications."),
    ("VLE, VLO, RTO, IAS", "V L E, V L O, R T O, indicated airspeed."),
    ("AOM, LIM, ABN, SOP", "A O M, limitations, abnormal checklist, S O P."),
    ("lever to DN", "lever to down."),
    ("ANTI-SKID OFF, GEAR MISMATCH", "anti-skid off, gear mismatch."),
    ("CS-25", "C S twenty-five."),
    ("8° → 0°", "eight degrees to zero degrees."),
    ("UP/DN", "up or down."),
    ("the 120L", "the one twenty L."),
    ("in kt and psi", "in knots and p s i."),
]


@pytest.mark.parametrize(("written", "said"), IN_FULL)
def test_in_full(written: str, said: str, units: Units, lexicon: dict[str, str]) -> None:
    assert spoken(written, units, lexicon) == said


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("VLE is 255 kt", "V L E is two five five knots."),
        ("Mach 0.60", "Mach zero decimal six zero."),
        ("20,000 ft", "two zero thousand feet."),
        ("System 2", "System two."),
    ],
)
def test_digit_by_digit(written: str, said: str, units: Units, lexicon: dict[str, str]) -> None:
    assert spoken(written, units, lexicon, digits=True) == said


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("It is amber (LIM 3.2).", "It is amber."),
        ("a ((b) c) d [e]", "a d."),
        ("the maximum of LIM 3.2 (68°).", "the maximum."),
        ("Outside LIM 3.2: 275 °C", "Outside limits: two hundred and seventy-five degrees Celsius."),
        ("until LIM 3.2 is met", "until limitations three point two is met."),
        ("AOM 32.50.3, revision 7", "A O M thirty-two point fifty point three, revision seven."),
        ("SOP B.5", "S O P B point five."),
        ("STEADY 1.4 m/s²", "steady one point four metres per second squared."),
    ],
)
def test_references_are_said_only_where_they_are_the_matter(
    written: str, said: str, units: Units, lexicon: dict[str, str]
) -> None:
    assert spoken(written, units, lexicon) == said


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("fans on; wait", "fans on. wait."),
        ("fans on – wait", "fans on. wait."),
        ("fans on — wait", "fans on. wait."),
        ("1. Lever UP\n2. Wait 15 s;\n3. Lever DN.", "Lever up. Wait fifteen seconds. Lever down."),
        ("- one\n- two", "one. two."),
        ("4. \nA fact", "four. A fact."),
        ("“on ground”", "on ground."),
        ("Which one?", "Which one?"),
        ("effective 2026-08-01", "effective one August twenty twenty-six."),
        ("", ""),
    ],
)
def test_sentences(written: str, said: str, units: Units, lexicon: dict[str, str]) -> None:
    assert spoken(written, units, lexicon) == said


def test_an_overlong_number_is_said_figure_by_figure(units: Units) -> None:
    assert spoken("9" * 400, units, {}) == " ".join(["nine"] * 400) + "."


@given(text=st.text(alphabet="aM MD.,;:()[]–—-−/°%√→0123456789ktpsi\n", max_size=60))
def test_nothing_for_the_eye_is_left(text: str, units: Units, lexicon: dict[str, str]) -> None:
    said = spoken(text, units, lexicon)

    assert not re.search(r"[0-9()\[\];–—/°%→]", said)
    assert not said or said[-1] in ".?!"
