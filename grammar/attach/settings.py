"""Whether a kind is what a charger is set to."""

from __future__ import annotations

import re

from grammar.lexicon.vocabulary import Found
from grammar.scene.items import Item
from grammar.scene.near import around, gap
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

SETTING_WITHIN = 0.6
LEADS_TO = frozenset({"on", "at", "to", "for", "says"})  # what is set follows them
ADJACENT = 0.1
USING = frozenset({"use", "used", "using", "put", "try", "run", "connect"})  # "can I use my charger on lithium"
FITS = frozenset({"ok", "okay", "fine", "good", "safe", "alright"})  # "charger ok on gel?"
IT_IS = frozenset({"is", "its"})
STILL = frozenset({"is", "was", "s", "still", "left", "always", "has", "been", "yet", "sits", "stays", "set"})
STILL |= {"standing", "stands", "stood", "sat", "sitting"}
REGULATORS = frozenset({"regulator", "controller"})
LABELLED = frozenset({"CCA", "CA", "AH", "RC", "WEIGHT"})
CASES = frozenset({"machine", "box", "unit", "display", "screen"})  # a charger, where two kinds are told
WHOSE = frozenset({"my", "our", "his", "her", "their", "your", "this", "these"})
SETTINGS = frozenset({"setting", "mode", "programme", "program", "profile", "position"})
JUST_BEFORE = 3  # words: "setting if it is on AGM"
FOLLOWING = 60  # characters: "setting for my new lithium"
HELD = frozenset({"it", "its", "sat", "set", "got", "left", "knob", "dial", "selector"})  # "... on gel"


CHARGER_ON = regex(  # "the charger may stay on AGM", for a battery of another kind
    r"\bcharger\b(?: (?!to |for |from )\w+){0,4} (?:on|at) (?:its |the )?['\"]?$", re.IGNORECASE
)
WITH_IT_ON = regex(  # "am I alright with the charger on AGM", of a battery of no told kind
    r"\b(?:with|have|having|had|got) (?:the|my|our|his|her|its) charger (?:still |always |set )?on (?:the )?['\"]?$",
    re.IGNORECASE,
)
USES_IT = regex(r"\b(?:use|used|using|put|try|connect)\b[^.?!;]{0,20}\bcharger\b", re.IGNORECASE)
LEFT_ON = regex(  # "leave my AGM on 'wet'": the switch stands on a kind that the battery is not
    r"\b(?:leav|left|keep|kept|charg|run|ran|had)\w* (?:my |the |our |his |her |an? )?(?:\d{2,3} ?ah )?"
    r"(?P<own>agm|gel|lithium|lifepo4|wet|flooded)s?(?: (?:battery|batteries|bank|ones?))? on (?:the )?"
    r"['\"‘“]?(?:\w+ ?/ ?)?$",
    re.IGNORECASE,
)
LEFT_SO = regex(  # "can I leave it on wet?", where the battery is told to be of another kind
    r"\b(?:leav|left|keep|kept|charg|run|ran|had|put)\w* (?:it|mine|ours|them|this|that|the (?:charger|battery|switch))"
    r" (?:switched |set |always |just |charging |up |over )?on (?:the )?['\"‘“]?$",
    re.IGNORECASE,
)
FOR_ITS_KIND = regex(
    r"^['\"]? (?:setting |mode |position )?(?:for|with|to (?:charge|fill)) "
    r"(?:(?:the|my|our|a|an|his|her|this|new|old|bow|house) )*"
    r"(?P<kind>lithiums?|li(?:fe)?po4|lfp|agms?|gels?|wets?|flooded)\b",
    re.IGNORECASE,
)


def _on_it_for_another(scene: Scene, item: Item) -> bool:
    """Whether a charger stays on this kind for a battery of another: "on AGM for the lithium"."""
    start, end = scene.span(item.start, item.end)
    if FOR_ITS_KIND.match(scene.text[end : end + FOLLOWING]) is None:
        return False
    before = scene.ahead(start)
    return CHARGER_ON.search(before) is not None and USES_IT.search(before) is None


def _left_so(scene: Scene, item: Item) -> bool:
    """Whether a battery of another kind is left on this one: "leave it on wet", "a gel, may I keep it on AGM?"."""
    ahead = scene.ahead(scene.span(item.start, item.end)[0])
    if LEFT_ON.search(ahead):
        return True
    spoken = "charger" in scene.heads or scene.about("word:setting") or scene.likely[:1] == ("charger.current",)
    if not (spoken or (item.name == "flooded" and "load" not in scene.heads)) or not LEFT_SO.search(ahead):
        return False
    after = scene.after(item)
    own = "battery.chemistry"
    others = any(other.fact == own and other.name != item.name for other in scene.items)
    return (others or any(old.fact == own for old in scene.said)) and (after is None or after.head != "battery")


def is_setting(scene: Scene, item: Item) -> bool:
    """Whether the kind is that of a charger's switch: "AGM setting", "set to gel"."""
    for found in around(scene.roles, item, scene.role_starts):
        far = gap(scene, item, found.start, found.end)
        if found.end > item.end and _labels(scene, found):
            continue
        if found.start >= item.end and scene.word(found.end - 1) in LEADS_TO:
            continue  # "lithium stays on the boat"
        if found.concept == "charger.setting" and (_elsewhere(scene, found) or _stays_on_battery(scene, item, found)):
            continue
        if found.concept == "charger.setting" and far <= SETTING_WITHIN and not _lacking(scene, item, found):
            return True
        before = found.concept == "left_on" and found.end <= item.start and far <= ADJACENT
        if before and _is_put_on(scene, item, found):
            return True
    if _on_it_for_another(scene, item) or _left_so(scene, item):
        return True
    follows = scene.after(item)
    if WITH_IT_ON.search(scene.ahead(scene.span(item.start, item.end)[0])):
        return follows is None or follows.head != "battery"
    at = item.start - 1
    if scene.word(at) not in ("at", "in"):
        return False
    return (scene.word(at - 1) in STILL and _charger_before(scene, item, at)) or _it_is_at(scene, item, at)


def _labels(scene: Scene, found: Found) -> bool:
    """Whether a battery's own figure follows: "marked 800 CCA"."""
    return scene.at_word[found.end].dim in LABELLED if found.end < len(scene.at_word) else False


def _it_is_at(scene: Scene, item: Item, at: int) -> bool:
    """Whether "it's at gel" is said of the charger that was named last."""
    follows = scene.after(item)
    before = [head.head for head in scene.head_items if head.end <= at]
    its = scene.word(at) == "at" and scene.word(at - 1) == "its"
    return its and before[-1:] == ["charger"] and (follows is None or follows.head != "battery")


def _elsewhere(scene: Scene, found: Found) -> bool:
    """Whether a position is no switch's, as nothing that charges is spoken of: "adjourned position: gel"."""
    if scene.word(found.start) not in ("position", "positions") or {"charger", "panel", "dcdc"} & scene.heads:
        return False
    kinds = {item.name for item in scene.items if item.fact == "battery.chemistry"}
    if len(kinds) == 2 and CASES & scene.vocabulary:
        return False
    if len(kinds) == 2 and scene.word(found.start - 3) in ("at", "on", "in"):  # "gel at the AGM position"
        return False
    return not any(old.fact.startswith("charger.") for old in scene.said) and scene.likely[:1] != ("charger.current",)


def _stays_on_battery(scene: Scene, item: Item, found: Found) -> bool:
    """Whether what stays on this kind is a charger on its battery, no switch: "14 V stays on my gel battery"."""
    if scene.word(found.start) != "stays" or found.end > item.start:
        return False
    follows = scene.after(item)
    battery = follows is not None and follows.head == "battery" and scene.word(follows.end) not in SETTINGS
    return battery or scene.word(item.start - 1) in WHOSE


def for_a_battery(scene: Scene, item: Item) -> bool:
    """Whether a setting was used for a battery of this kind: "on the wet setting for our lithium"."""
    before = [scene.word(at) for at in range(item.start - 3, item.start)]
    if before[0] in SETTINGS and before[1] in ("for", "with") and before[2] in WHOSE:
        return True
    if not (before[1] in SETTINGS and before[2] in ("for", "with")):
        return False
    other = (other for other in scene.items if other.fact == item.fact and other.name != item.name)
    return any(one.end == item.start - 2 for one in other)  # "gel setting for lithium"


def _of_a_setting(scene: Scene, found: Found) -> bool:
    """Whether a setting is spoken of just before: "right setting if it is on AGM"."""
    return any(role.concept == "charger.setting" and 0 <= found.start - role.end <= JUST_BEFORE for role in scene.roles)


def _is_put_on(scene: Scene, item: Item, found: Found) -> bool:
    """Whether a charger was put on this kind: "the charger is on gel", "left it on gel"."""
    follows = scene.after(item)
    if follows is not None and (follows.head == "battery" or follows.name in ("pair", "twins")):
        return False
    if scene.word(found.start - 1) in FITS:
        return False
    if USING & {scene.word(found.start - back) for back in (2, 3, 4, 5)} and scene.word(found.start - 1) == "charger":
        return False
    spoken = "charger" in scene.heads or scene.likely[:1] == ("charger.current",)
    if spoken and scene.word(found.start - 1) in IT_IS and _of_a_setting(scene, found):
        return True
    if spoken and (found.end - found.start > 1 or scene.word(found.start - 1) in HELD):
        return True
    return _charger_before(scene, item, found.start)


def _charger_before(scene: Scene, item: Item, end: int) -> bool:
    """Whether a charger ends there, or is said to be there still: "the charger is still on wet"."""
    at = end - 1
    while scene.word(at) in STILL:
        at -= 1
    if at < end - 1 and scene.word(at) in REGULATORS:
        return True
    return any(
        head.head == "charger"
        and head.end <= end
        and (end - head.end <= 1 or all(scene.word(at) in STILL for at in range(head.end, end)))
        for head in around(scene.head_items, item, scene.head_starts)
    )


def _lacking(scene: Scene, item: Item, found: Found) -> bool:
    """Whether the setting is asked for or missing: "which charger setting", "no lithium mode"."""
    words = {scene.word(at) for at in (*range(found.start - 2, found.start), item.start - 1)}
    return not words.isdisjoint(("which", "what", "no", "without"))
