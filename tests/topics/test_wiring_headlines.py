"""Headlines of the wiring topics stand alone: one sentence, at most 30 words, and every number has a source."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from grammar.facts import facts as specs
from service import reference
from service.topics import topic
from tests.building import case

CASES = [
    ("cable-size", {"load.current": 340.0, "cable.length": 6.096}),
    ("cable-size", {"load.model": "Pike", "cable.length": 6.096}),
    ("cable-size", {"load.current": 600.0, "cable.length": 10.0}),
    ("cable-size", {"cable.area": 35.0, "load.current": 160.0, "cable.length": 8.0}),
    ("cable-size", {"cable.area": 70.0, "load.current": 160.0, "cable.length": 8.0}),
    ("voltage-drop", {"cable.area": 35.0, "load.current": 160.0, "cable.length": 8.0}),
    ("fuse-size", {"load.current": 250.0, "cable.gauge": "1/0"}),
    ("fuse-size", {"load.current": 240.0, "cable.gauge": "2/0", "fuse.rating": 400.0}),
    ("fuse-size", {"load.current": 340.0, "cable.gauge": "1"}),
    (
        "bank-wiring",
        {"battery.count": 2.0, "battery.capacity": 100.0, "bank.layout": "series", "battery.chemistry": "agm"},
    ),
    ("bank-wiring", {"battery.chemistry": ("agm", "lfp"), "bank.layout": "parallel"}),
    ("bank-wiring", {"battery.capacity": (100.0, 140.0), "bank.layout": "parallel"}),
    ("rating-convert", {"battery.reserve": 180.0}),
    ("rating-convert", {"cable.area": 70.0}),
    ("weight", {"battery.weight": 30.0, "battery.count": 2.0}),
    ("group-size", {"battery.group": ("31", "24")}),
    ("terminals", {"terminal.size": ("M8", "M10")}),
]


@pytest.mark.parametrize(("name", "facts"), CASES)
def test_a_headline_is_one_short_sentence(name, facts):
    head = topic(name).answer(case(facts)).headline
    assert len(head.split(" ")) <= 30
    assert head.endswith(".")
    assert ". " not in head


@pytest.mark.parametrize(("name", "facts"), CASES)
def test_every_source_of_a_step_is_known(name, facts):
    known = case(facts)
    topic(name).answer(known)
    assert known.trace
    for step in known.trace:
        for cite in step.cites:
            assert cite.partition("@")[0] in reference.sources() or cite == "house"


@pytest.mark.parametrize("name", ["cable-size", "voltage-drop", "fuse-size", "bank-wiring", "weight", "group-size"])
def test_a_topic_asked_about_nothing_asks_back_or_explains(name):
    assert topic(name).answer(case({})).verdict in ("needs-facts", "information")


def some(fact: str) -> st.SearchStrategy[object]:
    """A plausible value of a fact."""
    spec = specs()[fact]
    if spec.values:
        return st.sampled_from(spec.values)
    if spec.kind == "flag":
        return st.booleans()
    if fact == "cable.gauge":
        return st.sampled_from(["18", "4", "3", "1/0", "4/0", "00", "5", "7/0"])
    if fact == "battery.group":
        return st.sampled_from(["24", "31S", "GC2", "H8", "99"])
    if fact == "terminal.size":
        return st.sampled_from(["M8", "3/8", "5/16-18", "M12", "odd"])
    if fact == "load.model":
        return st.sampled_from(["Minnow", "pike", "Sturgeon", "another"])
    if fact == "load.kind":
        return st.sampled_from(["thruster", "windlass", "electronics", "fridge"])
    assert spec.low is not None
    assert spec.high is not None
    return st.floats(spec.low, spec.high)


CABLE = ["gauge", "area", "length", "drop", "insulation", "in_engine_space"]
BATTERY = [
    "nominal",
    "count",
    "capacity",
    "chemistry",
    "age",
    "cca",
    "reserve",
    "weight",
    "group",
    "max_in_series",
]
LOAD = ["current", "power", "model", "kind"]
USED = [
    *(f"cable.{name}" for name in CABLE),
    *(f"battery.{name}" for name in BATTERY),
    *(f"load.{name}" for name in LOAD),
    "fuse.rating",
    "bank.voltage",
    "bank.layout",
    "charger.current",
    "terminal.size",
]
CUES = [
    "request:may_i",
    "detail:join",
    "thing:charger",
    "thing:dcdc",
    "thing:cable",
    "detail:feed",
    "detail:to_awg",
    "detail:to_rc",
    "detail:double_time",
    "detail:aboard_now",
    "detail:most",
    "detail:asks_bad",
    "detail:blows",
]
NAMES = [
    "cable-size",
    "voltage-drop",
    "fuse-size",
    "bank-wiring",
    "rating-convert",
    "weight",
    "group-size",
    "terminals",
]


@settings(max_examples=120, deadline=None)
@given(
    st.sampled_from(NAMES),
    st.fixed_dictionaries({}, optional={name: some(name) | st.tuples(some(name), some(name)) for name in USED}),
    st.sets(st.sampled_from(CUES), max_size=4),
)
def test_any_facts_give_an_answer_with_real_figures_or_a_question_of_the_contract(name, facts, cues):
    answer = topic(name).answer(case(facts, cues))
    assert answer.verdict in ("yes", "no", "marginal", "needs-facts", "information")
    assert answer.verdict != "needs-facts" or answer.asks or answer.route == "technician"
    assert all(asked.fact in specs() for asked in answer.asks)
    for figure in answer.figures:
        assert isinstance(figure.value, str) or abs(float(figure.value)) < 1e12
