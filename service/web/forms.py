"""What the page sends besides questions: feedback on an answer, a hand-over to a person."""

from __future__ import annotations

from flask import Blueprint, Response, redirect, request, url_for
from werkzeug.wrappers import Response as AnyResponse

from service.question import BadInput
from service.web import pages
from service.web.api import LONGEST_WORD, now
from service.web.desk import shared

blueprint = Blueprint("forms", __name__)
LONGEST_ADDRESS = 200


@blueprint.post("/feedback")
def feedback() -> Response | str | AnyResponse:
    """Keep whether an answer helped, and give the sheet back with thanks."""
    helped, word = request.form.get("helped", ""), request.form.get("word", "").strip()[:LONGEST_WORD]
    if helped not in ("yes", "no"):
        raise BadInput('Say whether it helped: "yes" or "no".')
    kept = shared().log().judge(request.form.get("id", ""), now(), helped == "yes", word)
    thanks = "Thank you, that is noted." if kept else "That answer is not kept here any more."
    ask_for_word = "" if helped == "yes" or word else request.form.get("id", "")
    return pages.again(status=thanks, wants_word=ask_for_word)


@blueprint.post("/queue")
def queue() -> Response | str | AnyResponse:
    """Hand the conversation over to a person and give the sheet back."""
    address = request.form.get("reply_to", "").strip()[:LONGEST_ADDRESS]
    if "@" not in address.strip("@") or any(sign in address for sign in " \r\n\t,;<>"):
        raise BadInput("Write the email that the answer shall go to, such as name@example.org.")
    word = request.form.get("word", "").strip()[:LONGEST_WORD]
    kept = shared().log().queue(pages.ids(), now(), address, word)
    if not kept:
        raise BadInput("There is no question on this sheet yet: ask it first, then hand it over.")
    return pages.again(status=f"A person has it now, with all that stands on this sheet. The answer goes to {address}.")


@blueprint.get("/feedback")
@blueprint.get("/queue")
def back() -> AnyResponse:
    """These addresses only take forms: a reload leads back to the page."""
    return redirect(url_for("pages.sheet"))
