"""How quantities are read: notations as data, and what holds for every text."""

from __future__ import annotations

import math
import statistics
import subprocess
import sys
import tomllib
from pathlib import Path

import pint
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from hypothesis.extra.lark import from_lark
from lark import Lark

from grammar import files, read_quantities
from grammar.files import toml
from grammar.reading import Part, Quantity
from grammar.text import units
from grammar.text.cutter import Cutter
from grammar.text.parts import _parser, grammar, lowered, parts
from tests.timing import pace, seconds

TABLES = tomllib.loads((Path(__file__).parent / "reading" / "quantities.toml").read_text(encoding="utf-8"))
CASES = [(text, found) for table in TABLES.values() for text, found in table.items()]
TEXTS = [text for text, _ in CASES]
ROWS = toml(files.TABLES / "units.toml")
PLAIN_UNITS = {"ought", "below", "group", "c_rate"}  # their spellings change the value, or they have none
LENGTH = 20_000


def said(text: str) -> list[str]:
    """The quantities of a text as the data file writes them."""
    found = []
    for one in read_quantities(text):
        value = one.value if isinstance(one.value, str) else f"{one.value:.6g}"
        if one.bound == "high":
            value = f"{found.pop().split(' ')[0]}..{value}"
        found.append(" ".join(word for word in (value, one.unit, one.kind) if word))
    return found


def same(one: Quantity, other: Quantity) -> bool:
    return (one.value, one.unit, one.kind) == (other.value, other.unit, other.kind)


@pytest.mark.parametrize(("text", "found"), CASES, ids=TEXTS)
def test_a_notation_is_read(text, found):
    assert said(text) == found


def test_there_are_notations_enough():
    assert len(CASES) >= 170
    assert len(TABLES["no_quantity"]) >= 40


@pytest.mark.parametrize("title", [title for title, row in ROWS.items() if row["says"] and title not in PLAIN_UNITS])
def test_every_spelling_of_a_unit_gives_the_same_quantity(title):
    expected = units.units()[title]
    for spelling in ROWS[title]["says"]:
        for text in (f"4 {spelling}", f"4{spelling}", f"4  {spelling.upper()}.", f"so 4 {spelling}, y"):
            (one,) = read_quantities(text)
            assert (one.unit, one.text[0]) == (expected.name, "4"), text
            assert str(one.value).startswith("4"), text


@given(st.integers(41, 900), st.sampled_from(["A", "amps", "Amp", "AMPS", " a", " amps", "-amp", "  amperes"]))
def test_a_value_survives_spelling_case_and_spacing(value, unit):
    assert said(f"it draws {value}{unit}.") == [f"{value} ampere"]


@given(st.decimals(0, 99, places=2), st.sampled_from(["V", "volts", " v", " Volt"]))
def test_a_decimal_comma_is_a_decimal_point(value, unit):
    assert said(f"reads {value}{unit}") == said(f"reads {value}{unit}".replace(".", ","))


def all_right(text: str) -> None:
    """The parts stand in order, leave out only spaces, and their quantities point at the text."""
    at = 0
    for part in parts(text):
        start, end = part.span
        assert at <= start < end
        assert not text[at:start].strip()
        assert text[start:end] == part.text
        for one in part.quantities:
            assert text[one.span[0] : one.span[1]] == one.text
            assert isinstance(one.value, str) or math.isfinite(one.value)
        at = end
    assert not text[at:].strip()


SIGNS = (
    "0 1 2 12 1.265 ½ 1/2 2/0 , . ' \" - – / x × * ( ) # % ° £ a A v V ah mm2 ft in cca: rc sg awg group to or and "
    "between half an hour minus twelve six hundred point per day battery order no. 3rd 8D M8 31s \n \t İ ß 😀"
)
TRADE = st.sampled_from(SIGNS.split(" "))


@settings(max_examples=300, deadline=None)
@given(st.text())
def test_any_text_is_cut_into_parts(text):
    all_right(text)


@settings(max_examples=400, deadline=None)
@given(st.lists(TRADE, max_size=12), st.sampled_from(["", " "]))
def test_any_row_of_trade_signs_is_cut_into_parts(signs, space):
    all_right(space.join(signs))


@settings(max_examples=300, deadline=None)
@given(st.sampled_from(TEXTS), st.sampled_from(TEXTS), st.integers(0, 20), st.integers(0, 20))
def test_halves_of_two_texts_are_cut_into_parts(one, other, end, start):
    all_right(one[:end] + other[start:])


@settings(max_examples=150, deadline=None, suppress_health_check=list(HealthCheck))
@given(from_lark(Lark(grammar(), parser="lalr"), alphabet=st.characters(codec="latin-1")))
def test_what_the_grammar_makes_it_parses(text):
    all_right(text)


def test_the_grammar_has_no_conflict():
    Lark(grammar(), parser="lalr", strict=True)


def test_no_spelling_stands_for_two_units():
    for keys in (("says", "joined"), ("label",)):
        owner: dict[str, str] = {}
        for title, row in ROWS.items():
            for form in (form for key in keys for form in row.get(key, ())):
                for key in {units.named(form, keys[0]).name, form.replace(" ", "").replace(".", "")}:
                    if key not in {unit.name for unit in units.units().values()}:
                        assert owner.setdefault(key, title) == title, form
                assert units.named(form, keys[0]) is units.units()[title], form


@pytest.mark.parametrize("registry", [units.registry(), pint.UnitRegistry(autoconvert_offset_to_baseunit=True)])
@pytest.mark.parametrize("title", [title for title, unit in units.units().items() if unit.name])
def test_a_factor_agrees_with_our_registry_and_with_pints_own(title, registry):
    unit = units.units()[title]
    for value in (0.0, 1.0, -40.0, 340.0):
        expected = registry.Quantity(value, unit.name).to(unit.to).magnitude
        assert value * unit.factor + unit.offset == pytest.approx(expected, rel=1e-9, abs=1e-9)


@pytest.mark.parametrize(
    ("value", "unit", "to", "expected"),
    [
        (1, "inch", "millimeter", 25.4),  # exact since 1959
        (1, "foot", "meter", 0.3048),
        (1, "pound", "kilogram", 0.45359237),
        (1, "horsepower", "watt", 745.7),  # 550 ft lbf/s
        (55, "pound_force", "newton", 244.65),
        (-40, "degree_Fahrenheit", "degree_Celsius", -40),
        (32, "degree_Fahrenheit", "degree_Celsius", 0),
        (211.6, "kilocircular_mil", "millimeter ** 2", 107.2),  # 4/0 AWG, as every wire table has it
        (1, "gallon", "liter", 3.785),
        (100, "foot ** 3 / minute", "meter ** 3 / hour", 169.9),
        (6, "knot", "meter / second", 3.087),
        (90, "minute", "hour", 1.5),
        (1, "year", "day", 365.25),
        (2, "kilowatt_hour", "watt_hour", 2000),
        (50, "milliampere", "ampere", 0.05),
    ],
)
def test_a_conversion_by_hand(value, unit, to, expected):
    assert units.convert(value, unit, to) == pytest.approx(expected, rel=2e-4)


def test_what_has_no_factor_is_left_to_the_registry():
    assert units.convert(36, "ampere * second", "ampere_hour") == pytest.approx(0.01)
    with pytest.raises(pint.DimensionalityError):
        units.convert(1, "volt", "ampere")


def run(code: str, seed: str = "0") -> str:
    root = Path(__file__).parents[1]
    environment = {"PYTHONHASHSEED": seed, "PYTHONPATH": str(root), "PATH": ""}
    done = subprocess.run([sys.executable, "-c", code], cwd=root, env=environment, check=True, capture_output=True)
    return done.stdout.decode()


def test_the_same_is_read_under_any_hash_seed():
    code = f"from grammar.text.parts import parts; print([parts(text) for text in {TEXTS[::9]!r}])"
    assert len({run(code, seed) for seed in ("0", "1", "77")}) == 1


def test_reading_and_converting_do_not_import_pint():
    code = (
        "import sys; from grammar import read_quantities; from grammar.text import units;"
        "one = read_quantities('20 ft')[0];"
        "units.convert(one.value, one.unit, 'meter'); print('pint' in sys.modules)"
    )
    assert run(code).strip() == "False"


@pytest.mark.parametrize(
    "piece",
    ["1", " ", "1/", "12 volt 3 ah 4 mm2 5 % ", "a", "1.", "to 1 ", "a@", "two ", "half an ", "cca: ", "12v or ", "-"],
)
def test_a_long_text_takes_no_longer_than_its_length(piece):
    parts("warm up 2 x 12V to 13V, half an hour, cca 640, 12 v or 24")
    text = (piece * LENGTH)[:LENGTH]
    assert seconds(lambda: parts(text)) < 0.5 * pace()


def test_a_short_text_takes_a_fraction_of_a_millisecond():
    took = [seconds(lambda text=text: parts(text)) for text in TEXTS[::10]]
    assert statistics.median(took) < 0.0005  # 0.13 ms on a quiet machine


def test_a_range_is_one_part_with_two_ends_of_one_span():
    text = "between -20C and 45C"
    part: Part = next(part for part in parts(text) if part.quantities)
    assert (part.dim, part.text) == ("TEMP", "-20C and 45C")
    assert [(one.value, one.bound) for one in part.quantities] == [(-20, "low"), (45, "high")]
    assert {one.span for one in part.quantities} == {part.span}


def test_the_shared_expressions_read_as_larks_own_lexer_would():
    apart = Lark(grammar(), parser="lalr", transformer=Cutter(), maybe_placeholders=False)
    for text in TEXTS:
        assert list(_parser().parse(lowered(text))) == list(apart.parse(lowered(text)))
