"""The words by which a turn steers: say again, why, where it says so, disregard, thanks, a dispute.

Each control has its alternatives, whole turns but for courtesies around them, and the pieces of which every text that
an alternative fits holds one, so that the patterns of most turns need not be tried.
"""

from __future__ import annotations

_AGAIN = (
    r"(?:i )?say (?:that |it |all )?again(?: all| your last| that| the last one)?",
    r"repeat(?: that| it| your last| (?:the|that) (?:last|max|maximum|min|minimum|figure|number|value|limit))?",
    r"come again",
    r"once more",
    r"one more time",
    r"again",
    r"(?:can|could|would|will) you (?:repeat|say)(?: that| it)?(?: again)?",
    r"what was that",
    r"pardon",
    r"say that once more",
    r"i didn.?t (?:catch|get) that",
    r"missed that",
    r"i missed that",
    r"read (?:that )?back",
    r"words twice",
    r"(?:sorry|eh|huh|(?:sorry|eh|huh|oh)\W+what)\?*",
    r"say what",
    r"say (?:all after|all before|again)(?!.*\d)"
    r"(?! (?:at |for |from )?(?:ten|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety"
    r"|a hundred|one|two|three|four|five)\b).{0,20}",
    r"(?:i )?(?:(?:didn.?t|did not|couldn.?t|could not|can.?t) (?:catch|get|hear)|missed)"
    r"(?: (?:that|it|you|any of that|all of that|a word|the last (?:bit|part|one)|that last (?:bit|part|one)))?",
    r"(?:you (?:were|got) |that was |you.?re )(?:cut off|garbled|unreadable|breaking up|broken)|garbled|unreadable",
    r"(?:give|read|tell|say)(?: it| that)?(?: to)? me (?:it |that )?(?:again|once more)",
    r"(?:run|go over) (?:it|that)(?: (?:by|past) me)? (?:again|once more)",
    r"what did you (?:just |actually )?(?:say|call it|tell me)|what.?d you (?:just )?say",
    r"(?:what|which) (?:was|were) (?:it|they|those|(?:that|the|those) (?:figure|number|value|answer)s?)",
    r"speak slower",
)
_WHY = (
    r"why(?: is (?:that|it|this)| not| so| does it| does that happen| would (?:that|it) be| though"
    r"|.?s (?:that|it)(?: so)?)?",
    r"for what reason",
    r"what.?s the reason(?: for that)?",
    r"what is the reason(?: for that)?",
    r"reason",
    r"explain(?: that| why)?",
    r"how so",
    r"why (?:is|does|do|should) (?:it|that|this)(?: be)?(?: so| happen| the case| like that"
    r"| the (?:limit|rule|figure))?",
    r"how come(?: (?:that|it|this))?(?:.?s| is)?(?: that| so)?",
    r"(?:what|on what|for what)(?:.?s| is| are)? (?:behind (?:that|it|this)|(?:(?:the|your) )?(?:logic|thinking|idea"
    r"|rationale|reasoning|reason|grounds)(?: (?:of|for|behind) (?:that|it|this)| there| here)?)",
    r"(?:is there |got |have you got |have you )?(?:a|any|the|some) (?:particular |good |special )?reason"
    r"(?: why| for (?:that|it|this)| is| given)?",
    r"(?:can|could|will|would) you (?:explain|tell me)(?: (?:that|it|this))?(?: why)?",
    r"(?:tell me|do you know|do we know|says|say) why(?: (?:that|it) is)?",
    r"because(?: of)?(?: what| why)?",
    r"y|wy",
    r"why (?:does|should|would) (?:that|it|this) (?:matter|do (?:that|it|this))",
    r"why (?:do|must|should|would|have|did) (?:we|i|they|you|you lot)(?: have to| need to)? ?(?:do|done|say)?"
    r"(?: that| it| this| so)?",
    r"why (?:that|this|such|so)(?: an?)? (?:figure|number|value|limit|rule|much|many|little|few|high|low|slow|fast|long"
    r"|short|small|big|large|strict|tight|hot|soft|hard)",
    r"why (?:is|are) (?:it|that|this|they) so (?:much|many|little|few|high|low|slow|fast|long|short|small|big|large"
    r"|strict|tight|hot|soft|hard)",
    r"what makes (?:it|that) (?:so|that)",
    r"why (?:is|are|was|were) (?:it|that|this|they|those) (?:so )?(?:much |any )?(?:lower|higher|less|more|fewer"
    r"|smaller|bigger|larger|greater|slower|faster|shorter|longer|lighter|heavier|cooler|hotter|tighter|stricter|different)"
    r"(?: then| (?:than|from) (?:that|it|this|before|the (?:other|others|first|last|rest)(?: one)?))?",
)
_SOURCE = (
    r"where(?! ?(?:.?s|is|does|do|did|.?d) it get\b)(?: exactly)?"  # "where does it get that from" asks what feeds it
    r"(?:.?s| is| was| does| do| did)? ?(?:it|that|they|this|you)?(?: it)? ?"
    r"(?:say|says|written|from|come from|stated|said|get|published|find|found|get that from|come|you get)?"
    r"(?: all)?(?: that| this| it| from| so)*"
    r"(?: written| from| stated| said| in the (?:book|books|manual|manuals))?",
    r"from(?: where)?",
    r"says who",
    r"who says(?: so| that)?",
    r"(?:what.?s|what is|what was) (?:the|your) (?:source|reference|ref)(?: for that)?",
    r"source",
    r"reference",
    r"(?:which|what) (?:manual|document|book|paragraph|para|page|section|revision|reference)"
    r"(?: is (?:that|it)(?: in| from)?| says (?:so|that)"
    r"|(?: has| have| covers| tells| states| gives)(?: me)? (?:that|it|this)| and paragraph)?"
    r"(?: is that)?(?: in)?",
    r"according to (?:who|what|whom)",
    r"chapter and verse",
    r"paragraph",
    r"on whose authority",
    r"(?:give|show|quote|tell) me (?:the|your|a|that) (?:reference|source|paragraph|ref|para)",
    r"where can i (?:find|read|look up|check|verify) (?:that|it|this)",
    r"where ?(?:.?d| did| do) you (?:get|find|read|have) (?:that|it|this)(?: from)?",
    r"(?:have you |you have |you )?(?:got|any) (?:a |the )?(?:reference|ref|source|paragraph|page)"
    r"(?: for (?:that|it|this))?",
    r"whose (?:rule|limit|policy|number|figure|idea|word) (?:is|was) (?:it|that|this)",
    r"where (?:is|was|are) (?:that|this|the|those) (?:rule|limit|figure|number|value|policy|item|bit|one)s?"
    r"(?: written| from| stated)?",
    r"(?:from )?where (?:is|does|did|do) (?:that|it|this|they)(?: come)?(?: from)?",
    r"(?:(?:could|can|would|will) you )?(?:point|direct|take|send) me"
    r" to (?:the|its|that) (?:paragraph|page|source|reference|text)",
    r"(?:is )?(?:that|it|this) (?:is )?(?:from|in) (?:which|what) (?:manual|document|book|paragraph|page)",
    r"(?:is that|that.?s|is it) (?:actually |really )?(?:in the|from the|an?)"
    r" (?:book|manual|official|company)(?: rule| limit)?",
    r"what.?s (?:that|it) (?:based on|from)",
    r"(?:which|what) (?:paragraph|page|section|chapter) (?:would|should|do) (?:i|we)"
    r" (?:look|read|open)(?: in| at| up)?",
    r"cite(?: that| it)?",
    r"(?:which|what) (?:doc|document|manual) (?:says|is) (?:that|it|so)(?: from| in)?",
    r"how do you know(?: that)?",
    r"prove it",
    r"(?:book |manual )?refs?",
    r"who (?:said|says|told you)(?: that| so| it| this)?",
    r"according to(?: (?:who|whom|what|which)(?: \w+)?)?",
    r"(?:(?:can|could|may) (?:i|we) (?:have|get) |gimme |i need |i.?d like |need |your )(?:the |a |your )?"
    r"(?:source|reference|ref|paragraph|para|page)(?: (?:for|of|on|to) (?:that|it|this|those|these)(?: one)?)?",
    r"(?:source|reference|ref|paragraph|para|page|chapter)"
    r"(?: (?:for|of|on|to|behind) (?:that|it|this|those|these)(?: one)?)?",
    r"(?:quote|cite)(?: me)? (?:it|that|your source|the source|the ref|the reference)",
    r"(?:(?:what|which)(?:.?s| is)? (?:it|that|this) |(?:what|which) is (?:it|that) filed )?under"
    r"(?: (?:what|which)(?: (?:heading|paragraph|section|chapter|title|number|item))(?: is (?:that|it))?)?",
    r"under (?:what|which) (?:heading|paragraph|section|chapter|title|number|item)(?: is (?:that|it))?",
    r"what.?s (?:that|it|this) under",
    r"(?:on|by) (?:what|which) authority",
    r"where.?d (?:that|it|this|they|those|you get that) (?:come )?from",
    r"where (?:would|do|could|can) (?:i|you|we) read (?:up )?(?:on |about )?(?:that|it|this)",
    r"(?:can|could|will|would) you (?:give|quote|cite|name)(?: me)? (?:chapter and verse"
    r"|the (?:source|ref|reference|paragraph|para|page))",
    r"(?:is )?(?:that|it|this) (?:is )?(?:official|company|in writing|written down"
    r"|a company (?:thing|rule|policy|limit))",
    r"where (?:would|do|could|can) (?:i|you|we) (?:find|read|see) (?:that|it|this)(?: written)?",
)
_DISREGARD = (
    r"(?:disregard|ignore|forget|cancel|scrub|scrap|scratch|strike|skip|belay)"
    r"(?: (?:about|all|that|it|this|my|the|last"
    r"|one|question|i asked|i said|what i (?:asked|said)))+",
    r"disregard|never ?mind(?: (?:that|it|about (?:that|it)))?|nvm|cancel",
    r"(?:it |that )?(?:doesn.?t|does not|didn.?t) matter",
    r"(?:let.?s )?start (?:again|over|afresh)",
)
_UNDISPUTE = (
    r"(?:clear|withdraw|cancel|lift|drop|remove|undo) (?:the |that |this |my |all |every |of )*"
    r"(?:dispute[sd]?(?: records?)?)(?: (?:number |no\.? |on )?(?:\d+|that|it|this))?",
    r"dispute (?:cleared|withdrawn|resolved|over)",
    r"undispute",
)
_DISPUTES = (
    r"(?:(?:list|show|tell me|give me|read|my|the|all|any|open|of) )*"
    r"(?:disputes|disputed (?:records?|answers?|ones|limits?|facts?))",
)
DISPUTING = (
    r"(?:i )?(?:want to |would like to |wish to |need to )?dispute(?:d)?"
    r"(?: (?:(?:that|this|the|your|the last) (?:answer|record|limit|figure|value|number|one)|(?:that|it|this)"
    r"(?! (?:says?|said|is|was|has|had|reads?|should|must|ought|does|can|gives|shows|states)\b)))?"
)
_DISPUTE = (rf"{DISPUTING}(?:[:,\s].*)?",)
_DOUBT = (
    r"(?:no,? )?(?:that|this|it)(?:.?s| is) (?:wrong|not (?:right|true|correct)|incorrect|false|nonsense|rubbish)",
    r"(?:no,? )?(?:that|this|it) (?:isn.?t|can.?t be|cannot be|is not) (?:right|true|correct|so)",
    r"no,? (?:that|this|it) (?:isn.?t|is not)|no,? (?:that|it).?s not",
    r"(?:i )?(?:do not|don.?t) (?:think so|believe (?:that|it|you)|agree)|i disagree|i doubt (?:that|it)|not true",
    r"(?:you(?:.?re| are) )?(?:wrong|mistaken|incorrect)",
)
_STEPS = (
    r"how many (?:steps|items|actions|points)(?: (?:are (?:there|they|in it|to it|in that)|is (?:that|it)|does it have"
    r"|has it(?: got)?|in (?:all|total|it|that)|altogether|to do))*",
)
_THANKS = (
    r"thanks?(?: you| a lot| very much)?",
    r"cheers|ta|roger|wilco|copied|got it|understood|ok(?:ay)?|affirm(?:ative)?|noted|great|good|perfect|nice one",
    r"all copied",
)
_HELP = (
    r"help(?: me)?(?: out)?|how do i use (?:this|you|it)|how does this work|(?:what are )?(?:the |your )?commands",
    r"what (?:can|do) you (?:do|know|answer)(?: for me)?|what can you tell me",
    r"what (?:can|may|should|could|do) i (?:ask|say|type)(?: you| here)*",
)
_STANDBY = (r"stand[ -]?by(?: one)?", r"(?:wait|just) (?:one|a moment|a minute)|one moment")
_MOVE_ON = (
    r"(?:(?:let.?s|shall we|can we|we (?:can|should|could)|time to|i.?m|we.?re|just) )?mov(?:e|ing) (?:on|along)"
    r"(?: (?:to )?(?:the next (?:one|thing|topic|question|subject)|something (?:else|different)))?",
    r"(?:next|new|another|different|change of) (?:topic|question|subject|one please)",
)
_GO_ON = (r"go on|go ahead|carry on|i.?m (?:ready|back)|ready(?: now)?",)

CONTROLS = (
    ("help", _HELP, ("help", "use", "work", "command", "what can", "what do", "what may", "what should", "what could")),
    ("standby", _STANDBY, ("stand", "one", "moment", "minute")),
    ("move on", _MOVE_ON, ("mov", "topic", "question", "subject", "one please")),
    ("go on", _GO_ON, ("on", "ahead", "ready", "back")),
    ("again", _AGAIN, (
        "again", "repeat", "once more", "one more", "say", "what was that", "pardon", "catch", "get that", "missed",
        "back", "twice", "slower", "sorry", "eh", "huh", "what", "hear", "cut off", "garbled", "unreadable", "broken",
        "breaking", "again", "were",
    )),
    ("why", _WHY, (
        "why", "how come", "reason", "explain", "how so", "behind", "logic", "thinking", "rationale", "idea", "grounds",
        "cause", "y", "what makes", "tell me",
    )),
    ("source", _SOURCE, (
        "where", "says", "source", "ref", "manual", "doc", "book", "para", "page", "section", "revision", "according",
        "chapter", "authority", "cite", "you know", "prove", "whose", "based", "from", "official", "company",
        "who said", "told you", "quote", "under", "ref", "writing", "name",
    )),
    ("disregard", _DISREGARD, (
        "disregard", "forget", "mind", "cancel", "scr", "ignore", "strike", "skip", "belay", "nvm", "matter", "start",
    )),
    ("undispute", _UNDISPUTE, ("dispute",)),
    ("disputes", _DISPUTES, ("dispute",)),
    ("dispute", _DISPUTE, ("dispute",)),
    ("doubt", _DOUBT, (
        "wrong", "not", "n't", "nt", "n\u2019t", "incorrect", "false", "rubbish", "nonsense", "can", "disagree",
        "doubt", "don", "mistaken",
    )),
    ("steps", _STEPS, ("how many",)),
    ("thanks", _THANKS, (
        "thank", "cheers", "ta", "roger", "wilco", "copied", "got it", "understood", "ok", "affirm", "noted", "great",
        "good", "perfect", "nice one",
    )),
)  # fmt: skip
"""(control, alternatives, pieces): every text that an alternative fits holds a piece; the first that fits counts."""
