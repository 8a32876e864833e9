"""A charger that stays in bulk for days is named as a fault, and comes off where the battery is warm."""

from __future__ import annotations

import pytest

from tests.talks import talk


@pytest.mark.parametrize(
    "text",
    [
        "what is absorption and float mean, my charger has a bulk light on for 2 days",
        "charger stays on bulk for three days now and never goes to absorption, 100 Ah AGM. why",
        "The bulk lamp has been lit for two days, is that right?",
        "for three days the charger is stuck in bulk, lithium 100 Ah",
        "my charger has been stuck in bulk for days, AGM",
    ],
)
def test_bulk_for_days_is_a_fault(text: str) -> None:
    found = talk(text).answers[-1]
    assert (found.topic, found.verdict, found.urgency) == ("charger-setting", "no", "today")
    assert found.headline.startswith("Bulk that does not end in a day")
    assert found.headline.endswith("if warm, switch off.")


@pytest.mark.parametrize(
    "text",
    [
        "the charger sits in absorption since Friday, two wet batteries of 110 Ah, 15 A. harmful?",
        "yellow lamp, absorption, four days now on the charger, 2 x 95 Ah AGM",
        "our charger never leaves absorption, gel 90 Ah",
    ],
)
def test_absorption_for_days_is_a_fault_and_comes_off(text: str) -> None:
    found = talk(text).answers[-1]
    assert (found.topic, found.verdict, found.urgency) == ("charger-setting", "no", "today")
    assert found.headline.startswith("Absorption that does not end in a day")
    assert "switch it off" in found.headline


@pytest.mark.parametrize(
    "text",
    [
        "bulk for 4 hours and then absorption, is 14.6 ok for AGM",
        "we buy in bulk every 2 weeks, what setting for gel",
        "what does float and bulk mean, and which setting for gel?",
        "which setting for AGM, and how high is bulk?",
        "absorption lasts 3 days on my charger, 14.4 V, wet battery, ok?",
    ],
)
def test_bulk_that_ends_is_none(text: str) -> None:
    assert not any("does not end" in item.headline for item in talk(text).answers)


@pytest.mark.parametrize(
    "text",
    [
        "what is absorption and float mean, my charger has a bulk light on for 2 days",
        "what does absorption and float mean, and which setting for my gel?",
    ],
)
def test_both_terms_are_explained_beside_another_question(text: str) -> None:
    head = talk(text).answers[0].headline
    assert "Absorption is" in head
    assert "float is" in head
