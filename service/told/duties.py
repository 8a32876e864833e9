"""Two builds of battery between which is chosen: "dual purpose or a pure starting one?"."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

WORDS = {
    "dual-purpose": r"(?:marine )?dual[- ]?(?:purpose|duty|use|type|kind|sort)?|starting[- ]deep[- ]cycle",
    "deep-cycle": r"deep[- ]?cyc(?:le|l)?|leisure|traction|domestic|house(?: type)",
    "cranking": r"start(?:er|ing)?|crank(?:er|ing)?",
}
NOUN = r"(?: ?-?(?:batter(?:y|ies)|batt|type|kind|sort|one|ones|accu))?"
FIRM = r"(?:(?:an?|the|my|our|pure|plain|proper|real|true|ordinary|dedicated|marine|normal|good) )*"
SIDE = "|".join(f"(?P<{{name}}_{at}>{words})" for at, words in enumerate(WORDS.values()))
PAIR = regex(
    rf"\b(?:{SIDE.format(name='one')}){NOUN},? (?:or|vs\.?|versus|against|over|(?:any |really )?better than|rather than"
    rf"|instead of|than) {FIRM}(?:{SIDE.format(name='other')})(?!\w)",
    re.IGNORECASE,
)
MUST_BE = regex(  # "will a leisure battery do, or must it be a starter one?"
    r"\bor (?:must|should|does|do|has) (?:it|i|we|they|that|this)\b[^.?!;]{0,32}"
    rf"(?:\b(?:{WORDS['cranking']}){NOUN}(?!\w)|\b(?:made|built|meant) (?:to|for) (?:turn|start|crank)\w*)",
    re.IGNORECASE,
)
STARTER = r"start(?:er|ing)?|crank(?:er|ing)?|engine"
WEARS = regex(  # "does the thruster kill a start battery quicker than a leisure one"
    r"\b(?:kill|wear|ruin|hurt|harm|shorten|spoil|damag)(?:s|es|e|ing)?\b(?: out)?[^.?!;]{0,50}"
    rf"\b(?:{STARTER})[ -]?(?:batter(?:y|ies)|batt|accu|one)\b",
    re.IGNORECASE,
)
FOR_JUMPS = ("cranking", "dual-purpose", "deep-cycle")  # in the order of preference
FOR_LONG = ("deep-cycle", "dual-purpose", "cranking")


def put(text: str) -> tuple[str, str] | None:
    """The two builds that a text puts as a choice; None where it puts none, or all three.

    >>> put("dual purpose or pure starting, which is better"), put("a leisure battery or a starter battery?")
    (('dual-purpose', 'cranking'), ('deep-cycle', 'cranking'))
    >>> put("is a starter battery or the alternator at fault")
    """
    found = PAIR.search(text)
    if found is None or all(re.search(rf"\b(?:{words})", text, re.IGNORECASE) for words in WORDS.values()):
        return None
    one, other = (next(duty for at, duty in enumerate(WORDS) if found[f"{name}_{at}"]) for name in ("one", "other"))
    return None if one == other else (one, other)


def preferred(pair: tuple[str, str], slow: bool) -> str:
    """The one of two builds to take: for large currents by their plates, for slow loads by what may be used."""
    return min(pair, key=(FOR_LONG if slow else FOR_JUMPS).index)


def wears(text: str) -> bool:
    """Whether it is asked if some use wears a starting battery out.

    >>> wears("does thrusting kill a start battery quicker"), wears("is a start battery good for thrusting")
    (True, False)
    """
    return bool(WEARS.search(text))
