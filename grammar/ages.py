"""Which bare numbers are years: "8 old", "turned four", "five winters", "mine's 9, buy a new one?"."""

from __future__ import annotations

from grammar.items import Item
from grammar.scene import Scene

OLD = frozenset({"old", "yo", "yrs", "winters", "summers", "seasons"})
NEARLY = frozenset({"pushing", "rising", "nearing", "approaching", "gone", "nudging"})  # "my AGM is pushing nine"
TURNED = frozenset({"turned", "turns", "turn", "turning", "age", "aged"})
OLDEST = 20.0  # said without a word for years
VOLTS = frozenset({6.0, 12.0})
ITS = frozenset(
    {"shes", "ours", "mine", "mines", "batterys", "agms", "gels", "ones", "wets", "lithiums"}
)  # "mine's", "the battery's"
IS = frozenset({"is", "its", "theyre", "are"})
IT = frozenset({"it", "battery", "batt", "agm", "gel", "one", "mine", "which", "they", "wet", "lithium"}) | {
    *("batteries", "batts", "agms", "gels", "wets", "ones", "lithiums"),
}
GOES_ON = frozenset({"so", "should", "is", "swap", "do", "can", "now", "already", "time", "finished", "and"})
YEARS = frozenset({"years", "yrs", "year", "season", "winter", "summer"})
BE = IS | {"was", "were", "be"}
CARRIED = frozenset(  # what people do with a battery, year after year: no age of it
    {
        *("carried", "charged", "brought", "took", "taken", "lugged", "hauled", "hoisted", "stored", "kept", "left"),
        *("sailed", "wintered", "lifted", "dragged", "moved", "cruised", "raced", "fished", "worked"),
    }
)
PEOPLE = frozenset({"i", "we", "he", "she", "they", "my", "our", "his", "her", "ive", "weve"})
LASTS = 10.0  # years: few batteries see more
DOES = 4  # words from the years to what was done
SUBJECT = 4  # pieces before the years in which their battery is named
WHEN = frozenset({"this", "last", "next", "come", "in", "by", "at"})
SEASONS = frozenset(
    {
        *("spring", "summer", "autumn", "fall", "winter", "year", "month", "season", "easter", "christmas"),
        *("january", "february", "march", "april", "may", "june", "july", "august", "september", "october"),
        *("november", "december", "jan", "feb", "mar", "apr", "jun", "jul", "aug", "sep", "sept", "oct", "nov", "dec"),
    }
)
WORN = frozenset(
    {
        *("swap", "replace", "replacing", "replaced", "another", "life", "age", "finished", "renew", "old", "older"),
        *("past", "done", "scrap", "keep", "keeping", "chuck", "bin", "dump", "shopping", "pasture", "retire"),
        *("retired", "retirement", "tip", "skip", "scrapyard", "knackers", "worn", "left"),
    }
)
NEW = frozenset({"new", "buy"})
ENDED = frozenset(  # what befell a battery then: no life of it began
    {
        *("swelled", "swole", "swollen", "bulged", "bloated", "burst", "cracked", "split", "leaked", "died", "failed"),
        *("melted", "exploded", "blew", "froze", "boiled", "tested", "drowned", "caught", "smoked", "overheated"),
    }
)
BACK = 4  # words before "two years ago" in which that is told


def ended(scene: Scene, item: Item) -> bool:
    """Whether "two winters ago" is when something befell a battery: "his last one swelled up two years ago"."""
    return bool(ENDED & {scene.word(at) for at in range(item.start - BACK, item.start)})


def of_people(scene: Scene, item: Item) -> bool:
    """Whether winters are told through which somebody did a thing: "for twenty-six winters Wilhelm carried them up"."""
    at = item.end if item.dim == "TIME" else item.end + 1
    value = item.quantity.value
    if isinstance(value, str) or value <= LASTS or scene.word(at - 1) not in OLD | YEARS or at >= len(scene.tokens):
        return False
    who = scene.tokens[at]
    named = who.word in PEOPLE or scene.text[who.start : who.start + 1].isupper()
    return named and bool(CARRIED & {scene.word(place) for place in range(at + 1, at + 1 + DOES)})


def is_age(scene: Scene, item: Item) -> bool:
    """Whether a bare number is of years."""
    before = scene.word(item.start - 1)
    going_on = before == "on" and scene.word(item.start - 2) in ("going", "coming")
    after = scene.after(item)
    by_now = before in ITS and (scene.word(item.end), scene.word(item.end + 1)) == ("by", "now")
    if by_now:
        return True
    they_are = before == "theyre" and (after is None or after.kind == "mark")
    if scene.word(item.end + 1) == "ago" and ended(scene, item):
        return False
    if _counts_old_ones(scene, item) or of_people(scene, item):
        return False
    if before == "being" and _is_of_years(item) and (after is None or after.kind == "mark"):
        return "battery" in scene.facts | scene.heads or any(old.fact.startswith("battery.") for old in scene.said)
    if before in NEARLY and _is_of_years(item) and (after is None or after.kind == "mark" or after.name in GOES_ON):
        return _its(scene, item)
    if scene.word(item.end) in OLD or before in TURNED or going_on or they_are:
        return True
    return _is_told(scene, item) or _by_the_year(scene, item)


def _counts_old_ones(scene: Scene, item: Item) -> bool:
    """Whether old batteries are counted: "two old batteries", "two old 60 Ah from my car"; "a battery 2 old" is one."""
    follows = next((other for other in scene.items if other.start == item.end + 1), None)
    if scene.word(item.end) != "old" or follows is None or scene.word(item.start - 1) in BE | {"battery", "about"}:
        return False
    return follows.head == "battery" or follows.dim in ("AH", "VOLT") or follows.fact == "battery.chemistry"


def _by_the_year(scene: Scene, item: Item) -> bool:
    """ "The AGM is six this spring", "ours will be four in June": a battery's birthday, as a year goes by seasons."""
    if not _is_of_years(item) or scene.word(item.end) not in WHEN or scene.word(item.end + 1) not in SEASONS:
        return False
    before = scene.word(item.start - 1)
    return before in BE | ITS | {","} and _its(scene, item)


def _its(scene: Scene, item: Item) -> bool:
    """Whether a battery is named before, and no other thing."""
    near = [other for other in scene.items[max(0, item.at - SUBJECT) : item.at] if other.name != "end"]
    its = any(other.head == "battery" or other.fact == "battery.chemistry" or other.name in IT | ITS for other in near)
    return its and not any(other.head and other.head != "battery" for other in near)


def _is_of_years(item: Item) -> bool:
    """Whether a number may be a battery's years: no 12, which are volts."""
    value = item.quantity.value
    return not isinstance(value, str) and 1 < value <= OLDEST and value * 2 == int(value * 2) and value != max(VOLTS)


def _is_told(scene: Scene, item: Item) -> bool:
    """ "The AGM is 6, swap it?", "the old one's seven": a number that ends what is said, where wear is spoken of."""
    if not _is_of_years(item):
        return False
    after, before = scene.after(item), scene.word(item.start - 1)
    if after is not None and after.kind != "mark" and after.name not in GOES_ON:
        return False
    its = before in ITS or (before in IS and ({before, scene.word(item.start - 2)} & IT or before not in ("is", "are")))
    words = scene.vocabulary
    worn = words & WORN or (words >= NEW)
    return bool(its and worn and not scene.heads - {"battery", "boat", "meter"})
