"""The house's own rules in the answers: told and cited on every surface, tightening, never loosening."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

import pytest

from service.cli import main
from service.house import DEMO, load
from service.house.check_rules import TERMS, topics
from service.house_rules.by_house import CONCERNED
from service.house_rules.hints import hints
from service.house_rules.limits import BOUNDS
from service.inbox.drafts import Writer
from service.inbox.mailbox import Item
from service.inbox.sorting import Sorter
from service.leadsman import Leadsman
from service.render.as_text import as_text
from service.reply import HOUSE_RULES
from service.topics import names
from service.turns.thread import Signer
from service.web import create_app
from tests.inbox_desk import mail, plain_of, read_back

AT = datetime(2026, 11, 24, 9, 41, tzinfo=UTC)
SOUND = DEMO.read_text(encoding="utf-8")
ADVISER = """
[[policy]]
say = "On the Sturgeon we take lithium only after our adviser has seen its data sheet."
models = ["Sturgeon"]
chemistries = ["lfp"]
adviser = true
"""
ADVISED = "On the Sturgeon we take lithium only after our adviser has seen its data sheet."
LITHIUM_FOR_IT = "Will two 400 Ah lithium in series, 400 A continuous and 600 A peak, run the Sturgeon?"
ENOUGH_AH = """
[[policy]]
say = "We ask for 100 Ah or more on the Pike."
models = ["Pike"]
least = { "battery.capacity" = 100 }
"""
SOON = """
[[policy]]
say = "We ask you to look at a laid-up battery every 60 days."
topics = ["storage"]
most = { check_interval = 60 }
"""
LESS_VOLTS = """
[[policy]]
say = "We charge AGM with 14.5 V at most."
topics = ["charger-setting"]
chemistries = ["agm"]
most = { absorption_voltage = 14.5 }
"""


@pytest.fixture
def file(tmp_path):
    """Write a house file: the demo with parts replaced and others added."""

    def write(added: str = "", **replaced: str) -> Path:
        text = SOUND
        for part in replaced.values():
            old, new = part.split(" -> ")
            assert old in text
            text = text.replace(old, new, 1)
        path = tmp_path / "house.toml"
        path.write_text(text + added, encoding="utf-8")
        return path

    return write


@pytest.fixture
def ask(file):
    """Ask a desk under the demo house so changed; the one answer, or that of a topic."""

    def answer(text, added="", topic="", **replaced):
        found = Leadsman(load(file(added, **replaced))).ask(text).answers
        return next(item for item in found if not topic or item.topic == topic)

    return answer


def told(answer):
    return [step.say.replace("\u00a0", " ") for step in answer.working if HOUSE_RULES in step.cites]


def plain(answer):
    return answer.headline.replace("\u00a0", " ")


def value(answer, name):
    return next(item for item in answer.figures if item.name == name)


# In words, on every surface


def test_a_rule_is_told_with_the_answers_it_applies_to_and_cited_as_the_houses(ask):
    found = ask("Will my 800 CCA AGM run the Pike?")
    assert told(found) == ["We ask for a battery of its own for each thruster."]
    cite = next(item for item in found.cites if item.id == HOUSE_RULES)
    assert (cite.kind, cite.title, cite.locator) == ("house", "Otterholm Thrusters house rules", "rule 1")
    assert told(ask("Will my 800 CCA AGM run a 260 A thruster?")) == []  # no model of the house
    assert told(ask("What fuse for the Pike?")) == []  # no topic of the rule


def test_the_rule_stands_in_text_page_mail_and_json_alike(file, tmp_path):
    path = file(ADVISER)
    house = load(path)
    desk = Leadsman(house, Signer("s"))
    reply = desk.ask(LITHIUM_FOR_IT)
    assert f"Not yet: o{ADVISED[1:]}" in " ".join(as_text(reply).split())
    client = create_app(house=path, data=tmp_path / "data").test_client()
    json = client.post("/api/ask", json={"text": LITHIUM_FOR_IT}).get_json()
    (answer,) = json["answers"]
    assert (answer["verdict"], json["triage"]["route"]) == ("needs-facts", "technician")
    assert {"say": ADVISED, "cites": [HOUSE_RULES]} in answer["working"]
    page = client.post("/", data={"text": LITHIUM_FOR_IT}).get_data(as_text=True)
    assert "Not yet: on the Sturgeon we take lithium only after our adviser" in page
    assert "Otterholm Thrusters house rules" in page
    sorted_ = Sorter(desk).sort(Item("file", "x", lambda: mail(LITHIUM_FOR_IT)))
    draft = read_back(Writer(house, "desk@x.example", lambda: AT).write(sorted_))
    assert "on the Sturgeon we take lithium only after our adviser" in " ".join(plain_of(draft).split())
    html = draft.get_body(("html",)).get_content()
    assert "You reach us by a reply to this message, Monday to Friday, 8:00 to 16:00." in html


def test_a_rule_that_is_no_headline_is_noted_on_the_page_and_told_once(file, tmp_path):
    client = create_app(house=file(), data=tmp_path / "data").test_client()
    text = "Will my 800 CCA AGM run the Pike? And which battery for the Minnow?"
    page = client.post("/", data={"text": text}).get_data(as_text=True)
    assert page.count("We ask for a battery of its own for each thruster.") == 1
    assert "<h3>Please note</h3>" in page
    said = as_text(Leadsman().ask(text))
    assert said.count("Please note: We ask for a battery of its own") == 1


def test_a_word_on_a_model_and_a_disclaimer(ask):
    note = 'name = "Pike" -> name = "Pike"\nnote = "The Pike is for boats up to 12 m."'
    disclaimer = '# disclaimer = " -> disclaimer = "'
    found = ask("What fuse for the Pike?", note=note, disclaimer=disclaimer)
    assert told(found) == [
        "The Pike is for boats up to 12 m.",
        "We have not seen your boat: this is advice from a distance.",
    ]
    assert told(ask("What fuse for the Minnow?", note=note)) == []
    assert told(ask("Where is my order?", disclaimer=disclaimer)) == [
        "You reach us by a reply to this message, Monday to Friday, 8:00 to 16:00."
    ]


def test_nothing_stands_between_a_danger_and_its_first_actions(ask):
    disclaimer = '# disclaimer = " -> disclaimer = "'
    everywhere = '[[policy]]\nsay = "We like tidy lockers."\ntopics = ["all"]\n'
    assert told(ask("My battery is swollen and hot", everywhere, disclaimer=disclaimer)) == []
    own = '[[policy]]\nsay = "We ring you back within the hour."\ntopics = ["hazard"]\n'
    found = ask("My battery is swollen and hot", own)
    assert told(found) == ["We ring you back within the hour."]
    assert as_text(Leadsman().ask("My battery is swollen")).startswith("Everybody off the boat now")


def test_own_words_stand_in_everything_but_cautions_and_first_actions(ask):
    wording = '# [wording] -> [wording]\n"wet-cell" = "flooded"\n"thruster" = "side motor"'
    found = ask("12.7 V at rest, wet cell, good for the thruster?", wording=wording)
    assert "wet-cell" not in plain(found)
    assert "flooded" in plain(found)
    asked = ask("Will my 800 CCA wet cell run a 260 A thruster?", wording=wording)
    assert "wet-cell" not in plain(asked)
    assert any("Thruster main switch off" in item.say for item in asked.cautions)
    stop = ask("The thruster will not stop turning", wording=wording)
    assert "thruster" in " ".join((stop.headline, *(item.say for item in stop.steps))).lower()


@pytest.mark.parametrize("term", TERMS)
def test_every_word_that_can_be_changed_is_one_of_ours(term):
    sources = [path for path in (DEMO.parent.parent).rglob("*") if path.suffix in (".py", ".toml")]
    ours = [path for path in sources if "house" not in path.parts and "inbox" not in path.parts]
    assert any(term in path.read_text(encoding="utf-8") for path in ours)


# What it makes of an answer


def test_without_its_adviser_lithium_is_no_yes_and_goes_to_a_technician(ask):
    assert ask(LITHIUM_FOR_IT).verdict == "yes"
    found = ask(LITHIUM_FOR_IT, ADVISER)
    assert (found.verdict, found.route) == ("needs-facts", "technician")
    assert plain(found) == f"Not yet: {ADVISED[0].lower()}{ADVISED[1:]}"
    assert any(step.say.startswith("By the figures alone: Yes") for step in found.working)
    assert {item.name for item in found.figures} >= {"running_current", "inrush_current", "limit_current"}
    lead = ask("Will two 800 CCA AGM in series run the Sturgeon?", ADVISER)
    assert (lead.verdict, lead.route, told(lead)[:1]) == (
        "yes",
        None,
        ["We ask for a battery of its own for each thruster."],
    )


def test_an_adviser_does_not_turn_a_no(ask):
    found = ask("Will two 100 Ah lithium in series run the Sturgeon?", ADVISER)
    assert (found.verdict, found.route) == ("no", None)
    assert ADVISED in told(found)


def only_agm_and_gel() -> dict[str, str]:
    """The demo's Pike, for which AGM and gel alone are allowed."""
    pike = SOUND[SOUND.index("[model.pike]") : SOUND.index("[model.sturgeon]")]
    kinds = 'chemistries = ["flooded", "agm", "gel", "lead", "lfp"]'
    assert kinds in pike
    return {"pike": f'{pike} -> {pike.replace(kinds, """chemistries = ["agm", "gel"]""")}'}


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("Will my 800 CCA AGM run the Pike?", "yes"),
        ("Will my 800 CCA wet cell run the Pike?", "no"),
        ("Will a 400 Ah lithium, 300 A continuous and 500 A peak, run the Pike?", "no"),
        ("Will my 800 CCA battery run the Pike?", "needs-facts"),
        ("Will my 800 CCA sealed battery run the Pike?", "needs-facts"),
        ("Will my 400 CCA AGM run the Pike?", "no"),
        ("Will a 400 Ah lithium, 300 A continuous and 500 A peak, run a 260 A thruster?", "yes"),
        ("Will my 800 CCA wet cell run the Minnow?", "yes"),
    ],
)
def test_a_kind_that_is_not_allowed_is_a_no_for_that_model_alone(ask, text, verdict):
    assert ask(text, **only_agm_and_gel()).verdict == verdict


def test_the_kind_that_decides_is_asked_for_with_what_each_would_mean(ask):
    found = ask("Will my 800 CCA battery run the Pike?", **only_agm_and_gel())
    assert plain(found) == "Not yet: for the Pike we allow AGM and gel batteries only."
    (asked,) = found.asks
    assert asked.fact == "battery.chemistry"
    assert [(item.value, item.then) for item in asked.replies] == [("agm", "yes"), ("gel", "yes"), ("flooded", "no")]


def test_what_would_change_it_is_an_allowed_kind(ask):
    found = ask("Will my 800 CCA wet cell run the Pike?", **only_agm_and_gel())
    assert [(item.fact, item.value, item.say) for item in found.would_change] == [
        ("battery.chemistry", "agm", "an AGM battery")
    ]


def test_a_battery_is_proposed_of_a_kind_that_is_allowed(ask):
    found = ask("Which battery for the Pike?", topic="bank-size", **only_agm_and_gel())
    assert plain(found).startswith("Look for an AGM battery of 650 CCA")
    assert [(item.value, item.source) for item in found.understood if item.fact == "battery.chemistry"] == [
        ("agm", "house")
    ]
    kinds = ask("AGM or lithium for the Pike, long life wanted?", topic="battery-type", **only_agm_and_gel())
    assert plain(kinds).startswith("AGM for most boats")
    assert {item.label: item.verdict for item in kinds.compare}["Lithium"] == "no"
    assert "For the Pike we allow AGM and gel batteries only." in told(kinds)
    free = ask("AGM or lithium for the Minnow, long life wanted?", topic="battery-type", **only_agm_and_gel())
    assert plain(free).startswith("Lithium for most boats")


def test_a_swap_for_lithium_is_told_with_its_conditions_where_the_house_takes_it(ask):
    swap = "Should I change from wet cells to lithium on the {}, is it worth it?"
    free = ask(swap.format("Minnow"), topic="battery-type", **only_agm_and_gel())
    assert plain(free).startswith("Lithium pays where much is used")
    assert any("BMS" in step.say for step in free.working)
    assert any("lithium setting" in step.say for step in free.working)
    barred = ask(swap.format("Pike"), topic="battery-type", **only_agm_and_gel())
    assert plain(barred).startswith("AGM for most boats")


def test_the_rules_of_a_model_hold_in_later_turns(file):
    desk = Leadsman(load(file(**only_agm_and_gel())), Signer("s"))
    first = desk.ask("Which battery for the Pike?")
    (later,) = desk.ask("and for 10 minutes in all?", first.thread).answers
    assert plain(later).startswith("Look for an AGM battery of 650 CCA")
    (other,) = desk.ask("and for the Minnow?", first.thread).answers
    assert "AGM" not in plain(other)
    (asked,) = desk.ask("is 12.4 V good for my wet cell?", first.thread).answers
    assert (asked.topic, told(asked)) == ("rest-voltage", [])


def test_of_two_batteries_the_one_that_is_not_allowed_is_out(ask):
    text = "Which runs the Pike, an 800 CCA AGM or a lithium with 400 A continuous and 900 A peak?"
    found = ask(text, topic="run-check", **only_agm_and_gel())
    assert found.verdict == "yes"
    assert "AGM" in plain(found)
    sides = {item.label: item.verdict for item in found.compare}
    assert {verdict for label, verdict in sides.items() if "lithium" in label} <= {"no"}


def test_a_label_says_which_models_it_suits_under_the_rules(ask):
    label = "LiFePO4 12.8V 400Ah 300A continuous 500A peak"
    free, held = ask(label), ask(label, **only_agm_and_gel())
    assert next(item for item in free.compare if item.label == "Pike").verdict == "yes"
    assert next(item for item in held.compare if item.label == "Pike").verdict == "no"
    assert "the Pike" not in plain(held)


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("Will my 100 Ah 800 CCA AGM run the Pike?", "yes"),
        ("Will my 80 Ah 800 CCA AGM run the Pike?", "no"),
        ("Will two 80 Ah 800 CCA AGM in parallel run the Pike?", "yes"),
        ("Will my 800 CCA AGM run the Pike?", "needs-facts"),
        ("Will my 800 CCA AGM run the Minnow?", "yes"),
    ],
)
def test_a_fact_is_held_to_the_houses_least(ask, text, verdict):
    found = ask(text, ENOUGH_AH)
    assert found.verdict == verdict
    if verdict == "no":
        assert [item.say.replace("\u00a0", " ") for item in found.would_change] == ["100 Ah or more"]
    if verdict == "needs-facts":
        assert [(item.fact, [reply.then for reply in item.replies]) for item in found.asks] == [
            ("battery.capacity", ["yes", "no"])
        ]


def test_what_a_rule_asks_for_is_proposed(ask):
    found = ask("Which battery for the Pike?", ENOUGH_AH + ENOUGH_AH.replace("100 Ah", "700 CCA").replace(
        '"battery.capacity" = 100', '"battery.cca" = 700'), topic="bank-size")  # fmt: skip
    assert (value(found, "required_capacity").value, value(found, "required_cca").value) == (100, 700)
    assert "700 CCA and 100 Ah" in plain(found)


def test_a_best_verdict_holds_without_a_condition(ask):
    rule = (
        '[[policy]]\nsay = "We advise against a used battery on the Pike."\nmodels = ["Pike"]\nverdict = "marginal"\n'
    )
    found = ask("Will my 800 CCA AGM run the Pike?", rule)
    assert (found.verdict, plain(found)) == ("marginal", "Only just: we advise against a used battery on the Pike.")
    assert ask("Will my 400 CCA AGM run the Pike?", rule).verdict == "no"


def test_a_figure_is_held_to_the_stricter_value(ask):
    found = ask("How often do I look at a laid-up AGM?", SOON, topic="storage")
    assert value(found, "check_interval").value == 60
    assert plain(found) == "We ask you to look at a laid-up battery every 60 days."
    assert any(step.say.startswith("By the tables alone: ") for step in found.working)
    volts = value(ask("Which charger setting for AGM?", LESS_VOLTS), "absorption_voltage")
    assert (volts.low, volts.high) == (pytest.approx(14.2), pytest.approx(14.5))
    assert volts.low <= volts.value <= volts.high
    doubled = value(ask("Which charger setting for a 24 V AGM bank?", LESS_VOLTS), "absorption_voltage")
    assert (doubled.low, doubled.high) == (pytest.approx(28.4), pytest.approx(29.0))
    gel = ask("Which charger setting for gel?", LESS_VOLTS)
    assert told(gel) == []


# Where the house is laxer


@pytest.mark.parametrize(
    ("text", "topic", "change", "name", "stands", "words"),
    [
        ("Which battery for the Pike?", "bank-size", "cca = 650 -> cca = 500", "required_cca", 650,
         "Our catalogue asks for 500 CCA for the Pike, and our source"),
        ("What fuse for the Pike on 1/0 AWG cable?", "fuse-size", "fuse = 350\ncables = [\n    { up_to = 6.3 -> "
         "fuse = 600\ncables = [\n    { up_to = 6.3", "fuse_rating", 350,
         "Our catalogue names a 600 A fuse for the Pike, and US Code of Federal Regulations, title 33, 183.455"),
        ("What cable for the Pike over 8 m?", "cable-size", '{ up_to = 8, area = 70, gauge = "2/0" } -> '
         '{ up_to = 8, area = 50, gauge = "1" }', "gauge", "2/0",
         "Our catalogue names 1 AWG or 50 mm² for the Pike up to 8 m"),
        ("What cable for the Pike over 8 m?", "cable-size", "inrush = 390 -> inrush = 390\ndrop = 14", "gauge", "2/0",
         "Our catalogue lets the cable of the Pike lose 14 %"),
    ],
)  # fmt: skip
def test_a_laxer_value_of_the_catalogue_is_said_and_does_not_stand(ask, text, topic, change, name, stands, words):
    sound, laxer = ask(text, topic=topic), ask(text, topic=topic, change=change)
    assert value(sound, name).value == pytest.approx(stands) if name != "gauge" else value(sound, name).value == stands
    assert value(laxer, name).value == value(sound, name).value
    assert not any("stands" in text for text in told(sound))
    (found,) = [text for text in told(laxer) if "stands" in text]
    assert found.startswith(words)
    cited = next(step.cites for step in laxer.working if step.say.replace("\u00a0", " ") == found)
    assert cited[0] == HOUSE_RULES
    assert {*cited} <= {item.id for item in laxer.cites}
    assert len(cited) > 1


def test_a_stricter_loss_of_the_catalogue_stands(ask):
    sound = ask("What cable for the Pike over 8 m?", topic="cable-size")
    strict = ask(
        "What cable for the Pike over 8 m?", topic="cable-size", change="inrush = 390 -> inrush = 390\ndrop = 8"
    )
    assert (value(sound, "gauge").value, value(strict, "gauge").value) == ("2/0", "3/0")
    assert not any("lose" in text for text in told(strict))


@pytest.mark.parametrize(
    ("text", "rule", "figure", "end", "stands"),
    [
        ("How often do I look at a laid-up AGM?", SOON.replace("60", "200"), "check_interval", "value", 90),
        ("Which charger setting for AGM?", LESS_VOLTS.replace("14.5", "15.4"), "absorption_voltage", "high", 14.8),
        ("Which charger setting for AGM?", LESS_VOLTS.replace("most", "least").replace("14.5", "15.4"),
         "absorption_voltage", "high", 14.8),
        ("Which charger setting for AGM?", LESS_VOLTS.replace("14.5", "13.0"), "absorption_voltage", "low", 14.2),
    ],
)  # fmt: skip
def test_a_laxer_figure_of_a_rule_is_said_and_does_not_stand(ask, text, rule, figure, end, stands):
    found = ask(text, rule)
    assert getattr(value(found, figure), end) == pytest.approx(stands)
    (said,) = [item for item in told(found) if "the stricter stands" in item]
    assert said.startswith("Our own rule has ")


def test_cold_raises_the_need_over_the_catalogue_and_that_is_said(ask):
    found = ask("Will my 800 CCA AGM run the Pike at -10 C?", topic="run-check")
    assert value(found, "required_cca").value > 700
    assert any("Our catalogue asks for 650 CCA for the Pike" in text for text in told(found))


def test_a_stated_current_is_not_held_against_the_catalogues_table(ask):
    found = ask("What cable for the Pike over 8 m if it draws 400 A?", topic="cable-size")
    assert not any("stands" in text for text in told(found))


def test_the_demo_and_the_starting_house_are_not_laxer_than_our_sources(capsys):
    for path in (DEMO, DEMO.with_name("new.toml")):
        assert list(hints(load(path))) == []
        assert main(["house", "check", str(path)]) == 0
        assert "answers will say" not in capsys.readouterr().out


def test_the_check_says_what_answers_will_say(file, capsys):
    path = file(SOON.replace("60", "200"), cca="cca = 650 -> cca = 500")
    assert main(["house", "check", str(path)]) == 0
    said = capsys.readouterr().out
    assert "answers will say: Our catalogue asks for 500 CCA for the Pike" in said
    assert "answers will say: Our own rule has 200 days at most" in said


# The tables behind it


def test_the_check_knows_every_topic_and_every_figure_that_can_be_bounded():
    assert set(topics()) == set(names())
    assert set(CONCERNED) <= set(names())
    asked = {
        "Which battery for the Pike?", "Which lithium battery for the Pike?", "Will a 400 Ah lithium run the Pike?",
        "It drops to 10 V under 200 A, AGM 800 CCA, ok?", "How many amps of charger for 100 Ah AGM?",
        "Which charger setting for AGM?", "What fuse for the Pike on 1/0?", "How often do I look at a laid-up AGM?",
    }  # fmt: skip
    shown = {figure.name for text in asked for item in Leadsman().ask(text).answers for figure in item.figures}
    assert set(BOUNDS) <= shown


def test_a_figure_that_a_rule_changes_is_changed_in_the_headline_too(file):
    desk = Leadsman(load(file(SOON)))
    (answer,) = desk.ask("How often must I look at a full AGM over a winter of 5 months at 5 C?").answers
    assert {item.name: item.value for item in answer.figures}["check_interval"] == 60
    assert "60" in answer.headline
    assert "90" not in answer.headline
