"""The plain English in which people answer: not knowing, yes and no, hedging, what was once so, bounds.

These are words of the language, true of any question; what the trade names stands in the knowledge base.
"""

from __future__ import annotations

import re


def word_set(text: str) -> frozenset[str]:
    """Return the words of a text as a set."""
    return frozenset(text.split())


NEGATORS = word_set("cannot neither never no non none nor not nothing without")
LOST = word_set("""
    bypassed dead disabled disconnected fail failed fails goes gone inactive ineffective inhibited inop inoperative
    disregarded excluded ignored omitted isolated lose loses losing loss lost off out unable unaffected unavailable
    unchanged useless
""")
"""Words after a thing that say that it is not there."""
KEPT = word_set("""
    active armed available both continu continue continued continues continuing functioning functions holds
    intact keep keeps kept normal ok okay on present remain remains retained stay stays still unaffected work
    working works yes
""")
"""Words beside a thing that say that it is there."""
STOPS = word_set(". ; : , ( ) ? ! - – —")
CONTRASTS = word_set("although but however instead then though whereas while yet")
JOINS = word_set("& / and any both either neither nor or plus the")
UNKNOWING = re.compile(
    r"\b(?:not (?:in|on|from) my|(?:is|are) not my|not (?:really |exactly )?(?:one of )?my \w+|rather not|"
    r"(?:gone|went|slipped|fallen|dropped|flown) (?:\w+ )?(?:out of|from) (?:my|the) (?:head|mind|memory)|"
    r"not (?:me|mine|us|ours)$|not (?:by|for) (?:me|us)$|"
    r"did not cover|not my department|pay grade|got that far|do not ask|tell me|blanking|"
    r"(?:crew|captain|engineer|engineers|maintenance|dispatch)(?: is| s)? (?:business|job|problem|department)|"
    r"never (?:flown|used|seen|saw|met|had|heard)|i (?:have )?only (?:ever )?(?:fly|flew|flown|use|used|did|do|had)|"
    r"(?:did|do) not (?:write|wrote|note|jot)\b|(?:left|leave) (?:it|that|this|mine|that one|this one) "
    r"(?:blank|open|out)\b|"
    r"(?:do|did) not have (?:the |any |those |these )?(?:\w+ )?(?:figures?|numbers?|values?|answers?|reasons?)|"
    r"(?:but|just|only|and) not (?:why|the (?:reason|figures?|numbers?|values?|rest|colou?rs?|steps?))$|"
    r"no calculator|no paper|(?:that is |it is |that s )?(?<!system )(?:one|a job|a question) for (?:the|my|an?) \w+|"
    r"good (?:airmanship|practice|technique|habit|manners|discipline)|common sense|"
    r"(?:how|the way) (?:they|it|that|things|everyone) (?:\w+ )?(?:is|are|was|were|do|does|designed|built|made|"
    r"wrote|set|works?|works? out)(?: (?:it|that|up|done|designed|built|made|them))?$|"
    r"i suppose$|it just (?:is|does)$|a hint|was the question|was not taught|my last type|"
    r"guess but|not taught)\b|"
    r"^(?:uh|um|er|erm) i do not$|"
    r"\bi only (?:know|look|remember|learnt?|learned)\b|\bi guess$|"
    r"\b(?:handles?|deals? with|sees? to|looks? after|sorts?(?: out)?|takes? care of) "
    r"(?:all )?(?:of )?(?:that|those|these|it|them|this)$|"
    r"\bleave (?:it|that|this)(?: one)? to (?:the |my |our )?(?:\w+ ){0,2}"
    r"(?:people|experts?|others|office|specialists?|team|lot|guys|folks)\b|\bdepends (?:on )?who\b|"
    r"\b(?:sorry|foggiest|faintest|no notion|not the slightest)\b|"
    r"^i (?:would|will) wait\b|\bneed (?:a|one|some|another) (?:minute|moment|second|while)\b|"
    r"(?:i )?(?:really |honestly |just |simply |still )?(?:do not|did not|can not|"
    r"cannot|could not|have not|has not|would not|never|not) (?:even |really |"
    r"quite |actually |ever |yet )?(?:know|remember|recall|sure|think of|"
    r"got a clue|have a clue|got there|got to|learn|learned|learnt|studied|"
    r"study|seen|understand|certain|a clue|been taught|"
    r"covered|revised|get(?! lost))\b|"
    r"(?:^|[,.;] |\b(?:i|we|just|honestly|but|and) )(?:really |honestly |just |simply |still )?"
    r"(?:do not|did not|can not|cannot|could not|have not|would not|never) (?:even |really |"
    r"quite |actually |ever |yet )?(?:tell|say|read|work|figure|do|answer|come|place)\b|"
    r"\bno (?:idea|clue|answer|memory|recollection|chance|"
    r"comment)\b|\b(?:pass|skip|dunno|forgot|forgotten|forget|beats me|search me|"
    r"(?<!the )(?<!its )(?<!your )next(?: one| question| please)?(?! \w)|drawing a blank|draw a blank|drawn a blank|"
    r"gone blank|mind (?:is|has gone|went) blank|blank on|unable|you tell me|"
    r"come back to|look (?:it|that|this) up|remind me|give up|stumped|haven ?t a clue|"
    r"lost me|escapes me|slipped my mind|rings no bell|no bells|say again|stand ?by|"
    r"help me|ask me (?:later|another)|another question|would have to (?:look|"
    r"check|guess)|need to (?:look|check)|^wait\b.{0,12}$|guessing|who knows|"
    r"good question|tip of my tongue|(?:it is|has|is) gone from)\b|\b(?:somewhere|"
    r"something|somehow|someone|enough of it|"
    r"whatever(?! (?:the|your|its) (?:\w+ ){1,3}(?:do|does|did)\b))\b|\b(?:ask|check with|"
    r"leave (?:it|that) to|up to|(?:that|it) is for|belongs to|depends on|call) (?:the |"
    r"a |an |my |your )?(?:captain|engineers?|maintenance|ground crew|crew|instructor|"
    r"other pilot|someone|somebody|dispatch|company|first officer|skipper|boss|"
    r"day|weather)\b(?! (?:if|for|when|to)\b)|\b(?:the )?(?:\w+ )?(?:captain|driver|"
    r"engineer|crew|boss|manual|book|checklist|table) (?:knows?|says so|says|"
    r"has it|briefs)\b|\b(?:get|look at|look in|read|open|use) (?:out )?(?:the |"
    r"my )?(?:\w+ ){0,2}(?:checklist|book|chart|graph|manual|table|notes|q ?r ?h)\b"
)
"""Not knowing, asking to be spared, or leaving it to somebody or some book."""
FORBIDDEN = re.compile(r"(?:it is |they are )?(?:not allowed|not permitted|forbidden|prohibited)$")
"""A point that only forbids."""
FORBIDS = re.compile(
    r"\bno (?:push\w*|tow\w*|\w+ing)\b|\b(?:not|never) (?:allowed|permitted)\b|\b(?:forbidden|prohibited)\b|"
    r"\b(?:must|may|can) not\b|\bcannot\b"
)
YES = re.compile(
    r"\b(?:yes|yep|yeah|yup|aye|affirm|affirmative|correct|sure|certainly|of course|"
    r"allowed|permitted|acceptable|okay|ok|fine|you may|you can|it may|it can|"
    r"it does|it is(?= (?:ok|okay|fine|acceptable|within|allowed|permitted|good|legal|enough|still|below|under|"
    r"inside)|$| [.,;])|it will|we can|we may|it would|they do|they may|i may|i can|"
    r"we are|good to go|no problem|within|it meets|it holds|still holds|legal|"
    r"go ahead)\b"
)
NO = re.compile(
    r"\b(?:no|nope|nah|negative|can not|cannot|may not|must not|is not|are not|"
    r"does not|do not|not|never|outside|exceeds|exceeded|forbidden|prohibited|"
    r"i doubt (?:it|that)|(?:there is|there s|has|have|got) none|^none|^nothing|"
    r"unacceptable|fails|too (?:hot|fast|high|low|much|long|far|heavy|slow|little|"
    r"wide|deep)|will not|would not|won t)\b"
)
NO_ACTION = re.compile(r"no action\b")
NOTHING_DONE = re.compile(
    r"\b(?:nothing|no (?:action|need|reason|work)|leave (?:it|as)|"
    r"(?:is|it s|perfectly|quite) (?:fine|ok|okay|good|acceptable)|"
    r"not(?: have)? to|(?:need|must|do) not|as it is|carry on|no further|none|fine|ok|okay|acceptable)\b"
)
"""What people say where there is nothing to be done."""
FORMER_BEFORE = re.compile(
    r"\b(?:was|were|used to(?! (?:confuse|forget|mix|muddle|swap)\b)(?: [a-z]+){1,5}|"
    r"formerly|previously|once|old|before it was|had been|"
    r"up from|down from|came down from|went up from|raised from|lowered from|"
    r"reduced from|increased from|cut from|changed from|instead of|rather than|"
    r"no longer|(?<!does )(?<!do )(?<!did )not|isn t|superseded|former|originally|learned|learnt|replaced|"
    r"replaces|before (?:that|this))(?: (?:a|an|the|to|be|at|as|value|figure|limit|of|only|just|about|"
    r"any|it|is|was|says|said|book|one))*$"
)
FORMER_AFTER = re.compile(
    r"^(?:(?:is|was) )?(?:before(?:$| (?:and|but|then|that|this|it|now|"
    r"(?:the )?(?:last |latest )?(?:revision|rev|change))\b)|"
    r"previously|formerly|in the old|under the old|"
    r"until the|in the past|originally|(?:is|was) the (?:old|former|previous)|no longer|used to(?! be$)|"
    r"is (?:out|superseded|history)|went (?:out|away)|has gone|"
    r"(?:is|was|got|has been) (?:replaced|withdrawn|dropped))\b"
)
NOW = re.compile(r"\b(?:now|currently|today|present|present day|new|nowadays|these days|since)\b(?! and\b)")
DENIED = re.compile(r"\b(?:not|isn|no longer|instead of|rather than|never)\b")
HEDGES = re.compile(
    r"\b(?:maybe|perhaps|possibly|might be|could be|not sure (?:if|whether|which)|"
    r"or is it|or was it|one of (?:those|them|the two)|either|can not decide|"
    r"toss up|something like that|or thereabouts|take your pick|depending)\b"
)
ALIKE = re.compile(
    r"\b(?:both|either (?:case|way|one)|in each|each time|always|the same|all|"
    r"whichever|regardless|all of them)\b(?! of it\b| told\b| together\b)(?<!\bin all)(?<!\bat all)"
)
"""One thing said of several cases."""
NEEDS = word_set("be has have must need needed needs only required requires should till until wait")
"""Words by which a bound is what is required, not where a reading stands."""
GREATER_OF = re.compile(r"\bwhichever (?:is |one is )?(?:the )?(?:more|higher|greater|bigger|larger)\b")
AT_MOST = re.compile(
    r"(?:at most|or less|or below|or under|or lower|or slower|or fewer|maximum|"
    r"\bmax\b|not above|not over|not exceed|not exceeding|not more than|not faster than|"
    r"no more than|no faster than|no higher than|no greater than|not to exceed|"
    r"or smaller|at or below|not greater than|not beyond|and below|and under|"
    r"not higher than|never more than|never above|never over|(?<!it )tops|upper limit|"
    r"top limit|is (?:the |a |its )(?:most|highest|fastest|greatest|ceiling|max|maximum)\b)"
)
AT_LEAST = re.compile(
    r"(?:at least|or more|or better|or above|or over|or higher|or greater|minimum|"
    r"\bmin\b|not below|not under|not less than|no less than|not lower than|no lower than|"
    r"no slower than|not slower than|or faster|at or above|and above|upward|upwards|"
    r"and up(?! (?:at|to|by|below)\b)|never below|never less than|never under|lower limit|"
    r"is (?:the |a |its )(?:least|lowest|slowest|floor|min|minimum)\b)"
)
LOWER = re.compile(
    r"(?:below|under|less than|shorter than|cooler than|smaller than|lighter than|"
    r"lower than|down past|up to|beneath|inside|within|slower than|fewer than|short of)"
)
HIGHER = re.compile(
    r"(?:above|over|more than|higher than|longer than|hotter than|deeper than|"
    r"heavier than|beyond|past|it tops|exceeds|exceeding|greater than|faster than|exceed|"
    r"in excess of|from)"
)
PAST_BOUND = re.compile(
    r"\b(?:above|over|beyond|past|passes|tops|exceeds|exceeding|below|under|within|inside|"
    r"(?:hotter|higher|more|greater|faster|cooler|lower|less|slower) than) "
    r"(?:the |its )?(?:[\w-]+ ){0,4}"
    r"(?:maximum|max|limit)(?: of| which is| that is| at| is)?$"
)
"""Words before a number that is itself the bound: "above the maximum of"."""
ADDED = word_set("add added adding another extra further increase increased longer more over plus up")
"""Words by which a share comes on top of a whole: "60 % more"."""
MORE = word_set("bigger deeper faster greater higher hotter larger later longer more warmer")
LESS = word_set("colder cooler fewer less lower shorter slower smaller")
"""Words that with "than" say above and below."""
_OPPOSED = """
    left right; up down; on off; open closed; front behind; above below; inboard outboard; forward rearward;
    before after; first last; always never; connected disconnected; removed inserted; ground flight; steady
    pumping; idle forward; idle advanced;
    idle open; steady flashing; continuous intermittent; engage release; release add; release apply; arm disarm;
    slowly quickly; automatic manual; adds subtracts; inside outside; raise lower; extend retract; full idle; full
    empty; together apart; hot cold; wet dry; main nose; increase decrease; positive negative; all none; every
    one; retracted extended; set released; slower faster; pull push; visible hidden; filled hollow; both either;
    both one; tow taxi; straight turn; castor lock; pedal tiller; horn chime; horn bell; horn gong; horn buzzer;
    continuous single; continuous short; replace inflate; lock unlocked; once often; once twice; once thrice;
    inverse underlined; inverse flashing; inverse boxed; nearest home; nearest destination;
    first later; begin end; begin over; begin finish; extension retraction; healthy fail; healthy failed; healthy dead;
    healthy lost; maximum minimum; leave retract; castor centre; castor centred
"""
OPPOSITES = tuple((pair.split()[0], pair.split()[1]) for pair in _OPPOSED.split(";"))
"""Words that cannot both be meant of one thing; written as their plainest form (see `PLAIN`)."""
_FORMS = {
    "down": "dn",
    "behind": "aft rear",
    "back": "return",
    "only": "just solely merely",
    "quickly": "immediately instantly quick suddenly",
    "front": "ahead",
    "flight": "air airborne flying flt",
    "ground": "gnd",
    "closed": "shut close closes",
    "open": "opened opens opening",
    "lower": "lowered",
    "retract": "raise raises raised raising",
    "rearward": "backwards backward aftwards rearwards",
    "forward": "forwards",
    "inboard": "inwards inward",
    "outboard": "outwards outward",
    "automatic": "automatically",
    "manual": "manually",
    "continuous": "continuously constantly constant",
    "steady": "steadily",
    "slowly": "slow gradually",
    "left": "l remaining remain port lh",
    "spend": "consumes consume costs cost uses wastes waste",
    "replace": "new change changed renew swap",
    "above": "exceeds exceed exceeding beyond past exceeded over passes passed tops",
    "pumping": "pumped pump",
    "below": "under beneath underneath",
    "near": "nearby",
    "inserted": "fitted",
    "disconnected": "disconnect detached",
    "connected": "connect attached",
    "removed": "remove taken take",
    "right": "r starboard rh",
    "release": "releases",
    "engage": "engages",
    "flashing": "blinking",
    "intermittent": "intermittently interrupted pulsing pulses pulsed beeping beeps beep",
    "prevent": "prevents",
    "stop": "stops halt",
    "who": "whoever",
    "maintenance": "engineer engineers mechanics",
    "airfield": "field airport aerodrome",
    "again": "repeat repeatedly",
}
PLAIN = {form: word for word, forms in _FORMS.items() for form in forms.split()}
"""Another word for the plainest form of a direction, a side or a state."""
