"""A label typed as it stands: what the battery is good for, and what contradicts itself."""

from __future__ import annotations

import pytest

from service.leadsman import Leadsman

DESK = Leadsman()
ORDINARY = "12V 100Ah/20HR CCA 800A MCA 1000A RC 185MIN GRP31 62lbs"


def answer(text):
    (found,) = DESK.ask(text).answers
    return found


def test_the_ratings_in_plain_words_and_what_follows():
    found = answer(ORDINARY)
    assert (found.topic, found.verdict) == ("battery-duty", "information")
    assert found.headline.replace("\u00a0", " ") == (
        "A 12 V lead battery of 100 Ah and 800 CCA: it suits the Minnow, the Pike and the Sturgeon (two in series)."
    )
    assert {item.name: item.value for item in found.figures} == {"charger_current_low": 10, "charger_current_high": 25}
    assert [(item.label, item.verdict) for item in found.compare] == [
        ("Minnow", "yes"), ("Pike", "yes"), ("two in series, Sturgeon", "yes")]  # fmt: skip
    told = " ".join(step.say for step in found.working).replace("\u00a0", " ")
    for words in ("100 Ah: 5 A for 20 hours", "800 A for 30 seconds at -18 °C", "25 A for 185 minutes",
                  "185 min of reserve would be about 105 Ah by Peukert's law, which agrees with 100 Ah"):  # fmt: skip
        assert words in told
    assert all(step.cites for step in found.working)
    wanted = {f"battery.{name}" for name in ("capacity", "cca", "ca", "reserve", "group", "weight", "nominal")}
    assert wanted <= {item.fact for item in found.understood}


@pytest.mark.parametrize("model", ["Minnow", "Pike", "Sturgeon"])
@pytest.mark.parametrize(
    "label", [ORDINARY, "GROUP 27 DEEP CYCLE 12V 90AH 160 RC 600 MCA", "12V 70AH AGM 480CCA 62lbs"]
)
def test_a_model_is_judged_as_in_its_own_question(label, model):
    side = next(item for item in answer(label).compare if model in item.label)
    many = "two in series, " if model == "Sturgeon" else ""
    asked = DESK.ask(f"will it run the {model}? {many}{label}").answers
    assert next(item for item in asked if item.topic == "run-check").verdict == side.verdict


@pytest.mark.parametrize(
    ("label", "facts"),
    [
        ("LIFEPO4 12.8V 100AH 1280WH BMS 100A PEAK 200A 5S", (12, 100, 100, 200)),
        ("12.8V 200Ah LiFePO4 150A continuous, 300A peak", (12, 200, 150, 300)),
        ("LiFePO4 12.8V 100Ah max. continuous discharge current 100A max. pulse discharge 280A (5s) "
         "charge voltage 14.6V max. charge current 50A", (12, 100, 100, 280)),
        ("LiFePO4 battery 25.6V 100Ah 2560Wh 100A BMS", (24, 100, 100, None)),
        ("24V 50Ah LiFePO4 1280Wh continuous discharge 50A peak discharge 100A", (24, 50, 50, 100)),
        ("12V AGM 110Ah C20 100Ah C10 700CCA", (12, 110, None, None)),
    ],
)  # fmt: skip
def test_each_number_of_a_label_by_the_word_beside_it(label, facts):
    found = {item.fact: item.value for item in answer(label).understood}
    names = ("battery.nominal", "battery.capacity", "battery.max_current", "battery.peak_current")
    assert tuple(found.get(name) for name in names) == facts
    assert {"load.current", "load.peak", "charger.voltage", "load.time"}.isdisjoint(found)


@pytest.mark.parametrize(
    ("label", "words"),
    [
        ("12V 100Ah 800CCA 1500MCA", "800 CCA would be about 1000 MCA, and it says 1500"),
        ("12V 100Ah 800CCA 700MCA", "and it says 700"),
        ("12V 100Ah 800CCA RC 90min", "90 min of reserve would be about 58 Ah, and it says 100 Ah"),
        ("LiFePO4 12.8V 100Ah 2560Wh 100A", "100 Ah would be about 1280 Wh, and it says 2560 Wh"),
        ("LiFePO4 12.8V 100Ah 1280Wh BMS 200A peak 100A", "100 A for a few seconds is less than 200 A all the time"),
        ("LiFePO4 12V 100Ah 600Wh 50A continuous discharge", "100 Ah would be about 1280 Wh, and it says 600 Wh"),
    ],
)
def test_ratings_that_contradict_each_other_go_to_a_technician(label, words):
    reply = DESK.ask(label)
    assert words in reply.answers[0].headline.replace("\u00a0", " ")
    assert reply.triage.route == "technician"
    assert reply.answers[0].compare == ()


@pytest.mark.parametrize(
    "label",
    ["12V 100Ah 800CCA 1040MCA", "12V 100Ah 800CCA 960MCA", "12V 100Ah 800CCA RC 160min", "LiFePO4 12V 100Ah 1200Wh"],
)
def test_labels_in_order(label):
    assert "contradicts" not in answer(label).headline


@pytest.mark.parametrize(
    ("label", "words", "asks"),
    [
        ("6V 225Ah GC2 RC 447 min deep cycle 62 lbs", "without a CCA on its label", "battery.cca"),
        ("12V 100Ah 31kg GRP31 1200Wh", "whether it is lead or lithium", "battery.chemistry"),
        ("LiFePO4 12.8V 100Ah 1280Wh", "current limits decide", "battery.max_current"),
    ],
)
def test_what_the_label_does_not_say_is_asked(label, words, asks):
    found = answer(label)
    assert words in found.headline
    assert found.asks[0].fact == asks


@pytest.mark.parametrize(
    "text",
    [
        f"{ORDINARY}. Is it good for the Pike?",
        f"{ORDINARY}, how long to charge at 10 A",
        f"{ORDINARY} reads 12.4",
        "12V 100Ah AGM",
        "CCA 800A MCA 1000A, convert",
        "12V 100Ah 800CCA against 12V 90Ah 700CCA",
        f"{ORDINARY} and it is swollen",
        "12v 100ah lifepo4 100a",
        "100 ah lithium 12.8v 1280wh 80a continuous for 20 min",
        "LiFePO4 12.8V 100Ah 1280Wh 100A peak, thruster 340 A",
        "LiFePO4 12.8V 100Ah 1280Wh 100A peak at -5 C",
    ],
)
def test_anything_asked_or_feared_is_no_label(text):
    assert not any("as it stands" in line for line in DESK.ask(text).why)
