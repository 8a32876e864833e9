"""The forms in which a sentence puts a question: open, yes or no, a choice, "pass or fail", "So?"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

OPEN = regex(
    r"\W*(?:(?:and|so|but|then|now|ok|well|hi|hello) )*"
    r"(?:what|wot|which|where|how|why|who|when(?! (?:it|its|it's|the|i)\b))",  # "and when it's freezing" asks no time
    re.IGNORECASE,
)
LATER = regex(  # not "..., which draws 300 A.", which only tells
    r",\s*(?:what|which(?! (?:draws|takes|needs|pulls|wants|has|is|runs|gives|uses|stands)\b[^?]*[.!;]\s*$)"
    r"|how (?:many|much|big|long))\b(?! about| if| do you)",
    re.IGNORECASE,
)
AND_WHETHER = regex(r"\band (?:is|are|will|would|can|could|does|do|should)\b", re.IGNORECASE)
AND_IF = regex(r"\band if\b", re.IGNORECASE)
AND_ASKS = regex(  # where a second question begins in one sentence: "and what", "and if not, what"
    r",? and (?=(?:if (?:\w+['’]?\w* ){1,2}?\w*['’]?\w*,? )?"
    r"(?:is|are|will|would|can|could|does|do|should|may|must|what|which|where|how|why|when)\b)",
    re.IGNORECASE,
)
WHETHER_ANY = regex(  # "is there any X in it" asks for something of which no word tells whether it is good
    r"\W*(?:(?:and|so|but|then|now|ok|well|hi|hello)\W+)*(?:(?:is|are|would|will|could) there|isn['’]?t there)\b",
    re.IGNORECASE,
)
LED_IN = regex(  # "OK, scrap it then?"
    r"\W*(?:ok|okay|right|well|fine|good)\b"
    r"(?=,| (?:so|then|scrap|bin|replace|is|are|do|does|can|should|will|what|but)\b)",
    re.IGNORECASE,
)
BARE = regex(  # "So?"
    r"^\W*(?:so|well|and|(?:your |the )?(?:verdict|result|conclusion|judgement))\W*$", re.IGNORECASE
)
POLAR = regex(  # "will a 20 W panel hold it": a sentence that begins as a yes or no question does
    r"\W*(?:(?:and|so|but|then|now|ok|well|hi|hello)\W+)*"
    r"(?:is|are|was|were|will|would|can|could|does|do|did|should|shall|may|must|has|have)\b(?! you\b)",
    re.IGNORECASE,
)
INDIRECT = regex(  # "my question is only whether it can stand there"
    r"\b(?:question|wonder\w*|know|ask\w*|tell me|say|see|sure)\b[^.?!;]{0,20}"
    r"\b(?:whether|if) (?:it|they|this|that|the|my|our|i|we)\b(?! (?:\w+ ){0,4}or\b)",
    re.IGNORECASE,
)
GOOD_OR_BAD = regex(
    r"\b(?:good|ok|okay|fine|healthy)\b,? or (?:is (?:it|that) )?(?:bad|low|poor|not good|flat|no good)\b",
    re.IGNORECASE,
)
PASS_OR_FAIL = regex(r"\bpass(?:ed|es)?(?:,? or |, ?| ?/ ?)(?:is (?:it|that) )?(?:a )?fail(?:ed|s)?\b", re.IGNORECASE)
NEW_ONE = regex(  # "8.9 V under load. New one?"
    r"(?:^|[,.;:-])\W*(?:(?:so|then|ok|and) )?(?:an? )?new (?:one|ones|battery|batteries)(?: needed| then)?\W*$",
    re.IGNORECASE,
)
BOTH_WAYS = regex(  # "does that fly or not", "yay or nay": a yes or a no is all that is wanted
    r"\b(?:fly|go|work|works|run|do|does|hold|cope|fit|suit|start)(?: to go)?,? or (?:not|nope|nah|no(?: go)?)\b"
    r"|\by(?:ay|ea|es|eah|ep|up)\s?(?:,? or |/| / )\s?n(?:ay|o|ope|ah)\b|\bgo\s?(?:/|,? or )\s?no[- ]?go\b"
    r"|\bthumbs? up(?:,? or |/)(?:thumbs? )?down\b|\b(?:can|will|does|do)(?:,? or |/)(?:can|wo|does|do)n?['’]?t\b",
    re.IGNORECASE,
)
WHAT_IS_LOST = regex(r"\bwhat(?:['’]?s| is| are)? (?:the )?(?:dropped|drop|loss|lost)\b", re.IGNORECASE)
NO_OPEN = r"^(?!\W*(?:and |so |but )?(?:where|when|how|what|which|who|why)\b)(?!.*\bor\b)"
GO_NOW = regex(  # "must I go now?", of which no is "stay in bed"; no choice: "will it keep or must I go"
    NO_OPEN + r".*\b(?:must|should|do|shall|need|had)\s+(?:i|we)\s+(?:(?:have|need|ought|better)\s+(?:to\s+)?)?"
    r"(?:really\s+|now\s+|better\s+)*"
    r"(?:(?:drive|rush|hurry|run|get|head|come|walk|row)\s+(?:out|down|over|up|back|there|home)"
    r"|go(?=\W*$|\s+(?:now|there|down|out|over|tonight|today|back|to\s+the\s+(?:boat|harbour|marina)|aboard)\b))",
    re.IGNORECASE | re.DOTALL,
)
REMOVED = regex(  # "should the wing nuts go?": yes where they are bad; not "does it go?"
    NO_OPEN + r".*\b(?:(?:should|must|shall)\s+(?!(?:i|we|you)\b)(?:[\w'’-]+\s+){1,5}?"
    r"|(?:do|does)\s+(?!(?:i|we|you)\b)(?:[\w'’-]+\s+){1,5}?(?:have|need|ought)\s+to\s+)"
    r"(?:go(?:\W*$)|(?:come|go)\s+(?:off|out)\b"
    r"|be\s+(?:changed|replaced|renewed|swapped|scrapped|thrown|taken\s+off)\b(?!\s+(?:as|together|in)\b))",
    re.IGNORECASE | re.DOTALL,
)
ODD_ONE = regex(
    r"\b(?:not like the other|odd one out|stands? out|bad apple|one of (?:them|these) is not)", re.IGNORECASE
)
DOES_HARM = regex(r"\b(?:do|does|did|done)\s+(?:\w+\s+){0,3}?(?:harm|damage)\b", re.IGNORECASE)
NO_TROUBLE = regex(  # "not a problem?", "no problem with that, right?": a bare yes or no could be taken either way
    r"\b(?:not|no|isn['’]?t|is not|wouldn['’]?t be|won['’]?t be)\s+(?:that\s+)?"
    r"(?:(?:an?|any|really|much|big|real)\s+){0,2}"
    r"(?:problems?|issues?|trouble|drama|worr(?:y|ies))\b(?:\s+(?:with|for|at|in|on|to|if|there|then)\b[^?,;]*)?"
    r"(?:\s*,?\s*(?:right|correct|yes|no|surely|true|is it|is there|would it|will it))?\s*\?\W*$",
    re.IGNORECASE,
)
WELL = r"(?:good|right|normal|ok(?:ay)?|healthy|great|fine)"
CALLED_BAD = regex(  # "it's not good, is it", "no good is it": yes and no would both agree
    rf"\b(?:it|that|this|they)(?:['’]?s|['’]re| is| are)?\s+(?:not|no)\s+(?:so\s+|too\s+|very\s+|really\s+)?"
    rf"{WELL}\b[\s,]*(?:right|correct)\W*$"
    rf"|\b(?:it|that|this|they)\s+(?:isn|aren)['’]?t\s+(?:so\s+|too\s+|very\s+|really\s+)?"
    rf"{WELL}\b[\s,]*(?:is (?:it|that|this)|are they|right|correct)\W*$"
    rf"|\b(?:no|not)\s+(?:(?:any|much|so|too|very|really)\s+)?(?:{WELL}|use)\b[\s,]*"
    r"(?:is (?:it|that|this)|are (?:they|these|those))(?:\s+then)?\W*$",
    re.IGNORECASE,
)
CALLED_TOO_LITTLE = regex(  # "not enough, is it"
    r"(?:\b(?:not|never)|n['’]t)\s+(?:really\s+|quite\s+)?(?:big\s+|strong\s+)?enough\b[\s,]*"
    r"(?:is (?:it|that|this)|are (?:they|these|those))(?:\s+then)?\W*$",
    re.IGNORECASE,
)
ONE_OR_MORE = regex(  # "do I need one charger or two?" wants neither yes nor no
    r"\b(?:one|1|a single)\b[^.?!;]{0,24}\bor (?:is it )?(?:two|2|three|3|several|one (?:each|for each))\b"
    r"|\b(?:two|2|several)\b[^.?!;]{0,24}\bor (?:just |only |is )?(?:one|1|a single)\b(?! (?:of|that|which))",
    re.IGNORECASE,
)
OR_ELSE = regex(  # "or are we kidding ourselves", "or will I find it flat": only the contrary of what is asked
    r",? or (?:(?:am i|are we|is (?:it|that|this|he|she)) (?:just |only )?"
    r"(?:kidding|fooling|dreaming|deluding|deceiving|hoping|asking (?:too much|for trouble)|too optimistic)\b"
    r"|(?:will|would|shall|do|might) (?:i|we) [^?!;,]{0,30}?\b(?:flat|dead|empty|stranded|stuck|adrift|let down)\b"
    r"|(?:will|would) (?:it|they|the \w+) (?:be|go|run|end up) (?:flat|dead|empty)\b"
    r"|(?:should|must|do|will) (?:i|we) (?:have to |need to )?(?:worry|be worried|be concerned|panic)\b)",
    re.IGNORECASE,
)
FORMS = (  # that tell by themselves how it is asked
    (NO_TROUBLE, "trouble"),
    (CALLED_BAD, "agreed"),
    (CALLED_TOO_LITTLE, "enough"),
    (BARE, "open"),
    (ONE_OR_MORE, "open"),
    (WHAT_IS_LOST, "open"),
    (GOOD_OR_BAD, "both"),
    (PASS_OR_FAIL, "passed"),
    (BOTH_WAYS, "good"),
    (GO_NOW, "go"),
    (REMOVED, "bad"),
    (ODD_ONE, "open"),
    (NEW_ONE, "open"),
)
EITHER = regex(r"\w,? or \w", re.IGNORECASE)
TAG = regex(  # "... is over the limit. Is it?"
    r"\W*(?:is|are|was|were|does|do|did|will|would|can|could|should|has|have) (?:it|they|that|this|those|these|he|she)"
    r"(?: really| now| though)?\W*",
    re.IGNORECASE,
)
