"""How many a maker allows in series or in parallel."""

from __future__ import annotations

from grammar.scene.items import Item
from grammar.scene.scene import Scene

MAKERS = frozenset({"book", "maker", "makers", "manufacturer", "leaflet", "booklet", "manual", "sheet", "factory"})
MAKERS |= {"paper", "papers", "datasheet", "specs", "specification"}
ALLOWED = frozenset({"up", "max", "maximum", "allows", "allowed", "allow", "most", "permits", "permit", "permitted"})
LAYOUTS = ("series", "parallel")
SHORT = 12  # words of a reply
PLANS = frozenset(
    {"i", "ill", "we", "id", "ive", "weve", "what", "have", "want", "make", "go", "wire", "join", "instead"}
)


def allowed_as(scene: Scene, item: Item) -> str:
    """Whether so many are the most that a maker allows: "up to 4 in parallel", "series up to 2"; the fact or ""."""
    if asked := _as_asked(scene, item):
        return asked
    before = [scene.word(at) for at in range(item.start - 4, item.start)]
    end = item.end + (scene.word(item.end) in ("max", "maximum", "tops"))  # "four max side by side"
    after = " ".join(scene.word(at) for at in range(end, end + 2))
    later = {scene.word(at) for at in range(item.end + (end == item.end), item.end + 5)}
    at_most = {"most", "max", "maximum"} & later and MAKERS & scene.vocabulary  # "their maker says 4 in series at most"
    said = bool(at_most) or _said_to_be(scene, item)
    no_more = before[1:] == ["no", "more", "than"] and bool(MAKERS & scene.vocabulary)
    if not _is_allowed(scene, item) and not said and not no_more and not _second_limit(scene, item):
        return ""
    if after == "side by" or after.split()[:1] == ["abreast"]:  # "no more than two side by side"
        return "battery.max_in_parallel"
    following = next((name for name in LAYOUTS if name in after.split()), "")
    spoken = sorted({item.name for item in scene.items if item.fact == "bank.layout" and item.name in LAYOUTS})
    ends = scene.after(item) is None or scene.word(item.end) in (",", ".", "?", "")
    last = before[-1] in ("max", "maximum") and ends
    last = last or [scene.word(item.end), scene.word(item.end + 1)] == ["at", "most"]
    last = last or _said_to_be(scene, item) or (ends and before[-1] in ALLOWED and bool(MAKERS & set(before)))
    if last and len(spoken) == 1 and MAKERS & scene.vocabulary:
        return f"battery.max_in_{spoken[0]}"  # "4 of them in parallel, maker says max 4"
    for layout in (following,) if following else LAYOUTS:
        if layout in before or following or after in (f"in {layout}", f"{layout} ", f"{layout} max"):
            return f"battery.max_in_{layout}"
    return ""


def _as_asked(scene: Scene, item: Item) -> str:
    """The limit that was asked for, where a short reply tells it: "4 in series, it says"; no "and 3 in series?"."""
    layout = scene.word(item.end + 1) if scene.word(item.end) == "in" else ""
    fact = f"battery.max_in_{layout}"
    if fact not in scene.expected or len(scene.tokens) > SHORT or "?" in scene.text or PLANS & scene.vocabulary:
        return ""
    return fact


def _said_to_be(scene: Scene, item: Item) -> bool:
    """Whether a maker's word is told of so many: "maker says four is allowed", "the manual says two is the limit"."""
    before = {scene.word(at) for at in range(item.start - 4, item.start)}
    after = [scene.word(at) for at in range(item.end, item.end + 3)]
    says = scene.word(item.start - 1) in ("says", "said", "say") and bool(MAKERS & before)
    return says and after[0] in ("is", "are") and bool((ALLOWED | {"limit"}) & set(after))


def _second_limit(scene: Scene, item: Item) -> bool:
    """Whether another limit stands before: the 2 of "max 4 in series, 2 in parallel"."""
    first = scene.items[max(0, item.at - 4) : item.at]
    limit = next((other for other in first if other.dim in ("NUM", "COUNT")), None)
    if limit is None or not any(other.fact == "bank.layout" for other in first if other.at > limit.at):
        return False
    return _is_allowed(scene, limit)


def _is_allowed(scene: Scene, item: Item) -> bool:
    """Whether a word of leave stands before it: "up to 4", "max 2"; "if she doubles up, 2" allows nothing."""
    before = [scene.word(at) for at in range(item.start - 4, item.start)]
    return any(word in ALLOWED and (word != "up" or before[at + 1 :][:1] == ["to"]) for at, word in enumerate(before))
