"""How batteries, loads, charges and temperatures are put into words."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from service.case import Case
from service.judgements import charge_volts, charging, frost, fusing, supply
from service.reply import Answer, Figure
from service.rules.readings import Charge, charge_of
from service.sentences import at_rest, wording
from service.topics import topic
from tests.building import case

Facts = dict[str, Any]


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


def steps(known: Case) -> list[str]:
    return [plain(fired.say) for fired in known.trace if fired.say]


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (100, "100 %"), (75, "75 %"), (74.9, "just under 75 %"), (72.6, "just under 75 %"), (72.4, "70 %"),
        (67.6, "70 %"), (52, "50 %"), (50, "50 %"), (49.9, "just under 50 %"), (47.4, "45 %"), (33, "35 %"),
        (3, "5 %"), (2, "under 5 %"), (0, "0 %"),
    ],
)  # fmt: skip
def test_a_charge_to_five_percent_never_lifted_over_a_limit(value: float, words: str) -> None:
    assert plain(wording.percent(value)) == words


@pytest.mark.parametrize(
    ("found", "words"),
    [
        (Charge(40, 13.1, "lfp", (), 29, 62), "30 to 60 %"),
        (Charge(70, 13.2, "lfp", (), 43, 88), "45 to 90 %"),
        (Charge(39, 13.0, "lfp", ()), "just under 40 %"),
        (Charge(19, 12.8, "lfp", ()), "just under 20 %"),
        (Charge(74, 12.44, "flooded", ()), "just under 75 %"),
        (Charge(39, 12.1, "flooded", ()), "40 %"),
    ],
)
def test_how_full_in_figures(found: Charge, words: str) -> None:
    assert plain(wording.charge(found)) == words


@pytest.mark.parametrize(
    ("found", "words"),
    [
        (Charge(97.5, 12.63, "flooded", ()), "is full"),
        (Charge(97.4, 12.63, "flooded", ()), "is only about 95 % full"),
        (Charge(2.4, 11.9, "flooded", ()), "is empty"),
        (Charge(2.5, 11.9, "flooded", ()), "is only about 5 % full"),
        (Charge(99, 13.4, "lfp", (), 90, 100), "is only 90 to 100 % full"),
    ],
)
def test_how_full_at_the_end_of_a_sentence(found: Charge, words: str) -> None:
    assert plain(wording.full(found, "only ")) == words


@pytest.mark.parametrize(
    ("chemistry", "capital", "words"),
    [
        ("agm", True, "An AGM"), ("agm", False, "an AGM"), ("gel", True, "A gel"), ("flooded", False, "a wet-cell"),
        (None, True, "A lead"), ("lead", False, "a lead"),
    ],
)  # fmt: skip
def test_a_kind_with_its_article(chemistry: str | None, capital: bool, words: str) -> None:
    assert wording.a_kind(case({"battery.chemistry": chemistry} if chemistry else {}), capital) == words


@pytest.mark.parametrize(
    ("each", "kind", "flat"),
    [
        (10.49, "flooded", True), (10.5, "flooded", False), (10.3, "agm", True),
        (9.99, "lfp", True), (10.0, "lfp", False), (10.3, "lfp", False),
    ],
)  # fmt: skip
def test_deeply_flat(each: float, kind: str, flat: bool) -> None:
    assert charge_of(each, kind).flat is flat


@pytest.mark.parametrize(
    ("volts", "each", "kind", "step"),
    [
        (12.45, 12.45, "flooded", "12.45 V is about 75 % by the wet-cell table"),
        (25.2, 12.6, "agm", "12.6 V for each 12 V is about 75 % by the AGM table"),
        (13.1, 13.1, "lfp", "13.1 V is 30 to 60 % by the lithium table"),
    ],
)
def test_from_volts_to_charge(volts: float, each: float, kind: str, step: str) -> None:
    assert plain(at_rest.charge_step(volts, charge_of(each, kind))) == step


@pytest.mark.parametrize(
    ("facts", "name"),
    [
        ({"load.model": "pike"}, "the Pike"),
        ({"load.kind": "windlass"}, "your windlass"),
        ({"load.kind": "electronics"}, "your load"),
        ({"load.kind": "motor"}, "your load"),
        ({}, "your thruster"),
        ({"load.peak": 500}, "your thruster"),
        ({"load.time": 3600, "load.current": 99}, "your load"),
        ({"load.time": 3600, "load.current": 100}, "your thruster"),
    ],
)
def test_the_load_by_name(facts: Facts, name: str) -> None:
    assert supply.load_name(case(facts)) == name


@pytest.mark.parametrize(
    ("facts", "does"),
    [
        ({}, "your battery holds"),
        ({"battery.cca": 800, "battery.chemistry": "agm"}, "your 800 CCA AGM battery holds"),
        ({"battery.capacity": 100, "battery.chemistry": "lfp"}, "your 100 Ah lithium battery holds"),
        ({"battery.max_current": 100}, "your lithium battery holds"),
        ({"battery.cca": 750, "battery.count": 2}, "your two 750 CCA batteries in parallel hold"),
        (
            {"battery.cca": 750, "battery.count": 2, "bank.layout": "series"},
            "your two 750 CCA batteries in series hold",
        ),
        (
            {"battery.cca": 750, "battery.count": 4, "bank.layout": "series-parallel"},
            "your four 750 CCA batteries in series and in parallel hold",
        ),
        ({"battery.count": 12, "battery.capacity": 100}, "your 12 100 Ah batteries in parallel hold"),
    ],
)
def test_the_bank_by_name(facts: Facts, does: str) -> None:
    assert plain(supply.does(case(facts), "hold")) == does


@pytest.mark.parametrize(
    ("charge", "words"),
    [(100, "it is full"), (97, "it is about 95 % full"), (50, "it is about 50 % full"), (2, "it is flat")],
)
def test_why_it_freezes_there(charge: float, words: str) -> None:
    found = frost.point_of(case({"battery.chemistry": "agm", "battery.charge": charge}))
    assert found is not None
    assert plain(found[1]) == words


@pytest.mark.parametrize(
    ("chemistry", "share", "low", "high"),
    [("flooded", "10 to 25 %", 10, 25), ("agm", "10 to 30 %", 10, 30), ("gel", "10 to 20 %", 10, 20),
     ("lfp", "20 to 50 %", 20, 50)],
)  # fmt: skip
def test_the_current_that_suits_and_why(chemistry: str, share: str, low: float, high: float) -> None:
    known = case({"battery.chemistry": chemistry})
    found = charging.span(known, chemistry, 100)
    assert (found.low, found.high) == (low, high)
    assert steps(known)[0].startswith(f"{share} of 100 Ah of ")
    assert steps(known)[0].endswith(f"is {low} to {high} A")


@pytest.mark.parametrize(("celsius", "high"), [(1, 10), (5, 10), (5.5, 20), (10, 20), (11, 50)])
def test_lithium_takes_less_in_the_cold(celsius: float, high: float) -> None:
    known = case({"battery.chemistry": "lfp", "ambient.temperature": celsius})
    assert charging.span(known, "lfp", 100).high == high
    assert any("lithium takes at most" in step for step in steps(known)) is (high < 50)


def test_a_charge_in_the_cold_says_why_not() -> None:
    known = case({"battery.chemistry": "lfp", "battery.capacity": 100, "ambient.temperature": -3})
    answer = charging.cold_answer(topic("charger-size"), known)
    assert (answer.verdict, [change.value for change in answer.would_change]) == ("no", [1.0])
    assert any("plates metal" in step for step in steps(known))


@pytest.mark.parametrize(
    ("celsius", "aim", "way"),
    [
        # 14.4 V, 0.030 V less for each degree over 25 °C; in the cold never over 14.8 V
        (35, 14.1, "down to 14.1 V"),
        (26, 14.37, "down to 14.4 V"),
        (15, 14.7, "up to 14.7 V; without one leave it"),
        (0, 14.8, "up to 14.8 V; without one leave it"),
        (25, None, None),
        (16, None, None),
        (None, None, None),
    ],
)
@pytest.mark.parametrize("volts", [12, 24])
def test_a_sensor_on_a_warm_or_cold_battery(
    celsius: float | None, aim: float | None, way: str | None, volts: float
) -> None:
    known = case({"bank.voltage": volts} | ({} if celsius is None else {"ambient.temperature": celsius}))
    found = {item.name: item.value for item in charge_volts.figures(known, "agm")}
    assert found["absorption_voltage"] == pytest.approx(14.4 * volts / 12)
    assert found.get("absorption_by_warmth") == (None if aim is None else pytest.approx(aim * volts / 12))
    assert any(fired.kind == "source" and fired.cites for fired in known.trace)
    if way and volts == 12:
        assert steps(known)[-1].endswith(way)


@pytest.mark.parametrize(
    ("put", "chemistry", "verdict"),
    [
        (charge_volts.Put(14.8, False), "agm", "yes"),
        (charge_volts.Put(14.9, False), "agm", "no"),
        (charge_volts.Put(14.4, True), "agm", "no"),  # held all the time
        (charge_volts.Put(13.5, True), "agm", "yes"),
        (charge_volts.Put(14.0, False), "agm", "marginal"),
        (charge_volts.Put(13.0, True), "agm", "marginal"),
        (charge_volts.Put(14.5, False), "gel", "no"),
        (charge_volts.Put(14.6, False), "lfp", "yes"),
    ],
)
def test_volts_of_a_charger(put: charge_volts.Put, chemistry: str, verdict: str) -> None:
    assert charge_volts.verdict_of_volts(put, chemistry) == verdict


@pytest.mark.parametrize(
    ("setting", "chemistry", "verdict"),
    [("agm", "agm", "yes"), ("flooded", "gel", "no"), ("agm", "lfp", "no"), ("gel", "agm", "marginal"),
     ("lfp", "flooded", "marginal")],
)  # fmt: skip
def test_setting_of_a_charger(setting: str, chemistry: str, verdict: str) -> None:
    assert charge_volts.verdict_of_setting(setting, chemistry) == verdict


@pytest.mark.parametrize(
    ("facts", "apart"),
    [
        ({"charger.voltage": 24, "battery.nominal": 12}, (24, 12)),
        ({"charger.voltage": 28.8, "battery.nominal": 12}, (24, 12)),
        ({"charger.voltage": 14.4, "battery.nominal": 12}, None),
        ({"charger.voltage": 12, "battery.nominal": 24}, None),
        ({"charger.voltage": 12, "battery.nominal": 6}, None),
        ({"charger.voltage": 24, "battery.nominal": 12, "battery.count": 2, "bank.layout": "series"}, None),
        ({"charger.voltage": 24, "battery.nominal": 12, "battery.count": 2}, None),
        ({"bank.voltage": 24, "battery.nominal": 12, "battery.count": 1}, (24, 12)),
        ({"charger.voltage": 24}, None),
    ],
)
def test_a_charger_of_more_volts_than_the_battery(facts: Facts, apart: tuple[float, float] | None) -> None:
    assert charge_volts.systems_apart(case(facts)) == apart


@pytest.mark.parametrize(
    ("facts", "each"),
    [
        ({"charger.voltage": 14.4}, 14.4),
        ({"charger.voltage": 28.8}, 14.4),
        ({"charger.voltage": 12}, None),  # its system, not what it puts out
        ({"charger.voltage": 24}, None),
        ({"charger.voltage": 36}, None),
        ({"charger.voltage": 48}, None),
        ({"reading.voltage": 14.4, "reading.state": "charging"}, 14.4),
        ({"reading.voltage": 14.4}, None),
        ({}, None),
    ],
)
def test_what_a_charger_puts_out(facts: Facts, each: float | None) -> None:
    found = charge_volts.put_out(case(facts))
    assert (found and found.each) == each


@pytest.mark.parametrize(
    ("chemistry", "amps", "verdict", "unregulated"),
    [
        ("flooded", 9.5, "yes", "yes"),  # 10 to 25 A, 5 % below is let pass
        ("flooded", 9.4, "marginal", "marginal"),
        ("flooded", 25, "yes", "yes"),
        ("flooded", 30, "marginal", "no"),
        ("flooded", 37.5, "marginal", "no"),
        ("flooded", 37.6, "no", "no"),
        ("agm", 45, "marginal", "no"),
        ("agm", 45.1, "no", "no"),
        ("gel", 20, "yes", "yes"),
        ("gel", 20.1, "no", "no"),
        ("lfp", 19, "yes", "yes"),
        ("lfp", 50.1, "no", "no"),
    ],
)
def test_a_charger_for_100_amp_hours(chemistry: str, amps: float, verdict: str, unregulated: str) -> None:
    span = charging.span(case({}), chemistry, 100)
    assert (span.verdict(amps), span.verdict(amps, True)) == (verdict, unregulated)


@pytest.mark.parametrize(("amps", "maintains"), [(4.9, True), (5, False), (10, False)])
def test_a_charger_that_only_maintains(amps: float, maintains: bool) -> None:
    assert charging.span(case({}), "flooded", 100).maintains(amps) is maintains


@pytest.mark.parametrize(
    ("cues", "verdict", "words"),
    [
        ((), "yes", "Yes"),
        (("detail:asks_bad",), "yes", "No"),
        (("detail:asks_bad", "detail:asks_good"), "yes", "Yes"),
        (("detail:asks_bad", "request:what_is"), "yes", "Nothing by this reading"),
        (("detail:asks_bad", "request:what_is"), "no", "Too low"),
        (("detail:asks_bad",), "no", "Yes"),
        (("request:what_is",), "no", "No, not yet"),
        ((), "information", "Too early to say"),
    ],
)
def test_the_first_words(cues: tuple[str, ...], verdict: str, words: str) -> None:
    assert wording.opening(case({}, cues), verdict) == words


@pytest.mark.parametrize(
    ("charge", "kind", "told"),
    [
        (90, "flooded", False),
        (91, "flooded", True),
        (59, "flooded", True),
        (91, "lfp", False),
        (None, "flooded", False),
    ],
)
def test_a_monitor_that_does_not_fit(charge: float | None, kind: str, told: bool) -> None:
    known = case({} if charge is None else {"battery.charge": charge})
    at_rest.note_monitor(known, Charge(75, 12.45, kind, ("od1002",)))
    assert ("resting volts count" in "".join(steps(known))) is told


@pytest.mark.parametrize(
    ("kind", "hours", "told"),
    [
        ("flooded", 5, True),
        ("flooded", 6, False),
        ("agm", 2, True),
        ("agm", 3, False),
        ("lfp", 1, False),
        ("agm", 0, False),
    ],
)
def test_a_short_rest(kind: str, hours: float, told: bool) -> None:
    known = case({"reading.rest_time": hours})
    at_rest.note_rest(known, Charge(75, 12.45, kind, ("od1002",)))
    assert ("a reading counts after" in "".join(steps(known))) is told


@pytest.mark.parametrize(
    ("celsius", "words"),
    [(5, "0.02 V lower"), (15, "0.01 V lower"), (16, None), (34, None), (35, "0.01 V higher"), (45, "0.02 V higher")],
)
def test_a_cold_or_warm_reading(celsius: float, words: str | None) -> None:
    known = case({"ambient.temperature": celsius})
    at_rest.note_rest(known, Charge(75, 12.45, "flooded", ("od1002",)))
    assert words in "".join(steps(known)) if words else steps(known) == []


def test_what_the_second_case_used_counts_as_of_the_second() -> None:
    known = case({"battery.capacity": (100, 200), "battery.chemistry": "agm"})
    other = known.others()
    assert (other["battery.capacity"], other["battery.chemistry"]) == (200, "agm")
    other.step("the second one")
    known.follow_other(other)
    assert {key: (item.value, item.of) for key, item in known.used.items()} == {("battery.capacity", 2): (200, 2)}
    assert "the second one" in steps(known)


def test_the_fuse_is_worked_out_in_words() -> None:
    known = case({"load.current": 340, "cable.gauge": "4/0"})
    found = fusing.ratings(known)
    # 1.25 x 340 A = 425 A; 4/0 carries 445 A at 105 °C, and 1.5 x that is 667.5 A
    assert (found.load, found.cable, found.most) == (450, 450, 600)
    told = "\n".join(steps(known))
    assert "1.25 x 340 A = 425 A, so the fuse is at least 450 A" in told
    assert "1.5 x 445 A = 668 A, so the most is 600 A" in told


@pytest.mark.parametrize(
    ("chemistry", "called"),
    [
        ("agm", "an AGM battery"),
        ("gel", "a gel battery"),
        ("flooded", "a wet-cell battery"),
        ("lfp", "a lithium battery"),
    ],
)
def test_a_battery_with_its_article(chemistry: str, called: str) -> None:
    assert charging.called(chemistry) == called


@pytest.mark.parametrize(
    ("charge", "words"),
    [(97.5, "full"), (97.4, "about 95 % full"), (50, "about 50 % full"), (2.5, "about 5 % full"), (2.4, "empty")],
)
def test_one_of_two_batteries_in_a_few_words(charge: float, words: str) -> None:
    found = Answer("rest-voltage", "yes", "", figures=(Figure("state_of_charge", "", charge, "%"),))
    assert plain(at_rest.summary(found)) == words
    assert at_rest.summary(replace(found, verdict="information")) == "too high for a rested battery"
    assert at_rest.summary(replace(found, figures=())) == "not clear"


@pytest.mark.parametrize(
    ("volts", "kind", "verdict", "asked", "parts"),
    [
        (12.6, "flooded", "yes", False, ("Yes: 12.6 V at rest is a good reading", "about 95 % full.")),
        (12.6, "flooded", "yes", True, ("Yes: 12.6 V", "; an AGM would want a charge.")),
        (12.3, "flooded", "marginal", False, ("Only just: 12.3 V at rest means", "so charge it soon.")),
        (
            12.1,
            "flooded",
            "no",
            False,
            ("No, not yet: 12.1 V at rest means", "only about 30 % full, so charge it today."),
        ),
        (12.9, "lfp", "no", False, ("No, not yet: 12.9 V", "so charge it soon.")),
        (10.2, "flooded", "no", False, ("is deeply flat", "a test after charging tells.")),
        (9.8, "lfp", "no", False, ("is deeply flat", "ask its maker before you charge it.")),
        (13.4, "flooded", "information", False, ("Too early to say: 13.4 V on charge", "hours of rest.")),
    ],
)
def test_the_answer_to_a_reading(volts: float, kind: str, verdict: str, asked: bool, parts: tuple[str, str]) -> None:
    known = case({"battery.chemistry": kind})
    head = plain(at_rest.headline(known, volts, charge_of(volts, kind), verdict, asked))
    assert all(part in head for part in parts), head


@pytest.mark.parametrize(
    ("each", "ranged"), [(12.99, False), (13.0, True), (13.4, True), (13.41, False), (13.7, False)]
)
def test_the_flat_part_of_lithium_gets_a_range(each: float, ranged: bool) -> None:
    assert (charge_of(each, "lfp").low is not None) is ranged
    assert (charge_of(each, "lfp").high is not None) is ranged
