"""What a term of the trade means, from the table of meanings; what sets two apart, from the table of that."""

from __future__ import annotations

import re

from grammar.text.patterns import regex
from service import reference
from service.case import Case
from service.reference import Row
from service.reply import Answer
from service.topic import Topic

TOPIC = Topic("meaning", "What a term means")

UNKNOWN = "We can't say yet: please tell us the term as it stands on the label or in the manual, and where you met it."
LONGEST = 30  # words of a headline
SHOWN = 3  # steps of the working that a reader sees
DIFFERENCE = regex(r"\b(?:differ\w*|distinguish\w*|versus|vs|diff)\b", re.IGNORECASE)
WHICH_COUNTS = regex(
    r"\bwhich\b[^.?!]{0,30}\b(?:go by|look at|look for|counts?|matters?|use|trust|rely on|compare|goes|heed|take)\b",
    re.IGNORECASE,
)
WHY = regex(r"\bwhy\b", re.IGNORECASE)
EN_ALONE = regex(r"(?<!\d )(?<!\d)(?<!\bA )\bEN\b")  # the letters by themselves, not "720 A EN"
CA_ALONE = regex(r"(?<!\d )(?<!\d)\bM?CA\b|\b(?:[Ww]hat'?s|is|does|are)\s+(?:an? |the )?ca\b(?! ?\d)")  # no "ca. 200 A"
GROUP_LETTER = regex(r"\b(?P<group>2[47]|31)-?(?P<letter>[MSTPA])\b", re.IGNORECASE)
LETTERS = {
    "M": "as a rule marine ones with studs",
    "T": "as a rule studs",
    "S": "as a rule studs",
    "P": "as a rule round posts",
    "A": "as a rule round posts",
}
PRONOUN = regex(r"^(?:It(?= )|Its(?= ))")


@TOPIC.answered_by
def answer(case: Case) -> Answer:
    """The meaning of each term asked about; of kinds that are merely named beside another term, nothing."""
    if found := apart(case):
        return found
    terms = asked(case)
    if (group := GROUP_LETTER.search(case.text)) and [term["id"].value for term in terms] in ([], ["group-size"]):
        return of_a_letter(case, group["group"], group["letter"].upper())
    if not terms:
        return TOPIC.says("needs-facts", UNKNOWN)
    first = [meaning(terms[0])]
    for term in terms[1:]:
        if len(" ".join((*first, meaning(term))).split()) <= LONGEST:
            first.append(meaning(term))
    if len(first) < len(terms) and (briefly := in_brief(terms)):
        first = briefly
    rest = [term for term in terms if meaning(term) not in first]
    if len(rest) < SHOWN:  # else the meanings of the others come before what there is to say of those in the headline
        for term in (item for item in terms if item not in rest):
            besides = more(term) if len(first) == 1 else named(term)
            case.step(f"{besides or meaning(term)}.", term["id"].cite)
    for term in rest:
        besides = f" {more(term)}." if "more" in term else ""
        case.step(f"{meaning(term)}.{besides}", term["id"].cite)
    return TOPIC.says("information", f"{'; '.join((*first[:1], *map(inside, first[1:])))}.")


def of_a_letter(case: Case, group: str, letter: str) -> Answer:
    """What a letter behind a case size tells: "31M"."""
    case.step("The size of the case is that of the group, whatever letter stands behind it", "bci-groups")
    tells = LETTERS.get(letter, "of which the maker's sheet tells more")
    case.source("group-letters")
    head = f"{group}{letter} is a battery of group {group}, the size of its case; the {letter} is for its terminals, "
    return TOPIC.says("information", f"{head}{tells}.")


def inside(text: str) -> str:
    """A sentence as it goes on behind a semicolon; an abbreviation keeps its capital."""
    return text if text[1:2].isupper() or text[1:2].isdigit() else f"{text[:1].lower()}{text[1:]}"


def apart(case: Case) -> Answer | None:
    """What sets two terms apart, where that or their being the same is asked of two in the table; None else."""
    why = WHY.search(case.text) is not None
    counts = WHICH_COUNTS.search(case.text) is not None
    if not (counts or why or DIFFERENCE.search(case.text) or case.says("detail:same_as")):
        return None
    terms = {row["id"].value: row for row in reference.rows("meanings") if case.says(f"term:{row['id'].value}")}
    pairs = ((row, [str(row[side].value) for side in ("one", "other")]) for row in reference.rows("apart"))
    found = next(((row, pair) for row, pair in pairs if set(pair) <= terms.keys()), None)
    if found is None or (why and "why" not in found[0]):
        return None
    row, pair = found
    case.source(row["told"].cite)
    for name in pair:
        case.step(f"{meaning(terms[name])}.", terms[name]["id"].cite)
    if why:
        return TOPIC.says("information", f"{row['why'].value}.")
    goes_by = f"; {row['counts'].value}" if counts and "counts" in row else ""
    return TOPIC.says("information", f"{row['told'].value}{goes_by}.")


def asked(case: Case) -> list[Row]:
    """The rows of the terms in the question: the strong ones, else the weak ones."""
    named = {str(row["id"].value) for row in reference.rows("meanings") if case.says(f"term:{row['id'].value}")}
    if EN_ALONE.search(case.text):
        named.add("en-amps")
    if CA_ALONE.search(case.text):
        named.add("ca")
    rows = [row for row in reference.rows("meanings") if row["id"].value in named]
    return [row for row in rows if "weak" not in row] or rows


def in_brief(terms: list[Row]) -> list[str]:
    """All terms in a few words each, where the table has those and one sentence holds them; else nothing."""
    if not all("brief" in term for term in terms):
        return []
    names = [str(term["name"].value) for term in terms]
    names = names[:1] + [inside(name) for name in names[1:]]
    told = [f"{name} is {term['brief'].value}" for name, term in zip(names, terms, strict=True)]
    return told if len(" ".join(told).split()) <= LONGEST else []


def meaning(term: Row) -> str:
    """One term in words: "Inrush is the short jump of current ..."."""
    return f"{term['name'].value} is {term['short'].value}"


def more(term: Row) -> str:
    """What there is to say of a term besides, as it follows its meaning; "" for nothing."""
    return str(term["more"].value).rstrip(".") if "more" in term else ""


def named(term: Row) -> str:
    """What there is to say of a term besides, with its name: it stands behind the meaning of another one."""
    name = str(term["name"].value).partition(" (")[0]
    return PRONOUN.sub(lambda found: name if found[0] == "It" else f"{name}: its", more(term))
