"""Batteries counted as bills of a yard count them: "(2) six-volts", "2 ea. gel", "2 no. AGM", "AGM, 4 off"."""

from __future__ import annotations

import re

from grammar.reading import Stated
from grammar.scene.scene import Scene
from grammar.text.numbers import value
from grammar.text.patterns import regex

FACT = "battery.count"
MANY = r"(?P<count>[2-68]|two|three|four|five|six|eight)"
KIND = r"(?:wets?|flooded|agms?|gels?|lead|sealed|lithiums?|lifepo4|lfp|golf[- ]cart|deep[- ]cycles?|leisure)"
FIGURE = r"(?:\d{1,4} ?-?(?:v|volts?|ah|amp[- ]?hours?|lbs?|pounds|kg|kilos?)\b|(?:six|twelve)[- ]volts?\b)"
SORT = r"(?:(?:new|old|used|equal|identical|of|at) )*"
BATTERY = rf"(?:{SORT}(?:{FIGURE}|(?:{KIND}|batter(?:y|ies)|batts|accus|sixes|twelves|6s|12s)\b))"
TOLD = rf"(?:\b(?:{KIND}|batter(?:y|ies)|bank|accus?|ah|amp[- ]?hours?|v|volts?|ones)|\d ?(?:ah|v|kg|lbs?))"
JOINED = r"(?:in |wired |joined )?(?:series|parallel)\b"
STOP = r"(?:[,;.?!)]|$)"
BRACKETED = regex(
    rf"\({MANY}\) ?(?={BATTERY})|{TOLD}[,:]? \({MANY.replace('count', 'behind')}\)(?= ?{STOP}| {JOINED})", re.IGNORECASE
)
ANY_BRACKETED = regex(r"\(\d{1,2}\)")  # several of them number a list
EACH = regex(
    rf"(?<![\d.,/] )(?<![\d.,/-])\b{MANY} ea\b\.?,? ?(?={BATTERY}|{JOINED})"
    rf"|{TOLD}[,:;]? {MANY.replace('count', 'behind')} ea\b\.?(?= ?{STOP}| {JOINED})",
    re.IGNORECASE,
)
NUMBER = regex(rf"(?:^|[.,;:?!(] ?|\b(?:my|our|the|have|got|with|for) ){MANY} nos?\. ?(?={BATTERY})", re.IGNORECASE)
OFF = regex(
    rf"(?:^|[.;:?!(] ?|\b(?:my|our|have|got|with|for|from) ){MANY} off\b,? ?(?={BATTERY})"
    rf"|(?:\b{KIND}|batter(?:y|ies)|bank|\d ?ah)[,:]? {MANY.replace('count', 'behind')} off(?= ?{STOP})",
    re.IGNORECASE,
)
ON = regex(r"\bon\b[^.;?!]{0,12}$", re.IGNORECASE)  # "eight seconds on, four off"


def invoiced(scene: Scene) -> Stated | None:
    """How many batteries such words count; None where they count none."""
    patterns = [EACH, NUMBER, OFF]
    if len(ANY_BRACKETED.findall(scene.text)) == 1:
        patterns.insert(0, BRACKETED)
    for pattern in patterns:
        found = pattern.search(scene.text)
        if found is None or (pattern is OFF and ON.search(scene.ahead(found.start()))):
            continue
        name = next(name for name, said in found.groupdict().items() if said)
        return Stated(FACT, value(found[name].lower()), "", found[name], found.span(name), how="default")
    return None
