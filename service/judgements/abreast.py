"""Two batteries, loads or temperatures of one question side by side, by the judgement that serves one."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace

from grammar.text.patterns import regex
from service import say
from service.case import WEIGHED, Case, Known
from service.judgements import at_once, joining, large_or_several, new_and_old, supply
from service.judgements.joining import of_each
from service.reply import Answer, Asked, Option, strictness

Judge = Callable[[Case], Answer]

RATED = ("battery.cca", "battery.ca", "battery.max_current")
TAKEN = {"yes": "Take the {name}", "marginal": "The {name} only just", "no": "Not the {name}"}
KIND = ("battery.chemistry", "battery.capacity")
OPENINGS = ("Yes", "No", "Just enough", "Only just")
CHOOSES = regex(r"\bwhich\b|\bbetter\b|\bcca\b[^.?!;]{0,30}\bor\b|\bor\b[^.?!;]{0,30}\bcca\b", re.IGNORECASE)
LONGEST = 30  # words of a headline
BESIDE = 3  # characters between a load and its amps


def are_weighed(case: Case) -> bool:
    """Whether the message tells of two batteries: two ratings, or two kinds between which is chosen."""
    if any(fact in case.second for fact in RATED):
        return True
    weighed = case.says(*WEIGHED) or joining.alternatives(case)
    return weighed and any(fact in case.second for fact in KIND)


def emptier(case: Case) -> Case:
    """The same question, in place, by the lower of two readings at rest: the emptier battery of a bank decides."""
    other = case.second["reading.voltage"]
    if case.said("reading.state") != "load" and float(other.value) < float(case["reading.voltage"]):
        case.stated = {**case.stated, "reading.voltage": replace(other, of=2)}
    return case


def are_joined(case: Case) -> bool:
    """Whether two ratings are those of two unlike batteries that are joined."""
    joined = case.said("bank.layout") in ("series", "parallel")
    return "battery.cca" in case.second and joined and not case.says(*WEIGHED) and not joining.alternatives(case)


def unlike(case: Case, judge: Judge) -> Answer:
    """Two unlike batteries in parallel: their starting power adds up, and the weaker one wears the other."""
    first, second = of_each(case)
    one, two = float(case["battery.cca"]) * first, float(case.second["battery.cca"].value) * second
    case.used.setdefault(("battery.cca", 2), case.second["battery.cca"])
    if case.said("bank.layout") == "series":
        return in_series(case, judge, min(one, two))
    together = case.supposing({"battery.cca": one + two}, ("battery.count", "bank.layout", "battery.capacity"))
    together.second = {}
    found = judge(together)
    case.step(f"In parallel {say.cca(one)} and {say.cca(two)} add up to {say.cca(one + two)}", "od1002")
    case.follow(together)
    if found.verdict != "yes":
        return found
    case.because("Unlike batteries in parallel: the weaker one wears the other", "bank-practice")
    return replace(found, verdict="marginal", headline=found.headline.replace("Yes:", "Only just, being unlike:", 1))


def in_series(case: Case, judge: Judge, weaker: float) -> Answer:
    """Two unlike batteries in series: the weaker one decides, and is emptied too far."""
    row = case.supposing({"battery.cca": weaker})
    row.second = {fact: known for fact, known in case.second.items() if fact != "battery.cca"}
    found = judge(row)
    case.follow(row)
    case.because("In series the weaker battery decides, and it is emptied too far", "bank-practice")
    if found.verdict != "yes":
        return found
    return replace(found, verdict="marginal", headline=found.headline.replace("Yes:", "Only just, being unlike:", 1))


def with_second(case: Case, judge: Judge) -> Case:
    """The case of the second battery, load or temperature; what it uses counts as used here."""
    other = case.others()
    judge(other)
    case.used.update({key: item for key, item in other.used.items() if item.of == 2})
    case.follow(other)
    return case.others()


def beside_a_model(case: Case) -> Case:
    """The case with a windlass or a like load, told beside a model by its watts or amps, as the second load: they are
    none of the model's."""
    told, kind = case.stated, case.stated.get("load.kind")
    if "load.model" not in told or kind is None or kind.value == "thruster" or "load.peak" in told:
        return case
    if {"load.model", "load.current"} & {*case.second}:
        return case
    amps, power = told.get("load.current"), told.get("load.power")
    if amps is not None and not are_next(amps, kind):
        return case
    if amps is None and power is not None:
        watts, volts = float(power.value), float(case["load.voltage"])
        case.step(f"{say.quantity(watts, 'W')} / {say.volts(volts, 0)} = {say.amps(watts / volts)}", "electric-power")
        case.used[("load.power", 1)] = power
        amps = replace(power, fact="load.current", value=watts / volts, unit="A")
    if amps is None:
        return case
    case.stated = {fact: item for fact, item in told.items() if fact not in ("load.power", "load.kind", "load.current")}
    case.second = {**case.second, "load.current": replace(amps, of=2)}
    return case


def are_next(one: Known, other: Known) -> bool:
    """Whether two facts are told side by side: "a 60 A inverter", "windlass (80 A)"."""
    if one.span is None or other.span is None:
        return False
    first, last = sorted((one.span, other.span))
    return last[0] - first[1] <= BESIDE


def loads(case: Case, judge: Judge) -> Answer:
    """Of two loads the heavier one decides."""
    sides = (case, with_second(case, judge))
    answers = [judge(side) for side in sides]
    heavier = one_at_a_time(case, judge, max(answers, key=lambda found: (strictness(found.verdict), -_volts(found))))
    names = [supply.load_name(side) for side in sides]
    if names[0] == names[1]:
        return heavier
    options = [Option(name, found.verdict, found.figures) for name, found in zip(names, answers, strict=True)]
    return replace(heavier, compare=tuple(options))


def one_at_a_time(case: Case, judge: Judge, alone: Answer) -> Answer:
    """The verdict on the heavier load, which tells as well where both at once are too much."""
    if alone.verdict not in ("yes", "marginal") or case.says(at_once.APART):
        return alone
    both = judge(at_once.joined("run-check", case))
    if strictness(both.verdict) <= strictness(alone.verdict):
        return alone
    opening, mark, rest = alone.headline.removesuffix(".").partition(": ")
    told = f"{opening}, one at a time{mark}{rest}"
    return replace(alone, headline=_fitting(f"{told}; both at once: {say.VERDICT[both.verdict]}.", f"{told}."))


def batteries(case: Case, judge: Judge) -> Answer:
    """Two batteries; where it is asked which, the better one's verdict and figures stand."""
    other = with_second(case, judge)
    answers = (judge(case), judge(other))
    names = [supply.bank_name(item).removeprefix("your ") for item in (case, other)]
    if names[0] == names[1]:  # one bank by two figures: "100 A each; he says 200 A"
        names = [f"{name}, {figures_of(item, case)}" for name, item in zip(names, (case, other), strict=True)]
    options = tuple(Option(name, item.verdict, item.figures) for name, item in zip(names, answers, strict=True))
    best = min(answers, key=lambda item: (strictness(item.verdict), -_volts(item)))
    if head := by_cca(case, other, names):
        return replace(best, headline=head, compare=options)
    if joining.alternatives(case):
        return _one_of_the_two(case, answers, best, options)
    if case.says(*WEIGHED):
        last = 1 - answers.index(best)
        return replace(best, headline=_with_the_other(best.headline, names[last], answers[last]), compare=options)
    if best is answers[0]:
        return replace(best, compare=options)
    other_would = f"{answers[0].headline.removesuffix('.')}; the {names[1]} would do."  # the old one, or another's
    head = other_would if best.verdict == "yes" else answers[0].headline
    return replace(answers[0], headline=head, compare=options)


def by_cca(case: Case, other: Case, names: list[str]) -> str:
    """Which of two to take by their CCA where no amps are told: the higher one; "" where that does not decide."""
    rated = [float(side.said("battery.cca") or 0.0) for side in (case, other)]
    lithium = any(side.get("battery.family") not in (None, "lead") for side in (case, other))
    alike = min(rated) <= 0 or rated[0] == rated[1]
    if "load.current" in case or lithium or alike or not CHOOSES.search(case.text):
        return ""
    case.because(
        "Amp-hours tell how long a battery lasts, its CCA how hard it may be pulled at once", "deep-cycle-rating"
    )
    name = names[rated.index(max(rated))]
    told = f"Take the {name} for a thruster: its CCA decides, not the amp-hours"
    return f"{told}; whether it is enough, the running amps tell."


def by_the_rated(case: Case, options: tuple[Case, Case], judge: Judge) -> Answer:
    """Two supplies of which one has its rating told: that one is judged, and the rating of the other is asked."""
    rated, other = options
    found = judge(rated)
    case.follow(rated)
    case.used.update(rated.used)
    bank = supply.bank_name(rated)
    name, count = bank.removeprefix("your "), int(float(other.get("battery.count", 1.0)))
    volts = say.quantity(float(other.get("battery.nominal") or 12.0), "V")
    second = f"{supply.counted(count)} {volts} {'ones' if count > 1 else 'battery'}"
    if found.verdict not in TAKEN:
        return found
    rest = found.headline.partition(": ")[2].replace(bank, "they" if " batteries " in name else "it", 1)
    head = f"{TAKEN[found.verdict].format(name=name)}: {rest.removesuffix('.')}; {second}: no CCA told."
    case.because(
        "Amp-hours tell how long a battery lasts, its CCA how hard it may be pulled at once", "deep-cycle-rating"
    )
    asks = found.asks or (Asked("battery.cca", f"the CCA of the {second}"),)
    shown = (Option(name, found.verdict, found.figures), Option(second, "needs-facts"))
    return replace(found, headline=_fitting(head, f"{head.partition(';')[0]}."), compare=shown, asks=asks)


def _one_of_the_two(case: Case, answers: tuple[Answer, Answer], best: Answer, options: tuple[Option, ...]) -> Answer:
    """One large battery or several: both where they do alike, else the one to take and how the other one does."""
    named = [large_or_several.name(side) for side in large_or_several.sides(case)]
    if told := large_or_several.which(case, answers, named):
        return replace(best, headline=told, compare=options)
    at = answers.index(best)
    name, other = named[at], f"{named[1 - at]}: {say.VERDICT[answers[1 - at].verdict]}"
    bank = supply.bank_name(large_or_several.sides(case)[at])
    rest = best.headline.partition(": ")[2] or best.headline
    if best.verdict in ("yes", "marginal"):
        it = "they" if " batteries " in name else "it"
        short = f"Take the {name.removeprefix('one ')}: {rest.replace(bank, it, 1)}"
    else:
        short = f"Neither will do: {rest.replace(bank, name, 1)}" if best.verdict == "no" else best.headline
    return replace(best, headline=_fitting(f"{short.removesuffix('.')}; {other}.", short), compare=options)


def one_and_two(case: Case, judge: Judge) -> Answer:
    """The battery aboard alone, and with one like it beside it: the verdict is that of what is told, one or two."""
    one, two = new_and_old.alone(case), new_and_old.side_by_side(case)
    alone, together = judge(one), judge(two)
    if not {alone.verdict, together.verdict} <= {"yes", "marginal", "no"}:
        return judge(case)
    names = ("one alone", "two alike in parallel")
    pair = zip(names, (alone, together), strict=True)
    options = tuple(Option(name, found.verdict, found.figures) for name, found in pair)
    single = case.said("battery.count") != 2
    shown, last = (alone, 1) if single else (together, 0)
    judge(case)  # what it uses is what is told
    case.follow(one if single else two)
    head = _with_words(shown.headline, names[last], (alone, together)[last])
    if shown is together and new_and_old.unlike_in_age(case) and "bank-wiring" not in case.beside:
        case.because("A new battery beside an old one: the weaker one wears the other", "bank-practice")
        if shown.verdict == "yes":
            head = head.replace("Yes:", "Only just, being unlike in age:", 1)
            shown = replace(shown, verdict="marginal")
    return replace(shown, headline=head, compare=options)


def figures_of(item: Case, case: Case) -> str:
    """The figures by which two that bear one name differ."""
    return say.listed([say.fact(fact, item.stated[fact].value) for fact in case.second if fact in item.stated])


def temperatures(case: Case, judge: Judge) -> Answer:
    """The same at two temperatures: the worse one leads, of two alike the colder."""
    sides = [(judge(one), one) for one in (case, with_second(case, judge))]
    names = [f"at {say.temperature(float(one['ambient.temperature']))}" for _, one in sides]
    options = tuple(Option(name, found.verdict, found.figures) for name, (found, _) in zip(names, sides, strict=True))
    worse = max(
        (0, 1), key=lambda side: (strictness(sides[side][0].verdict), -float(sides[side][1]["ambient.temperature"]))
    )
    found, better = sides[worse][0], sides[1 - worse][0]
    opening, mark, rest = found.headline.partition(": ")
    if opening not in OPENINGS:
        return replace(found, compare=options)
    here, there = (name.partition(" (")[0] for name in (names[worse], names[1 - worse]))
    same = "also" if better.verdict == found.verdict else say.VERDICT[better.verdict]
    short = f"{opening}{mark}{here} {rest}"
    return replace(found, headline=_fitting(f"{short.removesuffix('.')}; {there}: {same}.", short), compare=options)


def _with_words(headline: str, name: str, other: Answer) -> str:
    return _fitting(f"{headline.removesuffix('.')}; {name}: {say.VERDICT[other.verdict]}.", headline)


def _with_the_other(headline: str, name: str, other: Answer) -> str:
    return _fitting(f"{headline.removesuffix('.')}; the {name}: {say.VERDICT[other.verdict]}.", headline)


def _fitting(whole: str, short: str) -> str:
    """The whole sentence where it is no longer than a headline may be, else the short one."""
    return whole if len(whole.replace(say.NB, " ").split()) <= LONGEST else short


def _volts(answer: Answer) -> float:
    return max((float(item.value) for item in answer.figures if item.name == "terminal_voltage_at_inrush"), default=0.0)
