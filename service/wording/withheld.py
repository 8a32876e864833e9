"""What is left of the answers beside a danger: none says how to use, charge, wire or test the battery it is of."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace

from grammar.text.patterns import regex
from service.reply import Answer, Cite
from service.told import may_i
from service.topics import topic
from service.wording.aside import harmless

KEPT_BACK = frozenset(  # what tells how to charge, wire or fuse, and asks back to tell it
    {
        "bank-wiring",
        "cable-size",
        "charge-time",
        "charger-banks",
        "charger-setting",
        "charger-size",
        "dc-dc",
        "fuse-size",
        "maintenance",
        "mounting",
        "run-time",
        "solar",
        "storage",
        "terminals",
    }
)
READ_AGAIN = frozenset({"rest-voltage", "specific-gravity", "load-voltage"})  # each sends somebody to the battery
GOES_ON = frozenset({"replacement", "run-check", "standing-drain", "freeze-point"})  # as if the battery were kept
OF_THE_DANGER = {  # a "no" that the danger itself is the reason of
    "no-fuse": {"fuse-size"},
    "overcharging-voltage": {"charger-setting", "rest-voltage"},
    "lfp-charged-below-freezing": {"charger-setting", "freeze-point"},
    "lfp-keeps-tripping": {"run-check"},
}
OF_A_CIRCUIT = frozenset({"no-fuse", "burnt-cable"})  # dangers of a cable or a fuse, not of the battery
FUSE = "fuse-size"
WIRED = frozenset({"cable-size", FUSE})
PLANLESS = (
    "Do not plan with this battery: the danger above comes first, and it is not used until it has been looked at."
)
FAN = regex(r"\b(?:fans?|blowers?|extractors?)\b", re.IGNORECASE)
NO_FAN = "No: touch no fan and no switch in there, as a spark lights the gas; the danger above comes first."
FIRST = "he danger above comes first"
WAITS = regex(rf"(?:No: t|T){FIRST} \([^)]*\)(?P<why>.*)")


def withheld(answer: Answer, why: tuple[Cite, ...] = (), text: str = "", dangers: tuple[str, ...] = ()) -> Answer:
    """An answer while a hazard stands.

    `why`: the source of the danger, for an answer that has none of its own; `text`: the message, which may ask leave to
    charge or use it; `dangers`: the families that stand.
    """
    if harmless(answer) or answer.verdict == "stop":
        return answer
    if answer.topic == "ventilation" and FAN.search(text):
        return bare(replace(answer, verdict="no"), NO_FAN, why)
    own = any(answer.topic in OF_THE_DANGER.get(name, ()) for name in dangers)
    if answer.verdict == "no" and own and answer.topic in KEPT_BACK:
        told = bare(answer, answer.headline, why)
        # the right fuse is what mends a fuse that is missing or bridged
        return replace(told, figures=answer.figures, assumed=answer.assumed) if answer.topic == FUSE else told
    if answer.verdict in ("no", "needs-facts") and own:
        return replace(answer, asks=tuple(replace(item, replies=()) for item in answer.asks), would_change=())
    if not _goes_on(answer):
        return answer
    return bare(replace(answer, verdict="no"), _waits(answer, text, dangers), why)


def _waits(answer: Answer, text: str, dangers: tuple[str, ...]) -> str:
    """The headline of what waits: what it is about, and no word that could be read as leave to go on."""
    if answer.topic == "replacement":
        return PLANLESS
    asked = topic(answer.topic).title
    opens = "No: t" if may_i.asked(text) else "T"
    about = f"{opens}{FIRST} ({asked[:1].lower()}{asked[1:]})"
    if dangers and OF_A_CIRCUIT.issuperset(dangers) and answer.topic in WIRED:
        return f"{about}; an electrician sizes cable and fuse together before this circuit is used again."
    return f"{about}, and this battery is not used until it has been looked at."


def once_told(answers: Iterable[Answer]) -> Iterator[Answer]:
    """The answers, why they wait told with the first of those that do: "How long to charge: this waits too"."""
    told: set[str] = set()
    for answer in answers:
        parts = WAITS.fullmatch(answer.headline)
        if parts and parts["why"] in told:
            yield replace(answer, headline=f"{topic(answer.topic).title}: this waits too.")
        else:
            yield answer
        told |= {parts["why"]} if parts else set()


def _goes_on(answer: Answer) -> bool:
    """Whether an answer speaks of the battery as of one that is kept, charged or used."""
    told = answer.topic in KEPT_BACK | READ_AGAIN
    if answer.verdict in ("yes", "marginal") or (told and answer.verdict != "no"):
        return True
    return told or answer.topic in GOES_ON


def bare(answer: Answer, headline: str, why: tuple[Cite, ...]) -> Answer:
    """An answer of one line: no figure, reply or change that leads back to the battery."""
    return replace(
        answer,
        headline=headline,
        cites=answer.cites or why,
        figures=(),
        working=(),
        cautions=(),
        assumed=(),
        would_change=(),
        asks=(),
        compare=(),
        plot=None,
    )
