"""What this desk does not answer is told to be outside it, and who reads it."""

from __future__ import annotations

import pytest

from tests.talks import talk


@pytest.mark.parametrize(
    ("text", "route"),
    [
        ("Can you tell me what antifouling paint goes on the thruster propeller?", "technician"),
        ("what anode do I need for the thruster", "technician"),
        ("How often do I change the gear oil of the Sturgeon?", "technician"),
        ("My anchor windlass gearbox leaks oil, which oil do I put in", "technician"),
        ("which grease for the winch", "technician"),
        ("which oil filter for the engine?", "other-desk"),
    ],
)
def test_oil_paint_and_anodes_are_outside_this_desk(text: str, route: str) -> None:
    reply = talk(text)
    (found,) = reply.answers
    assert found.topic == "unclear"
    assert found.headline.startswith("That is outside what this desk")
    assert reply.triage.route == route


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("which grease for the battery terminals", "maintenance"),
        ("what anode do I need, and which battery for the Minnow?", "bank-size"),
        ("which oil for the windlass, and what fuse does it need at 80 A?", "fuse-size"),
        ("the thruster battery leaks oil, which oil is that", "hazard"),
        ("the thruster motor smokes, what oil", "hazard"),
    ],
)
def test_what_is_electrical_beside_them_is_answered(text: str, topic: str) -> None:
    assert talk(text).answers[0].topic == topic


@pytest.mark.parametrize(
    ("text", "route"),
    [
        ("haha, where do the mackerel run in June", "other-desk"),
        ("Thanks! What is the best pub in Falmouth?", "other-desk"),
        ("great stuff, what time does the lock open tomorrow", "other-desk"),
        ("Hello, is anybody there?", "answered"),
        ("thanks, that was a great help", "answered"),
        ("hi, may I ask you something?", "answered"),
        ("lol, who would have thought", "answered"),
        ("what a relief, thanks", "answered"),
    ],
)
def test_what_is_asked_beside_a_laugh_or_thanks_is_for_another_desk(text: str, route: str) -> None:
    reply = talk(text)
    assert ({item.topic for item in reply.answers} | {"unclear"}) == {"unclear"}
    assert reply.triage.route == route


@pytest.mark.parametrize(
    "text",
    [
        "Moet ik het water in de accu bijvullen voordat het vriest?",
        "Welke accu moet ik niet opladen in de winter?",
        "Muss die Batterie nach Hause, oder kann sie nicht an Bord bleiben, wenn es kalt wird?",
        "Combien de charge dois je garder dans la batterie?",
    ],
)
def test_another_language_is_handed_over_whatever_words_it_shares(text: str) -> None:
    reply = talk(text)
    assert ([item.topic for item in reply.answers], reply.triage.route) == (["unclear"], "technician")
    assert talk("My accu wants water, het hot weather. How often do I top it up?").answers[0].topic == "maintenance"


@pytest.mark.parametrize(
    ("text", "route"),
    [
        ("It's done it again, worse than in my previous message. Any ideas?", "technician"),
        ("same trouble as yesterday, what now?", "technician"),
        ("Back again: still the same. Can you help?", "technician"),
        ("Will the pub be open again tomorrow?", "other-desk"),
        ("best mooring in Falmouth", "other-desk"),
        ("anyone know a good sailmaker", "other-desk"),
        ("weather on sunday", "other-desk"),
        ("best one for us", "technician"),  # of what, is not told: it may be of ours
        ("her name is Ondine", "technician"),
    ],
)
def test_what_names_nothing_is_for_a_person_and_what_names_another_trade_is_not(text: str, route: str) -> None:
    reply = talk(text)
    assert ([item.topic for item in reply.answers], reply.triage.route) == (["unclear"], route)
