"""What a later message says in few words of the battery and the charger that were told before."""

from __future__ import annotations

import pytest

from grammar import read
from grammar.reading import Stated

GEL = Stated("battery.chemistry", "gel", "", "gel", (0, 0))
SIZE = Stated("battery.capacity", 90.0, "ampere_hour", "90 Ah", (0, 0))
TWO = Stated("battery.count", 2.0, "", "two", (0, 0))
HALF = Stated("battery.charge", 50.0, "percent", "half", (0, 0))
CHARGER = Stated("charger.current", 10.0, "ampere", "10 amps", (0, 0))
DRAIN = Stated("drain.current", 0.3, "ampere", "0.3 A", (0, 0))


def stated(text: str, *said: Stated, likely: tuple[str, ...] = ()) -> dict[str, object]:
    """The facts that a message states after others."""
    return {item.fact: item.value for item in read(text, said=said, likely=likely).stated}


@pytest.mark.parametrize("text", ["15's on offer, too hot?", "15 in the sale, too much?", "the shop has a 15"])
def test_a_charger_on_offer_is_no_battery(text: str) -> None:
    found = stated(text, SIZE, GEL, likely=("charger.current",))
    assert (found.get("charger.current"), "battery.capacity" in found) == (15.0, False)


@pytest.mark.parametrize(
    "text", ["and it's in WET, should've said", "it stands on WET by the way", "oh and it is in wet at the moment"]
)
def test_it_is_the_charger_where_the_battery_is_of_another_kind(text: str) -> None:
    found = stated(text, CHARGER, SIZE, GEL)
    assert (found.get("charger.setting"), "battery.chemistry" in found) == ("flooded", False)


def test_it_is_the_battery_where_no_charger_was_told() -> None:
    assert "charger.setting" not in stated("it's on wet ground, the battery", SIZE, GEL)


@pytest.mark.parametrize(
    ("text", "charge"), [("quarter", 25.0), ("and at three quarters?", 75.0), ("a third", 100 / 3)]
)
def test_another_share_of_the_charge(text: str, charge: float) -> None:
    assert stated(text, HALF, GEL)["battery.charge"] == pytest.approx(charge)


def test_a_share_of_an_amp_is_no_charge() -> None:
    assert "battery.charge" not in stated("a tenth, sorry", DRAIN, HALF)


@pytest.mark.parametrize("text", ["charger need one or two", "one charger or two for it"])
def test_a_choice_counts_no_battery(text: str) -> None:
    assert "battery.count" not in stated(text, TWO, GEL)


@pytest.mark.parametrize("text", ["and if it had a twin, side by side?", "suppose it got a brother, in parallel"])
def test_a_twin_makes_two(text: str) -> None:
    assert stated(text, GEL, SIZE)["battery.count"] == 2.0


@pytest.mark.parametrize(("text", "years"), [("it's 7. bin?", 7.0), ("the thing's five, past it?", 5.0)])
def test_a_figure_before_an_end_is_of_years(text: str, years: float) -> None:
    assert stated(text, GEL, SIZE)["battery.age"] == years
