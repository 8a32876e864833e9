"""Errors as RFC 9457 problem details that say what to do; a page's own errors as a page."""

from __future__ import annotations

import json
import logging

from flask import Flask, Response, request
from werkzeug.exceptions import HTTPException

from service.question import BadInput

WHAT_TO_DO = {
    400: 'The request could not be read: send a JSON object with "text".',
    404: "There is nothing here: questions go to POST /api/ask, the page is at /.",
    405: "This address takes another method; the Allow header names it.",
    413: "The body is over 256 KiB: send a shorter text.",
    415: "Send the body as application/json.",
}


def problem(status: int, title: str, detail: str, headers: dict[str, str] | None = None) -> Response:
    """A problem details answer."""
    body = json.dumps({"type": "about:blank", "title": title, "status": status, "detail": detail})
    return Response(body, status, {**(headers or {})}, mimetype="application/problem+json")


def register(app: Flask) -> None:
    """Give every error of the application the one shape."""

    @app.errorhandler(BadInput)
    def bad_input(error: BadInput) -> Response:
        return problem(400, "The question cannot be taken", str(error))

    @app.errorhandler(HTTPException)
    def refused(error: HTTPException) -> Response:
        status = error.code or 500
        keep = {name: value for name, value in error.get_headers() if name in ("Allow", "Location", "Retry-After")}
        detail = WHAT_TO_DO.get(status, error.description or error.name)
        return problem(status, error.name, detail, keep)

    @app.errorhandler(Exception)
    def failed(error: Exception) -> Response:
        logging.getLogger("leadsman").error("%s %s failed", request.method, request.path, exc_info=error)
        return problem(
            500, "This went wrong here", "It is our fault and has been noted: try again, or telephone the desk."
        )
