"""What a number without a unit is: a count, a gravity, a case size, a stud, a year, a code, or just a number."""

from __future__ import annotations

import re
from dataclasses import replace
from functools import lru_cache

from grammar.reading import Part
from grammar.text.neighbours import among, following, leading, listed, quantity

HYDROMETER = re.compile(
    r"hydrometer|\bfloat\b|\bfloaty|electrolyte|(?<!lead )\bacid\b|\bcells?\b|\ball six\b|\bsg\b|gravit|\bs\.g\b"
    r"|\bcorrected\b|\belements\b|squirter|\bbobbin|\bbaster\b|\bsyringe|\bsucker\b|\bpipette|areometer|\bdensit"
    r"|\bglass (?:thing|tube|bulb|gadget)"
    r"|\b(?:each|every) (?:one of the )?(?:hole|pot|compartment)s?\b|\ball (?:the |six )?(?:holes|pots|compartments)\b"
)
GRAVITY = re.compile(
    r"1\.[0-3][0-9]{2}|one point (?:zero|one|two|three) [a-z]+ [a-z]+|1[0-3](?!00|50)[0-9]{2}(?<!13[2-9][0-9])"
)
SO_LARGE = re.compile(r" (?:of|at) \d{2,4} ?-?(?:ah|amp[- ]?hours?|cca)\b")  # "two of 100 Ah"
BOUNDS = re.compile(r" ?(?:(?<![a-z])-|\b(?:to|or|and)\b) ?")  # of a range; "twelve-forty" is one number
VOLTS_SPOKEN = re.compile(r"(?:ten|eleven|twelve|thirteen) point .+")
GRAVITY_IF_SAID = re.compile(r"1[.,][0-3][0-9]{1,2}|1[0-3][0-9]{2}|(?:ten|eleven|twelve|thirteen)[ -][a-z -]+")
CRANKING = re.compile(r"\b[cm]?ca\b|cranking")  # "only MCA on the label, 1125"
YEAR = re.compile(r"(?!2000)(?:19[5-9]|20[0-4])[0-9]")
FRACTION = re.compile(r"[1-9][0-9]?/[0-9]{1,2}|(?:one|three|five|seven)[ -](?:quarter|eighth|sixteenth)s?")
TOPS = {"one": 1, "three": 3, "five": 5, "seven": 7}
BOTTOMS = {"quarter": 4, "eighth": 8, "sixteenth": 16}
CASES = frozenset({"24", "27", "31", "34", "65"})  # sizes that go by their number alone
SYSTEM = re.compile(
    r"\b(?:6|12|24) ?-?v|\b(?:twelves|sixes|12s|6s)\b|\b(?:at|the|a|our|my) 12\b(?! ?[a-z]?[ah]\b)"
    r"|\bconverter|\bbooster|\bdc-?dc\b|\bstep-?up|\bdropper"
)
MADE = re.compile(r"\b(?:mak(?:es?|ing)(?: up)?|made(?: up)? into|turned into|amps into) (?:a|the|your|our) ?$")
IN_A_ROW = re.compile(r"\bin series\b|\bplus to minus\b|\bminus to plus\b|\bnose to tail\b|\bend to end\b")
FOR_THE = re.compile(r"\bfor (?:a|the|my|our) ?$")
RUN_OR_CHARGED = re.compile(r"\bamps?\b|[0-9] ?a\b|\bcharg|\bhow long\b", re.IGNORECASE)
CASES_MEANT = re.compile(
    r"\b(?:group|case|tray|fits?|shorter|longer|taller|wider|narrower|higher|lower|box|wide|(?<!how )long)\b"
)
STEPS = re.compile(
    r" ?(?:to|/|-|>) ?(?:12|24|36)(?![0-9])|(?: bow| stern| house| thruster)? (?:pair|set)\b"
    r"|(?: bow| stern| house| thruster| agm| gel| lead| wet| flooded| lithium| lfp| lifepo4)* bank\b"
)
POURED = re.compile(r"[0-9] ?(?:a|amps?|amperes?) (?:in|on)?to (?:the|my|our)$", re.IGNORECASE)
NAMES = (["tray"], ["case"], ["group"], ["group-size"])  # "AGM, 31 case"
CELLS = frozenset({"18650", "21700"})  # sizes of single lithium-ion cells, which tell the kind of a pack
ONLY_CASES = frozenset({"27", "31"})  # nobody has so many: "31 AGM" is a case
CASE_BEFORE = re.compile(r"(?<!in )\bcase(?: size)?$", re.IGNORECASE)  # "case 27 out, what fits"
REFERENCE = re.compile(  # "order no. 1182"
    r"(?:#|\b(?:no|nr|nbr|number|order|invoice|ticket|ref|reference|account|acct|job|case|part|serial|berth|page)\b)"
    r"[ .:#]*$"
)
REFERENCES = 3  # digits: shorter ones may be a gauge or a case size
NAMED = re.compile(r"\b(?:an?|agm|gel|flooded|frozen|size|that|my|the|purpose|[0-9] ?x)$")
LONGEST = 5  # digits of a number that is no order or telephone number
MOST = 48  # batteries


def settled(plain: str, found: list[Part], at: int, hydrometer: bool) -> Part:
    """A plain number as what it is. `hydrometer`: the text speaks of one."""
    part = found[at]
    start, end = part.span
    said = plain[start:end]
    after = found[at + 1] if at + 1 < len(found) else None
    if said.isdigit() and len(said) > REFERENCES and REFERENCE.search(plain[max(start - 20, 0) : start]):
        return Part("noise", "", part.span)
    amps = said.isdigit() and not hydrometer and _speaks_of_cranking(plain)
    if not amps and all(_is_gravity(one, hydrometer) for one in BOUNDS.split(said)):
        return _gravities(part)
    if _is_code(plain, said, after, end):
        return Part("noise", "", part.span)
    words = following(plain, end)[:1]
    if words == ["deep"] and following(plain, end)[1:2] != ["cycle"]:  # "31 deep and 24 wide"
        words = []
    if said in CASES and CASE_BEFORE.search(leading(plain, start, 16)) and words[:1] != ["of"]:
        return quantity(part, said, "", "group_size", "GROUP")
    if (said in ONLY_CASES and words and words[0] in listed("case_kinds")) or (said in CASES and words in NAMES):
        return quantity(part, said, "", "group_size", "GROUP")
    if _counts(plain, part, after):
        return replace(part, dim="COUNT", quantities=tuple([replace(one, kind="count") for one in part.quantities]))
    if said in CASES and _is_case(plain, part):
        return quantity(part, said, "", "group_size", "GROUP")
    if FRACTION.fullmatch(said) and _near_a_hole(plain, part):
        return quantity(part, _fraction(said), "", "stud_size", "STUD")
    return _named_or_plain(part, said)


def _named_or_plain(part: Part, said: str) -> Part:
    """Batteries by their amp-hours, as in "two hundreds" and "two hundred-and-tens"; a word that is no number here."""
    if said.startswith("hundred") and said.endswith("s"):
        return quantity(part, part.quantities[0].value, "ampere_hour", "", "AH")
    return Part("word", "", part.span) if said == "one" or said in CELLS else part


def nickname(plain: str, found: list[Part], at: int) -> Part:
    """ "31s" are batteries of that case, "two 12s" are those volts, "two 100s" Ah, "6s" alone is a time."""
    part, value = found[at], found[at].quantities[0].value
    before = found[at - 1].dim if at else ""
    if listed("bursts").intersection(following(plain, part.span[1])[:1]):  # "6 x 12s bursts"
        return quantity(part, value, "second", "", "TIME")
    if f"{value:g}" in CASES:
        return quantity(part, f"{value:g}", "", "group_size", "GROUP")
    joined = following(plain, part.span[1])[:2] in (["in", "series"], ["in", "parallel"])
    if float(value) >= 100 and (joined or before in ("COUNT", "NUM", "VOLT")):
        return quantity(part, value, "ampere_hour", "", "AH")
    if before in ("COUNT", "NUM") or joined or "'" in plain[slice(*part.span)]:
        return quantity(part, value, "volt", "", "VOLT")
    return quantity(part, value, "second", "", "TIME")


def unquoted(plain: str, found: list[Part]) -> list[Part]:
    """The parts, with a quote that closes an opened one apart: "CCA min 650" in quotes is not 650 inches."""
    parts: list[Part] = []
    for part in found:
        start, end = part.span
        if part.dim in ("INCH", "LENGTH") and plain[end - 1] in "\"'" and _closes(plain, start, plain[end - 1]):
            numbers = tuple([replace(one, unit="", kind="", span=(start, end - 1)) for one in part.quantities])
            parts.append(Part("quantity", "", (start, end - 1), "NUM", numbers))
            parts.append(Part("mark", "", (end - 1, end)))
        else:
            parts.append(part)
    return parts


def _closes(plain: str, start: int, quote: str) -> bool:
    """Whether the last such quote before a place opened something: it stands before a letter and after none."""
    opened = plain.rfind(quote, 0, start)
    return opened >= 0 and plain[opened + 1] != " " and not (opened and plain[opened - 1].isalnum())


def speaks_of_hydrometer(plain: str) -> bool:
    """Whether a whole number like 1250 may be a specific gravity."""
    return HYDROMETER.search(plain) is not None


@lru_cache(maxsize=4)  # asked for every number of a text
def _speaks_of_cranking(plain: str) -> bool:
    return CRANKING.search(plain) is not None


def _is_gravity(said: str, hydrometer: bool) -> bool:
    if hydrometer and VOLTS_SPOKEN.fullmatch(said):
        return False  # "twelve point four two" is no gravity: that is said "twelve forty two"
    return bool(GRAVITY.fullmatch(said)) or (hydrometer and bool(GRAVITY_IF_SAID.fullmatch(said)))


def _gravities(part: Part) -> Part:
    """1265 and "twelve sixty five" (12.65) as 1.265."""
    values = [float(one.value) for one in part.quantities]
    scaled = [value / (1000 if value > 100 else 10 if value > 10 else 1) for value in values]
    found = zip(part.quantities, scaled, strict=True)
    gravities = [replace(one, value=value, kind="specific_gravity") for one, value in found]
    return replace(part, dim="GRAVITY", quantities=tuple(gravities))


def _is_code(plain: str, said: str, after: Part | None, end: int) -> bool:
    """Glued to letters that are no unit, a year, or too long: "24M7", 2019, 100482."""
    if after is not None and after.kind == "word" and after.span[0] == end:
        return not plain.startswith("ish", end)
    return bool(YEAR.fullmatch(said)) or (len(said) > LONGEST and said.isdigit())


def _counts(plain: str, part: Part, after: Part | None) -> bool:
    """Whether a small whole number counts what follows: "two 12 V", "4 batteries", "2 in series"."""
    if "." in plain[slice(*part.span)] or any(
        float(one.value) % 1 or not 1 <= float(one.value) <= MOST for one in part.quantities
    ):
        return False
    if after is not None and after.kind == "quantity" and after.dim not in ("NUM", "COUNT", "GRAVITY"):
        return not plain[part.span[1] : after.span[0]].strip(" -")
    if plain.startswith("24", part.span[0]) and STEPS.match(plain, part.span[1]):
        return False
    if SO_LARGE.match(plain, part.span[1]) and not plain.startswith("one", part.span[0]):
        return True
    words = following(plain, part.span[1])
    so = " ".join(words[:2]) in listed("counted_so") and not plain.startswith("one", part.span[0])
    return so or (bool(words) and words[0] in listed("counted"))


def _is_case(plain: str, part: Part) -> bool:
    """Whether a number like 31 is a case size: "is a 31 heavy", "AGM 31"."""
    after = following(plain, part.span[1])
    if plain.startswith("24", part.span[0]) and (
        SYSTEM.search(plain) or MADE.search(leading(plain, part.span[0], 24))
    ):  # "24 V forward, holds that the 24 alive?", "two twelves to make the 24"
        return False
    if plain.startswith("24", part.span[0]) and STEPS.match(
        plain, part.span[1]
    ):  # "a 24 to 12 converter", "my 24 pair"
        return False
    before = leading(plain, part.span[0], 24)
    if plain.startswith("24", part.span[0]) and FOR_THE.search(before) and IN_A_ROW.search(plain) and not after:
        return False  # "joined plus to minus for the 24?"
    if plain.startswith("65", part.span[0]) and _is_run(plain, after):
        return False
    if plain.startswith("24", part.span[0]) and POURED.search(leading(plain, part.span[0], 24)):  # "15 A to the 24"
        return False
    return bool(NAMED.search(leading(plain, part.span[0], 12))) and not among(after, listed("no_case"))


def _is_run(plain: str, after: list[str]) -> bool:
    """Whether a battery that is run or charged, not fitted, goes by it: "what charger for a 65 agm"."""
    named = bool(after) and after[0] in listed("case_kinds")
    return named and RUN_OR_CHARGED.search(plain) is not None and CASES_MEANT.search(plain) is None


def _near_a_hole(plain: str, part: Part) -> bool:
    before = re.findall("[a-z]+", leading(plain, part.span[0], 30))[-4:]
    return not listed("holes").isdisjoint([*before, *following(plain, part.span[1])[:2]])


def as_inches(said: str) -> str | None:
    """The fraction of an inch in figures, where it is one: "three-eighths" and "3/8" as "3/8"; else None."""
    return _fraction(said) if FRACTION.fullmatch(said) else None


def _fraction(said: str) -> str:
    """ "three eighths" as "3/8"."""
    top, _, bottom = said.replace("-", " ").partition(" ")
    return f"{TOPS[top]}/{BOTTOMS[bottom.rstrip('s')]}" if bottom else said
