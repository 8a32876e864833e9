"""What the words around a quantity tell of it: "12 V system", "24 foot boat", "3 % drop", "1,240 on the hydrometer"."""
from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path

from grammar.files import toml
from grammar.reading import Part, Quantity

GRAVITY = re.compile(r"1[.,][0-3][0-9]{2}")
WHOLE_GRAVITY = re.compile(r"1[0-3][0-9]{2}|1[.,][0-3][0-9]{1,2}|(?:ten|eleven|twelve|thirteen) [a-z -]+")
HYDROMETER = re.compile(r"hydrometer|\bfloats?\b|electrolyte|\bacid\b(?<!lead acid)|\bcells?\b|\ball six\b|\bsg\b|gravit|\bs\.g\b")
FRACTION = re.compile(r"[1-9][0-9]?/[0-9]{1,2}|[a-z]+[ -](?:eighth|sixteenth|quarter)s?")
FRACTIONS = {"three eighths": "3/8", "three-eighths": "3/8", "five sixteenths": "5/16", "five-sixteenths": "5/16", "one quarter": "1/4"}
YEAR = re.compile(r"(?:19[5-9]|20[0-4])[0-9]")
WORD = re.compile(r"[a-z']+(?:-[a-z]+)*")
ROUND = 2000.0  # more often watts or amps than a year


@dataclass(frozen=True, slots=True)
class Surroundings:
    """The words that give quantities of some dimensions a kind."""

    kind: str
    dims: frozenset[str]
    values: frozenset[float]
    after: frozenset[str]
    before: tuple[str, ...]


@cache
def _kinds() -> dict[str, list[Surroundings]]:
    by_dim: dict[str, list[Surroundings]] = {}
    for row in toml(Path(__file__).with_name("kinds.toml"))["kind"]:
        known = Surroundings(
            row["kind"], frozenset(row["dims"]), frozenset(row.get("values", ())), frozenset(row["after"]), tuple(row["before"])
        )
        for dim in row["dims"]:
            by_dim.setdefault(dim, []).append(known)
    return by_dim


@cache
def _words(*keys: str) -> frozenset[str]:
    table = toml(Path(__file__).with_name("kinds.toml"))
    for key in keys:
        table = table[key]
    return frozenset(table)


def settle(text: str, plain: str, found: list[Part]) -> tuple[Part, ...]:
    """The parts with their texts, and with what only the words around them tell."""
    hydrometer = HYDROMETER.search(plain) is not None
    settled = []
    for at, part in enumerate(found):
        if part.quantities:
            part = _settled(plain, found, at, hydrometer)
        said = text[part.span[0] : part.span[1]]
        quantities = tuple([Quantity(q.value, q.unit, q.kind, said, part.span, q.bound) for q in part.quantities])
        settled.append(Part(part.kind, said, part.span, part.dim, quantities))
    return tuple(settled)


def _settled(plain: str, found: list[Part], at: int, hydrometer: bool) -> Part:
    part = found[at]
    if part.dim == "NICKNAME":
        return _nickname(plain, found, at)
    if part.dim == "NUM":
        return _plain(plain, found, at, hydrometer)
    if part.dim in _kinds():
        return _kind(plain, part)
    return part


def _kind(plain: str, part: Part) -> Part:
    words = _following(plain, part.span[1])
    for known in _kinds()[part.dim]:
        if known.values and part.quantities[0].value not in known.values:
            continue
        before = plain[max(0, part.span[0] - 30) : part.span[0]].rstrip(" -~")
        if _among(words, known.after) or any(_ends(before, phrase) for phrase in known.before):
            return replace(part, quantities=tuple(replace(q, kind=known.kind) for q in part.quantities))
    return part


def _ends(before: str, phrase: str) -> bool:
    return before.endswith(phrase) and not before[: -len(phrase)][-1:].isalpha()


def _following(plain: str, end: int) -> list[str]:
    """The words right after a place, up to a mark, a number or a word that begins something else."""
    words = []
    for word in re.split(" +", plain[end : end + 60].lstrip("- "))[:5]:
        if not WORD.fullmatch(word.rstrip(".,;:!?)")):
            break
        words.append(word.rstrip(".,;:!?)"))
        if word != words[-1]:
            break
    return words


def _among(words: list[str], wanted: frozenset[str]) -> bool:
    stops = _words("stops")
    for at in range(min(3, len(words))):
        if any(" ".join(words[at : at + size]) in wanted for size in (3, 2, 1)):
            return True
        if words[at] in stops:
            return False
    return False


def _nickname(plain: str, found: list[Part], at: int) -> Part:
    """"31s" are batteries of that case, "two 12s" are batteries of those volts, "6s" alone is a time."""
    part, value = found[at], found[at].quantities[0].value
    before = found[at - 1] if at else None
    counted = before is not None and before.quantities and before.dim in ("COUNT", "NUM", "OTHER")
    if value in (24, 27, 31, 34, 65):
        return _as(part, f"{value:g}", "", "group_size", "GROUP")
    if counted or "'" in plain[slice(*part.span)] or _following(plain, part.span[1])[:2] in (["in", "series"], ["in", "parallel"]):
        return _as(part, value, "volt", "", "VOLT")
    return _as(part, value, "second", "", "TIME")


def _as(part: Part, value: float | str, unit: str, kind: str, dim: str) -> Part:
    return Part("quantity", "", part.span, dim, (Quantity(value, unit, kind, "", part.span),))


def _plain(plain: str, found: list[Part], at: int, hydrometer: bool) -> Part:
    """A plain number: a gravity, a year, a count, part of a code, or just a number."""
    part = found[at]
    said = plain[part.span[0] : part.span[1]]
    if all(_is_gravity(said_one, hydrometer) for said_one in re.split(" ?(?:-|to|or) ?", said)):
        return _gravities(part)
    nearby = found[at + 1] if at + 1 < len(found) else None
    glued = nearby is not None and nearby.kind == "word" and nearby.span[0] == part.span[1]
    if glued or (YEAR.fullmatch(said) and part.quantities[0].value != ROUND) or len(said) > 8 and said.isdigit():
        return Part("noise", "", part.span)
    if _counts(plain, part, nearby):
        return replace(part, dim="COUNT", quantities=tuple(replace(q, kind="count") for q in part.quantities))
    if case := _case_name(plain, part, said):
        return _as(part, case, "", "group_size", "GROUP")
    if FRACTION.fullmatch(said) and _near_a_hole(plain, part):
        return _as(part, FRACTIONS.get(said, said), "", "stud_size", "STUD")
    if said == "one":
        return Part("word", "", part.span)
    return part


def _is_gravity(said: str, hydrometer: bool) -> bool:
    odd = re.fullmatch("1[0-3][0-9]{2}", said) and said[2:] not in ("00", "50") and said < "1320"
    return bool(odd) or (GRAVITY.fullmatch(said) is not None and "," not in said) or (hydrometer and WHOLE_GRAVITY.fullmatch(said) is not None)


def _gravities(part: Part) -> Part:
    quantities = tuple(
        replace(q, value=value / 1000 if value > 100 else value, kind="specific_gravity")
        for q in part.quantities if isinstance(value := q.value, float)
    )
    return replace(part, dim="GRAVITY", quantities=quantities)


def _case_name(plain: str, part: Part, said: str) -> str:
    """The case size in "is a 31 heavy" and "AGM 31"; "" for another number."""
    if said not in ("24", "27", "31", "34", "65"):
        return ""
    before = plain[max(0, part.span[0] - 12) : part.span[0]].rstrip(" -")
    after = _following(plain, part.span[1])
    named = re.search(r"\b(?:a|an|agm|gel|flooded|size|that|my|the)$", before)
    return said if named and not after[:1] == ["hour"] and not _among(after, _words("no_case")) else ""


def _near_a_hole(plain: str, part: Part) -> bool:
    before = re.findall("[a-z]+", plain[max(0, part.span[0] - 30) : part.span[0]])[-4:]
    return not _words("holes").isdisjoint([*before, *_following(plain, part.span[1])[:2]])


def _counts(plain: str, part: Part, nearby: Part | None) -> bool:
    values = [q.value for q in part.quantities]
    if any(not isinstance(value, float) or value % 1 or not 1 <= value <= 48 for value in values):
        return False
    if nearby is not None and nearby.quantities and nearby.kind == "quantity" and nearby.dim not in ("NUM", "COUNT", "GRAVITY"):
        return plain[part.span[1] : nearby.span[0]].strip(" -") == ""
    words = _following(plain, part.span[1])
    return words[:1] != [] and (words[0] in _words("count", "words") or " ".join(words[:2]) in _words("count", "phrases"))
