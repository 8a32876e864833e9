"""What is only quoted: limits to be chosen between, "is it 3 % or 10 %"; volts of any battery, "full is 12.7"."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache

from grammar.reading import Stated
from grammar.scene.claims import NOTHING, Claim
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

RULE = frozenset({3.0, 10.0})  # percent that a cable may lose, by what it feeds
CHOOSING = frozenset({"or", "vs", "versus", "which", "whichever", "either", "counts", "applies", "some", "others", "/"})

OF_ANY = regex(
    r"\b(?:full|flat|empty|dead) (?:is|at|from|means|=|would be|should be|should read)"
    r" (?:about |around |at |under |over |only )?$",
    re.IGNORECASE,
)

OTHERS_SAY = regex(  # "some say 13.1, others 13.6, mine shows 13.3"
    r"\b(?:folks?|people|some|others|they|everybody|everyone|forums?|posts?|guys|half the dock)"
    r"(?: (?:on|in|at) (?:here|there|the \w+))? (?:says?|said|claims?|swears?|quotes?)(?: (?:it's|it is|by|to))?"
    r" (?:about |around )?(?:\d\d(?:\.\d+)?(?: ?v(?:olts?)?)? (?:and|or|,) )?$",
    re.IGNORECASE,
)
OF_MINE = regex(r"\b(?:mine|ours|my (?:own|battery|one|meter|gauge))\b", re.IGNORECASE)
BEYOND = (
    r"\b(?:over|above|beyond|past|exceeding|under|below|beneath|(?:more|less|higher|lower|greater|bigger) than)"
    r" (?:about |around |a )?$"
)
WHATEVER = regex(  # "anything over", "they should never be under"
    rf"\b(?:anything|any|everything|all|whatever|nothing|never|not|cannot|mustn'?t|shouldn'?t|can'?t|once(?: \w+)?)"
    rf"(?: (?:be|go|get|read|show|reading|readings|volts?|voltage|battery|it|is|that is|that'?s)){{0,3}}"
    rf" {BEYOND}",
    re.IGNORECASE,
)
LIMITING = regex(BEYOND, re.IGNORECASE)
IS_SO = regex(  # "over 12.8 is dangerous", "above 14.6 won't hurt"
    r"^ ?(?:v|volts?)? ?,? ?(?:(?:it|that|they|this) )?(?:is|are|means?|counts? as|kills?|harms?|"
    r"damages?|ruins?|boils?|cooks?|explodes?|hurts?|wrecks?|matters?|never|and (?:it|they|you)"
    r"|(?:does|do|will|would|can|could|wo|ca)(?:n['’]?t)?)\b",
    re.IGNORECASE,
)
CHOICE = regex(
    r"\b(?:pass(?:ing)? (?:mark|line|level)|limit|minimum|threshold|cut-?off|the rule|least)\b[^.?!;\d]{0,30}"
    r"\d{1,2}(?:[.,]\d+)?(?: ?v(?:olts?)?)?,? or (?:is it |rather )?\d{1,2}(?:[.,]\d+)?",
    re.IGNORECASE,
)
JUDGED = 30  # characters after a threshold

BY = r"(?:label|sticker|plate|maker|manufacturer|manual|data ?sheet|leaflet|booklet|sheet|case|spec)"
OF_IT = r"(?: charg(?:e|ing)| absorption)?(?: voltage| volts?| v)?(?: of| is| at|:)?"  # "max charge voltage of"
MOST = (
    rf"(?:max(?:imum|\.)?{OF_IT}|no more than|(?:not|never) (?:over|above|more than)|at most|up to|limit(?: of| is|:)?"
    r"|only|top(?:s| is))"
)
ALLOWS = r"(?:says?|states?|reads?|marked|rated|allows|takes|wants|stands|tolerates|gives|printed|stamped)"
VOLTS = r"(?<![\d.,])(?P<volts>\d\d(?:[.,]\d+)?)(?![.,]?\d)(?: ?v(?:olts?)?\b)?(?! ?(?:a|amps?|ah|c|f|%|mm)\b)"
AFTER = (
    r",? ?\b(?:max(?:imum)?\b|at (?:the )?(?:very )?most\b|tops\b|and no more\b"
    r"|(?:is|as|being) (?:the|its|their) (?:max(?:imum)?|most|limit|ceiling|top)\b)"
)
ITSELF = rf"(?:battery|batteries|lithium|lfp|lifepo4?|agms?|gels?) {ALLOWS}"
TO_BATTERY = rf"\b(?:{BY}|{ITSELF})\b(?:(?!charger|[.?!;]\s).){{0,50}}?"
NOT_OF_A_CHARGER = r"(?<!charger )(?<!charger's )(?<!chargers )(?<!regulator )(?<!alternator )(?<!controller )"
ON_IT = rf"(?:(?!charger|[.?!;]\s).){{0,25}}?\b(?:on|by|per|says|to|of|in)\b(?:(?!charger|[.?!;]\s).){{0,20}}?\b{BY}\b"
OWN_LIMITS = [  # what a battery's own label or maker allows
    regex(rf"{NOT_OF_A_CHARGER}{TO_BATTERY}\b{MOST} ?{VOLTS}", re.IGNORECASE),  # "the label says max 14.4"
    regex(rf"{NOT_OF_A_CHARGER}{TO_BATTERY}{VOLTS}{AFTER}", re.IGNORECASE),  # "sticker: 14.1 volts maximum"
    regex(rf"{VOLTS}{AFTER}{ON_IT}", re.IGNORECASE),  # "14.2 V max on the label"
    regex(rf"\b{MOST} ?{VOLTS}{ON_IT}", re.IGNORECASE),  # "max 14.2 by the data sheet"
]


MARKS = regex(  # on the scale of a hydrometer: "the red zone begins at 1.150", "green from 1.250"
    r"\b(?:begins?|starts?|ends?|stops?)(?: at| from| with)? $"
    r"|\b(?:green|red|yellow|white|amber|orange|blue)(?: zone| band| mark| part| field| sector)?"
    r"(?: (?:is|goes|runs|at|from|to|up))+ $",
    re.IGNORECASE,
)


def without_marks(scene: Scene, claims: dict[int, Claim]) -> dict[int, Claim]:
    """The claims of gravities that are only marks of a scale, where one is left that was read."""
    read = scene.quantities("GRAVITY")
    marks = [item for item in read if MARKS.search(scene.ahead(scene.span(item.start, item.end)[0]))]
    return {item.at: NOTHING for item in marks} if len(marks) < len(read) else {}


@lru_cache(maxsize=4)  # several parts of an answer ask it
def own_limit(text: str) -> re.Match[str] | None:
    """Where the most volts are told that the battery's own label or maker allows, as the group "volts"."""
    return next((found for words in OWN_LIMITS if (found := words.search(text))), None)


def without_limits(scene: Scene, stated: Sequence[Stated]) -> list[Stated]:
    """What is told without the volts that a label allows, where a charger's own are left: "14.7; label max 14.4"."""
    given = [item for item in stated if item.fact == "charger.voltage"]
    limit = own_limit(scene.text) if len(given) > 1 else None
    limits = [item for item in given if limit and item.span[0] <= limit.start("volts") < item.span[1]]
    return [item for item in stated if item not in limits] if len(limits) < len(given) else list(stated)


def own_readings(scene: Scene, readings: Sequence[Item]) -> list[Item]:
    """The readings without volts that are told of any battery, where one is left: "13.15 V; lead is full at 12.7"."""
    chosen = [found.span() for found in CHOICE.finditer(scene.text)] if readings else []  # "pass mark 9.6 or 10.5?"
    own = [item for item in readings if not (_of_any(scene, item) or _stands_in(scene, item, chosen))]
    return own or list(readings)


def _of_any(scene: Scene, item: Item) -> bool:
    """Whether volts are told of any battery: how full it is at them, or that so many are too many or too few."""
    start, end = scene.span(item.start, item.end)
    ahead = scene.ahead(start)
    if OF_ANY.search(ahead) or WHATEVER.search(ahead):
        return True
    if OTHERS_SAY.search(ahead) and OF_MINE.search(scene.text, end):
        return True
    return LIMITING.search(ahead) is not None and IS_SO.search(scene.text[end : end + JUDGED]) is not None


def _stands_in(scene: Scene, item: Item, places: Sequence[tuple[int, int]]) -> bool:
    """Whether volts stand in one of these places."""
    start = scene.span(item.start, item.end)[0]
    return any(first <= start < last for first, last in places)


def quotes_both_limits(scene: Scene) -> bool:
    """Whether both limits of the rule are named and one of them is to be chosen, so that neither is stated."""
    told = {one.value for item in scene.quantities("PERCENT") if item.part is not None for one in item.part.quantities}
    return told == RULE and bool(CHOOSING & scene.vocabulary)
