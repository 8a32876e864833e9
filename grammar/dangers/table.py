"""The tables of signs of danger, compiled: words/dangers*.toml, danger_words.toml and danger_context.toml."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from grammar.dangers.subject import Machines
from grammar.files import TABLES, kept, toml
from grammar.lexicon import phrases
from grammar.lexicon.phrases import Phrases, compiled

WORDS = TABLES / "words"
CONTEXT = (
    "negation",
    "but-not",
    "mended",
    "now",
    "its-own",
    "asked",
    "past",
    "other-boat",
    "not-ours",
    "renewed",
    "refilled",
    "supposed",
    "general",
    "but-present",
    "weighed",
    "advised",
    "affirmed",
    "but-affirmed",
    "rid",
    "told-past",
    "lately",
    "riddle",
)
ELSEWHERE = {
    "but-not": ("negation", "but-not"),
    "but-present": ("general", "but-present"),
    "other-boat": ("past", "boat"),
    "not-ours": ("past", "not-ours"),
    "renewed": ("past", "renewed"),
    "refilled": ("past", "refilled"),
    "now": ("mended", "now"),
    "its-own": ("mended", "its-own"),
    "asked": ("mended", "asked"),
    "rid": ("mended", "rid"),
    "but-affirmed": ("affirmed", "but-affirmed"),
    "lately": ("told-past", "lately"),
}
CODE = (Path(__file__), Path(phrases.__file__))


@dataclass(frozen=True, slots=True)
class Signs:
    """The phrases of the tables, ready for use."""

    signs: Phrases  # by family, and how it counts: "smoke", "smoke/short", "fire/beside/electric"
    context: Phrases
    masks: Phrases
    places: Phrases  # the words of each class, to look for what a sign must stand by
    keeps: frozenset[str]  # families of which the past counts as the present
    unmended: frozenset[str]  # those of them of which it does only until they were mended
    general: frozenset[str]  # families that are only ever asked about
    loose: frozenset[str]  # families told in several clauses
    advised: frozenset[str]  # families of which an opinion may speak: "he says you can charge it at 15.5 V"
    hearsay: frozenset[str]  # families that somebody may only say of a kind of battery: that is no sign
    planned: frozenset[str]  # families that what is only intended or asked leave for is none of: the answer says no
    needs: Mapping[str, tuple[str, ...]]
    instead: Mapping[
        str, tuple[str, ...]
    ]  # a family that stands instead of others where they share a word: a hot joint, no battery
    machines: Mapping[str, Machines]  # whose sign a family is, where other machines do the like
    of_wiring: Mapping[str, Mapping[str, str]]  # a sign whose subject is a joint or a fuse: by its words, its family


@cache
def signs() -> Signs:
    """The tables of words. Raises ValueError for a phrase that cannot be compiled."""
    sources = [WORDS / "danger_words.toml", WORDS / "danger_context.toml", *sorted(WORDS.glob("dangers*.toml"))]
    tables, flags = kept(str(WORDS / "danger-signs"), [*sources, *CODE], lambda: _made(sources))
    named, context, masks, places = (Phrases(*table) for table in tables)
    return Signs(
        named,
        context,
        masks,
        places,
        keeps=frozenset(flags["keeps"]),
        unmended=frozenset(flags["unmended"]),
        general=frozenset(flags["general"]),
        loose=frozenset(flags["loose"]),
        advised=frozenset(flags["advised"]),
        planned=frozenset(flags["planned"]),
        hearsay=frozenset(flags["hearsay"]),
        needs=flags["needs"],
        instead=flags["instead"],
        machines={name: Machines(*pair) for name, pair in flags["machines"].items()},
        of_wiring=flags["of_wiring"],
    )


def _made(sources: list[Path]) -> list[Any]:
    classes = {name: words.split() for name, words in toml(sources[0])["classes"].items()}
    table = toml(sources[1])
    families = {name: spec for path in sources[2:] for name, spec in toml(path).items() if name != "class"}
    named = (
        dict(pair for family, spec in families.items() for pair in _phrases(family, spec)),
        {name: _context(table, name) for name in CONTEXT},
        {"look-alike": table["look-alikes"]["says"]},
        {name: [f"<{name}>"] for name in classes},
    )
    flags: dict[str, Any] = {
        flag: [name for name, spec in families.items() if spec.get(flag)]
        for flag in ("keeps", "unmended", "general", "loose", "advised", "planned", "hearsay")
    }
    flags["needs"] = {name: tuple(spec["needs"]) for name, spec in families.items() if "needs" in spec}
    flags["instead"] = {name: tuple(spec["instead"]) for name, spec in families.items() if "instead" in spec}
    flags["machines"] = {name: spec["machines"] for name, spec in families.items() if "machines" in spec}
    flags["of_wiring"] = {name: spec["of_wiring"] for name, spec in families.items() if "of_wiring" in spec}
    return [[compiled(one, classes) for one in named], flags]


def _phrases(family: str, spec: Mapping[str, Any]) -> Iterator[tuple[str, list[str]]]:
    """The phrases of a family by how they count."""
    pairs = [pair.split() for pair in spec.get("pairs", ())]
    yield family, [*spec.get("says", ()), *(f"<{sign}> ** <{place}>" for sign, place in pairs)]
    yield f"{family}/last", [f"<{place}> ** <{sign}>" for sign, place in pairs]  # the sign is the last word
    for how in ("short", "alone"):
        yield f"{family}/{how}", spec.get(how, {}).get("says", ())
    for how in ("beside", "anywhere", "with", "without"):
        for place, says in spec.get(how, {}).items():
            yield f"{family}/{how}/{place}", says


def _context(table: Mapping[str, Any], name: str) -> list[str]:
    section, key = ELSEWHERE.get(name, (name, "says"))
    found: list[str] = table[section][key]
    return found
