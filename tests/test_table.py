"""A table of questions or readings comes back with the answers beside it, its own cells untouched."""

from __future__ import annotations

import csv
import io
import sys

import pytest

from service.cli import main
from service.commands.columns import TableFault, columns
from service.commands.table import answered, decoded, parsed
from service.leadsman import Leadsman

DESK = Leadsman()
READINGS = """Boat,Rest volts,Load Volts,Amps,CCA,Age (years),Chemistry,Ah,Temp (F),Remarks
Ünïcode 🚤,12.7,10.9,260,650,3,AGM,100,70,"said ""fine"", twice"
Mary,12.1 V,9.0,,650,8 years,wet,110,,"two
lines"
Ann,,,,,,,,,nothing
Bob,twelve-ish,,,,,,,,
"""


def rows(text):
    """The answered table as dictionaries."""
    return list(csv.DictReader(io.StringIO(answered(parsed(text), DESK).text(), newline="")))


def test_readings_are_judged_and_their_cells_kept():
    found = rows(READINGS)
    before = list(csv.DictReader(io.StringIO(READINGS, newline="")))
    assert [{name: row[name] for name in before[0]} for row in found] == before
    good, bad, empty, odd = found
    assert good["leadsman answers"] == "rest-voltage: yes; load-voltage: yes; replacement: yes"
    assert (good["leadsman verdict"], bad["leadsman verdict"]) == ("yes", "no")
    assert bad["leadsman urgency"] == "today"
    assert float(good["leadsman rest-voltage state_of_charge (%)"]) == 87.5
    assert float(good["leadsman load-voltage sag (V)"]) == pytest.approx(1.8)
    assert bad["leadsman load-voltage internal_resistance (mohm)"] == ""
    assert {text for name, text in empty.items() if name.startswith("leadsman ")} == {""}
    assert odd["leadsman note"].startswith("Rest volts left out: ")
    assert odd["leadsman verdict"] == ""


def test_figures_are_those_of_the_question_in_words():
    table = rows("model,cca,type,ah\nPike,700,AGM,100\n")[0]
    asked = DESK.ask("Will a 100 Ah 700 CCA AGM run the Pike?").answers[0]
    for item in asked.figures:
        assert float(table[f"leadsman run-check {item.name} ({item.unit})"]) == pytest.approx(item.value, rel=1e-5)
    assert table["leadsman headline"].replace("\u00a0", " ") == asked.headline.replace("\u00a0", " ")


def test_questions_with_readings_beside_them():
    found = rows("question,CCA\nwill it run the Pike?,700\nwill it run the Pike?,\n\n")
    assert [row["leadsman verdict"] for row in found] == ["yes", "needs-facts"]
    assert found[1]["leadsman asks"].startswith("battery.cca")


def test_a_column_of_questions_alone_needs_no_quotes():
    found = rows("Question\nIs 12.4 V good, or not?\nthanks!\n")
    assert found[0]["Question"] == "Is 12.4 V good, or not?"
    assert found[0]["leadsman verdict"] == "marginal"
    assert len(found) == 2


def test_a_continental_table_keeps_its_commas():
    text = answered(parsed("Boot;Rest volts\nA;12,45\n"), DESK).text()
    assert text.splitlines()[1].startswith("A;12,45;yes;")
    assert ";75;12,45" in text


def test_a_second_run_replaces_the_first():
    once = answered(parsed(READINGS), DESK).text()
    assert answered(parsed(once), DESK).text() == once


@pytest.mark.parametrize(
    ("header", "facts"),
    [
        ("rest_volts", {"reading.voltage"}),
        ("Resting Voltage (V), Volts under load", {"reading.voltage", "reading.load_voltage"}),
        ("restng voltage", {"reading.voltage"}),
        ("battery.cca, reading.gravity", {"battery.cca", "reading.gravity"}),
        ("amps, model", {"load.current", "load.model"}),
        ("amps, load volts", {"reading.current", "reading.load_voltage"}),
        ("CCA A, temp °C, boat, owner", {"battery.cca", "ambient.temperature"}),
    ],
)
def test_names_of_columns(header, facts):
    assert {fact for fact, _ in columns(header.split(", ")).facts.values()} == facts


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("", "empty"),
        ("boat,owner\nA,B\n", "no column is known"),
        ("cca,cold cranking amps\n1,2\n", "both state battery.cca"),
        ("boat,cca\nA,600\nB,600,what is this\n", "line 3 has 3 cells"),
    ],
)
def test_what_is_wrong_is_said(text, word):
    with pytest.raises(TableFault, match=word):
        answered(parsed(text), DESK)


@pytest.mark.parametrize(
    ("content", "text", "written"),
    [
        ("é".encode(), "é", "utf-8"),
        ("\ufeffé".encode(), "é", "utf-8-sig"),
        ("é".encode("cp1252"), "é", "utf-8-sig"),
        ("é".encode("utf-16"), "é", "utf-8-sig"),
    ],
)
def test_encodings(content, text, written):
    assert decoded(content) == (text, written)


def test_on_the_command_line(tmp_path, capsys, monkeypatch):
    source, target = tmp_path / "in.csv", tmp_path / "out.csv"
    source.write_text(READINGS, encoding="utf-8")
    assert main(["table", str(source), str(target)]) == 0
    assert capsys.readouterr().out == f"{target}: 4 rows\n"
    out = io.TextIOWrapper(io.BytesIO(), encoding="utf-8")
    monkeypatch.setattr(sys, "stdout", out)
    assert main(["table", str(source)]) == 0
    assert out.buffer.getvalue() == target.read_bytes()


def test_the_table_itself_is_never_written_over(tmp_path, capsys):
    source = tmp_path / "in.csv"
    source.write_text(READINGS, encoding="utf-8")
    assert main(["table", str(source), str(source)]) == 2
    assert "name another file" in capsys.readouterr().err
    assert source.read_text(encoding="utf-8") == READINGS
    assert main(["table", str(tmp_path / "none.csv")]) == 2
