"""The house file: the demo is sound, and every mistake is explained with its line."""

from __future__ import annotations

import pytest

from service.bench import STARTING
from service.cli import main
from service.house import DEMO, load
from service.house.check import HouseFault, mistakes

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


def test_the_parts_of_a_new_house_file_that_are_notes_are_sound_too():
    text = STARTING.read_text(encoding="utf-8")
    second = "\n".join(
        line.removeprefix("# ")
        for line in text.splitlines()
        if line.startswith(("# [model", "# name"))
        or (line.startswith("# ") and " = " in line and "[" not in line.split(" = ")[0])
    )
    assert "[model.second]" in second
    whole = text + "\n" + second.replace('note = "A word of your own on this model."', "")
    assert mistakes(whole) == []
