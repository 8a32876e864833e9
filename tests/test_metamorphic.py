"""What must hold between answers: more load, colder, thicker, other units, and the changes that the desk offers."""

from __future__ import annotations

from functools import cache
from itertools import pairwise

import pytest

from service.finish import finished
from service.leadsman import default_desk
from service.reply import Answer
from service.topics import topic
from tests.building import case
from tests.second import METHODS
from tests.second.questions import questions

KINDS = ("flooded", "agm", "gel", "lead", "lfp")
GAUGES = ("8", "6", "4", "2", "1", "1/0", "2/0", "3/0", "4/0")
AREAS = (10, 16, 25, 35, 50, 70, 95, 120)
GRADES = ("no", "needs-facts", "marginal", "information", "yes")
BETTER = {"no": ("yes", "marginal", "information"), "marginal": ("yes",)}  # a "how long" turns to its figure


def answered(name: str, facts: dict, cues: tuple[str, ...] = ()) -> Answer:
    return finished(topic(name), case(facts, cues))


def figure(answer: Answer, name: str) -> float:
    return next(item.value for item in answer.figures if item.name == name)


def ends_of(answer: Answer, name: str) -> tuple[float, float]:
    """Low and high of a figure, its value where it has no range of its own."""
    item = next(item for item in answer.figures if item.name == name)
    return tuple(item.value if end is None else end for end in (item.low, item.high))


def asked(text: str) -> Answer:
    return default_desk().ask(text).answers[0]


def grades(name: str, fact: str, values, facts: dict) -> list[int]:
    return [GRADES.index(answered(name, {**facts, fact: value}).verdict) for value in values]


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("capacity", [80, 100, 225])
def test_more_current_never_lengthens_the_run_time(kind, capacity):
    amps = [capacity * share for share in (0.01, 0.04, 0.05, 0.06, 0.1, 0.3, 0.5, 0.9)]
    facts = {"battery.chemistry": kind, "battery.capacity": capacity}
    times = [figure(answered("run-time", {**facts, "load.current": item}), "time_to_usable_limit") for item in amps]
    assert all(longer > shorter for longer, shorter in pairwise(times)), times


@pytest.mark.parametrize("kind", KINDS)
def test_more_capacity_never_shortens_the_run_time(kind):
    facts = {"battery.chemistry": kind, "load.current": 40}
    sizes = (60, 80, 100, 150, 300, 800, 1000)
    answers = [answered("run-time", {**facts, "battery.capacity": size}) for size in sizes]
    times = [figure(answer, "time_to_usable_limit") for answer in answers]
    assert all(shorter < longer for shorter, longer in pairwise(times)), times


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("amps", [3, 30, 300])
def test_the_size_found_for_a_time_lasts_that_time(kind, amps):
    facts = {"battery.chemistry": kind, "load.current": amps}
    size = figure(answered("bank-size", {**facts, "load.time": 7200, "load.kind": "fridge"}), "required_capacity")
    limits = {"battery.max_current": 400, "battery.peak_current": 600} if kind == "lfp" else {}
    lasts = answered("run-time", {**facts, **limits, "battery.capacity": size})
    assert figure(lasts, "time_to_usable_limit") == pytest.approx(120, rel=1e-6)


@pytest.mark.parametrize(("fact", "sizes"), [("cable.gauge", GAUGES), ("cable.area", AREAS)])
@pytest.mark.parametrize("volts", [12, 24])
def test_a_thicker_cable_never_loses_more(fact, sizes, volts):
    facts = {"load.current": 60, "load.kind": "thruster", "cable.length": 6, "bank.voltage": volts}
    lost = [figure(answered("voltage-drop", {**facts, fact: size}), "drop") for size in sizes]
    assert all(more > less for more, less in pairwise(lost)), lost


@pytest.mark.parametrize("name", ["voltage-drop", "cable-size", "fuse-size"])
@pytest.mark.parametrize(("fact", "sizes"), [("cable.gauge", GAUGES), ("cable.area", AREAS)])
def test_a_thicker_cable_never_worsens_the_verdict(name, fact, sizes):
    facts = {"load.current": 150, "load.kind": "thruster", "cable.length": 5, "bank.voltage": 12}
    facts["cable.insulation"] = 105
    found = grades(name, fact, sizes, facts | ({"fuse.rating": 200} if name == "fuse-size" else {}))
    assert found == sorted(found), found


@pytest.mark.parametrize("fact", ["gauge", "area"])
@pytest.mark.parametrize("kind", ["thruster", "electronics"])
def test_a_longer_run_never_takes_a_thinner_cable(fact, kind):
    sizes = {"gauge": ("18", "16", "14", "12", "10", *GAUGES), "area": (0.75, 1, 1.5, 2.5, 4, 6, *AREAS)}[fact]
    facts = {"load.current": 50, "load.kind": kind, "bank.voltage": 12}
    found = [
        sizes.index(figure(answered("cable-size", {**facts, "cable.length": metres}), fact)) for metres in range(1, 15)
    ]
    assert found == sorted(found), found


def test_colder_never_raises_the_cranking_power():
    falling = range(25, -31, -1)
    answers = [answered("cold-cranking", {"battery.cca": 800, "ambient.temperature": celsius}) for celsius in falling]
    for name in ("cranking_current", "share_of_warm_power"):
        power = [figure(answer, name) for answer in answers]
        assert power == sorted(power, reverse=True), name


@pytest.mark.parametrize("amps", [150, 250, 340])
def test_colder_never_betters_the_verdict_of_a_lead_battery(amps):
    facts = {"battery.chemistry": "agm", "battery.cca": 850, "load.current": amps, "load.kind": "thruster"}
    found = grades("run-check", "ambient.temperature", range(-18, 30), facts)
    assert found == sorted(found), found


@pytest.mark.parametrize(
    ("fact", "values", "facts"),
    [
        ("battery.cca", range(200, 1500, 25), {"battery.chemistry": "agm"}),
        ("battery.ca", range(200, 1800, 50), {"battery.chemistry": "flooded"}),
        ("battery.count", (1, 2, 3), {"battery.cca": 500, "bank.layout": "parallel"}),
        ("reading.voltage", (11.8, 12.0, 12.2, 12.3, 12.4, 12.5, 12.6, 12.7), {"battery.cca": 900}),
        ("battery.max_current", range(50, 700, 25), {"battery.chemistry": "lfp", "battery.peak_current": 700}),
        ("battery.capacity", range(50, 800, 25), {"battery.chemistry": "lfp"}),
        ("cable.area", AREAS, {"battery.cca": 1200, "cable.length": 4, "cable.insulation": 105}),
    ],
)
def test_a_stronger_battery_or_cable_never_worsens_the_verdict(fact, values, facts):
    found = grades("run-check", fact, values, {"load.current": 250, "load.kind": "thruster", **facts})
    assert found == sorted(found), found
    assert len(set(found)) > 1, "the values must cross a limit"


@pytest.mark.parametrize("facts", [{}, {"battery.chemistry": "agm"}, {"battery.charge": 60}])
@pytest.mark.parametrize("cca", range(300, 1000, 50))
def test_two_in_series_serve_24_volts_as_one_serves_12(cca, facts):
    load = {"battery.cca": cca, "load.current": 280, "load.kind": "thruster", **facts}
    one = answered("run-check", {**load, "bank.voltage": 12})
    two = answered("run-check", {**load, "bank.voltage": 24, "battery.count": 2, "bank.layout": "series"})
    assert two.verdict == one.verdict
    name = "terminal_voltage_at_inrush"
    assert figure(two, name) == pytest.approx(2 * figure(one, name))


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("volts", [10.2, 11.6, 12.0, 12.2, 12.5, 12.7, 13.1, 13.3, 13.9])
def test_a_bank_at_rest_is_judged_by_the_battery(kind, volts):
    one = answered("rest-voltage", {"battery.chemistry": kind, "reading.voltage": volts, "bank.voltage": 12})
    for count in (2, 3, 4):
        facts = {"battery.chemistry": kind, "reading.voltage": count * volts, "bank.voltage": 12 * count}
        assert answered("rest-voltage", facts).verdict == one.verdict


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize(("layout", "count"), [("series", 2), ("parallel", 2), ("parallel", 3), ("series-parallel", 4)])
def test_sums_of_a_bank_commute_with_the_unit(kind, layout, count):
    """Amp-hours added up and then put in watt-hours are the watt-hours of each added up, and the other way round."""
    bank = {"battery.chemistry": kind, "battery.nominal": 12, "battery.count": count, "bank.layout": layout}
    one = answered("rating-convert", {**bank, "battery.count": 1, "battery.capacity": 90}, ("detail:to_wh",))
    whole = answered("bank-wiring", {**bank, "battery.capacity": 90})
    each = figure(one, "energy")
    assert figure(whole, "bank_energy") == pytest.approx(count * each)
    by_energy = answered("bank-wiring", {**bank, "battery.energy": each})
    for name in ("bank_voltage", "bank_capacity", "bank_energy"):
        assert figure(by_energy, name) == pytest.approx(figure(whole, name)), name


@pytest.mark.parametrize(
    ("text", "units"),
    [
        ("What do two 12 V {} AGM batteries in parallel give?", ("100 Ah", "100000 mAh", "1.2 kWh", "1200 Wh")),
        ("How long will two 12 V 100 Ah AGM batteries in parallel run a 12 V {} load?", ("120 W", "0.12 kW", "10 A")),
        ("Will two 850 CCA AGM batteries in series run a 24 V {} thruster?", ("4 kW", "4000 W", "4000 watts")),
    ],
)
def test_a_bank_gives_the_same_whatever_the_unit(text, units):
    answers = [asked(text.format(unit)) for unit in units]
    assert len({(item.topic, item.verdict) for item in answers}) == 1
    first = {item.name: item.value for item in answers[0].figures}
    for other in answers[1:]:
        assert {item.name: item.value for item in other.figures} == {
            name: pytest.approx(value, rel=1e-6) for name, value in first.items()
        }


ALIKE = (
    ("Is 25 mm2 cable enough for {} one way to a 100 A 12 V thruster?", "4 m", "13.123 ft"),
    ("What size of cable for a 12 V 200 A thruster, {} one way?", "6 m", "19.685 ft"),
    ("What does a 800 CCA battery give at {}?", "-10 C", "14 F"),
    ("Will a flooded battery that is 40 % charged freeze at {}?", "-20 C", "-4 F"),
    ("Hydrometer says 1.250 at {}. How full is it?", "10 C", "50 F"),
    ("How long can an AGM battery be stored at {} before it needs charging?", "30 C", "86 F"),
    ("Will a 12 V 850 CCA AGM battery run a 12 V {} thruster?", "3000 W", "3 kW"),
    ("How much weight do I save if I swap a {} lead battery for lithium?", "30 kg", "66.139 lb"),
    ("How long until a {} standing drain flattens my 100 Ah AGM battery?", "50 mA", "0.05 A"),
    ("How long will a 100 Ah AGM battery last at {}?", "340 A", "340 amps"),
)


@pytest.mark.parametrize(("text", "one", "other"), ALIKE)
def test_other_units_give_the_same_answer(text, one, other):
    first, second = asked(text.format(one)), asked(text.format(other))
    assert (second.topic, second.verdict) == (first.topic, first.verdict)
    by_name = [sorted(found.figures, key=lambda item: item.name) for found in (first, second)]  # theirs stands first
    assert [item.name for item in by_name[0]] == [item.name for item in by_name[1]]
    for left, right in zip(*by_name, strict=True):
        assert right.value == (left.value if isinstance(left.value, str) else pytest.approx(left.value, rel=1e-3))


@pytest.mark.parametrize(("gauge", "area"), [("6", 16), ("2", 35), ("2/0", 70), ("4/0", 120)])
def test_gauge_and_metric_size_of_like_area_agree(gauge, area):
    facts = {"load.current": 100, "load.kind": "thruster", "cable.length": 3, "bank.voltage": 12}
    facts["cable.insulation"] = 105
    thin = answered("voltage-drop", {**facts, "cable.gauge": gauge})
    thick = answered("voltage-drop", {**facts, "cable.area": area})
    assert thick.verdict == thin.verdict
    assert figure(thick, "drop") < figure(thin, "drop") < 1.5 * figure(thick, "drop")


@cache
def offers() -> list[tuple[str, Answer, object]]:
    """Every change that the answers to generated questions offer."""
    return [
        (item.text, answer, change)
        for name in METHODS
        for item in questions(name, 25, seed=3)
        for answer in default_desk().ask(item.text).answers
        for change in answer.would_change
    ]


def test_every_change_offered_turns_the_verdict():
    kept = []
    for text, answer, change in offers():
        facts = [{"fact": change.fact, "value": change.value, "unit": change.unit}, *change.also]
        again = next(item for item in default_desk().ask(text, facts=facts).answers if item.topic == answer.topic)
        if again.verdict not in BETTER[answer.verdict]:
            kept.append(f"{text} ({answer.topic} {answer.verdict}): {change.say}: {again.verdict}: {again.headline}")
    assert len(offers()) > 100
    assert kept == []


def test_every_likely_reply_gives_the_verdict_told():
    wrong = []
    for name in METHODS:
        for item in questions(name, 15, seed=4):
            for answer in default_desk().ask(item.text).answers:
                for fact, reply in ((asked.fact, reply) for asked in answer.asks for reply in asked.replies):
                    if reply.value is None:
                        continue
                    facts = [{"fact": fact, "value": reply.value, "unit": reply.unit}]
                    again = {other.topic: other.verdict for other in default_desk().ask(item.text, facts=facts).answers}
                    if again.get(answer.topic) != reply.then:
                        wrong.append(f"{item.text}: {reply.say}: {again}, not {reply.then}")
    assert wrong == []


@pytest.mark.parametrize(
    ("text", "ends"),
    [
        ("Will a 12 V 850 CCA AGM battery run a 12 V {} A thruster?", ("300", "340")),
        ("How long will a 100 Ah AGM battery run a {} A load?", ("5", "8")),
        ("How long will a {} Ah AGM battery run a 10 A load?", ("90", "110")),
        ("My 12 V AGM battery reads {} V at rest. Is it OK?", ("12.4", "12.6")),
    ],
)
def test_a_range_spans_the_answers_of_its_ends(text, ends):
    ranged = asked(text.format(" to ".join(ends)))
    singles = [asked(text.format(end)) for end in ends]
    assert ranged.verdict == min((item.verdict for item in singles), key=GRADES.index)
    for item in ranged.figures:
        found = [end for single in singles for end in ends_of(single, item.name)]
        low, high = (item.value if end is None else end for end in (item.low, item.high))
        assert (low, high) == pytest.approx((min(found), max(found))), item.name
