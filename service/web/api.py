"""The HTTP service: ask, its description, and whether it is well."""

from __future__ import annotations

import datetime
from typing import Any

from flask import Blueprint, Response, jsonify, request
from werkzeug.exceptions import UnsupportedMediaType

from service.log import LogFault
from service.question import BadInput, mended
from service.web.desk import desk, shared
from service.web.problems import problem
from service.web.spec import document

blueprint = Blueprint("api", __name__)
KEYS = {"text", "thread", "facts"}
LONGEST_WORD = 2000  # of feedback


def now() -> str:
    """The time of day for the log: UTC, ISO 8601."""
    return datetime.datetime.now(datetime.UTC).isoformat(timespec="seconds")


def body() -> Any:
    """The JSON that was sent; None for what is none, or nested too deep to be a question."""
    if request.mimetype != "application/json":
        raise UnsupportedMediaType
    try:
        return request.get_json(silent=True)
    except RecursionError:
        return None


@blueprint.post("/api/ask")
def ask() -> Response:
    """Answer one message. Raises BadInput for a body that is not as the description says."""
    text, thread, facts = question(body())
    response = jsonify(shared().ask(desk(), text, thread, facts).as_dict())
    response.headers["Cache-Control"] = "no-store"
    return response


def question(sent: Any) -> tuple[str, str | None, list[Any] | None]:
    """Text, thread and facts of a request's body."""
    if not isinstance(sent, dict):
        raise BadInput('The body must be a JSON object such as {"text": "Is 12.4 V good?"}.')
    if strange := sorted(set(sent) - KEYS):
        raise BadInput(f"Not known: {', '.join(map(str, strange))[:200]}. There are text, thread and facts.")
    text, thread, facts = sent.get("text", ""), sent.get("thread"), sent.get("facts")
    if not isinstance(text, str):
        raise BadInput('"text" must be a text.')
    if thread is not None and not isinstance(thread, str):
        raise BadInput('"thread" must be the token of the last answer, or left out.')
    if facts is not None and not isinstance(facts, list):
        raise BadInput('"facts" must be a list of objects with "fact", "value" and "unit".')
    return mended(text), thread, facts


@blueprint.post("/api/feedback")
def feedback() -> Response:
    """Keep whether an answer helped: {"id", "helped", "word"}. Raises BadInput for another body."""
    sent = body()
    given = sent if isinstance(sent, dict) and set(sent) <= {"id", "helped", "word"} else {}
    id, helped, word = given.get("id"), given.get("helped"), given.get("word", "")
    if not isinstance(id, str) or not isinstance(helped, bool) or not isinstance(word, str):
        raise BadInput('Send {"id": "...", "helped": true or false} and, if you like, "word": "...".')
    if not shared().log().judge(id, now(), helped, word.strip()[:LONGEST_WORD]):
        return problem(404, "Not Found", "No answer has this id: it is the id of a reply of /api/ask.")
    return jsonify({"status": "kept"})


@blueprint.get("/api/spec")
def spec() -> Response:
    """The OpenAPI 3.1 description of this service."""
    return jsonify(document(desk().house.name))


@blueprint.get("/healthz")
def healthz() -> Response:
    """200 while questions can be answered and stored; 503 with what is wrong otherwise."""
    try:
        shared().log().probe()
    except LogFault as error:
        shared().reopen()
        return problem(503, "The log is not to be had", str(error))
    house = desk().house
    return jsonify({"status": "ok", "house": house.name, "house_version": house.version, "house_fault": shared().fault})
