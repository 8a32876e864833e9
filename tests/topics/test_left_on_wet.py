"""A sealed battery whose charger is left on the setting for wet cells: such a programme may equalise by itself."""

from __future__ import annotations

import pytest

from service.leadsman import default_desk


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("can I leave our AGM on 'flooded' through the winter?", "no"),
        ("The charger has been left on wet all winter, the battery is an AGM. Is that ok?", "no"),
        ("is the wet setting all right for one charge of my AGM?", "marginal"),
        ("may I leave the AGM on AGM all winter?", "yes"),
        ("It's a gel battery at the bow. May I leave it on wet?", "no"),
        ("Our AGM: is it good to keep mine on flooded, like his?", "no"),
        ("We have a gel battery, may we leave ours on wet?", "no"),
        ("A gel at the bow: can I keep ours on the wet setting?", "no"),
        ("Both are AGM, the charger does wet only. May I leave them on wet?", "no"),
        ("Both are AGM, the charger does wet only. May I keep them on wet?", "no"),
        ("The stern one is an AGM. Can I keep it on gel with this charger?", "marginal"),
    ],
)
def test_a_sealed_battery_left_on_wet(text, verdict):
    found = next(item for item in default_desk().ask(text).answers if item.topic == "charger-setting")
    assert found.verdict == verdict


@pytest.mark.parametrize(
    ("text", "urgency"),
    [
        ("A chap writes that his charger gives 14.9 V on wet. May I set mine to wet for a gel, too?", "routine"),
        ("My friend's charger does 14.9 V and his gel lives. Is that all right for my gel?", "routine"),
        ("My friend's charger does 14.9 V. I've used it on my gel since May. Is that all right?", "today"),
        ("He lent me his charger, 14.9 V, for my gel. Is that all right?", "today"),
        ("A client asks: his charger holds 14.9 V on our advice, and the battery is gel. Is that all right?", "today"),
        ("My charger does 14.9 V on wet. Is that all right for a gel?", "today"),
    ],
)
def test_the_volts_of_anothers_charger_harm_no_battery_of_theirs(text, urgency):
    reply = default_desk().ask(text)
    assert (reply.answers[0].verdict, reply.triage.urgency) == ("no", urgency)
