"""What is said around the signs of a text: denials, what was mended, the past, what is only asked about."""

from __future__ import annotations

from collections.abc import Iterable

from grammar.dangers.text import Text
from grammar.lexicon.phrases import Hit

WE_WERE = (("we", "were"), ("i", "was"), ("we", "are"), ("they", "were"))  # "in the pub" themselves
OWN = frozenset({"this", "these", "that", "my", "our", "the", "it"})
QUALIFIED = frozenset(  # after "ours are fine" they take some of it back, or tell of what was
    (
        *("but", "except", "though", "although", "apart", "bar", "save", "however", "yet", "only", "still", "now"),
        *("last", "yesterday", "tonight", "ago", "once", "was", "were", "did", "had", "smelt", "smelled", "got"),
        *("went", "today"),
    )
)

TURNED_OUT = ("turned", "out")
SOMEBODY = frozenset({"i", "we", "he", "she", "they", "ive", "weve", "hes", "shes", "theyve"})


class Context:
    """What is said around the signs, to be asked for by place."""

    def __init__(self, hits: Iterable[Hit], words: Text) -> None:
        named: dict[str, list[Hit]] = {}
        for hit in hits:
            named.setdefault(hit.name, []).append(hit)
        self.supposed = bool(_spared(named.get("supposed", ()), named.get("but-present", ())))
        asked = {hit.start for hit in named.get("asked", ()) if words.begins(hit.start)}
        mended = [hit for hit in named.get("mended", ()) if not any(at in asked for at in hit.at)]
        mended = [hit for hit in mended if hit.start - 1 not in asked and not _is_emptied(hit, words)]
        self.mended = [hit.start for hit in mended]
        self.gone = {at: hit.end for hit in mended for at in range(hit.start, hit.end)}
        self.rid = {at: hit.end for hit in named.get("rid", ()) for at in range(hit.start, hit.end)}
        self.now = [hit.start for hit in _spared(named.get("now", ()), named.get("its-own", ()))]
        self.riddle = bool(named.get("riddle"))
        elsewhere = (hit.start for hit in named.get("other-boat", ()))
        self.other_boat = [at for at in elsewhere if words.words[max(0, at - 2) : at] not in WE_WERE]
        self.not_ours = [hit.start for hit in named.get("not-ours", ())]
        self.renewed = [hit.start for hit in named.get("renewed", ())]
        self.refilled = [hit.start for hit in named.get("refilled", ())]
        self.past = [hit.start for hit in named.get("past", ())]
        self.general = _spared(named.get("general", ()), named.get("but-present", ()))
        self.general_starts = [hit.start for hit in self.general]
        self.told_past = named.get("told-past", [])
        self.lately = [hit.start for hit in named.get("lately", ())]
        self.advised = named.get("advised", [])
        qualified = max((at for at, word in enumerate(words.words) if word in QUALIFIED), default=-1)
        well = [hit for hit in named.get("but-affirmed", ()) if hit.end > qualified]
        self.affirmed = {hit.start for hit in _spared(named.get("affirmed", ()), well)}
        weighed = [hit for hit in named.get("weighed", ()) if words.begins(hit.start)]
        weighed = [hit for hit in weighed if OWN.isdisjoint(words.words[hit.start : hit.end])]
        self.weighed = {at: hit.end for hit in weighed for at in range(hit.start, hit.end)}
        self.denials: dict[int, list[Hit]] = {}  # by the word after them
        for hit in _spared(named.get("negation", ()), named.get("but-not", ())):
            self.denials.setdefault(hit.end, []).append(hit)
        self.denying = {at for hit in named.get("negation", ()) for at in hit.at}


def _spared(hits: Iterable[Hit], by: Iterable[Hit]) -> list[Hit]:
    covered = {at for hit in by for at in range(hit.start, hit.end)}
    return [hit for hit in hits if hit.start not in covered]


def _is_emptied(hit: Hit, words: Text) -> bool:
    """Whether somebody looked through a place: "we turned out the bilge" is no smell that turned out to be it."""
    turned_out = words.words[hit.start : hit.start + 2] == TURNED_OUT
    return turned_out and hit.start > 0 and words.words[hit.start - 1] in SOMEBODY
