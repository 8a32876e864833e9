"""Where a message begins to ask, behind all that it only tells: what it calls settled ("the fuse is sorted", "12.7, all
fine there"), what was, or is another man's ("my father had ... Mine is"), what stands before "all I need is ...". The
topics of that are no question, however many words speak for them.
"""

from __future__ import annotations

import re

from grammar.reading import Span
from grammar.text.patterns import regex
from service.routing.listed import ASKS, OPENS, ORDERED, asking

BE = r"(?:\b(?:is|are|am|was|were|been|gets?|got|went|all|both|now|feels?|looks?|seems?)|(?<=\w)['’](?:s|re|m))"
HOW = r"(?:(?:all|quite|very|perfectly|so|now|both|well|just|really|already|long since|ok and|good and)\s+){0,2}"
WELL = (
    r"(?:sorted(?: out)?|settled|arranged|decided|agreed|resolved|dealt with|taken care of|seen to|squared away|covered"
    r"|in (?:the )?(?:good|best|fine|great|perfect) (?:of )?(?:order|nick|health|shape|condition|fettle)"
    r"|in (?:hand|order|place)|done and dusted|fine|sweet|happy|pleased|satisfied|delighted|content|grand|dandy"
    r"|hunky[- ]dory|shipshape|spot on|tickety[- ]boo|lovely|perfect|excellent|splendid|brilliant|faultless"
    r"|(?:not|no longer|never) (?:the|an?|my|our) (?:issue|problem|point|question|trouble|worry|concern)"
    r"|no (?:bother|worry|problem|trouble)|beside the point|irrelevant|none of (?:my|our) business|clear to me"
    r"|(?:good|well|fine|ok|okay) there|(?:quite |all )(?:ok|okay|good|right|well)|history|ancient history|old news"
    r"|(?:for )?another (?:day|matter|story))"
)
AWAY = r"(?:that|this|it|them|those|these|all (?:of )?(?:that|this|it))"
GOES = (
    r"(?:(?:work|go|run|turn|charge|hold|spin|perform|behave|start)(?:s|es|ed)?|came (?:through|back|out)|goes|went"
    r"|has gone)"
)
FINELY = (
    r"(?:beautifully|perfectly|faultlessly|splendidly|nicely|admirably"
    r"|(?:very |so )?well|fine|great|lovely|grand|a treat|sweetly"
    r"|as (?:it|they) should|like an? (?:dream|train|charm|clock|(?:young )?god))"
)
TROUBLE = r"(?:worr(?:y|ies)|complaints?|bother|fuss|quarrel|concerns?|grumbles|issues?|trouble|questions?|problems?)"
NOT = r"(?:not|don['’]?t|do not|needn['’]?t|need not|ain['’]?t)"
SETTLED = regex(
    rf"{BE}\s+{HOW}{WELL}\b|\b(?:got|had|have|has) {AWAY} {WELL}\b"
    r"|\ball (?:good|well|fine|sweet|sorted|settled|done|ok|okay|in order|sound|right there|nice|new|working)\b"
    r"|\bboth (?:good|fine|passed|new|working)\b|\bpassed (?:fine|easily|well|with)\b"
    rf"|\b{GOES} {FINELY}\b|\bas (?:it|they|she|he) (?:should|ought to)(?: be)?\b|\bup and (?:working|running)\b"
    r"|\bnothing wrong (?:there|with)\b"
    r"|\bnever (?:skipped|missed) a beat\b|\bnever a falter\b|\bnever let (?:me|us) down\b"
    r"|\b(?:beautiful|handsome|lovely|good|neat|tidy|fine|grand) job\b|\b(?:job done|box ticked|touch wood)\b"
    r"|(?:^|[.!\n])\s*(?:fine|commendable|splendid|lovely|grand|(?:all )?very (?:well|good)|good|great|excellent"
    r"|so far so good)[.!](?!\w)"
    r"|,\s*(?:lovely|grand|splendid|all fine|all very well|so far so good),\s*(?=(?:but|only|just|now)\b)"
    rf"|\b(?:doing|does) {FINELY}\b|\b(?:does|do|doing) (?:its|his|her|their) (?:job|work|duty|bit|part)\b"
    r"|\b(?:does|do) what (?:it|he|she|they)(?:['’](?:s|re)| is| are)? (?:must|should|ought to|told|meant to)\b"
    rf"|\bno {TROUBLE}\b|\b(?:can['’]?t|cannot|mustn['’]?t) (?:complain|grumble)\b"
    rf"|\b{NOT} (?:bothered|worried|fussed|concerned|fear|worry)\b"
    rf"|\b(?:leave|skip|leaving|forget|ignore|never mind|enough of) {AWAY}(?= aside|[.,;!])"  # set aside
    rf"|\b(?:{AWAY}|which) (?:we|you|i) (?:can|may) (?:leave|skip|forget|ignore)\b(?! (?:it|them|the|this|in|on))"
    r"|\bleave \w+(?: \w+)? out of it\b|\bspare (?:me|us)\b|\b(?:may|can|will|must) wait\b|\bno call to be\b"
    r"|\b(?:does ?n['’]?t|does not|do not|don['’]?t) (?:enter|come) into it\b|\bnothing to do with (?:this|that|it)\b"
    r"|\bthat(?:['’]?s| is) (?:that|by the way|his|her|their)\b"
    r"|\b(?:not|ain['’]?t) askin(?:g|['’])? (?:about|whether|if|how|what|which)\b"
    rf"|\b{NOT} (?:need|want) (?:telling|to be told|to hear|an? (?:lecture|sermon)|lectures|sermons)\b"
    rf"|\b(?:{NOT}|no need to|never) (?:go on (?:about|at)|start on|get started on|harp on|lecture|preach)\b"
    r"|\bno (?:use|point|good|sense|need)(?: in)? (?:telling|saying|lecturing|warning|preaching)\b"
    r"|\b(?:which|that) (?:i|we)(?: ain['’]?t|['’]m not| am not|['’]re not| won['’]?t be)"
    r" (?:touch|chang|mov|replac|alter|buy|redo)ing?\b|(?<=, )not replacing\b(?= it| them|[.,;])"
    r"|\b(?:dead and buried|found and gone|good riddance)\b|\b(?:at|to|in|on) the (?:tip|scrap|skip|recycling|dump)\b"
    r"|\bi know, i know\b|\b(?:know|read) all about\b"
    r"|(?:\b(?:how|what|which|when|why)(?: \w+){1,6} |(?<=[a-z] ))(?:i|we) (?:already )?know"
    r"(?= ?[(.;!]|, \d|, (?:\w+ ){1,8}(?:i|we) (?:know|have)\b)"
    r"|(?:\bwhether(?: \w+){1,5} )?\b(?:i|we|he|she) (?:shall |will |['’]ll )?(?:decide|judge|settle)s?"
    r"(?: \w+){0,3} (?:my|our|him|her)sel(?:f|ves)\b"
    r"|\bthat much i know\b|\bi trust (?:them|him|her|it)\b"
    r"|\b(?:this|that|which) i(?:['’]ve| have) (?:measured|checked|tested|done|read)\b"
    r"|\bi(?:['’]ve| have) made up my mind\b"
    r"|\b(?:good for|lucky|bless|god (?:rest|bless)) (?:him|her|them|you)\b|(?:^|[.,;] ?)(?:i |we )?love (?:it|them)\b"
    r"|(?:^|[,.;]) ?(?:the )?[a-z]+ sorted(?=[.,;])"
    r"|\b(?:that|this|it)(?:['’]?s| is) (?:wired|joined|fitted|hooked up|connected) and (?:works|working|runs)\b",
    re.IGNORECASE,
)
DOUBTED = regex(  # "I hope it is all fine", "if that is settled", "not sorted", "he says it is fine"
    r"\b(?:if|whether|not|hop\w+|think|unless|until|till|should|would|could|may|when|once|says?|said|suppos\w+|swears?"
    r"|reckons?|claims?|tells?|told|talk|argues?|insists?|according|will|never|nothing|none|who|what|how|which|why|must"
    r"|only|apart|except|but for)\b|n['’]t\b|['’](?:ll|d)\b",
    re.IGNORECASE,
)
WHO = r"(?:i|we|he|she|they|the (?:owner|skipper|wife|man|lad|gent|customer))"
ONLY = r"(?:just|jus|only|merely|simply)"
WANTS = (
    r"(?:want\w*|needs?|lacks?|asks?|asking|wish\w*|like|love|after|miss\w*|never knew|wonder\w*|rings? about"
    r"|can['’]?t (?:find|see|tell|make out|work out)|(?:do not|don['’]?t|does not|doesn['’]t) (?:know|understand|get)"
    r"|care about|(?:unsure|uncertain|curious|not sure) (?:of|about)|stuck (?:on|with))"
)
LEADS = regex(
    rf"\b(?:all|what) {WHO}(?:['’](?:d|m|ve|s|re|ll))?(?: (?:am|is|are|would|really|do|now|{ONLY}))* {WANTS}\b"
    r"[^.?!:;\n]{0,40}?(?:\b(?:is|are)\b|['’]s\b|:)"
    r"|\b(?:the )?(?:only|one|sole|last) (?:open )?(?:thing|bit|point|matter)\b[^.?!;\n]{0,60}?"
    r"(?:\bis\b|:|\bknow\b|\btold (?:me|us)\b)"
    r"|\b(?:my|our|his|her|their|the|only|one)(?: (?:only|one|single|real|open|actual|sole))?"
    r" (?:question|query|point)\b[^.?!;\n]{0,40}?(?:\bis\b|['’]s\b|:)|\b(?:question|query|q) is\b"
    r"|\b(?:now )?the (?:matter|question|thing|point) (?:is\b|:)|\bwhat (?:rests|remains|is left)(?: is\b| ?:)"
    r"|\bwhat (?:no ?(?:body|[- ]one)|none of them) (?:ever )?(?:told|tells|says?|said|mentions?|mentioned)\b"
    rf"|\b(?:the|an?|my|our) [\w -]{{2,30}}? is what {WHO}(?:['’](?:m|re|s)| am| are| is)?"
    r" (?:missing|lack\w*|after|asking|need\w*|want\w*)\b"
    r"|\bit(?:['’]?s| is) (?:the|my|our) [\w -]{2,30}?(?: that)? (?:i['’]?m|we['’]?re|i am|i|we)"
    r" (?:ask|wonder|worr|fret)\w*|\bwithout (?:telling|saying)(?: me| us)?\b"
    rf"|\b{WHO} never (?:did |quite |really )?(?:knew|know|learn\w*|understood|understand|grasp\w*|asked)\b"
    rf"|(?<!and )(?<!also )\b{WHO} (?:do |does )?(?:want|wish)(?:es|s)? to know\b"
    rf"|\b{WHO}(?:['’](?:d|m|re|s|ll))?(?: (?:am|is|are|would))? {ONLY} (?:want|wish|need|ask|wonder|like|love)\w*"
    rf"|\b(?:want|wish|need|ask)(?:s|es|ing)? (?:now )?(?:to (?:know|hear|ask) )?(?:only|merely|just)\b"
    rf"|(?:^|[.!\n]) ?{ONLY} (?:need|want|tell|asking|wondering)\b|\bjust tell me\b"
    r"|(?<!is )\bjust (?:what|how|which|whether)\b|\b(?:please )?(?:say|tell(?: me)?) only\b"
    r"|\bi ask (?:if|whether|about|how|what|which|when)\b|\bremind me\b"
    r"|\bnobody (?:tells|told) (?:me|us)\b|\bnothing (?:there|said|in it) (?:on|about)\b"
    r"|\b(?:troubles|puzzles|worries|bothers|beats|baffles|stumps|foxes|confuses) me\b"
    r"|\b(?:bugs|nags|niggles|irks|worries|eats) (?:at )?me is\b"
    r"|\bhas me (?:puzzled|beat|worried)\b|\bi['’]m (?:writing|asking|ringing) (?:about|only)\b",
    re.IGNORECASE,
)
BEFORE = regex(  # another man's, or what was
    r"\b(?:friend|father|brother|sister|neighbou?r|mate|uncle|cousin|colleague|old skipper|previous owner|dad|son)\b"
    r"|\b(?:the|our|my|his) old (?:one|boat|battery|trawler|wet one|lot|lump)\b|\bhis old\b"
    r"|\bold (?:wet|lead|gel|agm) (?:one|lump|battery)\b|\b(?:we|i|he|she) (?:had|used to)\b"
    r"|\b(?:last|years) (?:winter|year|ago)\b|\bwinters ago\b",
    re.IGNORECASE,
)
TURNS = regex(  # and what is theirs today
    r"(?:^|[.;!\n]\s*)(?:(?:and|but|well),? )?(?:mine(?: is| are|['’]s)|ours (?:is|are)|we have neither"
    r"|(?:the )?(?:new|present) (?:one|battery)(?: is|['’]s)?|new (?:agm|gel|lithium)\b|on (?:my|our) own\b"
    r"|now (?:it['’]s|it is|is|we have|i have|i['’]ve|she has)\b|i['’]ve now\b|i have now\b)",
    re.IGNORECASE,
)
ANOTHER = regex(  # a second question that no mark tells apart: ", and um what's the price"
    r"\b(?:and|also|plus|oh|or)\W+(?:(?:um+|uh|er|erm|well|also|then|so|if so)\W+)?"
    r"(?:what|which|how|can|could|does|do|is|are|will|would|should|may|must|where|when|why|who)(?:['’]?s)?\b",
    re.IGNORECASE,
)
CLAUSE = regex(r"[.?!;:,\n](?!\d)|\b(?:and|but|so)\b", re.IGNORECASE)
SENTENCE = regex(r"[.?!;\n](?!\d)")
BEGINS = regex(  # a question behind a comma, in the sentence of a mark
    r"[,:–-]\s*(?:(?:and|but|so|now|just|only|jus) )*(?:what|which|how|can|could|does|do|is|are|will|would"
    r"|should|may|must|where|when|why|who|need|want)\b|\?",
    re.IGNORECASE,
)
DONE = regex(  # weaker words of what is done or known: they count where one plain question stands by itself behind them
    r"\b(?:done|lovely|dramas?|regrets?|new|replaced|changed|renewed|swapped|redone|already|installed|fitted|found"
    r"|understood?|checked|correct|solved|dealt with|cleaned|greased|topped|washed|nicely|keeps? up|keeping up"
    r"|(?:does|doing) (?:its|their) job|working order|relaxed|confident|in question|no need|no interest|no object"
    r"|(?:don['’]?t|do not) (?:have|need|bother)|ignore|skip|signed off|approved|swore|swears by|thanks|thank you"
    r"|cheers|nice|good|great|fine|ok|okay|well|happy|glad|proud|pleased|works?|working|measured|tested|calculated|bought"
    r"|ordered|sold|gone|removed|disposed|scrapped|never|always|knows?|read|don['’]?t (?:fear|mind|care)|clear|trust"
    r"|sees to|handles|copes|crimped|tightened|bolted)\b"
    r"|(?:\bnot|n['’]t) (?:the|my|our|hurt|harmed?|bothered|worried|a problem)\b",
    re.IGNORECASE,
)
UNSURE = regex(  # what stands in a part that asks, or half asks
    r"\?|\b(?:what\w*|wots?|wht|which|how|whether|why|if|want\w*|need\w*|like|please|pls|wonder\w*|ask\w*"
    r"|should|could|worth|meaning|question|crook|maybe|perhaps|suppose\w*|reckons?|thinks?|thinking|unsure|sure|idea"
    r"|advis\w*|recommend\w*|suggest\w*|choos\w*|decid\w*|quote|list|(?:two|three|both|few)"
    r" (?:questions|matters|things|points|worries|queries)|(?:one|first|firstly|[1a][.)])(?=[,:. ]))(?!\w)",
    re.IGNORECASE,
)
POINTS = regex(  # points to what was told, or asks two things
    r"\b(?:it|that|this|they|them|those|these|both|its|he|she|his|her|one|ones|there|same|either|neither)\b|[&;+]"
    r"|(?<!now) then\b|,? (?:and|or|plus|also|nor|n)\b",
    re.IGNORECASE,
)
SHORTEST = 12  # characters of what asks
STRAIGHT = regex(  # what begins anew right behind a mark
    r"[\s,]*(?:but|only|just|now|what|how|can|could|does|do|is|will|would|should|may)\b", re.IGNORECASE
)
LONGEST = 400  # and of a sentence that is looked through
MARKS = 20  # the last ones, of a long text


def asked_behind(text: str) -> Span | None:
    """Where all that a message asks stands, behind what it calls settled or ahead of which it says what it asks.

    >>> text = "12.7 after a night, all fine there. What fuse for 2 AWG?"
    >>> text[slice(*asked_behind(text))]
    ' What fuse for 2 AWG?'
    >>> asked_behind("Is it all fine there? What fuse for 2 AWG?")
    """
    settled = list(SETTLED.finditer(text))[-MARKS:]
    ends = [_to_its_end(text, item.end()) for item in settled if not _doubted(text, item)]
    ends += [item.start() for item in LEADS.finditer(text)]
    ends += [item.start() for item in TURNS.finditer(text) if BEFORE.search(text, 0, item.start())]
    for start in sorted(set(ends), reverse=True)[:MARKS]:
        told, rest = text[:start], text[start:]
        asks = any(sign.search(rest) for sign in (ASKS, BEGINS, LEADS, ORDERED))
        if asks and len(rest.strip()) >= SHORTEST:
            plain = SETTLED.sub(" ", told)  # "how long it takes I know", "I need no telling" ask nothing
            alone = told.strip() and not asking(plain) and not ORDERED.search(plain)
            return (start, len(text)) if alone and _asks_once(rest) else None
    return None


def asked_by_itself(text: str) -> Span | None:
    """Where the one question of a message stands that points to nothing before it, behind what is done or known."""
    asked = asking(text)
    if len(asked) != 1:
        return None
    start, end = asked[0]
    told, rest = text[:start], text[end:].strip(" .!\n")
    plain = not POINTS.search(text, start, end) and not UNSURE.search(told) and len(rest) < SHORTEST
    return (start, end) if plain and told.strip() and DONE.search(told) else None


def _asks_once(text: str) -> bool:
    """Whether a stretch holds one question, and at most a sentence before it that says so."""
    asked = [text[slice(*span)] for span in asking(text)]
    joined = ANOTHER.search(text)
    twice = joined and (ASKS.search(text, 0, joined.start()) or asking(text[: joined.start()]))
    return len(asked) - (len(asked) > 1 and bool(LEADS.search(asked[0]))) <= 1 and not twice


def _to_its_end(text: str, at: int) -> int:
    """Where the sentence ends whose words before a place tell, or that place where the rest of it asks."""
    end = SENTENCE.search(text, at, at + LONGEST)
    last = end.end() if end else min(at + LONGEST, len(text))
    return at if STRAIGHT.match(text, at, last) or BEGINS.search(text, at, last) else last


def _doubted(text: str, mark: re.Match[str]) -> bool:
    """Whether the clause of a mark asks or doubts what the mark tells, or its sentence ends in a question mark."""
    starts = [item.end() for item in CLAUSE.finditer(text, max(mark.start() - 120, 0), mark.start())]
    clause = text[starts[-1] if starts else 0 : mark.start()]
    apart = mark[0][0] in ".!\n"  # a sentence of its own: "They passed it, he says. Very well."
    doubts = not apart and (OPENS.match(clause) or DOUBTED.search(clause))
    return bool(doubts) or text[mark.end() : mark.end() + 1] == "?"
