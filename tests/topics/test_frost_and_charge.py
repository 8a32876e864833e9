"""A charge in frost: lithium on a panel is refused, nearly frozen lead is charged before the frost and not in it."""

from __future__ import annotations

import pytest

from service.leadsman import Leadsman


@pytest.mark.parametrize(
    "text",
    [
        "may my lithium stay on the solar panel through a freezing winter?",
        "LFP on solar from November to March at -7, is that ok",
        "is it fine if the panel charges my lithium in hard frost",
    ],
)
def test_a_panel_on_lithium_in_frost_is_refused(text: str) -> None:
    (answer,) = Leadsman().ask(text).answers
    assert (answer.topic, answer.verdict) == ("solar", "no")
    assert "shore end" not in answer.headline
    assert "may not be charged at or below 0" in answer.headline.replace("\N{NO-BREAK SPACE}", " ")


@pytest.mark.parametrize(
    ("text", "topic"),
    [
        ("can my lithium lie at -5 all winter with nothing connected?", "storage"),
        ("does lithium freeze at -15?", "freeze-point"),
        ("is a wet battery on a panel at risk of freezing at -15 when it is full?", "freeze-point"),
    ],
)
def test_without_a_panel_on_lithium_it_is_another_question(text: str, topic: str) -> None:
    assert Leadsman().ask(text).answers[0].topic == topic


@pytest.mark.parametrize(
    ("text", "then"),
    [
        ("wet battery at 12.0 V, the forecast is -11. Does it freeze?", "charge it full before that frost."),
        ("half full wet battery, minus 24 is coming on Friday. Will it freeze?", "charge it full before that frost."),
        ("it is -11 this morning, wet battery at 12.0 V. Will it freeze?", "charge only if free of ice."),
    ],
)
def test_nearly_frozen_is_charged_before_the_frost_and_never_with_ice(text: str, then: str) -> None:
    (answer, *_) = Leadsman().ask(text).answers
    assert (answer.topic, answer.verdict) == ("freeze-point", "marginal")
    assert answer.headline.endswith(then)
