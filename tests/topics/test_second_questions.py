"""The second question of a message has its own answer: what draws, must they come home, can it be stepped down."""

from __future__ import annotations

import pytest

from service.leadsman import default_desk
from service.render.as_text import as_text
from service.reply import Answer


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


def ask(text: str) -> tuple[Answer, ...]:
    return default_desk().ask(text).answers


def figure(answer: Answer, name: str) -> float:
    return next(float(item.value) for item in answer.figures if item.name == name)


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("0.3 A with everything off at the board. how long til flat, and what could it be? its a 90ah", "About 6.2 d"),
        ("60 mA with everything off, 90 Ah gel. what is drawing it and how many days to half?", "About 31 days"),
        ("0.2 A still flows with the main switch off. how do i find what it is", "Most likely a float switch"),
        ("100 mA standing drain on a 110 Ah. where does it go?", "Most likely a float switch"),
    ],
)
def test_what_draws_is_told_beside_how_long(text: str, opens: str) -> None:
    (answer,) = ask(text)
    assert plain(answer.headline).startswith(opens)
    assert "float switch" in answer.working[0].say
    assert "pull the fuses one by one" in answer.working[1].say


@pytest.mark.parametrize(
    ("text", "days", "loss", "amps"),
    [  # by the table of resting volts, less what the kind loses by itself
        ("wet 100 Ah went from 12.7 to 12.45 in three weeks with the main switch off. is something drawing?",
         21.0, 25 / 21, (25 / 21 - 5 / 30.4375) / 24),
        ("My AGM 100 Ah dropped from 12.8 to 12.5 V in two weeks with everything off. Is something drawing?",
         7.0, 33.3 / 14, (33.3 / 14 - 3 / 30.4375) / 24),
    ],
)  # fmt: skip
def test_two_readings_some_days_apart_tell_what_draws(text: str, days: float, loss: float, amps: float) -> None:
    (answer,) = ask(text)
    assert answer.headline.startswith("Something draws about")
    assert figure(answer, "days_to_half") == pytest.approx(days, rel=0.2)
    assert figure(answer, "daily_loss") == pytest.approx(loss, rel=0.05)
    assert figure(answer, "drain_current") == pytest.approx(amps, rel=0.05)


def test_a_loss_that_the_battery_has_by_itself_needs_nothing_that_draws() -> None:
    (answer,) = ask("wet 90 Ah went from 12.7 to 12.6 in three weeks, main switch off. is something drawing?")
    assert answer.headline.startswith("Nothing need be drawing")
    assert [item.name for item in answer.figures] == ["days_to_half"]


def test_lithium_volts_tell_no_drain_and_the_replies_say_what_they_mean() -> None:
    reply = default_desk().ask("From 13.3 to 13.1 in a month, 100 Ah lithium, main switch off. is something drawing?")
    assert reply.answers[0].verdict == "needs-facts"
    assert "1 A: under half by then." in " ".join(plain(as_text(reply)).split())


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("Two wet ones, boat in a shed at 4 C for the winter. What do I do with them, and do they have to come home?",
         "No, it may stay where it is: charge it full"),
        ("Two AGMs, boat in the yard for 5 months at 5 C. Must I take them home?",
         "No, it may stay where it is, but look every 90 days"),
        ("Should I carry the lithium home for the winter, 5 months at 3 C?", "No, it may stay where it is, but look"),
        ("AGM at 60 % charge, 5 months at 10 C, do I need to take it home?", "Better so, or charge it in between"),
        ("wet at 40 %, 5 months at -20 C. do they have to come home?", "Yes, or charge it full first"),
        ("I took the AGM home for the winter, 5 months at 12 C. is that fine?", "Yes, but look every 90 days"),
    ],
)  # fmt: skip
def test_whether_it_must_come_home(text: str, opens: str) -> None:
    assert plain(ask(text)[0].headline).startswith(opens)


@pytest.mark.parametrize(
    ("text", "alone"),
    [
        ("Which battery do I need for the Sturgeon? And are 2 x 12 V 90 Ah AGM of 750 CCA in series enough?",
         "Which battery do I need for the Sturgeon?"),
        ("Which battery for a Pike, and would my 700 CCA wet one do?", "Which battery for a Pike?"),
        ("What CCA do I need for a 250 A thruster? I have one of 600 CCA, ok?",
         "What CCA do I need for a 250 A thruster?"),
    ],
)  # fmt: skip
def test_what_is_needed_does_not_hang_on_the_battery_that_is_there(text: str, alone: str) -> None:
    wish, check = ask(text)
    assert (wish.topic, check.topic) == ("bank-size", "run-check")
    assert wish.headline == ask(alone)[0].headline


@pytest.mark.parametrize(
    "text",
    [
        "a 48 volt lithium-ion e-bike pack, could i step it down and run the Pike from that?",
        "a 36 volt pack of AGMs, could I step it down and run the Pike from that?",
        "24 V bank of two 700 CCA AGM, step down to 12 V for the Pike, ok?",
    ],
)
def test_a_converter_would_have_to_give_what_the_motor_takes(text: str) -> None:
    (answer,) = ask(text)
    assert answer.verdict == "no"
    assert "would itself have to give the Pike 260 A running and 390 A" in plain(answer.headline)
    assert "no-tap" not in [item.id for item in answer.cautions]


def test_a_12_v_battery_gives_no_24_v_motor_its_amps_through_a_converter() -> None:
    (answer,) = ask("can I run the Sturgeon from a 12 V 200 Ah AGM through a converter?")
    assert "280 A running and 420 A" in plain(answer.headline)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("Six AGM of 30 kg go out and lithium comes in. Saving in lb? And may the lithium lie on its side?",
         "About 198 lb (90 kg) lighter"),
        ("One 26 kg wet battery swapped for lithium: how many pounds lighter?", "About 29 lb (13 kg) lighter"),
        ("One 26 kg wet battery swapped for lithium: how much lighter?", "About 13 kg lighter"),
    ],
)  # fmt: skip
def test_a_weight_is_told_in_the_unit_that_is_asked_for(text: str, says: str) -> None:
    reply = default_desk().ask(text)
    assert plain(reply.answers[0].headline).startswith(says)
    assert says.removeprefix("About ").removesuffix(" lighter") in " ".join(plain(as_text(reply)).split("Numbers:")[1:])


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("Six AGM of 30 kg go out, lithium comes in. Saving in lb? And may the lithium lie on its side?", "a lithium"),
        ("Wet battery comes out, AGM goes in. Can the AGM be put on its side?", "an AGM"),
    ],
)
def test_of_two_kinds_the_question_is_of_the_one_it_names(text: str, says: str) -> None:
    answer = ask(text)[-1]
    assert answer.topic == "mounting"
    assert says in plain(answer.headline)
    assert not answer.compare


def test_two_kinds_side_by_side_are_told_in_words_that_fit() -> None:
    text = plain(as_text(default_desk().ask("May an AGM or a lithium lie on its side?")))
    assert "Lithium: if its manual allows it" in text
    assert "only just" not in text


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("Both AGMs read 12.6 after. One was hissing a bit on charge. 2 x 90 Ah in series, is the 24 V 18 A charger "
         "the right size?", "charger-size"),
        ("There was a rotten egg smell. Two 110 Ah wets. How many amps should the charger give?", "charger-size"),
        ("The case is swollen. Which fuse do I fit on 2/0 for a Pike?", "fuse-size"),
    ],
)  # fmt: skip
def test_the_question_that_waits_beside_a_danger_is_named(text: str, topic: str) -> None:
    hazard, waiting = ask(text)
    assert (hazard.verdict, waiting.topic, waiting.verdict) == ("stop", topic, "no")
    named = "(amps of the charger)" if topic == "charger-size" else "(fuse or breaker)"
    assert waiting.headline.startswith(f"The danger above comes first {named}")
    assert waiting.cites


@pytest.mark.parametrize(
    "text",
    [
        "The sea came over the lithium on Tuesday. Still showing 13.2, so hose it off, let it dry, carry on?",
        "A rope is in the tunnel. if I give it a quick blip in reverse will it throw it out?",
    ],
)
def test_what_belongs_to_the_danger_is_no_second_question(text: str) -> None:
    assert [answer.topic for answer in ask(text)] == ["hazard"]


def test_a_fuse_that_no_single_cable_suits_says_so_and_a_technician_looks() -> None:
    reply = default_desk().ask("bow thruster 430 A, 12 V, 5 m. which cable and which fuse?")
    assert plain(reply.answers[1].headline) == (
        "Fit a 600 A fuse: over the 450 A that suits 120 mm², within its 600 A limit; only two cables for each pole "
        "suit it better."
    )
    assert reply.triage.route == "technician"


@pytest.mark.parametrize(
    "text",
    [
        'she says "it pushes for a few seconds then nothing, and after a bit it comes back as if nothing happened". '
        "100 Ah lithium on a Minnow. what do I tell her?",
        "runs a few seconds then nothing, after a minute it comes back. 100 Ah lithium, Minnow. why?",
        'customer: "works five seconds, dies, comes back later". LiFePO4 100 Ah, Minnow. What shall I answer?',
    ],
)
def test_a_lithium_battery_that_goes_dead_and_comes_back_is_told_as_a_story(text: str) -> None:
    reply = default_desk().ask(text)
    assert [(item.topic, item.verdict) for item in reply.answers] == [("hazard", "stop"), ("run-check", "needs-facts")]
    assert reply.answers[0].headline.startswith("Thruster lever to stop")
    assert reply.triage.urgency == "today"


def test_a_battery_that_drops_out_was_not_dropped() -> None:
    (hazard, *_) = ask("my lithium battery dropped out in the harbour entrance and came back. 100 Ah, Pike")
    assert hazard.headline.startswith("Thruster lever to stop")


@pytest.mark.parametrize(
    "text", ["The lithium dropped out of the locker onto the deck", "the LFP fell out of the sling"]
)
def test_one_that_fell_is_a_danger_of_its_own(text: str) -> None:
    assert ask(text)[0].headline.startswith("No charging and no use: a lithium battery that was dropped")


def test_what_only_tells_of_a_fault_sets_no_yes_before_the_answer() -> None:
    (answer,) = ask("90 Ah lithium on a Pike, cuts out after two seconds and comes back by itself. what do I tell him?")
    assert plain(answer.headline).startswith("Your 90 Ah lithium battery gives about 90 A")


def test_a_new_load_test_is_read_at_its_end_and_no_thruster_is_run_for_it() -> None:
    (answer,) = ask("load test of a 700 CCA AGM at 4 C held 9.8 V for 15 s at 350 A. good?")
    assert answer.asks[0].where == "Read them on the two posts in the last second of the test."


def test_no_air_for_lithium_is_told_so_that_it_stands_alone() -> None:
    desk = default_desk()
    first = desk.ask("2 x 12 V 120 Ah wet in series in a closed locker. free area of the vents in cm2?")
    then = desk.ask("or lithium", thread=first.thread).answers[0]
    assert then.headline.startswith("No figure of air for lithium batteries: they give off no hydrogen in use")


@pytest.mark.parametrize(
    "text", ["90 Ah lithium, minnow, how many 8 s bursts", "how long will 200 Ah lithium run a Minnow"]
)
def test_a_limit_of_lithium_goes_with_its_kind(text: str) -> None:
    assert ask(text)[0].cautions[0].id == "lithium-kind"


@pytest.mark.parametrize(
    ("text", "topics"),
    [
        ("how many amps and what CCA should it have for a Minnow", ["bank-size"]),
        ("what CCA and Ah does the Minnow want, and what would that be in MCA", ["bank-size", "rating-convert"]),
        ("Wife likes gel, I like AGM, for the Pike, and we get minus 12. What would you go for?", ["battery-type"]),
        ("cabin lights 3 A for 9 hours off an 80 Ah wet that reads 12.5 now, makes it till morning?", ["run-time"]),
        ("80 Ah wet reads 12.5, is that good, and does it last 9 hours at 3 A?", ["rest-voltage", "run-time"]),
        ("what charger and what CCA for a 100 Ah Minnow battery", ["charger-size", "bank-size"]),
    ],
)  # fmt: skip
def test_what_is_only_told_with_a_question_is_none(text: str, topics: list[str]) -> None:
    assert [answer.topic for answer in ask(text)] == topics


@pytest.mark.parametrize(
    ("text", "topics"),
    [
        ("I'll buy an AGM for a 220 A bow thruster, 4 minutes in all. How many Ah? And how big should be the loader "
         "(the charger, excuse me) for such a one?", ["bank-size", "charger-size"]),
        ("How many Ah of gel for a 150 A windlass, 5 minutes in total, and which charger for it",
         ["bank-size", "charger-size"]),
        ("AGM for a 200 A thruster, 3 minutes: how many Ah and how big the charger", ["bank-size", "charger-size"]),
        ("Will a 95 Ah AGM of 800 CCA run a 240 A thruster, and what charger amps does it want?",
         ["run-check", "charger-size"]),
        ("How big must the AGM be for a 200 A thruster, 3 minutes? I have a 20 A charger", ["bank-size"]),
        ("Will a 95 Ah AGM of 800 CCA run a 240 A thruster while the charger is on?", ["run-check"]),
    ],
)  # fmt: skip
def test_the_charger_for_a_battery_to_be_bought_is_a_question_of_its_own(text: str, topics: list[str]) -> None:
    assert [item.topic for item in ask(text)] == topics


@pytest.mark.parametrize(
    ("text", "topics"),
    [
        ("95ah wet half flat on a 10 amp chargr. hours til its full, an does the flooded settin suit",
         ["charge-time", "charger-setting"]),
        ("do I want eyelets or clamps on the thruster wires, and where does the fuse sit?", ["terminals", "fuse-size"]),
        ("We have no idea of batteries. Which sort do I want for the trolling motor, and what size fuse goes on it",
         ["battery-type", "fuse-size"]),
        ("820 CCA AGM for a 170 A thruster: strong enough? And may it lie on its side like that?",
         ["run-check", "mounting"]),
        ("The battery is in. Which sort of fuse do I want for a 100 A motor on 35 mm2?", ["fuse-size"]),
        ("the gauge says 12.6 and then 11.8 when my dad works the thruster, is that bad? and what fuse should it have",
         ["load-voltage", "fuse-size"]),
    ],
)  # fmt: skip
def test_each_of_two_plain_questions_is_answered(text: str, topics: list[str]) -> None:
    assert [item.topic for item in ask(text)] == topics


@pytest.mark.parametrize(
    ("text", "open_now"),
    [
        ("a) which fuse for 160 A on 1/0 b) where is it fitted", False),
        ("1. fuse for a 140 A windlass, 50 mm2, 105 C 2. and where should that sit", False),
        ("a) fuse for 160 A on 1/0 b) where does the old one go to be recycled", True),
        ("a) is a 25 A charger right for 120 Ah gel? b) where does it go", True),
    ],
)
def test_the_place_of_a_fuse_is_told_with_its_size(text: str, open_now: bool) -> None:
    assert (default_desk().ask(text).triage.route == "technician") is open_now
