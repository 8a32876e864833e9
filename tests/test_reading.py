"""How messages are read: facts from phrases as data, corrections, bare replies, cues, clauses; what holds for all."""

from __future__ import annotations

import json
import tomllib
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from lark import Lark

from grammar import read
from grammar.facts import facts
from grammar.lexicon import vocabulary
from grammar.reading import Stated
from grammar.scene import claims as attach
from grammar.scene import groups
from grammar.text.spelling import mended
from tests.timing import seconds

MODELS = ("Minnow", "Pike", "Sturgeon")
EXAMPLES = sorted(Path(__file__).with_name("reading").glob("*.*.toml"))
TABLES = {path.name.removesuffix(".toml"): tomllib.loads(path.read_text(encoding="utf-8")) for path in EXAMPLES}
STATES = [
    (fact, row["value"], phrase)
    for fact, table in TABLES.items()
    for row in table["states"]
    for phrase in row["phrases"]
]
SILENT = [(fact, phrase) for fact, table in TABLES.items() for row in table["silent"] for phrase in row["phrases"]]
PIECES = st.sampled_from(
    [
        "two",
        "12",
        "V",
        "100",
        "Ah",
        "AGM",
        "850",
        "CCA",
        "thruster",
        "340",
        "A",
        "draws",
        "charger",
        "10",
        "amps",
        "fuse",
        "2/0",
        "cable",
        "15",
        "ft",
        "each",
        "way",
        "not",
        "or",
        "sorry",
        "12.6",
        "->",
        "9.9",
        "@",
        "half",
        "charged",
        "series",
        "parallel",
        "2s2p",
        "group",
        "31",
        "minus",
        "five",
        "?",
        ".",
        ",",
        "/",
        "(",
        ")",
        "isn't",
        "1.265",
        "70mm",
        "lithium",
        "Pike",
    ]
)


def values(text: str, fact: str, *, of: int | None = None, expecting: tuple[str, ...] = ()) -> list[object]:
    """What a text states for a fact, in its order."""
    stated = read(text, MODELS, expecting).stated
    return [item.value for item in stated if item.fact == fact and of in (None, item.of)]


@pytest.mark.parametrize(("fact", "value", "phrase"), STATES)
def test_a_phrase_states_the_fact(fact: str, value: object, phrase: str) -> None:
    wanted = pytest.approx(value, rel=0.002) if isinstance(value, float) else value
    assert wanted in values(phrase, fact)


@pytest.mark.parametrize(("fact", "phrase"), SILENT)
def test_a_phrase_that_states_nothing(fact: str, phrase: str) -> None:
    assert values(phrase, fact) == []


def test_tables_and_examples_speak_of_facts_of_the_contract() -> None:
    beside = {fact for row in attach.heads().values() for fact in row.values()} - {attach.NOT_OURS}
    by_words = {kind.removeprefix("=") for kind, _, _ in vocabulary.values()}
    assert set(TABLES) | beside | by_words | set(attach.roles()) <= set(facts())


@pytest.mark.parametrize(
    ("text", "fact", "first", "second"),
    [
        ("lithium or agm for a bow thruster", "battery.chemistry", ["lfp"], ["agm"]),
        ("should I take 2/0 or 4/0 cable", "cable.gauge", ["2/0"], ["4/0"]),
        ("should I have had a 350 or a 400 A fuse", "fuse.rating", [350.0], [400.0]),
        ("run time 100ah agm not 260a, 160a", "load.current", [160.0], []),
        ("12 V... sorry 24 not 12 volts", "bank.voltage", [24.0], []),
        ("380 amps it draws. Sorry, misread, 330.", "load.current", [330.0], []),
        ("It takes 290 A. Sorry, wrong plate, 240. 850 CCA wet.", "load.current", [240.0], []),
        ("Battery is 110 Ah, oops, typo, 120. AGM.", "battery.capacity", [120.0], []),
        ("Cable 6 m, scratch that, 8. 250 A.", "cable.length", [8.0], []),
        ('"four hours of sun" is a laugh, call it one and a half, 80 W panel', "solar.sun_hours", [1.5], []),
        ("five hours of sun a day here but no, call it two. 100 W panel", "solar.sun_hours", [2.0], []),
        ("The leaflet says 6 hours of sun; make it 3. 80 W panel", "solar.sun_hours", [3.0], []),
        ("Draws 250 A. Sorry, 2 questions: fuse? cable 6 m?", "load.current", [250.0], []),
        ("Sorry, I have two. 90 Ah each, AGM", "battery.capacity", [90.0], []),
        ("My gel is 90 Ah, sorry if this is long, 12.6 at rest", "battery.capacity", [90.0], []),
        ("a jumper for GEL or for FLOODED on the regulator; my battery is AGM", "battery.chemistry", ["agm"], []),
        (
            "There's a toggle on my charger, STD / AGM / GEL, and someone's had it at GEL. It has unscrewable caps.",
            "battery.chemistry",
            ["flooded"],
            [],
        ),
        ("Bridge passage, gel or agm for a bow thruster?", "battery.chemistry", ["gel"], ["agm"]),
        ("agm, not lithium", "battery.chemistry", ["agm"], []),
        ("a sealed AGM", "battery.chemistry", ["agm"], []),
        ("Nearly wrote 95 mm2, but the sleeve reads 70 mm2.", "cable.area", [70.0], []),
        ("I was about to say gel but the lid says AGM", "battery.chemistry", ["agm"], []),
        ("I'd have sworn it had 140 Ah. It turned out to be 120 Ah", "battery.capacity", [120.0], []),
        ("We thought the motor drew 160 A, but the clamp says 210 A", "load.current", [210.0], []),
        ("We thought 160 A was a lot, but the other motor draws 210 A", "load.current", [160.0], [210.0]),
        ("I thought I had a 90 Ah AGM, but there is also a 110 Ah one", "battery.capacity", [90.0], [110.0]),
    ],
)
def test_alternatives_stand_as_two_and_corrections_as_one(
    text: str, fact: str, first: list[object], second: list[object]
) -> None:
    assert (values(text, fact, of=1), values(text, fact, of=2)) == (first, second)


def test_a_range_stands_once_at_its_safe_end() -> None:
    (demand,) = (item for item in read("the thruster draws 350 to 400 A").stated if item.fact == "load.current")
    assert (demand.value, demand.low, demand.high) == (400.0, 350.0, 400.0)


def test_cells_that_differ_give_their_spread() -> None:
    assert values("five cells 1.265, one cell 1.180", "reading.gravity_spread") == [pytest.approx(0.085)]


@pytest.mark.parametrize(
    ("text", "expecting", "value"),
    [
        ("340", "load.current", 340.0),
        ("about 850", "battery.cca", 850.0),
        ("24", "bank.voltage", 24.0),
        ("15 feet each way", "cable.length", 4.572),
        ("340 A", "battery.peak_current", 340.0),
        ("AGM", "charger.setting", "agm"),
        ("yes", "charger.isolated", True),
        ("no", "converter.common_negative", False),
    ],
)
def test_a_bare_reply_answers_what_was_asked(text: str, expecting: str, value: object) -> None:
    wanted = pytest.approx(value) if isinstance(value, float) else value
    assert values(text, expecting, expecting=(expecting,)) == [wanted]


def test_a_reply_of_another_kind_answers_nothing() -> None:
    assert values("AGM", "battery.cca", expecting=("battery.cca",)) == []
    assert values("12 V", "cable.length", expecting=("cable.length",)) == []


SAID = (  # newest first
    Stated("load.current", 420.0, "ampere", "420 amps", (0, 0)),
    Stated("cable.length", 7.3152, "meter", "24 foot", (0, 0)),
    Stated("cable.area", 35.0, "millimeter ** 2", "35 mm2", (0, 0)),
    Stated("battery.group", "4D", "", "4D", (0, 0)),
    Stated("battery.cca", 680.0, "ampere", "680 CCA", (0, 0)),
    Stated("battery.count", 2.0, "", "two", (0, 0)),
    Stated("reading.load_voltage", 9.2, "volt", "9.2", (0, 0)),
)


@pytest.mark.parametrize(
    ("text", "fact", "value"),
    [
        ("not 420, 240. 420 is the peak", "load.current", 240.0),
        ("not 420, 240. 420 is the peak", "load.peak", 420.0),
        ("sorry, 24 was there AND back", "cable.length", 3.6576),
        ("what about the 70", "cable.area", 70.0),
        ("no wait, 31", "battery.group", "31"),
        ("400 to be exact", "load.current", 400.0),
        ("half the amps", "load.current", 210.0),
        ("marine amps it says, not the cold ones", "battery.ca", 680.0),
        ("and with another identical one", "battery.count", 3.0),
        ("12.6 before I press it", "reading.voltage", 12.6),
        ("and at 8.9?", "reading.load_voltage", 8.9),
        ("8 m of that is the sum of plus and minus", "cable.length", 4.0),
        ("2 x 50 then?", "cable.area", 50.0),
        ("two of these", "battery.count", 2.0),
        ("same, three of", "battery.count", 3.0),
        ("two of the same, in parallel", "battery.count", 2.0),
        ("same but two off", "battery.count", 2.0),
        ("and 31?", "battery.group", "31"),
        ("sorry 24 is both ways added together", "cable.length", 3.6576),
        ("the label reads 590, so I was mistaken about it when I wrote to you", "battery.cca", 590.0),
    ],
)
def test_a_later_message_speaks_of_what_was_said(text: str, fact: str, value: object) -> None:
    found = [item.value for item in read(text, MODELS, said=SAID).stated if item.fact == fact]
    assert found == [pytest.approx(value) if isinstance(value, float) else value]


FIRST_SAID = {
    "load.power": Stated("load.power", 1500.0, "watt", "1.5 kW", (0, 0)),
    "battery.capacity": Stated("battery.capacity", 200.0, "ampere_hour", "200 Ah", (0, 0)),
    "cable.gauge": Stated("cable.gauge", "2", "", "2 awg", (0, 0)),
    "load.current": Stated("load.current", 230.0, "ampere", "230 A", (0, 0)),
    "load.kind": Stated("load.kind", "thruster", "", "thruster", (0, 0)),
    "reading.load_voltage": Stated("reading.load_voltage", 9.4, "volt", "9.4", (0, 0)),
    "cable.insulation": Stated("cable.insulation", 105.0, "degree_Celsius", "105 degree", (0, 0)),
    "battery.cca": Stated("battery.cca", 700.0, "ampere", "700 CCA", (0, 0)),
    "reading.gravity": Stated("reading.gravity", 1.21, "", "1.21", (0, 0)),
    "battery.age": Stated("battery.age", 7.0, "year", "4 to 7 years", (0, 0), low=4.0, high=7.0),
    "ambient.temperature": Stated("ambient.temperature", 3.0, "degree_Celsius", "3 degrees", (0, 0)),
}
CHARGED = (  # newest first
    Stated("charger.current", 25.0, "ampere", "25 A", (0, 0)),
    Stated("battery.count", 2.0, "", "two", (0, 0)),
    Stated("battery.capacity", 160.0, "ampere_hour", "160", (0, 0)),
    Stated("battery.charge", 40.0, "percent", "40%", (0, 0)),
    Stated("alternator.current", 60.0, "ampere", "60 A", (0, 0)),
    Stated("charger.voltage", 14.2, "volt", "14.2", (0, 0)),
    Stated("battery.nominal", 12.0, "volt", "12 V", (0, 0)),
)


@pytest.mark.parametrize(
    ("text", "before", "fact", "value"),
    [
        ("24", "load.power", "bank.voltage", 24.0),
        ("could a 30 do it then", "battery.capacity", "charger.current", 30.0),
        ("and with three?", "battery.capacity", "battery.count", 3.0),
        ("is 35 over or under it", "cable.gauge", "cable.area", 35.0),
        ("windlass so 10 percent", "cable.gauge", "cable.drop", 10.0),
        ("it was a 250, I put a 300 in and it held", "load.kind", "fuse.rating", 300.0),
        ("the one in there is a 350", "load.current", "fuse.rating", 350.0),
        ("320 amps, fifteen seconds", "reading.load_voltage", "reading.current", 320.0),
        ("75 C is what's printed", "cable.insulation", "cable.insulation", 75.0),
        ("they're 120s", "battery.capacity", "battery.capacity", 120.0),
        ("no they'd be in parallel", "battery.capacity", "bank.layout", "parallel"),
        ("what charger for all 3", "battery.capacity", "battery.count", 3.0),
        ("how long to refill those with a 30", "battery.capacity", "charger.current", 30.0),
        ("would the system be fine on 24 V, sorry", "reading.load_voltage", "bank.voltage", 24.0),
        ("will it turn a 150 A unit then", "battery.cca", "load.current", 150.0),
        ("it says mca on it", "battery.cca", "battery.ca", 700.0),
        ("no kettle then. coffee machine 900", "load.power", "load.power", 900.0),
        (
            "oh 220. I had the wrong motor's papers in my hand when I wrote to you just now, and the rest of it stands"
            " as I said it the first time",
            "load.current",
            "load.current",
            220.0,
        ),
        ("and 4?", "cable.gauge", "cable.gauge", "4"),
        ("6", "battery.age", "battery.age", 6.0),  # of a range said before, not in proportion to it
        ("it's warmed to 15 now", "ambient.temperature", "ambient.temperature", 15.0),
        ("the rest of the cells are 1.25", "reading.gravity", "reading.gravity_spread", 0.04),
        ("the rest of the cells are 1.25", "reading.gravity", "reading.gravity", 1.21),
    ],
)
def test_a_figure_that_was_not_said_before_is_known_by_what_was(
    text: str, before: str, fact: str, value: object
) -> None:
    found = read(text, MODELS, said=(FIRST_SAID[before],)).stated
    assert [item.value for item in found if item.fact == fact] == [value]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("from 30", {"battery.charge": 30.0}),
        ("what if I get it to 70 tonight", {"battery.charge": 70.0}),
        ("and to be at 95", {}),
        ("why does your colleague say 50", {}),
        ("so do I now have 320?", {}),
        ("can the battery take a 50", {"charger.current": 50.0}),
        ("15 A only, the pier trips", {"charger.current": 15.0}),
        ("changed my mind, 40 amp one", {"charger.current": 40.0}),
        ("read it again. 14.6", {"charger.voltage": 14.6}),
        ("for a single?", {"battery.count": 1.0}),
        ("14.2 was on float, in bulk 14.7", {"charger.voltage": 14.7}),
        ("a panel of 20 watts? 40?", {"solar.power": 20.0}),
    ],
)
def test_a_figure_of_something_else_changes_nothing_that_was_said(text: str, found: dict[str, float]) -> None:
    stated = read(text, MODELS, said=CHARGED).stated
    assert {item.fact: item.value for item in stated if isinstance(item.value, float)} == found


@pytest.mark.parametrize(
    ("text", "likely", "fact", "value"),
    [
        ("and a 350 on that", "fuse.rating", "fuse.rating", 350.0),
        ("my neighbour gave me a 250", "fuse.rating", "fuse.rating", 250.0),
        ("There's a 400 in there at the moment. Leave it?", "fuse.rating", "fuse.rating", 400.0),
        ("charges at 35", "charger.current", "charger.current", 35.0),
        ("got a 30", "charger.current", "charger.current", 30.0),
        ("we own 30 A. too weak?", "charger.current", "charger.current", 30.0),
        ("what is in there now, it's 35", "cable.area", "cable.area", 35.0),
        ("grey winter sun, say 2", "solar.power", "solar.sun_hours", 2.0),
        ("took the radio's fuse out and it fell to 0.04", "drain.current", "drain.current", 0.04),
        ("it's stuck on gel", "charger.current", "charger.setting", "gel"),
        ("40 then, and the fuse in front of it?", "charger.current", "charger.current", 40.0),
        ("15 it is. From half, how many hours?", "charger.current", "charger.current", 15.0),
    ],
)
def test_a_bare_figure_is_of_the_thing_asked_about_last(text: str, likely: str, fact: str, value: object) -> None:
    said = (FIRST_SAID["battery.capacity"], FIRST_SAID["load.kind"])
    assert [item.value for item in read(text, MODELS, said=said, likely=(likely,)).stated if item.fact == fact] == [
        value
    ]


@pytest.mark.parametrize(
    ("text", "expecting"), [("minus 15, battery at 12.1", "battery.charge"), ("it reads 12.3", "battery.charge")]
)
def test_volts_answer_no_question_for_a_percentage(text: str, expecting: str) -> None:
    assert values(text, expecting, expecting=(expecting,)) == []
    assert len(values(text, "reading.voltage", expecting=(expecting,))) == 1


def test_a_fridge_takes_no_hundred_amps() -> None:
    said = (Stated("load.kind", "electronics", "", "fridge", (0, 0)),)
    found = read("110", MODELS, ("load.current", "battery.capacity"), said).stated
    assert [(item.fact, item.value) for item in found] == [("battery.capacity", 110.0)]


@pytest.mark.parametrize(
    "text", ["Fahrenheit, of course", "Fahrenheit or Celsius? Fahrenheit", "that is in F", "they are F, not C"]
)
def test_degrees_are_taken_as_fahrenheit_when_that_is_said_later(text: str) -> None:
    said = (Stated("ambient.temperature", 14.0, "degree_Celsius", "14 degrees", (0, 0)),)
    found = read(text, MODELS, said=said).stated
    assert [(item.fact, item.value) for item in found] == [("ambient.temperature", pytest.approx(-10.0))]


def test_degrees_are_taken_as_celsius_when_that_is_said_later() -> None:
    said = (Stated("ambient.temperature", -10.0, "degree_Celsius", "14 F", (0, 0)),)
    assert [item.value for item in read("oh no, celsius", MODELS, said=said).stated] == [14.0]


@pytest.mark.parametrize("text", ["is that F or C?", "and what is that in F", "so it is C then, not F?"])
def test_degrees_stay_where_their_scale_is_asked_for(text: str) -> None:
    said = (Stated("ambient.temperature", 14.0, "degree_Celsius", "14 degrees", (0, 0)),)
    assert not [item for item in read(text, MODELS, said=said).stated if item.fact == "ambient.temperature"]


def test_a_figure_that_cannot_be_the_fact_said_before_is_none_of_it() -> None:
    said = (Stated("charger.voltage", 14.2, "volt", "14,2", (0, 0)), Stated("bank.voltage", 24.0, "volt", "24", (0, 0)))
    assert [item.fact for item in read("12,7 after the night", MODELS, said=said).stated] == ["reading.voltage"]


@pytest.mark.parametrize("text", ["flooded, with the six caps", "both again but for AGM", "thanks, that is 2 of us"])
def test_a_number_that_counts_other_things_changes_nothing(text: str) -> None:
    stated = read(text, MODELS, ("battery.capacity", "reading.voltage"), SAID).stated
    assert not [item for item in stated if isinstance(item.value, float)]


def test_what_is_denied_is_kept_apart() -> None:
    assert [(item.fact, item.value) for item in read("850 cca agm NOT lithium").denied] == [
        ("battery.chemistry", "lfp")
    ]


def test_a_share_of_the_capacity_is_a_current() -> None:
    assert values("charge a 200 Ah AGM at 0.1C", "charger.current") == [pytest.approx(20.0)]


def test_a_cue_inside_a_longer_one_of_its_class_does_not_count() -> None:
    found = {cue.text for cue in read("how many amps of charger").cues if cue.name.startswith("request:")}
    assert "how many amps" in found
    assert "how many" not in found


def test_a_telling_clause_does_not_ask() -> None:
    clauses = read("The battery is an AGM. What fuse do I need?").clauses
    assert [clause.asks for clause in clauses] == [False, True]


def test_where_nothing_asks_everything_does() -> None:
    assert all(clause.asks for clause in read("340a thr, 850 cca").clauses)


@pytest.mark.parametrize(
    ("word", "meant"),
    [
        ("litihum", "lithium"),
        ("batery", "battery"),
        ("thrusterr", "thruster"),
        ("leaving", "leaving"),
        ("changing", "changing"),
    ],
)
def test_slips_are_mended_towards_trade_words_only(word: str, meant: str) -> None:
    assert mended(word, frozenset()) == meant


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("is that enuff, an will it last", ["is", "that", "enough", ",", "and", "will", "it", "last"]),
        ("wots a fuse an where dose it go", ["whats", "a", "fuse", "and", "where", "dose", "it", "go"]),
        ("buy me an isolator an hour from here", ["buy", "me", "an", "isolator", "an", "hour", "from", "here"]),
        ("an", ["an"]),
    ],
)
def test_an_is_and_before_a_question_only(text: str, words: list[str]) -> None:
    assert list(read(text).words) == words


def test_spans_are_places_of_the_text_as_typed() -> None:
    text = "Will a “100 Ah” lithium — run a 340 A thruster?"
    message = read(text)
    for item in (*message.stated, *message.cues):
        assert text[slice(*item.span)] == item.text


def test_the_group_grammar_has_no_conflict() -> None:
    Lark(groups.rules(), parser="lalr", strict=True)


@pytest.mark.parametrize(
    ("content", "complaint"),
    [
        ('[enough]\nsays = ["run it"]', "must begin with class"),
        ('class = "request"\n[enough]\nsay = ["run it"]', "nothing else"),
        ('class = "request"\n[enough]\nsays = ["run it", "run it"]', "keep one of each"),
    ],
)
def test_a_lexicon_of_another_shape_is_refused(tmp_path: Path, content: str, complaint: str) -> None:
    path = tmp_path / "words.toml"
    path.write_text(content, encoding="utf-8")
    with pytest.raises(ValueError, match=complaint):
        list(vocabulary.entries(path))


@given(st.text(max_size=200))
@settings(max_examples=150, deadline=None)
def test_any_text_is_read(text: str) -> None:
    message = read(text, MODELS, ("load.current", "charger.isolated", "battery.group"))
    assert all(0 <= start <= end <= len(text) for start, end in (item.span for item in message.stated))


@given(st.lists(PIECES, max_size=25).map(" ".join))
@settings(max_examples=150, deadline=None)
def test_any_row_of_trade_words_is_read(text: str) -> None:
    for item in read(text, MODELS, ("battery.cca", "cable.length")).stated:
        spec = facts()[item.fact]
        assert item.of in (1, 2, 3)
        if spec.kind == "number" and spec.low is not None and spec.high is not None and item.unit == spec.unit:
            assert spec.low <= float(item.value) <= spec.high


@pytest.mark.parametrize("piece", ["battery 12 V 100 Ah thruster 300 A ", "12 ", "no idea if agm ", "12.6V, ", "a"])
def test_the_time_grows_with_the_length(piece: str) -> None:
    read(piece)
    short, long = (seconds(lambda text=(piece * size)[:size]: read(text)) for size in (4_000, 16_000))
    assert long < 8 * short + 0.1


def test_two_readings_of_a_text_are_equal() -> None:
    text = json.dumps(STATES[:40])
    assert read(text, MODELS) == read(text, MODELS)
