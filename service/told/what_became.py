"""What is asked of a battery that was found low: what went wrong, and whether it is dead or drained."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

WRONG = regex(
    r"\bwhat (?:did|have|had) (?:i|we) (?:do|done) wrong\b|\bwhat(?:'?s| has| is|) ?(?:went|gone|go(?:es)?) wrong\b"
    r"|\bwhat(?:['’]?s| has| had|) happened\b"
    r"|\b(?:my|our) (?:mistake|fault)\b|\bwhat (?:has |is |keeps? |was )?(?:kill|ruin|spoil|destroy|wreck)\w*"
    r"|\bwhy (?:is|are|has|did|does)\b[^.?!;]{0,40}\b(?:dead|die[sd]?|finished|ruined|flat)\b",
    re.IGNORECASE,
)
STOOD = regex(
    r"\b(?:winter\w*|stood|standing|sat|laid up|lay-?up|unused|for months|all season|since (?:autumn|fall|last|the))\b"
    r"|\bwhen(?:ever)? (?:i|we) (?:come|get|arrive|return)\b|\balways\b"
    r"|\bsince (?:september|october|november|december)\b|\bleft (?:it |her |them )?(?:on|aboard)\b"
    r"|\bleft (?:it|her|them|the boat|the batter\w+)\b[^.?!;]{0,20}\b(?:months?|weeks)\b",
    re.IGNORECASE,
)
DEAD = r"(?:dead|bad|worn|finished|shot|tired|dying|failing|the battery|battery|faulty)"
DRAINED = r"(?:drain\w*|draw\w*|leak\w*|eat\w*|pull\w*|parasitic)"
THEN_OR = r"\b[^.?!;]{0,16},? or\b[^.?!;]{0,24}\b"
OR = regex(rf"\b{DEAD}{THEN_OR}{DRAINED}\b|\b{DRAINED}{THEN_OR}{DEAD}\b", re.IGNORECASE)
WORN = r"(?:finish\w*|worn(?: out)?|dead|bad|old|shot|done|tired|dying|faulty|gone|broken|failing)"
SMALL = r"(?:too small|not big enough|undersized|too weak for)"
SMALL_OR_WORN = regex(rf"\b{SMALL}{THEN_OR}{WORN}\b|\b{WORN}{THEN_OR}{SMALL}\b", re.IGNORECASE)
HOURS = r"(?:\d+|a few|[a-z]+) ?h(?:ours?|rs?)?"
CHARGED_LONG = (
    r"\bafter (?:an?|the|one|all|last|my|its)? ?(?:whole |full |long )?(?:night|nite|day|evening|weekend|afternoon)"
    r" (?:long )?on (?:the |its |my |our |a )?charg(?:e|er)\b"
    rf"|\bafter {HOURS} (?:on (?:the |its |my |our |a )?charg(?:e|er)|of (?:a )?charg(?:e|ing))\b"
    rf"|\bafter (?:i |we )?charg(?:ing|ed) (?:it |them |her |both |the \w+ )?(?:for |over )?(?:{HOURS}|all night)\b"
    rf"|\bcharged (?:it |them |her |both |the \w+ )?(?:for |over )?(?:{HOURS}|all night),? (?:and|then|but|now|it)\b"
    r"(?![^.?!;]{0,30}\b(?:later|ago|rest\w*|stood|next (?:day|morning)))"
)
LONG_CHARGE = regex(CHARGED_LONG, re.IGNORECASE)
FRESH = regex(  # off its charger so lately that the charge still shows
    rf"{CHARGED_LONG}"
    r"|\b(?:just|straight|right|fresh) (?:come |came |taken )?(?:off|from) (?:the |its |my |our |a )?charg(?:e|er)\b",
    re.IGNORECASE,
)

SOON = (
    r"(?:(?:an|one|1|half an|half a|a quarter of an|three quarters of an) ?h(?:r|ou?r)?|\d{1,2} ?min(?:ute)?s?"
    r"|(?:a few|some|ten|twenty|thirty|forty) minutes)"
)
AFTER_CHARGE = regex(  # an hour at most after a charge that is told to have ended
    rf"\b{SOON} (?:or so )?(?:after|off|out of) (?:(?:i|we|the|a|its|my|it|was|had|been|coming|came|off|stopped|"
    r"finished|ended|full) )*charg(?:e|er|ing|ed)\b(?! (?:\w+ )?on\b)",
    re.IGNORECASE,
)


def went_wrong(text: str) -> bool:
    """Whether it is asked what became of a battery that stood.

    >>> went_wrong("stood all winter, now 10.2 V. What did I do wrong?"), went_wrong("what did I do wrong? 10.2 V")
    (True, False)
    >>> went_wrong("left her for 3 months, 11.9 now, what happened?")
    True
    """
    return WRONG.search(text) is not None and STOOD.search(text) is not None


def dead_or_drained(text: str) -> bool:
    """Whether it is asked if the battery is bad or something draws.

    >>> dead_or_drained("is it dead or is something draining it?"), dead_or_drained("is it dead?")
    (True, False)
    """
    return OR.search(text) is not None


def small_or_worn(text: str) -> bool:
    """Whether it is asked if the battery is too small or worn.

    >>> small_or_worn("is it too small or is it finished?"), small_or_worn("is it too small?")
    (True, False)
    """
    return SMALL_OR_WORN.search(text) is not None


def fresh_off_the_charger(text: str) -> tuple[int, int] | None:
    """Where it is told that it comes off its charger.

    >>> fresh_off_the_charger("12.8 after a night on the charger"), fresh_off_the_charger("after a night at rest")
    ((5, 33), None)
    """
    found = FRESH.search(text)
    return found.span() if found else None


def charged_for_long(text: str) -> bool:
    """Whether it was read after a charge of hours.

    >>> charged_for_long("12.4 after 8 hours of charging"), charged_for_long("12.4, just off the charger")
    (True, False)
    """
    return LONG_CHARGE.search(text) is not None


def soon_after_charging(text: str) -> bool:
    """Whether it was read an hour at most after a charge.

    >>> soon_after_charging("12.5 V an hour after charging"), soon_after_charging("12.5 V two hours after charging")
    (True, False)
    """
    return AFTER_CHARGE.search(text) is not None
