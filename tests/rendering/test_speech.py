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
    ("M 0.60", "Mach zero point six zero."),
    ("Mach 0.60", "Mach zero point six zero."),
    ("Above M.60 or M0.60", "Above Mach zero point six zero or Mach zero point six zero."),
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
    ("ANTI-SKID OFF, GEAR MISMATCH", "Anti-skid off, gear mismatch."),
    ("CS-25", "C S twenty-five."),
    ("8° → 0°", "eight degrees to zero degrees."),
    ("UP/DN", "Up or down."),
    ("the 120L", "the one twenty L."),
    (
        "on the 120, not the 120 °C or the 120.5",
        "on the one twenty, not the one hundred and twenty degrees Celsius or the one hundred and twenty point five.",
    ),
    ("a 180° turn, 180° right", "a one hundred and eighty degree turn, one hundred and eighty degrees right."),
    ("9.0 √p", "nine times the square root of the pressure."),
    ("1/8 in and 3/4", "one eighth of an inch and three quarters."),
    ("in kt and psi", "in knots and p s i."),
    ("r = base / tan δ + b", "r equals base divided by the tangent of delta plus b."),
    ("KE = 0.5 W V² / N, α and Δ", "K E equals zero point five W V squared divided by N, alpha and delta."),
    ("UTC, TODR and LDB, but TOW PIN", "U T C, T O D R and L D B, but tow pin."),
    ("about 1/10 inch, 2/3 or 5/9", "about one tenth of an inch, two thirds or five ninths."),
    ("not when they are 6/6/6, but 4/3/3", "not when they are six, six, six, but four, three, three."),
    ("System 1/2 lost", "System one and two lost."),
    ("on 15/11/2026", "on fifteen November twenty twenty-six."),
    ("the p/n", "the P N."),
    ("90 kt/h and 2 m/s", "ninety knots per hour and two metres per second."),
    ("10:30 UTC, pump No. 2, FL190", "ten thirty U T C, pump number two, flight level one hundred and ninety."),
    ("part 121", "part one twenty-one."),
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
        ("LIM 3.1, revision 7", "limitations three decimal one, revision seven."),
    ],
)
def test_digit_by_digit(written: str, said: str, units: Units, lexicon: dict[str, str]) -> None:
    assert spoken(written, units, lexicon, digits=True) == said


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("It is amber (LIM 3.2).", "It is amber."),
        ("a ((b) c) d [e]", "a d."),
        ("the maximum of LIM 3.2 (68°).", "the maximum, sixty-eight degrees."),
        ("Outside LIM 3.2: 275 °C", "Outside limits: two hundred and seventy-five degrees Celsius."),
        ("until LIM 3.2 is met", "until the limit is met."),
        ("AOM 32.50.3, revision 7", "A O M thirty-two point fifty point three, revision seven."),
        ("It holds (AOM 32.00.5, LIM 3.2).", "It holds."),
        ("AOM 32.05.7, revision 7", "A O M thirty-two point zero five point seven, revision seven."),
        ("ABN 32.13, revision 5 (Checklist, part 32)", "abnormal checklist thirty-two point thirteen, revision five."),
        (
            "It is amber (ABN 32.1 M4, LIM 3.2); now 205 kt; changed with LIM 7.",
            "It is amber. Now two hundred and five knots.",
        ),
        ("now 10 kt, formerly 12 kt (changed with SOP 12).", "now ten knots, formerly twelve knots."),
        ("SOP B.5", "S O P B point five."),
        ("STEADY 1.4 m/s²", "Steady one point four metres per second squared."),
    ],
)
def test_references_are_said_only_where_they_are_the_matter(
    written: str, said: str, units: Units, lexicon: dict[str, str]
) -> None:
    assert spoken(written, units, lexicon) == said


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("VLO (extension)", "V L O extension."),
        ("BRAKE HEAT (amber): fans on", "Brake heat, amber: fans on."),
        ("At 40 kt (ground speed), it is 7°.", "At forty knots ground speed, it is seven degrees."),
        ("It goes to ALTERNATE (or EMERGENCY) by itself.", "It goes to alternate, or emergency, by itself."),
        ("the controller failed (STEER LOST), or lost", "the controller failed, steer lost, or lost."),
        ("It is (a) red, (°) or (b) dark", "It is red, or dark."),
    ],
)
def test_brackets_are_asides(written: str, said: str, units: Units, lexicon: dict[str, str]) -> None:
    assert spoken(written, units, lexicon) == said


@pytest.mark.parametrize(
    ("verdict", "side", "bound"),
    [
        ("Outside", "above", "maximum"),
        ("Within", "below", "maximum"),
        ("Within", "above", "minimum"),
        ("Outside", "below", "minimum"),
    ],
)
def test_a_margin_says_to_which_limit(
    verdict: str, side: str, bound: str, units: Units, lexicon: dict[str, str]
) -> None:
    said = spoken(f"{verdict} LIM 3.1: 9.5 kt is 5.5 kt {side} the limit, 15 kt (taxi, straight).", units, lexicon)

    assert said == (
        f"{verdict} limits: nine point five knots is five point five knots {side} the {bound}, fifteen knots. "
        "The limit: taxi, straight."
    )


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("Parking: 1. Chocks in; 2. Wait 5 s.", "Parking: two steps. one, Chocks in. two, Wait five seconds."),
        ("Which do you mean? 1. one; 2. other.", "Which do you mean? one, one. two, other."),
        ("On the ground: 1. Fans on.", "On the ground: Fans on."),
        ("No braking: 1. (memory) Reverse; 2. (memory) Off.", "No braking: two memory items. one, Reverse. two, Off."),
        (
            "Heat: 1. (memory) Reverse; 2. Off: at once.",
            "Heat: two steps. one, from memory, Reverse. two, Off: at once.",
        ),
        ("It runs on System 1. No pump is in it.", "It runs on System one. No pump is in it."),
        ("With System 1 lost; System 2. The pump", "With System one lost. System two. The pump."),
        (
            "9 m. Nose wheels 22 m; inner main legs 9 m.",
            "nine metres. Nose wheels, twenty-two metres. Inner main legs, nine metres.",
        ),
        ("It takes 9 s; Wait for 3 s.", "It takes nine seconds. Wait for three seconds."),
        (
            "Outside: a speed, 70 kt: below 100 kt: reject.",
            "Outside. A speed, seventy knots. Below one hundred knots: reject.",
        ),
    ],
)
def test_items_are_heard_apart(written: str, said: str, units: Units, lexicon: dict[str, str]) -> None:
    assert spoken(written, units, lexicon) == said


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("VLE is 255 kt", "V L E is two fife fife knots."),
        ("Mach 0.39", "Mach zero decimal tree niner."),
        ("13,500 ft and 400 ft", "one tree tousand fife hundred feet and fower hundred feet."),
        ("three legs, System 3", "three legs, System tree."),
    ],
)
def test_words_of_the_radio(
    written: str, said: str, units: Units, lexicon: dict[str, str], radio_words: dict[str, str]
) -> None:
    assert spoken(written, units, lexicon, digits=True, radio=radio_words) == said


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("1/8 in (3 mm) of slush", "one eighth of an inch, or three millimetres, of slush."),
        ("29 mph (25 kt) is fast", "twenty-nine miles per hour, or twenty-five knots, is fast."),
        ("a wet runway (damp, or with water), or ice", "a wet runway, that is damp, or with water, or ice."),
        ("PUMP LOST (red, horn), and fire (amber)", "Pump lost, red, horn, and fire amber."),
        ("15 m for C (18 m if it is longer or so), 18 m for D", "fifteen metres for C, eighteen metres if it is longer "
         "or so, eighteen metres for D."),
        ("Switch off (in the second mode it does only this).", "Switch off. In the second mode it does only this."),
    ],
)
def test_an_aside_is_joined_as_it_belongs(written: str, said: str, units: Units, lexicon: dict[str, str]) -> None:
    assert spoken(written, units, lexicon) == said


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("It is so. It is so. It is not.", "It is so. It is not."),
        ("Assumed: nine times the root: a rotating tyre.", "Assumed: nine times the root, a rotating tyre."),
        ("It is steering. Value from memory, check the source.", "It is steering. Value from memory, not checked."),
        (
            "At most 5%. The 5% is from memory, check the source.",
            "At most five percent. The five percent is from memory, not checked.",
        ),
        (
            "9 m. Values other than C are from memory, check the source.",
            "nine metres. Values other than C are from memory, not checked.",
        ),
        (
            "Settings of the lever: SOFT 1.4 m/s², HARD 2.3 m/s², FULL 3.2 m/s², and off, which gives none at all.",
            "Settings of the lever: soft, one point four metres per second squared. "
            "Hard, two point three metres per second squared. "
            "Full, three point two metres per second squared, and off, which gives none at all.",
        ),
        (
            "Within LIM 3.1: 50 °F (10 °C) is 20 °C below the limit, 30 °C, which is so at 5 kt, at 9 kt and at 20 kt.",
            "Within limits: fifty degrees Fahrenheit, or ten degrees Celsius, is twenty degrees Celsius below the "
            "maximum, thirty degrees Celsius, which is so at five knots, at nine knots and at twenty knots.",
        ),
        (
            "Outside LIM 3.1: 20 mm is 7 mm above the limit, 13 mm (depth above which it is cycled).",
            "Outside limits: twenty millimetres is seven millimetres above the limit, thirteen millimetres. "
            "The limit: depth above which it is cycled.",
        ),
    ],
)
def test_what_is_lost_on_a_listener_is_said_otherwise(
    written: str, said: str, units: Units, lexicon: dict[str, str]
) -> None:
    assert spoken(written, units, lexicon) == said


LABELS = {"SOFT": "soft mode", "HARD": "the hard setting", "PUMP LOST": "the caption pump lost"}


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("It works in SOFT.", "It works in soft mode."),
        ("It works in SOFT braking.", "It works in soft braking."),
        ("the target of HARD", "the target of the hard setting."),
        ("With PUMP LOST the steering is off.", "With the caption pump lost, the steering is off."),
        ("The colour of PUMP LOST is amber.", "The colour of the caption pump lost is amber."),
        ("PUMP LOST shows.", "Pump lost shows."),
        ("the level at which PUMP LOST lights", "the level at which the caption pump lost lights."),
        ("PUMP LOST lights at: now 5%, formerly 6%.", "The caption pump lost lights at: now five percent, formerly six "
         "percent."),
        ("the pump failed (PUMP LOST), or", "the pump failed, with the caption pump lost, or."),
        ("It takes SOFT away, and forces SOFT (or HARD).", "It takes soft mode away, and forces soft mode, or hard."),
        ("White bars: SOFT. Other bars: SOFT or HARD.", "White bars: soft mode. Other bars: soft mode or hard."),
        ("SOFT braking: SOFT pressure.", "Soft braking: soft pressure."),
        ("SOFT has no pump, so HARD is lost.", "Soft mode has no pump, so the hard setting is lost."),
    ],
)
def test_a_label_is_said_with_its_kind(written: str, said: str, units: Units, lexicon: dict[str, str]) -> None:
    assert spoken(written, units, lexicon, labels=LABELS) == said


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("fans on; wait", "fans on. Wait."),
        ("fans on – wait", "fans on. Wait."),
        ("fans on — wait", "fans on. Wait."),
        ("1. Lever UP\n2. Wait 15 s;\n3. Lever DN.", "Lever up. Wait fifteen seconds. Lever down."),
        ("- one\n- two", "one. two."),
        ("4. \nA fact", "four. A fact."),
        ("“on ground”", "on ground."),
        ("Which one?", "Which one?"),
        ("effective 2026-08-01", "effective one August twenty twenty-six."),
        ("effective 1 August 2026", "effective one August twenty twenty-six."),
        ("", ""),
    ],
)
def test_sentences(written: str, said: str, units: Units, lexicon: dict[str, str]) -> None:
    assert spoken(written, units, lexicon) == said


@pytest.mark.parametrize(
    ("written", "said"),
    [
        (
            "Within LIM 3.2: 5 kt: no action. Rule: Above 9 kt, stop; above 20 kt, call. Also needed: fans off.",
            "Within limits. five knots: no action. Also needed: fans off.",
        ),
        ("Outside: call. Rule: Above 9 kt, stop.", "Outside: call."),
        (
            "Wait 5 s. That is step 2 of: Free fall: 1. Lever DN; 2. Wait 5 s.",
            "Wait five seconds. That is step two of: Free fall.",
        ),
    ],
)
def test_what_an_eye_may_go_back_to_is_left_out(written: str, said: str, units: Units, lexicon: dict[str, str]) -> None:
    assert spoken(written, units, lexicon) == said


def test_an_overlong_number_is_said_figure_by_figure(units: Units) -> None:
    assert spoken("9" * 400, units, {}) == " ".join(["nine"] * 400) + "."


@given(text=st.text(alphabet="aM MD.,;:()[]–—-−/°%√→0123456789ktpsi\n", max_size=60))
def test_nothing_for_the_eye_is_left(text: str, units: Units, lexicon: dict[str, str]) -> None:
    said = spoken(text, units, lexicon)

    assert not re.search(r"[0-9()\[\];–—/°%→]", said)
    assert not said or said[-1] in ".?!"
