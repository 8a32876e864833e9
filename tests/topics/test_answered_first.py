"""The direct answer opens the headline: whether it is a lot, which of two ways, how cold, what a thing weighs."""

from __future__ import annotations

import pytest

from tests.talks import on, plain


@pytest.mark.parametrize(
    ("topic", "text", "start"),
    [
        ("standing-drain", "50 mA flows with all off, AGM of 90 Ah. Is that much?", "Yes, for a boat left alone"),
        ("standing-drain", "8 mA with everything off on a 180 Ah bank, is it a lot?", "No, not much"),
        ("standing-drain", "50 mA flows with all off, AGM of 90 Ah. How many days?", "About 37 days until half"),
        ("bank-wiring", "two 12 V AGM of 80 Ah: parallel or series for the Minnow?", "In parallel (plus to plus): two"),
        ("bank-wiring", "series or parallel for a 24 V thruster?", "In series (plus to minus), two of 12 V"),
        ("bank-wiring", "may I put two 12 V AGM of 80 Ah in parallel?", "Yes: two batteries in parallel"),
        ("freeze-point", "How cold may it get before a half full one freezes, and what does 640 CCA give at -15?",
         "It freezes at about -26"),
        ("freeze-point", "will my half full battery freeze at -15?", "No, it will not freeze at -15"),
        ("voltage-drop", "24 ft there and back of 1/0 at 250 A, what is the loss?", "1/0 AWG loses 0.65 V"),
        ("voltage-drop", "24 ft there and back of 1/0 at 250 A, is the loss ok?", "We can't say yet"),
        ("weight", "my battery weighs 55 lb, how much would lithium weigh?", "About 27.5 lb (12.5 kg): lithium"),
        ("weight", "my battery weighs 25 kg, how much lighter is lithium?", "About 12.5 kg lighter"),
        ("charger-setting", "does an AGM want a special charger?", "Yes: one with an AGM setting, absorption 14.2"),
        ("charger-setting", "do wet batteries need a special charger?", "No special one: one with a wet-cell"),
        ("ventilation", "must an AGM box of 120 Ah have vents?", "Yes: the space needs about 0.288"),
        ("ventilation", "what size of vents for an AGM box of 120 Ah?", "The space needs about 0.288"),
        ("hazard", "do gel batteries explode?", "Yes, that can happen; if it does: people first"),
        ("run-check", "Does it matter that mine shows 950 MCA? 280 A thruster", "No: 950 A at 0 °C (MCA) are 760"),
        ("run-check", "It has 820 AGM CCA, 3/0 cable of 12 m, to a thruster, which takes 310 A. Does that work?", "No"),
    ],
)  # fmt: skip
def test_what_was_asked_is_answered_first(topic: str, text: str, start: str) -> None:
    assert plain(on(topic, text).headline).startswith(start)
