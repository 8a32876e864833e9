"""Heat of the day told in words that fit a battery too: "warm as toast here, 35 degrees"."""

from __future__ import annotations

from collections.abc import Collection

from grammar.dangers.figures import DEGREES
from grammar.dangers.text import Text
from grammar.lexicon.phrases import Hit

HERE = frozenset({"here", "outside", "out", "today", "ashore", "lately", "abroad"})
AFTER = 2  # words after a sign in which the place is named
PRONOUNS = frozenset({"it", "its", "she", "shes", "he", "hes", "one", "they", "theyre", "both", "that", "this"})
OF_NOTHING = (("its",), ("it", "is"))  # at the head of a message they stand for no thing
LONGEST = 2  # words of these
ROOMS = frozenset({"cabin", "saloon", "wheelhouse", "cockpit", "sun", "boat", "shed", "yard", "marina"})


def is_weather(hit: Hit, batteries: Collection[int], words: Text) -> bool:
    """Whether a sign of heat has no subject, says "here", and no battery was spoken of so far.

    A battery or its place in the same clause makes it that one's: "hot as an oven here in the battery box".
    """
    first, last = words.sentences[hit.start]
    nothing = hit.start <= LONGEST and words.words[: hit.start] in OF_NOTHING
    here = not HERE.isdisjoint(words.words[hit.end : hit.end + AFTER])
    if not (nothing or (here and PRONOUNS.isdisjoint(words.words[first : hit.start]))):
        return False
    clause = next((at for at in range(hit.end, last) if at in words.commas), last)
    if any(at < clause for at in batteries):
        return False
    told = frozenset(words.words[hit.end : clause])
    return not nothing or not (told.isdisjoint(HERE | DEGREES) or told.isdisjoint(ROOMS))
