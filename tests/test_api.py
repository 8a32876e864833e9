"""POST /api/ask and its neighbours: the contract's JSON, every refusal as problem details, never a 500."""

from __future__ import annotations

import json
import sqlite3
import urllib.request
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing, contextmanager

import pytest
import schemathesis
from hypothesis import HealthCheck, given, settings
from schemathesis.generation import GenerationMode
from schemathesis.specs.openapi.checks import positive_data_acceptance

from service.house import DEMO
from service.leadsman import Leadsman
from service.web import create_app
from tests.live import live

QUESTION = "Will my 520 CCA AGM start battery run the Pike?"


def ask(client, text="", **more):
    return client.post("/api/ask", json={"text": text, **more})


def is_problem(response, status):
    body = json.loads(response.data)
    return (
        response.status_code == status == body["status"]
        and response.mimetype == "application/problem+json"
        and body["title"]
        and len(body["detail"]) > 20
    )


def test_an_answer_has_the_contracts_shape(client):
    reply = ask(client, QUESTION).json
    assert set(reply) == {"id", "notice", "thread", "triage", "answers"}
    answer = reply["answers"][0]
    assert (answer["topic"], answer["verdict"]) == ("run-check", "no")
    figures = {item["name"]: item["value"] for item in answer["figures"]}
    assert figures["terminal_voltage_at_inrush"] == pytest.approx(8.1)
    assert all(set(step["cites"]) <= {cite["id"] for cite in answer["cites"]} for step in answer["working"])


def test_a_thread_keeps_the_facts(client):
    first = ask(client, QUESTION).json
    second = ask(client, "same but 700 CCA", thread=first["thread"]).json
    assert second["answers"][0]["verdict"] == "yes"
    assert "Pike" in [item["value"] for item in second["answers"][0]["understood"]]


def test_facts_alone_answer_the_last_question_again(client):
    first = ask(client, "Can a 200 Ah lithium run the Pike?").json
    facts = [{"fact": "battery.max_current", "value": 400, "unit": "A"}]
    second = ask(client, "", thread=first["thread"], facts=facts).json
    assert [item["verdict"] for item in second["answers"]] == ["yes"]


def test_a_token_that_does_not_verify_starts_a_new_thread_and_says_so(client):
    token = ask(client, QUESTION).json["thread"]
    for wrong in (token[:-2] + "xx", "nonsense", "", "\x00", "é" * 40):
        reply = ask(client, "Is 12.4 V good for an AGM?", thread=wrong)
        assert reply.status_code == 200
        assert ("new thread" in (reply.json["notice"] or "")) == bool(wrong)


@pytest.mark.parametrize(
    "body",
    [
        {"text": ""},
        {"text": " \n\t "},
        {"text": "x" * 20_001},
        {"text": 5},
        {"text": None},
        {"text": ["12.4 V"]},
        {"text": "12.4 V", "thread": 7},
        {"text": "12.4 V", "facts": "battery.cca"},
        {"text": "12.4 V", "facts": [7]},
        {"text": "12.4 V", "facts": [{"fact": "battery.cca"}]},
        {"text": "12.4 V", "facts": [{"fact": "battery.colour", "value": 1}]},
        {"text": "12.4 V", "facts": [{"fact": ["battery.cca"], "value": 1}]},
        {"text": "12.4 V", "facts": [{"fact": "battery.cca", "value": "many"}]},
        {"text": "12.4 V", "facts": [{"fact": "battery.cca", "value": True}]},
        {"text": "12.4 V", "facts": [{"fact": "battery.cca", "value": 1e300}]},
        {"text": "12.4 V", "facts": [{"fact": "battery.cca", "value": 500, "unit": "banana"}]},
        {"text": "12.4 V", "facts": [{"fact": "battery.cca", "value": 500, "unit": "volt"}]},
        {"text": "12.4 V", "facts": [{"fact": "battery.cca", "value": 500, "of": 3}]},
        {"text": "12.4 V", "facts": [{"fact": "cable.length", "value": 16, "units": "ft"}]},
        {"text": "12.4 V", "facts": [{"fact": "cable.length", "value": 16, "unit": 7}]},
        {"text": "12.4 V", "facts": [{"fact": "cable.length", "value": 16, "unit": "9 ** 9 ** 9"}]},
        {"question": "12.4 V"},
        [],
        None,
        "12.4 V",
        3,
    ],
)
def test_a_wrong_body_is_400_and_says_what_to_do(client, body):
    sent = client.post("/api/ask", data=json.dumps(body), content_type="application/json")
    assert is_problem(sent, 400)


@pytest.mark.parametrize("body", [b"", b"{", b"\xff\xfe\x00\x01", b'{"text": "\xff"}', b"nan", b'{"text": "a", }'])
def test_bytes_that_are_no_json_are_400(client, body):
    assert is_problem(client.post("/api/ask", data=body, content_type="application/json"), 400)


@pytest.mark.parametrize("path", ["/api/ask", "/api/feedback"])
def test_a_body_nested_without_end_is_400(client, path):
    assert is_problem(client.post(path, data=b"[" * 100_000, content_type="application/json"), 400)


@pytest.mark.parametrize("unit", ["ft", "feet", "foot", " Ft "])
def test_a_unit_may_be_written_as_people_write_it(client, unit):
    facts = [{"fact": "cable.length", "value": 16, "unit": unit}]
    answer = ask(client, "What cable for a Pike?", facts=facts).json["answers"][0]
    held = {item["fact"]: item["value"] for item in answer["understood"]}
    assert held["cable.length"] == pytest.approx(4.8768)


@pytest.mark.parametrize("unit", ["°F", "F", "degF", "degree_Fahrenheit"])
def test_degrees_too(client, unit):
    facts = [{"fact": "ambient.temperature", "value": 50, "unit": unit}]
    answer = ask(client, "Is 12.4 V at rest good for my AGM?", facts=facts).json["answers"][0]
    held = {item["fact"]: item["value"] for item in answer["understood"]}
    assert held["ambient.temperature"] == pytest.approx(10)


def test_a_refusal_names_units_as_people_write_them_and_what_a_program_can_read(client):
    def refused(**fact):
        return ask(client, "12.4 V", facts=[fact]).json["detail"]

    assert "held in Ah; 'volt'" in refused(fact="battery.capacity", value=100, unit="volt")
    assert "held in °C" in refused(fact="ambient.temperature", value=1, unit="m")
    assert "/api/spec lists them" in refused(fact="battery.colour", value=1)
    told = refused(fact="cable.length", value=16, units="ft")
    assert "not known: units" in told
    assert '"unit"' in told
    spec = client.get("/api/spec").json["components"]["schemas"]["Question"]["properties"]["facts"]["items"]
    assert spec["additionalProperties"] is False


def test_a_refusal_is_headed_by_what_was_sent(client):
    for path, body in (("/api/feedback", {"id": 5}), ("/api/ask", {"text": 5})):
        assert client.post(path, json=body).json["title"] == "What was sent cannot be taken"


def test_numbers_that_json_does_not_know_are_400(client):
    body = b'{"text": "x", "facts": [{"fact": "battery.cca", "value": NaN}]}'
    assert is_problem(client.post("/api/ask", data=body, content_type="application/json"), 400)


def test_the_longest_text_is_answered(client):
    assert ask(client, ("12.4 V at rest on an AGM. " * 800)[:20_000]).status_code == 200


def test_other_media_and_methods_and_sizes(client):
    assert is_problem(client.post("/api/ask", data="text=12.4", content_type="text/plain"), 415)
    assert is_problem(client.post("/api/ask", data={"text": "12.4 V"}), 415)
    assert is_problem(client.post("/api/ask", data=b"x" * (256 * 1024 + 1), content_type="application/json"), 413)
    refused = client.get("/api/ask")
    assert is_problem(refused, 405)
    assert "POST" in refused.headers["Allow"]
    assert is_problem(client.get("/api/nowhere"), 404)


@pytest.mark.parametrize(
    "text", ["<script>alert(1)</script>", "\x00", "🔋" * 300, "12.4" * 4000, "a\u202eb", "\ud800 12.4 V?"]
)
def test_odd_texts_are_answered(client, text):
    assert ask(client, text).status_code == 200


def test_half_a_character_is_answered_logged_and_shown(client, app):
    facts = [{"fact": "terminal.size", "value": "M8 \ud800"}]
    reply = ask(client, "Is 12.4 V good for an AGM \ud83d?", facts=facts).json
    assert next(app.extensions["desk"].log().rows(1))["text"] == "Is 12.4 V good for an AGM \ufffd?"
    assert client.get(f"/a/{reply['id']}").status_code == 200
    again = client.post("/", data={"text": "and for gel?", "thread": reply["thread"], "entries": reply["id"]})
    assert again.status_code == 200
    assert ask(client, "12.4 V", thread="\ud800").status_code == 200
    assert client.post("/api/feedback", json={"id": reply["id"], "helped": True, "word": "\ud800"}).status_code == 200
    assert is_problem(client.post("/api/feedback", json={"id": "\ud800", "helped": True}), 404)


def test_no_cookie_no_store_and_a_strict_policy(client):
    response = ask(client, QUESTION)
    assert "Set-Cookie" not in response.headers
    assert response.headers["Cache-Control"] == "no-store"
    assert "default-src 'none'" in response.headers["Content-Security-Policy"]
    assert response.headers["X-Content-Type-Options"] == "nosniff"


@pytest.mark.parametrize("mode", list(GenerationMode), ids=lambda mode: mode.value)
@pytest.mark.parametrize("path", ["/api/ask", "/api/feedback"])
def test_whatever_is_sent_is_answered_as_the_description_says(service, path, mode):
    operation = schemathesis.openapi.from_url(f"{service}/api/spec")[path]["POST"]

    @given(case=operation.as_strategy(generation_mode=mode))
    @settings(max_examples=25, deadline=None, derandomize=True, database=None, suppress_health_check=list(HealthCheck))
    def each(case):
        case.call_and_validate(excluded_checks=[positive_data_acceptance])  # an empty text fits the schema

    each()


def test_feedback_stands_with_the_answer(client, app):
    id = ask(client, QUESTION).json["id"]
    sent = client.post("/api/feedback", json={"id": id, "helped": False, "word": "<b>no</b>"})
    assert sent.json == {"status": "kept"}
    assert next(app.extensions["desk"].log().db["feedback"].rows)["word"] == "<b>no</b>"
    assert is_problem(client.post("/api/feedback", json={"id": "nobody", "helped": True}), 404)
    for wrong in ({}, [], {"id": id}, {"id": id, "helped": "yes"}, {"id": id, "helped": True, "word": 5}, {"id": 5}):
        assert is_problem(client.post("/api/feedback", json=wrong), 400)
    assert is_problem(client.post("/api/feedback", data=b"x"), 415)


@contextmanager
def another_program_writes(app):
    log = app.extensions["desk"].log()
    log.db.conn.execute("pragma busy_timeout = 10")
    with closing(sqlite3.connect(log.path)) as other:
        other.execute("begin exclusive")
        yield
        other.rollback()


def test_a_log_that_is_busy_loses_no_answer(client, app):
    assert ask(client, QUESTION).status_code == 200
    with another_program_writes(app):
        reply = ask(client, QUESTION)
    assert reply.status_code == 200
    assert reply.json["answers"][0]["verdict"] == "no"
    later = ask(client, QUESTION).json
    assert client.get(f"/a/{later['id']}").status_code == 200


def test_a_data_folder_that_goes_missing_is_made_again(client, app):
    assert ask(client, QUESTION).status_code == 200
    log = app.extensions["desk"].log()
    for file in log.path.parent.iterdir():
        file.unlink()
    log.path.parent.rmdir()
    assert ask(client, QUESTION).status_code == 200
    later = ask(client, QUESTION)
    assert later.status_code == 200
    assert client.get(f"/a/{later.json['id']}").status_code == 200


def test_health(client, app):
    well = client.get("/healthz").json
    assert (well["status"], well["house"], well["house_fault"]) == ("ok", "Otterholm Thrusters", "")
    with another_program_writes(app):
        assert is_problem(client.get("/healthz"), 503)
    assert client.get("/healthz").status_code == 200


def test_four_threads_give_the_answers_of_one(tmp_path):
    app = create_app(data=tmp_path)
    texts = [
        QUESTION,
        "12.4 V at rest on an AGM. Is that good?",
        "What cable for a Pike, 5 m each way?",
        "How many amps of charger for two 100 Ah AGMs?",
    ]
    alone = [json.dumps(ask(app.test_client(), text).json["answers"], sort_keys=True) for text in texts]
    with live(app, threads=4) as address, ThreadPoolExecutor(8) as many:

        def over_http(text):
            body = json.dumps({"text": text}).encode()
            request = urllib.request.Request(
                f"{address}/api/ask", body, {"Content-Type": "application/json"}, method="POST"
            )
            with urllib.request.urlopen(request, timeout=30) as response:
                return json.dumps(json.load(response)["answers"], sort_keys=True)

        assert list(many.map(over_http, texts * 6)) == alone * 6
    rows = list(app.extensions["desk"].log().rows())
    assert len(rows) == len(texts) * 7
    assert len({row["id"] for row in rows}) == len(rows)


def test_a_changed_house_file_is_taken_up_and_a_broken_one_reported(tmp_path, house):
    client = create_app(house=house, data=tmp_path / "data").test_client()
    sound = DEMO.read_text(encoding="utf-8")
    before = ask(client, QUESTION).json["answers"][0]
    house.write_text(sound.replace("cca = 650", "cca = 500").replace("inrush = 390", "inrush = 270"), encoding="utf-8")
    after = ask(client, QUESTION).json["answers"][0]
    assert (before["verdict"], after["verdict"]) == ("no", "yes")
    house.write_text(sound.replace("running = 260", 'running = "260"'), encoding="utf-8")
    assert ask(client, QUESTION).json["answers"][0]["verdict"] == "yes"
    assert "without quotes" in client.get("/healthz").json["house_fault"]
    house.unlink()
    assert ask(client, QUESTION).status_code == 200
    assert client.get("/healthz").json["house_fault"]
    house.write_text(sound, encoding="utf-8")
    assert ask(client, QUESTION).json["answers"][0]["verdict"] == "no"
    assert client.get("/healthz").json["house_fault"] == ""


@pytest.mark.parametrize("page", [False, True], ids=["api", "page"])
def test_a_request_keeps_its_house_while_the_file_changes(tmp_path, house, monkeypatch, page):
    app = create_app(house=house, data=tmp_path / "data")
    client, answered = app.test_client(), Leadsman.reply
    before = client.get("/healthz").json["house_version"]
    sound = house.read_text(encoding="utf-8")
    changed = sound.replace("cca = 650", "cca = 500").replace("inrush = 390", "inrush = 270")
    changed = changed.replace("Otterholm", "New")

    def while_it_changes(self, *arguments):
        house.write_text(changed, encoding="utf-8")
        with ThreadPoolExecutor(1) as another:
            assert another.submit(app.test_client().get, "/healthz").result().json["house"] == "New Thrusters"
        return answered(self, *arguments)

    monkeypatch.setattr(Leadsman, "reply", while_it_changes)
    if page:
        shown = client.post("/", data={"text": QUESTION}).get_data(as_text=True)
        assert "Otterholm Thrusters" in shown
        assert "New Thrusters" not in shown
    else:
        assert ask(client, QUESTION).json["answers"][0]["verdict"] == "no"
    assert next(app.extensions["desk"].log().rows(1))["house"] == before
    monkeypatch.undo()
    assert ask(client, QUESTION).json["answers"][0]["verdict"] == "yes"
