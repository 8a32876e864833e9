"""A battery's label typed as it stands, with nothing asked: what it is good for, and what contradicts itself."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from grammar.reading import Message
from service import reference, say
from service.calculators import convert, peukert
from service.case import Case, Value
from service.house_rules.by_house import answered
from service.judgements import charging
from service.kinds import CHARGED
from service.labels import printed
from service.reply import Answer, Asked, Figure, Option
from service.routing import asking
from service.rules.bank import system
from service.topic import Topic
from service.topics import topic
from service.turns.thread import Thread

LABEL = Topic("battery-duty", "A battery's label", cautions=("lithium-cut-out",))
RATED = ("battery.capacity", "battery.energy", "battery.cca", "battery.ca", "battery.reserve", "battery.max_current",
         "battery.peak_current")  # fmt: skip
PRINTED = (*RATED, "battery.nominal", "battery.group", "battery.weight")
OF_A_LABEL = (*PRINTED, "battery.chemistry", "battery.duty")
FIND = "detail:find_kind"  # asked before: then what stands on the label is the answer
FOUND = "kind-from-outside"
MOTOR = ("detail:weak_motor", "detail:dead_motor")  # why they look: the volts while it runs still tell
EN, EN_SAID = "detail:en_rating", "{0} A by EN"
MISREAD = ("reading.voltage", "load.time", "load.burst")  # "12.8 V" of lithium and "/20HR" stand on labels too
CELL, CENTI = 3.2, 0.01  # nominal volts of a lithium cell, and how near to a whole number of them
ENOUGH, RATINGS = 3, 2  # facts of a label, and how many of them ratings
FEW = 3  # models that are named in a sentence
JOINED = {2: "two", 3: "three", 4: "four"}
SAID: tuple[tuple[str, str], ...] = (  # each rating in plain words; {0} is the number
    ("battery.capacity", "{0} Ah: {1} A for 20 hours"),
    ("battery.cca", "{0} CCA: {0} A for 30 seconds at -18 °C"),
    ("battery.ca", "{0} MCA or CA: the same at 0 °C"),
    ("battery.reserve", "RC {0}: 25 A for {0} minutes"),
    ("battery.max_current", "{0} A all the time"),
    ("battery.peak_current", "{0} A for a few seconds"),
    ("battery.energy", "{0} Wh in all"),
)
CITED = {
    "battery.capacity": "peukert",
    "battery.cca": "sae-j537",
    "battery.ca": "ca-over-cca",
    "battery.reserve": "reserve-capacity",
    "battery.energy": "energy-volts",
}


@dataclass(frozen=True, slots=True)
class Clash:
    """Two ratings of one label that cannot both be right."""

    say: str
    cites: tuple[str, ...]


def reading(message: Message, thread: Thread) -> Message | None:
    """A message that is a label and no more, read as one; None for any other."""
    again = printed.reread(message)
    return next((found for found in (again, message) if stands(found, thread)), None)


def stands(message: Message, thread: Thread) -> bool:
    """Whether a message is a label and no more: ratings of one battery, and nothing asked, feared or gone on with."""
    first = [item for item in message.stated if item.of == 1]
    names = {item.fact for item in first}
    if (
        (thread.topics and FIND not in thread.cues)
        or message.dangers
        or len(first) < len(message.stated)
        or not printed.printable(message)
    ):
        return False
    if len(names & set(PRINTED)) < ENOUGH or len(names & set(RATED)) < RATINGS:
        return False
    if any(item.fact == "reading.voltage" and not _nominal(item.value) for item in first):
        return False
    unread = {cue.name.removeprefix("role:") for cue in message.cues if cue.name.startswith("role:")} & set(RATED)
    return names <= {*OF_A_LABEL, *MISREAD} and unread <= names and not _asks(message)


def _asks(message: Message) -> bool:
    """Whether anything is asked; what stands in a rating ("20HR", "max continuous") asks nothing."""
    if "?" in message.words or message.says("role:read_off") or any(word in asking.OPENERS for word in message.words):
        return True
    return any(cue.name.startswith("request:") and not _in_a_rating(message, cue.span[0]) for cue in message.cues)


def _nominal(volts: Value) -> bool:
    """Whether volts are those of so many lithium cells, as their labels print them: 12.8, 25.6, 51.2."""
    cells = float(volts) / CELL
    return cells > 1 and abs(cells - round(cells)) < CENTI


def _in_a_rating(message: Message, at: int) -> bool:
    return any(start <= at < end for start, end in (item.span for item in message.quantities))


@LABEL.answered_by
def answer(case: Case) -> Answer:
    """The ratings in words, what contradicts itself, the charge current, and the models that it suits."""
    for fact in OF_A_LABEL:
        case.known(fact)  # each stands on the label, so each was understood
    _in_words(case)
    clashes = tuple(_clashes(case))
    for clash in clashes:
        case.because(clash.say, *clash.cites)
    figures = _charge(case)
    if clashes:
        head = f"This label contradicts itself: {clashes[0].say}; ask the seller which is right."
        return LABEL.says("information", head, *figures, route="technician")
    models = tuple(_models(_alone(case)))
    head = f"{_battery(case)}: {_good_for(case, models)}."
    if case.says(FIND) and _kind(case) == "lead":
        case.because("AGM, gel or sealed wet-cell: that is still open, and the charger's setting hangs on it", FOUND)
    asks = (*_open(case), *((LABEL.ask("reading.load_voltage"),) if case.says(*MOTOR) else ()))
    return LABEL.says("information", head, *figures, compare=models, asks=asks)


def _in_words(case: Case) -> None:
    told, cites = [], []
    for fact, plain in SAID:
        value = case.said(fact)
        if value is not None:
            words = EN_SAID if fact == "battery.cca" and case.says(EN) else plain
            told.append(words.format(say.significant(float(value)), say.significant(float(value) / peukert.RATED)))
            cites += [CITED[fact]] if fact in CITED else []
    case.step("; ".join(told), *cites)
    if case.says(EN):
        case.step("EN amps are taken as CCA at most", "en-rating")


def _clashes(case: Case) -> Iterator[Clash]:
    """Ratings that cannot both be right."""
    yield from _cranking(case)
    yield from _reserve(case)
    yield from _energy(case)
    continuous, peak = case.said("battery.max_current"), case.said("battery.peak_current")
    if continuous and peak and peak < continuous:
        yield Clash(
            f"{say.amps(peak)} for a few seconds is less than {say.amps(continuous)} all the time", ("lithium-limits",)
        )
    if case.said("battery.chemistry") == "lfp" and case.said("battery.cca"):
        case.step("CCA is a test for lead; on lithium the limits of its management system count", "lithium-limits")


def _apart(one: float, other: float, name: str) -> bool:
    return abs(one / other - 1) > float(reference.value("label", name).value)


def _cranking(case: Case) -> Iterator[Clash]:
    cca, ca = case.said("battery.cca"), case.said("battery.ca")
    ratio = reference.value("ratings", "ca-over-cca")
    if cca and ca and _apart(ca, convert.ca_from_cca(cca, ratio.value), "ca-to-cca"):
        yield Clash(
            f"{say.cca(cca)} would be about {say.number(convert.ca_from_cca(cca, ratio.value))} MCA, "
            f"and it says {say.number(ca)}",
            (ratio.cite, "label-slack"),
        )


def _reserve(case: Case) -> Iterator[Clash]:
    reserve, capacity = case.said("battery.reserve"), case.said("battery.capacity")
    if not reserve or not capacity:
        return
    k = reference.row("peukert", chemistry=case.get("battery.chemistry") or "lead")["k"]
    found = peukert.capacity_from_reserve(reserve, k.value)
    told = f"{say.quantity(reserve, 'min')} of reserve would be about {say.quantity(found, 'Ah', 0)}"
    if _apart(capacity, found, "reserve-to-capacity"):
        yield Clash(f"{told}, and it says {say.amp_hours(capacity)}", (k.cite, "reserve-capacity", "label-slack"))
    else:
        case.step(f"{told} by Peukert's law, which agrees with {say.amp_hours(capacity)}", k.cite, "reserve-capacity")


def _energy(case: Case) -> Iterator[Clash]:
    energy, capacity = case.said("battery.energy"), case.said("battery.capacity")
    if energy and capacity:
        each = reference.value("ratings", "volts-lithium" if case.get("battery.family") == "lithium" else "volts-lead")
        held = convert.energy(capacity, _volts(case) / 12 * each.value)
        if _apart(energy, held, "energy-to-capacity"):
            yield Clash(
                f"{say.amp_hours(capacity)} would be about {say.quantity(held, 'Wh', 0)}, and it says "
                f"{say.quantity(energy, 'Wh', 0)}",
                (each.cite, "label-slack"),
            )


def _volts(case: Case) -> float:
    """Nominal volts of this battery, 12 V where the label does not say."""
    nominal = case.said("battery.nominal")
    return system(float(nominal)) if nominal else 12.0


def _kind(case: Case) -> str | None:
    """The kind on the label; lead where only lead has such ratings."""
    kind = charging.known_kind(case)
    return kind or ("lead" if case.get("battery.family") == "lead" else None)


def _charge(case: Case) -> tuple[Figure, ...]:
    kind = _kind(case)
    if kind not in (*CHARGED, "lead") or "battery.capacity" not in case:
        return ()
    found = charging.span(case, str(kind), float(case["battery.capacity"]))
    return (
        Figure("charger_current_low", "charge it with at least", found.low, "A"),
        Figure("charger_current_high", "at most", found.high, "A"),
    )


def _alone(case: Case) -> Case:
    """The battery without what was only misread from the label."""
    return case.supposing({}, MISREAD)


def _models(case: Case) -> Iterator[Option]:
    """Each model of the house against this battery, in series where it wants more volts."""
    for model in case.house.models.values():
        count = model.volts / _volts(case)
        if count != int(count) or count > max(JOINED):
            continue
        joined: dict[str, Value] = {"battery.count": count, "bank.layout": "series"} if count > 1 else {}
        found = answered(topic("run-check"), case.supposing({"load.model": model.name, **joined}))
        yield Option(f"{JOINED[int(count)]} in series, {model.name}" if count > 1 else model.name, found.verdict)


def _battery(case: Case) -> str:
    """The battery in words: "A 12 V AGM battery of 100 Ah and 800 CCA"."""
    kind = _kind(case)
    words = [f"{say.number(_volts(case))}{say.NB}V" if "battery.nominal" in case.stated else ""]
    words += ["sealed lead" if kind == "lead" and case.says("detail:no_caps") else say.CHEMISTRY.get(kind or "", "")]
    duty = str(case.said("battery.duty") or "")
    words += ["starting" if duty == "cranking" else duty]
    ratings = [say.amp_hours(float(case["battery.capacity"]))] if "battery.capacity" in case else []
    if "battery.cca" in case and kind != "lfp":
        amps = float(case["battery.cca"])
        ratings.append(f"{say.amps(amps)} EN" if case.says(EN) else say.cca(amps))
    name = " ".join(word for word in (*words, "battery") if word)
    article = "An" if name[0] in "Aa8" else "A"
    return f"{article} {name} of {' and '.join(ratings)}" if ratings else f"{article} {name}"


def _good_for(case: Case, models: Sequence[Option]) -> str:
    """What it suits, in the words of its verdicts."""
    if _kind(case) is None:
        return "whether it is lead or lithium decides what it is good for"
    fine = [item.label for item in models if item.verdict == "yes"]
    just = [item.label for item in models if item.verdict == "marginal"]
    if fine:
        named = say.listed([_called(name) for name in fine]) if len(fine) <= FEW else f"{len(fine)} of our models"
        return f"it suits {named}"
    if just:
        return f"only just enough for {say.listed([_called(name) for name in just[:FEW]])}"
    if any(item.verdict == "needs-facts" for item in models):
        return "its current limits decide which thruster it runs"
    if "battery.cca" not in case and case.get("battery.family") == "lead":
        return "made for slow loads; without a CCA on its label not for a thruster"
    return "too little for our thrusters" if models else "it can be judged by these ratings"


def _called(label: str) -> str:
    """A model as a sentence names it."""
    joined, _, name = label.rpartition(", ")
    return f"the {name} ({joined})" if joined else f"the {name}"


def _open(case: Case) -> tuple[Asked, ...]:
    """What is still to be read off the label."""
    if _kind(case) is None:
        return (LABEL.ask("battery.chemistry", (("AGM", "agm"), ("wet-cell", "flooded"), ("lithium", "lfp"))),)
    if case.get("battery.family") == "lead":
        return () if "battery.cca" in case else (LABEL.ask("battery.cca"),)
    limits = ("battery.max_current", "battery.peak_current")
    return tuple(LABEL.ask(fact) for fact in limits if fact not in case.stated)
