"""The question page, a single answer by its address, and the list of sources. All work without script."""

from __future__ import annotations

import datetime
import json
from pathlib import Path
from typing import Any
from urllib.parse import urlencode

from flask import Blueprint, Response, abort, make_response, render_template, request

from service.log import LogFault
from service.question import BadInput
from service.reference import sources
from service.render.as_html import told, views
from service.render.as_text import as_text
from service.render.plot import picture
from service.render.stored import reply as stored
from service.web import examples
from service.web.api import now
from service.web.desk import desk, shared
from service.web.given import given

blueprint = Blueprint("pages", __name__)
blueprint.add_app_template_global(picture)
MOST_ENTRIES = 20
OPEN_ENTRIES = 8  # older ones go behind "Earlier on this sheet"
STICKY = ("units", "light", "frame", "accent", "label")  # settings that stay in the address from form to form
STATIC = Path(__file__).with_name("static")


@blueprint.get("/")
def sheet() -> str | Response:
    """A clean sheet, or with `?sheet=` the entries of an earlier one; `?ask=` puts a question into the field."""
    return _page(_earlier(request.args.get("sheet", "").split(",")), draft=request.args.get("ask", "")[:2000])


@blueprint.post("/")
def asked() -> Response | str:
    """Answer a form. The whole sheet comes back, the newest entry last; to our script only what is new."""
    if request.form.get("again"):
        return again()
    text, thread = request.form.get("text", ""), request.form.get("thread", "")
    try:
        facts = given()
        told_as = told(facts, asked="reply" in request.form) if facts and not text.strip() else ""
        sent = [{name: value for name, value in fact.items() if name != "shown"} for fact in facts]
        reply = shared().ask(desk(), text, thread or None, sent, surface="page", told=told_as)
    except BadInput as error:
        if request.headers.get("Sheet"):
            raise
        return make_response(_page(_earlier(ids()), thread, trouble=_in_words(error), draft=text), 400)
    entries = _earlier(ids()[-1:] if request.headers.get("Sheet") else ids())
    entries.append(_entry(reply.id, text or told_as, now(), reply.as_dict()))
    return _page(entries, reply.thread)


def again(status: str = "", wants_word: str = "") -> Response | str:
    """The sheet of a form that asks nothing new, with a word on what was done."""
    if request.headers.get("Sheet"):
        return Response(status, mimetype="text/plain")
    return _page(_earlier(ids()), request.form.get("thread", ""), status=status, wants_word=wants_word)


@blueprint.get("/a/<id>")
def answer(id: str) -> str | Response:
    """One logged answer, ready to print."""
    row = shared().log().find(id) or abort(404)
    return _page([_entry(row["id"], row["text"], row["at"], json.loads(row["answer"]))], alone=True)


@blueprint.get("/a/<id>.txt")
def answer_text(id: str) -> Response:
    """One logged answer as plain text."""
    row = shared().log().find(id) or abort(404)
    said = as_text(stored(json.loads(row["answer"])))
    return Response(f"{row['text'].strip()}\n\n{said}\n\n{_signed(row['at'])}\n", mimetype="text/plain")


@blueprint.get("/sources")
def source_list() -> str:
    """Every source that answers may cite."""
    listed = sorted(sources().items(), key=lambda item: (item[1]["kind"], item[1]["title"]))
    return render_template("sources.html", house=desk().house, sources=listed)


@blueprint.get("/favicon.ico")
def favicon() -> Response:
    """The lead on its line, as the icon of the page."""
    kept = {"Cache-Control": "max-age=86400"}
    return Response((STATIC / "icon.svg").read_bytes(), mimetype="image/svg+xml", headers=kept)


def ids() -> list[str]:
    """The entries of the sheet that a form belongs to."""
    return [id for id in request.form.get("entries", "").split(",")[-MOST_ENTRIES:] if id]


@blueprint.app_template_global()
def here(path: str = "/", **change: str) -> str:
    """An address of ours with the settings of this page, some changed."""
    kept = {name: request.args[name][:120] for name in STICKY if request.args.get(name)} | change
    query = urlencode({name: value for name, value in kept.items() if value})
    return f"{path}?{query}" if query else path


@blueprint.app_template_global()
def file(name: str) -> str:
    """The address of a static file, with its version, so that a browser may keep it."""
    return f"/static/{name}?v={(STATIC / name).stat().st_mtime_ns:x}"


def _page(entries: list[dict[str, Any]], thread: str = "", **more: Any) -> str | Response:
    known = ",".join(dict.fromkeys([*ids(), *(entry["id"] for entry in entries)]))
    given = {"trouble": "", "draft": "", "alone": False, "status": "", "wants_word": "", **more}
    part = "log.html" if request.headers.get("Sheet") else "page.html"
    earlier = max(0, len(entries) - OPEN_ENTRIES)
    page = render_template(
        part,
        house=desk().house,
        entries=entries,
        earlier=earlier,
        thread=thread,
        ids=known,
        examples=examples.EXAMPLES,
        unbroken=examples.unbroken,
        **given,
    )
    response = make_response(page)
    response.headers["Cache-Control"] = "no-store"
    return response


def _entry(id: str, text: str, at: str, reply: dict[str, Any]) -> dict[str, Any]:
    moment = datetime.datetime.fromisoformat(at)
    models = [model.name for model in desk().house.models.values()]
    return {
        "id": id,
        "text": text.strip(),
        "at": at,
        "time": f"{moment:%H:%M}",
        "date": f"{moment:%A %-d %B %Y, %H:%M} UTC",
        "answers": views(reply, models),
        "notice": reply.get("notice"),
    }


def _earlier(known: list[str]) -> list[dict[str, Any]]:
    """Logged entries by their ids; none while the log is not to be had."""
    try:
        found = [shared().log().find(id) for id in known[-MOST_ENTRIES:] if id]
    except LogFault:
        return []
    return [_entry(row["id"], row["text"], row["at"], json.loads(row["answer"])) for row in found if row]


def _in_words(error: BadInput) -> str:
    """What is wrong with a question, for the line under the field."""
    return "Nothing is written here yet. One line is enough." if "is empty" in str(error) else str(error)


def _signed(at: str) -> str:
    moment, house = datetime.datetime.fromisoformat(at), desk().house
    return f"Asked {moment:%-d %B %Y, %H:%M} UTC. {house.name}, battery questions."
