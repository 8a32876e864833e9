"""How far a sign of danger counts: present, past, denied, or only asked about in general."""

from __future__ import annotations

from bisect import bisect_left
from itertools import pairwise

from grammar.dangers.answered import is_answered_no
from grammar.dangers.context import Context
from grammar.dangers.feared import is_feared
from grammar.dangers.listed import is_listed
from grammar.dangers.standing import any_in
from grammar.dangers.text import Text
from grammar.dangers.witnessed import is_witnessed
from grammar.lexicon.phrases import Hit
from grammar.reading import Span

DENIES = 4  # words over which a "not" reaches
TENSE = 3  # words before a sign in which its verb is looked for
WHOSE = frozenset({"mine", "ours", "my", "our", "yours"})  # after "not" they tell whose battery it is
OF_A_BATTERY = frozenset(  # signs that leave the boat with the battery
    (
        *("fire", "smoke", "explosion", "swollen-case", "hissing-venting", "hot-to-touch", "rotten-egg-smell"),
        *("leaking-case", "frozen-lead", "lithium-dropped-or-holed"),
    )
)
STILL = frozenset({"still", "aboard", "again", "keep", "keeps", "kept", "same", "old", "both", "other", "never", "not"})
SHOCK = "shore-shock"
IN_THE_WATER = frozenset(  # which boats share, whichever of them the current comes from
    {"water", "swim", "swims", "swimming", "swam", "swimmer", "swimmers", "bathe", "bathing", "bathers"}
)
TELLING = frozenset(  # words of what is so, whatever was advised before them
    (
        *("is", "its", "are", "was", "now", "shows", "reads", "says", "sits", "goes", "went", "climbs", "has"),
        *("but", "yet", "though", "gives", "puts", "pushes", "pumps", "mine", "ours", "got", "while", "when"),
    )
)
AFFIRMED = 4  # words of a next sentence in which "mine does" is looked for
JOINS = frozenset({"or", "nor", "and", "either", "is", "it", "any", "even", "no", "not"})


def status_of(hit: Hit, keeps: bool, words: Text, context: Context, denied: Hit | None) -> str:
    """Present, past, denied or general, by what stands about a sign. `keeps`: of a family that time does not mend;
    `denied`: the sign before it that was denied."""
    first, last = words.sentences[hit.start]
    if _is_denied(hit, first, words, context, denied):
        return "denied"
    if is_feared(hit, words):
        return "general"
    if _is_general(hit, first, words, context) and not _is_affirmed(hit, last, context):
        return "general"
    if context.rid.get(hit.start, 0) >= hit.end:  # "binned the swollen one", "to the tip with its bulge"
        return "past"
    if _is_now(hit, first, words, context):
        return "present"
    after = words.sentences[min(last + 1, len(words.words) - 1)][1]
    if context.gone.get(hit.start, 0) >= hit.end or any_in(context.mended, hit.start, after):
        return "past"
    shared = hit.name.startswith(SHOCK) and not IN_THE_WATER.isdisjoint(words.words[first:last])
    elsewhere = any_in(context.other_boat, first, last) and not shared
    long_ago = any_in(context.past, first, last) and (not keeps or _is_over(hit, (first, after), words, context))
    return "past" if elsewhere or long_ago else "present"


def _is_over(hit: Hit, within: Span, words: Text, context: Context) -> bool:
    """Whether what was long ago has passed, though its family lasts: not theirs, replaced since, its cells filled."""
    first, after = within
    if any_in(context.not_ours, first, after):
        return True
    if "dry" in words.words[hit.start : hit.end + 1] and any_in(context.refilled, hit.end, after):
        return True
    aboard = hit.name.split("/")[0] not in OF_A_BATTERY or not STILL.isdisjoint(words.words[hit.end : after])
    return not aboard and any_in(context.renewed, hit.end, after)


def _is_now(hit: Hit, first: int, words: Text, context: Context) -> bool:
    """Whether it is told in the present, which nothing that was mended or long ago makes past."""
    reach = range(max(first, hit.start - TENSE), hit.start + 1)
    return any_in(context.now, max((at for at in reach if at in words.commas), default=reach.start), hit.end)


def _is_affirmed(hit: Hit, last: int, context: Context) -> bool:
    """Whether what is asked in general is then said to be so: "what if it swells? Mine has"."""
    return any(hit.end <= at <= last + AFFIRMED for at in context.affirmed)


def _is_denied(hit: Hit, first: int, words: Text, context: Context, denied: Hit | None) -> bool:
    following = words.words[hit.end : hit.end + 2]
    if following[:1] == ("not",) and hit.end not in words.commas and WHOSE.isdisjoint(following[1:]):
        return True
    if is_answered_no(hit, words):
        return True
    if denied and hit.start < denied.end:  # inside or overlapping what was denied
        return True
    if denied and all(words.words[at] in JOINS for at in range(denied.end, hit.start)):
        return True  # "not swollen, hot or leaking"
    sign = _sign(hit)
    gaps = ((after, before + 1) for before, after in pairwise(hit.at) if after > before + 1)
    inside = () if context.denying & set(hit.at) else gaps  # "won't stop" is a sign, and "no engine ... no wind" too
    return any(_reached(at, since, words, context) for at, since in ((sign, first), *inside))


def _sign(hit: Hit) -> int:
    """The word that is the sign itself, beside what it stands by."""
    return hit.end - 1 if hit.name.endswith("/last") else hit.start


def _reached(sign: int, since: int, words: Text, context: Context) -> bool:
    """Whether a denial that begins at `since` or later reaches this word."""
    return any(
        since <= item.start
        and "but" not in words.words[item.end : sign]
        and not any(at in words.commas for at in range(item.end, sign + 1))
        for end in range(sign - DENIES, sign + 1)
        for item in context.denials.get(end, ())
    ) or is_listed(sign, since, words, context)


def is_advised(hit: Hit, words: Text, context: Context) -> bool:
    """Whether a sign is only what somebody advises: "they say to let it gas"."""
    first, last = words.sentences[hit.start]
    told = any(
        first <= item.start and item.end <= hit.end and not _is_told_between(item.end, hit.end, words)
        for item in context.advised
    )
    return told and not _is_affirmed(hit, last, context)


def _is_told_between(start: int, end: int, words: Text) -> bool:
    """Whether something that is so stands there: "he said we can charge it, it is at 15.5 V now"."""
    return any(at in words.commas for at in range(start, end)) or not TELLING.isdisjoint(words.words[start:end])


def _is_general(hit: Hit, first: int, words: Text, context: Context) -> bool:
    sign = _sign(hit)
    if context.supposed or context.weighed.get(hit.start, 0) >= hit.end:
        return True
    for at in range(bisect_left(context.general_starts, first), len(context.general)):
        item = context.general[at]
        if item.start > sign:
            return False
        if item.end <= hit.end and not is_witnessed(hit, item, words, context):
            return True
    return False
