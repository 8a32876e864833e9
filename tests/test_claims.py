"""What somebody else says is checked as a claim: yes and no answer it, and its own limits and sums are no facts."""

from __future__ import annotations

import pytest

from grammar import read
from service.leadsman import Leadsman, default_desk
from service.reply import Answer
from service.wording.claims import claim, unclaimed


def answers(text: str) -> tuple[Answer, ...]:
    return Leadsman().ask(text).answers


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("The rigger reckons that 2 AWG is plenty. Is he right?", "2 AWG is plenty"),
        ("A dealer told my customer 25 mm2 is too thin. True?", "25 mm2 is too thin"),
        ("Is it true that AGM needs no water?", "AGM needs no water?"),
        ("Is he wrong when he says 800 CCA is enough?", "800 CCA is enough"),
    ],
)
def test_what_is_claimed_is_found(text: str, said: str) -> None:
    found = claim(text)
    assert found is not None
    assert found.checked
    assert said.startswith(text[slice(*found.span)])


@pytest.mark.parametrize(
    "text",
    ["The label says 800 CCA. Is that right?", "meter says 12.4 at rest, true?", "12.4 V at rest on an AGM, ok?"],
)
def test_an_instrument_claims_nothing(text: str) -> None:
    assert claim(text) is None


def test_a_reason_is_told_apart() -> None:
    text = "He says a 300 A fuse is fine because the motor is smaller. True?"
    found = claim(text)
    assert found is not None
    assert text[found.reason :].startswith("because")


@pytest.mark.parametrize(
    ("text", "facts"),
    [
        ("Yard says two 350 CCA batteries in parallel make 700 CCA. True?", [("battery.cca", 350.0)]),
        ("He reckons four 6 V 225 Ah in series give 900 Ah. Right?", [("battery.capacity", 225.0)]),
        ("Fitter claims 650 MCA will do as it needs 650 CCA. Is he right?", [("battery.ca", 650.0)]),
        ("Inspector wrote that 3 % is the limit on 200 A. Is that so?", []),
    ],
)
def test_claimed_sums_and_limits_are_no_facts(text: str, facts: list[tuple[str, float]]) -> None:
    kept, taken = unclaimed(read(text))
    told = ("battery.cca", "battery.ca", "battery.capacity", "cable.drop")
    assert [(item.fact, item.value) for item in kept.stated if item.fact in told] == facts
    assert taken


@pytest.mark.parametrize(
    "text",
    ["two batteries of 400 CCA and 800 CCA, may I mix them?", "10 A plotter over 6 m, 3 % allowed: which cable?"],
)
def test_what_nobody_claims_stays_told(text: str) -> None:
    message = read(text)
    assert unclaimed(message) == (message, ())


@pytest.mark.parametrize(
    ("text", "first", "verdict"),
    [
        ("Yard says 16 mm2 is enough for the Minnow over 5 m. Is that right?", "No: 16", "no"),
        ("Yard says 16 mm2 is not enough for the Minnow over 5 m. Is that right?", "Yes: 16", "no"),
        ("Mate reckons a 225 A breaker on 1/0 is over the limit for 180 A. Is it?", "No: ", "yes"),
        ("Boatyard thinks a 150 A breaker on 1/0 will do for a 180 A thruster. Do you agree?", "No: ", "no"),
        ("My brother says 800 CCA is too little for the Pike. True?", "No: ", "yes"),
        ("Is he wrong when he says 800 CCA is enough for the Pike?", "No: ", "yes"),
        ("He says a 60 A alternator is too small for a 30 A 12 to 24 charger, lead. Is it?", "Not quite: ", "marginal"),
        (
            "Mechanic said the battery is dead, 12.1 V agm after a night. is that right?",
            "Not by this reading: ",
            "no",
        ),
        (
            "My uncle, an electrician, says a charger with 2 outputs is daft for two banks. Is he right?",
            "No: ",
            "yes",
        ),
        ("A friend reckons one charger with 2 outputs for two banks is nonsense. Is he right?", "No: ", "yes"),
        ("My mate says it's not silly to use a charger with 2 outputs for two banks. Is he right?", "Yes: ", "yes"),
        ("The chandler, a nice man, says a charger with 2 outputs is right for two banks. Is he?", "Yes: ", "yes"),
    ],
)
def test_yes_and_no_answer_the_claim(text: str, first: str, verdict: str) -> None:
    (found,) = answers(text)
    assert found.headline.startswith(first)
    assert found.verdict == verdict


@pytest.mark.parametrize(
    ("text", "headline"),
    [
        (
            "He says two 500 CCA in parallel give 1000 CCA. True?",
            "Yes: two batteries in parallel (plus to plus) give 12",
        ),
        ("He says two 100 Ah in series give 200 Ah. True?", "No: two batteries in series (plus to minus) give 24"),
        ("Seller claims RC 120 means 120 Ah. Is he right?", "No: 120 min of reserve is about 73"),
        ("Owner says his 800 MCA battery has 800 CCA. True?", "No: 800 cranking amps (0 °C) are about 640"),
    ],
)
def test_a_claimed_sum_is_worked_out(text: str, headline: str) -> None:
    assert answers(text)[0].headline.replace("\u00a0", " ").startswith(headline)


def test_a_claimed_limit_condemns_no_cable() -> None:
    text = "Surveyor told him that 3 % is the limit for a windlass, so 100 A on 25 mm2 over 5 m is too thin. True?"
    (found,) = answers(text)
    assert found.verdict == "yes"
    assert found.headline.startswith("No: 3")
    assert "within the limit of 10" in found.working[0].say


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("2 x 100 Ah AGM parallel, thruster 300 A. Skipper reckons 40 minutes flat out. Is that right?", "No: "),
        ("100 Ah AGM, 200 A thruster at 12 V. The dealer says 30 minutes flat out. Is he right?", "No: "),
        ("90 Ah AGM and a 200 A thruster at 12 V. The seller says 2 minutes flat out. Is that correct?", "Yes: "),
        ("Skipper says 40 minutes is too long for a 300 A thruster on 200 Ah of AGM at 12 V. Is he right?", "Yes: "),
        ("The yard says the AGM is flat at 12.7 V at rest. Are they right?", "No: "),
    ],
)
def test_flat_out_is_a_way_to_run_and_nothing_bad(text, opens):
    assert default_desk().ask(text).answers[0].headline.startswith(opens)
