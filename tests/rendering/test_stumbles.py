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


@pytest.mark.parametrize(("written", "said"), [
    ("It reads “egt” and “tread depth”.", "It reads E G T and tread depth."),
    ("No “discs”, no “mm”, no “de”.", "No discs, no millimetres, no de."),
    ("HARD 2.72 m/s², FIRM 1.19 m/s².", "Hard two point seven two metres per second squared, firm one point one nine "
     "metres per second squared."),
    ("See CS 25.745 and LIM 3.1 of it.", "See C S twenty-five point seven four five and limitations three point one of "
     "it."),
    ("90 kt ground speed: ground speed above which it is dead.", "ninety knots: ground speed above which it is dead."),
    ("0.7 (70%): share that the pump takes.", "seventy percent: share that the pump takes."),
    ("the speeds are indicated airspeeds (IAS).", "the speeds are indicated airspeeds."),
    ("from 0.7 to 1.5 kJ/(kg·K)", "from zero point seven to one point five kilojoules per kilogram and kelvin."),
    ("8 √p (p in psi).", "eight times the square root of the pressure. The pressure in p s i."),
    ("said ZE-RO, FOW-ER, SEV-EN, NIN-ER", "said zero, fower, seven, niner."),
    ("0.5 h is 9.5 h below it; 1.25 h; 0.33 h; 2 h.", "thirty minutes is nine hours and thirty minutes below it. one "
     "hour and fifteen minutes. zero point three three hours. two hours."),
])  # fmt: skip
def test_signs_and_figures_are_said_as_what_they_stand_for(
    written: str, said: str, units: Units, lexicon: dict[str, str]
) -> None:
    assert spoken(written, units, lexicon) == said


@pytest.mark.parametrize(("written", "said"), [
    ("250 °C: hottest. On the 120L: 230 °C. Formerly 280 °C; changed with LIM 7.", "two hundred and fifty degrees "
     "Celsius: hottest. Formerly two hundred and eighty degrees Celsius. On the one twenty L: two hundred and thirty "
     "degrees Celsius."),
    ("No, it is 9 m. On the 120L it is 8 m. Formerly 7 m.", "No, it is nine metres. Formerly seven metres. On the one "
     "twenty L it is eight metres."),
    ("On the ground, fans on. Formerly 7 m.", "On the ground, fans on. Formerly seven metres."),
])  # fmt: skip
def test_a_former_figure_is_told_beside_its_own(
    written: str, said: str, units: Units, lexicon: dict[str, str]
) -> None:
    assert spoken(written, units, lexicon) == said


@pytest.mark.parametrize(("written", "said"), [
    ("Outside LIM 3.1: 9 m: call. Rule: Above 5.5 m, call. Within LIM 3.2: 5 kt is 2 kt below the limit, 7 kt (taxi).",
     "Outside limits. nine metres: call. Within limits: five knots is two knots below the maximum, seven knots. The "
     "limit: taxi."),
    ("With pump 1 lost, no brakes. Use chocks. With pump 2 lost, some brakes. Use chocks.",
     "With pump one lost, no brakes. Use chocks. With pump two lost, some brakes. Use chocks."),
    ("With pump 1 lost: The wheels castor: no steering.", "With pump one lost, the wheels castor: no steering."),
    ("That always goes with this: no brakes: reverse only.", "That always goes with this: no brakes, reverse only."),
])  # fmt: skip
def test_nothing_is_lost_of_a_case_or_a_second_verdict(
    written: str, said: str, units: Units, lexicon: dict[str, str]
) -> None:
    assert spoken(written, units, lexicon) == said


@pytest.mark.parametrize(("written", "said"), [
    ("Two modes: SOFT (pump 1) and HARDEST (gas).", "Two modes: soft, pump one. Hardest, gas."),
    ("It waits for 5 s (9 s once it is pulled).", "It waits for five seconds, or nine seconds once it is pulled."),
    ("The orders add with their signs (left positive), and that is it.", "The orders add with their signs, left "
     "positive, and that is it."),
    ("From 80 kt up (ground speed), it is so.", "From eighty knots up ground speed, it is so."),
])  # fmt: skip
def test_brackets_stay_with_what_they_are_of(
    written: str, said: str, units: Units, lexicon: dict[str, str]
) -> None:
    assert spoken(written, units, lexicon) == said


@pytest.mark.parametrize(("written", "said"), [
    ("Up 230 kt, down 205 kt, gear down and locked 255 kt or Mach 0.60 whichever is lower, freely 190 kt.",
     "Up, two hundred and thirty knots. Down, two hundred and five knots. Gear down and locked, two hundred and "
     "fifty-five knots or Mach zero point six zero whichever is lower. Freely, one hundred and ninety knots."),
    ("9 s, slow, braking after 3 s; 8 s.", "nine seconds, slow, braking after three seconds. eight seconds."),
    ("199 kt: the lower one. The Mach number alone 210 kt. It is so.", "one hundred and ninety-nine knots: the lower "
     "one. The Mach number alone, two hundred and ten knots. It is so."),
    ("Ask for chocks; with the chocks in, let go.", "Ask for chocks. With the chocks in, let go."),
    ("Not here; with flaps down it warns.", "Not here. With flaps down it warns."),
    ("Free fall: 1. Slow down; 2. Pull it; 3. Wait 5 s.", "Free fall: three steps. one, Slow down. two, Pull it. "
     "three, Wait five seconds."),
    ("Which one? For example: 1. this; 2. that.", "Which one? For example. one, this. two, that."),
])  # fmt: skip
def test_pauses_stand_where_they_part_things(
    written: str, said: str, units: Units, lexicon: dict[str, str]
) -> None:
    assert spoken(written, units, lexicon) == said


@pytest.mark.parametrize(("written", "said"), [
    ("Since 1986 and 2017, not 2007 or 1900.", "Since nineteen eighty-six and twenty seventeen, not two thousand and "
     "seven or one thousand nine hundred."),
    ("Doc 4754, Notice 40-3, memorandum 71930, ISO 8007.", "Doc forty-seven fifty-four, Notice forty dash three, "
     "memorandum seven one nine three zero, I S O eight zero zero seven."),
    ("Manual, 4-2-7.", "Manual, four two seven."),
    ("4,754 kg or 4754 kg", "four thousand seven hundred and fifty-four kilograms or four thousand seven hundred and "
     "fifty-four kilograms."),
    ("Handbook, ch. 9; Annex 10 Volume II.", "Handbook, chapter nine. Annex ten Volume two."),
    ("45 kt: speed at which it steers, about.", "About forty-five knots: speed at which it steers."),
])  # fmt: skip
def test_numbers_that_name_something_are_read_as_people_read_them(
    written: str, said: str, units: Units, lexicon: dict[str, str]
) -> None:
    assert spoken(written, units, lexicon) == said


def test_the_number_of_a_step_is_no_number_of_the_radio(
    units: Units, lexicon: dict[str, str], radio_words: dict[str, str]
) -> None:
    said = spoken("Stop: 1. Wait 5 s; 2. Lever DN; 3. Go 30 kt.", units, lexicon, digits=True, radio=radio_words)

    assert said == "Stop: three steps. one, Wait fife seconds. two, Lever down. three, Go tree zero knots."


@pytest.mark.parametrize(("written", "said"), [
    ("Lever set for more than 3 min 150 °C at most.", "Lever set for more than three minutes, one hundred and fifty "
     "degrees Celsius at most."),
    ("after 2 h 30 min", "after two hours thirty minutes."),
    ("0.5 in (12.7 mm) of it; about 3 in.", "zero point five inches, or twelve point seven millimetres, of it. About "
     "three inches."),
    ("2 in each leg, 3 in, 4 in the bay", "two in each leg, three in, four in the bay."),
    ("“And at 40 kt?” changes that, “where is it said” tells the page.", "And at forty knots, changes that, where is "
     "it said, tells the page."),
    ("The short one has length 9.5 m, first pressure 205 psi, mass 54,000 kg, and 230 °C to begin.",
     "The short one has length nine point five metres. First pressure, two hundred and five p s i. Mass, fifty-four "
     "thousand kilograms, and two hundred and thirty degrees Celsius to begin."),
])  # fmt: skip
def test_amounts_and_quotations_end_where_they_end(
    written: str, said: str, units: Units, lexicon: dict[str, str]
) -> None:
    assert spoken(written, units, lexicon) == said
