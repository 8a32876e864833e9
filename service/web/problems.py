"""Errors: RFC 9457 problem details that say what to do for programs, a page with a way on for people."""

from __future__ import annotations

import json
import logging

from flask import Flask, Response, render_template, request
from werkzeug.exceptions import HTTPException

from service.log import LogFault
from service.question import BadInput
from service.web.desk import desk, shared

WHAT_TO_DO = {
    400: 'The request could not be read: send a JSON object with "text".',
    404: "There is nothing here: questions go to POST /api/ask, the page is at /.",
    405: "This address takes another method; the Allow header names it.",
    413: "The body is over 256 KiB: send a shorter text.",
    415: "Send the body as application/json.",
}
FOR_PEOPLE = {
    404: "There is nothing at this address. An answer may have been cleared away; ask again on a clean sheet.",
    413: "That text is too long for us: send at most 20,000 characters, or ask in parts.",
}
logger = logging.getLogger("leadsman")


def problem(status: int, title: str, detail: str, headers: dict[str, str] | None = None) -> Response:
    """A problem details answer."""
    body = json.dumps({"type": "about:blank", "title": title, "status": status, "detail": detail})
    return Response(body, status, {"Cache-Control": "no-store", **(headers or {})}, mimetype="application/problem+json")


def for_people() -> bool:
    """Whether a person's browser asked for a page; our script and programs take problem details."""
    if request.path.startswith("/api/") or request.headers.get("Sheet"):
        return False
    return request.accept_mimetypes.best_match(["application/problem+json", "text/html"]) == "text/html"


def refusal(status: int, title: str, detail: str, headers: dict[str, str] | None = None) -> Response:
    """An error as whoever asks can read it."""
    if not for_people():
        return problem(status, title, detail, headers)
    house = desk().house
    page = render_template("trouble.html", house=house, title=title, detail=FOR_PEOPLE.get(status, detail))
    return Response(page, status, headers, mimetype="text/html")


def register(app: Flask) -> None:
    """Give every error of the application its shape."""

    @app.errorhandler(BadInput)
    def bad_input(error: BadInput) -> Response:
        return refusal(400, "What was sent cannot be taken", str(error))

    @app.errorhandler(LogFault)
    def no_log(error: LogFault) -> Response:
        logger.error("%s", error)
        shared().reopen()
        detail = "Answers are not kept at the moment: try again in a minute, or telephone the desk."
        return refusal(503, "The log is not to be had", detail, {"Retry-After": "60"})

    @app.errorhandler(HTTPException)
    def refused(error: HTTPException) -> Response:
        status = error.code or 500
        keep = {name: value for name, value in error.get_headers() if name in ("Allow", "Location", "Retry-After")}
        return refusal(status, error.name, WHAT_TO_DO.get(status, error.description or error.name), keep)

    @app.errorhandler(Exception)
    def failed(error: Exception) -> Response:
        logger.error("%s %s failed", request.method, request.path, exc_info=error)
        return refusal(
            500, "This went wrong here", "It is our fault and has been noted: try again, or telephone the desk."
        )
