"""Figures that no rule settles: the points of what stands around them name a fact, or leave them alone."""

from __future__ import annotations

from functools import partial

import pytest

from grammar import read
from grammar.attach.by_rule import can_be, ruled
from grammar.figures.weighed import BAR, FOLDER, HOW, LEAD, START, best, points, weighed
from grammar.reader import laid_out, why_weighed
from grammar.scene.claims import Claim
from service.leadsman import default_desk


def stated(text: str) -> dict:
    return {item.fact: (item.value, item.how) for item in read(text).stated}


@pytest.mark.parametrize(
    ("text", "fact", "value"),
    [
        ("Lithium, a 100 Ah whose BMS lets out 100 A. Motor would like 250. Will it?", "load.current", 250.0),
        ("60 A charger, 400 Ah AGM, from 50 up to full?", "battery.charge", 50.0),
        ("8 x 12 V wets, bow 24, 4 strings, total?", "bank.voltage", 24.0),
        ("One hole in the lid, 50 mm. Does for one wet 110 on 15 A?", "charger.current", 15.0),
        ("A flexible 50 W on the sprayhood, boat asleep all autumn. Does it hold its own?", "solar.power", 50.0),
    ],
)
def test_a_figure_without_a_word_of_its_own_is_told_by_its_surroundings(text, fact, value):
    assert stated(text)[fact] == (value, HOW)


@pytest.mark.parametrize("text", ["We are 23 boats and 4 crews.", "Invoice 4471, paid in 2019.", "My uncle is 74."])
def test_a_figure_that_is_no_battery_s_stays_alone(text):
    assert not [item for item in read(text).stated if item.how == HOW]


def test_a_rule_comes_first():
    scene, _, _ = laid_out("Will a 110 Ah AGM of 800 CCA run a 260 A thruster at 24 V?")
    claims = ruled(scene)
    moved = weighed(scene, claims, partial(can_be, scene))
    assert not [at for at in moved if claims.get(at, Claim("", "default")).how != "default"]


def test_a_fact_that_a_rule_settled_is_not_stated_again():
    scene, _, _ = laid_out(
        "thirteen stone four, kidding. How many lbs is a GC2, and two of em vs a 12 V lithium hundred?"
    )
    settled = ruled(scene)
    counts = {at: claim for at, claim in settled.items() if claim.fact == "battery.count"}
    alone = {at: claim for at, claim in settled.items() if at not in counts}
    assert counts
    assert "battery.count" in {claim.fact for claim in weighed(scene, alone, partial(can_be, scene)).values()}
    assert "battery.count" not in {claim.fact for claim in weighed(scene, settled, partial(can_be, scene)).values()}


def test_too_few_points_or_too_small_a_lead_name_nothing():
    def anything(fact: str) -> bool:
        return True

    assert best({"load.current": BAR, "fuse.rating": BAR - LEAD}, anything) == "load.current"
    assert best({"load.current": BAR, "fuse.rating": BAR - LEAD + 1}, anything) == ""
    assert best({"load.current": BAR - 1, "fuse.rating": BAR - 99}, anything) == ""
    assert best({"load.current": 9, "fuse.rating": 30}, lambda fact: fact != "fuse.rating") == "load.current"


def test_a_system_has_one_of_the_usual_voltages():
    scene, _, _ = laid_out("the bow is 23 and the stern is 24")
    first, second = (item for item in scene.measured if item.dim == "NUM")
    assert not can_be(scene, first, "bank.voltage")
    assert can_be(scene, second, "bank.voltage")


def test_why_prints_the_points_that_spoke():
    text = "My motor likes 190 and the fuse says 250."
    item = next(item for item in read(text).stated if item.how == HOW)
    reasons = why_weighed(text, item)
    assert reasons
    assert all(int(reason.rpartition(" ")[2]) > 0 for reason in reasons)
    assert any(reasons[0] in line for line in default_desk().ask(text).why)


def test_the_points_are_whole_numbers_and_few_enough_to_read():
    files = sorted(FOLDER.glob("*.toml"))
    assert {path.stem for path in files} == set(points()[START])
    assert sum(len(row) for row in points().values()) <= 10_000
