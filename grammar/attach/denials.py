"""Whether a value is denied, doubted, wanted or asked for."""

from __future__ import annotations

import re

from grammar.attach.settings import SETTING_WITHIN
from grammar.lexicon.vocabulary import Found
from grammar.scene.claims import close
from grammar.scene.items import Item
from grammar.scene.near import around, gap
from grammar.scene.scene import Scene
from grammar.text.patterns import regex

NONE_OF_THEM = regex(  # "nothing of ours is in series", "no two are in parallel"
    r"\b(?:nothing|none|neither|no (?:two|batter(?:y|ies)|banks?))\b[^.?!;,\d]{0,30}"
    r"\b(?:is|are|was|were|goes?|stands?|runs?) $",
    re.IGNORECASE,
)
DENIED_WITHIN = 1.3  # a denial holds over the value that is this near after it
UNSURE_WITHIN = 4.0
CHOICE = 3  # items back to the other value of a choice
KNOWING = frozenset(  # "I do not know if they are"
    {"know", "sure", "unsure", "idea", "clue", "tell", "say", "says", "wonder", "unclear", "check", "dunno", "remember"}
)
OF_WHETHER = 7  # words between "whether" and what is not known
SUBJECT = 4  # words between "are" and what is asked: "are the two outputs of it isolated"
ASKS_OF = frozenset({"is", "are", "does", "do", "can"})
BEGINS = frozenset({"and", "or", "so", "but", "well"})
MUST = (["mustnt"], ["must"], ["should"], ["shouldnt"], ["may"], ["cannot"])  # "outlets mustn't share a minus"
LEAVE = frozenset(  # what is asked of a kind that somebody would take: "... ok?", "... allowed?"
    {
        *(
            "ok",
            "okay",
            "fine",
            "right",
            "alright",
            "allowed",
            "permitted",
            "acceptable",
            "enough",
            "good",
            "safe",
            "do",
        ),
        *("work", "suitable", "possible", "charge", "serve"),
    }
)
OF_LEAVE = 9  # words after it in which that is asked
WITH = frozenset({"with", "that", "without", "which", "having", "has", "use", "connect", "ok", "fine"})
SPEAKS = frozenset(
    [
        "wait",
        "sorry",
        "actually",
        "hang",
        "hold",
        "theyd",
        "they",
        "theyre",
        "its",
        "it",
        "im",
        "i",
        "we",
        "were",
        "thats",
        "mines",
        "ours",
    ]
)  # "no they'd be in parallel"
NAMELESS = frozenset({"name", "brand", "nonsense", "frills", "load"})  # "a no name lithium", "no load, gel, 12.5"
HARMLESS = frozenset(  # "no problem to hang a gel beside it": what is denied is the harm
    (
        *("problem", "problems", "trouble", "harm", "issue", "issues", "bother", "objection", "objections", "risk"),
        *("danger", "worry", "worries", "difference", "reason", "rule", "drama", "crime", "sin", "big", "great"),
    )
)
ASKED_SO = frozenset({"isnt", "arent", "wouldnt", "wont", "doesnt"})
ENDS = frozenset({".", "?", "!", ";", ":", ","})
WHOSE = frozenset({"the", "my", "our", "this"})
ONLY = frozenset({"just", "only", "simply", "merely", "really", "basically", "another", "actually"})
IS = frozenset({"is", "are", "was"})
FULL = "100"
DONE_TO = frozenset({"charge", "charging", "recharge", "store", "freeze", "drain", "empty", "overcharge", "equalise"})
ON_CHARGE = (["on", "charge"], ["on", "the"], ["to", "charge"])  # "... put a lithium on charge"
THAT = frozenset({"that", "it", "this", "they", "these", "she", "battery", "batteries"})


def is_denied(scene: Scene, item: Item) -> bool:
    """Whether the value does not hold; "no lithium mode" denies a switch's position, not the battery."""
    if item.fact == "bank.layout" and NONE_OF_THEM.search(scene.ahead(scene.span(item.start, item.end)[0])):
        return True
    follows = scene.after(item)
    words = [scene.word(at) for at in range(item.start - 3, item.start)]
    if item.fact == "charger.kind" and "without" in words[1:]:
        return True  # "without a dc-dc"
    if item.fact == "battery.duty" and words[:2] == ["instead", "of"] and words[2] in ("my", "our"):
        return False  # "a cranking one instead of our deep cycle": which is there
    if follows is not None and (
        follows.head == "charger" or close(scene, item, "charger.setting", reach=SETTING_WITHIN)
    ):
        return False
    return any(
        found.end <= item.start
        and gap(scene, item, found.start, found.end) <= DENIED_WITHIN
        and scene.word(found.start - 1) != "why"
        and not _or_not(scene, found)
        and not (found.start == 0 and scene.word(1) in SPEAKS)
        and not (scene.word(found.start) == "no" and scene.word(found.end) in NAMELESS | HARMLESS)
        and not _counts(scene, found)
        and not (item.fact == "battery.duty" and scene.word(found.start) in ASKED_SO and _asks(scene, item))
        and not (item.fact == "battery.chemistry" and (_asks_after(scene, found, item) or _done_to(scene, found, item)))
        for found in around(scene.denials, item, scene.denial_starts)
    )


def _asks(scene: Scene, item: Item) -> bool:
    """Whether the clause of a value is a question: "isn't deep cycle a waste on it?" denies nothing."""
    end = scene.span(item.start, item.end)[1]
    mark = re.search(r"[.?!;]", scene.text[end:])
    return mark is not None and mark[0] == "?"


def _asks_after(scene: Scene, denial: Found, item: Item) -> bool:
    """Whether a sentence begins with "isn't" and asks what a kind is: "isn't gel just another AGM?"."""
    begins = denial.start == 0 or scene.word(denial.start - 1) in ENDS | BEGINS
    only = scene.word(item.end) in ONLY or scene.word(item.end + 1) in ONLY or scene.word(denial.end) in WHOSE
    return begins and only and scene.word(denial.start) in ASKED_SO and _asks(scene, item)


def _done_to(scene: Scene, denial: Found, item: Item) -> bool:
    """Whether what is denied is done to the battery, which is there: "I'd never charge a lithium at zero"."""
    between = {scene.word(at) for at in range(denial.end, item.start)}
    on_charge = [scene.word(item.end), scene.word(item.end + 1)] in ON_CHARGE
    return bool(between & DONE_TO) or on_charge


def _counts(scene: Scene, denial: Found) -> bool:
    """Whether "no." is short for how many: "2 no. gels"."""
    counted = scene.word(denial.start) == "no" and scene.word(denial.end) == "." and denial.start > 0
    return counted and scene.at_word[denial.start - 1].dim in ("NUM", "COUNT")


def _or_not(scene: Scene, denial: Found) -> bool:
    """Whether it ends a question that what follows is put to: "fair match or not: lithium of 150 Ah"."""
    after = scene.word(denial.end)
    return scene.word(denial.start - 1) == "or" and bool(after) and not after[:1].isalnum()


def is_unsure(scene: Scene, item: Item) -> bool:
    """Whether the writer does not know: "no idea if AGM or gel", "is that fully charged"."""
    last, second, third = (scene.word(item.start - back) for back in (1, 2, 3))
    if item.fact == "battery.charge" and (
        (last in THAT and second in IS)
        or "whens" in (last, second)
        or (last in ("i", "we", "she", "they") and second in ("am", "are", "is") and third == "when")
        or (scene.word(item.start) == "at" and {"when", "am"} <= {last, second, third})
        or (scene.word(item.start) == "at" and "when" in (second, third) and last in THAT | {"i", "we", "she"})
        or (last in IS and second in THAT and third in ("if", "whether") and not _supposes(scene, item.start - 3))
        or (last in IS and second in THAT and third == "when" and item.name == FULL)  # "how do I see when it is full"
    ):
        return True
    for found in around(scene.doubts, item, scene.doubt_starts):
        if found.end <= item.start and gap(scene, item, found.start, found.end) <= UNSURE_WITHIN:
            between = [scene.word(at) for at in range(found.end, item.start)]
            return bool({"if", "whether", "which"} & set(between)) or len(between) <= 1
    return False


def _supposes(scene: Scene, at: int) -> bool:
    """Whether an "if" opens what is said and so doubts nothing: "and if it is half empty?"; not "I wonder if"."""
    return scene.word(at) == "if" and (at == 0 or scene.word(at - 1) in ("and", "what", "but", "so", ",", ".", "?"))


def is_wanted(scene: Scene, item: Item) -> bool:
    """Whether a state is what is to come: "should I put it on charge", "it wants charging"."""
    before = {scene.word(at) for at in range(item.start - 4, item.start)}
    wanted = scene.word(item.start - 1) in ("wants", "want", "needs", "need", "about", "for")
    return (item.fact, item.name) == ("reading.state", "charging") and (wanted or "put" in before)


def one_before_or(scene: Scene, item: Item) -> Item | None:
    """The other value of a choice: AGM of "no idea if the battery is AGM or gel", "a gel or an AGM"."""
    if item.at < CHOICE or "or" not in (scene.word(item.start - 1), scene.word(item.start - 2)):
        return None
    near = scene.items[item.at - CHOICE : item.at]
    return next((other for other in near if other.kind == "value" and other.fact == item.fact), None)


def is_asked_of(scene: Scene, item: Item) -> bool:
    """Whether a yes or no is what is asked: "are the outputs isolated?", "doesn't say whether they're isolated"."""
    clause = scene.clauses[scene.clause(item.start)]
    before = [scene.word(at) for at in range(clause.start, item.start)]
    first = next((at for at, word in enumerate(before) if word not in BEGINS), len(before))
    subject = before[first + 1 :]
    if (item.fact, item.name) == ("charger.isolated", "false") and _is_proposed(scene, item, subject):
        return False  # "is a non-isolated one fine": that is what it is, and whether it is allowed is asked
    return (
        "whether" in before[-OF_WHETHER:]
        or ("if" in before[-OF_WHETHER:] and not KNOWING.isdisjoint(before[-OF_WHETHER - 2 :]))
        or before[-1:] in MUST
        or (
            before[first : first + 1] != []
            and before[first] in ASKS_OF
            and WITH.isdisjoint(subject)
            and len(subject) <= SUBJECT
        )
    )


def _is_proposed(scene: Scene, item: Item, subject: list[str]) -> bool:
    """Whether leave is asked for a kind: "can I fit a non-isolated ...", "is the non-isolated type ok"."""
    if "or" in subject or scene.word(item.end) == "or":
        return False
    weighed = not LEAVE.isdisjoint(scene.word(at) for at in range(item.end, item.end + OF_LEAVE))
    return subject[:1] in (["i"], ["we"]) or (weighed and subject[:1] in ([], ["a"], ["the"], ["my"], ["our"]))
