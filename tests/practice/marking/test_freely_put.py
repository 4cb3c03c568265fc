"""Answers as people put them freely: workings, former values, modes left, lights and bands beside the point asked."""

from __future__ import annotations

import pytest

from assistant.practice.marking.mark import Marker

REMARKS = (
    ("What is the maximum speed with the gear down?", "the gear lever is on the right of the engine display", "missed"),
    (
        "Residual braking: give the steps in order.",
        "that's when a bar shows above a hundred psi with your feet off the pedals",
        "missed",
    ),
    (
        "STEER LOST: give the steps in order.",
        "it's amber and it means the steering controller has lost the nose wheel position",
        "missed",
    ),
    ("What colour is STEER LOST?", "you steer with differential braking then", "missed"),
    ("Where is the brake dial?", "it has one needle for the accumulator pressure", "missed"),
    ("How long does a normal extension take?", "doors open first then the uplocks release", "missed"),
    (
        "Why is the hydraulic supply to the gear shut off after retraction?",
        "twenty seconds after everything is locked up, that I know, but not why",
        "missed",
    ),
    (
        "How many full brake applications does a charged accumulator give?",
        "it stores System 1 pressure, and the needle is on the brake dial",
        "missed",
    ),
    ("Which hydraulic system supplies the normal brakes?", "normal is the mode with anti-skid and autobrake", "missed"),
    (
        "Autobrake: how long after spoiler extension does braking begin in STEADY, FIRM and FULL?",
        "full brakes the hardest and steady the softest",
        "missed",
    ),
    ("What deceleration does FIRM aim for?", "that's the one you take for wet runways", "missed"),
    (
        "How much pressure does each quarter of the parking brake lever send?",
        "it's a lever behind the thrust levers and it's progressive",
        "missed",
    ),
    (
        "On the ground with the STEER switch OFF, what do the nose wheels do?",
        "the switch is on the left console",
        "missed",
    ),
    (
        "What is the maximum nose-wheel angle for towing with the torque link connected?",
        "there is a red band painted on the nose leg doors",
        "missed",
    ),
)
A_WORKING = (
    (
        "How wide a pavement does the 120L need for a 180° turn at 60° of steering, with 3 m of clearance at "
        "each side?",
        "R outer 11.99 m, R nose 17.78 m, add 6: 35.8 m",
        "right",
    ),
    (
        "How wide a pavement does the 120L need for a 180° turn at 60° of steering, with 3 m of clearance at "
        "each side?",
        "R outer 11.99, R nose 17.78, plus 3: 32.8 m",
        "wrong",
    ),
    (
        "What is the stopping distance from 130 kt with autobrake FIRM?",
        "2 s of delay is 134 m, braking 972 m, together 1,106 m",
        "right",
    ),
    (
        "What is the stopping distance from 130 kt with autobrake FIRM?",
        "134 m delay plus 972 m braking, so 1,206 m",
        "wrong",
    ),
    (
        "In a rejected take-off from 100 kt at 50 t, how much energy does each brake take?",
        "66.2 MJ in all, a quarter each: 16.5 MJ",
        "right",
    ),
    (
        "In a rejected take-off from 100 kt at 50 t, how much energy does each brake take?",
        "total is 66.2 MJ so each brake takes 22 MJ",
        "wrong",
    ),
    (
        "How much do the brakes heat up in a rejected take-off from 100 kt at 50 t?",
        "66 MJ in all, 16.5 MJ a brake, 265 degrees",
        "right",
    ),
    (
        "How long until a brake at 400 °C has cooled to 250 °C with the fans on, outside 20 °C?",
        "380 over 230 is 1.65, the log is 0.50, times 12 makes 6 minutes",
        "right",
    ),
    (
        "What is the smallest pavement for a 180° turn of the 120 at 55° of steering, 3 m clearance at each side?",
        "R outer 12.34, R nose 16.11, plus 3 m: 31.45 m",
        "wrong",
    ),
    (
        "What is the smallest pavement for a 180° turn of the 120 at 55° of steering, 3 m clearance at each side?",
        "R outer 12.34 m, R nose 16.11 m and twice three metres, 34.5 m",
        "right",
    ),
    (
        "What should the accumulator pre-charge read at 0 °C?",
        "1,214.7 absolute times 273 over 293 is 1,132, take 14.7 off, 1,117 psi",
        "right",
    ),
    ("What is the tiller limit at 25 kt?", "ten knots past 15, that takes 13.7 off 68, so 54.3°", "right"),
    (
        "What landing distance must be planned without anti-skid if the normal one is 1,200 m?",
        "1,200 times 1.6, 1,920 m",
        "right",
    ),
    (
        "What landing distance must be planned without anti-skid if the normal one is 1,200 m?",
        "1,200 times 1.6, 1,820 m",
        "wrong",
    ),
)
A_FORMER_VALUE = (
    (
        "What is the maximum brake temperature to begin take-off?",
        "250, two eighty was what I learned on my course",
        "right",
    ),
    ("What is the maximum brake temperature to begin take-off?", "my old notes say 280, so 280", "wrong"),
    ("What is the maximum brake temperature to begin take-off?", "either 250 or 280, I had 280 in my notes", "wrong"),
    (
        "What is the minimum accumulator pressure to rely on the parking brake?",
        "2,000 psi, my old notes say 1,800",
        "right",
    ),
    (
        "What is the minimum accumulator pressure to rely on the parking brake?",
        "2,000 used to be it, it's 1,800 now",
        "wrong",
    ),
    (
        "At what share of the target deceleration does ON TARGET light?",
        "85 %, ninety is still stuck in my mind",
        "right",
    ),
    (
        "At what share of the target deceleration does ON TARGET light?",
        "It's 85 percent, they had it at 90 percent until AOM 7",
        "right",
    ),
    (
        "By what factor is the landing distance multiplied without anti-skid?",
        "1.6, though I keep thinking of 1.5",
        "right",
    ),
    (
        "By what factor is the landing distance multiplied without anti-skid?",
        "1.6; I remember one point five from before",
        "right",
    ),
    ("What is the taxi speed in turns of more than 60°?", "ten knots, I would have said twelve last year", "right"),
    ("What is the taxi speed in turns of more than 60°?", "ten knots, it says 12 on my old card", "right"),
    ("What is the maximum speed for retracting the gear?", "205 knots, we learnt it as 200", "right"),
    ("What is the maximum speed for retracting the gear?", "200 kt, they used to say 205", "wrong"),
    ("At what ground speed does pedal steering fade to nothing?", "110 kt; the previous book said 100", "right"),
)
A_STEP_PAST_A_BOUND = (
    ("What is VLE?", "255 or M0.60 whichever is lower, one knot over and you've broken it", "right"),
    (
        "What is the maximum altitude for extending the gear?",
        "20,000 ft, a foot above that is already outside",
        "right",
    ),
    ("What is the maximum brake temperature to begin take-off?", "250 °C, one degree more and you wait", "right"),
    (
        "Below what accumulator pressure is no tow or push allowed?",
        "2,000 psi. One psi less and nobody moves it",
        "right",
    ),
    ("Below what accumulator pressure is no tow or push allowed?", "2,000 psi, and one psi more is outside", "wrong"),
    ("What is the maximum braking pressure without anti-skid?", "800 psi and not a psi more", "right"),
    ("What is the maximum take-off mass of the 120?", "56,000 kg, one kilo over is over", "right"),
    ("What is the maximum tiller deflection of the 120?", "68° and not one degree further", "right"),
    ("What is the maximum tyre ground speed?", "195 knots; at 196 you are outside", "right"),
    ("What is the maximum speed for extending the gear?", "235 KIAS, one knot more and you're outside", "wrong"),
    ("What is the maximum speed for retracting the gear?", "205 kt, at 205 you're in and at 206 you're out", "right"),
    (
        "What is the maximum nose-wheel angle for towing with the torque link connected?",
        "85°, a single degree more and the link has to come off",
        "right",
    ),
)
CONTINENTAL_NUMBERS = (
    ("At what pressure do the hydraulic systems run?", "3.000 psi", "right"),
    ("What is the maximum take-off mass of the 120?", "56.000 kg", "right"),
    ("What is the maximum landing mass of the 120L?", "54.000 kg", "right"),
    ("What is the maximum altitude for extending the gear?", "20.000 ft", "right"),
    ("What is VLE?", "255 kt or Mach 0,60, the lower of the two", "right"),
    ("What deceleration does FIRM aim for?", "2,3 m/s²", "right"),
    ("By what factor is the landing distance multiplied without anti-skid?", "1,6", "right"),
    ("By what factor is the landing distance multiplied without anti-skid?", "1,5", "wrong"),
    ("What is the minimum accumulator pressure to rely on the parking brake?", "2.000 psi", "right"),
    ("What is the minimum accumulator pressure to rely on the parking brake?", "1.800 psi", "wrong"),
    ("What is the pre-charge of the accumulator at 20 °C?", "1.200 psi", "right"),
    ("What is the wheelbase of the 120?", "13,2 m", "right"),
    ("Below what pressure does a hydraulic system count as lost?", "1.500 psi", "right"),
    ("What is the maximum pressure in ALTERNATE?", "2.600", "right"),
)
ORDERS_SUMMED = (
    (
        "Taxiing at 10 kt, one tiller orders 50° left and the other 20° right, pedals centred. What is the "
        "total steering order, and which way?",
        "the right one takes 20 off the 50 so we end up 30 to port",
        "right",
    ),
    (
        "Taxiing at 10 kt, one tiller orders 50° left and the other 20° right, pedals centred. What is the "
        "total steering order, and which way?",
        "net thirty to starboard",
        "wrong",
    ),
    (
        "Taxiing at 10 kt, one tiller orders 30° right and the other 30° left, pedals centred. What is the "
        "total steering order?",
        "the one takes off what the other puts on, so nothing is left, zero",
        "right",
    ),
    (
        "Taxiing at 10 kt, one tiller orders 60° right and the other 20° right, pedals centred. What is the "
        "total steering order: size and direction?",
        "60 plus 20 makes 80 but it's held at 68 to starboard",
        "right",
    ),
    (
        "Taxiing at 10 kt, one tiller orders 60° right and the other 20° right, pedals centred. What is the "
        "total steering order: size and direction?",
        "60 plus 20 so 80 to starboard",
        "wrong",
    ),
    (
        "Taxiing at 12 kt, the left tiller orders 35° right and the right tiller 10° left, pedals centred. "
        "What is the total steering order: size and direction?",
        "10 off the 35 leaves 25 right",
        "right",
    ),
    (
        "Taxiing at 12 kt, the left tiller orders 35° right and the right tiller 10° left, pedals centred. "
        "What is the total steering order: size and direction?",
        "you add them so 45 right",
        "wrong",
    ),
    (
        "Taxiing at 12 kt, the left tiller orders 35° right and the right tiller 10° left, pedals centred. "
        "What is the total steering order: size and direction?",
        "net 25 to port",
        "wrong",
    ),
    (
        "Taxiing at 12 kt, the left tiller orders 35° right and the right tiller 10° left, pedals centred. "
        "What is the total steering order: size and direction?",
        "subtract the smaller one: twenty-five degrees to starboard",
        "right",
    ),
    (
        "Taxiing at 12 kt, the left tiller orders 35° right and the right tiller 10° left, pedals centred. "
        "What is the total steering order: size and direction?",
        "the bigger order wins: 35 right",
        "wrong",
    ),
    (
        "Taxiing at 12 kt, the left tiller orders 35° right and the right tiller 10° left, pedals centred. "
        "What is the total steering order: size and direction?",
        "25",
        "partly",
    ),
)
A_MODE_LEFT = (
    (
        "System 1 is lost and ANTI-SKID is put to OFF. Give the braking mode, anti-skid, autobrake and the "
        "pressure technique.",
        "normal goes away and you're on emergency, no anti-skid, no autobrake, 800 psi or less, steady, six "
        "applications",
        "right",
    ),
    (
        "System 1 is lost and ANTI-SKID is put to OFF. Give the braking mode, anti-skid, autobrake and the "
        "pressure technique.",
        "normal stays, just without anti-skid and autobrake, 800 psi",
        "wrong",
    ),
    ("System 2 is lost. Which braking mode?", "you lose normal, so it's alternate", "right"),
    ("System 2 is lost. Which braking mode?", "that drops you out of NORMAL into ALTERNATE", "right"),
    ("System 2 is lost. Which braking mode?", "loses alternate and goes to normal", "wrong"),
    ("System 2 is lost. Which braking mode?", "normal is no more, alternate takes over", "right"),
    ("System 2 is lost. Which braking mode?", "that robs you of normal and leaves alternate", "right"),
    (
        "Both hydraulic systems are lost, accumulator charged. Which braking mode?",
        "normal's gone, alternate's gone, that leaves emergency",
        "right",
    ),
    (
        "Both hydraulic systems are lost, accumulator charged. Which braking mode?",
        "that takes normal away so you're left with alternate",
        "wrong",
    ),
    (
        "The brake controller has failed. Which braking mode, and does anti-skid work?",
        "kills normal and anti skid, leaves you alternate",
        "right",
    ),
    (
        "The free-fall lever is pulled on the ground. What does the steering do?",
        "it takes the steering away, it just castors",
        "right",
    ),
    (
        "On the ground with the PEDAL button held, what steers?",
        "it takes the pedals out so only the tillers steer",
        "right",
    ),
    (
        "On the ground with the PEDAL button held, what steers?",
        "it takes the tillers out so only the pedals steer",
        "wrong",
    ),
)
SHORT_NAMES = (
    ("How many gear ground-lock pins are there, and where are they stowed?", "3, aft of the RH seat", "right"),
    ("How many gear ground-lock pins are there, and where are they stowed?", "three", "partly"),
    (
        "How many gear ground-lock pins are there, and where are they stowed?",
        "three, behind the left hand seat",
        "wrong",
    ),
    ("Which system supplies the gear and which the normal brakes?", "sys 1 gear, sys 2 brks", "right"),
    ("Which system supplies the gear and which the normal brakes?", "sys 1 for the gear", "partly"),
    ("A shock strut is wet. What do you do?", "call maint", "right"),
    ("A shock strut is wet. What do you do?", "phone the mx", "right"),
    ("How much chrome must show on the main and on the nose strut?", "main 60-110", "partly"),
    ("How much chrome must show on the main and on the nose strut?", "main 60 to 110, nose 90 to 160 mm", "right"),
    ("Where is the gear lever, and what are its detents?", "RH of eng display, up and dn", "right"),
    ("Where is the gear lever, and what are its detents?", "right of the engine display", "partly"),
    ("Where is the STEER switch, and what does OFF do?", "left console", "partly"),
    ("Where is the STEER switch, and what does OFF do?", "L console, strg depressurised, nose wheels castor", "right"),
    ("Who taxies with the tiller, and when may control change hands?", "left seat pilot", "partly"),
    ("Who taxies with the tiller, and when may control change hands?", "LHS pilot, only with the a/c stopped", "right"),
    (
        "Who taxies with the tiller, and when may control change hands?",
        "people in the left seat, and they swap only stopped",
        "right",
    ),
)
A_DEGREE = (
    (
        "A main tyre of an Aldermere 120 reads 178 psi cold. Is it acceptable as it is, and what must be done?",
        "not ok, over 10 % low, so replace it",
        "wrong",
    ),
    (
        "A main tyre of an Aldermere 120 reads 178 psi cold. Is it acceptable as it is, and what must be done?",
        "no, 6 % low so it gets re-inflated",
        "right",
    ),
    (
        "A main tyre of an Aldermere 120 reads 178 psi cold. Is it acceptable as it is, and what must be done?",
        "no, over 20 % low, re-inflate it",
        "wrong",
    ),
    (
        "A main tyre of an Aldermere 120 reads 178 psi cold. Is it acceptable as it is, and what must be done?",
        "no, it is more than 10% low so pump it up",
        "wrong",
    ),
    (
        "A nose tyre of an Aldermere 120 reads 130 psi cold. What must be done?",
        "it's over 10 % low, re-inflate",
        "wrong",
    ),
    (
        "A nose tyre of an Aldermere 120 reads 130 psi cold. What must be done?",
        "more than 5 % low, re-inflate it",
        "right",
    ),
    ("A main tyre of an Aldermere 120 reads 165 psi cold. What must be done?", "over 20 % low, replace it", "wrong"),
    (
        "A main tyre of an Aldermere 120 reads 165 psi cold. What must be done?",
        "over 10 but under 20, replace this tyre alone",
        "right",
    ),
    (
        "A main tyre of an Aldermere 120 reads 165 psi cold. What must be done?",
        "replace both tyres on that axle",
        "wrong",
    ),
    (
        "A main tyre of an Aldermere 120 reads 165 psi cold. What must be done?",
        "over 20 % low, so change it and the other main tyre with it",
        "wrong",
    ),
    (
        "A main tyre of an Aldermere 120L was run at 150 psi. What must be done?",
        "replace it and its axle mate, it's more than 20 % low",
        "right",
    ),
    (
        "A main tyre of an Aldermere 120L was run at 150 psi. What must be done?",
        "more than 10 % low, replace it alone",
        "wrong",
    ),
    (
        "The main strut shows 50 mm of chrome. Is it acceptable, and what must be done?",
        "no, below 60, call maintenance",
        "right",
    ),
    (
        "The main strut shows 50 mm of chrome. Is it acceptable, and what must be done?",
        "no, it's above 110 so call maintenance",
        "wrong",
    ),
    (
        "The accumulator reads 1,300 psi. What does that mean?",
        "between 1,400 and 2,000 so it brakes, with fewer applications",
        "wrong",
    ),
)
A_LABEL = (
    (
        "System 2 is lost. Which braking mode, and what colour are the bars?",
        "alternate, amber bars, and the RESERVE BRAKE memo comes on",
        "wrong",
    ),
    ("System 2 is lost. Which braking mode, and what colour are the bars?", "alternate, amber bars", "right"),
    (
        "The STEER switch is OFF, nose leg on the ground, all else normal. What does the steering do, and do "
        "the pedals steer?",
        "castors, pedals don't steer, and STEER LOST comes on",
        "wrong",
    ),
    (
        "The steering controller has failed, nose leg on the ground. What does the steering do, do the "
        "pedals steer, and what light shows?",
        "castors, pedals dead, and you get the TOW PIN memo",
        "wrong",
    ),
    (
        "The steering controller has failed, nose leg on the ground. What does the steering do, do the "
        "pedals steer, and what light shows?",
        "castors, no pedals, STEER LOST in amber",
        "right",
    ),
    (
        "The steering controller has failed, nose leg on the ground. What does the steering do, do the "
        "pedals steer, and what light shows?",
        "the nose wheels castor and the pedals do nothing",
        "partly",
    ),
    ("System 1 is lost. What does the steering do?", "castors, with STEER LOST on", "wrong"),
    ("System 1 is lost. What does the steering do?", "it castors", "right"),
    (
        "ANTI-SKID is put to OFF, all else normal. Give the braking mode, anti-skid and autobrake.",
        "alternate, no anti-skid, no autobrake, and BRAKE HEAT shows",
        "wrong",
    ),
    (
        "Both hydraulic systems are lost, accumulator charged. Which braking mode, and what memo shows?",
        "emergency and the RESERVE BRAKE memo",
        "right",
    ),
    (
        "Both hydraulic systems are lost, accumulator charged. Which braking mode, and what memo shows?",
        "emergency, PARK BRAKE SET memo",
        "wrong",
    ),
    (
        "Both hydraulic systems are lost, accumulator charged. Which braking mode, and what memo shows?",
        "emergency",
        "partly",
    ),
    ("The bypass pin is inserted. What memo shows?", "STEER LOST in amber", "wrong"),
    ("The bypass pin is inserted. What memo shows?", "a white TOW PIN", "right"),
    ("A leg lamp is amber. What does it mean?", "it disagrees with the lever for more than 15 s", "right"),
)
A_LABEL_ASKED = (
    (
        "Both hydraulic systems are lost, accumulator charged. Which braking mode, how many applications, "
        "and what memo shows?",
        "emergency, six of them",
        "partly",
    ),
    (
        "Both hydraulic systems are lost, accumulator charged. Which braking mode, how many applications, "
        "and what memo shows?",
        "emergency, six, RESERVE BRAKE",
        "right",
    ),
    (
        "The bypass pin is in, nose leg on the ground. Do the pedals steer, and what memo shows?",
        "no they don't, TOW PIN",
        "right",
    ),
    (
        "The bypass pin is in, nose leg on the ground. Do the pedals steer, and what memo shows?",
        "no they don't steer",
        "partly",
    ),
    (
        "The bypass pin is in, nose leg on the ground. Do the pedals steer, and what memo shows?",
        "no, steer lost memo",
        "wrong",
    ),
    (
        "The parking brake is set and the thrust is above idle. What memo shows, and in what colour?",
        "park brake set",
        "partly",
    ),
    (
        "The parking brake is set and the thrust is above idle. What memo shows, and in what colour?",
        "PARK BRAKE SET, red",
        "right",
    ),
    (
        "The parking brake is set and the thrust is above idle. What memo shows, and in what colour?",
        "PARK BRAKE SET in amber",
        "wrong",
    ),
    (
        "System 2 is lost. Which mode, does the autobrake work, and what colour are the bars?",
        "alternate, no autobrake",
        "partly",
    ),
    (
        "System 2 is lost. Which mode, does the autobrake work, and what colour are the bars?",
        "alternate, no, amber",
        "right",
    ),
    (
        "The steering controller has failed on the ground. Do the tillers steer, and what light comes on?",
        "no they don't",
        "partly",
    ),
    (
        "The steering controller has failed on the ground. Do the tillers steer, and what light comes on?",
        "no, steer lost",
        "right",
    ),
)
A_SETTING_CHOSEN = (
    (
        "Dry runway, landing distance required 1,500 m, available 1,700 m. Which autobrake setting does the "
        "operator's policy ask for, and why?",
        "FULL, it's over 80 %",
        "right",
    ),
    (
        "Dry runway, landing distance required 1,500 m, available 1,700 m. Which autobrake setting does the "
        "operator's policy ask for, and why?",
        "FIRM",
        "wrong",
    ),
    (
        "Dry runway, landing distance required 1,500 m, available 1,700 m. Which autobrake setting does the "
        "operator's policy ask for, and why?",
        "FULL",
        "partly",
    ),
    (
        "Dry runway, landing distance required 1,500 m, available 1,700 m. Which autobrake setting does the "
        "operator's policy ask for, and why?",
        "FULL as we need 88 % of what there is",
        "right",
    ),
    (
        "Contaminated runway, landing distance required 1,000 m, available 2,500 m. Which autobrake setting "
        "is the policy, and why?",
        "FULL since the runway's contaminated",
        "right",
    ),
    (
        "Contaminated runway, landing distance required 1,000 m, available 2,500 m. Which autobrake setting "
        "is the policy, and why?",
        "firm because it's only 40 %",
        "wrong",
    ),
    (
        "Wet runway, landing distance required 1,700 m, available 2,000 m. Which autobrake setting does the "
        "operator's policy ask for, and why?",
        "full because 85 % is more than 80",
        "right",
    ),
    (
        "Wet runway, landing distance required 1,700 m, available 2,000 m. Which autobrake setting does the "
        "operator's policy ask for, and why?",
        "firm, it's wet",
        "wrong",
    ),
    (
        "Wet runway, landing distance required 1,700 m, available 2,000 m. Which autobrake setting does the "
        "operator's policy ask for, and why?",
        "full",
        "partly",
    ),
    (
        "Wet runway, landing distance required 1,600 m and available 2,000 m: which autobrake setting, and why?",
        "FIRM: wet, and 80 is not more than 80",
        "right",
    ),
    (
        "Wet runway, landing distance required 1,600 m and available 2,000 m: which autobrake setting, and why?",
        "full, it's 80 percent",
        "wrong",
    ),
    ("The runway is wet; required 1,200 m, available 2,400 m. What autobrake setting do we select?", "firm", "right"),
    ("The runway is wet; required 1,200 m, available 2,400 m. What autobrake setting do we select?", "full", "wrong"),
    ("The runway is wet; required 1,200 m, available 2,400 m. What autobrake setting do we select?", "steady", "wrong"),
)
A_READING_IN_PARTS = (
    (
        "System 1 is lost and the accumulator reads 1,300 psi. Does the parking brake hold, and what do you use?",
        "no, chocks",
        "right",
    ),
    (
        "System 1 is lost and the accumulator reads 1,300 psi. Does the parking brake hold, and what do you use?",
        "it holds",
        "wrong",
    ),
    (
        "System 1 is lost and the accumulator reads 1,300 psi. Does the parking brake hold, and what do you use?",
        "it doesn't hold",
        "partly",
    ),
    (
        "System 1 is lost and the accumulator reads 1,800 psi. Does the parking brake hold, may it be relied "
        "on, and what do you use?",
        "holds for now, not reliable, chocks",
        "right",
    ),
    (
        "System 1 is lost and the accumulator reads 1,800 psi. Does the parking brake hold, may it be relied "
        "on, and what do you use?",
        "yes and you can rely on it",
        "wrong",
    ),
    (
        "System 1 is lost and the accumulator reads 1,800 psi. Does the parking brake hold, may it be relied "
        "on, and what do you use?",
        "chocks, because you can't rely on it",
        "partly",
    ),
    (
        "System 1 is lost and the accumulator reads 1,800 psi. Does the parking brake hold, may it be relied "
        "on, and what do you use?",
        "it holds",
        "partly",
    ),
    (
        "System 1 is lost and the accumulator reads 1,800 psi. Does the parking brake hold, may it be relied "
        "on, and what do you use?",
        "it holds for the time being but don't trust it, get chocks in",
        "right",
    ),
    (
        "System 1 is lost and the accumulator reads 2,400 psi. Does the parking brake hold, and may it be relied on?",
        "yes and yes, it's above 2,000",
        "right",
    ),
    (
        "System 1 is lost and the accumulator reads 2,400 psi. Does the parking brake hold, and may it be relied on?",
        "no",
        "wrong",
    ),
    (
        "The accumulator reads 1,700 psi. May the aeroplane be pushed back? Yes or no, and give the limit.",
        "no pushback then",
        "partly",
    ),
    (
        "The accumulator reads 1,700 psi. May the aeroplane be pushed back? Yes or no, and give the limit.",
        "no - 2,000 minimum",
        "right",
    ),
    (
        "The accumulator reads 1,700 psi. May the aeroplane be pushed back? Yes or no, and give the limit.",
        "pushing it is forbidden",
        "partly",
    ),
    (
        "The accumulator reads 1,700 psi. May the aeroplane be pushed back? Yes or no, and give the limit.",
        "yes, above 1,400",
        "wrong",
    ),
    ("A brake reads 270 °C. May take-off begin? Yes or no, and give the limit.", "No take-off, too hot", "partly"),
    ("A brake reads 270 °C. May take-off begin? Yes or no, and give the limit.", "no, 250 max", "right"),
    ("A brake reads 270 °C. May take-off begin? Yes or no, and give the limit.", "no departing like that", "partly"),
    (
        "We are at 240 kt. May the gear be extended? Yes or no, and give the limit.",
        "no extension at that speed",
        "partly",
    ),
    ("We are at 240 kt. May the gear be extended? Yes or no, and give the limit.", "no, 230", "right"),
    ("We are at 240 kt. May the gear be extended? Yes or no, and give the limit.", "no extension, 255", "wrong"),
)
LOOSELY_PUT = (
    (
        "What do the bars on the gear display mean: filled, hatched and hollow?",
        "filled is down and locked hatched moving and hollow when it's up and locked",
        "right",
    ),
    (
        "What do the bars on the gear display mean: filled, hatched and hollow?",
        "filled is up and locked hatched moving and hollow is down and locked",
        "wrong",
    ),
    (
        "Residual braking: give the steps in order, with the speed.",
        "squeeze and let go of the pedals, then cycle anti-skid below 20 kt",
        "right",
    ),
    (
        "Residual braking: give the steps in order, with the speed.",
        "release the pedals and press, then anti-skid on then off below 20 kt",
        "wrong",
    ),
    (
        "When does GEAR NOT LOCKED come on? Give both cases.",
        "landing flap put out at any height or under seven hundred feet with both levers near idle and in "
        "each case a leg isn't locked down",
        "right",
    ),
    (
        "When does GEAR NOT LOCKED come on? Give both cases.",
        "landing flap put out at any height and a leg not locked down",
        "partly",
    ),
    (
        "What do the leg lamps mean: green, flashing white, dark, amber?",
        "green down and locked flashing white in transit no light up and locked amber it disagrees with the "
        "lever for over fifteen seconds",
        "right",
    ),
)


@pytest.mark.parametrize(("question", "answer", "mark"), REMARKS)
def test_remarks(marker: Marker, question: str, answer: str, mark: str) -> None:
    """What is true and was not asked says nothing of what was."""
    assert marker.mark(question, answer).mark == mark


@pytest.mark.parametrize(("question", "answer", "mark"), A_WORKING)
def test_a_working(marker: Marker, question: str, answer: str, mark: str) -> None:
    """A working that leads up to a result claims none of its numbers; one that ends elsewhere is wrong."""
    assert marker.mark(question, answer).mark == mark


@pytest.mark.parametrize(("question", "answer", "mark"), A_FORMER_VALUE)
def test_a_former_value(marker: Marker, question: str, answer: str, mark: str) -> None:
    """A former value that is told in free words is none that is claimed."""
    assert marker.mark(question, answer).mark == mark


@pytest.mark.parametrize(("question", "answer", "mark"), A_STEP_PAST_A_BOUND)
def test_a_step_past_a_bound(marker: Marker, question: str, answer: str, mark: str) -> None:
    """One step past a bound is told as such, and is no figure."""
    assert marker.mark(question, answer).mark == mark


@pytest.mark.parametrize(("question", "answer", "mark"), CONTINENTAL_NUMBERS)
def test_continental_numbers(marker: Marker, question: str, answer: str, mark: str) -> None:
    """Numbers written with a point for the thousands or a comma for the decimals are read as meant."""
    assert marker.mark(question, answer).mark == mark


@pytest.mark.parametrize(("question", "answer", "mark"), ORDERS_SUMMED)
def test_orders_summed(marker: Marker, question: str, answer: str, mark: str) -> None:
    """A sum of orders is told by what one takes off the other."""
    assert marker.mark(question, answer).mark == mark


@pytest.mark.parametrize(("question", "answer", "mark"), A_MODE_LEFT)
def test_a_mode_left(marker: Marker, question: str, answer: str, mark: str) -> None:
    """A mode that is said to be left is not the one in use."""
    assert marker.mark(question, answer).mark == mark


@pytest.mark.parametrize(("question", "answer", "mark"), SHORT_NAMES)
def test_short_names(marker: Marker, question: str, answer: str, mark: str) -> None:
    """Short names of people and places count as the long ones; one item of two is a part."""
    assert marker.mark(question, answer).mark == mark


@pytest.mark.parametrize(("question", "answer", "mark"), A_DEGREE)
def test_a_degree(marker: Marker, question: str, answer: str, mark: str) -> None:
    """A reading that is said to be past an edge which it is not past is judged wrongly."""
    assert marker.mark(question, answer).mark == mark


@pytest.mark.parametrize(("question", "answer", "mark"), A_LABEL)
def test_a_label(marker: Marker, question: str, answer: str, mark: str) -> None:
    """A light that does not show in a state is wrong, whatever stands beside it."""
    assert marker.mark(question, answer).mark == mark


@pytest.mark.parametrize(("question", "answer", "mark"), A_LABEL_ASKED)
def test_a_label_asked(marker: Marker, question: str, answer: str, mark: str) -> None:
    """A light or memo that is asked for besides a state is one of the points."""
    assert marker.mark(question, answer).mark == mark


@pytest.mark.parametrize(("question", "answer", "mark"), A_SETTING_CHOSEN)
def test_a_setting_chosen(marker: Marker, question: str, answer: str, mark: str) -> None:
    """The setting that a policy chooses, and why."""
    assert marker.mark(question, answer).mark == mark


@pytest.mark.parametrize(("question", "answer", "mark"), A_READING_IN_PARTS)
def test_a_reading_in_parts(marker: Marker, question: str, answer: str, mark: str) -> None:
    """A question in several parts on a reading has all its parts as points."""
    assert marker.mark(question, answer).mark == mark


@pytest.mark.parametrize(("question", "answer", "mark"), LOOSELY_PUT)
def test_loosely_put(marker: Marker, question: str, answer: str, mark: str) -> None:
    """Lists without stops and steps in other verbs are heard."""
    assert marker.mark(question, answer).mark == mark
