"""What somebody told of the past is no general question: "what should I do when the battery was hot last night"."""

from __future__ import annotations

from grammar.dangers.context import Context
from grammar.dangers.text import Text
from grammar.lexicon.phrases import Hit

SUPPOSES = frozenset({"would", "suppose", "supposing", "imagine", "lets"})  # whatever the tense, nothing happened
HEARSAY = frozenset({"heard", "read", "told", "say", "says", "said", "claims", "insists"})
CONDITIONS = frozenset({"if", "unless", "whether", "case"})
ASKS_ON = CONDITIONS | {"can", "could", "would", "may", "might", "will", "does", "do", "should", "must", "batteries"}
TENSE = 3  # words before a sign in which its verb is looked for
PAST = frozenset(
    (
        *("was", "were", "got", "felt", "went", "became", "had", "heard", "saw", "smelt", "smelled", "started"),
        *("began", "turned", "noticed", "found", "came", "did", "kept", "ran", "made", "gave"),
    )
)
IRREGULAR = frozenset({"burnt", "smelt", "stank", "froze", "blew", "burst", "spat", "swole", "shook", "leapt", "wept"})


def is_witnessed(hit: Hit, question: Hit, words: Text, context: Context) -> bool:
    """Whether a sign was there, though `question`, a phrase before it, asks in general.

    Told so is what has a time in the near past and a verb of the past ("last night it was hot"), or follows a "when"
    or "that" whose verb is of the past ("when the lid felt hot"). What was only heard of wants both.
    """
    asked = {words.words[at] for at in question.at}
    if not SUPPOSES.isdisjoint(asked):
        return False
    lately, told = _has_time(hit, words, context), _is_told(hit, words, context)
    if not HEARSAY.isdisjoint(asked):
        return lately and told
    return lately or (told and CONDITIONS.isdisjoint(asked))


def _has_time(hit: Hit, words: Text, context: Context) -> bool:
    """Whether its sentence names a time just gone, and its own verb is of the past."""
    first, last = words.sentences[hit.start]
    if not any(first <= at < last for at in context.lately):
        return False
    before = words.words[max(first, hit.start - TENSE) : hit.end]
    own = (words.words[at] for at in hit.at)
    return not PAST.isdisjoint(before) or any(word.endswith("ed") or word in IRREGULAR for word in own)


def _is_told(hit: Hit, words: Text, context: Context) -> bool:
    """Whether "when it was ..." or "that it got ..." leads to it, with no question of its own between."""
    return any(
        words.sentences[item.start] == words.sentences[hit.start]
        and item.start < hit.end
        and ASKS_ON.isdisjoint(words.words[item.start : hit.end])
        for item in context.told_past
    )
