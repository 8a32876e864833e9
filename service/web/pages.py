"""The question page, a single answer by its address, and the list of sources. All work without script."""
from __future__ import annotations

import datetime
import json
from typing import Any

from flask import Blueprint, Response, abort, make_response, render_template, request

from grammar.facts import facts as specs
from service.question import BadInput
from service.reference import sources
from service.render.as_html import views
from service.web.api import desk

blueprint = Blueprint("pages", __name__)
MOST_ENTRIES = 20
EXAMPLES = {
    "Will it do?": (
        "Will my 520 CCA AGM start battery run the Pike?",
        "Can a 200 Ah lithium run the Pike?",
        "AGM or lithium for the Pike?",
    ),
    "My meter says": (
        "12.4 V at rest on an AGM. Is that good?",
        "It falls to 8.9 V when I run the Minnow",
        "13.1 V on a lithium: how full is it?",
    ),
    "Charging and joining": (
        "How many amps of charger for two 100 Ah AGMs?",
        "Is the gel setting right for an AGM?",
        "Two 12 V 110 Ah in series: what do I get?",
    ),
    "Laying up": (
        "How do I store a wet battery over winter?",
        "How often should I check the water?",
        "May an AGM lie on its side?",
    ),
}


@blueprint.get("/")
def sheet() -> str:
    """A clean sheet; `?ask=` puts a question into the field."""
    return _page([], draft=request.args.get("ask", "")[:2000])


@blueprint.post("/")
def asked() -> Response | str:
    """Answer a form and give the whole sheet back, the newest entry last."""
    entries = _earlier(request.form.get("entries", ""))
    text = request.form.get("text", "")
    try:
        reply = desk().ask(text, request.form.get("thread") or None, _facts(), surface="page")
    except BadInput as error:
        return make_response(_page(entries, request.form.get("thread", ""), trouble=str(error), draft=text), 400)
    told = text or "The same, with what was corrected"
    entries.append(_entry(reply.id, told, _now(), reply.as_dict()))
    return _page(entries, reply.thread)


@blueprint.get("/a/<id>")
def answer(id: str) -> str:
    """One logged answer."""
    row = desk().log().find(id) or abort(404)
    return _page([_entry(row["id"], row["text"], row["at"], json.loads(row["answer"]))], alone=True)


@blueprint.get("/sources")
def source_list() -> str:
    """Every source that answers may cite."""
    listed = sorted(sources().items(), key=lambda item: (item[1]["kind"], item[1]["title"]))
    return render_template("sources.html", house=desk().house, sources=listed)


@blueprint.get("/favicon.ico")
def favicon() -> Response:
    """No picture, and no error either."""
    return Response(status=204)


def _page(entries: list[dict[str, Any]], thread: str = "", trouble: str = "", draft: str = "", alone: bool = False) -> str:
    ids = ",".join(entry["id"] for entry in entries[-MOST_ENTRIES:])
    return render_template(
        "page.html", house=desk().house, entries=entries, thread=thread, ids=ids, trouble=trouble, draft=draft,
        examples=EXAMPLES, alone=alone,
    )


def _entry(id: str, text: str, at: str, reply: dict[str, Any]) -> dict[str, Any]:
    moment = datetime.datetime.fromisoformat(at)
    return {"id": id, "text": text, "at": at, "time": f"{moment:%H:%M}", "date": f"{moment:%d %B %Y}",
            "answers": views(reply), "notice": reply.get("notice"), "triage": reply["triage"]}


def _earlier(ids: str) -> list[dict[str, Any]]:
    found = (desk().log().find(id) for id in ids.split(",")[-MOST_ENTRIES:] if id)
    return [_entry(row["id"], row["text"], row["at"], json.loads(row["answer"])) for row in found if row]


def _facts() -> list[dict[str, Any]]:
    """Facts from the form's fields: `fact:battery.cca` = "650"."""
    given = []
    for field, value in request.form.items():
        name = field.removeprefix("fact:")
        if not field.startswith("fact:") or not value.strip():
            continue
        spec = specs().get(name)
        if spec is None:
            raise BadInput(f"{name[:60]!r} is not a fact.")
        given.append({"fact": name, "value": _value(spec.kind, spec.label, value.strip())})
    return given


def _value(kind: str, label: str, value: str) -> Any:
    if kind == "flag":
        return value == "yes"
    if kind != "number":
        return value
    try:
        return float(value.replace(",", ".").replace(" ", ""))
    except ValueError as error:
        raise BadInput(f"{label}: write a number, such as 650, not {value[:40]!r}.") from error


def _now() -> str:
    return datetime.datetime.now(datetime.UTC).isoformat(timespec="seconds")
