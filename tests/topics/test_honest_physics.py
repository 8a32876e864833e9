"""Effects that no verdict hangs on: each is told in words or as a figure of its own, beside the contract's figures."""

from __future__ import annotations

from typing import Any

import pytest

from grammar import read
from service import answer
from service.finish import finished
from service.reply import Answer
from service.topics import topic
from tests.building import case

THRUSTER = {"load.kind": "thruster", "bank.voltage": 12}


def asked(name: str, facts: dict[str, Any], cues: tuple[str, ...] = (), text: str = "") -> Answer:
    return finished(topic(name), case(facts, cues, text))


def figure(found: Answer, name: str) -> Any:
    return next((item for item in found.figures if item.name == name), None)


def steps(found: Answer) -> str:
    return " | ".join(step.say.replace("\u00a0", " ") for step in found.working)


# Peukert


@pytest.mark.parametrize(
    ("kind", "k", "low", "high"),
    [("flooded", 1.25, 1.2, 1.6), ("agm", 1.15, 1.05, 1.15), ("gel", 1.15, 1.1, 1.25), ("lfp", 1.05, 1.02, 1.1)],
)
def test_a_run_time_has_the_range_of_its_exponent(kind: str, k: float, low: float, high: float) -> None:
    found = asked("run-time", {"battery.chemistry": kind, "battery.capacity": 100, "load.current": 50})
    time = figure(found, "time_to_empty")
    hours = {exponent: 20 * (100 / 1000) ** exponent for exponent in (k, low, high)}
    assert (time.value, time.low, time.high) == pytest.approx((hours[k] * 60, hours[high] * 60, hours[low] * 60))
    assert f"{low:g} to {high:g}" in steps(found)


def test_no_range_where_the_exponent_does_not_matter() -> None:
    found = asked("run-time", {"battery.chemistry": "agm", "battery.capacity": 100, "load.current": 4})
    assert figure(found, "time_to_empty").low is None
    assert "exponent" not in steps(found)


def test_bursts_share_the_range() -> None:
    facts = {"battery.chemistry": "flooded", "battery.capacity": 100, "load.current": 200, "load.burst": 5}
    found = asked("run-time", facts)
    time, count = figure(found, "time_to_usable_limit"), figure(found, "burst_count")
    assert (count.low, count.value, count.high) == tuple(int(end * 12) for end in (time.low, time.value, time.high))


# Resting volts


@pytest.mark.parametrize(("celsius", "told"), [(0, "0.03 V lower"), (45, "0.02 V higher"), (-15, "0.05 V lower")])
def test_cold_and_warmth_move_the_resting_volts_a_little(celsius: float, told: str) -> None:
    facts = {"battery.chemistry": "agm", "reading.voltage": 12.5, "ambient.temperature": celsius}
    found = asked("rest-voltage", facts)
    assert told in steps(found)
    assert figure(found, "state_of_charge").value == pytest.approx(66.67, abs=0.01)


def test_nothing_is_said_near_25_c_nor_of_lithium() -> None:
    near = {"battery.chemistry": "agm", "reading.voltage": 12.5, "ambient.temperature": 18}
    lithium = {"battery.chemistry": "lfp", "reading.voltage": 13.2, "ambient.temperature": 0}
    assert "rests about" not in steps(asked("rest-voltage", near)) + steps(asked("rest-voltage", lithium))


@pytest.mark.parametrize(
    ("kind", "hours", "told"),
    [("flooded", 2, "6 h of rest"), ("agm", 2, "3 h of rest"), ("agm", 4, ""), ("flooded", 8, ""), ("lfp", 1, "")],
)
def test_a_short_rest_is_told(kind: str, hours: float, told: str) -> None:
    volts = 13.2 if kind == "lfp" else 12.5
    found = asked("rest-voltage", {"battery.chemistry": kind, "reading.voltage": volts, "reading.rest_time": hours})
    assert told in steps(found)
    assert bool(told) == ("still read a little high" in steps(found))


# Volts under load


@pytest.mark.parametrize(("rest", "told"), [(12.8, True), (12.6, True), (12.1, False)])
def test_a_full_battery_that_falls_far_has_a_bad_cell_or_was_not_charged_through(rest: float, told: bool) -> None:
    found = asked("load-voltage", {"reading.voltage": rest, "reading.load_voltage": 9.0, **THRUSTER})
    assert found.verdict == "no"
    assert ("bad cell" in steps(found)) is told


@pytest.mark.parametrize(("celsius", "lowest"), [(21, 9.6), (10, 9.4), (15, 9.48)])
def test_the_load_test_goes_by_temperature(celsius: float, lowest: float) -> None:
    facts = {"reading.load_voltage": 9.5, "ambient.temperature": celsius, "battery.chemistry": "flooded"}
    found = asked("load-voltage", facts, ("detail:load_test",))
    assert figure(found, "lowest_acceptable_voltage").value == pytest.approx(lowest, abs=0.01)
    assert found.verdict == ("yes" if lowest <= 9.5 else "no")


# Lithium and temperature


@pytest.mark.parametrize(("celsius", "allowed"), [(20, 200), (0, 200), (-5, 100), (-25, 0)])
def test_lithium_gives_half_under_freezing_and_nothing_under_minus_20(celsius: float, allowed: float) -> None:
    facts = {
        "battery.chemistry": "lfp",
        "battery.max_current": 200,
        "load.current": 150,
        "ambient.temperature": celsius,
    }
    assert figure(asked("run-check", THRUSTER | facts), "limit_current").value == allowed


@pytest.mark.parametrize(
    ("name", "verdicts"),
    [
        ("charger-size", ("no", "no", "no", "yes")),  # at 3 °C 30 A are too many, as it takes a tenth there
        ("charge-time", ("no", "no", "no", "information")),
        ("charger-setting", ("no", "no", "information", "information")),
    ],
)
@pytest.mark.parametrize("at", range(4))
def test_lithium_is_not_charged_below_freezing(name: str, verdicts: tuple[str, ...], at: int) -> None:
    celsius = (-1, 0, 3, 12)[at]
    facts = {"battery.chemistry": "lfp", "battery.capacity": 100, "charger.current": 30, "ambient.temperature": celsius}
    assert asked(name, facts).verdict == verdicts[at]


@pytest.mark.parametrize(
    ("kind", "celsius", "volts"),
    [
        ("flooded", 35, 14.1),
        ("flooded", 15, 14.7),
        ("flooded", 0, 14.8),  # 15.15 V by the sum, but never over the kind's own highest
        ("agm", 40, 13.95),
        ("gel", 10, 14.4),
        ("agm", 20, None),
        ("agm", 25, None),
        ("lfp", 40, None),
    ],
)
def test_absorption_goes_by_the_temperature_of_the_battery(kind: str, celsius: float, volts: float | None) -> None:
    found = asked("charger-setting", {"battery.chemistry": kind, "ambient.temperature": celsius})
    by_warmth = figure(found, "absorption_by_warmth")
    assert (by_warmth is None) if volts is None else by_warmth.value == pytest.approx(volts)
    assert (
        figure(found, "absorption_voltage").value
        == figure(asked("charger-setting", {"battery.chemistry": kind}), "absorption_voltage").value
    )
    assert ("a sensor on the battery" in steps(found)) is (volts is not None)


# Cable, fuse, alternator


@pytest.mark.parametrize("word", ["bundled with others", "in a shared conduit", "in the loom"])
def test_a_bundle_takes_away_ampacity(word: str) -> None:
    facts = {"load.current": 100, "load.kind": "thruster", "cable.length": 3, "cable.gauge": "4", "bank.voltage": 12}
    assert read(f"4 AWG {word}, is it enough?").says("detail:bundled")
    found = asked("cable-size", facts, cues=("detail:bundled",))
    less = figure(found, "ampacity_in_bundle")
    assert (less.low, less.high) == pytest.approx((96, 112))  # 60 and 70 % of 160 A
    assert "lay it apart, or take a thicker one" in steps(found)
    alone = asked("cable-size", facts)
    assert alone.verdict == found.verdict
    assert figure(alone, "ampacity_in_bundle") is None


@pytest.mark.parametrize("word", ["in a conduit", "through trunking", "in a tube of its own"])
def test_the_two_cables_of_one_circuit_in_a_conduit_are_no_bundle(word: str) -> None:
    assert not read(f"4 AWG {word}, is it enough?").says("detail:bundled")


def test_a_bundle_may_still_be_enough() -> None:
    facts = {"load.current": 60, "load.kind": "thruster", "cable.length": 3, "cable.area": 35, "bank.voltage": 12}
    found = asked("cable-size", facts, cues=("detail:bundled",))
    assert figure(found, "ampacity_in_bundle").low == pytest.approx(126)
    assert "still enough" in steps(found)


@pytest.mark.parametrize(("cca", "amps"), [(650, 1500), (700, 3000), (1100, 3000), (1200, 5000)])
def test_a_fuse_must_break_what_the_bank_can_give(cca: float, amps: float) -> None:
    found = asked("fuse-size", {"battery.cca": cca, "load.current": 200, "cable.gauge": "2/0", **THRUSTER})
    assert figure(found, "interrupting_rating").value == amps


def test_for_lithium_the_maker_states_the_short_circuit_current_else_class_t() -> None:
    found = asked("fuse-size", {"battery.chemistry": "lfp", "load.current": 200, "cable.gauge": "2/0", **THRUSTER})
    assert figure(found, "interrupting_rating") is None
    assert "class T" in steps(found)


@pytest.mark.parametrize("facts", [{"charger.current": 30}, {}])
def test_an_alternator_gives_less_hot_and_much_less_at_idle(facts: dict[str, float]) -> None:
    boat = {"alternator.current": 100, "bank.voltage": 24, "charger.input_voltage": 12, "battery.chemistry": "agm"}
    found = asked("dc-dc", boat | facts, ("thing:dcdc",))
    assert figure(found, "alternator_output_hot").value == pytest.approx(82)
    assert figure(found, "alternator_output_idle").value == pytest.approx(32)
    assert "there the 12 V battery gives the rest" in steps(found)


def test_a_small_converter_is_fed_at_idle_too() -> None:
    boat = {"alternator.current": 100, "charger.current": 10, "charger.input_voltage": 12, "battery.chemistry": "agm"}
    assert "gives the rest" not in steps(asked("dc-dc", boat, ("thing:dcdc",)))


# Storage


@pytest.mark.parametrize(("celsius", "share"), [(20, 1), (30, 2), (10, 0.5), (0, 0.25), (-10, 0.25)])
@pytest.mark.parametrize(("kind", "rate", "low", "high"), [("flooded", 5, 4, 15), ("agm", 3, 1, 5), ("lfp", 3, 1, 4)])
def test_self_discharge_goes_by_temperature(
    kind: str, rate: float, low: float, high: float, celsius: float, share: float
) -> None:
    found = asked("storage", {"battery.chemistry": kind, "ambient.temperature": celsius})
    lost = figure(found, "self_discharge")
    assert (lost.value, lost.low, lost.high) == pytest.approx((rate * share, low * share, high * share))


@pytest.mark.parametrize(("facts", "volts"), [({}, 12.45), ({"bank.voltage": 24}, 24.9)])
def test_the_volts_to_charge_at(facts: dict[str, float], volts: float) -> None:
    found = asked("storage", {"battery.chemistry": "flooded", **facts})
    assert figure(found, "recharge_voltage").value == pytest.approx(volts)


def test_lithium_has_no_volts_to_charge_at() -> None:
    assert figure(asked("storage", {"battery.chemistry": "lfp"}), "recharge_voltage") is None


# Unlike batteries together


@pytest.mark.parametrize(("layout", "verdict"), [("series", "no"), ("parallel", "marginal")])
def test_an_old_and_a_new_battery(layout: str, verdict: str) -> None:
    facts = {"battery.age": (4.0, 0.0), "bank.layout": layout, "battery.chemistry": "agm", "battery.count": 2}
    found = asked("bank-wiring", facts, ("request:may_i",))
    assert found.verdict == verdict
    assert "an old and a new battery" in found.headline


# Side by side


def compared(text: str, name: str) -> dict[str, Any]:
    return next(item for item in answer(text).as_dict()["answers"] if item["topic"] == name)


def sides(found: dict[str, Any]) -> dict[str, str]:
    return {side["label"]: side["verdict"] for side in found["compare"]}


def test_at_two_temperatures_the_worse_one_decides() -> None:
    found = compared("Will an 850 CCA AGM run a 300 A thruster at 20 C and at -10 C?", "run-check")
    assert sides(found) == {"at 20 °C (68 °F)": "yes", "at -10 °C (14 °F)": "marginal"}
    assert found["verdict"] == "marginal"
    assert found["headline"].startswith("Just enough: at -10 °C ")
    assert found["headline"].endswith("at 20 °C: yes.")
    volts = [
        next(item["value"] for item in side["figures"] if item["name"] == "terminal_voltage_at_inrush")
        for side in found["compare"]
    ]
    assert volts[0] == pytest.approx(12.6 - 450 * 2 * (12.6 - 9.58) / 850)  # 9.58 V between the rows of 60 and 70 °F
    assert volts[1] == pytest.approx(12.6 - 450 * 2 * (12.6 - 8.78) / 850)  # 8.78 V between the rows of 20 and 10 °F


def test_the_same_at_both_temperatures_is_told_as_such() -> None:
    found = compared("Will a 1200 CCA AGM run a 300 A thruster at 20 C and at -10 C?", "run-check")
    assert set(sides(found).values()) == {"yes"}
    assert "also" in found["headline"]


def test_lithium_or_agm_for_a_model() -> None:
    found = compared("100 Ah lithium or 700 CCA AGM for the Minnow?", "run-check")
    assert sides(found) == {"100 Ah lithium battery": "needs-facts", "700 CCA AGM battery": "yes"}
    assert found["verdict"] == "yes"
    assert "700 CCA AGM" in found["headline"]
    assert "lithium" in found["headline"]


@pytest.mark.parametrize(("thing", "name"), [("case", "group-size"), ("battery", "bank-size")])
def test_one_31_or_two_24s(thing: str, name: str) -> None:
    found = compared(f"Which {thing} for the Minnow, one group 31 or two group 24s?", name)
    assert found["verdict"] == "information"
    assert list(sides(found)) == ["one group 31", "two group 24 in parallel"]
    one, two = ({item["name"]: item for item in side["figures"]} for side in found["compare"])
    assert (one["usual_cca"]["low"], one["usual_cca"]["high"]) == (650, 1150)
    assert (two["usual_cca"]["low"], two["usual_cca"]["high"]) == (1000, 1600)
    assert (one["width"]["value"], two["width"]["value"]) == (173, 346)
    assert "350 CCA" in found["headline"].replace("\u00a0", " ")


def test_2_0_or_4_0() -> None:
    found = compared("2/0 or 4/0 for a 340 A thruster, 20 ft one way?", "cable-size")
    assert sides(found) == {"2/0 AWG": "no", "4/0 AWG": "yes"}  # 2/0 may carry 330 A
    assert found["headline"].startswith("Take 4/0")
    carried = [
        next(item["value"] for item in side["figures"] if item["name"] == "ampacity") for side in found["compare"]
    ]
    assert carried == [330, 445]


def test_agm_or_lithium() -> None:
    found = compared("AGM or lithium for a bow thruster?", "battery-type")
    assert list(sides(found)) == ["AGM", "Lithium"]
    names = [item["name"] for item in found["compare"][0]["figures"]]
    assert {"life", "usable_share", "self_discharge"} <= set(names)


@pytest.mark.parametrize(
    ("text", "name", "labels", "verdicts"),
    [
        ("800 CCA or 1000 CCA for a 340 A thruster?", "run-check", ["800 CCA", "1000 CCA"], ["marginal", "yes"]),
        ("10 A or 25 A charger for 200 Ah flooded?", "charger-size", ["10 A", "25 A"], ["marginal", "yes"]),
        ("300 A or 400 A fuse for a 240 A thruster on 70 mm2?", "fuse-size", ["300 A", "400 A"], ["yes", "marginal"]),
        ("16 or 50 mm2 for a 150 A thruster over 5 m at 12 V?", "cable-size", ["16 mm²", "50 mm²"], ["no", "yes"]),
        ("50 W or 100 W panel for 200 Ah AGM, 0.2 A drain, covered 2 h of sun?", "solar", ["50 W", "100 W"], None),
    ],
)
def test_two_sizes_put_as_a_choice_stand_side_by_side(
    text: str, name: str, labels: list[str], verdicts: list[str] | None
) -> None:
    found = compared(text, name)
    assert [side["label"].replace("\u00a0", " ") for side in found["compare"]] == labels
    if verdicts:
        assert [side["verdict"] for side in found["compare"]] == verdicts
        assert found["verdict"] in verdicts
        assert len(set(verdicts)) == 1 or labels[1] in found["headline"].replace("\u00a0", " ")


def test_a_range_is_no_choice() -> None:
    for text in ("Will 800 to 1000 CCA run a 340 A thruster?", "Will my 340 or 350 A thruster run on 850 CCA?"):
        assert not compared(text, "run-check")["compare"]


@pytest.mark.parametrize(
    ("text", "labels", "days"),
    [
        ("How long can a full battery stand unused, AGM or flooded?", ["AGM", "wet-cell"], [180, 152]),
        ("How long can a full AGM stand unused at 20 C and at 30 C?", ["20 °C", "30 °C"], [180, 127]),
    ],
)
def test_lay_ups_side_by_side(text: str, labels: list[str], days: list[int]) -> None:
    found = compared(text, "storage")
    assert [side["label"].replace("\u00a0", " ") for side in found["compare"]] == labels
    shown = [
        next(item["value"] for item in side["figures"] if item["name"] == "days_to_recharge")
        for side in found["compare"]
    ]
    assert shown == pytest.approx(days, abs=0.6)


def test_12_v_or_24_v() -> None:
    found = compared("Should I take 12 V or 24 V for a 3 kW thruster?", "bank-size")
    one, two = ({item["name"]: item["value"] for item in side["figures"]} for side in found["compare"])
    assert (one["running_current"], two["running_current"]) == (250, 125)
    assert one["required_cca"] == pytest.approx(2 * two["required_cca"])


def test_run_times_at_two_temperatures_are_told_in_one_short_sentence() -> None:
    found = compared("How long will a 100 Ah AGM run a 20 A load at 20 C and at -10 C?", "run-time")
    assert found["headline"] == "20 °C: about 2 hours to half; -10 °C: about 1 hour to half."


def test_two_kinds_are_laid_up_each_in_its_way() -> None:
    found = compared("How do I store a lithium and an AGM battery over the winter?", "storage")
    told = found["headline"].replace("\u00a0", " ")
    assert "thium: laid up at 50 % of charge" in told
    assert "AGM: laid up at 100 % of charge" in told
    assert told.endswith("look every 90 days.")
    assert {item["value"] for item in found["assumed"] if item["fact"] == "battery.charge"} == {50, 100}
