"""Figures and verdicts by what was meant: which battery, which moment, which of two kinds."""

from __future__ import annotations

import pytest

from service.judgements import charger_suits
from service.reply import Answer
from tests.building import case
from tests.talks import talk


def of(topic: str, *turns: str) -> Answer:
    """The answer on a topic to the last of these turns."""
    (found,) = (answer for answer in talk(*turns).answers if answer.topic == topic)
    return found


@pytest.mark.parametrize(
    ("topic", "text", "verdict"),
    [
        # one battery that is told of without a number
        ("run-check", "12v battery of 550 CCA, 24v thruster of 130 A, will it merely be slow", "no"),
        ("run-check", "24 V thruster of 130 A, my 12 V batteries have 550 CCA, ok?", "needs-facts"),
        # the frost of the question before
        ("freeze-point", "What does 600 CCA still give when it is minus 12, and can a full one freeze at that?", "yes"),
        # a converter that feeds the bank it takes from
        ("dc-dc", "Plain non-isolated 12 to 24 charger fed from the bottom battery of the same 24 V pair, fine?", "no"),
        # a new one beside old ones
        ("bank-wiring", "Our gels are 5 years old. May one fresh gel go in parallel with one of the old ones?",
         "marginal"),
        # lithium that takes the place of lead is not joined with it
        ("bank-wiring", "Two AGMs come out, two 12 V lithiums go in their place. Can those be in series for 24 V?",
         "needs-facts"),
        ("bank-wiring", "One of two AGMs is to be replaced by a lithium, in series. Fine?", "no"),
        # the year of the boat is none of a battery
        ("bank-wiring", "Boat built 1991, batteries of 2021, two 12 V gels 80 Ah in series. What do I get?",
         "information"),
        ("bank-wiring", "One gel of 2017 and one of 2023 in series, fine?", "no"),
    ],
)  # fmt: skip
def test_the_verdict_is_of_what_was_meant(topic: str, text: str, verdict: str) -> None:
    assert of(topic, text).verdict == verdict


def test_readings_of_one_morning_are_one_test() -> None:
    found = of("load-voltage", "This morning at rest it read 12.6 V. With the motor on, 160 A by its plate, it dropped "
               "to 10.0 V. 620 CCA. Is that a lot?")  # fmt: skip
    assert next(item.value for item in found.figures if item.name == "sag") == pytest.approx(2.6)


def test_a_test_of_last_week_did_not_begin_at_the_volts_of_today() -> None:
    found = of("load-voltage", "Today it rests at 12.5 V. Last week the yard tested it with 300 A and it dropped to "
               "9.9 V, 600 CCA. Good?")  # fmt: skip
    assert not any(item.name == "sag" and item.value == pytest.approx(2.6) for item in found.figures)


def test_a_bank_typed_short_is_no_label() -> None:
    found = of("bank-wiring", "2S2P 12 V 100 Ah AGM 700 CCA")
    assert {item.name: item.value for item in found.figures}["bank_capacity"] == pytest.approx(200)


@pytest.mark.parametrize(
    ("topic", "text", "name", "value"),
    [
        # a peak that is named once more is the battery's own
        ("run-check", "120 Ah lithium, its sheet allows 150 A all the time and 350 A for 3 s. The motor takes 180 A. I "
         "count on the 350 A peak, will it run?", "inrush_current", 270),
        # a load that runs all day is no drain
        ("bank-size", "Constant load, 5 A, 24 hours without charging, LiFePO4: how many amp hours?",
         "required_capacity", 150),
        # a charge that is planned
        ("storage", "My gel of 90 Ah is half empty and the 10 A charger is on. Once its full it stands at 20 C with "
         "the cables off, how many days before it needs a charge?", "check_interval", 90),
        # where the wait ends is no charge
        ("standing-drain", "150 mA goes somewhere, 90 Ah wet. How long should it take to get down to half?",
         "days_to_half", 12.5),
        # the length of a boat by its year
        ("run-check", "Steel barge, 1934, 19 m. The bow motor draws 200 A on 12 V, one wet battery of 700 CCA, 2/0 "
         "cable. Will it turn?", "terminal_voltage_at_inrush", 9.94),
    ],
)  # fmt: skip
def test_the_figure_is_of_what_was_meant(topic: str, text: str, name: str, value: float) -> None:
    found = of(topic, text)
    assert next(item.value for item in found.figures if item.name == name) == pytest.approx(value, rel=0.01)


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("A box in the bow, 290 mm long and no more. Will a group 31 go in?", "no"),
        ("A box in the bow, 400 mm long. Will a group 31 go in?", "information"),
    ],
)
def test_a_place_too_short_is_a_no(text: str, verdict: str) -> None:
    assert of("group-size", text).verdict == verdict


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("Two gels in series. Charger with two outputs, I do not know if the outputs are isolated. One on each?",
         "needs-facts"),
        ("Two gels in series. Charger with two outputs, the outputs are isolated. One on each?", "yes"),
        ("My charger has one output, and there are two separate batteries, engine and thruster. The mate says one "
         "charger does both, true? And may he parallel a 90 Ah gel with a 90 Ah wet one?", "no"),
    ],
)  # fmt: skip
def test_outputs_that_nobody_knows_of_are_asked(text: str, verdict: str) -> None:
    assert of("charger-banks", text).verdict == verdict


@pytest.mark.parametrize(
    ("topic", "turns", "verdict"),
    [
        # a list of settings, whatever parts it
        ("charger-setting", ("A new 12 V battery in the bow. Our charger has a switch: Gel - AGM - Wet - Li. How?",),
         "needs-facts"),
        # what stays on is no longer disconnected
        ("storage", ("AGM charged full, 4 months ashore at 12 C, disconnected. Fine?",
                     "or rather afloat with the bilge alarm on, it takes 25 mA", "80 Ah"), "no"),
        # one minus
        ("dc-dc", ("Non-isolated 12 to 24 V charger. All minuses aboard are joined, and the 12 V battery is apart, not "
                   "one of the 24 V pair. Fine?",), "yes"),
        # cells of one battery
        ("specific-gravity", ("Hydrometer: five cells at 1.260, the other cell 1.195. What does that tell?",), "no"),
        # how long they are, not whether one goes in the place of the other
        ("group-size", ("how long is a 24 and how long is a 31 battery",), "information"),
        ("group-size", ("does a 31 go where the 24 is, and how long is it",), "no"),
        # the frost of tonight, told beside the reading
        ("freeze-point", ("The wet one reads 12.2 V after three days alone, and tonight they say -14 C. How full, "
                          "and will it freeze?",), "yes"),
        # charged before the frost
        ("freeze-point", ("Wets charged right up in October, cables off, it gets to -25 C. Do they freeze?",), "yes"),
    ],
)  # fmt: skip
def test_the_verdict_is_of_what_was_told_last(topic: str, turns: tuple[str, ...], verdict: str) -> None:
    assert of(topic, *turns).verdict == verdict


def test_a_battery_that_was_taken_away_is_no_danger() -> None:
    told = "In spring the old gel had swollen, the dealer collected it. The new one is an AGM of 95 Ah. Which charger?"
    assert {answer.topic for answer in talk(told).answers} <= {"charger-size", "charger-setting"}


@pytest.mark.parametrize(
    ("text", "hazard"),
    [
        ("15.3 V on the wet battery, the charger has been on for days. I'm not equalising. Normal?", True),
        ("15.6 V on my wet battery, I am equalising it, fine?", False),
        ("The fuse of my windlass has burnt out three times, nothing warm. 70 A motor, 50 A fuse. Wrong size?", False),
        ("They left the charger on the lithium all week at -6 C. Nothing wrong with using it?", True),
    ],
)
def test_what_is_denied_excuses_nothing(text: str, hazard: bool) -> None:
    assert ("hazard" in {answer.topic for answer in talk(text).answers}) is hazard


@pytest.mark.parametrize(
    ("turns", "topics"),
    [
        (("One wet 100 Ah battery, 5 A of fridge and lamps. How long?",
          "what if I put a second one beside it, in parallel"),
         {"run-time"}),
        (("Three quick ones. May the gel lie on its side? Plus or minus first? And how often do I top up a wet one?",),
         {"mounting", "terminals", "maintenance"}),
        (("-6 C, 640 CCA wet, full. The bow motor takes 160 A. Does it still have the power on such a day?",),
         {"run-check"}),
    ],
)  # fmt: skip
def test_the_question_goes_on(turns: tuple[str, ...], topics: set[str]) -> None:
    assert {answer.topic for answer in talk(*turns).answers} == topics


def test_a_lithium_that_would_only_be_lighter_is_not_the_battery_aboard() -> None:
    text = "1.255 in five cells, 1.180 in one: what now? And would an 80 Ah lithium be lighter than mine of 24 kg?"
    assert of("specific-gravity", text).verdict == "no"
    assert of("weight", text).verdict == "information"


def test_a_charger_kept_for_another_kind_asks_for_its_setting() -> None:
    verdict, head = charger_suits.found(
        case({"battery.chemistry": ("lfp", "lead"), "bank.voltage": 12.0}, ["detail:same_charger"]), "lfp"
    )
    assert (verdict, "a lithium setting" in head) == ("needs-facts", True)


def test_a_battery_that_the_thruster_might_be_given_is_not_there_yet() -> None:
    text = "My engine starter battery, 690 CCA, for a 160 A thruster too? Or should I give the thruster its own?"
    assert of("run-check", text).verdict == "marginal"
    assert of("run-check", "The thruster has its own battery, 690 CCA. Enough for 160 A?").verdict == "yes"


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("A freezer of 5 A hangs on a full 100 Ah gel. After what period must it be switched off?", "run-time"),
        ("A lamp takes 2 A from an AGM of 60 Ah; for what period may it be left on?", "run-time"),
        ("After what period must a stored gel of 60 Ah be charged again?", "storage"),
        ("With everything switched off 0.1 A still flows from my 60 Ah gel. After what period is it half empty?",
         "standing-drain"),
    ],
)  # fmt: skip
def test_after_what_period(text: str, topic: str) -> None:
    assert [answer.topic for answer in talk(text).answers] == [topic]


def test_the_output_of_a_charger_is_asked_between_other_questions() -> None:
    ask = "A gel bank, 24 V, 150 Ah. First, it shows 25.0 V after the mains lead was off a day; is that fair? Next, "
    found = talk(ask + "what output ought the charger to have?").answers
    assert [(answer.topic, answer.verdict) for answer in found] == [
        ("rest-voltage", "marginal"),
        ("charger-size", "information"),
    ]
    banks = talk(ask + "how many outputs must the charger have for two banks?").answers
    assert "charger-size" not in [answer.topic for answer in banks]


@pytest.mark.parametrize(
    ("text", "topic", "verdict"),
    [
        ("My 24 V system feeds 800 CCA. Will it drive a 12 volt capstan of 90 A?", "run-check", "no"),
        ("May the 12 V winch be connected to the 24 V bank?", "bank-wiring", "no"),
        ("The winch takes 24 V and 90 A, the boat is 12 V, battery 900 CCA. Does it run?", "bank-wiring", "no"),
        ("The 24 V capstan of 90 A on the 24 V bank, two 800 CCA wets. Does it run?", "run-check", "yes"),
        ("Do four wets of 12 V and 700 CCA run a 24 V winch of 90 A?", "run-check", "yes"),
    ],
)
def test_a_motor_of_other_volts_than_the_bank(text: str, topic: str, verdict: str) -> None:
    assert (topic, verdict) in [(answer.topic, answer.verdict) for answer in talk(text).answers]
