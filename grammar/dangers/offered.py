"""Volts that a switch only offers, one place beside the other: "14.4 AGM, 14.1 gel, refresh 15.8" is no reading."""

from __future__ import annotations

from collections.abc import Sequence

from grammar.lexicon.phrases import ENDS

LEAST = 3  # figures that make a row
NAMED = 2  # of them that are named by what they are for
VOLTS = (10.0, 18.0)
SWITCH = frozenset(
    (
        *("knob", "dial", "switch", "selector", "setting", "settings", "position", "positions", "places", "mode"),
        *("modes", "programme", "programmes", "program", "programs", "menu", "option", "options", "profiles"),
    )
)
NAMES = frozenset(
    (
        *("agm", "gel", "wet", "flooded", "lithium", "lfp", "calcium", "supply", "float", "boost", "bulk", "refresh"),
        *("absorption", "regenerate", "repair", "recond", "recondition", "equalise", "equalize", "winter", "snowflake"),
    )
)
ON = frozenset({"on", "at", "to", "now", "is", "stuck", "jammed", "set", "reads", "shows", "showing", "says"})
READ = frozenset(  # somebody looked at a meter, or the charger is at one of them
    (
        *("meter", "reads", "reading", "shows", "showed", "showing", "needle", "climbs", "climbed", "rising"),
        *("measure", "measures", "measured", "currently", "stuck", "jammed"),
    )
)


def is_offered(words: Sequence[str], at: int) -> bool:
    """Whether the number at this place stands in a row of what a switch can be set to, and is not what it is at."""
    first = next((place + 1 for place in range(at - 1, -1, -1) if words[place] in ENDS), 0)
    last = next((place for place in range(at, len(words)) if words[place] in ENDS), len(words))
    sentence = words[first:last]
    if not SWITCH & set(words[first:at]) or READ & set(sentence) or words[at - 1] in ON:
        return False
    volts = [word for word in sentence if word[:1].isdigit() and VOLTS[0] <= float(word.replace(",", ".")) <= VOLTS[1]]
    return len(volts) >= LEAST and len(NAMES & set(sentence)) >= NAMED
