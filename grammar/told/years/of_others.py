"""Years that are no battery's age: the charger's, and the "a year" in which a boat is used for so many days."""

from __future__ import annotations

import re

from grammar.text.patterns import regex

THING = (
    r"(?:charger|maintainer|alternator|regulator|inverter|converter|isolator|splitter|relay|solenoid|switch|cables?"
    r"|wiring|panels?|fuse|thruster|windlass)"
)
ABOUT = r"(?: (?:about|over|nearly|almost|some|more than|at least|probably|maybe|only|just|already|now))*"
ABOARD = (  # what else is old on a boat, or beside it
    r"(?:sails?|mainsail|jib|genoa|rigging|mast|boom|anchor|chain|rudder|keel|hull|deck|gelcoat|upholstery|cushions"
    r"|sprayhood|hood|canopy|dinghy|tender|outboard|stove|cooker|heater|toilet|plotter|radar|radio|ropes?|fenders?"
    r"|windows?|paint|house|car|dog|cat|marina|harbour|lock)"
)
IS = regex(rf"\b(?:{THING}|{ABOARD})(?:'?s| is| are| was| must be| would be| will be|,)?{ABOUT} $", re.IGNORECASE)
OWNED = regex(  # "lovely thruster, had it"; of a thruster's battery it is the battery
    rf"\b(?:{THING}|boat|yacht|cruiser|barge|motor|engine)\b(?!['’]?s? batter)[^.?!;]{{0,16}}?,? "
    rf"(?:(?:i|we)(?:['’]?ve| have)? )?(?:had|owned) (?:it|her|him|one){ABOUT} $",
    re.IGNORECASE,
)
BATTERIES = regex(r"\b(?:batter|batt|accu|agm|gel|wet|lithium|lead|bank)", re.IGNORECASE)
GOES_ON = r"(?:and|but|so|or|with|while|the|my|our|his|her)\b"  # "three years old and the cable is 2/0"
ITS = regex(
    rf"^[- ]?(?:old|yo)[ -](?:(?!agm|gel|wet|lithium|batt|{GOES_ON})\w+ ){{0,2}}?{THING}\b(?! batter)", re.IGNORECASE
)
OLD = regex(r"^,? ?(?:old|of age|in (?:use|service)|now|aboard)\b", re.IGNORECASE)
RATE = regex(
    r"\b(?:days?|weeks?|weekends?|hours?|nights?|months?|times|once|twice|trips?|outings?|dockings?)"
    r"(?:,? (?:of )?(?:use|usage|sailing|cruising|boating|out|aboard|or so))* $",
    re.IGNORECASE,
)
OF_USE = regex(
    r"^(?: of)? (?:use|usage|sailing|cruising|boating|on the water) (?:a|per|each|every|in a) (?:year|season|summer)\b",
    re.IGNORECASE,
)
USED = regex(
    r"\b(?:use[ds]?|sail|cruise|go out|are out|aboard)(?: (?:it|her|him|them|the boat|on it))?"
    r"(?: (?:about|only|just|maybe|perhaps|for|some|at most))* $",
    re.IGNORECASE,
)
FADED = regex(  # how long a decline took: "it got weaker over two seasons"
    r"\b(?:weak\w*|slow\w*|worse|poorer|tired|feebler)\b[^.?!;,]{0,12}"
    r"\b(?:over|in|within|for|during|these|across)(?: the)?(?: (?:last|past|about|some))* $",
    re.IGNORECASE,
)
RENEWED = regex(  # "such batteries must be thrown out at five years", "an AGM is finished after six"
    r"\b(?:(?:must|should|has to|have to|had to|needs? to|ought to|are to|is to|always|to) be"
    r" (?:thrown(?: out| away)?|replaced|changed|scrapped|binned|renewed|swapped|chucked(?: out)?|ditched|retired)"
    r"|(?:batteries|ones|agms|gels|they|an agm|a gel|every battery|any battery) (?:are|is) (?:always )?"
    r"(?:finished|done|scrap|dead|shot|spent|worn out|due))"
    r"(?: \w+){0,2}? (?:at|after|every)(?: (?:about|some|around|the latest))* $",
    re.IGNORECASE,
)
OURS = regex(r"\b(?:mine|ours)\b", re.IGNORECASE)
PART_OF = regex(r"\b(?:best|better|good|greater) part of $", re.IGNORECASE)  # how long something takes: "of a year"
YEARLY = regex(r"^(?: or so)? (?:a|per|each|every|in a) (?:year|season|summer)\b", re.IGNORECASE)


def of_a_thing(ahead: str, after: str) -> bool:
    """Whether years between these words are the age of something else aboard, or those over which it declined.

    >>> of_a_thing("the charger is ", " old"), of_a_thing("a ", " old shore charger"), of_a_thing("my ", " old AGM")
    (True, True, False)
    >>> of_a_thing("lovely boat, had her ", ""), of_a_thing("thruster battery, had it ", "")
    (True, False)
    >>> of_a_thing("it got slower over the last ", ", 12.6 at rest")
    True
    >>> of_a_thing("I say the best part of ", "."), of_a_thing("it is the best part of ", " old")
    (True, False)
    """
    if PART_OF.search(ahead) and not OLD.match(after):
        return True
    sentence = ahead[max(ahead.rfind(mark) for mark in ".?!;\n") + 1 :]
    owned = OWNED.search(sentence) is not None and BATTERIES.search(sentence) is None
    return owned or IS.search(ahead) is not None or ITS.match(after) is not None or FADED.search(ahead) is not None


def of_a_rule(ahead: str, text: str, others: int) -> bool:
    """Whether it is an age at which batteries are said to be renewed, beside the age of theirs (`others`: years told).

    >>> of_a_rule("such batteries must be thrown out at ", "ours is 3 years old", 1), of_a_rule("replaced at ", "", 0)
    (True, False)
    """
    return bool(RENEWED.search(ahead)) and (others > 0 or OURS.search(text) is not None)


def of_a_rate(ahead: str, text: str) -> bool:
    """Whether it is the "a year" of "twenty days a year".

    >>> of_a_rate("twenty days of use ", "a year"), of_a_rate("it is ", "a year")
    (True, False)
    """
    return text.lower().startswith(("a ", "per ", "each ")) and RATE.search(ahead) is not None


def of_use(ahead: str, after: str) -> bool:
    """Whether days are those on which a boat is used in a year, none of a stay.

    >>> of_use("it sees ", " of use a year"), of_use("we sail ", " a year"), of_use("it stands ", " a year")
    (True, True, False)
    """
    return OF_USE.match(after) is not None or (USED.search(ahead) is not None and YEARLY.match(after) is not None)
