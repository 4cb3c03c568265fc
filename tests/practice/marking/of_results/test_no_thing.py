"""Tests that only a "no" which stands as an answer of its own, or denies the very thing asked, answers a question."""

from __future__ import annotations

import pytest

from assistant.practice.marking.mark import MISSED, PARTLY, RIGHT, WRONG, Marker

_MARKS = {"right": RIGHT, "partly": PARTLY, "wrong": WRONG, "missed": MISSED}
_MATRIX = """
brakes read 260, may I take off? | no problem, go | wrong
brakes read 260, may I take off? | no restriction | wrong
brakes read 260, may I take off? | no fans needed | missed/wrong
brakes read 260, may I take off? | no take-off | right/partly
brakes read 260, may I take off? | no, 250 is the limit | right
brakes read 260, may I take off? | no way | right/partly
brakes read 260, may I take off? | no two fifty max | right
can I retract the gear at 220 kt? | no limit applies | wrong
can I retract the gear at 220 kt? | no limit is 205 | right
can I retract the gear at 220 kt? | there is no restriction there | wrong
can I retract the gear at 220 kt? | uh no worries | wrong
can I retract the gear at 220 kt? | yeah no problem | wrong
can I retract the gear at 220 kt? | no objection from me | wrong
can I retract the gear at 220 kt? | no retraction above 205 | right/partly
can I retract the gear at 220 kt? | no flaps | missed
can I retract the gear at 220 kt? | no autobrake | missed
can I retract the gear at 220 kt? | er negative | right/partly
The accumulator reads 1,850 psi. Can we be towed? | no issue at all | wrong
The accumulator reads 1,850 psi. Can we be towed? | no tow | right/partly
The accumulator reads 1,850 psi. Can we be towed? | no towing below 2,000 | right
The accumulator reads 1,850 psi. Can we be towed? | no pins needed | missed/wrong
The accumulator reads 1,850 psi. Can we be towed? | no you may not | right/partly
The accumulator reads 1,850 psi. Can we be towed? | no horn | missed
brakes read 240, may I take off? | no problem | right/partly
brakes read 240, may I take off? | no restriction, it's below 250 | right
brakes read 240, may I take off? | no fans needed | missed/wrong
brakes read 240, may I take off? | no, too hot | wrong
brakes read 240, may I take off? | no take-off | wrong
can I retract the gear at 200 kt? | no worries | right/partly
can I retract the gear at 200 kt? | no retraction | wrong
can I retract the gear at 200 kt? | sure, no problem, limit 205 | right
can I retract the gear at 200 kt? | no limit applies | right/partly/wrong
System 1 lost: do the tillers steer? | no problem, they do | wrong
System 1 lost: do the tillers steer? | no change | wrong
System 1 lost: do the tillers steer? | no restriction, full tiller authority | wrong
System 1 lost: do the tillers steer? | there is no effect on the tillers | wrong
System 1 lost: do the tillers steer? | no anti-skid | missed/wrong
System 1 lost: do the tillers steer? | no autobrake | missed/wrong
System 1 lost: do the tillers steer? | no steering | right
System 1 lost: do the tillers steer? | no tillers | right
System 1 lost: do the tillers steer? | no tiller steering, it castors | right
System 1 lost: do the tillers steer? | no they castor | right
System 1 lost: do the tillers steer? | uh no | right
With the nose leg in the air, do you have steering? | no autobrake | missed
With the nose leg in the air, do you have steering? | no steering | right
With the nose leg in the air, do you have steering? | no, the wheels stay centred | right
With the nose leg in the air, do you have steering? | no problem there | wrong
With the nose leg in the air, do you have steering? | no change from the ground | wrong
May you do the rudder check in a turn? | no flaps | missed
May you do the rudder check in a turn? | no problem | wrong
May you do the rudder check in a turn? | no, stopped or straight | right/partly
May you do the rudder check in a turn? | no turns | right/partly
Does System 2 loss affect the steering? | no autobrake then | missed
Does System 2 loss affect the steering? | no effect | right
Does System 2 loss affect the steering? | no change | right
Does System 2 loss affect the steering? | no | right
Does System 1 loss affect the steering? | no effect | wrong
Does System 1 loss affect the steering? | no problem | wrong
Does System 1 loss affect the steering? | no steering | right
Does System 1 loss affect the steering? | no autobrake | missed/wrong
Can you taxi to the stand after free-fall? | no flaps, no brakes | missed/wrong
Can you taxi to the stand after free-fall? | no problem | wrong
Can you taxi to the stand after free-fall? | no steering | missed
Can you taxi to the stand after free-fall? | no, stop straight ahead and be towed | right
ANTI-SKID switch OFF: does that affect autobrake? | no effect | wrong
ANTI-SKID switch OFF: does that affect autobrake? | no autobrake | right
ANTI-SKID switch OFF: does autobrake still arm? | no issue | wrong
ANTI-SKID switch OFF: does autobrake still arm? | no autobrake | right
ANTI-SKID switch OFF: does autobrake still arm? | no change | wrong
ANTI-SKID switch OFF: does autobrake still arm? | no pedals | missed
System 2 is gone. Is autobrake available? | no autobrake | right
System 2 is gone. Is autobrake available? | no steering | wrong/missed
System 2 is gone. Is autobrake available? | no restriction on it | wrong
System 2 is gone. Is autobrake available? | well no change there | wrong
System 2 is gone. Do the tillers steer? | no change | right
System 2 is gone. Do the tillers steer? | no problem | right
System 2 is gone. Do the tillers steer? | no autobrake | missed/right
System 2 is gone. Do the tillers steer? | no steering | wrong
System 2 is gone. Do the tillers steer? | there's no effect on steering | right
System 2 is gone. Does anti-skid work? | no problem | right
System 2 is gone. Does anti-skid work? | no anti-skid | wrong
System 2 is gone. Does anti-skid work? | no autobrake though | missed
Can the gear be retracted in flight after a free-fall extension? | no problem, lever up | wrong
Can the gear be retracted in flight after a free-fall extension? | no retraction in flight | right
Can the gear be retracted in flight after a free-fall extension? | no horn | missed
May the gear lever be moved up a second time if it does not move after takeoff? | no limit on tries | wrong/missed
Is it OK to tow at 90 degrees with the link connected? | no restriction | wrong
Is it OK to tow at 90 degrees with the link connected? | no pin needed | missed/wrong
Is it OK to tow at 90 degrees with the link connected? | no 85 max | right
May the gear be lowered at 240 kt? | I can't see a problem with that | wrong
May the gear be lowered at 240 kt? | why not | wrong
May the gear be lowered at 240 kt? | not a problem | wrong
May the gear be lowered at 240 kt? | that isn't an issue | wrong
May the gear be lowered at 240 kt? | nothing against it | wrong
May the gear be lowered at 240 kt? | no reason not to | wrong
May the gear be lowered at 240 kt? | no, no, it's too fast | right/partly
May the gear be lowered at 240 kt? | no lowering above 230 | right
May the gear be lowered at 240 kt? | no chance | right/partly/missed
May the gear be lowered at 240 kt? | no you have to be at 230 or less | right
May the gear be lowered at 225 kt? | not a problem | right/partly
May the gear be lowered at 225 kt? | why not | right/partly
May the gear be lowered at 225 kt? | no problem up to 230 | right
With the PEDAL button held, do the pedals steer? | no difference | missed/wrong
With the PEDAL button held, do the pedals steer? | no they have no effect | right
With the PEDAL button held, do the pedals steer? | they have no effect | right
With the PEDAL button held, do the pedals steer? | no pedal steering | right
With the PEDAL button held, do the pedals steer? | no anti-skid | missed
With the PEDAL button held, do the tillers steer? | no problem | right
With the PEDAL button held, do the tillers steer? | no pedals though | missed/right
Both systems lost, accumulator charged: is anti-skid there? | no problem with it | wrong
Both systems lost, accumulator charged: is anti-skid there? | no steering | missed
Both systems lost, accumulator charged: is anti-skid there? | no skid protection | right
Both systems lost, accumulator charged: is anti-skid there? | no anti skid no autobrake | right
Brakes at 340 at the stand. May the parking brake stay set? | no trouble | wrong
Brakes at 340 at the stand. May the parking brake stay set? | no parking brake above 320 | right
Brakes at 300 at the stand. May the parking brake stay set? | no trouble | right/partly
Does anti-skid work at 8 kt? | no anti-skid below 12 | right
Does anti-skid work at 8 kt? | no limit | wrong
Does anti-skid work at 8 kt? | no change | wrong
Does anti-skid work at 8 kt? | no fans | missed
Tyre 6 percent low: is it acceptable? | no worries | wrong
Tyre 6 percent low: is it acceptable? | no re-inflate it | right
May you tow with the accumulator at 2,300 psi? | no objections | right/partly
May you tow with the accumulator at 2,300 psi? | no tow | wrong
May you tow with the accumulator at 2,300 psi? | no horn | missed
Does autobrake work in ALTERNATE? | no difference between them | wrong/missed
Does autobrake work in ALTERNATE? | no autobrake there | right
Does autobrake work in ALTERNATE? | no steering | missed
Is there a limit on the PARK BRAKE at 410 degrees? | no limit | wrong
Does losing System 1 cost you the autobrake? | no effect | right
Does losing System 1 cost you the autobrake? | no problem, it stays | right
Does losing System 2 cost you the autobrake? | no change | wrong
Does losing System 2 cost you the autobrake? | no autobrake | right
Can the brake fans run in flight? | no problem | wrong
Can the brake fans run in flight? | no fans in flight | right
"""


@pytest.mark.parametrize("case", [line for line in _MATRIX.splitlines() if line])
def test_a_no_before_a_noun_is_no_answer(marker: Marker, case: str) -> None:
    question, answer, marks = case.split(" | ")
    assert marker.mark(question, answer).mark in {_MARKS[name] for name in marks.split("/")}
