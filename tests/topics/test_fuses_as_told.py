"""Whole messages about fuses: one left out, one that blew, one whose cable is not known well enough."""

from __future__ import annotations

import pytest

from service.leadsman import default_desk
from service.reply import Reply
from tests.talks import on, plain


def ask(text: str) -> Reply:
    return default_desk().ask(text)


@pytest.mark.parametrize(
    "text",
    [
        "My mate swears the thruster only runs seconds, so you can leave the fuse out altogether. Is he right?",
        "can I leave out the fuse, the thruster runs only seconds",
        "could the fuse be left out of the thruster cable?",
        "neighbour reckons no fuse is needed for a stern thruster. true?",
        "is it ok to do without a fuse in the thruster feed",
    ],
)
def test_whether_a_fuse_may_be_left_out_is_no_and_no_danger(text):
    reply = ask(text)
    assert [(item.topic, item.verdict) for item in reply.answers] == [("fuse-size", "no")]
    assert reply.answers[0].headline.startswith("No, the fuse stays in")
    assert (reply.triage.urgency, reply.triage.route) == ("routine", "answered")


@pytest.mark.parametrize(
    "text",
    [
        "the previous owner left out the fuse. ok?",
        "I left the fuse out, the thruster runs only seconds",
        "we run the thruster without a fuse, it only runs seconds. ok?",
    ],
)
def test_a_fuse_that_was_left_out_is_a_danger(text):
    assert ask(text).answers[0].verdict == "stop"


@pytest.mark.parametrize(
    ("text", "verdict", "urgency", "parts"),
    [
        ("Yard fitted a 500 A fuse on the Sturgeon because the 300 kept going. 70 mm2 cable. Acceptable?", "no",
         "today", ("a 500 A fuse is too large", "450 A at most", "fit 350 A")),
        ("250 A fuse blew on a 180 A thruster with 50 mm2. the mate wants to put in a 400 A. ok?", "no", "today",
         ("a 400 A fuse is too large", "fit 225 A")),
        ("the 300 A fuse keeps blowing on my Sturgeon, 2/0 cable 105 C, can I put in a 350?", "yes", "routine",
         ("a 350 A fuse suits 280 A",)),
        ("the 200 A fuse blew so I fitted a 250 A one, 200 A thruster, 35 mm2 105C. ok?", "marginal", "routine",
         ("a 250 A fuse is over the 225 A that suits 35 mm²",)),
        ("is a 350 A fuse ok for the pike on 1/0?", "needs-facts", "routine",
         ("with 105 °C insulation 1/0 AWG takes the 350 A fuse (2/0 AWG fits better)",)),
        ("fuse for the pike on 1/0 cable 16ft", "needs-facts", "routine", ("too thin for 260 A",)),
    ],
)  # fmt: skip
def test_a_fuse_is_judged_by_what_is_on_board(text, verdict, urgency, parts):
    reply = ask(text)
    assert [(item.topic, item.verdict) for item in reply.answers] == [("fuse-size", verdict)]
    assert reply.triage.urgency == urgency
    for part in parts:
        assert part in reply.answers[0].headline.replace("\u00a0", " ")


@pytest.mark.parametrize("who", ["crews lean", "guests lean", "the skipper leans"])
def test_a_button_that_is_leant_on_does_not_stick(who):
    text = f"Minnow on a 95 Ah leisure battery with no cranking figure, {who} on the button. Can we carry on with it?"
    assert [(item.topic, item.verdict) for item in ask(text).answers] == [("run-check", "no")]
    stuck = ask("I lean on the button and the thruster will not stop")
    assert stuck.triage.urgency == "stop-now"


@pytest.mark.parametrize(
    ("text", "verdict", "parts"),
    [
        ("thruster fed by 50 mm2, 6 metres each way, running 180 A at 12 V, a 250 A ANL mounted about a metre and a "
         "half from the battery. Comment on cable, fuse and position please.", "no",
         ("No: the fuse belongs within 7 in", "1.5 m (4.92 ft) away", "a 250 A fuse suits 180 A on 50 mm²",
          "0.77 V or 6.4 %, within the 10 % allowed")),
        ("250 A fuse 1.5 m from the battery, ok?", "no", ("1.5 m (4.92 ft) away",)),
        ("can the fuse be 2 m from the battery", "no", ("2 m (6.56 ft) away",)),
        ("the breaker sits half a metre from the batteries, matter?", "no", ("500 mm (20 in) away",)),
        ("fuse 150mm from the battery ok?", "yes", ("150 mm (6 in) from the battery is near enough",)),
        ("what fuse for a thruster 6 m from the battery", "needs-facts", ()),
    ],
)  # fmt: skip
def test_the_place_of_a_fuse_is_judged_by_its_distance(text, verdict, parts):
    found = [item for item in ask(text).answers if item.topic == "fuse-size"]
    assert [item.verdict for item in found] == [verdict]
    said = " ".join([found[0].headline, *(step.say for step in found[0].working)]).replace("\u00a0", " ")
    for part in parts:
        assert part in said


@pytest.mark.parametrize(
    ("text", "start"),
    [
        (
            "fuse 250A ANL on 50mm2, Minnow 12V. ok y/n",
            "Yes: a 250 A fuse is within what 50 mm² allows, but fit the 175 A",
        ),
        (
            "Pike with 95 mm2 of 105 C: may I leave the 400 A fuse that is in?",
            "Yes: a 400 A fuse is within what 95 mm² allows, but fit",
        ),
        ("150 A fuse, Minnow, 35 mm2 cable, fine?", "Yes: a 150 A fuse is enough for 120 A running, but fit the 175 A"),
        ("175 A fuse on 35 mm2 for the Minnow, ok?", "Yes: a 175 A fuse suits 120 A on 35 mm²"),
        ("fuse 250A on 50mm2, 120 A thruster. ok?", "Yes: a 250 A fuse suits 120 A on 50 mm²"),
        ("On our Minnow the fuse belongs at the thruster end, I was told. Right?", "No: a 175 A fuse belongs"),
        ("Fuse at the thruster end, 120 A thruster. Right?", "No: a 150 A fuse belongs"),
    ],
)
def test_the_fuse_that_the_catalogue_names_is_the_one_to_fit(text, start):
    assert ask(text).answers[0].headline.replace("\u00a0", " ").startswith(start)


@pytest.mark.parametrize(
    "text",
    [
        "Wiring up a new 130 A winch. A mate swears only starters go without a fuse. What size of fuse and where?",
        "About to wire in a new 130 A windlass, and the yard reckons boats go without a fuse. Which fuse, please?",
    ],
)
def test_what_others_say_of_a_circuit_yet_to_be_wired_is_no_danger(text):
    found = on("fuse-size", text)
    assert (found.verdict, found.urgency) == ("information", "routine")
    assert "175 A fuse" in plain(found.headline)
