"""A thumb on the button: words that tell of a motor made to run while its volts are read, in whatever order."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from grammar.lexicon.vocabulary import Found
from grammar.text.tokens import Token

CONTROLS = frozenset(
    [
        "button",
        "buttons",
        "knob",
        "joystick",
        "stick",
        "lever",
        "toggle",
        "trigger",
        "rocker",
        "paddle",
        "pedal",
        "switch",
    ]
)
PARTS = frozenset({"thumb", "finger", "hand", "fist", "foot"})
PRESS = (
    frozenset({"press", "presses", "pressing", "lean", "leans", "leaning", "leant", "hold", "holds", "holding", "held"})
    | frozenset({"push", "pushes", "pushing", "hit", "hits", "hitting", "mash", "mashes", "squeeze", "squeezes", "tap"})
    | frozenset(
        {"shove", "shoves", "pull", "pulls", "touch", "touches", "nudge", "nudges", "lay", "lays", "jab", "crank"}
    )
)
HELD = PARTS | {"hold", "holds", "holding", "held", "press", "pressing", "presses", "pressed"}
IS_PRESSED = frozenset(
    {"over", "down", "pressed", "held", "pushed", "in", "engaged", "depressed", "hard", "across", "leaned", "squeezed"}
)
REACH = 5  # words from the press to what is pressed
ENDS = frozenset({".", "?", "!", ";", ","})
NOT = frozenset({"not", "no", "without", "off", "dont", "wont", "never", "nothing", "released"})
AFTER_WITH = frozenset({":", "=", "it", "at", "is"})
DOWN = frozenset({"down", "on", "in"})
AFTER_IN = frozenset({"the", "a", "my", "our", "its", "his", "wheelhouse", "cockpit"})  # "the button in the cockpit"


def pressings(tokens: Sequence[Token]) -> Iterator[Found]:
    """Where a control is pressed: "leans on the button", "thumb on the stick", "knob pressed", "my thumb is down"."""
    words = [token.word for token in tokens]
    for at, word in enumerate(words):
        if word in CONTROLS:
            start, end = _pressed(words, at)
        elif word in PARTS:
            start, end = _put_down(words, at)
        else:
            continue
        if end > start and NOT.isdisjoint(words[max(0, start - 2) : end]):
            yield Found("word", "sag", start, end)


def _pressed(words: Sequence[str], at: int) -> tuple[int, int]:
    """The words of a control and of what presses it; nothing where none does."""
    if words[at] == "switch" and not HELD.intersection(words[max(0, at - REACH) : at + 3]):
        return at, at  # a charger has one too, and a battery
    if words[at - 1 : at] == ["with"] and (words[at + 1 : at + 2] or [""])[0] in AFTER_WITH:
        return at - 1, at + 1  # "with button: 10.3 V"
    for before in range(at - 1, max(at - 1 - REACH, -1), -1):
        if words[before] in ENDS or words[before][:1].isdigit():
            break
        if words[before] in PRESS or words[before] in PARTS:
            return before, at + 1
    after = [*words[at + 1 : at + 4], "", "", ""]
    place = 1 if after[0] in ("is", "was", "goes", "being", "all", "fully") else 0
    if after[place] in IS_PRESSED and not (after[place] == "in" and after[place + 1] in AFTER_IN):
        return at, at + 2 + place
    return at, at


def _put_down(words: Sequence[str], at: int) -> tuple[int, int]:
    """ "my thumb goes down", "thumb down", "with a finger on it"."""
    after = words[at + 1 : at + 4]
    for ahead, word in enumerate(after):
        if word in DOWN and (word == "down" or after[ahead + 1 : ahead + 2] == ["it"]):
            return at, at + 2 + ahead
    return at, at
