"""Everyday ways of saying what the books have a word for: "carry on", "count on", "loses its pressure".

They are ways of speaking of the language, not of one aeroplane; a name of a thing belongs in the knowledge.
"""

from __future__ import annotations

import re

_FELLOW = (
    r"(?:the )?(?:other|opposite|second) (?:nose |main )?(?:one|t[yi]re|wheel)(?: (?:on|of) (?:that|the same|its) "
    r"(?:leg|axle))?|(?:the )?(?:one|t[yi]re|wheel) (?:next to|beside|alongside) (?:it|that(?: one)?)|"
    r"its (?:mate|twin|partner|neighbour|neighbor|fellow)"
)
"""The thing beside the one that is spoken of."""
_GOES_TOO = (
    r"(?: (?:has|have|must|should|needs?|will|is|gets?|goes|comes|to|be|come|go|off|out|replaced|changed|swapped|"
    r"renewed|scrapped))* (?:(?:along |together )?with it|too|as well|likewise)"
)
"""What is done to a thing is done to that one as well."""
_WORKING_AT = "kick|push|press|stamp|stand|tread|move|turn|waggle|shove|pull|work|pump|twist|stomp"
_WORKED = r"(pedals?|tillers?|levers?|buttons?|rudder(?: pedals?)?|switch)"
_AT_WILL = (
    r"(?:all (?:you (?:like|want)|day(?: long)?)|as (?:hard|much|far|long|often) as you (?:like|want|can)|"
    r"however hard you like|for all you are worth)"
)
_IN_VAIN = (
    r"(?:(?:the )?(?:nose(?: wheels?)?|it|wheels|they|that) (?:won't|will not|doesn't|does not|don't|do not|wouldn't) "
    r"(?:turn|move|steer|react|respond|do a thing|do anything|budge)|nothing (?:happens|moves|turns|comes of it)|"
    r"(?:it |that )?(?:does|do) nothing)"
)
"""Working at a thing in vain: "kick the rudder all you like and the nose won't turn"."""
_PLAINER = {
    r"(does|do|will|would|can|did) ?(?:not|n't|never) fail to": r"\1",
    r"(?:i|we) (?:would not|wouldn't|do not|don't) (?:say|think) (?:that )?(?:it|they) (work|steer|hold)s?": (
        r"it does not \1"
    ),
    r"(?:the )?air (?:goes|is let|leaks|escapes|comes) out of (?:the |a |its )?(tyres?|tires?)": r"the \1 deflates",
    r"(?:the )?(tyres?|tires?) (?:loses?|lets? out) (?:its |the )?air": r"the \1 deflates",
    r"(?:uses?|using|used|eats?|runs?|running) (?:up|through)(?= (?:the |accumulator |brake )*fluid)": "spends",
    r"(?:works?|working|are|is) (?:just )?(?:as (?:usual|normal|before)|normally)(?=\s*(?:[,.;]|and\b|$))": (
        "not affected"
    ),
    r"(?:the )?(flag) (?:is )?in(?=\s*(?:[,.;]|and\b|its\b|$))": r"\1 retracted",
    r"one (?:on|for|to|per|at) (?:each|every) leg": "three, one each leg",
    r"(kick|push|stamp on|work) (?:the )?rudder(?! pedal| check)": r"\1 the pedals",
    rf"(?:you can |you could |however hard you )?(?:{_WORKING_AT}) (?:on |at )?(the )?{_WORKED}(?: {_AT_WILL})?,?"
    rf"(?: and| but)? {_IN_VAIN}": r"\1\2 do nothing",
    r"(?:carry|keep|press) (?:on|going)": "continue",
    r"(?:keep|keeps|keeping) rolling": "continue",
    r"(?:do not|don't|never|not) (?:retract|raise) (?:the |your )?(?:gear|wheels|legs)": "leave the gear down",
    r"(?:the )?wheels (?:stay|remain|are left) down": "leave the gear down",
    r"(?:can |may )?(?:count|bank|depend) on": "rely on",
    r"(?:the )?(?:two|both|pair) of (?:us|you)|(?:the (?:two|pair)|both) of them": "both pilots",
    r"one (?:more|further|extra) (?:time)?": "once more",
    r"(?:takes?|taking|took) (?:the |its )?pressure (?:off|from|out of)": "depressurises",
    r"(?:loses|loses its|loses the|has no|have no|without|no|no more) pressure(?: (?:in|to|for|on))?": "depressurised",
    r"(?:(?:it |that )?(?:does not|doesn't|don't|no|will not|won't) matter|regardless of|irrespective of|never mind|"
    r"it doesn't care) (?:how (?:high|low)|(?:(?:what|which|the|your) )*height)"
    r"(?: (?:you|we) (?:are|fly)| (?:you|we)'re| is| it is)?": "at any height",
    r"pump(?:s|ed|ing)? (?:it |them |the tyres? )?(?:right |all the way |fully |full )?(?:back )?up(?: again)?": (
        "re-inflate"
    ),
    r"just follow": "castor freely",
    r"(?<!not )always(?=\s*(?:[,.;]|$))": "at all times",
    r"let(?:s)? (?:the )?(tyres?|tires?) down": r"deflates the \1",
    r"so (?:that )?(?:it|they|the tyres?) (?:(?:does|do) not|doesn't|don't|cannot|can't|won't) burst": (
        "to prevent a burst"
    ),
    r"(?:a |the )?get(?:s|ting)? (?:a )?tow(?:ed)?": "be towed",
    r"need (?:a )?tow": "be towed",
    r"nose oleo": "nose strut",
    r"diff\.?(?= (?:brak\w*|thrust|power)\b)": "differential",
    r"three[ -]quarters of an hour": "45 minutes",
    r"(?:a |one )?quarter of an hour": "15 minutes",
    r"half an hour": "30 minutes",
    r"let(?:s)? go (?:of )?and (?:press|push)(?:es)? again": "release and reapply",
    r"(?:does|do|did|has|have) not (?:yet )?agree[sd]?(?: with)?": "disagrees with",
    r"(?:(?:have|has|having|make|give it|with) )?(?:just |only )?(?:the |a )?(?:one|single|1|sole) "
    r"(?:go|try|attempt|shot|stab)": "try once",
    r"(?:is |are |gets? |got |been |being |has been |'s |'s been )+(?:put|pushed|placed|slid|slotted|popped|stuck) "
    r"in(?=\s*(?:[,.;)]|at\b|by\b|and\b|for\b|to\b|on\b|$))": "is inserted",
    rf"(?:{_FELLOW}){_GOES_TOO}": "with its axle mate",
    r"(?:has|have|had|needs?|must|should) (?:got )?(?:to )?(?:come|be taken|be pulled) off": "replace",
    r"(?:write|writes|wrote) (?:it|this|that|them) up": "write it in the technical log",
    r"not (?:be )?unlocked": "locked",
    r"unlocked (legs?|gears?|doors?)": r"\1 is not locked",
    r"(?:it is |is |are |it's )?unlocked": "is not locked",
    r"(?:put|putting|move|moving|bring|pull|push|select) it (?:back )?(up|down)": r"put the lever \1",
    r"(?:re-?)?select(?:ed|ing)? (?:it |gear |the gear |the lever )?(?:back )?(up|down|dn)(?: again)?": r"lever \1",
    r"park(?:ing)? ?brake(?: lever| handle)?(?: is| has been|'s)? (?:on|applied|pulled|up|engaged)"
    r"(?=\s*(?:[,.;)]|and\b|plus\b|with\b|while\b|when\b|but\b|\+|&|$))": "parking brake lever set",
    r"(nearest|closest|next) suitable(?= (?:if|unless|when|with|without)\b|\s*(?:[.,;)]|$))": r"\1 suitable airfield",
    r"(?:stays?|remains?) (?:away|hidden|dark|unlit)": "does not show",
    r"(lost|locked|light|lamp|memo|caption|message|mismatch|heat) (?:stays?|remains?) (?:off|out)": r"\1 does not show",
    r"(?<!i )(?<!we )(?:forget|skip) (?:about )?(?:using )?(?:the |your )?(auto ?brak(?:e|es|ing)|anti-?skid)": (
        r"no \1"
    ),
    r"n\.?w\.?s": "nose wheel steering",
    r"(?<!no )park(?:ing)? ?brake(?: is| has been|'s|s)? set(?! memo| caption| light| message| is| on)": (
        "parking brake lever set"
    ),
    r"both tls?|(?<!\w)tls": "both thrust levers",
    r"(?:too hot|hotter than (?:is )?allowed) (?:for|to) (?:the |begin )*(?:take-?off|take off|depart|go)": (
        "above the maximum to begin take-off"
    ),
    r"(?:along |together )?with (?:the|its) (?:other|opposite|second) (?:nose |main )?(?:one|t[yi]re|wheel)": (
        "with its axle mate"
    ),
    r"both (?:of )?(?:the |nose |main )*t[yi]res": "the tyre with its axle mate",
    r"(?:the |that )?amber(?: light| caption| message)?(?: still)? (?:does not|doesn't|will not|won't|hasn't|has not) "
    r"(?:go|gone|clear|cleared|disappear|disappeared|extinguish|extinguished)(?: out| off| away)?": "still amber,",
    r"(?:ignore|ignores|ignoring) (?:it|them|this|that|you|the tillers?)": "do not respond",
    r"us(?:e|es|ing) up": "spends",
    r"(?:if|when) (?:any|a|one)(?: of the)?(?: three)? greens? (?:is|are) (?:missing|lacking|out|absent)": (
        "if not all green"
    ),
    r"looks after": "runs",
    r"(?:comes?|coming|goes|going|sounds?|sounding|blares?|switch(?:es|ing)?|turns?|cycl(?:es|ing)|is|that's|"
    r"cuts?|cutting|fad(?:es|ing)|drops?) "
    r"(?:on and off|off and on|in and out|out and in|in (?:short )?bursts|every few seconds)": "is intermittent",
    r"(?:at |near |close to |towards? |set to )?(?:take-?off|take off|climb|maximum|max|toga) (?:thrust|power)"
    r"(?= or| and|,|\.|;|$)": "full power",
    r"not (?:all|every)(?: of)?(?: the)?(?: three)? (legs?) (?:(?:is|are|being) )?(?:down and )?locked": (
        "a leg not locked"
    ),
    r"(?:a|one) tenth(?! of a)": "10 percent",
    r"(?:a|one) fifth(?! of a)": "20 percent",
    r"four[ -]fifths": "80 percent",
    r"(?:get|gets|got|getting) the hang of": "understood",
    r"(?:comes and goes|stops and starts|starts and stops|cuts? in and out)": "is intermittent",
    r"(?:it )?wins": "prevails",
    r"aero(?= (?:brak|drag))": "aerodynamic",
    r"(?:lets?|letting) (?:the |its |all )?pressure (?:go )?(?:out|off)(?: (?:from|of))?": "vents",
    r"no (?:need|call) (?:for|of)": "do not use",
}
_FOUND = [(re.compile(rf"\b(?:{spoken})(?!\w)", re.IGNORECASE), plain) for spoken, plain in _PLAINER.items()]


def plainer(text: str) -> str:
    """Return a text with everyday phrases in the words that the books use."""
    for spoken, plain in _FOUND:
        text = spoken.sub(plain, text)
    return text
