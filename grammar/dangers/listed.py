"""Signs in a list that is denied as a whole: "no leaks, cracks or swelling"."""

from __future__ import annotations

from grammar.dangers.context import Context
from grammar.dangers.text import Text

LIST = 9  # words of such a list
ENDS_LIST = frozenset({"but", "it", "its", "they", "is", "are", "was", "were", "the", "my", "and", "has", "have", "."})


def is_listed(sign: int, since: int, words: Text, context: Context) -> bool:
    """Whether the word stands in a list that is denied as a whole: "no leaks, cracks or swelling"."""
    row = next((at for at in range(sign - 1, sign - 3, -1) if at >= 0 and words.words[at] in ("or", "nor")), None)
    row = sign if row is None and "or" in words.words[sign + 1 : sign + 4] and sign in words.commas else row
    if row is None:
        return False
    for item in (item for end in range(row, row - LIST, -1) for item in context.denials.get(end, ())):
        if since <= item.start and item.end not in words.commas:
            return not any(word in ENDS_LIST for word in words.words[item.end : row])
    return False
