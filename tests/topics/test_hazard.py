"""First actions: the gravest sign leads, people come first, the kind of battery decides how far to go."""

from __future__ import annotations

from typing import Any

import pytest

from service.finish import finished
from service.leadsman import default_desk
from service.reference import rows
from service.reply import Answer
from service.topics import topic
from tests.building import case
from tests.talks import on, plain


def danger(*signs: str, facts: dict[str, Any] | None = None, cues: tuple[str, ...] = ()) -> Answer:
    named = {f"danger:{sign}" if sign.count(":") else f"danger:{sign}:present" for sign in signs}
    return finished(topic("hazard"), case(facts or {}, {*named, *cues}))


def told(found: Answer) -> list[str]:
    return [found.headline, *(step.say for step in found.steps)]


def test_a_swollen_battery_of_unknown_kind_is_treated_as_lithium() -> None:
    found = danger("swollen-case")
    assert (found.verdict, found.urgency, found.route) == ("stop", "stop-now", "technician")
    assert found.headline.startswith("Everybody off the boat now")
    assert [step.kind for step in found.steps][-1] == "who"


def test_a_swollen_lead_battery_is_left_alone() -> None:
    assert danger("swollen-case", facts={"battery.chemistry": "agm"}).headline.startswith("Leave it alone")


def test_an_eye_comes_before_the_battery() -> None:
    found = danger("leaking-case", "acid-in-eyes", facts={"battery.chemistry": "flooded"})
    assert found.headline.startswith("Rinse the eye")
    assert any("what leaks is acid" in step.say for step in found.steps)


def test_with_fuel_about_no_step_sends_anyone_to_a_switch() -> None:
    found = danger("fuel-vapour", "hot-to-touch", "burnt-cable", facts={"battery.chemistry": "flooded"})
    assert found.headline.startswith("Touch no switch")
    assert not any("main switch" in step.say for step in found.steps if step.kind == "do")


def test_the_others_stay_off_too() -> None:
    told = [step.say for step in danger("swollen-case", cues=("detail:the_others",)).steps if step.kind == "do-not"]
    assert any("other batteries" in text for text in told)


def test_asked_in_general_it_is_information_with_the_first_actions() -> None:
    found = danger("smoke:general")
    assert (found.verdict, found.urgency, found.route) == ("information", "routine", None)
    assert found.headline.startswith("If it happens: get everyone off the boat")


def test_jump_leads_are_information() -> None:
    assert danger("jump-start:general").headline.startswith("Jump leads go plus to plus first")


def test_one_present_sign_outweighs_a_general_one() -> None:
    assert danger("smoke:general", "fire").verdict == "stop"


@pytest.mark.parametrize(("cues", "urgency"), [((), "today"), (("thing:charger",), "stop-now")])
def test_a_frozen_battery_on_a_charger_is_more_urgent(cues: tuple[str, ...], urgency: str) -> None:
    assert danger("frozen-lead", cues=cues).urgency == urgency


def test_too_high_a_charging_voltage_is_named() -> None:
    found = danger("overcharging-voltage", facts={"charger.voltage": 16.1, "battery.chemistry": "agm"})
    assert (found.verdict, found.urgency) == ("stop", "today")
    assert "16.1\u00a0V" in found.headline


def test_a_danger_of_the_thread_still_counts() -> None:
    assert danger("hot-to-touch:standing").verdict == "stop"


def test_a_danger_without_a_name_goes_to_a_person() -> None:
    found = finished(topic("hazard"), case({}))
    assert (found.verdict, found.route) == ("stop", "technician")


CONDITIONAL = ("you do not know the kind", "known to be lead", "or kind not known", "lithium: ", "alternator does it")


@pytest.mark.parametrize("family", [row["id"].value for row in rows("hazards")])
@pytest.mark.parametrize("kind", ["flooded", "agm", "lfp", "lithium-other"])
def test_no_step_asks_for_a_kind_that_is_told(family: str, kind: str) -> None:
    found = danger(family, facts={"battery.chemistry": kind}, cues=("thing:charger",))
    assert not any(word in text for text in told(found) for word in CONDITIONAL)


@pytest.mark.parametrize("family", [row["id"].value for row in rows("hazards")])
def test_two_kinds_told_leave_the_kind_open(family: str) -> None:
    assert told(danger(family, facts={"battery.chemistry": ("agm", "lfp")})) == told(danger(family))


@pytest.mark.parametrize(
    ("cues", "first", "engine"),
    [
        ((), "Switch the charger off", True),
        (("thing:charger",), "Switch the charger off", False),
        (("term:shore-power",), "Switch the charger off", False),
        (("thing:alternator",), "Stop the engine", True),
        (("thing:alternator", "thing:charger"), "Switch the charger off", True),
        (("thing:dcdc", "thing:charger"), "Switch the charger off", True),  # it runs off the engine
        (("detail:start_bank", "thing:charger"), "Switch the charger off", True),  # an engine is named
    ],
)
def test_what_charges_is_switched_off(cues: tuple[str, ...], first: str, engine: bool) -> None:
    found = danger("overcharging-voltage", cues=cues)
    assert found.headline.startswith(first)
    assert any("engine" in text for text in told(found)) is engine


def test_who_takes_over_is_named_once() -> None:
    found = danger("rotten-egg-smell", "overcharging-voltage", facts={"charger.voltage": 15.6})
    who, numbers = (step.say for step in found.steps if step.kind == "who")
    assert NUMBERS in numbers
    assert who.endswith("; the emergency services if anyone feels ill")
    assert any(step.say.startswith("15.6\u00a0V is too high") for step in found.steps)


def test_who_is_called_in_any_case_stays_beside_who_is_called_if_need_be() -> None:
    found = danger("person-near-propeller", "acid-swallowed")
    assert "the emergency services" in [step.say for step in found.steps if step.kind == "who"]


def test_a_sign_that_is_not_spoken_of_is_no_source() -> None:
    cites = {cite.id for cite in danger("swollen-case", "rotten-egg-smell", facts={"battery.chemistry": "lfp"}).cites}
    assert "hydrogen-sulphide" not in cites


def test_a_good_reading_takes_no_danger_back() -> None:
    found = danger("immersed-sea-water", facts={"battery.chemistry": "lfp", "reading.voltage": 13.2})
    assert any(step.kind == "do-not" and "13.2" in step.say for step in found.steps)


def test_what_still_counts_is_named() -> None:
    assert danger("hot-to-touch:standing").headline.startswith("No use and no charging, keep away: a battery that hot")
    assert danger("shore-shock:standing").headline.startswith("Shore power stays unplugged")
    assert "what you told us" in danger("damaged-lithium-transport:standing").headline


@pytest.mark.parametrize(
    "text",
    [
        "thr stops after 3 sec, lfp, lever dead, 40 s later ok again. why",
        "lfp bank, bow thruster quits after 3 seconds then works again a minute later, what is it?",
        "lithium, thruster goes dead after a second or two, comes back by itself",
        "24 V lithium, stern thruster dies mid push and after a minute or so it works again",
    ],
)
def test_lithium_that_cuts_the_thruster_off_for_a_while_is_seen_to_today(text):
    reply = default_desk().ask(text)
    assert reply.answers[0].headline.startswith("Thruster lever to stop")
    assert reply.triage.urgency == "today"


def test_lithium_out_of_a_flooded_hull_is_told_nothing_of_lead():
    text = (
        "One of the lithium packs from the flooded hull (salt water up to the terminals) has dried out. Put it back in?"
    )
    (found,) = default_desk().ask(text).answers
    assert found.headline.startswith("No charging and no use")
    assert not any("lead" in step.say or "wade" in step.say for step in found.steps)


def test_lead_that_comes_back_after_a_minute_has_no_management_system():
    reply = default_desk().ask("AGM bank, thruster stops after 5 s and works again after a minute, why?")
    assert "hazard" not in [item.topic for item in reply.answers]


NUMBERS = "112 in Europe, 999 in the UK, 911 in North America"


@pytest.mark.parametrize("sign", ["acid-in-eyes", "fire", "boat-disabled", "rotten-egg-smell"])
def test_whoever_is_sent_for_has_a_number(sign: str) -> None:
    assert any(NUMBERS in text for text in told(danger(sign)))


@pytest.mark.parametrize("sign", ["frozen-lead", "hot-to-touch:standing", "jump-start:general"])
def test_no_number_where_nobody_is_sent_for_now(sign: str) -> None:
    assert not any(NUMBERS in text for text in told(danger(sign)))


@pytest.mark.parametrize(
    ("text", "first"),
    [
        ("splashed battery acid on my hand and a drop in the eye, im on the boat alone, what do", "rinse first"),
        ("battery acid in my eye, nobody else here", "rinse first"),
        ("acid from the battery got in my eye and I'm on my own", "rinse first"),
        ("battery acid in my wife's eye", "somebody else"),
        ("acid in my eyes from the wet cell, leave the battery alone?", "somebody else"),
    ],
)
def test_who_is_alone_rinses_first(text: str, first: str) -> None:
    found = default_desk().ask(text).answers[0]
    assert found.headline.startswith("Rinse the eye")
    call = next(step.say for step in found.steps if "calls" in step.say or "call the" in step.say)
    assert first in call[:40]


def test_the_skin_is_rinsed_with_the_eye() -> None:
    found = danger("acid-in-eyes", "acid-on-skin")
    assert found.steps[0].say.startswith("Rinse at once")


@pytest.mark.parametrize("sign", ["hot-to-touch", "hissing-venting", "swollen-case", "rotten-egg-smell", "frozen-lead"])
@pytest.mark.parametrize("kind", ["agm", "lfp", None])
def test_where_the_engine_charges_it_is_stopped(sign: str, kind: str | None) -> None:
    facts = {"battery.chemistry": kind} if kind else {}
    engine, shore = (told(danger(sign, facts=facts, cues=(cue,))) for cue in ("thing:alternator", "thing:charger"))
    assert "shore end" not in " ".join(engine)
    assert "shore end" in " ".join(shore)
    assert "engine off as soon as that is safe" not in " ".join(shore)
    assert "engine off as soon as that is safe" in " ".join(engine)


@pytest.mark.parametrize(
    ("text", "first"),
    [
        ("the wet battery stinks of rotten eggs since the engine charges it, no shore power here", "Engine off"),
        ("Under way, the alternator charges and the AGM is bulging", "Engine off"),
        ("The AGM is bulging, it was on the shore charger", "Charger off"),
        ("The AGM is bulging", "Charger off"),
    ],
)
def test_the_first_step_is_of_what_charges(text: str, first: str) -> None:
    (found, *_) = default_desk().ask(text).answers
    assert found.steps[0].say.capitalize().startswith(first)


def test_at_sea_no_quay_is_spoken_of() -> None:
    text = "sea water got over the flooded battery, we are at sea and the alternator runs"
    (found, *_) = default_desk().ask(text).answers
    assert found.headline.startswith("Stay out of the water aboard")


@pytest.mark.parametrize(("kind", "gone"), [("agm", "lithium"), ("lfp", "split")])
def test_what_fell_on_somebody_is_told_by_its_kind(kind: str, gone: str) -> None:
    step = next(text for text in told(danger("lifting", facts={"battery.chemistry": kind})) if "keeps away" in text)
    assert gone not in step


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("The gel battery burst as he started the engine, he is fine but one eye's a bit red.", "Rinse the eye"),
        ("A wet battery exploded and her eye stings.", "Rinse the eye"),
        ("A lithium battery exploded, one eye is red.", "Go into fresh air"),
        ("My AGM exploded this morning, bits everywhere.", "People first"),
    ],
)
def test_after_a_burst_a_hurt_eye_comes_first_and_lithiums_vapour_only_of_lithium(text: str, opens: str) -> None:
    found = default_desk().ask(text).answers[0]
    assert found.headline.startswith(opens)
    if not opens.startswith("Go"):
        assert not any("lungs" in act.say for act in found.steps)


def first(text: str) -> Answer:
    return default_desk().ask(text).answers[0]


@pytest.mark.parametrize(
    ("text", "topics"),
    [
        ("The starter battery exploded. Stuff on every wall. How do we clean that?", ["hazard"]),
        ("The gel is not hot and not swollen, only greasy on its lid. What do I clean it with?", ["maintenance"]),
    ],
)
def test_dirt_beside_a_danger_is_no_question_of_care(text: str, topics: list[str]) -> None:
    assert [answer.topic for answer in default_desk().ask(text).answers] == topics


@pytest.mark.parametrize(
    "text",
    [
        "BIG SPARK WHEN I CONNECTED THE LAST CABLE. IS THAT NORMAL. STURGEON 24V",
        "got a large flash when I put the minus on, all works now. is that normal? which goes first",
        "There was a huge spark when connecting. Should that happen? which terminal first?",
        "a fat spark when I hooked up the plus cable. normal or not?",
        "big spark when I connected the negative, now it's ok. Normal? And which terminal goes on first?",
    ],
)
def test_a_big_spark_is_not_normal_and_the_order_is_told(text: str) -> None:
    (found,) = default_desk().ask(text).answers
    assert found.headline.startswith("No: hands off")
    assert any(
        act.say.endswith("Plus first, minus last.") or "plus first, minus last" in act.say for act in found.steps
    )


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        (
            "smoke from the box, 12V Pike, stopped now. Should I just put a larger fuse in?",
            "No larger fuse: get everyone",
        ),
        ("There is smoke from the fuse box, gone now. Can I fit a bigger fuse?", "No larger fuse: get everyone off"),
        ("smoke out of the fuse holder. Should I fit a 400 A fuse instead of 250?", "No larger fuse: get everyone off"),
        ("The cable got too hot to touch. Put in a larger fuse?", "No larger fuse: stop using that circuit"),
        (
            "smoke from the fuse holder. Can we still use it to get back into the marina tonight?",
            "No: get everyone off",
        ),
        ("fuse holder melted, can we still use the thruster tonight to get home?", "No: stop using that circuit"),
        ("battery smoking, can we use the radio to call", "Get everyone off"),
        ("I fitted a larger fuse and now the cable smokes. what now", "Get everyone off"),
        ("battery swollen, what is the normal voltage?", "Everybody off"),
        ("acid in my eye, can I charge the battery later?", "Rinse the eye"),
    ],
)
def test_what_a_danger_forbids_is_refused_where_it_is_asked(text: str, opens: str) -> None:
    found = first(text)
    assert found.headline.startswith(opens)
    larger = any(act.kind == "do-not" and act.say.lower().startswith("fit a larger fuse") for act in found.steps)
    assert larger or "larger fuse" not in opens


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("i smell rotten eggs in the cabin since charger is on, battery is very warm to touch", "Leave the cabin now"),
        ("i smell rotten eggs, the AGM is hot too", "Leave the cabin now"),
        ("battery hot to touch, smells of sulphur, engine is charging", "Leave the cabin now"),
        ("The lithium is hot and there is a smell of rotten eggs", "Get everybody off the boat and upwind"),
        ("battery hot to the touch and a funny smell from the charger", "Get everybody off the boat"),
        ("battery swollen, hot, and stinks of eggs", "Everybody off the boat now"),
    ],
)
def test_the_smell_of_lead_comes_before_its_heat(text: str, opens: str) -> None:
    found = first(text)
    assert found.headline.startswith(opens)
    if opens.startswith("Leave"):
        assert "rotten eggs" in found.headline
        assert "everybody off the boat" in found.steps[0].say


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        (
            "battery is only lukewarm, about 28 degrees, after an hour of charging. Is that normal?",
            "Yes, within the limits",
        ),
        ("Is it normal that the battery becomes lukewarm when charging?", "Yes, within the limits"),
        ("battery gets handwarm while charging, around 32 degrees. ok?", "A battery may grow lukewarm"),
        ("battery lukewarm on the charger, 47 degrees by the thermometer, normal?", "Heat, a swollen case"),
        ("battery lukewarm, nothing connected, normal?", "Heat, a swollen case"),
        ("lukewarm battery on the charger and it hisses", "Get everybody off the boat"),
        ("battery lukewarm on charge and swollen, normal?", "No: everybody off the boat"),
    ],
)
def test_a_little_warmth_on_charge_is_within_the_limits(text: str, opens: str) -> None:
    assert first(text).headline.startswith(opens)


@pytest.mark.parametrize(
    ("text", "start"),
    [
        (
            "Our wet battery froze at Christmas, it has thawed by now. May I charge it?",
            "No: leave it off the charger until a",
        ),
        ("The AGM froze solid, it's thawed since Sunday. Can I use it again?", "No: leave it off the charger until a"),
        ("Our wet battery is frozen and on charge. May I go on?", "No: switch the charger off at the shore end"),
        ("Our wet battery froze. Is it thawed? May I charge it?", "No: a frozen battery is never jump-started"),
    ],
)
def test_of_a_battery_that_thawed_no_charger_is_switched_off(text: str, start: str) -> None:
    assert plain(on("hazard", text).headline).startswith(start)


@pytest.mark.parametrize(
    "text",
    [
        "Minus 5 in the locker, and the charger was on all night with our lithium. Is the setting right?",
        "He left the LiFePO4 on charge, it is 25 F in there. Which mode?",
        "Our lithium has been on the charger for two days at -3 C. Should the float be lower?",
    ],
)
def test_lithium_that_was_charged_in_the_frost_is_a_danger(text: str) -> None:
    first = default_desk().ask(text).answers[0]
    assert (first.topic, first.verdict) == ("hazard", "stop")
    assert "below 0" in first.headline


@pytest.mark.parametrize(
    "text",
    [
        "May I leave our lithium on charge at -3 C?",
        "Minus 5 in the locker, and the charger was on all night with our gel. Is the setting right?",
        "The lithium has not been on charge since it froze, -2 today. Which charger for 100 Ah?",
    ],
)
def test_frost_without_a_charge_is_no_present_one(text: str) -> None:
    assert default_desk().ask(text).answers[0].urgency != "stop-now"
    assert not any("harms a lithium battery for good" in item.headline for item in default_desk().ask(text).answers)


@pytest.mark.parametrize(
    "text",
    [
        "Guests in ten minutes, quick one: the AGM shows 12.4 and has been off since noon, nothing on. ok then?",
        "The main switch was off since noon and she is flat and flat again. What takes the charge?",
    ],
)
def test_many_words_of_little_weight_raise_no_alarm(text: str) -> None:
    assert "hazard" not in {item.topic for item in default_desk().ask(text).answers}
