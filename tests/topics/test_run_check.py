"""Will it run it: lead by volts in the first instant, lithium by its limits."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from service.leadsman import default_desk
from service.reply import Answer
from service.topics.run_check import TOPIC
from tests.building import case
from tests.talks import on, plain, talk

Facts = dict[str, Any]
LEAD = {"battery.chemistry": "agm", "battery.cca": 800}
LITHIUM = {"battery.chemistry": "lfp"}
PAIR = {"battery.max_current": 150, "battery.peak_current": 300, "battery.count": 2, "load.current": 250}
COLD = {"battery.max_current": 300, "battery.peak_current": 600, "load.current": 180, "ambient.temperature": -10}
COLDEST = {"battery.max_current": 900, "battery.peak_current": 900, "load.current": 50, "ambient.temperature": -21}


def asked(facts: Facts, *cues: str) -> Answer:
    return TOPIC.answer(case(facts, cues))


def figures(answer: Answer) -> dict[str, Any]:
    return {figure.name: figure.value for figure in answer.figures}


@pytest.mark.parametrize(
    ("facts", "verdict"),
    [
        ({"battery.cca": 850, "load.current": 340}, "yes"),
        ({"battery.cca": 842, "load.current": 340}, "yes"),  # 8.97 V reads 9.0 V
        ({"battery.cca": 800, "load.current": 340}, "marginal"),
        ({"battery.cca": 745, "load.current": 340}, "marginal"),  # 8.49 V reads 8.5 V
        ({"battery.cca": 700, "load.current": 340}, "no"),
        ({"battery.ca": 1000, "load.current": 300}, "yes"),  # 800 CCA
        ({"battery.cca": 750, "battery.count": 2, "load.current": 400}, "yes"),
        ({"battery.cca": 760, "battery.count": 2, "bank.voltage": 24, "load.current": 280}, "yes"),
        ({"battery.cca": 640, "load.model": "pike"}, "no"),  # the catalogue asks for 650
        ({"battery.cca": 1000, "load.current": 200, "ambient.temperature": -6.67}, "yes"),
        ({"battery.cca": 600, "load.current": 200, "ambient.temperature": -6.67}, "marginal"),
        ({"battery.cca": 2000, "load.current": 200, "ambient.temperature": -30}, "marginal"),  # beyond the chart
        ({"battery.cca": 1000, "load.current": 200, "reading.voltage": 12.3}, "marginal"),
        ({"battery.cca": 1000, "load.current": 200, "reading.voltage": 12.1}, "no"),
        ({"battery.cca": 1000, "load.current": 200, "battery.charge": 45}, "no"),
        ({"battery.cca": 1000, "load.current": 20, "reading.voltage": 9.8}, "no"),
        ({"battery.cca": 1000, "load.current": 20, "reading.voltage": 13.2}, "yes"),
        ({"battery.cca": 1000, "load.current": 200, "reading.voltage": 25.2, "bank.voltage": 24}, "yes"),
    ],
)
def test_lead(facts: Facts, verdict: str) -> None:
    assert asked(facts).verdict == verdict


def test_lead_in_numbers() -> None:
    assert figures(asked({**LEAD, "load.current": 340})) == pytest.approx(
        {"running_current": 340, "inrush_current": 510, "required_cca": 850, "terminal_voltage_at_inrush": 8.775}
    )


def test_the_figures_of_a_24_v_bank_are_the_banks() -> None:
    found = asked({"battery.cca": 760, "battery.count": 2, "bank.voltage": 24, "load.current": 280})
    assert figures(found)["terminal_voltage_at_inrush"] == pytest.approx(2 * (12.6 - 420 * 6 / 760))
    assert "18.0" in found.headline


def test_the_cold_asks_for_more_cca() -> None:
    """Lowest volts 8.911 at -6.67 °C: 300 x 2 x 3.689 / 3.6."""
    found = asked({"battery.cca": 1000, "load.current": 200, "ambient.temperature": -6.67})
    assert figures(found)["required_cca"] == pytest.approx(614.8, abs=0.1)


def test_a_stated_current_beats_the_model_and_a_stated_first_instant_beats_both() -> None:
    found = figures(asked({"battery.cca": 800, "load.model": "pike", "load.peak": 450}))
    assert (found["running_current"], found["inrush_current"]) == (260, 450)
    assert figures(asked({"battery.cca": 800, "load.peak": 450}))["running_current"] == 300


def test_shaft_horsepower_takes_more_than_the_same_watts_on_a_plate() -> None:
    watts = case({"load.power": 2237, "bank.voltage": 12})
    assert watts["load.current"] == pytest.approx(186.4, abs=0.1)


@pytest.mark.parametrize(
    ("facts", "verdict", "word"),
    [
        ({"cable.gauge": "2/0", "cable.length": 6.096, "load.current": 250, "battery.cca": 650}, "marginal", "7.8"),
        ({"cable.gauge": "2", "cable.length": 7.62, "load.current": 320, "battery.cca": 900}, "no", "it loses 23"),
        ({"cable.area": 35, "cable.length": 1.5, "load.current": 230, "battery.cca": 750}, "no", "may carry only"),
        ({"cable.gauge": "4/0", "cable.length": 3, "load.current": 250, "battery.cca": 900}, "yes", "holds"),
    ],
)
def test_a_known_cable_counts(facts: Facts, verdict: str, word: str) -> None:
    found = asked(facts)
    assert found.verdict == verdict
    assert word in found.headline.replace("\u00a0", " ")


def test_the_engines_battery_is_only_just_enough() -> None:
    assert asked({**LEAD, "load.current": 200}, "detail:engine_battery").verdict == "marginal"


@pytest.mark.parametrize(
    ("facts", "verdict", "first"),
    [
        ({}, "needs-facts", "load.current"),
        ({"load.model": "pike"}, "needs-facts", "battery.cca"),
        ({"battery.chemistry": "gel", "battery.capacity": 85, "load.current": 110}, "needs-facts", "battery.cca"),
        ({"battery.duty": "deep-cycle", "battery.capacity": 105, "load.model": "pike"}, "no", "battery.cca"),
        ({**LITHIUM, "load.current": 300}, "needs-facts", "battery.max_current"),
        ({**LITHIUM, "battery.capacity": 300, "load.current": 250}, "needs-facts", "battery.max_current"),
        ({"battery.max_current": 200, "load.current": 160}, "needs-facts", "battery.peak_current"),
        ({"battery.nominal": 12, "bank.voltage": 24, **LEAD, "load.current": 200}, "needs-facts", "battery.count"),
        ({"battery.chemistry": "lithium-other", "load.current": 200}, "needs-facts", "battery.max_current"),
    ],
)
def test_what_cannot_be_known_is_asked_back(facts: Facts, verdict: str, first: str) -> None:
    found = asked(facts)
    assert (found.verdict, found.asks[0].fact) == (verdict, first)


def test_another_lithium_goes_to_a_technician_without_a_figure() -> None:
    found = asked({"battery.chemistry": "lithium-other", "load.current": 200, "battery.capacity": 100})
    assert (found.route, found.figures) == ("technician", ())


@pytest.mark.parametrize(
    ("facts", "verdict"),
    [
        ({"battery.capacity": 100, "load.current": 340}, "no"),
        ({"battery.capacity": 300, "load.current": 80}, "yes"),
        ({"battery.capacity": 14, "battery.peak_current": 600, "load.model": "minnow"}, "no"),
        ({"battery.max_current": 200, "battery.peak_current": 220, "load.current": 160}, "no"),
        ({"battery.max_current": 200, "battery.peak_current": 300, "load.current": 160}, "yes"),
        (PAIR, "marginal"),
        ({"battery.max_current": 150, "load.model": "sturgeon"}, "no"),
        (COLD, "no"),
        (COLDEST, "no"),
    ],
)
def test_lithium(facts: Facts, verdict: str) -> None:
    assert asked({**LITHIUM, **facts}).verdict == verdict


def test_the_limit_of_a_lithium_bank_adds_up_in_parallel_and_not_in_series() -> None:
    parallel = {**LITHIUM, "battery.max_current": 100, "battery.count": 3, "load.current": 280}
    assert figures(asked(parallel))["limit_current"] == 300
    series = {**LITHIUM, "battery.max_current": 150, "battery.count": 2, "load.model": "sturgeon"}
    assert figures(asked(series))["limit_current"] == 150


@pytest.mark.parametrize(
    "facts",
    [
        {"bank.voltage": 12, "load.model": "sturgeon"},
        {"bank.voltage": 24, "load.model": "pike"},
        {"battery.nominal": 12, "battery.count": 1, "bank.voltage": 24, "load.current": 200},
        {"battery.nominal": 12, "battery.count": 2, "bank.layout": "series", "bank.voltage": 12, "load.current": 200},
    ],
)
def test_other_volts_than_the_loads_are_a_no(facts: Facts) -> None:
    found = asked({**LEAD, **facts})
    assert found.verdict == "no"
    assert "needs" in found.headline


def test_of_two_batteries_the_better_one_answers_which() -> None:
    facts = {"battery.cca": (550, 800), "load.current": 240}
    which, one = asked(facts, "request:which"), asked(facts)
    assert [option.verdict for option in which.compare] == ["marginal", "yes"]
    assert (which.verdict, one.verdict) == ("yes", "marginal")


def test_of_two_loads_the_heavier_one_decides() -> None:
    assert asked({"battery.cca": 600, "load.current": (150, 300)}).verdict == "no"


def test_a_small_load_without_a_motor_is_no_question_of_amps() -> None:
    found = asked({"battery.capacity": 100, "battery.chemistry": "agm", "load.current": 4, "load.kind": "electronics"})
    assert found.verdict == "yes"


def test_amps_without_a_name_count_as_cranking_amps_and_are_asked_about() -> None:
    unnamed = case({"battery.ca": 1000, "load.current": 300})
    unnamed.stated = {name: replace(item, text="1000 A") for name, item in unnamed.stated.items()}
    found = TOPIC.answer(unnamed)
    assert (found.verdict, [ask.fact for ask in found.asks]) == ("yes", ["battery.cca"])
    assert asked({"battery.ca": 1000, "load.current": 300}).asks == ()


def test_no_idea_gets_a_test_on_board() -> None:
    assert "5 seconds" in asked({"load.model": "pike"}, "note:no_idea").headline


@pytest.mark.parametrize("battery", [LEAD, {**LITHIUM, "battery.capacity": 100}])
def test_the_picture_shows_the_limits(battery: Facts) -> None:
    plot = asked({**battery, "load.current": 340}).plot
    assert plot is not None
    assert plot["limits"]


@pytest.mark.parametrize(
    "facts",
    [
        {**LEAD, "load.current": 340},
        {**LEAD, "load.current": 600},
        {**LITHIUM, **PAIR},
        {**LITHIUM, **COLD},
        {"load.model": "pike"},
        {"battery.cca": 900, "load.current": 200, "reading.voltage": 12.1},
    ],
)
def test_the_headline_stands_alone_in_30_words(facts: Facts) -> None:
    assert len(asked(facts).headline.split()) <= 30


def test_two_models_on_one_battery_are_asked_about_and_two_that_are_weighed_are_compared() -> None:
    (both,) = default_desk().ask("Will one 100 Ah AGM of 900 CCA run both the Minnow and the Pike?").answers
    assert both.verdict == "needs-facts"
    assert "add up" in both.headline
    (either,) = default_desk().ask("Minnow or Pike, will a 900 CCA battery run it?").answers
    assert figures(either)["running_current"] == 260
    assert [option.label for option in either.compare] == ["the Minnow", "the Pike"]


def test_a_reading_under_load_counts_more_than_the_label() -> None:
    weak = {**LEAD, "load.current": 120, "load.peak": 210, "reading.load_voltage": 10.0}
    assert "was measured, and that counts" in asked(weak).headline
    assert "measured" not in asked({**weak, "reading.load_voltage": 11.5}).headline


def test_one_battery_that_shows_a_cca_has_half_of_the_volts():
    answer = talk("Will one 900 CCA battery run the Sturgeon?").answers[0]
    assert answer.verdict == "no"
    assert "two alike in series make 24" in answer.headline
    assert talk("Will two 900 CCA batteries run the Sturgeon?").answers[0].verdict == "yes"


def test_what_would_change_too_many_volts_is_the_other_way_of_joining_them():
    answer = talk("2 x 12 V 100 Ah AGM in series for a Pike, 850 CCA each?").answers[0]
    told = [item.say for item in answer.would_change]
    assert any("in parallel" in item for item in told)
    assert not any("CCA" in item or "strings" in item for item in told)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("could the thruster run from the house bank?", "It can, if the house bank and a thick cable carry its amps"),
        ("Minnow from the house bank of 2 x 800 CCA, ok?", "Yes: your two 800 CCA batteries"),
    ],
)
def test_off_the_house_bank(text, told):
    assert told in plain(on("run-check", text).headline)


@pytest.mark.parametrize(
    ("text", "start", "asked"),
    [
        ("There is an 80 Ah AGM starter battery on board, 12 V. Will that run the Minnow?",
         "We can't say yet: a starting battery gives large currents, but the Minnow needs 350 CCA", ["battery.cca"]),
        ("will a dual purpose battery of 90 Ah do for the Minnow?", "We can't say yet: the Minnow needs 350 CCA",
         ["battery.cca"]),
        ("will a 90 Ah AGM battery run the Pike?", "We can't say yet: the Pike needs", ["battery.cca", "battery.duty"]),
        ("will a 90 Ah leisure battery run the Pike?", "No: a deep-cycle battery", ["battery.cca"]),
    ],
)  # fmt: skip
def test_what_it_is_made_for_is_not_asked_of_one_that_says_so(text: str, start: str, asked: list[str]) -> None:
    found = on("run-check", text)
    assert plain(found.headline).startswith(start)
    assert [item.fact for item in found.asks] == asked


def test_a_limit_that_the_cold_has_halved_is_told_with_its_cold():
    told = "can a 260 Ah lithium, bms 260 A, turn the Pike at minus 7 C?"
    found = default_desk().ask(told).answers[0]
    assert (found.verdict, "130\u00a0A at -7\u00a0°C" in found.headline) == ("no", True)
    assert any(change.fact == "ambient.temperature" for change in found.would_change)


@pytest.mark.parametrize(
    ("text", "verdict", "asked"),
    [
        ("700 CCA gel for the Pike through the winter, is it enough?", "needs-facts", ["ambient.temperature"]),
        ("will a 900 CCA gel turn the Pike in a hard frost?", "yes", []),
        ("700 CCA gel, stored ashore all winter, is it enough for the Pike?", "yes", []),
        ("700 CCA gel for the Pike through the summer, is it enough?", "yes", []),
    ],
)
def test_a_use_in_the_cold_without_its_degrees_is_no_clear_yes_that_frost_takes_away(text, verdict, asked):
    found = next(item for item in default_desk().ask(text).answers if item.topic == "run-check")
    assert (found.verdict, [item.fact for item in found.asks]) == (verdict, asked)
    cold = any("At 0\u00a0°C" in step.say for step in found.working)
    assert cold == (("winter, is" in text and "stored" not in text) or "frost" in text)


def test_what_it_takes_is_told_where_it_is_asked_of_a_battery_that_will_not_do():
    told = "520 CCA gel on the Pike. It groans. {}"
    assert (
        default_desk().ask(told.format("What should we fit?")).answers[0].headline.endswith("; it takes 650\u00a0CCA.")
    )
    assert "it takes" not in default_desk().ask(told.format("Is that enough?")).answers[0].headline


@pytest.mark.parametrize("tale", ["the Minnow has been worse", "the Minnow is sluggish", "our thruster keeps fading"])
def test_a_motor_that_is_told_to_be_weak_is_measured_though_its_battery_is_enough_on_paper(tale):
    found = (
        default_desk().ask(f"New 500 CCA gel since May for the Minnow, and {tale} since. What can it be?").answers[0]
    )
    assert found.headline.startswith("Enough on paper")
    assert [item.fact for item in found.asks] == ["reading.load_voltage"]


@pytest.mark.parametrize(("cca", "both"), [(750, "both at once: no"), (1200, "")])
def test_a_windlass_told_by_its_watts_beside_a_model_is_a_load_of_its_own(cca, both):
    found = default_desk().ask(f"1.5 kW windlass and the Pike on one {cca} CCA gel, does that work?").answers[0]
    assert (found.verdict, both in found.headline) == ("yes", True)
    assert any("125\u00a0A" in step.say for step in found.working)


def test_the_amps_of_a_load_beside_a_model_are_none_of_the_models():
    found = default_desk().ask("one 700 CCA gel for the Minnow and a 70 A inverter, does it work?").answers[0]
    assert next(item.value for item in found.figures if item.name == "running_current") == 120
    own = default_desk().ask("one 700 CCA gel for the Minnow, which draws 130 A, does it work?").answers[0]
    assert next(item.value for item in own.figures if item.name == "running_current") == 130


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("Can I run my 12 V thruster, 160 A, on the 24 V bank?", "no"),
        ("The boat is 24 V and the plate on the windlass says 12 volts and 90 A. Hook it up anyway?", "no"),
        ("12 V thruster of 150 A, 12 V AGM of 850 CCA for it, the house is 24 V. Will it run?", "yes"),
        ("my windlass is 12 V, would it pull harder on 24 V", "no"),
        ("My bow thruster is 12 volts. Would it go harder on 24 volts?", "no"),
        ("can a 24 V windlass run on 12 V", "no"),
        ("can I run my 24 V thruster on 24 V", "needs-facts"),
    ],
)
def test_a_motor_of_12_v_is_not_put_on_more_volts_than_its_plate_says(text: str, verdict: str) -> None:
    assert on("run-check", text).verdict == verdict


@pytest.mark.parametrize(
    "text",
    [
        "Would our usual battery do a stern thruster on the 44s?",
        "does the stock battery do for a windlass",
        "Could your standard battery cope with the new bow thruster?",
    ],
)
def test_whether_the_battery_that_is_there_does_for_a_load(text):
    assert [(found.topic, found.verdict) for found in talk(text).answers] == [("run-check", "needs-facts")]


def test_how_big_it_must_be_is_no_question_of_one_that_is_there():
    assert [found.topic for found in talk("How big a battery will do the new thruster on the 44s?").answers] == [
        "bank-size"
    ]


@pytest.mark.parametrize(
    ("text", "verdict", "head"),
    [
        ("got a 950 amp battery, will it turn a 280 A thruster?", "yes", "your 950 A battery, if those are"),
        (
            "My battery says 900 amps on it. Enough for a 300 A thruster?",
            "marginal",
            "your 900 A battery, if those are",
        ),
        ("Will my battery of 950 MCA turn a 280 A thruster?", "yes", "your 760 CCA battery"),
    ],
)
def test_amps_without_a_name_are_told_as_they_were_typed(text, verdict, head):
    found = on("run-check", text)
    assert found.verdict == verdict
    assert head in plain(found.headline)
    assert bool(found.asks) == ("if those are" in head)


@pytest.mark.parametrize(
    ("reading", "head"),
    [
        ("it reads 12.7", "We can't say yet: 12.7 V is a battery at rest; now read it while the Minnow runs"),
        ("it reads 10.6 while it runs", "We can't say yet: 10.6 V while the Minnow runs is a good sign, but no proof"),
        ("it reads 8.9 while it runs", "Not likely: a lead battery in order holds 9.6 V while the Minnow runs"),
    ],
)
def test_without_a_label_a_test_on_board_decides(reading, head):
    thread = ["will the battery up front run the Minnow", "no idea, the label has come off", "it is a group 27"]
    assert on("run-check", *thread).asks[0].fact == "reading.load_voltage"
    found = talk(*thread, reading).answers[0]
    assert plain(found.headline).startswith(head)
    assert found.verdict == "needs-facts"
