"""Another kind of battery: does it want another charger, and may the alternator charge it."""

import pytest

from tests.talks import on, plain, talk

LIST = (
    "We are thinking of moving from AGM to LiFePO4 in the bow. 1) Does it fit the same box, it's now a group 31? "
    "2) Do I need a new charger? 3) Will my alternator charge it safely?"
)


@pytest.mark.parametrize(
    "text",
    [
        LIST,
        "Lithium in the bow: does the alternator charge it? And do I need another charger?",
        "Which setting for lithium, and must we buy a different charger?",
    ],
)
def test_another_charger_only_where_theirs_lacks_the_setting(text):
    found = on("charger-setting", text)
    assert plain(found.headline).startswith(
        "Only if yours has no lithium setting: a lithium battery takes 14.2 to 14.6"
    )
    assert found.asks[0].fact == "charger.setting"


@pytest.mark.parametrize(
    "text",
    [LIST, "we move from AGM to LiFePO4. Will my alternator charge it safely?", "Will my alternator charge lithium?"],
)
def test_lithium_that_is_to_come_is_not_charged_straight_from_the_alternator(text):
    answers = [plain(item.headline) for item in talk(text).answers]
    assert any(head.startswith("Not straight from the alternator") for head in answers)


@pytest.mark.parametrize(
    ("topic", "text", "opens"),
    [
        ("charger-size", "I need a new charger for 100 Ah AGM, what size?", "100 Ah of AGM takes a charger of"),
        ("charger-setting", "which setting for lithium", "Use the lithium setting"),
        (
            "charger-setting",
            "Can I swap my AGM for lithium and keep the same charger?",
            "We can't say yet: the charger",
        ),
    ],
)
def test_where_no_new_charger_is_asked_about_nothing_changes(topic, text, opens):
    assert plain(on(topic, text).headline).startswith(opens)
