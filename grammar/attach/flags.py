"""What a word of yes or no states: isolated outputs, a shared negative, a switched charger."""

from __future__ import annotations

from grammar.attach.settings import for_a_battery, is_setting
from grammar.reading import Value
from grammar.scene.items import Item
from grammar.scene.scene import Scene
from grammar.told.chargers.lamps import lit_at
from grammar.told.chargers.switch import of_its_kind, stands_on

OUTPUTS = frozenset({"outputs", "outs", "legs"})  # a converter has one of them
PLUSES = frozenset({"pluses", "plusses", "positives"})
LOOKS = frozenset(
    {
        "blue",
        "red",
        "green",
        "black",
        "white",
        "yellow",
        "orange",
        "grey",
        "little",
        "big",
        "small",
        "new",
        "old",
        "cheap",
    }
)


def is_switched(scene: Scene, item: Item, offered: set[int]) -> bool:
    """Whether a kind is what a charger is set to, or for."""
    if for_a_battery(scene, item):
        return False
    tests = (is_setting, of_its_kind, _of_charger, lit_at)
    return any(test(scene, item) for test in tests) or stands_on(scene, item, offered)


def charges(scene: Scene, item: Item) -> bool:
    """Whether "smart" is said of a charger: "10 amps, smart", "the charger is smart"; not "smart BMS"."""
    after = scene.after(item)
    if after is not None and after.name in LOOKS and after.kind == "word":  # "the smart blue charger thing"
        after = scene.after(after)
    named = after is not None and (after.head in ("charger", "dcdc") or after.name in ("thing", "one", "job", "gadget"))
    if after is not None and after.kind in ("word", "thing") and not named:
        return False
    return "charger" in scene.heads or scene.likely[:1] == ("charger.current",)


HAS_OR_USES = frozenset(
    {
        *("on", "from", "with", "got", "have", "has", "had", "own", "use", "using", "used", "borrowed", "bought"),
        *(
            "is",
            "would",
            "will",
            "could",
            "does",
            "me",
            "us",
            "him",
            "put",
            "found",
            "its",
            "connect",
            "connected",
            "try",
        ),
    }
)


def _of_charger(scene: Scene, item: Item) -> bool:
    """Whether a charger is for this kind, and the battery's own is told besides: "my gel charger, can it do AGM"."""
    after = scene.after(item)
    others = len(scene.names_of(item.fact)) > 1
    before = scene.before(item)
    mine = scene.word(item.start - 1) in ("my", "our", "the", "old", "his", "this", "their", "her", "your") or (
        before and before.dim == "AMP"
    )
    mine = mine or (scene.word(item.start - 1) in ("a", "an") and scene.word(item.start - 2) in HAS_OR_USES)
    return after is not None and after.head == "charger" and others and bool(mine)


def flag(scene: Scene, item: Item) -> tuple[str, Value]:
    """A yes or no. One negative is a converter's two sides', or else that of a charger's outputs."""
    true = item.name == "true"
    if item.fact == "converter.common_negative" and "dcdc" not in scene.heads and PLUSES & scene.vocabulary:
        return "bank.layout", "parallel"  # "pluses joined, minuses joined"
    asked = "charger.isolated" in scene.expected
    steps = {12.0, 24.0} <= {
        item.quantity.value for item in scene.quantities("VOLT", "NUM", "COUNT")
    }  # "a 12 to 24 one"
    pair = scene.word(item.end - 1) == "inside"  # "a two-leg charger with its negatives joined inside"
    charges = "charger" in scene.heads and "dcdc" not in scene.heads and (pair or not steps)
    if item.fact == "converter.common_negative" and (asked or charges):
        return "charger.isolated", not true
    if item.fact == "charger.isolated" and not true and "converter.common_negative" in scene.expected:
        words = {scene.word(at) for at in range(item.start, item.end)}
        if {"common", "shared", "share"} & words:
            return "converter.common_negative", True
    shares = not true and {"common", "shared", "share"} & {scene.word(at) for at in range(item.start, item.end)}
    alone = OUTPUTS.isdisjoint(scene.word(at) for at in range(item.start, item.end))
    converter = "dcdc" in scene.heads or ("charger" not in scene.heads and alone)
    if item.fact == "charger.isolated" and shares and converter and not asked and _converts(scene):
        return "converter.common_negative", True
    return item.fact, true


def _converts(scene: Scene) -> bool:
    return "dcdc" in scene.heads or scene.about("word:boost") or bool(scene.quantities("VOLT"))
