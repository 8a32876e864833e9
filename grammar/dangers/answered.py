"""A bare question that is answered at once is no sign: "cables on backwards? no, only painted over"."""

from __future__ import annotations

from grammar.dangers.text import Text
from grammar.lexicon.phrases import BREAK, QUESTION, Hit

NOES = (("no",), ("nope",), ("nah",), ("never",))
BARE = frozenset(("is", "are", "it", "its", "was", "has", "the", "my", "any", "a", "there", "battery", "case", "and"))
CALM = frozenset(  # what follows says that all is well; "hot? no, boiling!" does not
    (
        *("just", "only", "merely", "simply", "thank", "thanks", "thankfully", "luckily", "nothing", "all", "not"),
        *("cold", "cool", "dry", "fine", "sound", "flat", "straight", "quiet", "never"),
    )
)


def is_answered_no(hit: Hit, words: Text) -> bool:
    """Whether nothing but the sign is asked, and a plain "no" follows that ends there or goes on calmly."""
    end = hit.end + 1
    if words.words[hit.end : end] != (QUESTION,) or words.words[end : end + 1] not in NOES:
        return False
    after = words.words[end + 1 : end + 2]
    if after not in ((), (BREAK,)) and (end + 1 not in words.commas or CALM.isdisjoint(after)):
        return False
    begun = next(at for at in range(hit.start, -1, -1) if words.begins(at))
    return BARE.issuperset(words.words[begun : hit.start])
