"""The log asked again: what a changed rule or house does to answers that were given."""

from __future__ import annotations

import json
import resource
import secrets

import pytest

from service.cli import main
from service.commands.replay import again, replayed, rows_of
from service.house import DEMO, load
from service.leadsman import Leadsman
from service.log import Entry, Log
from service.turns.thread import Signer
from tests.timing import pace

ON_THE_PIKE = "Will a 700 CCA AGM run the Pike?"
ELSEWHERE = [
    "Is 12.4 V good for an AGM?", "Will a 700 CCA AGM run the Minnow?", "what fuse for the Minnow, 2 AWG", "thanks!",
]  # fmt: skip


@pytest.fixture
def more_cca(tmp_path):
    """The demo house, whose Pike now asks for 800 CCA."""
    file = tmp_path / "house.toml"
    file.write_text(DEMO.read_text(encoding="utf-8").replace("cca = 650", "cca = 800"), encoding="utf-8")
    return file


@pytest.fixture
def data(tmp_path):
    """A log of five questions and of a conversation of two messages, as the desk answered them."""
    desk = Leadsman(load(), Signer(secrets.token_hex(8)))
    log = Log(tmp_path / "data")

    def ask(text, thread=None):
        reply = desk.ask(text, thread)
        log.add(Entry(text, reply, "2026-11-24T09:41:00+00:00", "test", "rules", "house", 1.0))
        return reply.thread

    for text in [ON_THE_PIKE, *ELSEWHERE]:
        ask(text)
    ask("and the Pike?", ask("Will a 700 CCA AGM run the Minnow?"))
    log.close()
    return tmp_path / "data"


def replay(data, capsys, *arguments):
    status = main(["replay", "--data", str(data), *map(str, arguments)])
    said = capsys.readouterr()
    return status, said.out, said.err


def test_nothing_has_changed(data, capsys):
    status, said, _ = replay(data, capsys)
    assert (status, said) == (0, "7 questions asked again, 0 changed (0 answers)\n")


def test_a_changed_cca_demand_shows_the_answers_it_touches_and_no_other(data, more_cca, capsys):
    status, said, _ = replay(data, capsys, "--house", more_cca, "--json")
    found = [json.loads(line) for line in said.splitlines()]
    assert status == 1
    assert sorted(item["text"] for item in found) == [ON_THE_PIKE, "and the Pike?"]
    for item in found:
        changes = {(change["topic"], change["kind"], change["name"]): change for change in item["changes"]}
        verdict = changes["run-check", "verdict", "verdict"]
        assert (verdict["before"], verdict["now"]) == ("yes", "no")
        figure = changes["run-check", "figure", "required_cca"]
        assert (round(figure["before"][0]), figure["now"][0]) == (650, 800)


def test_a_new_rule_of_the_house_shows_the_answers_it_touches_and_no_other(tmp_path, capsys):
    rule = """
[[policy]]
say = "On the Pike we take gel only after our adviser has seen its data sheet."
models = ["Pike"]
chemistries = ["gel"]
adviser = true
"""
    texts = ["Will a 700 CCA gel run the Pike?", "Which charger setting for gel?", ON_THE_PIKE, *ELSEWHERE]
    questions = tmp_path / "texts.jsonl"
    questions.write_text("".join(json.dumps({"text": text}) + "\n" for text in texts), encoding="utf-8")
    answered = tmp_path / "answered.jsonl"
    answered.write_text(replay(tmp_path, capsys, questions, "--json")[1], encoding="utf-8")
    ruled = tmp_path / "house.toml"
    ruled.write_text(DEMO.read_text(encoding="utf-8") + rule, encoding="utf-8")
    status, said, _ = replay(tmp_path, capsys, answered, "--house", ruled, "--json")
    (changed,) = [json.loads(line) for line in said.splitlines()]
    assert (status, changed["text"]) == (1, texts[0])
    kinds = {(item["kind"], item["before"], item["now"]) for item in changed["changes"] if item["kind"] != "words"}
    assert kinds == {("verdict", "yes", "needs-facts"), ("route", "answered", "technician")}


def test_the_table_counts_by_topic_and_kind(data, more_cca, capsys):
    _, said, _ = replay(data, capsys, "--house", more_cca)
    assert "run-check         required_cca: 650 A -> 800 A" in said
    assert "7 questions asked again, 2 changed (2 answers)" in said
    titles, counts = (line[18:].split() for line in said.splitlines()[-2:])
    row = dict(zip(titles, counts, strict=True))
    assert (row["changed"], row["topic"], row["verdict"], row["figure"], row["asks"]) == ("2", "-", "2", "2", "-")


def test_a_follow_up_is_asked_again_in_its_thread(data):
    log = Log(data)
    row = next(row for row in log.rows() if row["text"] == "and the Pike?")
    log.close()
    assert json.loads(row["before"])["thread"]["t"] == ["run-check"]
    assert again(Leadsman(load()), row).changes == ()
    alone = again(Leadsman(load()), {**row, "before": ""})
    assert (alone.changes, alone.lost) == ((), "a follow-up whose thread was not kept")


def test_facts_that_were_set_are_set_again(tmp_path):
    desk = Leadsman(load(), Signer("s"))
    first = desk.ask(ON_THE_PIKE)
    reply = desk.ask("", first.thread, [{"fact": "battery.cca", "value": 300, "unit": "A"}])
    assert reply.answers[0].verdict == "no"
    log = Log(tmp_path)
    log.add(Entry("battery.cca = 300 A", reply, "2026-11-24T09:41:00+00:00", "test", "rules", "house", 1.0))
    found = again(desk, next(log.rows()))
    log.close()
    assert found.changes == ()
    assert found.answer["answers"][0]["verdict"] == "no"


def test_a_file_of_texts_becomes_one_with_answers(tmp_path, more_cca, capsys):
    texts = tmp_path / "texts.jsonl"
    texts.write_text("".join(json.dumps({"text": text}) + "\n" for text in [ON_THE_PIKE, *ELSEWHERE]), encoding="utf-8")
    status, said, counts = replay(tmp_path, capsys, texts, "--json")
    assert (status, len(said.splitlines())) == (0, 5)
    assert "5 not compared: no earlier answer" in counts
    answered = tmp_path / "answered.jsonl"
    answered.write_text(said, encoding="utf-8")
    assert replay(tmp_path, capsys, answered)[0] == 0
    status, said, _ = replay(tmp_path, capsys, answered, "--house", more_cca)
    assert (status, said.startswith(f"1  {ON_THE_PIKE}")) == (1, True)


def test_wording_alone_can_be_left_out(tmp_path, capsys):
    reply = Leadsman(load()).ask(ON_THE_PIKE).as_dict()
    reply["answers"][0]["headline"] = "Yes, it will."
    file = tmp_path / "one.jsonl"
    file.write_text(json.dumps({"text": ON_THE_PIKE, "answer": reply}), encoding="utf-8")
    status, said, _ = replay(tmp_path, capsys, file)
    assert status == 1
    assert "headline: Yes, it will. -> Yes: " in said
    assert replay(tmp_path, capsys, file, "--ignore-words")[0] == 0


@pytest.mark.parametrize(
    ("line", "word"),
    [
        ("{", "line 2"),
        ('{"txt": "a"}', "text"),
        ('{"text": 3}', "must be a text"),
        ('{"text": "a", "answer": "{"}', "line 2"),
        ('{"text": "a", "answer": {"answers": [{}]}}', "topic"),
    ],
)
def test_a_line_that_is_no_question_ends_with_2(tmp_path, capsys, line, word):
    file = tmp_path / "bad.jsonl"
    file.write_text(f'{{"text": "Is 12.4 V good?"}}\n{line}\n', encoding="utf-8")
    status, _, fault = replay(tmp_path, capsys, file)
    assert status == 2
    assert word in fault


def test_a_file_that_is_not_there(tmp_path, capsys):
    status, _, fault = replay(tmp_path, capsys, tmp_path / "nothing.jsonl")
    assert (status, "cannot be read" in fault) == (2, True)


@pytest.mark.slow
def test_ten_thousand_questions_in_a_minute_on_two_cores_in_their_order():
    kinds = [ON_THE_PIKE, *ELSEWHERE, "how long does a 100 Ah gel give 40 A", "2 AGMs left aboard for 5 months at 5 C"]
    texts = [f"{kinds[number % len(kinds)]} ({number})" for number in range(10_000)]
    before, slower = processor_seconds(), pace()
    found = list(replayed(rows_of(json.dumps({"text": text}) for text in texts), load(), jobs=2))
    took = processor_seconds() - before  # of two processors; the clock would count other programs' work too
    assert took / max(slower, pace()) < 2 * 60
    assert [item.text for item in found] == texts


def processor_seconds():
    return sum(sum(resource.getrusage(who)[:2]) for who in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN))
