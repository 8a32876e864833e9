"""Which bare numbers are years: "8 old", "turned four", "five winters", "mine's 9, buy a new one?"."""

from __future__ import annotations

from grammar.scene.items import Item
from grammar.scene.scene import Scene

OLD = frozenset({"old", "yo", "yrs", "winters", "summers", "seasons"})
ONE_SEASON = frozenset({"winter", "summer", "season"})  # "he is six winter in the boat"
BARELY = frozenset({"only", "just", "barely", "hardly", "scarcely", "nearly", "almost", "already", "now"})
NEARLY = frozenset({"pushing", "rising", "nearing", "approaching", "gone", "nudging"})  # "my AGM is pushing nine"
TURNED = frozenset({"turned", "turns", "turn", "turning", "age", "aged"})
OLDEST = 20.0  # said without a word for years
VOLTS = frozenset({6.0, 12.0})
ITS = frozenset(
    {"shes", "ours", "mine", "mines", "batterys", "agms", "gels", "ones", "wets", "lithiums"}
)  # "mine's", "the battery's"
KINDS = frozenset({"agms", "gels", "wets", "lithiums", "ones"})  # "my gel's seven", "the old one's five"
IS = frozenset({"is", "its", "theyre", "are"})
IT = frozenset(
    {
        *("it", "these", "battery", "batt", "agm", "gel", "one", "mine", "which", "they", "ours", "wet", "flooded"),
        "lithium",
        *("batteries", "batts", "agms", "gels", "wets", "ones", "lithiums"),
    }
)
SERVED = frozenset({"done", "had", "served", "given", "managed", "made"})  # "ours has done six"
HAS = frozenset({"has", "have", "having", "had"})
GOES_ON = frozenset({"so", "should", "is", "swap", "do", "can", "now", "already", "time", "finished", "and"})
GOES_ON |= frozenset({"as", "if", "by", "but", "though"})
YEARS = frozenset({"years", "yrs", "year", "season", "winter", "summer"})
BE = IS | {"was", "were", "be"}
CARRIED = frozenset(  # what people do with a battery, year after year: no age of it
    {
        *("carried", "charged", "brought", "took", "taken", "lugged", "hauled", "hoisted", "stored", "kept", "left"),
        *("sailed", "wintered", "lifted", "dragged", "moved", "cruised", "raced", "fished", "worked"),
    }
)
PEOPLE = frozenset({"i", "we", "he", "she", "they", "my", "our", "his", "her", "ive", "weve"})
LIFETIME = 10.0  # years: few batteries see more
PIECES = frozenset({"piece", "pieces", "pcs", "ones"})
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
        *(
            "retired",
            "throw",
            "throws",
            "thrown",
            "retirement",
            "ancient",
            "antique",
            "elderly",
            "geriatric",
            "pensioner",
            "grandpa",
            "grandad",
            "grandfather",
            "veteran",
            "dead",
            "knackered",
            "shot",
            "tip",
            "skip",
            "scrapyard",
            "knackers",
            "worn",
            "left",
        ),
    }
)
NEW = frozenset({"new", "buy"})
LIFE = frozenset({"lifespan", "lifetime", "lives", "live", "serve", "serves", "date", "shelf", "years", "birthday"})
LASTS = frozenset({"last", "lasts"})  # how many years, where nothing runs on it
YOUNGEST_VOLTS = 8.0  # a bare number from here on may be the volts of a battery that is run down
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
    if isinstance(value, str) or value <= LIFETIME or scene.word(at - 1) not in OLD | YEARS or at >= len(scene.tokens):
        return False
    who = scene.tokens[at]
    named = who.word in PEOPLE or scene.text[who.start : who.start + 1].isupper()
    return named and bool(CARRIED & {scene.word(place) for place in range(at + 1, at + 1 + DOES)})


def is_age(scene: Scene, item: Item) -> bool:
    """Whether a bare number is of years."""
    before = scene.word(item.start - 1)
    going_on = before == "on" and scene.word(item.start - 2) in ("going", "coming")
    if before in BARELY:
        before = scene.word(item.start - 2)
    after = scene.after(item)
    by_now = before in ITS and (scene.word(item.end), scene.word(item.end + 1)) == ("by", "now")
    if by_now:
        return True
    they_are = before == "theyre" and (after is None or after.kind == "mark")
    if scene.word(item.end + 1) == "ago" and (ended(scene, item) or _of_another_thing(scene, item)):
        return False
    if _counts_old_ones(scene, item) or of_people(scene, item):
        return False
    if before == "being" and _is_of_years(item) and (after is None or after.kind == "mark"):
        named = "battery" in scene.facts | scene.heads or any(old.fact.startswith("battery.") for old in scene.said)
        return named or (not scene.heads and _life_spoken_of(scene))  # "is the poor creature, being six, past it"
    if scene.word(item.end) == "y" and _is_of_years(item) and _kind_after_y(scene, item):
        return True
    if before in NEARLY and _is_of_years(item) and (after is None or after.kind == "mark" or after.name in GOES_ON):
        return _its(scene, item)
    if scene.word(item.end) in OLD or before in TURNED or going_on or they_are or _so_many_winters(scene, item):
        return True
    return _is_told(scene, item) or _by_the_year(scene, item)


def _so_many_winters(scene: Scene, item: Item) -> bool:
    """Whether seasons are counted in the singular, of a battery: "he is six winter in the boat"."""
    counted = scene.word(item.end) in ONE_SEASON and _is_of_years(item)
    return counted and bool(scene.facts & {"battery.chemistry", "battery"} or "battery" in scene.heads)


def _kind_after_y(scene: Scene, item: Item) -> bool:
    """Whether "y" is short for years of a battery: "6 y AGM", "5 y old wet"."""
    at = item.end + 1 + (scene.word(item.end + 1) == "old")
    return at < len(scene.at_word) and scene.at_word[at].fact == "battery.chemistry"


def _of_another_thing(scene: Scene, item: Item) -> bool:
    """Whether something else was fitted then: "two summers ago I had a new stereo put in, and last year a pump"."""
    clause = scene.clause(item.start)
    named = [head.head for head in scene.heads_by_clause.get(clause, ())]
    return bool(named) and "battery" not in named and not _its(scene, item)


def _counts_old_ones(scene: Scene, item: Item) -> bool:
    """Whether old batteries are counted: "two old batteries", "two old 60 Ah from my car"; "a battery 2 old" is one."""
    if scene.word(item.end) != "old":
        return False
    follows = next((other for other in scene.at_word[item.end + 1 : item.end + 2] if other.start == item.end + 1), None)
    if follows is not None and follows.name in PIECES:
        return True  # "two old pieces, 30 kg each"
    if follows is not None and _is_size(follows):
        return True  # "two new 110s, one old ninety-five"
    if scene.word(item.end + 1) in ("and", ",", "&") and _new_ones(scene, item):
        return True  # "three 85s, two old and one new"
    if follows is None or scene.word(item.start - 1) in BE | {"battery", "about"}:
        return False
    return follows.head == "battery" or follows.dim in ("AH", "VOLT") or follows.fact == "battery.chemistry"


def _new_ones(scene: Scene, item: Item) -> bool:
    """Whether new ones are counted after the old ones."""
    return bool({"new", "newer", "fresh"} & {scene.word(at) for at in range(item.end + 2, item.end + 5)})


def _is_size(item: Item) -> bool:
    """Whether a bare figure may be a battery's amp-hours, no year of its life."""
    value = item.quantity.value if item.dim == "NUM" else ""
    return not isinstance(value, str) and value > OLDEST


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
    """ "The AGM is 6, swap it?", "how many years has a gel, ours has done six": a number that ends what is said, where
    wear or the life of batteries is spoken of; "my gel's seven" where it can be nothing else."""
    only = scene.word(item.start - 1) in BARELY
    after, before, second = scene.after(item), scene.word(item.start - 1 - only), scene.word(item.start - 2 - only)
    served = before in SERVED and second in HAS
    others = scene.heads - {"battery", "boat", "meter", "cell"} - ({"charger"} if served else set())
    if not _is_of_years(item) or others:
        return False
    if after is not None and after.kind != "mark" and after.name not in GOES_ON:
        return False
    told = before in IS and ({before, second} & IT or before not in ("is", "are"))
    if not (before in ITS or told or served):
        return False
    return _life_spoken_of(scene) or (before in KINDS and _only_years(scene, item))


def _life_spoken_of(scene: Scene) -> bool:
    """Whether wear, a new battery or how long batteries live is spoken of."""
    words = scene.vocabulary
    lasts = words & LASTS and not scene.quantities("AMP", "WATT")
    return bool(words & (WORN | LIFE) or words >= NEW or lasts)


def _only_years(scene: Scene, item: Item) -> bool:
    """Whether a number can be nothing but years: not 6, which are volts too, nor what a battery may show."""
    value = item.quantity.value
    others = scene.likely and not scene.likely[0].startswith("battery.")
    spelt = item.quantity.text.strip().isalpha()
    return not isinstance(value, str) and 2 < value < YOUNGEST_VOLTS and (spelt or value not in VOLTS) and not others
