"""Numbers as people write them: "12,8", "1,000", "1 1/2", "ten and a half", "three forty", "a hundred and fifty"."""

from __future__ import annotations

import re
from functools import cache, lru_cache
from typing import Any

from grammar.files import TABLES, toml

SIGN = r"(?:(?<![\w.,)\]'\"%°])[-+])?"
HALF_A_DOZEN = r"half (?:a )?dozen\b"
READ_OFF = "(?:ten|eleven|thirteen|(?:four|fif|six|seven|eigh|nine)teen)"
TOLD_APART = (  # "one-ten amp hour" is 110; "two-twelve volt", "six-ten hours" are two numbers
    "(?! ?-?(?:v|volts?|hours?|hrs?|min(?:ute)?s?|sec(?:ond)?s?|days?|weeks?|months?|years?|feet|foot|ft|m"
    "|met(?:re|er)s?|inch(?:es)?|cells?|pounds?|kilos?|degrees?|below|per ?cent|o'?clock|am|pm|in the)\\b)"
)
HUNDREDS = (  # behind these a teen is told of hundreds; "eight-ten amps" is a range
    r"(?:(?<=\bone-)|(?<=\btwo-)|(?<=\bthree-)|(?<=\ba one )|(?<=\ba two )|(?<=\ba three ))"
)
FALLEN = (  # volts as they are said of a fall: "down to nine-eight"
    r"(?:(?<=\bto )|(?<=\bat )|(?<=\breads )|(?<=\bsays )|(?<=\bshows ))(?:seven|eight|nine)"
    r"(?:-|(?= [a-z]+(?:[,.;?!]|$| (?:under|when|with|while))) )"
)
NOT_COUNTED = r"(?![ -](?:amp|a\b|ah|cca|cold|hour|hr|min|sec|day|week|month|year|feet|ft|met|watt|time|mm|o'?clock))"
SINGLY = "(?: of an?)? ?(?:amp|ampere|volt|milli|a\\b|v\\b)"  # what follows "point four", which begins a number only so
NO_SPOT = "".join(f"(?<!{word} )" for word in ("that", "this", "which", "the", "some", "one", "a", "no", "to", "my"))
THINGS = r"(?:(?<=\ba )|(?<=\bthe )|(?<=\bmy )|(?<=\bthat )|(?<=\bone ))"
SUCH = r" ?(?:amp|ampere|volt)\b(?! ?-?hours?)"  # of one thing: "a point two amp alarm", but "at that point two amps"
AND = r"(?:and|an'?|n|&)"  # "a hundred an' thirty"
COUNTED = (
    r"(?:(?<=\btwo )|(?<=\bthree )|(?<=\bfour )|(?<=\bpair of )|(?<=\bboth )|(?<=\bnew )|(?<=\bold )|(?<=\b[2-8] ))"
)
SEVERAL = r"(?:\w+ )?(?:solar|pv|panels?|modules?|batter(?:y|ies)|\w{4,}rs\b|motors|lamps|lights)"
IN_SPACES = (  # "1 800 W"; but "2 400 W panels" are two
    rf"(?<![0-9.,] )[1-9] [0-9]{{3}}(?= ?-?(?:w|watts?|wh|watt[ -]?hours?)\b(?! ?{SEVERAL}))"
)
OF_KIND = (
    "(?:12[ -]?v(?:olt)?|twelve[ -]volt|agm|gel|wet|flooded|lead|acid|sealed|lithium|lfp|lifepo4|leisure|house|marine"
    "|deep|cycle|new|old)"
)
BATTERIES = "(?:batteries|batterys|batterries|battries|batteris|batts|accus|agms|gels|wets|leads|lithiums|ones|units)"
MEASURED = "-| ?(?:amp|ah|watt|mm|inch|in|foot|feet|metre|meter|awg|kilo|pound|minute|second|hour|day)"
PARTS = {
    "eighth": 8,
    "sixteenth": 16,
    "quarter": 4,
    "third": 3,
    "tenth": 10,
    "fifth": 5,
    "twentieth": 20,
    "hundredth": 100,
}
FRACTION = r"(?:1/2|[12]/3|[13]/4|[1357]/8|[1-9][0-9]?/(?:16|32|64)|[1-9]/10|[1-4]/5)(?![/0-9-])"


@cache
def _table() -> dict[str, Any]:
    return toml(TABLES / "numbers.toml")


@cache
def words() -> dict[str, float]:
    """Every single number word with its value."""
    table = _table()
    return {word: value for part in ("ones", "teens", "tens", "zero", "scales") for word, value in table[part].items()}


def _any(*tables: str) -> str:
    known = _table()
    spellings = sorted((word for table in tables for word in known[table]), key=lambda word: (-len(word), word))
    return "(?:" + "|".join(re.escape(word).replace(r"\ ", " ") for word in spellings) + ")"


@cache
def figures() -> str:
    """The pattern of a number in figures. It fits wherever a digit, or a point and a digit, stands."""
    tail = rf"(?: ?{_any('signs')}|(?: |-| and ){FRACTION}| and {_any('shares')}|k(?![a-z]))?"
    grouped = r"[1-9][0-9]{0,2}(?:,[0-9]{3})+(?![0-9])|0,[0-9]{3}(?![0-9])|[0-9]{1,3} [0]{3}(?![0-9])"
    grouped += rf"|[1-9][0-9]{{0,2}}'[0-9]{{3}}(?![0-9])|{IN_SPACES}"
    split = "[0-9]k[0-9]{1,2}(?![0-9a-z])"  # "2k4"
    decimal = r"(?:[0-9]+(?: point [0-9]+|\.[0-9]+|,[0-9]{1,2}(?![0-9])(?!,[0-9]))|\.[0-9]+)(?:k(?![a-z]))?"
    return rf"{SIGN}(?:{FRACTION}|(?:{grouped}){tail}|{split}|{decimal}|[0-9]+{tail})"  # "12.6 1/2 full" is 12.6


@cache
def spelt() -> str:
    """The pattern of a number in words, the longest that is one number."""
    ones, tens = _any("ones"), _any("tens")
    digit = f"(?:{_any('ones', 'zero')}|oh)"
    small = f"(?:{tens}(?:[ -]{ones}s?)?|{_any('teens', 'ones', 'zero')})"
    hundred = rf"hundred(?![ -]{AND}[ -]{small}s\b)(?:(?:[ -]{AND})?[ -]{small})?"  # "a hundred-and-eighty"
    hundreds = f"(?:a|{ones})[ -]{hundred}"
    thousand = f"thousand(?:,?(?: and)? {hundreds}| and {small}| (?:{tens}(?:[ -]{ones})?|{_any('teens')}))?"
    tails = (
        f"{_not_a_hundred_each(small)}{hundred}",
        thousand,
        "dozen",
        f"(?:point|comma)[ -](?:{tens}(?:[ -]{ones})?|{digit}(?:[ -]{digit})*)",  # "nine-point-nine"
        rf"and[ -]{_any('shares')}(?: (?:hundred|thousand))?\b",
        f"(?:{'|'.join(PARTS)})s?",
        f"oh[ -]{ones}",  # "one oh five"
        rf"(?<!ty ){_not_of_each(tens, ones)}{tens}(?:[ -]{ones})?",  # "three eighths", "three forty"
        rf"{HUNDREDS}{_any('teens')}{TOLD_APART}",  # "one-ten"
        r"(?<=\bone )(?:ten|fifteen)(?= ?-?(?:ah|amp[ -]?hours?)\b)",
        rf"(?:(?<=\bone )|(?<=\btwo )|(?<=\bthree )){_any('teens')}(?= amps\b)",  # "two ten amps", no "two ten-amp"
        f"(?:(?<=ten[ -])|(?<=eleven[ -])|(?<=twelve[ -])|(?<=een[ -])){ones}",  # "twelve six" on a meter
        rf"(?:(?<=eleven[ -])|(?<=twelve[ -])|(?<=thirteen[ -])){READ_OFF}(?!{MEASURED})",  # "twelve fifteen"
    )
    alone = f"{_point()}|one (?:oh|zero|one|two)(?: {digit}){{2}}|{_of_each()}"
    begun = f"(?:a )?(?:{hundred}|{thousand}|dozen)|{small}(?:[ -](?:{'|'.join(tails)}))?"
    couple = "(?:a )?couple (?:of )?(?:hundred|thousand|dozen)"
    return rf"(?:{couple}|{FALLEN}{ones}{NOT_COUNTED}|(?:(?:minus|negative) )?(?:{alone}|{begun}))\b"


def _not_of_each(tens: str, ones: str) -> str:
    """Keeps a count before what is told of each: "one twenty-four volt motor", "two ninety-amp-hour gels", "two
    seventy-pounders"."""
    return (
        r"(?!(?:twenty[ -]four|thirty[ -]six|forty[ -]eight)[ -]?v(?:olts?)?\b"
        rf"|{tens}(?:[ -]{ones})?[ -]pounders?\b"
        rf"|(?<=each one ){tens}(?:[ -]{ones})?[ -](?:kilos?|kg)\b"
        rf"|{tens}(?:[ -]{ones})?[ -](?:ah|amp[ -]?hours?)(?: each(?: of the)?)?"
        rf"(?:[ -]{OF_KIND}){{0,3}}[ -]{BATTERIES}\b)"
    )


def _not_a_hundred_each(small: str) -> str:
    """Keeps a count before hundreds that a dash joins to their unit: "two hundred-amp-hour AGMs" are two; but "one
    hundred-amp-hour" and "two-hundred-amp-hour" are one number."""
    return (
        rf"(?:(?<=\bone )|(?<=-)|(?!hundred(?:[ -]{AND}[ -]{small})?-(?:ah|amp[ -]?hours?)"
        rf"(?:[ -]{OF_KIND}){{0,3}}[ -]{BATTERIES}\b))"
    )


def _of_each() -> str:
    """The pattern of hundreds that are told of each of several: the 110 of "two hundred-and-tens", "two hundreds"."""
    small = f"(?:{_any('tens')}(?:[ -]{_any('ones')})?|{_any('teens', 'ones')})"
    return rf"hundred[ -]{AND}[ -]{small}s|{COUNTED}hundreds(?! of)"


def _point() -> str:
    """The pattern of a number that begins with its point: "point oh four", "a point two amp alarm"."""
    digit = f"(?:{_any('ones', 'zero')}|oh)"
    return f"(?:{NO_SPOT}point {digit}(?: {digit})*(?={SINGLY})|{THINGS}point {digit}(?: {digit})*(?={SUCH}))"


def start() -> str:
    """What a number begins with; where this fits, `pattern` fits."""
    return (
        rf"(?:{SIGN}\.?[0-9]|{HALF_A_DOZEN}|(?:(?:minus|negative) )?{_any('ones', 'teens', 'tens', 'zero', 'scales')}\b"
        r"|(?:minus|negative) ?\.?[0-9]|(?:a )?(?:couple (?:of )?)?(?:hundred|thousand|dozen)\b"
        rf"|(?:(?:minus|negative) )?{_point()}|{_of_each()})"
    )


def pattern() -> str:
    """The pattern of any number."""
    return rf"(?:(?:(?:minus|negative) ?(?=[.0-9]))?(?:{figures()})|{_any('signs')}|{HALF_A_DOZEN}|{spelt()})"


@lru_cache(maxsize=4096)
def value(text: str) -> float:
    """The value of a number that `pattern` found, in small letters.

    >>> [value(text) for text in ("12,8", "1,000", "1 1/2", "10½", "minus 5", ".5", "1.5k")]
    [12.8, 1000.0, 1.5, 10.5, -5.0, 0.5, 1500.0]
    >>> [value(said) for said in ("ten and a half", "three forty", "twelve six", "three eighths", "hundred and five")]
    [10.5, 340.0, 12.6, 0.375, 105.0]
    >>> [value(said) for said in ("two thousand four hundred", "one-ten", "two oh five", "point oh four")]
    [2400.0, 110.0, 205.0, 0.04]
    """
    if text.startswith("half"):  # a dozen
        return 6.0
    for sign in ("minus", "negative", "-", "+"):
        if text.startswith(sign):
            return value(text[len(sign) :].strip()) * (1 if sign == "+" else -1)
    return float(_figures(text) if text[0] in "0123456789." else _words(text))


def _figures(text: str) -> float:
    table = _table()
    for sign, share in table["signs"].items():
        if text.endswith(sign):
            return _figures(text[:-1].strip()) + float(share)
    whole, joined, share = text.partition(" and ")
    if joined:
        return _figures(whole) + (_figures(share) if share[0].isdigit() else float(table["shares"][share]))
    if re.fullmatch("[0-9]k[0-9]+", text):  # "2k4"
        return _figures(text.replace("k", ".")) * 1000
    if text.endswith("k"):
        return _figures(text[:-1]) * 1000
    if "/" in text:
        whole, top, bottom = re.fullmatch(r"(?:(.+)[ -])?([0-9]+)/([0-9]+)", text).groups()  # type: ignore[union-attr]
        return (_figures(whole) if whole else 0.0) + float(top) / float(bottom)
    if re.fullmatch(r"[1-9][0-9]{0,2}(?:[,' ][0-9]{3})+", text):
        return float(re.sub("[,' ]", "", text))
    plain = re.sub("[' ]", "", text.replace(" point ", "."))
    return float(plain.replace(",", "" if plain.count(",") > 1 else "."))  # "0,000,000" has no decimals


def _words(text: str) -> float:
    table = _table()
    if text in table["signs"]:
        return float(table["signs"][text])
    known = words()
    if "couple" in text:
        return 2 * known[text.rpartition(" ")[2]]
    if re.fullmatch(rf"(?:seven|eight|nine)[ -]{_any('ones')}", text):
        volts, tenths = re.split("[ -]", text)
        return known[volts] + known[tenths] / 10  # "nine-eight" of a fall
    whole, joined, share = (text if " and " in text else text.replace("-", " ")).partition(" and ")
    scale = next((word for word in ("hundred", "thousand") if share.endswith(f" {word}")), "")
    if joined and (part := share.removesuffix(scale).strip()) in table["shares"]:
        return (_words(whole) + float(table["shares"][part])) * known.get(scale, 1)
    top, _, bottom = text.replace("-", " ").partition(" ")
    if bottom.rstrip("s") in PARTS:
        return known[top] / PARTS[bottom.rstrip("s")]
    whole, point, tail = re.sub("[ -]?(?:point|comma)[ -]", " point ", text).partition(" point ")
    if point:
        return float(f"{_words(whole.strip()) if whole else 0:.0f}.{_decimals(tail)}")
    if re.fullmatch(rf"{_any('teens')}[ -]{_any('ones')}", text):
        teen, one = re.split("[ -]", text)
        return known[teen] + known[one] / 10  # "twelve six" on a meter
    if re.fullmatch(r"one (?:oh|zero|one|two) \w+ \w+", text):
        return float(_decimals(text))  # "one two six five" on a hydrometer
    thousands, scaled, rest = text.partition("thousand")
    if scaled:
        return (_total(thousands) or 1) * known["thousand"] + _total(rest)
    return _total(text)


def _decimals(text: str) -> str:
    """The figures of words that are said one after the other: "oh four", "sixty-five"."""
    said = re.split("[ -]", text)
    known = words()
    if known.get(said[0], 0) >= 10:
        return f"{_total(text):.0f}"
    return "".join(f"{known.get(word, 0):.0f}" for word in said)


def _total(text: str) -> float:
    """The sum of words that make one number below a thousand: "three forty", "a hundred and fifty"."""
    table, known = _table(), words()
    total = 0.0
    for word in re.split("[ -]", text.removesuffix("s") if text not in known else text):
        if word in table["scales"]:
            total = (total or 1) * known[word]
        elif word in known:
            joins = not total or total % 100 == 0 or (total % 10 == 0 and total % 100 >= 20 and known[word] < 10)
            total = total + known[word] if joins else total * 100 + known[word]
    return total
