"""What a conversation carries, and the token it travels in."""

from __future__ import annotations

import pytest

from service.case import Known
from service.leadsman import default_desk
from service.turns.thread import Signer, Thread
from service.wording.again import NOTHING_NEW, READ_TOO, STANDS


def said(fact, value, of=1):
    return Known(fact, value, "message", of=of)


def test_a_later_word_replaces_an_earlier_one():
    thread = Thread().told([said("battery.chemistry", "agm")]).told([said("battery.chemistry", "lfp")])
    assert thread.facts["battery.chemistry"].value == "lfp"


def test_earlier_facts_are_kept_and_said_to_be_of_the_thread():
    thread = Thread().told([said("battery.cca", 800.0)]).told([said("load.current", 340.0)])
    assert [(item.fact, item.origin) for item in thread.facts.values()] == [
        ("battery.cca", "thread"),
        ("load.current", "message"),
    ]


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("load.current", "load.model"),
        ("load.peak", "load.current"),
        ("cable.gauge", "cable.area"),
        ("load.model", "load.power"),
    ],
)
def test_a_fact_that_speaks_of_the_same_thing_makes_the_old_one_stale(old, new):
    assert old not in Thread().told([said(old, 1.0)]).told([said(new, 2.0)]).facts


def test_another_kind_of_load_drops_the_figures_of_the_old_one():
    thread = Thread().told([said("load.kind", "thruster"), said("load.current", 340.0)])
    thread = thread.told([said("load.kind", "windlass")])
    assert list(thread.facts) == ["load.kind"]


def test_another_boat_drops_the_old_battery_and_keeps_the_thruster():
    thread = Thread().told([said("battery.cca", 800.0), said("load.current", 340.0)]).told([], another=True)
    assert list(thread.facts) == ["load.current"]


def test_the_second_of_two_batteries_goes_when_one_is_stated_anew():
    thread = Thread().told([said("battery.cca", 550.0), said("battery.cca", 800.0, of=2)])
    assert thread.told([said("battery.cca", 700.0)]).second == {}


def test_a_token_brings_the_thread_back():
    thread = Thread().told([said("battery.cca", 800.0), said("battery.cca", 550.0, of=2)])
    signer = Signer("key")
    back = signer.thread(signer.token(thread))
    assert back is not None
    assert back.as_dict() == thread.as_dict()


@pytest.mark.parametrize("token", ["", "x", "e30.e30", "é" * 50, "a" * 100_000])
def test_a_strange_token_gives_nothing(token):
    assert Signer("key").thread(token) is None


def test_a_token_of_another_key_gives_nothing():
    assert Signer("key").thread(Signer("other").token(Thread())) is None


def test_an_answer_given_twice_says_so_and_a_technician_reads_along():
    desk = default_desk()
    first = desk.ask("Fuse for 285 A running on 2/0, 105 C?")
    again = desk.ask("the other way round then", thread=first.thread)
    assert [item.headline for item in again.answers] == [item.headline for item in first.answers]
    assert again.notice == NOTHING_NEW + READ_TOO
    assert (first.triage.route, again.triage.route) == ("answered", "technician")


def test_a_fact_that_changes_nothing_is_taken_in_and_told_so():
    desk = default_desk()
    first = desk.ask("How long does a 110 Ah wet battery run a 5 A load?")
    again = desk.ask("it's 12 volts", thread=first.thread)
    assert again.notice == STANDS.format(facts="12\u00a0V (system volts)")
    assert again.triage.route == first.triage.route


def test_an_answer_that_changes_has_no_such_notice():
    desk = default_desk()
    first = desk.ask("Is 12.4 V good?")
    assert desk.ask("it's an AGM", thread=first.thread).notice is None
