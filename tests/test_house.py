"""The house file: the demo is sound, and every mistake is explained with its line."""

from __future__ import annotations

import os
import re

import pytest

from service.cli import main
from service.commands.bench import STARTING
from service.commands.prompt import Talk, taken_up
from service.house import DEMO, load
from service.house.check import HouseFault, mistakes
from service.house.kept import Kept
from service.leadsman import Leadsman
from service.turns.thread import Signer

SOUND = DEMO.read_text(encoding="utf-8")


def test_the_demo_house_is_sound():
    assert mistakes(SOUND) == []


@pytest.mark.parametrize(
    ("model", "volts", "running", "inrush", "cca"),
    [("Minnow", 12, 120, 210, 350), ("pike", 12, 260, 390, 650), ("STURGEON", 24, 280, 420, 700)],
)
def test_the_demo_models(model, volts, running, inrush, cca):
    found = load().model(model)
    assert (found.volts, found.running, found.inrush, found.cca) == (volts, running, inrush, cca)


@pytest.mark.parametrize(
    ("sound", "broken", "word"),
    [
        ("running = 120", 'running = "120"', "without quotes"),
        ("running = 120", "running = 12000", "outside"),
        ("cca = 650", "", "cca is missing"),
        ("cca = 650", "cranking = 650", "not known"),
        ('units = "metric"', 'units = "imperial"', '"metric" or "us"'),
        ("origins = []", 'origins = ["www.example.org"]', "https://"),
        ("inrush = 390", "inrush = 90", "less than running"),
        ("{ up_to = 8, area = 35", "{ up_to = 1, area = 35", "in order"),
        ('"lfp"]', '"lifepo"]', "out of"),
        ("[model.pike]", "[model.pike", "not TOML"),
        ("[[policy]]", "[policies]", "not known here"),
        ('name = "Pike"', "", "name of this model"),
        ('name = "Pike"', 'name = "minnow"', "[model.minnow] has this name too"),
        ("inrush = 390", "inrush = 390\ndrop = 50", "outside 0.5 to 20"),
        ("inrush = 390", "inrush = 390\ndorp = 5", "not known in a model"),
        ("inrush = 390", "inrush = 390\nnote = 3", "write the note in one sentence"),
        (
            'chemistries = ["flooded", "agm", "gel", "lead", "lfp"]',
            "chemistries = []",
            "leave it out to allow them all",
        ),
        ('greeting = "Hello,"', "greeting = 3", "greeting is a text"),
        ("# [wording]", "[wording]\n12 = 'x'", "no word of ours"),
        ("# [wording]", '[wording]\nwet-cel = "flooded"', "do you mean 'wet-cell'"),
        ("# [wording]", '[wording]\nwet-cell = "type 2"', "a word of yours is words alone"),
        ("# [wording]", "[wording]\nwet-cell = ''", "write your word in quotes"),
        ("# [wording]", "wording = 3", "'wording' is not known in [house]"),
    ],
)
def test_each_mistake_is_named_with_what_to_write(sound, broken, word, tmp_path):
    assert sound in SOUND
    text = SOUND.replace(sound, broken, 1)
    found = mistakes(text)
    assert any(word in item.say for item in found)
    file = tmp_path / "house.toml"
    file.write_text(text, encoding="utf-8")
    with pytest.raises(HouseFault, match=r"house\.toml:\d+: "):
        load(file)


RULE = 'say = "We ask for a battery of its own for each thruster."'


@pytest.mark.parametrize(
    ("sound", "broken", "word"),
    [
        (RULE, "", "write the rule in one sentence"),
        (RULE, "say = 3", "write the rule in one sentence"),
        (RULE, 'say = "We ask for more"', "ends with a full stop"),
        (RULE, f'say = "{"word " * 25}word."', "26 words: write at most 25"),
        ('topics = ["run-check", "bank-size"]', 'topics = ["runcheck"]', "do you mean 'run-check'"),
        ('topics = ["run-check", "bank-size"]', 'topics = "run-check"', "topics lists topics"),
        ('topics = ["run-check", "bank-size"]', "topics = []", "topics lists topics"),
        ('topics = ["run-check", "bank-size"]', 'topic = ["run-check"]', "do you mean 'topics'"),
        ('models = ["Minnow", "Pike", "Sturgeon"]', 'models = ["Pyke"]', "do you mean 'pike'"),
        ('models = ["Minnow", "Pike", "Sturgeon"]', 'chemistries = ["lithium"]', "there are flooded, agm"),
        ('models = ["Minnow", "Pike", "Sturgeon"]', 'verdict = "yes"', "one of marginal, needs-facts, no"),
        ('models = ["Minnow", "Pike", "Sturgeon"]', 'adviser = "yes"', "true or false, without quotes"),
        ('models = ["Minnow", "Pike", "Sturgeon"]', "least = 100", "least holds facts or figures to a value"),
        ('models = ["Minnow", "Pike", "Sturgeon"]', "least = {}", "least holds facts or figures to a value"),
        ('models = ["Minnow", "Pike", "Sturgeon"]', "least = { battery.capacity = 100 }", "put the name in quotes"),
        ('models = ["Minnow", "Pike", "Sturgeon"]', 'least = { "battery.capacty" = 100 }', "mean 'battery.capacity'"),
        ('models = ["Minnow", "Pike", "Sturgeon"]', 'least = { "battery.chemistry" = 1 }', "which is no number"),
        ('models = ["Minnow", "Pike", "Sturgeon"]', 'least = { "battery.capacity" = "100" }', "without quotes"),
        ('models = ["Minnow", "Pike", "Sturgeon"]', 'most = { "battery.age" = 400 }', "outside 0 to"),
        ('models = ["Minnow", "Pike", "Sturgeon"]', "most = { required_cca = 500 }", "write it under least"),
        ('models = ["Minnow", "Pike", "Sturgeon"]', "most = { check_interval = 0 }", "write a number above 0"),
        (
            'models = ["Minnow", "Pike", "Sturgeon"]',
            'least = { "battery.age" = 4 }\nmost = { "battery.age" = 3 }',
            "is over the most",
        ),
    ],
)
def test_each_mistake_of_a_rule_is_named_with_its_line(sound, broken, word):
    assert SOUND.count(sound) == 1
    text = SOUND.replace(sound, broken)
    found = [item for item in mistakes(text) if word in item.say]
    assert found
    at = text.splitlines().index(broken.split("\n")[0]) + 1 if broken else text.splitlines().index("[[policy]]") + 1
    assert found[0].line == at
    assert all("None" not in item.say for item in mistakes(text))


def test_a_rule_that_applies_nowhere_is_a_mistake_and_the_second_of_two_is_found():
    first, second = '[[policy]]\nsay = "One."\ntopics = ["all"]\n', '[[policy]]\nsay = "Two."\n'
    text = f'[house]\nname = "X"\n{first}{second}'
    (found,) = mistakes(text)
    assert (found.line, "say where this rule applies" in found.say) == (6, True)
    assert mistakes(text.replace('"Two."', '"Two."\nadviser = 1'))[-1].line == 8


def test_a_policy_with_one_bracket_is_a_mistake():
    text = SOUND.replace("[[policy]]", "[policy]", 1)
    assert any("two brackets" in item.say for item in mistakes(text))


def test_the_line_is_the_one_to_mend():
    text = SOUND.replace("running = 260", 'running = "260"')
    line = text.splitlines().index('running = "260"') + 1
    assert [item.line for item in mistakes(text)] == [line]


def test_a_missing_file_is_said():
    with pytest.raises(OSError, match="nowhere"):
        load(DEMO.with_name("nowhere.toml"))


def test_a_new_house_file_is_sound_and_never_written_over(tmp_path, capsys):
    file = tmp_path / "ours.toml"
    assert main(["house", "new", str(file)]) == 0
    assert mistakes(file.read_text(encoding="utf-8")) == []
    assert load(file).model("first").running == 200
    assert main(["house", "check", str(file)]) == 0
    file.write_text("mine", encoding="utf-8")
    capsys.readouterr()
    assert main(["house", "new", str(file)]) == 2
    assert "is there already" in capsys.readouterr().err
    assert file.read_text(encoding="utf-8") == "mine"
    assert main(["house", "new", str(tmp_path / "nowhere" / "ours.toml")]) == 2


@pytest.mark.parametrize("file", [STARTING, DEMO], ids=["new", "demo"])
def test_the_parts_that_are_notes_are_sound_too_once_they_are_taken_in(file, tmp_path):
    text = file.read_text(encoding="utf-8")
    whole = re.sub(r'^# (?=\[|[a-z_]+ = |"[\w -]+" = )', "", text, flags=re.MULTILINE)
    assert mistakes(whole) == []
    taken = tmp_path / "house.toml"
    taken.write_text(whole, encoding="utf-8")
    house = load(taken)
    assert len(house.policies) > len(load(file).policies)
    assert house.wording
    assert house.words["disclaimer"]


def test_a_changed_file_is_taken_up_and_the_last_sound_one_stays(tmp_path):
    file = tmp_path / "house.toml"
    file.write_text(SOUND, encoding="utf-8")
    kept = Kept(file)
    assert (kept.now().model("pike").cca, kept.fault) == (650, "")
    file.write_text(SOUND.replace("cca = 650", "cca = 7000"), encoding="utf-8")
    assert (kept.now().model("pike").cca, "outside 0 to 3000" in kept.fault) == (650, True)
    file.write_text(SOUND.replace("cca = 650", "cca = 1700"), encoding="utf-8")
    assert (kept.now().model("pike").cca, kept.fault) == (1700, "")
    file.unlink()
    assert (kept.now().model("pike").cca, "house.toml" in kept.fault) == (1700, True)


def test_a_file_that_went_away_and_came_back_is_no_fault(tmp_path):
    file, aside = tmp_path / "house.toml", tmp_path / "aside.toml"
    file.write_text(SOUND, encoding="utf-8")
    kept = Kept(file)
    file.rename(aside)
    assert (kept.now().model("pike").cca, "Errno" in kept.fault) == (650, False)
    assert "cannot be read (No such file or directory)" in kept.fault
    aside.rename(file)
    assert (kept.now().model("pike").cca, kept.fault) == (650, "")


def test_a_file_put_in_the_place_of_another_is_taken_up_whatever_its_date(tmp_path):
    file, other = tmp_path / "house.toml", tmp_path / "other.toml"
    file.write_text(SOUND, encoding="utf-8")
    other.write_text(SOUND.replace("cca = 650", "cca = 750"), encoding="utf-8")
    for each in (file, other):
        os.utime(each, (0, 0))
    kept = Kept(file)
    other.rename(file)
    assert kept.now().model("pike").cca == 750


def test_a_house_file_of_an_older_version_still_serves_and_is_told_what_is_not_read(tmp_path, capsys):
    file = tmp_path / "house.toml"
    file.write_text(SOUND.replace('units = "metric"', 'language = "nonsense x"\nunits = "metric"'), encoding="utf-8")
    assert load(file).model("pike").cca == 650
    assert main(["house", "check", str(file)]) == 0
    assert "language is not read: answers are in English" in capsys.readouterr().out


def test_a_conversation_takes_up_a_changed_house(tmp_path):
    file = tmp_path / "house.toml"
    file.write_text(SOUND, encoding="utf-8")
    kept = Kept(file)
    conversation = Talk(Leadsman(kept.now(), Signer("s")))
    assert (conversation.answer("Will my 700 CCA AGM run the Pike?") or "").startswith("Yes")
    file.write_text(SOUND.replace("cca = 650", "cca = 800 # and more"), encoding="utf-8")
    assert taken_up(conversation, kept) == ""
    assert (conversation.answer("Will my 700 CCA AGM run the Pike?") or "").startswith("No")
    file.write_text("[house]\n", encoding="utf-8")
    assert "the last sound one stays" in taken_up(conversation, kept)
    assert taken_up(conversation, kept) == ""  # told once
    assert (conversation.answer("Will my 700 CCA AGM run the Pike?") or "").startswith("No")
